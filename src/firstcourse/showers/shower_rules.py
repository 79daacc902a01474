"""Kerb, recess, size and shelves of a shower against the rules."""

from collections.abc import Iterator
from dataclasses import dataclass

import shapely

from firstcourse.details import FallLimits, drop_of_shelf, least_drop
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import to_shapely
from firstcourse.plan import LevelPoint
from firstcourse.rules import RuleSet
from firstcourse.showers.shower_heights import Cover, open_levels
from firstcourse.showers.shower_workings import drop_working, recess_working
from firstcourse.survey import SurveyedShower
from firstcourse.units import TICKS_PER_MM, Tape, ceil_to, ticks_from_mm, to_mm
from firstcourse.values import least, length, measure, most
from firstcourse.workings import Working

_TICKS2_PER_M2 = (1000 * TICKS_PER_MM) ** 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """What the checks of a shower found.

    Attributes:
        recess: Depth that a shower without a kerb needs below the room's finished floor [ticks]; None with one.
    """

    recess: int | None
    findings: tuple[Finding, ...] = ()
    workings: tuple[Working, ...] = ()


def check_shower(
    surveyed: SurveyedShower,
    *,
    rise: int,
    levels: tuple[LevelPoint, ...],
    under: int,
    cover: Cover,
    rules: RuleSet,
    tape: Tape,
    wall_finish: int,
) -> Checked:
    """Check kerb or recess, floor area, width, entry and shelves.

    Args:
        surveyed: The shower floor.
        rise: Height of its highest point over the drain [ticks].
        levels: Heights along its perimeter.
        under: Bed and slope under it at the drain [ticks].
        cover: Tile and mortar on the bed.
        rules: Rules in force.
        tape: Tape of the job.
        wall_finish: Thickness of boards and tile before each wall [ticks].
    """
    found: list[Finding] = []
    workings: list[Working] = []
    recess = None
    if surveyed.shower.kerb is not None:
        found += _kerb(surveyed, rise, rules, tape)
    else:
        recess, working = _recess(surveyed, levels, under, cover, tape)
        workings.append(working)
        found += _without_kerb(surveyed, levels, recess, tape)
    found += _size(surveyed, wall_finish, rules, tape)
    shelves, drops = _shelves(surveyed, rules, tape)
    found += shelves
    return Checked(recess=recess, findings=tuple(found), workings=(*workings, *drops))


def _kerb(surveyed: SurveyedShower, rise: int, rules: RuleSet, tape: Tape) -> Iterator[Finding]:
    kerb = surveyed.shower.kerb
    assert kerb is not None
    for name, low in (("shower.kerb.min", True), ("shower.kerb.max", False)):
        if not rules.has(name):
            continue
        entry, limit = rules.entry(name), rules.ticks(name)
        if kerb.height < limit if low else kerb.height > limit:
            yield entry.found(
                "FAL-201",
                Severity.STOP,
                surveyed.surface.id,
                measured=length(kerb.height),
                limit=least(length(limit)) if low else most(length(limit)),
                remedies=("raise" if low else "lower",),
                low=low,
            )
    if kerb.height <= rise:
        yield Finding(
            code="FAL-202",
            severity=Severity.STOP,
            at=(surveyed.surface.id,),
            measured=length(kerb.height),
            remedies=("raise_or_nearer",),
            values={
                "rise": length(rise),
                "above": length(max(rise + tape.graduation, rules.ticks("water.test.depth"))),
            },
        )
    if kerb.entry is not None and rules.has("shower.entry.min"):
        entry, limit = rules.entry("shower.entry.min"), rules.ticks("shower.entry.min")
        if kerb.entry < limit:
            yield entry.found(
                "FAL-213",
                Severity.STOP,
                surveyed.surface.id,
                measured=length(kerb.entry),
                limit=least(length(limit)),
                remedies=("widen",),
            )


def _recess(
    surveyed: SurveyedShower,
    levels: tuple[LevelPoint, ...],
    under: int,
    cover: Cover,
    tape: Tape,
) -> tuple[int, Working]:
    """How far the ground of the bed lies below the room's finished floor, which meets the open side level."""
    entry = max(open_levels(surveyed.surface, levels), default=max(level.height for level in levels))
    needed = ceil_to(entry + under + cover.height, tape.graduation)
    return needed, recess_working(surveyed.surface.id, entry, under, cover, needed)


def _without_kerb(
    surveyed: SurveyedShower, levels: tuple[LevelPoint, ...], needed: int, tape: Tape
) -> Iterator[Finding]:
    there = surveyed.shower.recess or 0
    entry = open_levels(surveyed.surface, levels)
    if there < needed:
        rise = max(entry, default=max(level.height for level in levels))
        yield Finding(
            code="FAL-203",
            severity=Severity.STOP,
            at=(surveyed.surface.id,),
            measured=length(there),
            limit=least(length(needed)),
            remedies=("deepen",),
            values={"deeper": length(needed - there), "rise": length(rise)},
        )
    if entry and max(entry) - min(entry) > tape.graduation:
        yield Finding(
            code="FAL-204",
            severity=Severity.FIX,
            at=(surveyed.surface.id,),
            measured=length(max(entry) - min(entry)),
            remedies=("turn_or_level",),
            values={"doorway": False, "low": length(min(entry)), "high": length(max(entry))},
        )


def _size(surveyed: SurveyedShower, wall_finish: int, rules: RuleSet, tape: Tape) -> Iterator[Finding]:
    if not rules.has("shower.area.min"):
        return
    outline = to_shapely(surveyed.surface.outline)
    ring = surveyed.surface.outline
    finished: shapely.Geometry = outline
    for index, side in enumerate(surveyed.surface.sides):
        if side.wall and wall_finish:
            line = shapely.LineString([ring[index], ring[(index + 1) % len(ring)]])
            finished = finished.difference(line.buffer(wall_finish, cap_style="square"))
    area = finished.area / _TICKS2_PER_M2
    entry = rules.entry("shower.area.min")
    if area < rules.number(entry.id):
        yield entry.found(
            "FAL-211",
            Severity.STOP,
            surveyed.surface.id,
            measured=measure(area, "m2"),
            limit=least(measure(rules.number(entry.id), "m2")),
            remedies=("move",),
        )
    large = area >= rules.number("shower.area.large")
    entry = rules.entry("shower.width.large" if large else "shower.width.min")
    circle = shapely.maximum_inscribed_circle(finished, tolerance=TICKS_PER_MM / 10)
    # The circle is found to a tenth of a millimetre; half a graduation is left to the finish.
    width = ticks_from_mm(2 * circle.length / TICKS_PER_MM)
    if width + tape.graduation // 2 < rules.ticks(entry.id):
        yield entry.found(
            "FAL-212",
            Severity.STOP,
            surveyed.surface.id,
            measured=length(width),
            limit=least(length(rules.ticks(entry.id))),
            remedies=("move" if large else "move_or_larger",),
        )


def _shelves(surveyed: SurveyedShower, rules: RuleSet, tape: Tape) -> tuple[list[Finding], list[Working]]:
    shower, floor = surveyed.shower, surveyed.surface.id
    limits = FallLimits(
        least=rules.number("fall.shelf.min"),
        greatest=rules.number("fall.shelf.max") if rules.has("fall.shelf.max") else None,
    )
    rows: list[tuple[str, int, int | None]] = [
        (f"{floor}/shelf/{shelf.id}", shelf.depth, shelf.drop) for shelf in shower.shelves
    ]
    if shower.kerb is not None:
        rows.append((f"{floor}/kerb", shower.kerb.width, None))
    found, workings = [], []
    for ref, depth, drop in rows:
        marked = least_drop(depth, rules, tape)
        workings.append(drop_working(ref, depth, limits, marked))
        if drop is None:
            continue
        fall = drop / depth
        steep = limits.greatest is not None and fall > limits.greatest * (1 + 1e-6)
        if steep or fall < limits.least * (1 - 1e-6):
            drops = [length(marked)]
            if limits.greatest is not None:
                drops.append(length(ticks_from_mm(drop_of_shelf(to_mm(depth), limits)[1])))
            allowed = limits.greatest if steep and limits.greatest is not None else limits.least
            found.append(
                rules.entry("fall.shelf.max" if steep else "fall.shelf.min").found(
                    "FAL-221",
                    Severity.FIX,
                    ref,
                    measured=measure(fall),
                    limit=most(measure(allowed)) if steep else least(measure(allowed)),
                    remedies=("drop",),
                    steep=steep,
                    drops=tuple(drops),
                    depth=length(depth),
                )
            )
    return found, workings

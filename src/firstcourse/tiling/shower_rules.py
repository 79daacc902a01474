"""Kerb, recess, size and shelves of a shower against the rules."""

from collections.abc import Iterator
from dataclasses import dataclass, field

import shapely

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import to_shapely
from firstcourse.plan import LevelPoint
from firstcourse.rules import RuleSet
from firstcourse.survey.showers import SurveyedShower
from firstcourse.tiling.falls import Limits, drop_of_shelf
from firstcourse.tiling.shower_heights import Cover, open_levels
from firstcourse.tiling.words import fall_text, length_text
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, Tape, ceil_to, ticks_from_mm, to_mm
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
    workings: dict[str, Working] = field(default_factory=dict)


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
    workings: dict[str, Working] = {}
    recess = None
    if surveyed.shower.kerb is not None:
        found += _kerb(surveyed, rise, rules, tape)
    else:
        recess, working = _recess(surveyed, levels, under, cover, tape)
        workings[f"fall {surveyed.surface.id} recess"] = working
        found += _without_kerb(surveyed, levels, recess, tape)
    found += _size(surveyed, wall_finish, rules, tape)
    shelves, drops = _shelves(surveyed, rules, tape)
    found += shelves
    if drops is not None:
        workings[f"fall {surveyed.surface.id} shelves"] = drops
    return Checked(recess=recess, findings=tuple(found), workings=workings)


def _kerb(surveyed: SurveyedShower, rise: int, rules: RuleSet, tape: Tape) -> Iterator[Finding]:
    kerb = surveyed.shower.kerb
    assert kerb is not None
    for name, low in (("shower.kerb.min", True), ("shower.kerb.max", False)):
        if not rules.has(name):
            continue
        entry, limit = rules.entry(name), rules.ticks(name)
        if kerb.height < limit if low else kerb.height > limit:
            yield entry.finding(
                code="FAL-201",
                severity=Severity.STOP,
                where=surveyed.surface.title or surveyed.surface.id,
                message=f"The kerb is too {'low' if low else 'high'} over the drain.",
                measured=length_text(kerb.height, tape),
                limit=f"{'at least' if low else 'at most'} {length_text(limit, tape)}",
                remedy=f"{'Raise' if low else 'Lower'} its finished top to {length_text(limit, tape)}.",
            )
    if kerb.height <= rise:
        asked = max(rise + tape.graduation, rules.ticks("water.test.depth"))
        yield Finding(
            code="FAL-202",
            severity=Severity.STOP,
            where=surveyed.surface.title or surveyed.surface.id,
            message="The floor rises as high as the kerb, which then holds no water.",
            measured=f"kerb {length_text(kerb.height, tape)}, floor up to {length_text(rise, tape)}",
            limit="kerb above the floor",
            source="common practice",
            remedy=f"Raise the kerb above {length_text(asked, tape)} over the drain, or bring the drain nearer.",
        )
    if kerb.entry is not None and rules.has("shower.entry.min"):
        entry, limit = rules.entry("shower.entry.min"), rules.ticks("shower.entry.min")
        if kerb.entry < limit:
            yield entry.finding(
                code="FAL-213",
                severity=Severity.STOP,
                where=surveyed.surface.title or surveyed.surface.id,
                message="The opening one walks in by is too narrow.",
                measured=length_text(kerb.entry, tape),
                limit=f"at least {length_text(limit, tape)}",
                remedy="Widen the opening of the screen or wall.",
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
    return needed, Working(
        title=f"Recess that a shower without a kerb needs, {surveyed.surface.room}",
        formula="rise at the entry + bed and slope at the drain + mortar + tile",
        values={
            "rise at the entry": length_text(entry, tape, fine=True),
            "bed and slope at the drain": length_text(under, tape),
            "mortar under the tile": length_text(cover.mortar, tape, fine=True),
            "tile": length_text(cover.tile, tape, fine=True),
        },
        result=length_text(needed, tape),
        unit="",
        source="heights of this plan; mortar as combed",
        argument=("Measured from the room's finished floor down to what the bed stands on.",),
    )


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
            where=surveyed.surface.title or surveyed.surface.id,
            message="The recess is too shallow for falls, bed and tile of a shower without a kerb.",
            measured=length_text(there, tape),
            limit=f"at least {length_text(needed, tape)}",
            source="rise + bed + mortar + tile",
            remedy=f"Deepen it by {length_text(needed - there, tape)} where the frame allows, bring the drain "
            f"nearer to the entry (the rise there is {length_text(rise, tape)}), thin the bed, or build a kerb.",
        )
    if entry and max(entry) - min(entry) > tape.graduation:
        yield Finding(
            code="FAL-204",
            severity=Severity.FIX,
            where=surveyed.surface.title or surveyed.surface.id,
            message="The open side is not level, so that the room's floor steps down along it.",
            measured=f"{length_text(min(entry), tape)} to {length_text(max(entry), tape)} over the drain",
            limit="level",
            source="common practice",
            remedy="Turn a linear drain parallel to the open side, or take falls: level.",
        )


def _size(surveyed: SurveyedShower, wall_finish: int, rules: RuleSet, tape: Tape) -> Iterator[Finding]:
    if not rules.has("shower.area.min"):
        return
    outline = to_shapely(surveyed.surface.outline)
    ring = surveyed.surface.outline
    finished: shapely.Geometry = outline
    for index, side in enumerate(surveyed.surface.sides):
        if side.label.startswith("wall ") and wall_finish:
            line = shapely.LineString([ring[index], ring[(index + 1) % len(ring)]])
            finished = finished.difference(line.buffer(wall_finish, cap_style="square"))
    area = finished.area / _TICKS2_PER_M2
    entry = rules.entry("shower.area.min")
    if area < rules.number(entry.id):
        yield entry.finding(
            code="FAL-211",
            severity=Severity.STOP,
            where=surveyed.surface.title or surveyed.surface.id,
            message="The shower's finished floor is too small.",
            measured=_area_text(area, tape),
            limit=f"at least {_area_text(rules.number(entry.id), tape)}",
            remedy="Move the kerb out or a wall back.",
        )
    large = area >= rules.number("shower.area.large")
    entry = rules.entry("shower.width.large" if large else "shower.width.min")
    circle = shapely.maximum_inscribed_circle(finished, tolerance=TICKS_PER_MM / 10)
    # The circle is found to a tenth of a millimetre; half a graduation is left to the finish.
    width = ticks_from_mm(2 * circle.length / TICKS_PER_MM)
    if width + tape.graduation // 2 < rules.ticks(entry.id):
        yield entry.finding(
            code="FAL-212",
            severity=Severity.STOP,
            where=surveyed.surface.title or surveyed.surface.id,
            message="The shower is too narrow inside its finished walls.",
            measured=length_text(width, tape),
            limit=f"at least {length_text(rules.ticks(entry.id), tape)}",
            remedy="Move the kerb out or a wall back; a larger shower may be narrower one way."
            if not large
            else "Move the kerb out or a wall back.",
        )


def _area_text(area_m2: float, tape: Tape) -> str:
    if tape is Tape.INCH:
        return f"{area_m2 * _TICKS2_PER_M2 / TICKS_PER_INCH**2:.0f} sq in"
    return f"{area_m2:.2f} m2"


def _shelves(surveyed: SurveyedShower, rules: RuleSet, tape: Tape) -> tuple[list[Finding], Working | None]:
    shower = surveyed.shower
    limits = Limits(
        least=rules.number("fall.shelf.min"),
        greatest=rules.number("fall.shelf.max") if rules.has("fall.shelf.max") else None,
    )
    entry = rules.entry("fall.shelf.min")
    rows: list[tuple[str, int, int | None]] = [(shelf.id, shelf.depth, shelf.drop) for shelf in shower.shelves]
    if shower.kerb is not None:
        rows.append(("kerb top", shower.kerb.width, None))
    if not rows:
        return [], None
    found, values = [], {}
    for name, depth, drop in rows:
        low, high = drop_of_shelf(to_mm(depth), limits)
        least = length_text(ceil_to(ticks_from_mm(low), tape.graduation // 2), tape, fine=True)
        most = "" if limits.greatest is None else f" to {length_text(ticks_from_mm(high), tape, fine=True)}"
        values[name] = f"{least}{most} over {length_text(depth, tape)}"
        if drop is None:
            continue
        fall = drop / depth
        steep = limits.greatest is not None and fall > limits.greatest * (1 + 1e-6)
        if steep or fall < limits.least * (1 - 1e-6):
            rule = rules.entry("fall.shelf.max") if steep else entry
            limit = limits.greatest if steep and limits.greatest is not None else limits.least
            found.append(
                rule.finding(
                    code="FAL-221",
                    severity=Severity.FIX,
                    where=surveyed.surface.title or surveyed.surface.id,
                    message=f"The {name} {'falls too steeply' if steep else 'does not shed water'}.",
                    measured=fall_text(fall, tape),
                    limit=f"{'at most' if steep else 'at least'} {fall_text(limit, tape)}",
                    remedy=f"Let it drop by {values[name]}, towards the drain.",
                )
            )
    working = Working(
        title=f"Drop of what lies level in the shower, {surveyed.surface.room}",
        formula="depth x least fall to depth x greatest fall",
        values=values,
        result=str(len(rows)),
        unit="shelf or top" if len(rows) == 1 else "shelves and tops",
        source=entry.cited,
    )
    return found, working

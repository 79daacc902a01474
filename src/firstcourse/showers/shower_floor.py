"""A shower floor's falls, bed and levels as the plan holds them, and what stands in their way."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.details import FallLimits
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import Ring, as_ring, sides
from firstcourse.job import ChosenTile
from firstcourse.layers import combed_mortar, longest_side
from firstcourse.plan import Fall, FallPlane, LevelPoint, Segment
from firstcourse.rules import RuleSet
from firstcourse.showers.fall_planes import (
    FallingFloor,
    Fold,
    HiddenFromDrainError,
    level_floor,
    single_floor,
    square_floor,
)
from firstcourse.showers.falls import choose_rise, largest_tile
from firstcourse.showers.flood import flood_test
from firstcourse.showers.shower_findings import hidden_part, standing_water, steepness
from firstcourse.showers.shower_heights import Cover, drain_height, upturn_top
from firstcourse.showers.shower_rules import check_shower
from firstcourse.showers.shower_workings import bed_working, heights_working, rise_working, tile_working
from firstcourse.showers.valley_levels import valley_levels
from firstcourse.survey import SurveyedShower
from firstcourse.tiles import XY, step_allowed
from firstcourse.units import TICKS_PER_MM, Tape, ticks_from_mm, to_mm
from firstcourse.values import Name, length, most
from firstcourse.workings import Working

_MM3_PER_LITRE = 1e6
_ONE_POINT = 4
"""Points nearer to each other are one, and lie apart by rounding alone [ticks]."""
_MAKE = {"level": level_floor, "square": square_floor, "single": single_floor}


@dataclass(frozen=True, slots=True, kw_only=True)
class FallResult:
    """How a shower floor falls.

    Attributes:
        fall: What the plan holds; None where no planes can lead all water to the drain.
        findings: What breaks a rule, with what would put it right.
        workings: Of its rise, its bed, its tile and its levels.
    """

    fall: Fall | None
    findings: tuple[Finding, ...] = ()
    workings: tuple[Working, ...] = ()


def plan_fall(
    surveyed: SurveyedShower,
    tiles: Sequence[ChosenTile],
    rules: RuleSet,
    tape: Tape,
    *,
    wall_finish: int = 0,
    set_in: tuple[int, int] | None = None,
    room_floor: int | None = None,
) -> FallResult:
    """Find the planes of a shower floor, and check them, its kerb and its size.

    Where the limits leave room the least fall is kept in the valleys too, and the highest point lies on a mark of
    the tape. Where they leave none, it is kept on the planes; where that is too steep, the findings say what does.

    Args:
        surveyed: The floor in its room.
        tiles: Tiles of the job.
        rules: Rules in force.
        tape: Tape of the job.
        wall_finish: Thickness of boards and tile that come before each wall [ticks].
        set_in: Thickness of the floor's tile and of the mortar under it [ticks]; as chosen where not given.
        room_floor: Height of the room's finished floor over its panels [ticks]; None where the shower takes all.
    """
    outline = tuple((to_mm(u), to_mm(v)) for u, v in surveyed.surface.outline)
    drain = tuple((to_mm(u), to_mm(v)) for u, v in surveyed.drain)
    limits = fall_limits(rules)
    try:
        unit = _MAKE[surveyed.shower.falls](outline, drain, 1.0)
    except HiddenFromDrainError:
        return FallResult(fall=None, findings=(hidden_part(surveyed, outline, drain, rules),))
    choice = choose_rise(unit, limits, step=to_mm(tape.graduation) / unit.rise)
    floor = _MAKE[surveyed.shower.falls](outline, drain, choice.rise)
    bed, pre_slope = _beds(surveyed, rules)
    findings = (*standing_water(surveyed, floor), *steepness(surveyed, unit, choice, limits, rules))
    tile = next((t for t in tiles if surveyed.shower.tiling and t.id == surveyed.shower.tiling.tile), None)
    if set_in is None and tile is not None:
        set_in = tile.thickness, combed_mortar(longest_side((tile,)), rules).thickness
    cover = Cover.of(set_in, rules)
    below = cover.height + (bed if surveyed.shower.membrane == "liner" else 0)
    follows = _tile(surveyed, floor, tile, rules)
    points = _Points(floor, (*surveyed.surface.outline, *surveyed.drain))
    levels = _levels(surveyed, floor, points)
    bed_litres, pre_litres = _litres(surveyed, floor, bed, pre_slope)
    checked = check_shower(
        surveyed, rise=ticks_from_mm(floor.rise), levels=levels, under=bed + pre_slope,
        cover=cover, rules=rules, tape=tape, wall_finish=wall_finish,
    )  # fmt: skip
    fall = Fall(
        drain=surveyed.drain,
        layout=surveyed.shower.falls,
        planes=tuple(_plane(plane.ring, plane.gradient, points) for plane in floor.planes),
        valleys=tuple(_line(fold, points) for fold in floor.folds if fold.valley),
        ridges=tuple(_line(fold, points) for fold in floor.folds if not fold.valley),
        levels=levels,
        valley_levels=tuple(
            points.settled(level) for level in valley_levels(floor, levels, rules.ticks("fall.check.spacing"))
        ),
        rise=ticks_from_mm(floor.rise),
        least_fall=floor.least_flow,
        least_plane_fall=floor.least_plane,
        greatest_fall=floor.greatest_plane,
        bed=bed,
        bed_litres=bed_litres,
        pre_slope=pre_slope,
        pre_slope_litres=pre_litres,
        kerb=surveyed.shower.kerb.height if surveyed.shower.kerb is not None else None,
        kerb_width=surveyed.shower.kerb.width if surveyed.shower.kerb is not None else None,
        drain_height=drain_height(surveyed.surface, levels, bed + pre_slope, cover, room_floor),
        room_floor=room_floor,
        recess=checked.recess,
        largest_tile=follows.largest,
        tile_step=follows.step,
        membrane=surveyed.shower.membrane,
        membrane_below=below,
        flood_test=flood_test(surveyed, floor, below, _on_kerb(surveyed, tiles, cover, rules), rules),
    )
    fall = fall.model_copy(update={"upturn_top": upturn_top(fall, rules, tape)})
    workings = (
        rise_working(surveyed.surface.id, floor, fall, choice, limits),
        bed_working(surveyed.surface.id, floor, fall),
        heights_working(surveyed.surface, fall, cover),
        *follows.workings,
        *checked.workings,
    )
    return FallResult(fall=fall, findings=(*findings, *follows.findings, *checked.findings), workings=workings)


def _on_kerb(surveyed: SurveyedShower, tiles: Sequence[ChosenTile], cover: Cover, rules: RuleSet) -> int:
    """Tile and mortar on the kerb's top, as on the floor where its tile is not chosen [ticks]."""
    kerb = surveyed.shower.kerb
    tile = next((tile for tile in tiles if kerb is not None and tile.id == kerb.tile), None)
    if tile is None:
        return cover.height
    return tile.thickness + combed_mortar(longest_side((tile,)), rules).thickness


def fall_limits(rules: RuleSet) -> FallLimits:
    """Least and greatest fall of shower floors."""
    greatest = rules.number("fall.max") if rules.has("fall.max") else None
    return FallLimits(least=rules.number("fall.min"), greatest=greatest)


def _beds(surveyed: SurveyedShower, rules: RuleSet) -> tuple[int, int]:
    shower = surveyed.shower
    if shower.membrane == "liner":
        return shower.bed or rules.ticks("fall.bed.liner"), shower.pre_slope or rules.ticks("fall.pre_slope")
    return shower.bed or rules.ticks("fall.bed.bonded"), 0


def _litres(surveyed: SurveyedShower, floor: FallingFloor, bed: int, pre_slope: int) -> tuple[float, float]:
    """Volumes of bed and pre-slope; a bed over a liner is as thick everywhere as the slope below it falls."""
    if surveyed.shower.membrane != "liner":
        return floor.volume(to_mm(bed)) / _MM3_PER_LITRE, 0.0
    even = (floor.volume(to_mm(bed)) - floor.volume(0.0)) / _MM3_PER_LITRE
    return even, floor.volume(to_mm(pre_slope)) / _MM3_PER_LITRE


class _Points:
    """Points of a floor on whole ticks, each one point with one height however many planes and folds meet there.

    Args:
        floor: Its planes.
        known: Points that others come to lie on: its corners, and its drain.
    """

    def __init__(self, floor: FallingFloor, known: Sequence[tuple[int, int]]) -> None:
        self._floor, self._known = floor, list(known)

    def at(self, at: tuple[int, int]) -> tuple[int, int]:
        """A point [ticks], or the known one that it is but for rounding."""
        for known in self._known:
            if max(abs(known[0] - at[0]), abs(known[1] - at[1])) <= _ONE_POINT:
                return known
        self._known.append(at)
        return at

    def height(self, at: tuple[int, int]) -> int:
        """Height of the floor there over the drain [ticks]."""
        return ticks_from_mm(self._floor.height((to_mm(at[0]), to_mm(at[1]))))

    def settled(self, level: LevelPoint) -> LevelPoint:
        """A level that lies where its planes' corner does; one within a valley stays where it is."""
        if level.kind == "valley":
            return level
        at = self.at(level.at)
        return level.model_copy(update={"at": at, "height": self.height(at)})


def _plane(ring: Sequence[XY], gradient: XY, points: _Points) -> FallPlane:
    corners = as_ring(points.at(_ticks(at)) for at in ring)
    return FallPlane(ring=corners, heights=tuple(map(points.height, corners)), gradient=gradient)


def _ticks(at: XY) -> tuple[int, int]:
    return ticks_from_mm(at[0]), ticks_from_mm(at[1])


def _line(fold: Fold, points: _Points) -> Segment:
    return points.at(_ticks(fold.low)), points.at(_ticks(fold.high))


def _levels(surveyed: SurveyedShower, floor: FallingFloor, points: _Points) -> tuple[LevelPoint, ...]:
    outline = surveyed.surface.outline
    found = []
    for at, _ in floor.perimeter:
        point = points.at(_ticks(at))
        height = points.height(point)
        if point in outline:
            corner = outline.index(point)
            beside = (corner - 1) % len(outline), corner
            found.append(LevelPoint(at=point, height=height, kind="corner", sides=beside))
        else:
            found.append(LevelPoint(at=point, height=height, kind="side", sides=(_nearest_side(point, outline),)))
    return tuple(found)


def _nearest_side(at: tuple[int, int], outline: Ring) -> int:
    def away(index: int) -> float:
        a, b = list(sides(outline))[index]
        across = (b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0])
        return abs(across) / math.dist(a, b)

    return min(range(len(outline)), key=away)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Follows:
    """What tile follows the planes: the step allowed and the largest that needs no cut [ticks]."""

    step: int | None = None
    largest: int | None = None
    findings: tuple[Finding, ...] = ()
    workings: tuple[Working, ...] = ()


def _tile(surveyed: SurveyedShower, floor: FallingFloor, tile: ChosenTile | None, rules: RuleSet) -> _Follows:
    if not floor.folds:
        return _Follows()
    if tile is None:
        entry = rules.entry("tile.lippage.narrow")
        step = rules.ticks(entry.id)
    else:
        joint = tile.joint or rules.ticks("tile.joint.min_floor")
        step, (entry, *_) = step_allowed(tile, joint, rules)
    used, largest = [entry], int(largest_tile(floor, to_mm(step)) * TICKS_PER_MM)
    if rules.has("fall.tile.max") and rules.ticks("fall.tile.max") < largest:
        used.insert(0, rules.entry("fall.tile.max"))
        largest = rules.ticks("fall.tile.max")
    found: tuple[Finding, ...] = ()
    if tile is not None and max(tile.size) > largest:
        found = (
            used[0].found(
                "FAL-301",
                Severity.FIX,
                surveyed.surface.id,
                measured=length(max(tile.size)),
                limit=most(length(largest)),
                remedies=("cut_or_choose",),
                tile=Name(name=tile.id),
            ),
        )
    working = tile_working(surveyed.surface.id, floor, step, largest, [rule.id for rule in used])
    return _Follows(step=step, largest=largest, findings=found, workings=(working,))

"""A shower floor's falls, bed and levels as the plan holds them, and what stands in their way."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import sides
from firstcourse.geometry.polygon import Ring, as_ring
from firstcourse.job.tile import ChosenTile
from firstcourse.plan import Fall, FallPlane, LevelPoint, Segment
from firstcourse.rules import RuleSet
from firstcourse.survey.showers import SurveyedShower
from firstcourse.tiling.fall_planes import (
    FallingFloor,
    Fold,
    HiddenFromDrainError,
    level_floor,
    single_floor,
    square_floor,
)
from firstcourse.tiling.falls import Limits, RiseChoice, choose_rise, drain_places, largest_tile, nearest_drain
from firstcourse.tiling.flood import flood_test
from firstcourse.tiling.joints import step_allowed
from firstcourse.tiling.model import XY
from firstcourse.tiling.setting import combed_mortar, longest_side
from firstcourse.tiling.shower_heights import Cover, drain_height, heights_working, upturn_top
from firstcourse.tiling.shower_rules import check_shower
from firstcourse.tiling.valley_levels import valley_levels
from firstcourse.tiling.words import fall_text, length_text, litres_text
from firstcourse.units import TICKS_PER_MM, Tape, ticks_from_mm, ticks_from_mm_ceil, to_mm
from firstcourse.values import Measure, Name, Ref, Value, Word, least, length, measure, most
from firstcourse.workings import Working

_MM3_PER_LITRE = 1e6
_MAKE = {"level": level_floor, "square": square_floor, "single": single_floor}


@dataclass(frozen=True, slots=True, kw_only=True)
class FallResult:
    """How a shower floor falls.

    Attributes:
        fall: What the plan holds; None where no planes can lead all water to the drain.
        findings: What breaks a rule, with what would put it right.
        workings: `fall SURFACE rise`, `... bed`, `... tile` and others, by the surface's id.
    """

    fall: Fall | None
    findings: tuple[Finding, ...] = ()
    workings: dict[str, Working] = field(default_factory=dict)


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
        return FallResult(fall=None, findings=(_hidden(surveyed, outline, drain, rules),))
    choice = choose_rise(unit, limits, step=to_mm(tape.graduation) / unit.rise)
    floor = _MAKE[surveyed.shower.falls](outline, drain, choice.rise)
    bed, pre_slope = _beds(surveyed, rules)
    findings = [*_standing(surveyed, floor), *_steepness(surveyed, unit, choice, limits, rules)]
    tile = next((t for t in tiles if surveyed.shower.tiling and t.id == surveyed.shower.tiling.tile), None)
    if set_in is None and tile is not None:
        set_in = tile.thickness, combed_mortar(longest_side((tile,)), rules).thickness
    cover = Cover.of(set_in, rules)
    below = cover.height + (bed if surveyed.shower.membrane == "liner" else 0)
    step, largest, tile_findings, tile_workings = _tile(surveyed, floor, tile, rules, tape)
    levels = _levels(surveyed, floor)
    bed_litres, pre_litres = _litres(surveyed, floor, bed, pre_slope)
    checked = check_shower(
        surveyed, rise=ticks_from_mm(floor.rise), levels=levels, under=bed + pre_slope,
        cover=cover, rules=rules, tape=tape, wall_finish=wall_finish,
    )  # fmt: skip
    fall = Fall(
        drain=surveyed.drain,
        layout=surveyed.shower.falls,
        planes=tuple(_plane(plane.ring, plane.gradient, floor) for plane in floor.planes),
        valleys=tuple(_line(fold) for fold in floor.folds if fold.valley),
        ridges=tuple(_line(fold) for fold in floor.folds if not fold.valley),
        levels=levels,
        valley_levels=valley_levels(floor, levels, rules.ticks("fall.check.spacing"), tape),
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
        largest_tile=largest,
        tile_step=step,
        membrane=surveyed.shower.membrane,
        membrane_below=below,
        flood_test=flood_test(surveyed, floor, below, _on_kerb(surveyed, tiles, cover, rules), rules, tape),
    )
    fall = fall.model_copy(update={"upturn_top": upturn_top(fall, rules, tape)})
    workings = {
        f"fall {surveyed.surface.id} rise": _rise_working(surveyed, floor, choice, limits, rules, tape),
        f"fall {surveyed.surface.id} bed": _bed_working(surveyed, floor, fall, tape),
        f"fall {surveyed.surface.id} height": heights_working(surveyed.surface, fall, cover, tape),
        **tile_workings,
        **checked.workings,
    }
    return FallResult(fall=fall, findings=(*findings, *tile_findings, *checked.findings), workings=workings)


def _on_kerb(surveyed: SurveyedShower, tiles: Sequence[ChosenTile], cover: Cover, rules: RuleSet) -> int:
    """Tile and mortar on the kerb's top, as on the floor where its tile is not chosen [ticks]."""
    kerb = surveyed.shower.kerb
    tile = next((tile for tile in tiles if kerb is not None and tile.id == kerb.tile), None)
    if tile is None:
        return cover.height
    return tile.thickness + combed_mortar(longest_side((tile,)), rules).thickness


def fall_limits(rules: RuleSet) -> Limits:
    """Least and greatest fall of shower floors."""
    greatest = rules.number("fall.max") if rules.has("fall.max") else None
    return Limits(least=rules.number("fall.min"), greatest=greatest)


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


def _plane(ring: Sequence[XY], gradient: XY, floor: FallingFloor) -> FallPlane:
    points = as_ring(_ticks(at) for at in ring)
    heights = tuple(ticks_from_mm(floor.height((to_mm(u), to_mm(v)))) for u, v in points)
    return FallPlane(ring=points, heights=heights, gradient=gradient)


def _ticks(at: XY) -> tuple[int, int]:
    return ticks_from_mm(at[0]), ticks_from_mm(at[1])


def _line(fold: Fold) -> Segment:
    return _ticks(fold.low), _ticks(fold.high)


def _levels(surveyed: SurveyedShower, floor: FallingFloor) -> tuple[LevelPoint, ...]:
    outline, labels = surveyed.surface.outline, surveyed.surface.sides
    corners = {outline[i]: _corner(labels[i - 1].label, labels[i].label) for i in range(len(outline))}
    found = []
    for at, height in floor.perimeter:
        point = _ticks(at)
        where = corners.get(point) or _on_side(point, outline, [side.label for side in labels])
        found.append(LevelPoint(at=point, height=ticks_from_mm(height), where=where))
    return tuple(found)


def _corner(before: str, after: str) -> str:
    return f"corner of the {after}" if before == after else f"corner of {before} and {after}"


def _on_side(at: tuple[int, int], outline: Ring, labels: Sequence[str]) -> str:
    def away(index: int) -> float:
        a, b = list(sides(outline))[index]
        across = (b[0] - a[0]) * (at[1] - a[1]) - (b[1] - a[1]) * (at[0] - a[0])
        return abs(across) / math.dist(a, b)

    return f"at {labels[min(range(len(outline)), key=away)]}"


def _standing(surveyed: SurveyedShower, floor: FallingFloor) -> list[Finding]:
    points = [_spot(surveyed, at) for at in floor.standing()]
    if not points:
        return []
    return [
        Finding(
            code="FAL-102",
            severity=Severity.STOP,
            at=(surveyed.surface.id,),
            remedies=("longer_or_level",),
            values={"along": tuple(along for along, _ in points), "out": tuple(out for _, out in points)},
        )
    ]


def _spot(surveyed: SurveyedShower, at: XY) -> tuple[Measure, Measure]:
    """A place as the job measures it: along the side, and out from it."""
    along, out = surveyed.place((at[0] * TICKS_PER_MM, at[1] * TICKS_PER_MM))
    return length(round(along)), length(round(out))


def _hidden(surveyed: SurveyedShower, outline: Sequence[XY], drain: Sequence[XY], rules: RuleSet) -> Finding:
    place, ratio = _other_place(surveyed, outline, drain, Limits(least=1.0), rules)
    values: dict[str, Value] = {}
    if place is not None and ratio < math.inf:
        values["along"], values["out"] = _spot(surveyed, place)
    return Finding(
        code="FAL-101",
        severity=Severity.STOP,
        at=(surveyed.surface.id,),
        remedies=("move_drain",) if values else ("part",),
        values=values,
    )


def _other_place(
    surveyed: SurveyedShower, outline: Sequence[XY], drain: Sequence[XY], limits: Limits, rules: RuleSet
) -> tuple[XY | None, float]:
    """The nearest place, on whole steps from the side, where a point drain keeps the limits."""
    origin = (to_mm(surveyed.origin[0]), to_mm(surveyed.origin[1]))
    places = list(drain_places(outline, origin, surveyed.axes, to_mm(rules.ticks("fall.drain.grid"))))
    middle = (sum(u for u, _ in drain) / len(drain), sum(v for _, v in drain) / len(drain))
    return nearest_drain(outline, middle, places, limits)


def _steepness(
    surveyed: SurveyedShower, unit: FallingFloor, choice: RiseChoice, limits: Limits, rules: RuleSet
) -> list[Finding]:
    if choice.kept == "flow":
        return []
    if choice.kept == "planes":
        linear, drawn = _linear(surveyed, unit, limits)
        return [
            rules.entry("fall.min").found(
                "FAL-104",
                Severity.NOTE,
                surveyed.surface.id,
                measured=measure(unit.least_flow * choice.rise),
                limit=least(measure(limits.least)),
                remedies=("nearer", linear),
                **drawn,
            )
        ]
    assert limits.greatest is not None
    ways, values = _ways(surveyed, unit, limits, rules)
    return [
        rules.entry("fall.max").found(
            "FAL-103",
            Severity.STOP,
            surveyed.surface.id,
            measured=measure(unit.greatest_plane * choice.rise),
            limit=most(measure(limits.greatest)),
            remedies=ways,
            needed=length(ticks_from_mm_ceil(choice.least_rise_planes * unit.rise)),
            allowed=length(int(choice.greatest_rise * unit.rise * TICKS_PER_MM)),
            first=Word(word=ways[0]),
            **values,
        )
    ]


def _ways(
    surveyed: SurveyedShower, unit: FallingFloor, limits: Limits, rules: RuleSet
) -> tuple[tuple[str, ...], dict[str, Value]]:
    """What would do where no rise does: remedies by code, and what their words need."""
    ways: list[str] = []
    values: dict[str, Value] = {}
    if surveyed.shower.falls == "level":
        place, _ = _other_place(surveyed, unit.outline, unit.drain, limits, rules)
        if place is not None:
            ways.append("move_drain")
            values["along"], values["out"] = _spot(surveyed, place)
        try:
            square = square_floor(unit.outline, unit.drain, 1.0)
        except HiddenFromDrainError:
            square = None
        if square is not None and choose_rise(square, limits).kept != "none":
            fall = choose_rise(square, limits).rise
            heights = [ticks_from_mm(height * fall) for _, height in square.perimeter]
            ways.append("square")
            values["low"], values["high"] = length(min(heights)), length(max(heights))
    linear, drawn = _linear(surveyed, unit, limits)
    return (*ways, linear), values | drawn


def _linear(surveyed: SurveyedShower, unit: FallingFloor, limits: Limits) -> tuple[str, dict[str, Value]]:
    """The linear drain along a wall from which the floor runs the shortest way, as a remedy with its values."""
    best: tuple[float, str] | None = None
    for side, (a, b) in zip(surveyed.surface.sides, sides(surveyed.surface.outline), strict=True):
        ends = ((to_mm(a[0]), to_mm(a[1])), (to_mm(b[0]), to_mm(b[1])))
        floor = single_floor(unit.outline, ends, limits.least)
        if side.label.startswith("wall ") and not floor.standing() and (best is None or floor.rise < best[0]):
            best = floor.rise, side.label.removeprefix("wall ")
    if best is None:
        return "no_linear", {}
    rise, wall = best
    return "linear", {
        "wall": Ref(ref=f"{surveyed.surface.room}/wall/{wall}"),
        "rises": length(ticks_from_mm_ceil(rise)),
    }


def _tile(
    surveyed: SurveyedShower, floor: FallingFloor, tile: ChosenTile | None, rules: RuleSet, tape: Tape
) -> tuple[int | None, int | None, list[Finding], dict[str, Working]]:
    if not floor.folds:
        return None, None, [], {}
    if tile is None:
        entry = rules.entry("tile.lippage.narrow")
        step = rules.ticks(entry.id)
    else:
        joint = tile.joint or rules.ticks("tile.joint.min_floor")
        step, (entry, *_) = step_allowed(tile, joint, rules)
    follows = largest_tile(floor, to_mm(step))
    largest, source = int(follows * TICKS_PER_MM), entry.cited
    values = {
        "step allowed": length_text(step, tape, fine=True),
        "sharpest turn of slope at a fold": f"{max(fold.turn for fold in floor.folds):.4f}",
    }
    if rules.has("fall.tile.max") and rules.ticks("fall.tile.max") < largest:
        entry = rules.entry("fall.tile.max")
        largest, source = rules.ticks(entry.id), entry.cited
        values["largest by rule"] = length_text(largest, tape)
    working = Working(
        title="Largest tile that follows the falls uncut",
        formula="4 x step / turn of slope, and not more than a rule allows",
        values=values,
        result=length_text(largest, tape),
        unit="",
        source=source,
        argument=("A flat tile of side s across a fold of turn t leaves the planes by s t / 4: its sagitta.",),
    )
    found = []
    if tile is not None and max(tile.size) > largest:
        found.append(
            entry.found(
                "FAL-301",
                Severity.FIX,
                surveyed.surface.id,
                measured=length(max(tile.size)),
                limit=most(length(largest)),
                remedies=("cut_or_choose",),
                tile=Name(name=tile.id),
            )
        )
    return step, largest, found, {f"fall {surveyed.surface.id} tile": working}


def _rise_working(
    surveyed: SurveyedShower,
    floor: FallingFloor,
    choice: RiseChoice,
    limits: Limits,
    rules: RuleSet,
    tape: Tape,
) -> Working:
    per = floor.rise / choice.rise
    values = {
        "least fall": fall_text(limits.least, tape),
        "rise that keeps it on the planes": _mm_text(choice.least_rise_planes * per, tape),
        "rise that keeps it in the valleys too": _mm_text(choice.least_rise_flow * per, tape),
        "least fall of a plane": fall_text(floor.least_plane, tape),
        "least fall on the way of the water": fall_text(floor.least_flow, tape),
        "greatest fall": fall_text(floor.greatest_plane, tape),
    }
    sources = [rules.entry("fall.min").cited]
    if limits.greatest is not None:
        values["greatest fall allowed"] = fall_text(limits.greatest, tape)
        values["rise that it allows"] = _mm_text(choice.greatest_rise * per, tape)
        sources.append(rules.entry("fall.max").cited)
    return Working(
        title=f"Rise of the shower floor from the drain to its highest point, {surveyed.surface.room}",
        formula="fall x run, least over the longest way and greatest over the shortest",
        values=values,
        result=_mm_text(floor.rise, tape),
        unit="",
        source="; ".join(dict.fromkeys(sources)),
        argument=("The highest point is raised to the tape's next mark where the limits leave room.",),
    )


def _bed_working(surveyed: SurveyedShower, floor: FallingFloor, fall: Fall, tape: Tape) -> Working:
    area = (floor.volume(1.0) - floor.volume(0.0)) / 1e6
    values = {
        "area": f"{area:.3f} m2",
        "volume between the drain's level and the planes": litres_text(floor.volume(0.0) / _MM3_PER_LITRE, tape),
        "bed, least thickness": length_text(fall.bed, tape),
    }
    if fall.membrane == "liner":
        values["slope under the liner, least thickness"] = length_text(fall.pre_slope, tape)
        values["slope under the liner"] = litres_text(fall.pre_slope_litres, tape)
        formula = "bed = area x thickness; slope = area x its thickness + volume of the falls"
    else:
        formula = "area x least thickness + volume of the falls"
    return Working(
        title=f"Bed of the shower floor, {surveyed.surface.room}",
        formula=formula,
        values=values,
        result=litres_text(fall.bed_litres, tape),
        unit="",
        source="exact volume of flat planes: area of each x height at its centre of area",
        argument=("The drain's body is not taken off.",),
    )


def _mm_text(value: float, tape: Tape) -> str:
    return "no limit" if math.isinf(value) else length_text(ticks_from_mm(value), tape, fine=True)

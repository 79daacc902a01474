"""What stands in the way of a shower floor's falls, with what would put it right."""

import math
from collections.abc import Sequence

from firstcourse.details import FallLimits
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import sides
from firstcourse.rules import RuleSet
from firstcourse.showers.fall_planes import FallingFloor, HiddenFromDrainError, single_floor, square_floor
from firstcourse.showers.falls import RiseChoice, choose_rise, drain_places, nearest_drain
from firstcourse.survey import SurveyedShower
from firstcourse.tiles import XY
from firstcourse.units import TICKS_PER_MM, ticks_from_mm, ticks_from_mm_ceil, to_mm
from firstcourse.values import Measure, Ref, Value, Word, least, length, measure, most


def standing_water(surveyed: SurveyedShower, floor: FallingFloor) -> list[Finding]:
    """Places where the planes lead water to no drain."""
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


def hidden_part(surveyed: SurveyedShower, outline: Sequence[XY], drain: Sequence[XY], rules: RuleSet) -> Finding:
    """That some of the floor lies round a corner from its drain, with a place that sees it all."""
    place, ratio = _other_place(surveyed, outline, drain, FallLimits(least=1.0), rules)
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
    surveyed: SurveyedShower, outline: Sequence[XY], drain: Sequence[XY], limits: FallLimits, rules: RuleSet
) -> tuple[XY | None, float]:
    """The nearest place, on whole steps from the side, where a point drain keeps the limits."""
    origin = (to_mm(surveyed.origin[0]), to_mm(surveyed.origin[1]))
    places = list(drain_places(outline, origin, surveyed.axes, to_mm(rules.ticks("fall.drain.grid"))))
    middle = (sum(u for u, _ in drain) / len(drain), sum(v for _, v in drain) / len(drain))
    return nearest_drain(outline, middle, places, limits)


def steepness(
    surveyed: SurveyedShower, unit: FallingFloor, choice: RiseChoice, limits: FallLimits, rules: RuleSet
) -> list[Finding]:
    """That no rise keeps the falls that are asked, or none in the valleys, with what would."""
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
    surveyed: SurveyedShower, unit: FallingFloor, limits: FallLimits, rules: RuleSet
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


def _linear(surveyed: SurveyedShower, unit: FallingFloor, limits: FallLimits) -> tuple[str, dict[str, Value]]:
    """The linear drain along a wall from which the floor runs the shortest way, as a remedy with its values."""
    best: tuple[float, str] | None = None
    for side, (a, b) in zip(surveyed.surface.sides, sides(surveyed.surface.outline), strict=True):
        ends = ((to_mm(a[0]), to_mm(a[1])), (to_mm(b[0]), to_mm(b[1])))
        floor = single_floor(unit.outline, ends, limits.least)
        if side.wall and not floor.standing() and (best is None or floor.rise < best[0]):
            best = floor.rise, side.wall
    if best is None:
        return "no_linear", {}
    rise, wall = best
    return "linear", {
        "wall": Ref(ref=f"{surveyed.surface.room}/wall/{wall}"),
        "rises": length(ticks_from_mm_ceil(rise)),
    }

"""How steep a shower floor may fall: the rise it needs, where a drain would do, and the tile that follows.

Lengths are millimetres, falls are rise over run.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from firstcourse.details import FallLimits
from firstcourse.showers.fall_planes import FallingFloor
from firstcourse.tiles import XY

_SAME = 1e-6
"""Share by which a fall may miss its limit: what rounding leaves."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RiseChoice:
    """What the limits ask of a floor, in shares of the rise (or fall) that it was made with.

    Attributes:
        rise: What to build with.
        least_rise_flow: Keeps the least fall everywhere, in the valleys too.
        least_rise_planes: Keeps it on every plane, square to its level lines.
        greatest_rise: Steepest allowed; infinite without a limit.
        kept: Where the least fall is kept: `flow` everywhere, `planes` on the planes but not in the valleys,
            `none` where no rise keeps both limits; then it is kept on the planes, and the greatest is passed.
    """

    rise: float
    least_rise_flow: float
    least_rise_planes: float
    greatest_rise: float
    kept: Literal["flow", "planes", "none"]


def choose_rise(floor: FallingFloor, limits: FallLimits, *, step: float = 0.0) -> RiseChoice:
    """Choose how much a floor rises: falls grow in step with it.

    Args:
        floor: The floor made with a rise of one (or planes of fall one).
        limits: Falls allowed.
        step: Rises that a tape can show are whole multiples of this, used where the limits leave room; 0 for any.
    """
    # A valley that lies level takes no water anywhere, however much the floor rises.
    flow = limits.least / floor.least_flow if floor.least_flow > _SAME else math.inf
    planes = limits.least / floor.least_plane
    most = math.inf if limits.greatest is None else limits.greatest / floor.greatest_plane
    kept: Literal["flow", "planes", "none"]
    if flow <= most * (1 + _SAME):
        kept, rise = "flow", _stepped(flow, most, step)
    elif planes <= most * (1 + _SAME):
        kept, rise = "planes", _stepped(most, planes, step)
    else:
        kept, rise = "none", _stepped(planes, math.inf, step)
    return RiseChoice(rise=rise, least_rise_flow=flow, least_rise_planes=planes, greatest_rise=most, kept=kept)


def _stepped(wanted: float, bound: float, step: float) -> float:
    """The nearest step from `wanted` towards `bound` that does not pass it; `wanted` where there is none."""
    if step <= 0:
        return wanted
    up = bound >= wanted
    at = step * (math.ceil(wanted / step - _SAME) if up else math.floor(wanted / step + _SAME))
    passed = at > bound * (1 + _SAME) if up else at < bound * (1 - _SAME)
    return wanted if passed else at


def drain_ratio(outline: Sequence[XY], drain: XY) -> float:
    """Farthest over nearest side of a floor from a drain: with a level perimeter the planes' falls differ so much.

    Infinite where the drain does not see the whole floor.
    """
    away = []
    for a, b in zip(outline, (*outline[1:], outline[0]), strict=True):
        inside = (b[0] - a[0]) * (drain[1] - a[1]) - (b[1] - a[1]) * (drain[0] - a[0])
        away.append(inside / math.dist(a, b))
    return max(away) / min(away) if min(away) > _SAME else math.inf


def drain_places(outline: Sequence[XY], origin: XY, axes: tuple[XY, XY], step: float) -> Iterator[XY]:
    """Places for a drain on a grid of whole steps from an origin, over the whole floor.

    Args:
        outline: The floor.
        origin: Where the grid starts.
        axes: Its two unit vectors.
        step: Distance between places.
    """
    spans = []
    for axis in axes:
        along = [(u - origin[0]) * axis[0] + (v - origin[1]) * axis[1] for u, v in outline]
        spans.append(range(math.ceil(min(along) / step), math.floor(max(along) / step) + 1))
    for i in spans[0]:
        for j in spans[1]:
            yield (
                origin[0] + step * (i * axes[0][0] + j * axes[1][0]),
                origin[1] + step * (i * axes[0][1] + j * axes[1][1]),
            )


def nearest_drain(
    outline: Sequence[XY], drain: XY, places: Sequence[XY], limits: FallLimits
) -> tuple[XY | None, float]:
    """The place nearest to a drain from which a level perimeter keeps both limits on every plane.

    Returns:
        The place, None where there is none among `places`, and the least ratio found among them.
    """
    rated = [(drain_ratio(outline, place), place) for place in places]
    least = min((ratio for ratio, _ in rated), default=math.inf)
    allowed = math.inf if limits.greatest is None else limits.greatest / limits.least
    good = [place for ratio, place in rated if ratio <= allowed * (1 + _SAME) and ratio < math.inf]
    return min(good, key=lambda place: (round(math.dist(place, drain), 3), place), default=None), least


def largest_tile(floor: FallingFloor, step: float) -> float:
    """Side of the largest tile that may lie across a fold uncut.

    A flat tile of side s across the middle of a fold that turns by t leaves the planes by s t / 4 at most: its
    sagitta. That is the step that it makes beside a neighbour which follows the planes.

    Args:
        floor: The floor.
        step: Step allowed between neighbouring tiles.

    Returns:
        The side; infinite on a single plane.
    """
    turn = max((fold.turn for fold in floor.folds), default=0.0)
    return 4 * step / turn if turn > 0 else math.inf

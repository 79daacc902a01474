"""Board edges that run with the framing: which have no member behind them, and where one must be added.

An edge at a seam, at the end of a wall and beside an opening is held alike: by screws in a member that lies under
it. How far out over the surface such an edge stands does not matter, so every side of every board is asked.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon

from firstcourse.geometry import LineAxes, Point, Ring, bounds, sides
from firstcourse.plan import (
    Board,
    Opening,
    OpeningKind,
    SideKind,
    Support,
    SupportKind,
    Surface,
    SurfaceKind,
    opening_ring,
)
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM

PIERCING = frozenset({OpeningKind.VALVE, OpeningKind.PIPE, OpeningKind.BOX, OpeningKind.DRAIN, OpeningKind.FLANGE})
"""Openings cut through a board for what comes out of the wall: nothing carries the edges of small ones."""
_MOST_SLOPE = math.tan(math.radians(10))
_HAIR = 2
_EVERY = 5 * TICKS_PER_MM
"""An edge askew to a member is asked this often [ticks]."""
_NEARLY = 50 * TICKS_PER_MM
"""Members in one line with no more than this between them are one [ticks]."""


class Run(NamedTuple):
    """A stretch of a board's edge without a member: its ends, the board on the left of the way between."""

    start: Point
    end: Point


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeRules:
    """How an edge is carried [ticks].

    Attributes:
        bearing: Least width of the faces under the edge.
        reach: Within this distance of the edge.
        fastener: Least distance of a fastener from the edge.
        short: An edge no longer than this is held by the board beside it.
        pierced: Largest opening that only pierces a board.
    """

    bearing: int
    reach: int
    fastener: int
    short: int
    pierced: int


def edge_rules(surface: Surface, rules: RuleSet) -> EdgeRules:
    """The rules that edges of a surface's boards keep."""
    kind = "floor" if surface.kind is SurfaceKind.FLOOR else "wall"
    return EdgeRules(
        bearing=rules.ticks("boards.bearing.min"),
        reach=rules.ticks("boards.edge.reach"),
        fastener=rules.ticks("fastening.edge.min"),
        short=rules.ticks("boards.edge.short"),
        pierced=rules.ticks(f"fastening.spacing.{kind}"),
    )


def edge_members(
    surface: Surface, boards: Iterable[Board], supports: Sequence[Support], rules: RuleSet
) -> tuple[list[Ring], list[Run]]:
    """Members to add behind edges of boards that run with the framing and have none.

    Args:
        surface: The surface, with its openings.
        boards: Its boards.
        supports: Its members, those added behind seams among them.
        rules: Rules in force.

    Returns:
        Their faces, and what of edges hangs all the same because others stand in the way.
    """
    if not surface.framing_axis or any(support.kind is SupportKind.PANEL for support in supports):
        return [], []
    limits = edge_rules(surface, rules)
    width = rules.ticks("framing.stud_width" if surface.kind is SurfaceKind.WALL else "framing.joist_width")
    faces = [support.outline for support in supports]
    found: list[Ring] = []
    barred: list[Run] = []
    for run in _bare_runs(surface, boards, faces, limits):
        out = width // 2 if _stops_free(run, surface) else rules.ticks("boards.gap.between")
        more = _behind(run, [*faces, *found], out, width, limits)
        left = bare_parts(run.start, run.end, [*faces, *found, *more], limits)
        if left:
            barred.append(run)
        found = _joined([*found, *more], surface)
    return found, [part for run in barred for part in bare_parts(run.start, run.end, [*faces, *found], limits)]


def open_edges(surface: Surface, boards: Iterable[Board], rules: RuleSet) -> list[Run]:
    """The stretches of edges that run with the framing and have too little of its members behind them."""
    if not surface.framing_axis or any(support.kind is SupportKind.PANEL for support in surface.supports):
        return []
    faces = [support.outline for support in surface.supports]
    return list(_bare_runs(surface, boards, faces, edge_rules(surface, rules)))


def _bare_runs(surface: Surface, boards: Iterable[Board], faces: list[Ring], limits: EdgeRules) -> Iterator[Run]:
    boxes = [bounds(face) if _is_box(face) else None for face in faces]
    for board in boards:
        for a, b in edges_along(board, surface, limits):
            if surface.part_of and _stops_free(Run(a, b), surface):
                # The front of a window's return stands a board's thickness before its framing, as it must.
                continue
            if not _plainly_carried(a, b, boxes, limits):
                yield from bare_parts(a, b, faces, limits)


def edges_along(board: Board, surface: Surface, limits: EdgeRules) -> Iterator[tuple[Point, Point]]:
    """The sides of a board that need a member along them, the board on the left of the way along each."""
    along = 1 if surface.framing_axis == "v" else 0
    for ring in (board.outline, *board.holes):
        for a, b in sides(ring):
            length = abs(b[along] - a[along])
            if length <= limits.short or abs(b[1 - along] - a[1 - along]) > length * _MOST_SLOPE:
                continue
            if not any(_pierced(a, b, opening, limits) for opening in surface.openings):
                yield a, b


def _pierced(a: Point, b: Point, opening: Opening, limits: EdgeRules) -> bool:
    if opening.kind not in PIERCING:
        return False
    left, lower, right, upper = bounds(opening_ring(opening))
    if max(right - left, upper - lower) > limits.pierced:
        return False
    far = limits.bearing
    return all(left - far <= u <= right + far and lower - far <= v <= upper + far for u, v in (a, b))


def _is_box(ring: Ring) -> bool:
    left, lower, right, upper = bounds(ring)
    return len(ring) == 4 and all(u in (left, right) and v in (lower, upper) for u, v in ring)


def _plainly_carried(a: Point, b: Point, boxes: list[tuple[int, int, int, int] | None], limits: EdgeRules) -> bool:
    """Whether one member lies under all of an edge that runs along an axis, told without its areas."""
    if a[0] != b[0] and a[1] != b[1]:
        return False
    along = 0 if a[1] == b[1] else 1
    across = 1 - along
    inwards = 1 if (b[along] > a[along]) == (along == 0) else -1
    low, high = sorted((a[along], b[along]))
    for box in boxes:
        if box is None or box[along] > low + limits.short or box[along + 2] < high - limits.short:
            continue
        near, far = sorted(((box[across] - a[across]) * inwards, (box[across + 2] - a[across]) * inwards))
        under = min(far, limits.reach) - max(near, 0)
        if under >= limits.bearing and far > limits.fastener:
            return True
    return False


def bare_parts(a: Point, b: Point, faces: Sequence[Ring], limits: EdgeRules) -> list[Run]:
    """The stretches of an edge, longer than a short one, under which too little of any face lies [ticks]."""
    frame = LineAxes.along(a, a, b)
    length = math.hypot(b[0] - a[0], b[1] - a[1])
    reach = shapely.box(0, 0, length, limits.reach)
    near = [part for face in faces for part in [frame.local(Polygon(face))] if part.intersects(reach)]
    places = sorted(
        {0.0, length}
        | {t for part in near for t in shapely.get_coordinates(part)[:, 0].tolist() if 0 < t < length}
        | ({float(t) for t in range(0, int(length), _EVERY)} if any(map(_is_askew, near)) else set())
    )
    found: list[list[float]] = []
    between = list(pairwise(places))
    for (start, end), carried in zip(between, _carried(near, between, limits), strict=True):
        if carried:
            continue
        if found and start - found[-1][1] <= _HAIR:
            found[-1][1] = end
        else:
            found.append([start, end])
    return [
        Run(frame.placed((round(start), 0)), frame.placed((round(end), 0)))
        for start, end in found
        if end - start > limits.short
    ]


def _is_askew(part: Polygon) -> bool:
    """Whether a member runs otherwise than the edge that it is seen from: it may carry one end of it alone."""
    left, lower, right, upper = part.bounds
    return bool(part.area < (right - left - _HAIR) * (upper - lower - _HAIR))


def _carried(near: list[Polygon], between: list[tuple[float, float]], limits: EdgeRules) -> NDArray[np.bool_]:
    """Whether faces bear an edge half way between two places between which none begins or ends, for each two."""
    at = np.array(between, np.float64).mean(axis=1)
    wood = shapely.union_all(near)
    shapely.prepare(wood)
    under, driven = (
        shapely.length(
            shapely.intersection(
                shapely.linestrings(
                    np.stack(
                        [
                            np.stack([at, np.full_like(at, low)], 1),
                            np.stack([at, np.full_like(at, limits.reach)], 1),
                        ],
                        1,
                    )
                ),
                wood,
            )
        )
        for low in (0, limits.fastener)
    )
    found: NDArray[np.bool_] = (under >= limits.bearing - _HAIR) & (
        driven >= limits.bearing - limits.fastener - _HAIR
    )
    return found


def _stops_free(run: Run, surface: Surface) -> bool:
    """Whether an edge lies where the boarding simply stops: what lies beyond needs its share of the member."""
    middle = shapely.Point((run.start[0] + run.end[0]) / 2, (run.start[1] + run.end[1]) / 2)
    return any(
        side.kind is SideKind.FREE and shapely.LineString([a, b]).distance(middle) <= TICKS_PER_MM * 2
        for (a, b), side in zip(sides(surface.outline), surface.sides, strict=True)
    )


def _behind(run: Run, faces: list[Ring], out: int, width: int, limits: EdgeRules) -> list[Ring]:
    """Faces of members under an edge: one as wide as usual, less where others stand in its way.

    Args:
        run: The edge.
        faces: Members that are there.
        out: How far a member reaches out beyond the edge where nothing stands there.
        width: How wide one is.
        limits: Rules to keep.
    """
    frame = LineAxes.along(run.start, run.start, run.end)
    length = math.hypot(run.end[0] - run.start[0], run.end[1] - run.start[1])
    there = []
    for face in faces:
        part = frame.local(Polygon(face)).intersection(
            shapely.box(limits.short, -out, length - limits.short, 2 * width)
        )
        if not part.is_empty and part.area > TICKS_PER_MM**2:
            there.append((part.bounds[1], part.bounds[3]))
    found = []
    at = -out
    for low, high in [*sorted(there), (math.inf, math.inf)]:
        if at >= limits.reach:
            break
        end = min(at + width, low)
        if end - at >= limits.bearing and end > 0:
            found.append((at, round(end)))
        at = max(at, math.ceil(high)) if math.isfinite(high) else limits.reach
    return [
        tuple(frame.placed(spot) for spot in ((0, low), (round(length), low), (round(length), high), (0, high)))
        for low, high in found
    ]


def _joined(rings: list[Ring], surface: Surface) -> list[Ring]:
    """Members in one line that meet, or nearly, as one."""
    along = 1 if surface.framing_axis == "v" else 0
    found: list[Ring] = []
    for ring in rings:
        box = bounds(ring)
        if _is_box(ring):
            for other in [other for other in found if _is_box(other)]:
                its = bounds(other)
                if (
                    (its[1 - along], its[3 - along]) == (box[1 - along], box[3 - along])
                    and its[along] <= box[along + 2] + _NEARLY
                    and box[along] <= its[along + 2] + _NEARLY
                ):
                    found.remove(other)
                    box = (min(box[0], its[0]), min(box[1], its[1]), max(box[2], its[2]), max(box[3], its[3]))
            left, lower, right, upper = box
            ring = ((left, lower), (right, lower), (right, upper), (left, upper))
        found.append(ring)
    return found

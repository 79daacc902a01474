"""Edges along the framing held at every point: fasteners added where one lies too far from all."""

import math
from collections.abc import Iterable, Sequence

import shapely
from shapely import Polygon

from firstcourse.boards.fastening.ground import FastenerGround, FastenerLimits
from firstcourse.boards.fastening.strip import FastenerStrip, kept_off, lines_across
from firstcourse.geometry import LineAxes, Point

_SLACK = 1.0


def held_edges(
    edges: Iterable[tuple[Point, Point]],
    ground: FastenerGround,
    faces: Sequence[Polygon],
    points: list[Point],
    limits: FastenerLimits,
) -> list[tuple[Point, Point]]:
    """Add fasteners until every point of some edges is within reach of one.

    Args:
        edges: Edges of a board, the board on the left of the way from one end to the other.
        ground: The board's areas.
        faces: Members behind it.
        points: Its fasteners; those that are wanted are added.
        limits: Rules to keep.

    Returns:
        The edges that no fastener more can hold.
    """
    wood = None
    loose = []
    for a, b in edges:
        frame = LineAxes.along(a, a, b)
        length = math.dist(a, b)
        while (bare := _first_bare(frame, length, points, limits)) is not None:
            if wood is None:
                wood = ground.legal.intersection(shapely.union_all(faces))
            local = [frame.local_spot(point) for point in points]
            strip = FastenerStrip(
                legal=kept_off(frame.local(wood), local, limits.apart),
                lines=lines_across(limits.edge, limits.line_reach, limits.edge, limits.graduation),
                low=0,
                high=length,
                limits=limits,
            )
            spot = strip.nearest(bare + limits.edge_reach, bare - limits.edge_reach, bare + limits.edge_reach)
            added = None if spot is None else frame.placed(spot)
            if added is None or _covers(frame.local_spot(added), limits)[1] < bare + _SLACK:
                loose.append((a, b))
                break
            points.append(added)
    return loose


def _covers(spot: tuple[float, float], limits: FastenerLimits) -> tuple[float, float]:
    """The stretch of an edge within reach of a fastener; an empty one where it is too far aside."""
    t, c = spot
    if abs(c) > limits.edge_reach:
        return t, t
    half = math.sqrt(limits.edge_reach**2 - c**2)
    return t - half, t + half


def _first_bare(frame: LineAxes, length: float, points: list[Point], limits: FastenerLimits) -> float | None:
    """The first place along an edge that no fastener is near enough to."""
    at = 0.0
    for start, end in sorted(_covers(frame.local_spot(point), limits) for point in points):
        if start > at + _SLACK:
            break
        at = max(at, end)
    return None if at >= length - _SLACK else at

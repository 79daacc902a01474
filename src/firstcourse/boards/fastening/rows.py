"""The rows of one board over a panel: one along each edge that lies across, and even rows between.

Each row is spread over what the board covers there, so that a board with a notch or a jog gets the same spacing as
its neighbour, and no second grid beside the row along an edge.
"""

import math
from collections.abc import Iterable, Iterator
from itertools import pairwise

import shapely

from firstcourse.boards.fastening.ground import FastenerLimits
from firstcourse.geometry import Point, bounds, sides
from firstcourse.plan import Board
from firstcourse.units import floor_to

Place = tuple[float, float]
Line = tuple[Place, Place]


def spots_in_rows(
    board: Board, shape: shapely.Geometry, limits: FastenerLimits, offset: int, most: int
) -> Iterator[Place]:
    """Places of a board's fasteners, row by row from below, each from the left.

    Args:
        board: A placed board.
        shape: What of it may be fastened.
        limits: Rules to keep.
        offset: How far rows lie from the edges they follow [ticks].
        most: Largest distance of neighbours within a row and between rows [ticks].
    """
    step = limits.graduation
    left, lower, _, _ = bounds(board.outline)
    for (au, av), (bu, bv) in _lines(board, limits, offset, most):
        slope = (bv - av) / (bu - au)
        for start, end in _within(shape, ((au, av), (bu, bv))):
            for u in _even(start + offset, end - offset, most, step, left):
                v = av + slope * (u - au)
                yield (u, lower + round((v - lower) / step) * step if not slope else v)


def _lines(board: Board, limits: FastenerLimits, offset: int, most: int) -> list[Line]:
    left, _, right, _ = bounds(board.outline)
    clusters: list[list[Line]] = []
    for line in sorted(_along_edges(board, limits, offset), key=_low):
        if clusters and _low(line) - max(map(_high, clusters[-1])) < most / 2:
            clusters[-1].append(line)
        else:
            clusters.append([line])
    found: list[Line] = []
    for cluster in clusters:
        level = max(cluster, key=lambda line: line[1][0] - line[0][0])
        middle = (level[0][1] + level[1][1]) / 2
        if len(cluster) == 1 and level[0][1] == level[1][1]:
            found.append(((left, middle), (right, middle)))
        else:
            found += cluster
            found += [((a, middle), (b, middle)) for a, b in _beside(cluster, left, right, most / 2)]
    for below, above in pairwise(clusters):
        low, high = min(map(_low, below)), max(map(_high, above))
        parts = math.ceil((high - low) / most)
        levels = [low + (high - low) * part / parts for part in range(1, parts)]
        found += [((left, level), (right, level)) for level in levels]
    return sorted(found, key=lambda line: (min(line[0][1], line[1][1]), line))


def _along_edges(board: Board, limits: FastenerLimits, offset: int) -> Iterator[Line]:
    """Lines inside the edges that lie across rather than up, each from left to right."""
    for ring in (board.outline, *board.holes):
        for a, b in sides(ring):
            du, dv = b[0] - a[0], b[1] - a[1]
            length = math.hypot(du, dv)
            if abs(dv) >= abs(du) or length <= 2 * limits.corner:
                continue
            off = (-dv / length * offset, du / length * offset)
            one, other = sorted(((a[0] + off[0], a[1] + off[1]), (b[0] + off[0], b[1] + off[1])))
            yield one, other


def _low(line: Line) -> float:
    return min(line[0][1], line[1][1])


def _high(line: Line) -> float:
    return max(line[0][1], line[1][1])


def _beside(cluster: Iterable[Line], left: float, right: float, least: float) -> Iterator[tuple[float, float]]:
    """The stretches from left to right, longer than `least`, that no line of a cluster spans."""
    at = left
    for (start, _), (end, _) in sorted(cluster):
        if start - at > least:
            yield at, start
        at = max(at, end)
    if right - at > least:
        yield at, right


def _within(shape: shapely.Geometry, line: Line) -> list[tuple[float, float]]:
    found = []
    for part in shapely.get_parts(shape.intersection(shapely.LineString(line))):
        us = shapely.get_coordinates(part)[:, 0]
        if len(us) > 1 and max(us) > min(us):
            found.append((float(min(us)), float(max(us))))
    return sorted(found)


def _even(low: float, high: float, most: float, step: int, origin: int) -> list[int]:
    """Places evenly spread over tape marks from end to end; the middle where there is no room for two."""
    first = origin + math.ceil((low - origin) / step - 1e-6) * step
    marks = math.floor((high - first) / step + 1e-6)
    if marks <= 0:
        return [origin + floor_to(round((low + high) / 2) - origin, step)]
    parts = max(1, math.ceil(marks / max(1, most // step)))
    return [first + step * (marks * part // parts) for part in range(parts + 1)]


def as_point(place: Place) -> Point:
    """A place at the nearest tick."""
    return round(place[0]), round(place[1])

"""Fasteners over a panel, which carries everywhere: a row along each edge, and a grid over the field."""

import math
from itertools import pairwise

import numpy as np
import shapely

from firstcourse.boards.fastening.ground import FastenerGround, FastenerLimits
from firstcourse.boards.fastening.rows import as_point, spots_in_rows
from firstcourse.boards.fastening.strip import FastenerStrip, kept_off, lines_across
from firstcourse.geometry import LineAxes, Point, sides
from firstcourse.plan import Board
from firstcourse.units import floor_to

_WAYS = ((1, 0), (0, 1), (-1, 0), (0, -1))
_CONE = math.tan(math.radians(30))
_ASIDE = 1 / 2
"""A neighbour counts as lying straight ahead within this slope, or within this share of the spacing aside: rows
that dodge a screw or meet another at a jog are still rows."""


def over_panel(
    board: Board, ground: FastenerGround, limits: FastenerLimits, *, dodges: bool
) -> tuple[list[Point], bool]:
    """Fasteners of one board over a panel.

    Args:
        board: A placed board.
        ground: Its areas.
        limits: Rules to keep.
        dodges: Whether screws of the panel are known; the grid is then closer by their clearance, so that a
            fastener moved aside still keeps the spacing.

    Returns:
        The places, and whether spacing is kept along the edges and both ways from every fastener.
    """
    offset = max(limits.edge, floor_to((limits.edge + limits.edge_most) // 2, limits.graduation))
    most = limits.spacing - (limits.clear if dodges else 0)
    shapely.prepare(ground.legal)
    points: list[Point] = []
    for place in spots_in_rows(board, ground.open, limits, offset, most):
        spot = _dodged(as_point(place), ground, limits, points)
        if spot is not None:
            points.append(spot)
    kept = _edge_rows(board, ground, limits, offset, points)
    return points, _filled(points, ground, limits) and kept


def _edge_rows(
    board: Board, ground: FastenerGround, limits: FastenerLimits, offset: int, points: list[Point]
) -> bool:
    """Add what the rows along edges still lack; says whether every edge has its row."""
    all_kept = True
    outer = [(a, b, 2 * limits.corner) for a, b in sides(board.outline)]
    inner = [(a, b, limits.spacing) for hole in board.holes for a, b in sides(hole)]
    for a, b, least in outer + inner:
        length = math.hypot(b[0] - a[0], b[1] - a[1])
        if length <= least:
            continue
        frame = LineAxes.along(a, a, b)
        local = [frame.local_spot(point) for point in points]
        taken = [t for t, c in local if 0 <= t <= length and limits.edge - 1 <= c <= limits.edge_most + 1]
        if all(b - a <= limits.spacing for a, b in pairwise((0, *sorted(taken), length))):
            continue
        beside = frame.local(ground.legal).intersection(shapely.box(0, 0, length, limits.edge_most))
        strip = FastenerStrip(
            legal=kept_off(beside, local, limits.apart),
            lines=lines_across(limits.edge, limits.edge_most, offset, limits.graduation),
            low=0,
            high=length,
            limits=limits,
        )
        spots, kept = strip.fill(taken)
        points += [frame.placed(spot) for spot in spots]
        all_kept &= kept or length <= limits.spacing + 2 * limits.corner
    return all_kept


def _dodged(point: Point, ground: FastenerGround, limits: FastenerLimits, points: list[Point]) -> Point | None:
    """The legal place nearest to a point, no farther aside than clears a corner or a screw; None where none is."""
    u, v = point
    step = limits.graduation
    for away in range(0, max(limits.clear, limits.corner) + 2 * step, step):
        for du, dv in _WAYS if away else ((0, 0),):
            spot = (u + du * away, v + dv * away)
            if shapely.intersects_xy(ground.legal, *spot) and _apart(spot, points) >= limits.apart:
                return spot
    return None


def _apart(spot: Point, points: list[Point]) -> float:
    return min((math.dist(spot, point) for point in points), default=math.inf)


def _filled(points: list[Point], ground: FastenerGround, limits: FastenerLimits) -> bool:
    """Add fasteners where none follows within the spacing, going out from each of the four ways in turn."""
    shapely.prepare(ground.open)
    kept, index = True, 0
    while index < len(points):
        for way in _WAYS:
            if not _lacks(points[index], way, points, ground, limits.spacing):
                continue
            more = _ahead(points[index], way, points, ground, limits)
            if more is None:
                kept = False
            else:
                points.append(more)
        index += 1
    return kept


def _lacks(point: Point, way: tuple[int, int], points: list[Point], ground: FastenerGround, reach: int) -> bool:
    (u, v), (du, dv) = point, way
    offsets = np.array(points) - (u, v)
    forward = offsets @ (du, dv)
    aside = np.abs(offsets @ (dv, du))
    if bool(np.any((forward > 0) & (forward <= reach) & (aside <= np.maximum(forward * _CONE, reach * _ASIDE)))):
        return False
    return bool(ground.open.contains(shapely.LineString([point, (u + du * reach, v + dv * reach)])))


def _ahead(
    point: Point, way: tuple[int, int], points: list[Point], ground: FastenerGround, limits: FastenerLimits
) -> Point | None:
    """The farthest legal place within the spacing straight ahead, or a little aside of that."""
    (u, v), (du, dv) = point, way
    step = limits.graduation
    for forward in range(floor_to(limits.spacing, step), limits.corner, -step):
        for aside in (0, *(sign * away for away in range(step, limits.corner, step) for sign in (1, -1))):
            if abs(aside) > forward * _CONE:
                continue
            spot = (u + du * forward + dv * aside, v + dv * forward + du * aside)
            if shapely.intersects_xy(ground.legal, *spot) and _apart(spot, points) >= limits.apart:
                return spot
    return None

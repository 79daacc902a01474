"""Edges of boards that run with the framing: each lies on a member, and is held by a fastener near every point."""

import math
from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon, STRtree

from firstcourse.geometry.polygon import Point, sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.coverage import SLOPED_SLACK, board_hole
from firstcourse.verify.structure import Board, Document, Surface
from firstcourse.verify.verdict import Objection

_PIERCING = ("valve", "pipe", "box", "drain", "flange")
_MOST_TURN = math.radians(10)
_AT_SIDE = 2 * TICKS_PER_MM
"""An edge at a free side may fall back to the last mark of the tape [ticks]."""
_EVERY = 10 * TICKS_PER_MM
"""Edges are asked at places no farther apart than this [ticks]."""


def check_edges(plan: Document) -> Iterator[Objection]:
    """Object to edges along the framing that no member carries, or that lie too far from a fastener."""
    for surface in plan.surfaces:
        if surface.carried_everywhere:
            continue
        if not surface.framing_axis:
            if surface.boards and any(_leans_little(support.outline) for support in surface.supports):
                yield Objection("VER-306", surface.id, "its members run along an axis, and the plan names none")
            elif surface.boards and surface.supports and not plan.says(surface, code="SUI-115"):
                yield Objection("VER-306", surface.id, "no edge runs along its members, and nothing says so")
            continue
        faces = STRtree([Polygon(support.outline) for support in surface.supports])
        told = plan.says(surface, code="BRD-102")
        loose = plan.says(surface, code="FST-105")
        for board in surface.boards:
            if board.fixed:
                continue
            for a, b in _edges(board, surface, plan):
                if not told and not _is_front(a, b, surface) and _hangs(a, b, faces, plan):
                    yield Objection("VER-306", board.id, f"no member carries the edge from {a} to {b}")
                    break
                if not loose and _far(a, b, board.fasteners, plan):
                    yield Objection("VER-409", board.id, f"no fastener is near enough to the edge from {a} to {b}")
                    break


def _is_front(a: Point, b: Point, surface: Surface) -> bool:
    """Whether an edge is the front of a window's return, which stands a board's thickness before its framing."""
    if not surface.part_of:
        return False
    rims = zip(sides(surface.outline), surface.sides, strict=True)
    fronts = [shapely.LineString(rim) for rim, kind in rims if kind == "free"]
    return any(all(front.distance(shapely.Point(end)) <= _AT_SIDE for end in (a, b)) for front in fronts)


def _leans_little(ring: Sequence[Point]) -> bool:
    """Whether a member's longest side turns no more than an edge along the framing may."""
    du, dv = max(((b[0] - a[0], b[1] - a[1]) for a, b in sides(tuple(ring))), key=lambda side: math.hypot(*side))
    return math.atan2(min(abs(du), abs(dv)), max(abs(du), abs(dv))) <= _MOST_TURN


def _edges(board: Board, surface: Surface, plan: Document) -> Iterator[tuple[Point, Point]]:
    """The board's edges along the framing, openings that only pierce it left out."""
    short = plan.rules.ticks("boards.edge.short")
    axis = 1 if surface.framing_axis == "v" else 0
    spacing = plan.rules.ticks("fastening.spacing.floor" if surface.kind == "floor" else "fastening.spacing.wall")
    pierced = []
    for opening in surface.openings:
        box = board_hole(opening).bounds
        if opening.kind in _PIERCING and max(box[2] - box[0], box[3] - box[1]) <= spacing + SLOPED_SLACK:
            pierced.append(shapely.box(*box).buffer(plan.rules.ticks("boards.bearing.min"), join_style="mitre"))
    for ring in (board.outline, *board.holes):
        for a, b in sides(ring):
            along, across = abs(b[axis] - a[axis]), abs(b[1 - axis] - a[1 - axis])
            if along <= short + SLOPED_SLACK or math.atan2(across, along) > _MOST_TURN:
                continue
            line = shapely.LineString([a, b])
            if not any(hole.buffer(SLOPED_SLACK).covers(line) for hole in pierced):
                yield a, b


def _samples(a: Point, b: Point) -> NDArray[np.float64]:
    """Places along an edge, its ends among them."""
    number = max(2, math.ceil(math.dist(a, b) / _EVERY))
    shares = np.linspace(0.0, 1.0, number + 1)[:, None]
    start, end = np.array(a, np.float64), np.array(b, np.float64)
    places: NDArray[np.float64] = start + (end - start) * shares
    return places


def _hangs(a: Point, b: Point, faces: STRtree, plan: Document) -> bool:
    """Whether more than a short stretch of an edge lies on too little of any member."""
    rules = plan.rules
    bearing, reach = rules.ticks("boards.bearing.min"), rules.ticks("boards.edge.reach")
    fastener, short = rules.ticks("fastening.edge.min"), rules.ticks("boards.edge.short")
    length = math.dist(a, b)
    # The board lies on the left of the way from a to b.
    inwards = np.array((-(b[1] - a[1]) / length, (b[0] - a[0]) / length))
    places = _samples(a, b)
    near = faces.query(shapely.LineString([a, b]), predicate="dwithin", distance=reach)
    wood = shapely.union_all(faces.geometries[near])
    under, driven = (
        shapely.length(
            shapely.intersection(
                shapely.linestrings(np.stack([places + inwards * start, places + inwards * reach], axis=1)), wood
            )
        )
        for start in (0, fastener)
    )
    slack = 2 * SLOPED_SLACK
    borne = (under >= bearing - slack) & (driven >= bearing - fastener - slack)
    each = length / (len(places) - 1)
    run = 0
    for holds in borne:
        run = 0 if holds else run + 1
        if run * each > short + _EVERY:
            return True
    return False


def _far(a: Point, b: Point, fasteners: Sequence[Point], plan: Document) -> bool:
    reach = plan.rules.ticks("fastening.edge.reach") + SLOPED_SLACK
    if not fasteners:
        return True
    away = np.hypot(*(_samples(a, b)[:, None, :] - np.array(fasteners)[None, :, :]).transpose(2, 0, 1))
    return bool(np.any(away.min(axis=1) > reach))

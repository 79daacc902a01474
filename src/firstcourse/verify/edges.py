"""Edges of boards that run with the framing: each lies on a member, and is held by a fastener near every point."""

import math
from collections.abc import Iterator, Sequence

import shapely
from shapely import Polygon, STRtree

from firstcourse.geometry.polygon import Point, sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.coverage import SLOPED_SLACK, opening_shape
from firstcourse.verify.structure import Board, Document, Surface
from firstcourse.verify.verdict import Objection

_PIERCING = ("valve", "pipe", "box", "drain", "flange")
_MOST_TURN = math.radians(10)
_EVERY = 10 * TICKS_PER_MM
"""Edges are asked at places no farther apart than this [ticks]."""


def check_edges(plan: Document) -> Iterator[Objection]:
    """Object to edges along the framing that no member carries, or that lie too far from a fastener."""
    for surface in plan.surfaces:
        if not surface.framing_axis or surface.carried_everywhere:
            continue
        faces = STRtree([Polygon(support.outline) for support in surface.supports])
        told = plan.says(surface, code="BRD-102")
        loose = plan.says(surface, code="FST-105")
        for board in surface.boards:
            if board.fixed:
                continue
            for a, b in _edges(board, surface, plan):
                if not told and _hangs(a, b, faces, plan):
                    yield Objection("VER-306", board.id, f"no member carries the edge from {a} to {b}")
                    break
                if not loose and _far(a, b, board.fasteners, plan):
                    yield Objection("VER-409", board.id, f"no fastener is near enough to the edge from {a} to {b}")
                    break


def _edges(board: Board, surface: Surface, plan: Document) -> Iterator[tuple[Point, Point]]:
    """The board's edges along the framing, openings that only pierce it left out."""
    short = plan.rules.ticks("boards.edge.short")
    axis = 1 if surface.framing_axis == "v" else 0
    spacing = plan.rules.ticks("fastening.spacing.floor" if surface.kind == "floor" else "fastening.spacing.wall")
    pierced = []
    for opening in surface.openings:
        box = opening_shape(opening).bounds
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


def _samples(a: Point, b: Point) -> Iterator[tuple[float, float]]:
    """Places along an edge, its ends among them."""
    length = math.dist(a, b)
    number = max(2, math.ceil(length / _EVERY))
    for index in range(number + 1):
        share = index / number
        yield a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share


def _hangs(a: Point, b: Point, faces: STRtree, plan: Document) -> bool:
    """Whether more than a short stretch of an edge lies on too little of any member."""
    rules = plan.rules
    bearing, reach = rules.ticks("boards.bearing.min"), rules.ticks("boards.edge.reach")
    fastener, short = rules.ticks("fastening.edge.min"), rules.ticks("boards.edge.short")
    length = math.dist(a, b)
    # The board lies on the left of the way from a to b.
    du, dv = -(b[1] - a[1]) / length, (b[0] - a[0]) / length
    run, last = 0.0, (float(a[0]), float(a[1]))
    for u, v in _samples(a, b):
        probe = shapely.LineString([(u, v), (u + du * reach, v + dv * reach)])
        near = [faces.geometries[i] for i in faces.query(probe, predicate="intersects").tolist()]
        wood = shapely.union_all(near)
        beyond = shapely.LineString([(u + du * fastener, v + dv * fastener), (u + du * reach, v + dv * reach)])
        under, driven = probe.intersection(wood), beyond.intersection(wood)
        slack = 2 * SLOPED_SLACK
        if under.length >= bearing - slack and driven.length >= bearing - fastener - slack:
            run = 0.0
        else:
            run += math.dist(last, (u, v))
            if run > short + _EVERY:
                return True
        last = (u, v)
    return False


def _far(a: Point, b: Point, fasteners: Sequence[Point], plan: Document) -> bool:
    reach = plan.rules.ticks("fastening.edge.reach") + SLOPED_SLACK
    if not fasteners:
        return True
    held = shapely.MultiPoint(fasteners)
    return any(held.distance(shapely.Point(u, v)) > reach for u, v in _samples(a, b))

"""Edges of boards that run with the framing: each lies on a member, and is held by a fastener near every point."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely import Polygon, STRtree

from firstcourse.geometry import Point, sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.coverage import SLOPED_SLACK, board_hole
from firstcourse.verify.structure import Board, Document, Said, Surface
from firstcourse.verify.told import at_least, mm, said, ticks_of, told_of, untrue
from firstcourse.verify.verdict import Objection

_BOX = ("left", "lower", "right", "upper")
_PIERCING = ("valve", "pipe", "box", "drain", "flange")
_MOST_TURN = math.radians(10)
_AT_SIDE = 2 * TICKS_PER_MM
"""An edge at a free side may fall back to the last mark of the tape [ticks]."""
_LOOSE = ("FST-105", "FST-104")
"""What tells that no fastener holds an edge of a board, and that none fits in the board."""
_SPECK = float(TICKS_PER_MM**2)
_EVERY = 10 * TICKS_PER_MM
"""Edges are asked at places no farther apart than this [ticks]."""


def check_edges(plan: Document) -> Iterator[Objection]:
    """Object to edges along the framing that no member carries, or that lie too far from a fastener."""
    for surface in plan.surfaces:
        yield from _up(surface, plan)
        told = told_of(surface, "BRD-102", plan.findings)
        bare: list[Said] = []
        yield from _of_surface(surface, plan, told, bare)
        yield from untrue("VER-306", told, [_hanging(one, plan) for one in bare])


def _of_surface(surface: Surface, plan: Document, told: Sequence[Said], bare: list[Said]) -> Iterator[Objection]:
    """Object to edges of one surface's boards; what is told of them rightly is added to `bare`."""
    if surface.carried_everywhere:
        return
    if not surface.framing_axis:
        if surface.boards and any(_leans_little(support.outline) for support in surface.supports):
            yield Objection("VER-306", surface.id, "its members run along an axis, and the plan names none")
        elif surface.boards and surface.supports and not plan.says(surface, code="SUI-115"):
            yield Objection("VER-306", surface.id, "no edge runs along its members, and nothing says so")
        return
    faces = STRtree([Polygon(support.outline) for support in surface.supports])
    loose, empty = ({at for one in plan.findings if one.code == code for at in one.at} for code in _LOOSE)
    for board in surface.boards:
        if board.fixed:
            continue
        for a, b in _edges(board, surface, plan):
            ends = [(one, *end) for one in told if (end := _on_edge(one, a, b)) is not None]
            for one, start, stop in ends:
                if one not in bare and _ends_bare(a, b, start, stop, faces, plan):
                    bare.append(one)
            if not ends and not _is_front(a, b, surface) and _hangs(a, b, faces, plan):
                yield Objection("VER-306", board.id, f"no member carries the edge from {a} to {b}")
                break
            if board.id in loose or (board.id in empty and not board.fasteners):
                continue
            if _far(a, b, board.fasteners, plan):
                yield Objection("VER-409", board.id, f"no fastener is near enough to the edge from {a} to {b}")
                break


def _up(surface: Surface, plan: Document) -> Iterator[Objection]:
    """Each edge of a board that is up and has no member behind it, as the framing was found, is told."""
    told = told_of(surface, "BRD-103", plan.findings)
    bare: list[Said] = []
    found = [Polygon(support.outline) for support in surface.supports if not support.added]
    faces = STRtree(found or [Polygon()])
    up = [board for board in surface.boards if board.fixed]
    for board in up if surface.framing_axis and not surface.carried_everywhere else ():
        mine = [one for one in told if one.place == board.id]
        for a, b in _edges(board, surface, plan):
            ends = [(one, *end) for one in mine if (end := _on_edge(one, a, b)) is not None]
            bare += [
                one for one, start, end in ends if one not in bare and _ends_bare(a, b, start, end, faces, plan)
            ]
            if not ends and not _is_front(a, b, surface) and _hangs(a, b, faces, plan):
                yield Objection(
                    "VER-311", board.id, f"nothing says that no member carries the edge from {a} to {b}"
                )
    wanted = [replace(_hanging(one, plan), code="BRD-103", remedies=("block",)) for one in bare]
    yield from untrue("VER-311", told, wanted)


def _hanging(told: Said, plan: Document) -> Said:
    """What a finding says that is right in where an edge hangs."""
    places = {key: mm(ticks_of(told.values.get(key)) or 0) for key in _BOX}
    limit = at_least(plan.rules.ticks("boards.bearing.min"))
    return said("BRD-102", "fix", told.place, "pack_out", rule="boards.bearing.min", limit=limit, **places)


def _on_edge(told: Said, a: Point, b: Point) -> tuple[float, float] | None:
    """Where along the edge from a to b a stretch that is told begins and ends, None where it lies elsewhere."""
    box = [ticks_of(told.values.get(key)) for key in _BOX]
    if None in box:
        return None
    left, lower, right, upper = (float(side or 0) for side in box)
    edge = shapely.LineString([a, b])
    for ends in (((left, lower), (right, upper)), ((left, upper), (right, lower))):
        points = [shapely.Point(end) for end in ends]
        if all(edge.distance(point) <= 2 * SLOPED_SLACK for point in points):
            start, end = sorted(edge.project(point) for point in points)
            return start, end
    return None


def _ends_bare(a: Point, b: Point, start: float, end: float, faces: STRtree, plan: Document) -> bool:
    """Whether an edge hangs between two places along it, and no farther [ticks]."""
    near = faces.geometries[faces.query(shapely.LineString([a, b]), predicate="dwithin", distance=_EVERY)]
    square = shapely.area(near) >= shapely.area(shapely.envelope(near)) - _SPECK
    straight = (a[0] == b[0] or a[1] == b[1]) and bool(square.all())
    # Along an edge askew to the members planners may look at it no closer than checks do.
    off = 3 * SLOPED_SLACK if straight else _EVERY
    length, slack = math.dist(a, b), 2 * SLOPED_SLACK
    if end - start <= 2 * off:
        return False
    beyond = [at for at in (start - off, end + off) if 0 < at < length]
    # At the ends, and between them as close as edges are asked.
    within = np.linspace(start + off, end - off, max(2, math.ceil((end - start) / _EVERY)))
    inside, outside = (
        _borne(a, b, np.array([_along(a, b, at) for at in places]).reshape(-1, 2), faces, plan, by)
        for places, by in ((within, slack), (beyond, -slack))
    )
    return not inside.any() and bool(outside.all())


def _along(a: Point, b: Point, at: float) -> tuple[float, float]:
    share = at / math.dist(a, b)
    return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share


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
    length, places = math.dist(a, b), _samples(a, b)
    each = length / (len(places) - 1)
    run = 0
    for holds in _borne(a, b, places, faces, plan, -2 * SLOPED_SLACK):
        run = 0 if holds else run + 1
        if run * each > plan.rules.ticks("boards.edge.short") + _EVERY:
            return True
    return False


def _borne(
    a: Point, b: Point, places: NDArray[np.float64], faces: STRtree, plan: Document, more: int
) -> NDArray[np.bool_]:
    """At which places of an edge members bear it, by so much more than is asked [ticks]."""
    rules = plan.rules
    bearing, reach = rules.ticks("boards.bearing.min"), rules.ticks("boards.edge.reach")
    fastener, length = rules.ticks("fastening.edge.min"), math.dist(a, b)
    # The board lies on the left of the way from a to b.
    inwards = np.array((-(b[1] - a[1]) / length, (b[0] - a[0]) / length))
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
    found: NDArray[np.bool_] = (under >= bearing + more) & (driven >= bearing - fastener + more)
    return found


def _far(a: Point, b: Point, fasteners: Sequence[Point], plan: Document) -> bool:
    reach = plan.rules.ticks("fastening.edge.reach") + SLOPED_SLACK
    if not fasteners:
        return True
    away = np.hypot(*(_samples(a, b)[:, None, :] - np.array(fasteners)[None, :, :]).transpose(2, 0, 1))
    return bool(np.any(away.min(axis=1) > reach))

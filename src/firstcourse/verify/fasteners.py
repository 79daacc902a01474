"""Fasteners: off edges and corners, on members, out of forbidden ground, close enough together."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

import shapely
from shapely import MultiPoint, Polygon, STRtree
from shapely import Point as Spot
from shapely.ops import unary_union

from firstcourse.geometry import Point, axis_of, bounds, sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.coverage import SLACK, SLOPED_SLACK
from firstcourse.verify.structure import Board, Document, Surface
from firstcourse.verify.verdict import Objection

_LEAST_TURN = math.radians(30)
_CONE = math.radians(30)
_ASIDE = 1 / 2
"""What follows within this share of the spacing aside, or within the cone, follows ahead."""


def check_fasteners(plan: Document) -> Iterator[Objection]:
    """Object to fasteners out of place or too far apart. Boards that are already up are taken as they are."""
    for surface in plan.surfaces:
        carried = unary_union([Polygon(support.outline) for support in surface.supports])
        zones = unary_union([Polygon(zone) for zone in surface.zones])
        for board in surface.boards:
            if board.fixed:
                continue
            if surface.slab == "bonded":
                if board.fasteners:
                    yield Objection("VER-410", board.id, "is bonded to a slab, and has fasteners")
                continue
            yield from _placed(board, surface, plan, carried, zones)
            if surface.framing_axis and not surface.carried_everywhere and not plan.says(surface, code="FST-107"):
                yield from _barred(board, surface, plan, zones)
            if plan.says(surface, rule=_spacing_rule(surface)):
                continue
            if surface.kind == "floor" and surface.carried_everywhere:
                yield from _edge_rows(board, surface, plan)
                yield from _field_rows(board, surface, plan, zones)
            elif surface.framing_axis:
                yield from _along_members(board, surface, plan, zones)


def _spacing_rule(surface: Surface) -> str:
    return "fastening.spacing.floor" if surface.kind == "floor" else "fastening.spacing.wall"


def _placed(
    board: Board, surface: Surface, plan: Document, carried: shapely.Geometry, zones: shapely.Geometry
) -> Iterator[Objection]:
    rules = plan.rules
    edge, corner = rules.ticks("fastening.edge.min"), rules.ticks("fastening.corner.min")
    clear = rules.ticks("fastening.panel_screw_clear")
    shape = board.shape
    corners = MultiPoint(_corners(board))
    screws = MultiPoint(surface.panel_screws)
    keeps_corners = not plan.says(surface, rule="fastening.corner.min")
    yield from _too_near(board, rules.ticks("fastening.apart.min"))
    for place in board.fasteners:
        spot = Spot(place)
        if not shape.contains(spot):
            yield Objection("VER-407", board.id, f"fastener {place} is not in the board")
            continue
        if shape.boundary.distance(spot) < edge - SLOPED_SLACK:
            yield Objection("VER-401", board.id, f"fastener {place} is too near an edge")
        if keeps_corners and not corners.is_empty and corners.distance(spot) < corner - SLOPED_SLACK:
            yield Objection("VER-402", board.id, f"fastener {place} is too near a corner")
        if surface.supports and not carried.intersects(spot):
            yield Objection("VER-403", board.id, f"fastener {place} is on no member")
        if not zones.is_empty and zones.contains(spot):
            yield Objection("VER-404", board.id, f"fastener {place} is in a no-fastener zone")
        if surface.panel_screws and screws.distance(spot) < clear - SLACK:
            yield Objection("VER-405", board.id, f"fastener {place} may strike a panel screw")


def _too_near(board: Board, least: int) -> Iterator[Objection]:
    spots = [Spot(place) for place in board.fasteners]
    tree = STRtree(spots)
    for index, spot in enumerate(spots):
        for other in tree.query(spot, predicate="dwithin", distance=least - SLOPED_SLACK).tolist():
            if other > index:
                pair = f"{board.fasteners[index]} and {board.fasteners[other]}"
                yield Objection("VER-408", board.id, f"fasteners {pair} stand closer together than asked")


def _corners(board: Board) -> list[Point]:
    """Corners that stick out; a ring round a hole or a gentle bend has none."""
    found = []
    ring = board.outline
    for index, b in enumerate(ring):
        a, c = ring[index - 1], ring[(index + 1) % len(ring)]
        first, second = (b[0] - a[0], b[1] - a[1]), (c[0] - b[0], c[1] - b[1])
        turn = math.atan2(first[0] * second[1] - first[1] * second[0], first[0] * second[0] + first[1] * second[1])
        if turn > _LEAST_TURN:
            found.append(b)
    return found


def _along_members(board: Board, surface: Surface, plan: Document, zones: shapely.Geometry) -> Iterator[Objection]:
    """Along each member what holds the board there, or in a member close beside it, follows within the spacing."""
    spacing, edge = plan.rules.ticks(_spacing_rule(surface)), plan.rules.ticks("fastening.edge.min")
    beside = plan.rules.ticks("fastening.apart.min")
    room = board.shape.buffer(-edge, join_style="mitre").difference(zones)
    axis = 1 if surface.framing_axis == "v" else 0
    step = plan.tape.graduation
    for support in surface.supports:
        box = bounds(support.outline)
        if (box[3] - box[1] >= box[2] - box[0]) != (axis == 1):
            continue
        # A member that slants a little is followed along itself: its places lie on more than one line.
        run = max(sides(support.outline), key=lambda side: math.dist(*side))
        way = tuple((end - start) / math.dist(*run) for start, end in zip(*sorted(run), strict=True))
        for part in shapely.get_parts(room.intersection(Polygon(support.outline))):
            if not isinstance(part, Polygon) or part.is_empty:
                continue
            left, lower, right, upper = part.bounds
            width = (right - left) if axis else (upper - lower)
            ends = [_along(way, at) for at in part.exterior.coords]
            low, high = min(ends), max(ends)
            if width < step or high - low <= spacing:
                continue
            near = part.buffer(beside + SLOPED_SLACK)
            places = sorted(_along(way, place) for place in board.fasteners if near.intersects(Spot(place)))
            if _too_far((low, *places, high), spacing, SLACK if axis_of(*run) else SLOPED_SLACK):
                yield Objection("VER-406", board.id, f"fasteners along {support.id or box} are too far apart")


def _along(way: Sequence[float], place: Sequence[float]) -> float:
    """How far along a direction a place lies [ticks]."""
    return way[0] * place[0] + way[1] * place[1]


def _barred(board: Board, surface: Surface, plan: Document, zones: shapely.Geometry) -> Iterator[Objection]:
    """No member behind a board lies wholly where nothing may be driven, or a finding says so."""
    room = board.shape.buffer(-plan.rules.ticks("fastening.edge.min"), join_style="mitre")
    axis = 1 if surface.framing_axis == "v" else 0
    for support in surface.supports:
        box = bounds(support.outline)
        part = room.intersection(Polygon(support.outline))
        if support.kind not in ("stud", "joist") or (box[3] - box[1] >= box[2] - box[0]) != (axis == 1):
            continue
        if part.is_empty or part.difference(zones).area >= TICKS_PER_MM**2 or part.area < TICKS_PER_MM**2:
            continue
        ends = part.bounds
        if ends[2 + axis] - ends[axis] > plan.rules.ticks(_spacing_rule(surface)) + SLACK:
            yield Objection("VER-411", board.id, f"nothing may be driven into {support.id}, and nothing says so")


def _too_far(places: Sequence[float], spacing: int, slack: int = SLACK) -> bool:
    return any(b - a > spacing + slack for a, b in pairwise(places))


def _edge_rows(board: Board, surface: Surface, plan: Document) -> Iterator[Objection]:
    rules = plan.rules
    spacing, most = rules.ticks("fastening.spacing.floor"), rules.ticks("fastening.edge.max_floor")
    clear = rules.ticks("fastening.panel_screw_clear") if surface.panel_screws else 0
    corner = rules.ticks("fastening.corner.min")
    for a, b in sides(board.outline):
        length = math.hypot(b[0] - a[0], b[1] - a[1])
        if length <= spacing + 2 * corner:
            continue
        du, dv = (b[0] - a[0]) / length, (b[1] - a[1]) / length
        row = []
        for u, v in board.fasteners:
            along = (u - a[0]) * du + (v - a[1]) * dv
            off = (v - a[1]) * du - (u - a[0]) * dv
            if 0 <= along <= length and 0 <= off <= most + clear + SLOPED_SLACK:
                row.append(along)
        # Along a sloped edge each place is rounded both ways.
        slack = SLACK if axis_of(a, b) else SLOPED_SLACK
        if _too_far((0.0, *sorted(row), length), spacing + clear, slack):
            yield Objection("VER-406", board.id, f"fasteners along the edge from {a} to {b} are too far apart")


def _field_rows(board: Board, surface: Surface, plan: Document, zones: shapely.Geometry) -> Iterator[Objection]:
    """Each way from each fastener, another fastener or the board's end comes within the spacing."""
    spacing = plan.rules.ticks("fastening.spacing.floor")
    clear = plan.rules.ticks("fastening.panel_screw_clear") if surface.panel_screws else 0
    reach = spacing + clear + SLOPED_SLACK
    ground = board.shape.difference(zones)
    if ground.area > reach**2 and not board.fasteners:
        yield Objection("VER-406", board.id, "has no fasteners")
    tangent = math.tan(_CONE)
    for u, v in board.fasteners:
        for du, dv in ((1, 0), (0, 1), (-1, 0), (0, -1)):
            end = (u + du * reach, v + dv * reach)
            if not ground.contains(shapely.LineString([(u, v), end])):
                continue
            ahead = [
                ((pu - u) * du + (pv - v) * dv, abs((pu - u) * dv) + abs((pv - v) * du))
                for pu, pv in board.fasteners
            ]
            if not any(
                0 < forward <= reach and aside <= max(forward * tangent, reach * _ASIDE)
                for forward, aside in ahead
            ):
                yield Objection("VER-406", board.id, f"no fastener follows {(u, v)} within the spacing")
                return

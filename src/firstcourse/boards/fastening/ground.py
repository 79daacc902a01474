"""Where a fastener may sit in one board: off its edges and corners, out of zones, clear of panel screws."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

import shapely
from shapely import Polygon
from shapely.ops import unary_union

from firstcourse.geometry import Point, Ring
from firstcourse.plan import Board, Surface, SurfaceKind
from firstcourse.rules import RuleSet

_LEAST_TURN = math.radians(30)
_QUARTER = 8
# Board edges lie on whole ticks: half a tick keeps a place exactly at the least distance inside the area.
_HALF_TICK = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class FastenerLimits:
    """The rules that fasteners keep [ticks].

    Attributes:
        edge: Least distance from a board edge.
        edge_most: Largest distance of the outer row of a floor board from its edge.
        corner: Least distance from a board corner.
        apart: Least distance from another fastener of the board.
        clear: Least distance from a screw of the panel below.
        edge_reach: Largest distance of a carried edge's points from a fastener.
        line_reach: Largest distance of a row from the edge that its member carries.
        spacing: Largest distance between neighbours.
        spacing_rule: Id of the rule that sets the spacing.
        graduation: Smallest mark of the tape.
    """

    edge: int
    edge_most: int
    corner: int
    apart: int
    clear: int
    edge_reach: int
    line_reach: int
    spacing: int
    spacing_rule: str
    graduation: int


@dataclass(frozen=True, slots=True, kw_only=True)
class FastenerGround:
    """One board's areas [ticks].

    Attributes:
        open: The board less no-fastener zones.
        room: The same, `edge` off every edge of the board.
        legal: The same, also off corners and panel screws: any place in it may hold a fastener.
    """

    open: shapely.Geometry
    room: shapely.Geometry
    legal: shapely.Geometry


def limits_of(surface: Surface, rules: RuleSet, graduation: int) -> FastenerLimits:
    """The rules that fasteners of a surface keep."""
    rule = "fastening.spacing.floor" if surface.kind is SurfaceKind.FLOOR else "fastening.spacing.wall"
    return FastenerLimits(
        edge=rules.ticks("fastening.edge.min"),
        edge_most=rules.ticks("fastening.edge.max_floor"),
        corner=rules.ticks("fastening.corner.min"),
        apart=rules.ticks("fastening.apart.min"),
        edge_reach=rules.ticks("fastening.edge.reach"),
        line_reach=rules.ticks("boards.edge.reach"),
        clear=rules.ticks("fastening.panel_screw_clear"),
        spacing=rules.ticks(rule),
        spacing_rule=rule,
        graduation=graduation,
    )


def ground_of(board: Board, surface: Surface, limits: FastenerLimits, *, corners: bool = True) -> FastenerGround:
    """The areas of one board.

    Args:
        board: A placed board.
        surface: Its surface, with zones and panel screws.
        limits: Rules to keep.
        corners: Whether the distance from corners is kept.
    """
    shape = Polygon(board.outline, board.holes)
    zones = unary_union([Polygon(zone.outline) for zone in surface.no_fastener_zones])
    room = shape.buffer(_HALF_TICK - limits.edge, join_style="mitre").difference(zones)
    kept_off = _discs(corners_of(board.outline), limits.corner) if corners else []
    kept_off += _discs(_near(surface.panel_screws, shape, limits.clear), limits.clear)
    legal = room.difference(unary_union(kept_off)) if kept_off else room
    return FastenerGround(open=shape.difference(zones), room=room, legal=legal)


def corners_of(ring: Ring) -> list[Point]:
    """Corners of a counter-clockwise ring that stick out; a gentle bend is none."""
    found = []
    for index, (u, v) in enumerate(ring):
        a, c = ring[index - 1], ring[(index + 1) % len(ring)]
        first, second = (u - a[0], v - a[1]), (c[0] - u, c[1] - v)
        cross = first[0] * second[1] - first[1] * second[0]
        if math.atan2(cross, first[0] * second[0] + first[1] * second[1]) > _LEAST_TURN:
            found.append((u, v))
    return found


def _discs(points: Iterable[Point], radius: int) -> list[shapely.Geometry]:
    # The polygon stands round the circle, so that no place outside it is nearer than the radius.
    reach = radius / math.cos(math.pi / (4 * _QUARTER))
    return [shapely.Point(point).buffer(reach, quad_segs=_QUARTER) for point in points]


def _near(screws: tuple[Point, ...], shape: Polygon, reach: int) -> list[Point]:
    left, lower, right, upper = shape.bounds
    return [
        (u, v) for u, v in screws if left - reach <= u <= right + reach and lower - reach <= v <= upper + reach
    ]

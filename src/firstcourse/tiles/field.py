"""Where tile goes on a surface: its outline less what stands before each side, less joints and openings."""

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise

import shapely
from shapely import LineString, MultiPolygon, Polygon
from shapely.affinity import scale
from shapely.ops import unary_union

from firstcourse.geometry import (
    Grid,
    Point,
    bounds,
    circle_ring,
    counter_clockwise,
    from_shapely,
    grown,
    inset,
    sides,
    to_shapely,
)
from firstcourse.plan import Area, Opening, OpeningKind, Side, SideKind, Surface
from firstcourse.rules import RuleSet
from firstcourse.tiles.model import Edge, TileArea
from firstcourse.tiles.soft_edges import ON_LINE_MM, SoftEdges
from firstcourse.units import TICKS_PER_MM, to_mm

_TICK_GRID = Grid(origin=(0, 0), graduation=1)
STANDING = frozenset({OpeningKind.TUB, OpeningKind.TRAY, OpeningKind.CABINET, OpeningKind.COLUMN})
"""What stands on a surface and tile runs up to, with a joint left free to move but at a cabinet, whose plinth
covers a gap; the rest is framed, trimmed or covered."""
_FRAMED = frozenset({OpeningKind.NICHE, OpeningKind.WINDOW, OpeningKind.DOOR})
_ROUND_EXCESS = 64


def tiled_field(
    surface: Surface,
    *,
    edge_joint: int,
    before: Sequence[int],
    seen_first: Sequence[str],
    uncertainty_mm: float,
    rules: RuleSet,
) -> TileArea:
    """The area of a surface that takes tile.

    Args:
        surface: The surface with its openings.
        edge_joint: Joint left free to move along sides that meet something [ticks].
        before: Along each side, thickness of what stands before it there, such as the boards and tile of the wall
            that meets this one [ticks].
        seen_first: Sides that the job names as seen first, such as `A-B`.
        uncertainty_mm: How far the room may differ from its survey [mm].
        rules: Gaps round openings, and how much a poor cut shows where.
    """
    depths = tuple(
        0 if side.kind is SideKind.FREE else edge_joint + depth
        for side, depth in zip(surface.sides, before, strict=True)
    )
    gap = rules.ticks("tiling.gap.opening")
    area = inset(surface.outline, depths, _TICK_GRID)
    for opening in surface.openings:
        area = area.difference(_kept_open(opening, edge_joint, gap))
    for zone in surface.not_tiled:
        area = area.difference(grown(counter_clockwise(zone.outline), edge_joint, _TICK_GRID))
    shape = _in_mm(area)
    return TileArea(
        area=shape,
        edges=tuple(
            Edge(
                a=(to_mm(a[0]), to_mm(a[1])),
                b=(to_mm(b[0]), to_mm(b[1])),
                weight=_weight(side, seen_first, rules),
                side=f"{surface.id}/side/{index}",
                free=side.kind is SideKind.FREE,
            )
            for index, ((a, b), side) in enumerate(zip(sides(surface.outline), surface.sides, strict=True))
        ),
        wanted=tuple(_wanted(surface.openings)),
        uncertainty=uncertainty_mm,
        things=tuple(_things(surface)),
        soft=_soft_edges(shape, surface, depths, edge_joint, to_mm(rules.ticks("tiling.start.joint_takes"))),
    )


def areas(field: Polygon | MultiPolygon) -> tuple[Area, ...]:
    """An area in millimetres as the plan's areas in ticks."""
    return tuple(
        Area(outline=outline, holes=holes)
        for outline, holes in from_shapely(scale(field, TICKS_PER_MM, TICKS_PER_MM, origin=(0, 0)))
    )


def _in_mm(area: Polygon | MultiPolygon) -> Polygon | MultiPolygon:
    parts = [to_shapely(outline, holes) for outline, holes in from_shapely(area)]
    return scale(unary_union(parts), 1 / TICKS_PER_MM, 1 / TICKS_PER_MM, origin=(0, 0))


def _soft_edges(
    area: Polygon | MultiPolygon, surface: Surface, depths: Sequence[int], edge_joint: int, takes: float
) -> SoftEdges:
    """The edges of an area along walls, floors and what stands on the surface.

    Edges that end free, are framed or trimmed, and holes that are covered show what is left of the last tile.
    """
    known = [
        (LineString([_point_mm(a), _point_mm(b)]), to_mm(depth))
        for (a, b), side, depth in zip(sides(surface.outline), surface.sides, depths, strict=True)
        if side.kind is not SideKind.FREE
    ]
    rings = [
        opening.outline for opening in surface.openings if _restrains(opening) and opening.outline is not None
    ]
    rings += [zone.outline for zone in surface.not_tiled]
    known += [
        (LineString([_point_mm(a), _point_mm(b)]), to_mm(edge_joint)) for ring in rings for a, b in sides(ring)
    ]
    found = []
    for part in shapely.get_parts(area):
        oriented = shapely.orient_polygons(part)
        for ring in (oriented.exterior, *oriented.interiors):
            for a, b in pairwise(ring.coords):
                middle = shapely.Point((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
                if any(abs(line.distance(middle) - depth) < ON_LINE_MM for line, depth in known):
                    found.append(((a[0], a[1]), (b[0], b[1])))
    return SoftEdges(lines=tuple(found), takes=takes)


def _restrains(opening: Opening) -> bool:
    # A cabinet's plinth covers the gap at its front; nothing there holds the tile as a wall does.
    return opening.kind in STANDING and opening.kind is not OpeningKind.CABINET


def _point_mm(point: Point) -> tuple[float, float]:
    return to_mm(point[0]), to_mm(point[1])


def _kept_open(opening: Opening, edge_joint: int, gap: int) -> Polygon | MultiPolygon:
    # Tile meets the lining of a niche or window flush, under its trim.
    room = edge_joint if _restrains(opening) else 0 if opening.kind in _FRAMED else gap
    if opening.outline is not None:
        return grown(counter_clockwise(opening.outline), room, _TICK_GRID)
    assert opening.centre is not None and opening.diameter is not None
    return Polygon(circle_ring(opening.centre, opening.diameter // 2 + room, excess=_ROUND_EXCESS))


def _things(surface: Surface) -> Iterator[tuple[str, Polygon]]:
    """What tile is cut round, by reference [mm]."""
    for opening in surface.openings:
        yield f"{surface.id}/opening/{opening.id}", _grown_mm(_kept_open(opening, 0, 0))
    for zone in surface.not_tiled:
        yield zone.why, _grown_mm(Polygon(zone.outline))


def _grown_mm(shape: Polygon | MultiPolygon) -> Polygon:
    return scale(shape.convex_hull, 1 / TICKS_PER_MM, 1 / TICKS_PER_MM, origin=(0, 0))


def _weight(side: Side, seen_first: Sequence[str], rules: RuleSet) -> float:
    if side.wall in seen_first:
        return rules.number("tiling.sight.seen_first")
    named: Mapping[SideKind, str] = {SideKind.FOOT: "tiling.sight.foot", SideKind.FREE: "tiling.sight.free"}
    return rules.number(named.get(side.kind, "tiling.sight.usual"))


def _wanted(openings: Sequence[Opening]) -> list[tuple[str, float]]:
    found = []
    for opening in openings:
        if opening.kind in (OpeningKind.NICHE, OpeningKind.WINDOW) and opening.outline is not None:
            left, lower, right, upper = bounds(opening.outline)
            found += [("u", to_mm(lower)), ("u", to_mm(upper)), ("v", to_mm(left)), ("v", to_mm(right))]
    return found

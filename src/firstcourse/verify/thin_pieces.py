"""Pieces too thin to set along a soft joint: none is drawn, and the wider joint in their place is told."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

import numpy as np
import shapely
from shapely import LineString, Point, Polygon
from shapely.ops import unary_union

from firstcourse.geometry import off_segment, sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.coverage import opening_shape
from firstcourse.verify.repeats import Laid
from firstcourse.verify.structure import Document, Surface, Tile
from firstcourse.verify.verdict import Objection

SLACK = 3.0
"""What rounding both ends of a length to ticks can change it by [ticks]."""
_SPECK = 4 * TICKS_PER_MM**2
"""Bare ground too small to take a piece of tile [ticks²]."""
_ON_LINE = 0.04 * TICKS_PER_MM
_SURE = 0.1 * TICKS_PER_MM
"""A piece that is thinner by less than this may be left or set [ticks]."""
_BESIDE = 75 * TICKS_PER_MM
"""Farthest that an edge of tile lies before what it ends at [ticks]."""
_PARALLEL = 0.02
_STANDING = ("tub", "tray", "column")
_FRAMED = ("niche", "window", "door")
"""Tile meets their lining flush, under its trim."""

type _Edge = tuple[tuple[float, float], tuple[float, float]]


def check_thin_pieces(plan: Document) -> Iterator[Objection]:
    """Object to pieces so thin that a soft joint takes their place, and to such joints that are not told."""
    takes = plan.rules.ticks("tiling.start.joint_takes")
    for surface in plan.surfaces:
        if not surface.tiled or not surface.tiles:
            continue
        edges = soft_edges(surface, plan)
        for tile in surface.tiles:
            if not tile.whole and not tile.fixed and any(depth_of(tile, edge) < takes - _SURE for edge in edges):
                yield Objection("VER-721", tile.id, "is so thin that the joint along its edge takes its place")
        bare = bare_ground(surface, [tile.shape for tile in surface.tiles])
        if any(is_thin(part, surface, plan) for part in bare) and not plan.says(surface, code="TIL-133"):
            yield Objection("VER-721", surface.id, "has a joint wider than planned, and nothing says so")


def bare_ground(surface: Surface, shapes: list[Polygon]) -> Iterator[Polygon]:
    """Ground of the areas to be tiled that no tile answers for."""
    for area in surface.tiled:
        # Each tile answers for half of the joint round it; what is left over is ground that nobody tiles.
        reach = area.joint / 2 + SLACK
        shapely.prepare(area.shape)
        near = np.array(shapes, dtype=object)[shapely.intersects(area.shape, shapes)]
        bare = area.shape.difference(unary_union(shapely.buffer(near, reach, join_style="mitre")))
        # A speck that fills with grout leaves half a joint all round it bare as well.
        for part in shapely.get_parts(bare.buffer(-SLACK - area.joint / 2)):
            if part.area > _SPECK:
                yield part


def is_thin(part: shapely.Geometry, surface: Surface, plan: Document) -> bool:
    """Whether bare ground is no wider than a soft joint beside it may come out wider."""
    takes = plan.rules.ticks("tiling.start.joint_takes") + SLACK
    lines = [LineString(edge).buffer(takes) for edge in soft_edges(surface, plan)]
    return bool(lines) and bool(unary_union(lines).covers(part))


def soft_edges(surface: Surface, plan: Document) -> list[_Edge]:
    """Edges of the tile along walls, floors and what stands on the surface, the tile on their left."""
    wide = max(area.joint for area in surface.tiled) + SLACK
    tiled = unary_union([area.shape.buffer(wide, join_style="mitre") for area in surface.tiled])
    tiled = tiled.buffer(-wide, join_style="mitre")
    kinds = zip(sides(surface.outline), surface.sides, strict=True)
    lines = [(LineString(line), kind != "free") for line, kind in kinds]
    stands = [opening for opening in surface.openings if opening.kind in _STANDING and opening.outline is not None]
    rings = [opening.outline or () for opening in stands] + [ring for _, ring in surface.not_tiled]
    soft = [line for line, held in lines if held] + [LineString(line) for ring in rings for line in sides(ring)]
    gap = plan.rules.ticks("tiling.gap.opening")
    hard = [line.buffer(SLACK) for line, held in lines if not held]
    hard += [
        opening_shape(opening).buffer((0 if opening.kind in _FRAMED else gap) + SLACK)
        for opening in surface.openings
        if opening not in stands
    ]
    known = unary_union(hard)
    # A joint within the field frees the edges along it, not a wall's edge that it happens to meet at its middle.
    across = [joint for joint in surface.soft_joints if joint.place == "field"]
    field = unary_union([LineString(joint.line).buffer(joint.width) for joint in across])
    found: list[_Edge] = []
    for part in shapely.get_parts(tiled):
        oriented = shapely.orient_polygons(part)
        for ring in (oriented.exterior, *oriented.interiors):
            for a, b in pairwise(ring.coords):
                middle = Point((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
                if known.covers(middle) or field.covers(LineString([a, b])):
                    continue
                if any(_runs_beside(line, (a, b), middle) for line in soft):
                    found.append(((a[0], a[1]), (b[0], b[1])))
    return found


def _runs_beside(line: LineString, edge: Sequence[Sequence[float]], middle: Point) -> bool:
    (a, b), (c, d) = edge, line.coords
    cross = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])
    return bool(abs(cross) <= _PARALLEL * math.dist(a, b) * line.length and line.distance(middle) <= _BESIDE)


def depth_of(tile: Tile | Laid, edge: _Edge) -> float:
    """How far a piece that is cut along an edge reaches from it [ticks]; infinite where it is not cut along it."""
    a, b = edge
    on_line = sum(off_segment(point, a, b) <= _ON_LINE for point in tile.outline)
    if on_line < 2:
        return math.inf
    along = ((b[0] - a[0]) / math.dist(a, b), (b[1] - a[1]) / math.dist(a, b))
    offs = [along[0] * (v - a[1]) - along[1] * (u - a[0]) for u, v in tile.outline]
    return max(offs) if min(offs) >= -_ON_LINE else math.inf

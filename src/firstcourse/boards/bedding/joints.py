"""Lengths of what is taped and sealed: seams, corners between boarded surfaces, returns, gaps at the foot."""

import math
from collections.abc import Iterator
from itertools import combinations

import shapely
from shapely import LineString, Polygon
from shapely.ops import unary_union

from firstcourse.geometry import Point, sides
from firstcourse.plan import OpeningKind, SideKind, Surface, SurfaceKind

_SEALED = frozenset({OpeningKind.TUB, OpeningKind.TRAY})


def seam_length(surface: Surface) -> float:
    """Length of a surface's taped seams [ticks]."""
    return math.fsum(math.dist(*seam.line) for seam in surface.seams if seam.tape)


def corner_length(surfaces: tuple[Surface, ...]) -> float:
    """Length of inside corners where two boarded surfaces of one room meet [ticks].

    Wall meets wall over the heights that both are boarded; wall meets ceiling along the wall's top. A wall's foot
    is sealed, not taped.
    """
    boarded = [surface for surface in surfaces if surface.boards]
    walls = [surface for surface in boarded if surface.kind is SurfaceKind.WALL]
    ceilings = {surface.room for surface in boarded if surface.kind is SurfaceKind.CEILING}
    total = math.fsum(_shared(one, other) for one, other in combinations(walls, 2) if one.room == other.room)
    tops = (
        math.dist(a, b)
        for wall in walls
        if wall.room in ceilings
        for meets, a, b in _met(wall)
        if meets == f"{wall.room}/ceiling"
    )
    return total + math.fsum(tops)


def return_length(surfaces: tuple[Surface, ...]) -> float:
    """Length of edges of boards on windows' returns: front edges and the corners between them [ticks]."""
    strips = {surface.id: surface for surface in surfaces if surface.boards and surface.part_of}
    return math.fsum(
        math.dist(a, b)
        for surface in strips.values()
        for (a, b), side in zip(sides(surface.outline), surface.sides, strict=True)
        if side.kind is SideKind.FREE or side.meets in strips
    )


def foot_length(surface: Surface) -> float:
    """Length of the gaps at a surface's foot, and round tubs and trays it is cut round, less openings [ticks]."""
    if not surface.boards:
        return 0.0
    feet = [
        LineString([a, b])
        for (a, b), side in zip(sides(surface.outline), surface.sides, strict=True)
        if side.kind is SideKind.FOOT
    ]
    open_ground = unary_union([Polygon(o.outline) for o in surface.openings if o.outline is not None])
    inside = Polygon(surface.outline)
    rims = [
        _lines(Polygon(opening.outline).exterior.intersection(inside)).difference(inside.exterior)
        for opening in surface.openings
        if opening.kind in _SEALED and opening.outline is not None
    ]
    along = unary_union(feet).difference(open_ground)
    return float(along.length) + math.fsum(float(shapely.length(rim)) for rim in rims)


def _lines(shape: shapely.Geometry) -> shapely.Geometry:
    """The lines of a shape; where a rim only touches the outline at a corner, that point is no length."""
    parts = [part for part in shapely.get_parts(shape) if isinstance(part, LineString)]
    return unary_union(parts)


def _met(surface: Surface) -> Iterator[tuple[str, Point, Point]]:
    for (a, b), side in zip(sides(surface.outline), surface.sides, strict=True):
        if side.kind is SideKind.PERIMETER:
            yield side.meets, a, b


def _shared(one: Surface, other: Surface) -> float:
    """Height over which the right end of one wall and the left end of another meet in one corner."""
    total = 0
    for a, b in ((one, other), (other, one)):
        if len(a.corners) != 2 or len(b.corners) != 2 or a.corners[1] != b.corners[0]:
            continue
        corner = f"{a.room}/corner/{a.corners[1]}"
        right = [sorted((p[1] + a.datum, q[1] + a.datum)) for meets, p, q in _met(a) if meets == corner]
        left = [sorted((p[1] + b.datum, q[1] + b.datum)) for meets, p, q in _met(b) if meets == corner]
        total += sum(max(0, min(r[1], s[1]) - max(r[0], s[0])) for r in right for s in left)
    return float(total)

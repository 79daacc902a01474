"""What stands in a room on the day its marks are made, and how thick.

All marks of a room are made on one day: its boards are up and its shower beds laid, no tile is set and no cabinet
stands. What is measured from is what can be touched then: faces of boards, bare walls, floors and beds, tubs,
trays, columns. Kerbs, benches and finished floors are not there yet as the drawings show them; their own faces
are marked later, see `face_edges`.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from shapely import LineString, Polygon, get_parts
from shapely.ops import unary_union

from firstcourse.geometry import Point, bounds, sides
from firstcourse.plan import OpeningKind, Side, SideKind, Surface, SurfaceKind
from firstcourse.tiles.face_edges import built_later, face_touched, tiled_before
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM

FIXTURES = frozenset({OpeningKind.TUB, OpeningKind.TRAY, OpeningKind.COLUMN})
"""What stands before the boards do."""
_HAND = TICKS_PER_INCH
"""Boards that begin this near to a floor, ceiling or corner are what a tape touches there [ticks]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """What lies on a surface's structure on the day of marking, and what comes on it later.

    Attributes:
        under: From the structure to the face that can be touched [ticks]; None where that is not known.
        over: From there to the finished face [ticks]; None where that is not known.
    """

    under: int | None
    over: int | None


@dataclass(frozen=True, slots=True)
class Site:
    """The surfaces of a job as they stand.

    Attributes:
        surfaces: By id, those that lie bare in the plan left out.
        builds: What lies on each of them; one left out is bare.
    """

    surfaces: Mapping[str, Surface]
    builds: Mapping[str, Build]

    def touched(self, surface: Surface, index: int) -> bool:
        """Whether the edge of a surface along one of its sides can be touched, or the face that stands there."""
        side = surface.sides[index]
        if built_later(surface):
            return face_touched(surface, side)
        if side.kind is SideKind.FREE:
            return surface.boarded
        if side.kind is SideKind.FOOT:
            fixture = f"{surface.room}/fixture"
            return side.meets == f"{fixture}/tub" or (
                side.meets == f"{fixture}/tray" and not self._on_bed(surface)
            )
        return side.meets == f"{surface.room}/ceiling" or bool(side.corner or side.wall)

    def fixture(self, surface: Surface, name: str) -> bool:
        """Whether an opening is something that stands there already; a shower floor of the plan is not."""
        found = next(opening for opening in surface.openings if opening.id == name)
        return found.kind in FIXTURES and f"{surface.room}/floor/{name}" not in self.surfaces

    def strips(self, surface: Surface) -> Iterator[tuple[int, Point, Point, int]]:
        """Boards of other surfaces that stand along a surface's sides.

        Yields:
            The side, where along it they begin and end, and how thick they are [ticks].
        """
        for index, ((a, b), side) in enumerate(zip(sides(surface.outline), surface.sides, strict=True)):
            if built_later(surface):
                depth = self._before_face(surface, side)
                if depth:
                    yield index, a, b, depth
                continue
            wall = self._meets(surface, side)
            depth = 0 if wall is None else self.builds.get(wall.id, Build(under=0, over=0)).under or 0
            if wall is None or depth == 0:
                continue
            if wall.kind is SurfaceKind.CEILING:
                yield index, a, b, depth
                continue
            if surface.kind is SurfaceKind.WALL:
                # Each wall counts its heights from the lower end of its own foot.
                over = wall.datum - surface.datum
                for low, high in self._at_corner(wall, side.corner):
                    ends = [_at_height(a, b, v + over) for v in (low, high)]
                    if ends[0] != ends[1]:
                        yield index, *((ends[0], ends[1]) if b[1] > a[1] else (ends[1], ends[0])), depth
            else:
                for one, other in self._along(wall, surface, (a, b)):
                    yield index, one, other, depth

    def unknown_face(self, surface: Surface, index: int) -> bool:
        """Whether boards of unknown thickness stand along a side."""
        if built_later(surface):
            return self._before_face(surface, surface.sides[index]) is None
        wall = self._meets(surface, surface.sides[index])
        return wall is not None and self.builds.get(wall.id, Build(under=0, over=0)).under is None

    def _before_face(self, surface: Surface, side: Side) -> int | None:
        """Tile or boards that stand along a side of a small face [ticks]; None where that is not known."""
        before = self.surfaces.get(tiled_before(surface, side))
        if before is not None:
            return sum(layer.thickness for layer in before.layers)
        wall = self.builds.get(side.meets) if side.wall else None
        return 0 if wall is None else wall.under

    def _on_bed(self, surface: Surface) -> bool:
        """Whether a wall stands on a shower floor that the plan builds."""
        return any(zone.why.startswith(f"{surface.room}/floor/shower") for zone in surface.not_tiled)

    def _meets(self, surface: Surface, side: Side) -> Surface | None:
        """The boarded wall along a side, or the ceiling over a wall."""
        if side.kind is not SideKind.PERIMETER:
            return None
        corner = side.corner
        if not corner:
            return self.surfaces.get(side.meets)
        if len(surface.corners) != 2:
            return None
        right = corner == surface.corners[1]
        return next(
            (
                wall
                for wall in self.surfaces.values()
                if wall.room == surface.room
                and wall.id == f"{wall.room}/wall/{'-'.join(wall.corners)}"
                and wall.corners[0 if right else 1] == corner
            ),
            None,
        )

    def _at_corner(self, wall: Surface, corner: str) -> Iterator[tuple[int, int]]:
        """From where to where a wall's boards stand in its corner."""
        left, low, right, high = bounds(wall.extent or wall.outline)
        u = left + _HAND if corner == wall.corners[0] else right - _HAND
        yield from _stretches(wall, LineString([(u, low - 1), (u, high + 1)]), 1)

    def _along(self, wall: Surface, surface: Surface, run: tuple[Point, Point]) -> Iterator[tuple[Point, Point]]:
        """Stretches of a floor's or ceiling's side before which a wall's boards stand at its height."""
        line = self._line_of(wall, surface)
        if line is None:
            return
        left, low, right, high = bounds(wall.extent or wall.outline)
        level = high - _HAND
        if surface.kind is not SurfaceKind.CEILING:
            tops = [bounds(zone.outline)[3] for zone in wall.not_tiled if zone.why == surface.id]
            level = max([low + _HAND, *tops])
        (a, b), length = line, LineString(line).length
        shown = LineString(run)
        for start, end in _stretches(wall, LineString([(left - 1, level), (right + 1, level)]), 0):
            ends = [LineString([a, b]).interpolate(min(max(u, 0), length)) for u in (start, end)]
            along = sorted(shown.project(at) for at in ends)
            if along[1] - along[0] > TICKS_PER_MM:
                one, other = (shown.interpolate(at) for at in along)
                yield (round(one.x), round(one.y)), (round(other.x), round(other.y))

    def _line_of(self, wall: Surface, surface: Surface) -> tuple[Point, Point] | None:
        """A wall on the drawing of a floor or ceiling, from its left end to its right."""
        for there in (self.surfaces.get(f"{surface.room}/floor"), surface):
            if there is None or (surface.kind is SurfaceKind.CEILING and there is not surface):
                continue
            for (a, b), side in zip(sides(there.outline), there.sides, strict=True):
                if side.meets == wall.id:
                    # A floor is drawn counter-clockwise from above, where walls are read clockwise.
                    return (a, b) if surface.kind is SurfaceKind.CEILING else (b, a)
        return None


def _stretches(wall: Surface, line: LineString, axis: int) -> Iterator[tuple[int, int]]:
    """Parts of a line on a wall that its boards cover, as places along an axis [ticks]."""
    open_ = [Polygon(opening.outline) for opening in wall.openings if opening.outline is not None]
    covered = Polygon(wall.outline).difference(unary_union(open_)).intersection(line)
    for part in get_parts(covered):
        if part.length > TICKS_PER_MM:
            yield round(part.bounds[axis]), round(part.bounds[axis + 2])


def _at_height(a: Point, b: Point, v: int) -> Point:
    """The place on an upright side at a height, no farther than its ends."""
    low, high = (a, b) if a[1] <= b[1] else (b, a)
    at = min(max(v, low[1]), high[1])
    if high[1] == low[1]:
        return low
    return low[0] + round((high[0] - low[0]) * (at - low[1]) / (high[1] - low[1])), at

"""What can be touched on the day of marking.

Boards are up and shower beds laid, no tile is set and no cabinet stands.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, field

import shapely
from shapely import LineString, Point, Polygon
from shapely.ops import unary_union

from firstcourse.geometry import bounds, sides
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM
from firstcourse.verify.small_faces import board_thickness, edge_stands, set_before
from firstcourse.verify.structure import Document, Surface

NEAR = 6.0
"""Ends of lines are whole ticks; where two slanting edges meet rounding moves a point by a few [ticks]."""
_STANDING = ("tub", "tray", "cabinet", "column")
_FIXTURES = ("tub", "tray", "column")
_REACH = 1e8
_CORNER = 2.0 * TICKS_PER_MM
"""How far the face of boards reaches on in a corner that is not square [ticks]."""
_HAND = 25.0 * TICKS_PER_MM
"""No tape is held in a gap narrower than this [ticks]."""

type XY = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Face:
    """A stretch of an edge, and whether a tape can be held to it."""

    ref: str
    line: LineString
    touched: bool


@dataclass(slots=True)
class Faces:
    """The open ground of one surface and the faces round it; its room is what a hand can reach into."""

    surface: Surface
    plan: Document
    ground: shapely.Geometry = field(init=False)
    room: shapely.Geometry = field(init=False)
    faces: list[Face] = field(init=False)

    def __post_init__(self) -> None:
        surface = self.surface
        taken: list[Polygon] = []
        self.faces = []
        for index, (a, b) in enumerate(sides(surface.outline)):
            touched, ref = self._side_touched(index), f"{surface.id}/side/{index}"
            depth, stretches = self._standing(index)
            self.faces.append(Face(ref, LineString([a, b]), touched and depth is not None))
            for one, other in stretches if depth else ():
                assert depth is not None
                begin, stop = self._to_corner(index, one, -depth), self._to_corner(index + 1, other, depth)
                ends = list(LineString([begin, stop]).parallel_offset(depth, "left").coords)
                taken.append(Polygon([begin, stop, ends[-1], ends[0]]))
                self.faces.append(Face(ref, _longer(ends[0], ends[-1]), touched))
                self.faces += [Face(ref, LineString(cut), False) for cut in ((begin, ends[0]), (stop, ends[-1]))]
        for opening in surface.openings:
            if opening.kind in _STANDING and opening.outline is not None:
                taken.append(Polygon(opening.outline))
                built = any(other.id == f"{surface.room}/floor/{opening.id}" for other in self.plan.surfaces)
                touched = opening.kind in _FIXTURES and not built
                self.faces.append(Face(f"{surface.id}/opening/{opening.id}", taken[-1].exterior, touched))
        for why, ring in surface.not_tiled:
            taken.append(Polygon(ring))
            self.faces.append(Face(why, taken[-1].exterior, False))
        self.ground = Polygon(surface.outline).difference(unary_union(taken))
        self.room = self.ground.buffer(-_HAND / 2, join_style="mitre").buffer(_HAND / 2, join_style="mitre")

    def holds(self, ref: str, at: XY) -> bool:
        """Whether a tape can be held to a thing at a place."""
        spot = Point(at)
        return self.ground.boundary.distance(spot) <= NEAR and any(
            face.touched and face.ref == ref and face.line.distance(spot) <= NEAR for face in self.faces
        )

    def edge_of(self, ref: str, at: XY) -> bool:
        """Whether a thing, touched or not, has an edge at a place."""
        spot = Point(at)
        return any(face.ref == ref and face.line.distance(spot) <= NEAR for face in self.faces)

    def bounds_ground(self, at: XY) -> bool:
        """Whether a place lies on the edge of the open ground."""
        spot = Point(at)
        return bool(min(self.ground.boundary.distance(spot), self.room.boundary.distance(spot)) <= NEAR)

    def clear(self, a: XY, b: XY) -> bool:
        """Whether the way between two places is open ground."""
        way = LineString([a, b])
        return bool(way.difference(self.room.buffer(NEAR)).length <= NEAR)

    def reached(self, at: XY, way: XY, *, askew: float = math.sqrt(0.5)) -> bool:
        """Whether something can be touched straight along a way or against it.

        Args:
            at: A place on the open ground.
            way: Unit vector.
            askew: Greatest sine between what is touched and square to the way.
        """
        ends = [(at[0] + way[0] * far, at[1] + way[1] * far) for far in (-_REACH, _REACH)]
        spot = Point(at)
        pieces = [
            part
            for part in shapely.get_parts(LineString(ends).intersection(self.room))
            if part.length > 0 and part.distance(spot) <= NEAR
        ]
        across = (-way[1], way[0])
        for piece in pieces:
            for end in (piece.coords[0], piece.coords[-1]):
                there = min(self.faces, key=lambda face: (round(face.line.distance(Point(end)), 1), face.touched))
                if (
                    there.touched
                    and there.line.distance(Point(end)) <= NEAR
                    and _runs(there.line, end, across, askew)
                ):
                    return True
                if way[0] == 0 and end[1] < at[1] and self._floor_below(there.ref, end[0]) is not None:
                    return True
        return False

    def floor(self, ref: str, u: float) -> float | None:
        """How high on a wall a floor can be touched [ticks]; None where that is not known."""
        surface, plan = self.surface, self.plan
        floor = next((other for other in plan.surfaces if other.id == ref), None)
        layers = () if floor is None else floor.layers
        if any(of in ("heating", "mortar_bed") for of, _ in layers):
            return None
        if ref == f"{surface.room}/floor" and (floor is None or layers or not floor.boards):
            below = sum(thick for of, thick in layers if of in ("board_mortar", "board"))
            return surface.foot_at(u) + below
        tops = [top for why, ring in surface.not_tiled if why == ref for top in _tops(ring, u)]
        if ref == f"{surface.room}/floor/shower" and layers and tops:
            return max(tops) - sum(thick for _, thick in layers)
        return None

    def _floor_below(self, ref: str, u: float) -> float | None:
        """The floor that can be touched below an edge of a wall."""
        if self.surface.built_later:
            return None
        room = f"{self.surface.room}/floor"
        if ref.startswith(f"{self.surface.id}/side/"):
            index = int(ref.rpartition("/")[2])
            ref = room if (self.surface.sides[index], self.surface.met[index]) == ("foot", room) else ""
        return self.floor(ref, u) if ref in (room, f"{room}/shower") else None

    def _side_touched(self, index: int) -> bool:
        surface, met = self.surface, self.surface.met[index]
        kind, room = surface.sides[index], surface.room
        if surface.built_later:
            return edge_stands(surface, index)
        if kind == "free":
            return surface.boarded
        if kind == "foot":
            bed = any(f"{why}/".startswith(f"{surface.room}/floor/shower/") for why, _ in surface.not_tiled)
            return met == f"{room}/fixture/tub" or (met == f"{room}/fixture/tray" and not bed)
        return met == f"{room}/ceiling" or met.startswith((f"{room}/corner/", f"{room}/wall/"))

    def _standing(self, index: int) -> tuple[int | None, list[tuple[XY, XY]]]:
        """How thick what stands along a side is, None where not known, and where along the side it stands."""
        if self.surface.built_later:
            return set_before(self.surface, index, self.plan), [list(sides(self.surface.outline))[index]]
        ceiling = f"{self.surface.room}/ceiling"
        if (self.surface.sides[index], self.surface.met[index]) == ("perimeter", ceiling):
            over = next((one for one in self.plan.surfaces if one.id == ceiling), None)
            hung = 0 if over is None or not over.boards else board_thickness(over, self.plan)
            return hung, [list(sides(self.surface.outline))[index]]
        wall = self._wall_along(index)
        if wall is None:
            return 0, []
        depth = board_thickness(wall, self.plan)
        return depth, list(self._boarded(index, wall)) if depth else []

    def _wall_along(self, index: int) -> Surface | None:
        """The boarded wall that meets this surface along a side."""
        surface, met = self.surface, self.surface.met[index]
        if surface.sides[index] != "perimeter":
            return None
        for wall in self.plan.surfaces:
            if wall.room != surface.room or wall.kind != "wall" or wall.part_of or len(wall.corners) != 2:
                continue
            if not wall.boards or wall.id == surface.id:
                continue
            if surface.kind != "wall" and met == wall.id:
                return wall
            if surface.kind == "wall" and len(surface.corners) == 2:
                left, right = surface.corners
                begins, ends = wall.corners
                corner = f"{surface.room}/corner"
                if (met, ends) == (f"{corner}/{left}", left) or (met, begins) == (f"{corner}/{right}", right):
                    return wall
        return None

    def _boarded(self, index: int, wall: Surface) -> Iterator[tuple[XY, XY]]:
        """Stretches of a side before which the boards of the wall that meets it stand."""
        surface = self.surface
        a, b = surface.outline[index], surface.outline[(index + 1) % len(surface.outline)]
        left, low, right, high = bounds(wall.extent)
        if surface.kind == "wall":
            u = (
                right - TICKS_PER_INCH
                if surface.met[index] == f"{surface.room}/corner/{wall.corners[1]}"
                else left + TICKS_PER_INCH
            )
            # Each wall counts its heights from the lower end of its own foot.
            over = wall.datum - surface.datum
            for v0, v1 in _covered(wall, [(u, low - 1), (u, high + 1)], 1):
                clipped = sorted(min(max(v + over, min(a[1], b[1])), max(a[1], b[1])) for v in (v0, v1))
                if clipped[1] - clipped[0] > 1:
                    yield _in_order([_level_with(a, b, v) for v in clipped], a)
            return
        level = high - TICKS_PER_INCH
        if surface.kind != "ceiling":
            tops = [bounds(ring)[3] for why, ring in wall.not_tiled if why == surface.id]
            level = max([low + TICKS_PER_INCH, *tops])
        line = self._drawn(wall)
        if line is None:
            return
        shown = LineString([a, b])
        for u0, u1 in _covered(wall, [(left - 1, level), (right + 1, level)], 0):
            along = sorted(shown.project(line.interpolate(max(u, 0))) for u in (u0, u1))
            if along[1] - along[0] > TICKS_PER_MM:
                ends = [shown.interpolate(at) for at in along]
                yield (ends[0].x, ends[0].y), (ends[1].x, ends[1].y)

    def _to_corner(self, corner: int, end: XY, depth: int) -> XY:
        """An end of boards at an inside corner, run on so far that one of up to 135 degrees is filled [ticks]."""
        outline = self.surface.outline
        before, at, after = (outline[(corner + step) % len(outline)] for step in (-1, 0, 1))
        turn = math.atan2(after[1] - at[1], after[0] - at[0]) - math.atan2(at[1] - before[1], at[0] - before[0])
        turn = math.remainder(turn, 2 * math.pi)
        if turn <= 0 or math.dist(at, end) > _CORNER:
            return end
        one, other = (before, at) if depth > 0 else (at, after)
        share = depth * min(1.0, max(0.0, 1 / math.tan(turn))) / math.dist(one, other)
        return at[0] + (other[0] - one[0]) * share, at[1] + (other[1] - one[1]) * share

    def _drawn(self, wall: Surface) -> LineString | None:
        """A wall on the drawing of this floor or ceiling, from its left end."""
        floors = [one for one in self.plan.surfaces if one.id == f"{wall.room}/floor"]
        for there in ([] if self.surface.kind == "ceiling" else floors) + [self.surface]:
            for (a, b), met in zip(sides(there.outline), there.met, strict=True):
                if met == wall.id:
                    return LineString([a, b] if there.kind == "ceiling" else [b, a])
        return None


def _covered(wall: Surface, line: list[XY], axis: int) -> Iterator[tuple[float, float]]:
    open_ = [Polygon(opening.outline) for opening in wall.openings if opening.outline is not None]
    there = LineString(line).intersection(Polygon(wall.outline).difference(unary_union(open_)))
    for part in shapely.get_parts(there):
        if part.length > TICKS_PER_MM:
            yield part.bounds[axis], part.bounds[axis + 2]


def _tops(ring: tuple[tuple[int, int], ...], u: float) -> Iterator[float]:
    """Heights at which a ring's edges pass a place along a wall."""
    for (u0, v0), (u1, v1) in sides(ring):
        if u0 != u1 and min(u0, u1) - NEAR <= u <= max(u0, u1) + NEAR:
            yield v0 + (v1 - v0) * (u - u0) / (u1 - u0)


def _longer(one: XY, other: XY) -> LineString:
    """A board's face with what its thickness adds where corners are not square."""
    share = _CORNER / max(math.dist(one, other), 1.0)
    by = ((other[0] - one[0]) * share, (other[1] - one[1]) * share)
    return LineString([(one[0] - by[0], one[1] - by[1]), (other[0] + by[0], other[1] + by[1])])


def _level_with(a: XY, b: XY, v: float) -> XY:
    return (a[0], v) if a[1] == b[1] else (a[0] + (b[0] - a[0]) * (v - a[1]) / (b[1] - a[1]), v)


def _in_order(ends: list[XY], first: XY) -> tuple[XY, XY]:
    one, other = sorted(ends, key=lambda end: math.dist(end, first))
    return one, other


def _runs(line: LineString, at: XY, way: XY, askew: float) -> bool:
    """Whether a face runs along a way where it is met, but for an angle of a given sine."""
    spot = line.project(Point(at))
    a, b = line.interpolate(max(spot - 64, 0)), line.interpolate(min(spot + 64, line.length))
    return bool(abs((b.x - a.x) * way[1] - (b.y - a.y) * way[0]) < askew * a.distance(b))

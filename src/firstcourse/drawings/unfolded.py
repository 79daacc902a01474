"""A room unfolded: its floor with the walls folded out about their feet, as a client can read and sign it.

Walls are seen from inside the room, as everywhere: listed clockwise, they fold outwards without being mirrored.
"""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from shapely import Point as ShapelyPoint
from shapely import Polygon
from shapely.ops import nearest_points

from firstcourse.drawings.doors import (
    door_layer,
    door_ring,
    door_words,
    doors_of_floor,
    doors_of_wall,
    draw_outline,
)
from firstcourse.drawings.model import XY, Circle, Drawing, Poly, Text
from firstcourse.drawings.mosaic import mosaics, sheet_rings
from firstcourse.drawings.on_paper import LABEL_MM, fitted, titled
from firstcourse.drawings.placing import Placer
from firstcourse.geometry import Point, Ring, bounds, sides
from firstcourse.plan import Door, Opening, Plan, Surface, SurfaceKind, TileStock
from firstcourse.units import TICKS_PER_MM
from firstcourse.words import Speaker, speaker_for

_SCALES = {"inch": (12, 16, 24, 32, 48, 64, 96, 192), "mm": (10, 20, 25, 30, 40, 50, 75, 100, 200)}
_NAME_MM, _CORNER_MM = 3.4, 3.8
_NAME_OFF_MM, _CORNER_OFF_MM = 3.6, 4.2
_BETWEEN_MM = 12.0
"""Room between walls that stand in a row of their own, on paper [mm]."""
_OVER_SHARE = 0.02
"""A wall that would lie over another with more than this share of itself is not folded out."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedSurface:
    """A surface where it lies on paper or on a screen.

    Attributes:
        origin: Where its point (0, 0) lies [mm].
        across: Unit vector that its `u` runs along.
    """

    surface: Surface
    origin: XY
    across: XY
    scale: int

    def at(self, point: Point) -> XY:
        """Where a point of the surface lies [mm]; y runs up."""
        u, v = (value / TICKS_PER_MM / self.scale for value in point)
        (x, y), (dx, dy) = self.origin, self.across
        return x + dx * u - dy * v, y + dy * u + dx * v

    def ring(self, ring: Ring) -> tuple[XY, ...]:
        """Where a ring of the surface lies [mm]."""
        return tuple(self.at(point) for point in ring)

    @property
    def whole(self) -> Ring:
        """The whole surface, where less of it is boarded."""
        return self.surface.extent or self.surface.outline


def room_names(plan: Plan) -> tuple[str, ...]:
    """Rooms that have a floor or a wall to draw, in order."""
    drawn = (SurfaceKind.FLOOR, SurfaceKind.WALL)
    return tuple(dict.fromkeys(surface.room for surface in plan.surfaces if surface.kind in drawn))


def draw_room(plan: Plan, room: str, *, paper: XY = (182.0, 205.0)) -> Drawing:
    """Draw a room unfolded at the largest usual scale that fits.

    Tile is drawn where a surface has any, boards elsewhere. A wall that would lie over another one, as beside a
    corner that points into the room, stands in a row below.

    Args:
        plan: For the tape of the job.
        room: Name of the room.
        paper: Width and height on paper [mm].
    """
    # How far a folded room reaches is known only once it is drawn: every scale is tried.
    return fitted(
        _SCALES[plan.job.tape.value], (0, 0, 0, 0), paper, lambda scale: _drawn(plan, room, scale, paper)
    )


def _drawn(plan: Plan, room: str, scale: int, paper: XY) -> Drawing:
    speaker = speaker_for(plan)
    drawing = titled(speaker, speaker.text("drawings-title", "unfolded", name=room), scale)
    placed, walls, ground = _placed([one for one in plan.surfaces if one.room == room], scale)
    chips = mosaics(plan)
    for one in placed:
        _surface(drawing, plan, one, chips)
    doors = [found for one in placed for found in _doors(plan, one, walls, ground)]
    for door, shape in doors:
        if shape:
            drawing.polys.append(Poly(door_layer(door), shape, door.id))
    left, lower, right, upper = drawing.box
    spare = _NAME_OFF_MM + _NAME_MM
    placer = Placer(drawing, (left - spare, lower - spare, right + spare, upper + spare))
    for one in placed:
        _names(placer, one, speaker)
    for one in placed:
        for opening in one.surface.openings:
            _label(placer, one, opening)
    for door, shape in doors:
        _name_door(placer, door, shape or placed[0].ring(door.line), door_words(door, speaker))
    return drawing


def place_room(surfaces: Sequence[Surface], *, scale: int = 1) -> list[PlacedSurface]:
    """Where the floor and the walls of one room lie when they are unfolded, the floor first.

    Args:
        surfaces: Of the room; those that are neither its floor nor its walls are left out.
        scale: How many times smaller than built.
    """
    return _placed(surfaces, scale)[0]


def _placed(surfaces: Sequence[Surface], scale: int) -> tuple[list[PlacedSurface], list[Surface], list[Polygon]]:
    """The surfaces where they lie, the walls, and the ground that is taken."""
    floors = [surface for surface in surfaces if surface.kind is SurfaceKind.FLOOR]
    # Linings of niches, benches and kerbs have no corners of the room; they have drawings of their own.
    walls = [surface for surface in surfaces if surface.kind is SurfaceKind.WALL and surface.corners]
    placed = [PlacedSurface(surface=floor, origin=(0.0, 0.0), across=(1.0, 0.0), scale=scale) for floor in floors]
    folded = list(_folded(floors[0], walls, scale)) if floors else []
    ground = [Polygon(one.ring(one.whole)) for one in placed]
    row: list[Surface] = [wall for wall in walls if wall.id not in {one.surface.id for one in folded}]
    for one in folded:
        shape = Polygon(one.ring(one.whole))
        if any(shape.intersection(other).area > _OVER_SHARE * shape.area for other in ground):
            row.append(one.surface)
        else:
            placed.append(one)
            ground.append(shape)
    placed += _in_row(sorted(row, key=walls.index), ground, scale)
    return placed, walls, ground


def _doors(
    plan: Plan, one: PlacedSurface, walls: Sequence[Surface], ground: Sequence[Polygon]
) -> Iterator[tuple[Door, tuple[XY, ...]]]:
    """Doors of a placed surface with their outlines on paper; none where there is no room for one.

    A door in a wall that is not drawn is folded out from the floor, as the wall would be.
    """
    for door in doors_of_wall(plan, one.surface):
        yield door, one.ring(door_ring(door, one.surface))
    drawn = {"-".join(wall.corners) for wall in walls}
    for door in doors_of_floor(plan, one.surface) if one.surface.corners else ():
        if door.wall in drawn:
            continue
        shape: tuple[XY, ...] = ()
        if door.height is not None:
            left, right = (one.at(end) for end in door.line)
            per = TICKS_PER_MM * one.scale * math.dist(left, right)
            up = (left[1] - right[1]) * door.height / per, (right[0] - left[0]) * door.height / per
            shape = (left, right, (right[0] + up[0], right[1] + up[1]), (left[0] + up[0], left[1] + up[1]))
            area = Polygon(shape)
            if any(area.intersection(other).area > _OVER_SHARE * area.area for other in ground):
                shape = ()
        yield door, shape


def _name_door(placer: Placer, door: Door, shape: tuple[XY, ...], words: str) -> None:
    if len(shape) > 2:
        area = Polygon(shape)
        label = Text((area.centroid.x, area.centroid.y), words, LABEL_MM)
        placer.put(label, within=area, upright_too=True, aside=True)
        return
    (ax, ay), (bx, by) = shape
    upright = abs(by - ay) > abs(bx - ax)
    placer.put(Text(((ax + bx) / 2, (ay + by) / 2), words, LABEL_MM, upright=upright), reach=8.0, aside=True)


def _folded(floor: Surface, walls: Sequence[Surface], scale: int) -> Iterator[PlacedSurface]:
    """Each wall with its foot on its side of the floor, whose outline runs against the order of the walls."""
    by_id = {wall.id: wall for wall in walls}
    for (right, left), side in zip(sides(floor.outline), floor.sides, strict=True):
        wall = by_id.get(side.meets)
        if wall is not None:
            length = math.dist(left, right)
            across = ((right[0] - left[0]) / length, (right[1] - left[1]) / length)
            per = TICKS_PER_MM * scale
            yield PlacedSurface(surface=wall, origin=(left[0] / per, left[1] / per), across=across, scale=scale)


def _in_row(walls: Sequence[Surface], ground: Sequence[Polygon], scale: int) -> Iterator[PlacedSurface]:
    """Walls side by side, their feet on one line below all that is drawn."""
    per = TICKS_PER_MM * scale
    x = min((shape.bounds[0] for shape in ground), default=0.0)
    top = min((shape.bounds[1] for shape in ground), default=0.0)
    highest = max((bounds(wall.extent or wall.outline)[3] for wall in walls), default=0) / per
    for wall in walls:
        left, _, right, _ = (value / per for value in bounds(wall.extent or wall.outline))
        origin = (x - left, top - 2 * _BETWEEN_MM - highest)
        yield PlacedSurface(surface=wall, origin=origin, across=(1.0, 0.0), scale=scale)
        x += right - left + _BETWEEN_MM


def _surface(drawing: Drawing, plan: Plan, one: PlacedSurface, chips: Mapping[str, TileStock]) -> None:
    surface = one.surface
    if surface.extent and surface.extent != surface.outline:
        drawing.polys.append(Poly("extent", one.ring(surface.extent)))
    draw_outline(drawing, plan, surface, one.at, surface.id)
    for tile in surface.tiles:
        layer = "chip" if tile.stock in chips else "tile"
        drawing.polys.append(Poly(layer, one.ring(tile.outline), tile.id))
        drawing.polys += [Poly(layer, one.ring(hole), tile.id) for hole in tile.holes]
    for ring in sheet_rings(surface, chips):
        ticks = [(round(x * TICKS_PER_MM), round(y * TICKS_PER_MM)) for x, y in ring]
        drawing.polys.append(Poly("tile", tuple(one.at(point) for point in ticks)))
    if not surface.tiles:
        for board in surface.boards:
            drawing.polys.append(Poly("cut", one.ring(board.outline), board.mark))
            drawing.polys += [Poly("cut", one.ring(hole), board.mark) for hole in board.holes]
    for opening in surface.openings:
        if opening.outline is not None:
            drawing.polys.append(Poly("opening", one.ring(opening.outline), opening.id))
        elif opening.centre is not None and opening.diameter is not None:
            radius = opening.diameter / 2 / TICKS_PER_MM / one.scale
            drawing.circles.append(Circle("opening", one.at(opening.centre), radius))


def _names(placer: Placer, one: PlacedSurface, speaker: Speaker) -> None:
    surface = one.surface
    if surface.kind is SurfaceKind.WALL:
        u0, _, u1, v1 = bounds(one.whole)
        x, y = one.at(((u0 + u1) // 2, v1))
        outwards = (-one.across[1], one.across[0])
        spot = (x + outwards[0] * _NAME_OFF_MM, y + outwards[1] * _NAME_OFF_MM)
        upright = abs(outwards[0]) > abs(outwards[1])
        name = speaker.thing(surface.id)
        placer.put(Text(spot, name, _NAME_MM, bold=True, upright=upright), aside=True)
        return
    if len(surface.corners) != len(surface.outline):
        return
    shape = Polygon(one.ring(surface.outline))
    inner = shape.buffer(-_CORNER_OFF_MM * 0.7)
    for name, point in zip(reversed(surface.corners), surface.outline, strict=True):
        corner = one.at(point)
        # Just inside the room, since the walls lie outside.
        near = nearest_points(inner, ShapelyPoint(corner))[0] if not inner.is_empty else shape.centroid
        placer.put(Text((near.x, near.y), name, _CORNER_MM, bold=True), reach=5.0, aside=True)


def _label(placer: Placer, one: PlacedSurface, opening: Opening) -> None:
    if opening.outline is not None:
        shape = Polygon(one.ring(opening.outline))
        middle = shape.representative_point()
        label = Text((middle.x, middle.y), opening.id, LABEL_MM)
        placer.put(label, within=shape, upright_too=True, aside=True)
        return
    assert opening.centre is not None and opening.diameter is not None
    x, y = one.at(opening.centre)
    y += opening.diameter / 2 / TICKS_PER_MM / one.scale + 2.0
    placer.put(Text((x, y), opening.id, LABEL_MM), reach=6.0, aside=True)

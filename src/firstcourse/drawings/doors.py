"""Doors on drawings: a gap in a floor's line, and an outline on the wall they are in."""

import math
from collections.abc import Callable, Iterator
from itertools import pairwise

import shapely
from shapely import LineString

from firstcourse.drawings.model import XY, Drawing, Line, Poly
from firstcourse.geometry import Point, Ring, bounds, sides
from firstcourse.plan import Door, OpeningKind, Plan, Segment, Surface, SurfaceKind
from firstcourse.units import format_length
from firstcourse.words import Speaker

Box = tuple[int, int, int, int]
_ON_LINE = 4
"""A door's end lies on its wall's line within rounding to whole ticks [ticks]."""
_JAMB_MM = 3.2
"""So far a jamb is drawn out of the room from the wall's line, on paper [mm]."""


def doors_of_wall(plan: Plan, surface: Surface) -> tuple[Door, ...]:
    """Doors in a wall that are no openings of what is boarded of it."""
    if surface.kind is not SurfaceKind.WALL or not surface.corners:
        return ()
    taken = [
        bounds(opening.outline)
        for opening in surface.openings
        if opening.kind is OpeningKind.DOOR and opening.outline is not None
    ]
    return tuple(
        door
        for door in plan.doors
        if door.room == surface.room
        and door.wall == "-".join(surface.corners)
        and not any(box[0] < door.left + door.width and box[2] > door.left for box in taken)
    )


def doors_of_floor(plan: Plan, surface: Surface) -> tuple[Door, ...]:
    """Doors along the outline of a room's floor, or of a shower floor; linings have no room's corners."""
    if surface.kind is not SurfaceKind.FLOOR or not (surface.corners or surface.fall):
        return ()
    ring = shapely.LinearRing(surface.outline)
    return tuple(
        door
        for door in plan.doors
        if door.room == surface.room
        and LineString(door.line).intersection(ring.buffer(_ON_LINE)).length > LineString(door.line).length / 2
    )


def door_ring(door: Door, surface: Surface) -> Ring:
    """A door on its wall; one whose height nobody told reaches to the top of the wall [ticks]."""
    wall = surface.extent or surface.outline
    left, right = door.left, door.left + door.width
    bottom = min(_foot(wall, left), _foot(wall, right)) if door.bottom is None else door.bottom
    top = bounds(wall)[3] if door.height is None else bottom + door.height
    return ((left, bottom), (right, bottom), (right, top), (left, top))


def with_doors(plan: Plan, surface: Surface, box: Box) -> Box:
    """What of a surface is drawn, made larger by the doors in its wall [ticks]."""
    for door in doors_of_wall(plan, surface):
        left, lower, right, upper = bounds(door_ring(door, surface))
        box = min(box[0], left), min(box[1], lower), max(box[2], right), max(box[3], upper)
    return box


def door_words(door: Door, speaker: Speaker) -> str:
    """Its name and its width, with its height where that is known."""
    size = [format_length(side, speaker.tape) for side in (door.width, door.height) if side is not None]
    return speaker.text("drawings-door", name=door.id, size=" × ".join(size))


def door_layer(door: Door) -> str:
    """A door whose height nobody told is drawn with the thin dotted pen."""
    return "opening" if door.height is not None else "extent"


def draw_outline(
    drawing: Drawing, plan: Plan, surface: Surface, at: Callable[[Point], XY], name: str = ""
) -> None:
    """Draw a surface's outline, open where a door is; a floor has two jambs there.

    Args:
        drawing: What to add to.
        plan: For its doors.
        surface: Any; a wall is open along the foot of its doors.
        at: A point of the surface on paper [mm].
        name: Ties the outline to its surface, where it has no gap.
    """
    doors = doors_of_floor(plan, surface)
    lines = [door.line for door in doors] + list(_feet(plan, surface))
    gaps = shapely.union_all([LineString(line).buffer(_ON_LINE, cap_style="flat") for line in lines])
    if not gaps.intersects(shapely.LinearRing(surface.outline)):
        drawing.polys.append(Poly("outline", tuple(at(point) for point in surface.outline), name))
        return
    for a, b in sides(surface.outline):
        for part in shapely.get_parts(LineString([a, b]).difference(gaps)):
            ends = [(round(x), round(y)) for x, y in part.coords]
            drawing.lines += [Line("outline", at(one), at(other)) for one, other in pairwise(ends)]
    for door in doors:
        one, other = (at(end) for end in door.line)
        across, up = (other[0] - one[0]) / math.dist(one, other), (other[1] - one[1]) / math.dist(one, other)
        drawing.lines.append(Line("extent", one, other))
        for x, y in (one, other):
            # The room lies to the right of the way from the left end to the right one.
            drawing.lines.append(Line("outline", (x, y), (x - up * _JAMB_MM, y + across * _JAMB_MM)))


def _feet(plan: Plan, surface: Surface) -> Iterator[Segment]:
    """The feet of doors on their wall, in their own line or in that of its boards [ticks]."""
    rings = [door_ring(door, surface) for door in doors_of_wall(plan, surface)]
    rings += [
        opening.outline for opening in surface.openings if opening.kind is OpeningKind.DOOR and opening.outline
    ]
    for ring in rings:
        left, lower, right, _ = bounds(ring)
        yield (left, lower), (right, lower)


def _foot(wall: Ring, at: int) -> int:
    """Height of the wall's foot at a place along it, its outline beginning with the foot [ticks]."""
    (left, low), (right, high) = wall[0], wall[1]
    return low if right == left else low + round((high - low) * (at - left) / (right - left))

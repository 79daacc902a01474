"""Doors: each lies on the line of the wall it is in, as wide and as far along as it is told."""

import math
from collections.abc import Iterator

from shapely import LineString, Point

from firstcourse.geometry import bounds, sides
from firstcourse.verify.structure import Document, Door, Surface
from firstcourse.verify.verdict import Objection

_SLACK = 4
"""Rounding of ends on a wall askew to the axes, to whole ticks twice [ticks]."""


def check_doors(plan: Document) -> Iterator[Objection]:
    """Object to doors off the line of their wall or of another width, and to doors that no floor shows."""
    floors = {surface.room: surface for surface in plan.surfaces if surface.id == f"{surface.room}/floor"}
    for door in plan.doors:
        if abs(math.dist(*door.line) - door.width) > _SLACK:
            yield Objection("VER-112", f"{door.room} {door.id}", "is not as wide as it is told")
        if door.room in floors:
            yield from _on_wall(door, floors[door.room])
    for surface in plan.surfaces:
        if surface.kind != "wall" or len(surface.corners) != 2:
            continue
        told = [
            (door.left, door.left + door.width)
            for door in plan.doors
            if (door.room, door.wall) == (surface.room, "-".join(surface.corners))
        ]
        for opening in surface.openings:
            if opening.kind != "door" or opening.outline is None:
                continue
            first, _, last, _ = bounds(opening.outline)
            slack = 4 * plan.tape.graduation
            if not any(abs(left - first) <= slack and abs(right - last) <= slack for left, right in told):
                yield Objection("VER-112", f"{surface.id} {opening.id}", "is a door that is not among the doors")


def _on_wall(door: Door, floor: Surface) -> Iterator[Objection]:
    # The outline runs against the order of the walls: a side begins at its wall's right corner.
    walls = [
        line
        for line, met in zip(sides(floor.outline), floor.met, strict=True)
        if met == f"{door.room}/wall/{door.wall}"
    ]
    if not walls:
        yield Objection("VER-112", f"{door.room} {door.id}", "is in a wall that its room does not have")
        return
    (right, left) = walls[0]
    wall = LineString([left, right])
    if any(wall.distance(Point(end)) > _SLACK for end in door.line):
        yield Objection("VER-112", f"{door.room} {door.id}", "lies off the line of its wall")
    elif abs(math.dist(left, door.line[0]) - door.left) > _SLACK:
        yield Objection("VER-112", f"{door.room} {door.id}", "is not as far along its wall as it is told")
    elif math.dist(left, door.line[0]) > math.dist(left, door.line[1]):
        yield Objection("VER-112", f"{door.room} {door.id}", "has its ends the wrong way round")

"""Doors: those that the job gives, each on the line of its wall, as wide, as high and as far along as given."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from shapely import LineString, Point

from firstcourse.geometry import bounds, sides
from firstcourse.verify.fields import Node, point
from firstcourse.verify.structure import Document, Door, Surface
from firstcourse.verify.verdict import Objection

_SLACK = 4
"""Rounding of ends on a wall askew to the axes, to whole ticks twice [ticks]."""


@dataclass(frozen=True, slots=True)
class _Given:
    """A door as the job gives it: its wall, its ends along that, its foot and its height [ticks]."""

    room: str
    id: str
    wall: str
    left: int
    right: int
    bottom: int | None
    height: int | None


def check_doors(plan: Document) -> Iterator[Objection]:
    """Object to doors that are not those given, off the line of their wall, or that no floor shows."""
    given = [door for room in plan.job.nodes("rooms", ()) for door in _given(room)]
    if [(door.room, door.id) for door in plan.doors] != [(door.room, door.id) for door in given]:
        yield Objection("VER-112", "doors", "are not the doors that the job gives, in its order")
    else:
        for door, asked in zip(plan.doors, given, strict=True):
            if not _as_given(door, asked, plan):
                yield Objection("VER-112", f"{door.room} {door.id}", "is not in the wall, or as large, as given")
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


def _given(room: Node) -> Iterator[_Given]:
    """The doors of a room, those of its floor first: one that is an opening of its wall as well counts once."""
    name = room.text("name")
    walls = [
        _Given(name, opening.text("id"), wall.text("wall"), left, right, bottom, top - bottom)
        for wall in room.nodes("walls", ())
        for opening in wall.nodes("openings", ())
        if opening.text("kind") == "door"
        for left, bottom, right, top in (_box(opening),)
    ]
    for door in room.part("floor").nodes("doorways", ()):
        if door.raw("width", None) is None:
            continue
        wall, left = door.text("wall"), door.distance("left")
        right = left + door.length("width")
        same = next((one for one in walls if one.wall == wall and one.left < right and left < one.right), None)
        if same is None:
            height = None if door.raw("height", None) is None else door.length("height")
            yield _Given(name, door.text("id"), wall, left, right, None, height)
        else:
            walls.remove(same)
            yield _Given(name, door.text("id"), wall, same.left, same.right, same.bottom, same.height)
    yield from walls


def _box(opening: Node) -> tuple[int, int, int, int]:
    if opening.raw("points", None):
        return bounds(tuple(point(value, where) for value, where in opening.rows("points")))
    left, bottom = opening.distance("left"), opening.distance("bottom")
    if opening.raw("diameter", None) is not None:
        half = opening.length("diameter") // 2
        return left - half, bottom - half, left + half, bottom + half
    return left, bottom, left + opening.length("width"), bottom + opening.length("height")


def _as_given(door: Door, asked: _Given, plan: Document) -> bool:
    """Whether a door is as given; one to the very end of a wall may be cut short by the adjustment of readings."""
    short = asked.right - door.left - door.width
    ends = [abs(length - door.left - door.width) for length in _lengths(door, plan)]
    return (
        (door.wall, door.left, door.bottom, door.height) == (asked.wall, asked.left, asked.bottom, asked.height)
    ) and (short == 0 or (short > 0 and min(ends, default=0.0) <= _SLACK))


def _lengths(door: Door, plan: Document) -> Iterator[float]:
    """How long the wall of a door is, by the floor and by the wall itself."""
    for surface in plan.surfaces:
        if surface.id == f"{door.room}/floor":
            yield from (
                math.dist(a, b)
                for (a, b), met in zip(sides(surface.outline), surface.met, strict=True)
                if met == f"{door.room}/wall/{door.wall}"
            )
        elif surface.id == f"{door.room}/wall/{door.wall}" and surface.extent:
            left, _, right, _ = bounds(surface.extent)
            yield right - left


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

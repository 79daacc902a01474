"""Nothing of a plan lies outside its room, and a kerb stands only where the floor goes on beyond it."""

import math
from collections.abc import Iterator

from shapely import Point, Polygon

from firstcourse.geometry import bounds, sides
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_SLACK = 4
"""Rounding of a corner on a wall askew to the axes, to whole ticks twice [ticks]."""
_LEAST_KERB = 2 * _SLACK


def check_in_room(plan: Document) -> Iterator[Objection]:
    """Object to shower floors, kerbs and openings outside their room, and to kerbs along a wall."""
    rooms = {surface.room: surface for surface in plan.surfaces if surface.id == f"{surface.room}/floor"}
    for surface in plan.surfaces:
        room = rooms.get(surface.room)
        if surface.fall is not None and room is not None:
            yield from _shower(surface, Polygon(room.outline))
        if surface.kind in ("floor", "ceiling") and surface.corners:
            yield from _openings(surface, Polygon(surface.outline))
        elif surface.kind == "wall" and surface.extent:
            yield from _along_wall(surface, 4 * plan.tape.graduation)


def _shower(surface: Surface, room: Polygon) -> Iterator[Objection]:
    if not room.buffer(_SLACK, join_style="mitre").covers(Polygon(surface.outline)):
        yield Objection("VER-108", surface.id, "reaches out of its room")
    width = max(_LEAST_KERB, (surface.fall.kerb_width if surface.fall else None) or 0)
    for (a, b), met in zip(sides(surface.outline), surface.met, strict=True):
        length = math.dist(a, b)
        if met != f"{surface.id}/kerb" or length <= _LEAST_KERB:
            continue
        # Counter-clockwise: what is beyond a side lies right of the way from a to b.
        beyond = (b[1] - a[1]) / length, (a[0] - b[0]) / length
        middle = (a[0] + b[0]) / 2 + beyond[0] * width / 2, (a[1] + b[1]) / 2 + beyond[1] * width / 2
        if not room.covers(Point(middle)):
            yield Objection("VER-109", surface.id, "has a kerb along a side with no floor beyond it")


def _openings(surface: Surface, room: Polygon) -> Iterator[Objection]:
    for opening in surface.openings:
        if opening.outline is not None:
            inside = room.buffer(_SLACK, join_style="mitre").covers(Polygon(opening.outline))
        else:
            inside = opening.centre is not None and room.covers(Point(opening.centre))
        if not inside:
            yield Objection("VER-108", f"{surface.id} {opening.id}", "lies outside its room")


def _along_wall(surface: Surface, slack: int) -> Iterator[Objection]:
    left, _, right, _ = bounds(surface.extent)
    for opening in surface.openings:
        if opening.outline is not None:
            first, _, last, _ = bounds(opening.outline)
            if first < left - slack or last > right + slack:
                yield Objection("VER-108", f"{surface.id} {opening.id}", "reaches past the end of its wall")

"""Shower floors on a bed of their own: a surface to tile, and the part of the boarded floor that they take up."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from shapely import LineString
from shapely import Point as ShapelyPoint

from firstcourse.errors import InputValueError
from firstcourse.geometry import as_ring, counter_clockwise, from_shapely, is_simple, sides, to_shapely
from firstcourse.geometry.polygon import Point, Ring
from firstcourse.job import Room, TiledShower
from firstcourse.plan import Opening, OpeningKind, Side, SideKind, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.survey.flats import Frame, frames_of

KERB = "kerb"
OPEN = "room floor"
"""Labels of the sides where a shower floor ends at its kerb, or runs on into the room."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SurveyedShower:
    """A shower floor as it lies in its room.

    Attributes:
        surface: The floor to tile, in the coordinates of the room's floor; its sides are labelled.
        tray: What it takes up of the boarded floor, kerb included.
        drain: One point, or the two ends of a linear drain.
        shower: What the job says of it.
        origin: Corner of the side that everything is measured from.
        axes: Unit vectors along that side and out from it.
    """

    surface: Surface
    tray: Opening
    drain: tuple[Point, ...]
    shower: TiledShower
    origin: Point
    axes: tuple[tuple[float, float], tuple[float, float]]

    def place(self, at: tuple[float, float]) -> tuple[float, float]:
        """A point as the job measures it: along the side, and out from it [ticks]."""
        du, dv = at[0] - self.origin[0], at[1] - self.origin[1]
        (au, av), (ou, ov) = self.axes
        return du * au + dv * av, du * ou + dv * ov


def shower_of(room: Room, shower: TiledShower, plan: Mapping[str, Point], rules: RuleSet) -> SurveyedShower:
    """Place a shower floor in its adjusted room.

    Corners that come near a wall are taken to stand at it, so that a room out of square leaves no crack beside it.

    Raises:
        InputValueError: The shower or its drain lies outside the room, or its outline crosses itself.
    """
    names = tuple(reversed(room.corners))
    walls = tuple(
        (f"wall {left}-{right}", plan[right], plan[left])
        for right, left in zip(names, names[1:] + names[:1], strict=True)
    )
    room_ring = tuple(plan[name] for name in names)
    frame = frames_of(room, plan)[shower.side or ""]
    touch = rules.ticks("shower.touch")
    outline = _outline(room, shower, frame, walls, touch)
    area = to_shapely(outline)
    if not is_simple(outline):
        raise InputValueError(f"the outline of the shower floor in {room.name} crosses itself")
    if area.difference(to_shapely(room_ring).buffer(2)).area > 0.001 * area.area:
        raise InputValueError(f"the shower floor reaches out of {room.name}; check side, left, out and its size")
    labels = tuple(_side(a, b, walls, shower) for a, b in sides(outline))
    drain = _drain(shower, frame, outline, labels)
    if any(to_shapely(outline).distance(ShapelyPoint(end)) > 2 for end in drain):
        raise InputValueError(f"the drain lies outside the shower floor in {room.name}; check its distances")
    grate = _grate(shower, drain, outline, rules)
    along = (frame.end[0] - frame.start[0]) / frame.length, (frame.end[1] - frame.start[1]) / frame.length
    surface = Surface(
        id=f"{room.name}/floor/shower",
        room=room.name,
        kind=SurfaceKind.FLOOR,
        title=f"{room.name}: shower floor",
        outline=outline,
        sides=labels,
        openings=(grate,),
        boarded=False,
    )
    return SurveyedShower(
        surface=surface,
        tray=_tray(room, shower, outline, room_ring),
        drain=drain,
        shower=shower,
        origin=frame.start,
        axes=(along, (along[1], -along[0])),
    )


def _outline(
    room: Room, shower: TiledShower, frame: Frame, walls: Sequence[tuple[str, Point, Point]], touch: int
) -> Ring:
    if shower.points:
        ring = tuple(frame.at(left, out) for left, out in shower.points)
    else:
        assert shower.left is not None and shower.out is not None
        assert shower.width is not None and shower.depth is not None
        right, far = shower.left + shower.width, shower.out + shower.depth
        ring = frame.box(shower.left, shower.out, right, far)
    found = counter_clockwise(as_ring(_at_walls(at, walls, touch) for at in ring))
    if len(found) < 3:
        raise InputValueError(f"the shower floor in {room.name} has no area; check its size")
    return found


def _at_walls(at: Point, walls: Sequence[tuple[str, Point, Point]], touch: int) -> Point:
    """A corner moved into the room's corner or onto the wall that it comes near."""
    corner = min((a for _, a, _ in walls), key=lambda a: (math.dist(a, at), a))
    if max(abs(corner[0] - at[0]), abs(corner[1] - at[1])) <= touch:
        return corner
    lines = [LineString([a, b]) for _, a, b in walls]
    point = ShapelyPoint(at)
    nearest = min(lines, key=lambda line: line.distance(point))
    if nearest.distance(point) > touch:
        return at
    foot = nearest.interpolate(nearest.project(point))
    return round(foot.x), round(foot.y)


def _side(a: Point, b: Point, walls: Sequence[tuple[str, Point, Point]], shower: TiledShower) -> Side:
    for label, one, other in walls:
        line = LineString([one, other])
        if max(line.distance(ShapelyPoint(a)), line.distance(ShapelyPoint(b))) <= 2:
            return Side(kind=SideKind.PERIMETER, label=label)
    if shower.kerb is not None:
        return Side(kind=SideKind.PERIMETER, label=KERB)
    return Side(kind=SideKind.FREE, label=OPEN)


def _drain(shower: TiledShower, frame: Frame, outline: Ring, labels: Sequence[Side]) -> tuple[Point, ...]:
    drain = shower.drain
    if drain.left is not None and drain.out is not None:
        return (frame.at(drain.left, drain.out),)
    if drain.ends is not None:
        one, other = (frame.at(*end) for end in drain.ends)
        return one, other
    for label, (a, b) in zip(labels, sides(outline), strict=True):
        if label.label == f"wall {drain.along}":
            return a, b
    raise InputValueError(f"the drain is to lie along {drain.along}, but the shower floor has no side there")


def _grate(shower: TiledShower, drain: tuple[Point, ...], outline: Ring, rules: RuleSet) -> Opening:
    asked = shower.drain
    if len(drain) == 1:
        return Opening(
            id="drain",
            kind=OpeningKind.DRAIN,
            centre=drain[0],
            diameter=asked.diameter or rules.ticks("fall.drain.diameter"),
        )
    width = asked.width or rules.ticks("fall.drain.width")
    line = LineString(drain)
    # A drain along a side has its body before that side; elsewhere its line is the middle of its body.
    at_side = to_shapely(outline).exterior.distance(ShapelyPoint(line.interpolate(0.5, normalized=True))) <= 2
    body = line.buffer(width if at_side else width / 2, cap_style="flat").intersection(to_shapely(outline))
    areas = from_shapely(body)
    if len(areas) != 1:
        raise InputValueError("the linear drain leaves the shower floor and comes back; check its ends")
    return Opening(id="drain", kind=OpeningKind.DRAIN, outline=areas[0][0])


def _tray(room: Room, shower: TiledShower, outline: Ring, room_ring: Ring) -> Opening:
    taken = to_shapely(outline)
    if shower.kerb is not None:
        taken = taken.buffer(shower.kerb.width, join_style="mitre").intersection(to_shapely(room_ring))
    areas = from_shapely(taken)
    if len(areas) != 1 or areas[0][1]:
        raise InputValueError(f"the shower floor in {room.name} and its kerb are not one area; check points")
    return Opening(id="shower", kind=OpeningKind.TRAY, outline=areas[0][0])

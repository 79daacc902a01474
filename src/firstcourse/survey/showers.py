"""Shower floors on a bed of their own: a surface to tile, and the part of the boarded floor that they take up."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from shapely import LineString
from shapely import Point as ShapelyPoint

from firstcourse.errors import InputValueError
from firstcourse.geometry import (
    Point,
    Ring,
    as_ring,
    counter_clockwise,
    from_shapely,
    is_simple,
    sides,
    to_shapely,
)
from firstcourse.job import Room, TiledShower
from firstcourse.plan import Opening, OpeningKind, Side, SideKind, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.survey.flats import SideFrame, frames_of
from firstcourse.survey.near_walls import DOUBT, TOUCH, Wall, at_walls, farthest_out, gaps_beside, walls_of, within
from firstcourse.units import Tape, format_length


@dataclass(frozen=True, slots=True, kw_only=True)
class SurveyedShower:
    """A shower floor as it lies in its room.

    Attributes:
        surface: The floor to tile, in the coordinates of the room's floor; its sides say what they meet.
        tray: What it takes up of the boarded floor, kerb included.
        drain: One point, or the two ends of a linear drain.
        shower: What the job says of it.
        origin: Corner of the side that everything is measured from.
        axes: Unit vectors along that side and out from it.
        moved: By wall, how far its corners were moved to stand at it [ticks].
        beside: By wall, how wide the gap is that is too narrow to be a floor [ticks].
    """

    surface: Surface
    tray: Opening
    drain: tuple[Point, ...]
    shower: TiledShower
    origin: Point
    axes: tuple[tuple[float, float], tuple[float, float]]
    moved: dict[str, int] = field(default_factory=dict)
    beside: dict[str, int] = field(default_factory=dict)

    def place(self, at: tuple[float, float]) -> tuple[float, float]:
        """A point as the job measures it: along the side, and out from it [ticks]."""
        du, dv = at[0] - self.origin[0], at[1] - self.origin[1]
        (au, av), (ou, ov) = self.axes
        return du * au + dv * av, du * ou + dv * ov


def shower_of(
    room: Room, shower: TiledShower, plan: Mapping[str, Point], rules: RuleSet, tape: Tape
) -> SurveyedShower:
    """Place a shower floor in its adjusted room.

    Corners that come near a wall are taken to stand at it, so that a room out of square leaves no crack beside it.
    A gap too narrow for the kerb that would stand in it is asked about.

    Raises:
        InputValueError: The shower or its drain lies outside the room, or its outline crosses itself.
    """
    walls = walls_of(room, plan)
    room_ring = tuple(plan[name] for name in reversed(room.corners))
    frame = frames_of(room, plan)[shower.side or ""]
    touch = rules.ticks(TOUCH)
    asked = _outline(room, shower, frame)
    if not is_simple(asked):
        raise InputValueError(f"the outline of the shower floor in {room.name} crosses itself")
    outline, moved = at_walls(asked, walls, touch)
    inside = within(outline, room_ring, touch) if len(outline) > 2 and is_simple(outline) else None
    if inside is None:
        past, wall = farthest_out(asked, room_ring, walls)
        raise InputValueError(
            f"the shower floor reaches out of {room.name}, {format_length(past, tape)} past wall {wall}; "
            "check side, left, out and its size"
        )
    outline = inside
    around = tuple(_side(a, b, walls, room.name, shower) for a, b in sides(outline))
    drain = _drain(shower, frame, outline, around)
    if any(to_shapely(outline).distance(ShapelyPoint(end)) > 2 for end in drain):
        raise InputValueError(f"the drain lies outside the shower floor in {room.name}; check its distances")
    grate = _grate(shower, drain, outline, rules)
    along = (frame.end[0] - frame.start[0]) / frame.length, (frame.end[1] - frame.start[1]) / frame.length
    surface = Surface(
        id=f"{room.name}/floor/shower",
        room=room.name,
        kind=SurfaceKind.FLOOR,
        outline=outline,
        sides=around,
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
        moved=moved,
        beside=_gaps(room, shower, outline, around, walls, rules, tape),
    )


def _outline(room: Room, shower: TiledShower, frame: SideFrame) -> Ring:
    if shower.points:
        ring = tuple(frame.at(left, out) for left, out in shower.points)
    else:
        assert shower.left is not None and shower.out is not None
        assert shower.width is not None and shower.depth is not None
        right, far = shower.left + shower.width, shower.out + shower.depth
        ring = frame.box(shower.left, shower.out, right, far)
    found = counter_clockwise(as_ring(ring))
    if len(found) < 3:
        raise InputValueError(f"the shower floor in {room.name} has no area; check its size")
    return found


def _side(a: Point, b: Point, walls: Sequence[Wall], room: str, shower: TiledShower) -> Side:
    for wall in walls:
        line = LineString([wall.start, wall.end])
        if max(line.distance(ShapelyPoint(a)), line.distance(ShapelyPoint(b))) <= 2:
            return Side(kind=SideKind.PERIMETER, meets=f"{room}/wall/{wall.name}")
    if shower.kerb is not None:
        return Side(kind=SideKind.PERIMETER, meets=f"{room}/floor/shower/kerb")
    return Side(kind=SideKind.FREE, meets=f"{room}/floor")


def _gaps(
    room: Room,
    shower: TiledShower,
    outline: Ring,
    around: Sequence[Side],
    walls: Sequence[Wall],
    rules: RuleSet,
    tape: Tape,
) -> dict[str, int]:
    """By wall, a gap beside an open side that is too narrow to be a floor.

    Raises:
        InputValueError: A kerb would stand in such a gap.
    """
    open_sides = [line for line, side in zip(sides(outline), around, strict=True) if not side.wall]
    doubt, kerb = rules.ticks(DOUBT), shower.kerb
    found = gaps_beside(open_sides, walls, doubt if kerb is None else max(doubt, kerb.width))
    if kerb is not None and found:
        wall, gap = next(iter(found.items()))
        raise InputValueError(
            f"the shower floor in {room.name} ends {format_length(gap, tape)} short of wall {wall}, too near for "
            f"the kerb of {format_length(kerb.width, tape)} that would stand there; enter left, out and its size "
            "so that it ends at the wall, or farther from it"
        )
    return found


def _drain(shower: TiledShower, frame: SideFrame, outline: Ring, around: Sequence[Side]) -> tuple[Point, ...]:
    drain = shower.drain
    if drain.left is not None and drain.out is not None:
        return (frame.at(drain.left, drain.out),)
    if drain.ends is not None:
        one, other = (frame.at(*end) for end in drain.ends)
        return one, other
    for side, (a, b) in zip(around, sides(outline), strict=True):
        if side.wall == drain.along:
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

"""Floors and ceilings: things placed from named sides, joists, panel joints and screws."""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import shapely
from shapely import LineString
from shapely import Point as ShapelyPoint

from firstcourse.errors import InputValueError
from firstcourse.geometry import (
    Point,
    Ring,
    as_ring,
    axis_near,
    axis_of,
    bounds,
    counter_clockwise,
    from_shapely,
    is_simple,
    moved,
    to_shapely,
)
from firstcourse.job import MOST_ITEMS, BoardedCeiling, BoardedFloor, FloorFraming, FloorOpening, PanelJoint, Room
from firstcourse.plan import (
    Opening,
    OpeningKind,
    Segment,
    Side,
    SideKind,
    Support,
    SupportKind,
    Surface,
    SurfaceKind,
)
from firstcourse.rules import RuleSet
from firstcourse.survey.fixtures import refuse_cut, refuse_in_one_place
from firstcourse.survey.members import placed_members
from firstcourse.survey.near_walls import TOUCH, stood, walls_of

STANDING = frozenset({OpeningKind.TUB, OpeningKind.TRAY, OpeningKind.CABINET, OpeningKind.OTHER})
"""What stands on a floor, and at a wall that it comes near."""

_MOST_PLACES = 5_000
_MOST_SCREWS = 50_000


@dataclass(frozen=True, slots=True)
class SideFrame:
    """Places along a side from its left end, and out from it into the room."""

    start: Point
    end: Point

    @property
    def length(self) -> float:
        """Length of the side [ticks]."""
        return math.dist(self.start, self.end)

    def at(self, left: int, out: int) -> Point:
        """The point so far along and out [ticks]; exact where the side runs along an axis."""
        du, dv = self.end[0] - self.start[0], self.end[1] - self.start[1]
        if axis_of(self.start, self.end):
            eu, ev = (du > 0) - (du < 0), (dv > 0) - (dv < 0)
            return self.start[0] + eu * left + ev * out, self.start[1] + ev * left - eu * out
        fu, fv = du / self.length, dv / self.length
        return round(self.start[0] + fu * left + fv * out), round(self.start[1] + fv * left - fu * out)

    def along(self, point: tuple[float, float]) -> float:
        """How far along the side a point lies from its left end [ticks]."""
        du, dv = self.end[0] - self.start[0], self.end[1] - self.start[1]
        return ((point[0] - self.start[0]) * du + (point[1] - self.start[1]) * dv) / self.length

    def box(self, left: int, out: int, right: int, far: int) -> Ring:
        """A rectangle square to the side, counter-clockwise."""
        return counter_clockwise(
            (self.at(left, out), self.at(right, out), self.at(right, far), self.at(left, far))
        )


def floor_surface(
    room: Room, floor: BoardedFloor, plan: Mapping[str, Point], rules: RuleSet, *, tray: Opening | None = None
) -> Surface:
    """The room's floor as a surface to board.

    Args:
        room: The room.
        floor: What the job says of its floor.
        plan: The room's adjusted corners.
        rules: For widths of joists.
        tray: What a shower floor on its own bed takes up, kerb included.

    Raises:
        InputValueError: A thing placed on the floor does not lie on it.
    """
    outline, sides = _outline(room, plan)
    frames = frames_of(room, plan)
    joists = _joists(floor.framing, frames, outline, rules, SupportKind.JOIST)
    panel = Support(id="panel", kind=SupportKind.PANEL, outline=outline)
    return Surface(
        id=f"{room.name}/floor",
        room=room.name,
        kind=SurfaceKind.FLOOR,
        outline=outline,
        sides=sides,
        corners=room.corners,
        extent=outline,
        openings=(
            *floor_openings(room, floor, plan, rules),
            *((tray,) if tray is not None else ()),
        ),
        supports=(panel, *joists),
        framing_axis=_axis(floor.framing, frames),
        panel_joints=tuple(_joint(joint, frames, outline) for joint in floor.panel_joints),
        panel_screws=_screws(floor, frames, outline, rules),
        board_stock=floor.stock,
        slab=(floor.boards_on_slab or "tiled") if floor.is_slab else "",
    )


def ceiling_surface(room: Room, ceiling: BoardedCeiling, plan: Mapping[str, Point], rules: RuleSet) -> Surface:
    """The room's ceiling, seen from below: the floor plan's mirror image in u."""
    width = max(u for u, _ in plan.values())
    outline, sides = _outline(room, plan)
    frames = frames_of(room, plan)
    joists = _joists(ceiling.framing, frames, outline, rules, SupportKind.JOIST)
    openings = _openings(room, "ceiling", ceiling.openings, frames, outline, lambda _opening, ring: ring)
    mirrored_sides = (*reversed(sides[:-1]), sides[-1])
    return Surface(
        id=f"{room.name}/ceiling",
        room=room.name,
        kind=SurfaceKind.CEILING,
        outline=_mirrored(outline, width),
        sides=mirrored_sides,
        corners=room.corners,
        extent=_mirrored(outline, width),
        openings=tuple(
            opening.model_copy(
                update={
                    "outline": _mirrored(opening.outline, width) if opening.outline else None,
                    "centre": (width - opening.centre[0], opening.centre[1]) if opening.centre else None,
                }
            )
            for opening in openings
        ),
        supports=tuple(joist.model_copy(update={"outline": _mirrored(joist.outline, width)}) for joist in joists),
        framing_axis=_axis(ceiling.framing, frames),
        board_stock=ceiling.stock,
    )


def _mirrored(ring: Ring, width: int) -> Ring:
    return tuple((width - u, v) for u, v in reversed(ring))


def _outline(room: Room, plan: Mapping[str, Point]) -> tuple[Ring, tuple[Side, ...]]:
    # The corners run clockwise seen from above; the ring runs the other way, so side i of the ring joins
    # corners n-1-i and n-2-i.
    names = tuple(reversed(room.corners))
    outline = tuple(plan[name] for name in names)
    pairs = zip(names, names[1:] + names[:1], strict=True)
    sides = tuple(Side(kind=SideKind.PERIMETER, meets=f"{room.name}/wall/{left}-{right}") for right, left in pairs)
    return outline, sides


def frames_of(room: Room, plan: Mapping[str, Point]) -> dict[str, SideFrame]:
    """The frame of every side by its name; the first side's also by an empty one."""
    frames = {}
    for pair in room.side_pairs():
        left, right = pair.split("-")
        frames[pair] = SideFrame(plan[left], plan[right])
    frames[""] = frames[room.side_pairs()[0]]
    return frames


def _axis(framing: FloorFraming | None, frames: Mapping[str, SideFrame]) -> Literal["u", "v", ""]:
    if framing is None:
        return ""
    frame = frames[framing.parallel_to]
    return axis_near(frame.start, frame.end)


def _reach(outline: Ring) -> int:
    left, lower, right, upper = bounds(outline)
    return right - left + upper - lower


def _regular(first: int | None, spacing: int | None, reach: int) -> list[int]:
    """Places at a regular spacing over the whole floor, also behind the side they are measured from.

    Nothing is added between the side and the first place: the setter gave that one as the first.
    """
    if first is None or spacing is None:
        return []
    if reach // spacing > _MOST_PLACES:
        raise InputValueError("members or screws spaced so close that they are past counting; check their spacing")
    behind = [at for at in range(first - spacing, -reach, -spacing) if at < 0]
    return [*reversed(behind), *range(first, reach, spacing)]


def _joists(
    framing: FloorFraming | None, frames: Mapping[str, SideFrame], outline: Ring, rules: RuleSet, kind: SupportKind
) -> tuple[Support, ...]:
    if framing is None:
        return ()
    frame, reach = frames[framing.parallel_to], _reach(outline)
    usual = framing.width or rules.ticks("framing.joist_width")
    if framing.spacing is not None and framing.spacing <= usual:
        raise InputValueError("joists spaced closer than they are wide; check spacing and width")
    centres = placed_members(framing.members, _regular(framing.first, framing.spacing, reach), usual)
    if len(centres) > 4 * MOST_ITEMS:
        raise InputValueError("more joists than any room has; check their spacing")
    area = to_shapely(outline)
    joists: list[Support] = []
    for at, width in centres:
        ring = frame.box(-reach, at - width // 2, 2 * reach, at - width // 2 + width)
        part = to_shapely(ring).intersection(area)
        if part.is_empty or part.area < 640 * 640:
            continue
        if axis_of(frame.start, frame.end):
            left, lower, right, upper = (round(value) for value in part.bounds)
            box: Ring = ((left, lower), (right, lower), (right, upper), (left, upper))
        else:
            # A joist askew to the axes is kept no longer than the floor over it: it is judged by its bounds too.
            ends = [frame.along(point) for point in shapely.get_coordinates(part).tolist()]
            first, last = math.floor(min(ends)), math.ceil(max(ends))
            box = frame.box(first, at - width // 2, last, at - width // 2 + width)
        joists.append(Support(id=f"joist {len(joists) + 1}", kind=kind, outline=box))
    return tuple(joists)


def floor_joists(
    room: Room, floor: BoardedFloor, plan: Mapping[str, Point], rules: RuleSet
) -> tuple[Support, ...]:
    """The joists of a room's floor, as far as they lie under it; none where they are not given."""
    outline, _ = _outline(room, plan)
    return _joists(floor.framing, frames_of(room, plan), outline, rules, SupportKind.JOIST)


def floor_openings(
    room: Room, floor: BoardedFloor, plan: Mapping[str, Point], rules: RuleSet
) -> tuple[Opening, ...]:
    """What is placed on a room's floor; what stands there near a wall stands at it.

    Raises:
        InputValueError: A thing that does not lie on it.
    """
    outline, _ = _outline(room, plan)
    walls, touch = walls_of(room, plan), rules.ticks(TOUCH)

    def standing(opening: FloorOpening, ring: Ring) -> Ring:
        return stood(ring, walls, touch)[0] if opening.kind in STANDING else ring

    placed = _openings(room, "floor", floor.openings, frames_of(room, plan), outline, standing)
    frames, area = frames_of(room, plan), to_shapely(outline)
    fields = [f"floor.openings[{number}]" for number in range(1, len(placed) + 1)]
    for found, asked, field in zip(placed, floor.openings, fields, strict=True):
        if asked.diameter is None:
            ring = standing(asked, opening_ring_of(asked, frames[asked.side or ""]))
            refuse_cut(found, ring, area, rules, field)
    refuse_in_one_place(placed, rules, fields)
    return placed


def _openings(
    room: Room,
    part: str,
    openings: Sequence[FloorOpening],
    frames: Mapping[str, SideFrame],
    outline: Ring,
    standing: Callable[[FloorOpening, Ring], Ring],
) -> tuple[Opening, ...]:
    return tuple(
        _opening(room, opening, frames, outline, f"{part}.openings[{number}]", standing)
        for number, opening in enumerate(openings, start=1)
    )


def opening_ring_of(opening: FloorOpening, frame: SideFrame) -> Ring:
    """The outline of an opening that is not round, as taped from its side; it may cross itself."""
    if opening.points:
        return counter_clockwise(as_ring(frame.at(left, out) for left, out in opening.points))
    assert opening.left is not None and opening.out is not None
    assert opening.width is not None and opening.depth is not None
    return frame.box(opening.left, opening.out, opening.left + opening.width, opening.out + opening.depth)


def _opening(
    room: Room,
    opening: FloorOpening,
    frames: Mapping[str, SideFrame],
    outline: Ring,
    field: str,
    standing: Callable[[FloorOpening, Ring], Ring],
) -> Opening:
    frame = frames[opening.side or ""]
    area = to_shapely(outline)
    if opening.diameter is not None:
        assert opening.left is not None and opening.out is not None
        centre = frame.at(opening.left, opening.out)
        half = opening.diameter // 2
        shape = moved(((-half, -half), (half, -half), (half, half), (-half, half)), *centre)
        placed = Opening(id=opening.id, kind=opening.kind, centre=centre, diameter=opening.diameter)
    else:
        shape = opening_ring_of(opening, frame)
        if is_simple(shape):
            shape = standing(opening, shape)
        placed = Opening(id=opening.id, kind=opening.kind, outline=shape)
    if not is_simple(shape):
        raise InputValueError(
            f"the outline of opening '{opening.id}' crosses itself or has no area; check its points", field=field
        )
    if to_shapely(shape).intersection(area).area < 0.5 * to_shapely(shape).area:
        raise InputValueError(
            f"opening '{opening.id}' lies mostly outside {room.name}; check side, left and out", field=field
        )
    if placed.outline is not None and not area.covers(to_shapely(shape)):
        # A thing taped past a wall that is not square to its side ends at that wall.
        parts = from_shapely(to_shapely(shape).intersection(area))
        if len(parts) > 1:
            raise InputValueError(
                f"opening '{opening.id}' reaches through a wall of {room.name}, which parts it; "
                "check its size, side, left and out",
                field=field,
            )
        if parts:
            placed = placed.model_copy(update={"outline": parts[0][0]})
    return placed


def _joint(joint: PanelJoint, frames: Mapping[str, SideFrame], outline: Ring) -> Segment:
    frame, reach = frames[joint.parallel_to], _reach(outline)
    line = to_shapely(outline).intersection(
        _line(
            frame.at(-reach if joint.left is None else joint.left, joint.out),
            frame.at(2 * reach if joint.right is None else joint.right, joint.out),
        )
    )
    if line.length == 0:
        raise InputValueError(f"the panel joint {joint.parallel_to} lies outside the floor")
    left, lower, right, upper = (round(value) for value in line.bounds)
    if axis_of(frame.start, frame.end):
        return (left, lower), (right, upper)
    rising = (frame.end[1] - frame.start[1]) * (frame.end[0] - frame.start[0]) > 0
    return ((left, lower), (right, upper)) if rising else ((left, upper), (right, lower))


def _line(a: Point, b: Point) -> LineString:
    return LineString([a, b])


def _screws(
    floor: BoardedFloor, frames: Mapping[str, SideFrame], outline: Ring, rules: RuleSet
) -> tuple[Point, ...]:
    screws, framing = floor.panel_screws, floor.framing
    if screws is None or framing is None:
        return ()
    frame, reach = frames[framing.parallel_to], _reach(outline)
    usual = framing.width or rules.ticks("framing.joist_width")
    regular = _regular(framing.first, framing.spacing, reach)
    rows = [at for at, _width in placed_members(framing.members, regular, usual)]
    along = _regular(screws.first, screws.spacing, reach)
    if len(rows) * len(along) > _MOST_SCREWS:
        raise InputValueError(
            "the panel screws are spaced so close that they are past counting; check their spacing"
        )
    area = to_shapely(outline)
    points = [frame.at(left, row) for row in rows for left in along]
    return tuple(point for point in points if area.contains(ShapelyPoint(point)))

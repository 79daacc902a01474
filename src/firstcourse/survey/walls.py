"""A wall unfolded: outline with its own height at each end, openings, framing, zones."""

from collections.abc import Iterator

from firstcourse.errors import InputValueError
from firstcourse.geometry import (
    Point,
    Ring,
    as_ring,
    bounds,
    counter_clockwise,
    from_shapely,
    is_simple,
    rectangle,
    sides,
    to_shapely,
)
from firstcourse.job import MOST_ITEMS, BoardedWall, Room, WallOpening
from firstcourse.plan import (
    STOPS_HERE,
    Opening,
    OpeningKind,
    Side,
    SideKind,
    Support,
    SupportKind,
    Surface,
    SurfaceKind,
    Zone,
)
from firstcourse.rules import RuleSet
from firstcourse.survey.members import placed_members
from firstcourse.survey.near_walls import TOUCH, ends_of, stood
from firstcourse.units import Tape, to_mm

_FOOT = {"floor": "floor", "tub": "fixture/tub", "tray": "fixture/tray", "kerb": "fixture/kerb"}
"""What the boards of a wall stand above, in its room."""


def wall_surface(room: Room, wall: BoardedWall, length: int, tape: Tape, rules: RuleSet) -> Surface:
    """One wall as a surface to board.

    Args:
        room: The room it belongs to.
        wall: What the job says of it.
        length: Adjusted length [ticks].
        tape: Heights that differ by less than its graduation are drawn level.
        rules: For widths of members and the zone above a tray.

    Raises:
        InputValueError: What is boarded, or an opening, does not lie on the adjusted wall.
    """
    left, right = wall.wall.split("-")
    extent = _extent(room, left, right, length, tape)
    field = f"walls[{room.walls.index(wall) + 1}]"
    outline, around = _boarded(room.name, wall, extent, field)
    return Surface(
        id=f"{room.name}/wall/{wall.wall}",
        room=room.name,
        kind=SurfaceKind.WALL,
        outline=outline,
        sides=around,
        corners=(left, right),
        extent=extent,
        datum=_datum(room, left, right),
        openings=tuple(
            placed
            for place, opening in enumerate(wall.openings, start=1)
            if (
                placed := _opening(
                    wall,
                    _at_ends(opening, wall.wall, room, extent, rules)[0],
                    extent,
                    outline,
                    tape,
                    f"{field}.openings[{place}]",
                )
            )
            is not None
        ),
        supports=(*_studs(wall, extent, rules), *_blocking(wall, rules)),
        framing_axis="v",
        no_fastener_zones=_zones(wall, outline, rules),
        board_stock=wall.stock,
    )


def _datum(room: Room, left: str, right: str) -> int:
    """How far the lower end of a wall's foot lies over the lowest corner of its room [ticks]."""
    levels = {corner: room.levels.get(corner, 0) for corner in room.corners}
    return min(levels[left], levels[right]) - min(levels.values())


def _extent(room: Room, left: str, right: str, length: int, tape: Tape) -> Ring:
    heights = [room.heights.get(corner, room.height or 0) for corner in (left, right)]
    levels = [room.levels.get(corner, 0) for corner in (left, right)]
    low = min(levels)
    foot = [level - low for level in levels]
    top = [height + base for height, base in zip(heights, foot, strict=True)]
    if abs(foot[0] - foot[1]) < tape.graduation:
        foot = [max(foot)] * 2
    if abs(top[0] - top[1]) < tape.graduation:
        top = [min(top)] * 2
    return ((0, foot[0]), (length, foot[1]), (length, top[1]), (0, top[0]))


def _boarded(room: str, wall: BoardedWall, extent: Ring, field: str) -> tuple[Ring, tuple[Side, ...]]:
    asked = wall.boards
    left, lower, right, upper = bounds(extent)
    box = (
        left if asked.left is None else asked.left,
        lower if asked.bottom is None else asked.bottom,
        right if asked.right is None else min(asked.right, right),
        upper if asked.top is None else asked.top,
    )
    if box[2] <= box[0] or box[3] <= box[1]:
        raise InputValueError(f"wall {wall.wall}: nothing is left to board between the limits given", field=field)
    areas = from_shapely(to_shapely(extent).intersection(to_shapely(rectangle(*box))))
    if len(areas) != 1:
        raise InputValueError(f"wall {wall.wall}: nothing is left to board between the limits given", field=field)
    outline = areas[0][0]
    corners = [f"{room}/corner/{corner}" for corner in wall.wall.split("-")]
    found = []
    for a, b in sides(outline):
        across, up = b[0] - a[0], b[1] - a[1]
        if abs(across) >= abs(up):
            top = _end(asked.top, a[1], b[1], upper, f"{room}/ceiling")
            found.append(_foot(room, wall) if across > 0 else top)
        elif up > 0:
            found.append(_end(asked.right, a[0], b[0], right, corners[1]))
        else:
            found.append(_end(asked.left, a[0], b[0], left, corners[0]))
    return outline, tuple(found)


def _foot(room: str, wall: BoardedWall) -> Side:
    if wall.foot == "none":
        return Side(kind=SideKind.FREE if wall.boards.bottom else SideKind.PERIMETER, meets=STOPS_HERE)
    return Side(kind=SideKind.FOOT, meets=f"{room}/{_FOOT[wall.foot]}")


def _end(limit: int | None, one: int, other: int, full: int, meets: str) -> Side:
    if limit is not None and one == other == limit != full:
        return Side(kind=SideKind.FREE, meets=STOPS_HERE)
    return Side(kind=SideKind.PERIMETER, meets=meets)


def niches_at_ends(
    room: Room, wall: BoardedWall, length: int, tape: Tape, rules: RuleSet
) -> Iterator[tuple[str, dict[str, int]]]:
    """Niches that end near a wall beside their own, and by that wall how far they were moved to it [ticks].

    Args:
        room: The room the wall belongs to.
        wall: What the job says of it.
        length: Adjusted length [ticks].
        tape: Tape of the job.
        rules: The rules in force.
    """
    left, right = wall.wall.split("-")
    extent = _extent(room, left, right, length, tape)
    for opening in wall.openings:
        _, moved = _at_ends(opening, wall.wall, room, extent, rules)
        if moved:
            yield opening.id, moved


def _at_ends(
    opening: WallOpening, wall: str, room: Room, extent: Ring, rules: RuleSet
) -> tuple[WallOpening, dict[str, int]]:
    """A niche that ends at the walls it comes near, and by wall how far it was moved [ticks]."""
    if opening.kind is not OpeningKind.NICHE or opening.diameter is not None or opening.points:
        return opening, {}
    assert opening.left is not None and opening.width is not None
    ends = ends_of(wall, room.side_pairs(), extent)
    found, moved = stood(_ring(opening), ends, rules.ticks(TOUCH))
    left, _, right, _ = bounds(found)
    return opening.model_copy(update={"left": left, "width": right - left}), moved


def _opening(
    wall: BoardedWall, opening: WallOpening, extent: Ring, outline: Ring, tape: Tape, field: str
) -> Opening | None:
    """The opening on the boarded part; None where it lies on the part that is not boarded."""
    if opening.diameter is not None:
        assert opening.left is not None and opening.bottom is not None
        placed = Opening(
            id=opening.id,
            kind=opening.kind,
            centre=(opening.left, opening.bottom),
            diameter=opening.diameter,
        )
        half = opening.diameter // 2
        shape = rectangle(opening.left - half, opening.bottom - half, opening.left + half, opening.bottom + half)
    else:
        shape = _ring(opening)
        depth = None if opening.returns is None else opening.returns.depth
        placed = Opening(id=opening.id, kind=opening.kind, outline=shape, depth=depth)
    if not is_simple(shape):
        raise InputValueError(
            f"wall {wall.wall}: the outline of opening '{opening.id}' crosses itself or has no area; "
            "check its points",
            field=field,
        )
    # The adjustment may shorten a wall by a little; an opening taped to its very end is still on it. Where the
    # floor falls along the wall, a door that stands on it reaches below the foot of the extent at one end.
    left, _, right, upper = bounds(extent)
    wall_and_floor = to_shapely(extent).union(to_shapely(rectangle(left, 0, right, upper // 2)))
    if not wall_and_floor.buffer(4 * tape.graduation, join_style="mitre").covers(to_shapely(shape)):
        raise InputValueError(
            f"wall {wall.wall}: opening '{opening.id}' lies partly outside the wall as adjusted; "
            "check where it is measured from",
            field=field,
        )
    return placed if from_shapely(to_shapely(outline).intersection(to_shapely(shape))) else None


def _ring(opening: WallOpening) -> Ring:
    if opening.points:
        return counter_clockwise(as_ring(opening.points))
    assert opening.left is not None and opening.bottom is not None
    assert opening.width is not None and opening.height is not None
    return rectangle(opening.left, opening.bottom, opening.left + opening.width, opening.bottom + opening.height)


def _studs(wall: BoardedWall, extent: Ring, rules: RuleSet) -> tuple[Support, ...]:
    framing = wall.framing
    left, _, right, _ = bounds(extent)
    usual = framing.width or rules.ticks("framing.stud_width")
    centres = placed_members(framing.members, (), usual)
    if framing.spacing is not None and framing.first is not None:
        if framing.spacing <= usual:
            raise InputValueError(
                f"wall {wall.wall}: studs spaced closer than they are wide; check spacing and width"
            )
        places = range(framing.first, right, framing.spacing)
        if len(places) > MOST_ITEMS:
            raise InputValueError(f"wall {wall.wall}: more than {MOST_ITEMS} studs; check their spacing")
        centres = placed_members(framing.members, places, usual)
        if rules.flag("framing.end_studs"):
            # A stud as found at an end takes the end stud's place.
            if not centres or centres[0][0] > 2 * usual:
                centres.insert(0, (usual // 2, usual))
            if right - centres[-1][0] >= 2 * usual:
                centres.append((right - usual // 2, usual))
    members = []
    for number, (at, width) in enumerate(centres, start=1):
        one, other = max(left, at - width // 2), min(right, at - width // 2 + width)
        if other <= one:
            raise InputValueError(
                f"wall {wall.wall}: the stud centred {to_mm(at):.0f} mm from the left lies outside"
            )
        foot = max(_height(extent[0], extent[1], one), _height(extent[0], extent[1], other))
        top = min(_height(extent[3], extent[2], one), _height(extent[3], extent[2], other))
        members.append(
            Support(id=f"stud {number}", kind=SupportKind.STUD, outline=rectangle(one, foot, other, top))
        )
    if framing.plates:
        members += _plates(extent, rules.ticks("framing.plate_depth"))
    return tuple(members)


def _plates(extent: Ring, depth: int) -> list[Support]:
    foot_left, foot_right, top_right, top_left = extent
    if min(top_left[1] - foot_left[1], top_right[1] - foot_right[1]) <= 2 * depth:
        return []
    bottom = (foot_left, foot_right, _raised(foot_right, depth), _raised(foot_left, depth))
    top = (_raised(top_left, -depth), _raised(top_right, -depth), top_right, top_left)
    return [
        Support(id="bottom plate", kind=SupportKind.PLATE, outline=bottom),
        Support(id="top plate", kind=SupportKind.PLATE, outline=top),
    ]


def _raised(point: Point, by: int) -> Point:
    return point[0], point[1] + by


def _height(a: Point, b: Point, at: int) -> int:
    """Height of the line from `a` to `b` above the datum at a place along the wall [ticks]."""
    return a[1] + round((b[1] - a[1]) * (at - a[0]) / (b[0] - a[0]))


def _blocking(wall: BoardedWall, rules: RuleSet) -> tuple[Support, ...]:
    usual = rules.ticks("framing.stud_width")
    return tuple(
        Support(
            id=f"blocking {number}",
            kind=SupportKind.BLOCKING,
            outline=rectangle(
                piece.left,
                max(0, piece.at - (piece.width or usual) // 2),
                piece.right,
                piece.at + (piece.width or usual) // 2,
            ),
        )
        for number, piece in enumerate(wall.blocking, start=1)
    )


def _zones(wall: BoardedWall, outline: Ring, rules: RuleSet) -> tuple[Zone, ...]:
    zones = [
        Zone(outline=rectangle(zone.left, zone.bottom, zone.right, zone.top), why=zone.why, found=True)
        for zone in wall.no_fasteners
    ]
    if wall.foot in ("tray", "kerb"):
        left, lower, right, _ = bounds(outline)
        clear = rules.ticks("fastening.no_fastener_above_tray")
        zones.append(Zone(outline=rectangle(left, lower, right, lower + clear), why=f"above_{wall.foot}"))
    return tuple(zones)

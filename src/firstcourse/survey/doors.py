"""Doors of a room, told by the floor they open from or by the wall they are in, each placed once."""

from collections.abc import Iterator, Mapping

from firstcourse.errors import InputValueError
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import Point, bounds
from firstcourse.job import BoardedWall, Room, WallOpening
from firstcourse.plan import Door, OpeningKind
from firstcourse.survey.flats import frames_of
from firstcourse.values import length

Span = tuple[int, int]


def doors_of(room: Room, plan: Mapping[str, Point]) -> tuple[Door, ...]:
    """A room's doors in the order of the job, those of its floor first.

    A doorway of the floor that is an opening of its wall as well is one door: it has its name from the floor, its
    place and size from the wall. A doorway that the floor gives no place is left out.

    Args:
        room: What the job says.
        plan: The room's adjusted corners.

    Raises:
        InputValueError: A door has no place left on its adjusted wall.
    """
    openings = [(wall.wall, opening) for wall in room.walls for opening in wall.openings if _is_door(opening)]
    asked = [door for door in room.floor.doorways if door.width is not None] if room.floor is not None else []
    found: list[tuple[str, str, Span, int | None, int | None]] = []
    taken: set[int] = set()
    for door in asked:
        assert door.wall is not None and door.left is not None and door.width is not None
        span, bottom, height = (door.left, door.left + door.width), None, door.height
        for index, (wall, opening) in enumerate(openings):
            if index not in taken and wall == door.wall and _meet(_span(opening), span):
                taken.add(index)
                _, bottom, _, top = _box(opening)
                span, height = _span(opening), top - bottom
                break
        found.append((door.id, door.wall, span, bottom, height))
    for index, (wall, opening) in enumerate(openings):
        if index not in taken:
            _, bottom, _, top = _box(opening)
            found.append((opening.id, wall, _span(opening), bottom, top - bottom))
    return tuple(_placed(room, plan, *one) for one in found)


def boarded_over(room: Room) -> Iterator[Finding]:
    """Doorways told by the floor alone, where their wall is to be boarded across them."""
    walls = {wall.wall: wall for wall in room.walls}
    for door in room.floor.doorways if room.floor is not None else ():
        wall = walls.get(door.wall or "")
        if wall is None or door.left is None or door.width is None:
            continue
        span = (door.left, door.left + door.width)
        if any(_is_door(opening) and _meet(_span(opening), span) for opening in wall.openings):
            continue
        if _is_boarded(wall, span, door.height, room.sides[wall.wall]):
            yield Finding(
                code="SUR-109",
                severity=Severity.FIX,
                at=(f"{room.name}/wall/{wall.wall}", f"{room.name}/floor/door/{door.id}"),
                remedies=("enter_in_wall",),
                values={"left": length(span[0]), "right": length(span[1])},
            )


def _is_boarded(wall: BoardedWall, span: Span, height: int | None, length: int) -> bool:
    asked = wall.boards
    left, right = asked.left or 0, length if asked.right is None else asked.right
    over = height is not None and (asked.bottom or 0) >= height
    return _meet((left, right), span) and not over


def _placed(
    room: Room, plan: Mapping[str, Point], name: str, wall: str, span: Span, bottom: int | None, height: int | None
) -> Door:
    frame = frames_of(room, plan)[wall]
    # The adjustment may shorten a wall by a little: a door taped to its very end still ends there.
    left, right = span[0], min(span[1], round(frame.length))
    if right <= left:
        raise InputValueError(f"door '{name}' lies past the end of wall {wall} as adjusted; check left and width")
    line = frame.at(left, 0), frame.at(right, 0)
    return Door(
        id=name, room=room.name, wall=wall, line=line, left=left, width=right - left, bottom=bottom, height=height
    )


def _is_door(opening: WallOpening) -> bool:
    return opening.kind is OpeningKind.DOOR


def _box(opening: WallOpening) -> tuple[int, int, int, int]:
    if opening.points:
        return bounds(opening.points)
    if opening.diameter is not None:
        assert opening.left is not None and opening.bottom is not None
        half = opening.diameter // 2
        return opening.left - half, opening.bottom - half, opening.left + half, opening.bottom + half
    assert opening.left is not None and opening.bottom is not None
    assert opening.width is not None and opening.height is not None
    return opening.left, opening.bottom, opening.left + opening.width, opening.bottom + opening.height


def _span(opening: WallOpening) -> Span:
    left, _, right, _ = _box(opening)
    return left, right


def _meet(one: Span, other: Span) -> bool:
    return one[0] < other[1] and other[0] < one[1]

"""What no single field can tell: names used twice, corners that are not there, things outside their wall."""

import difflib
from collections import Counter
from collections.abc import Iterator, Mapping
from itertools import pairwise

from firstcourse.errors import InputValueError
from firstcourse.job.done_checks import check_done
from firstcourse.job.fields import BOOK_STOCK, LONGEST_SIDE_MM
from firstcourse.job.framing import FloorFraming, Member, WallFraming
from firstcourse.job.layer_checks import check_layers
from firstcourse.job.model import BoardedWall, Job, Room
from firstcourse.job.openings import WallOpening
from firstcourse.job.shower_checks import check_shower
from firstcourse.job.tile_checks import check_tiles
from firstcourse.plan import SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.units import Tape, format_length, mm

Wrong = tuple[tuple[str | int, ...], str]
NARROWEST_SHEET_MM = 100
STEEPEST = 2
"""A ceiling's rise along a wall over that wall's length: what rises more steeply is a slip of the pen."""
STEEPEST_FLOOR = 0.25
"""The same of a floor: twice as steep as the steepest ramp one drives up, from memory; a house assumption."""
HIGHEST_STEP_MM = 250
"""A floor may step up along a wall however short: by no more than one step of a stair, which is up to 220 mm high
from memory, with a little to spare; a house assumption."""
Uses = Mapping[str, tuple[SurfaceKind, ...]]
"""Sheets by their id: the surfaces each is for, all where none is named."""


def check_job(job: Job) -> tuple[Wrong, ...]:
    """Everything wrong across fields, each with the path of the field and what to do.

    Sizes here are the taped ones; the survey judges the adjusted ones again.
    """
    return tuple(_job(job))


def _job(job: Job) -> Iterator[Wrong]:
    stocks = [stock.id for stock in job.stock]
    yield from _twice(stocks, ("stock",), "stock")
    yield from _twice([offcut.id for offcut in job.offcuts], ("offcuts",), "offcut")
    yield from _twice([rule.rule for rule in job.rules], ("rules",), "rule")
    yield from _twice([room.name.lower() for room in job.rooms], ("rooms",), "room")
    for index, sheet in enumerate(job.stock):
        if min(sheet.size) < mm(NARROWEST_SHEET_MM):
            narrow = format_length(min(sheet.size), job.tape, feet=False)
            yield (
                ("stock", index, "size"),
                f"{narrow} is no sheet's width: less than {NARROWEST_SHEET_MM} mm is a strip; check the unit",
            )
    for index, offcut in enumerate(job.offcuts):
        if offcut.stock not in (stocks or BOOK_STOCK):
            yield ("offcuts", index, "stock"), f"'{offcut.stock}' is not one of the job's stocks"
            continue
        if not stocks:
            # How large the rule book's sheets are is known when it is planned.
            continue
        whole = job.stock[stocks.index(offcut.stock)].size
        if any(part > side for part, side in zip(sorted(offcut.size), sorted(whole), strict=True)):
            left, cut_from = (
                " x ".join(format_length(side, job.tape, feet=False) for side in size)
                for size in (offcut.size, whole)
            )
            yield (
                ("offcuts", index, "size"),
                f"{left} is more than the sheet it is left over from ({cut_from}); measure it again",
            )
    yield from _changes(job)
    for index, room in enumerate(job.rooms):
        for path, message in _room(room, {stock.id: stock.used_for for stock in job.stock}, job.tape):
            yield ("rooms", index, *path), message
        for path, message in check_layers(job, room):
            yield ("rooms", index, *path), message
    yield from check_tiles(job)
    yield from check_done(job)


def _changes(job: Job) -> Iterator[Wrong]:
    """Rules set for this job that the rule book does not have, or not with such a value."""
    if not job.rules:
        return
    book = load_rules(job.date, job.practice)
    for name in {name for name, number in Counter(change.rule for change in job.rules).items() if number > 1}:
        index = max(index for index, change in enumerate(job.rules) if change.rule == name)
        yield ("rules", index, "rule"), f"'{name}' is changed twice; keep one of the changes"
    for index, change in enumerate(job.rules):
        if not book.has(change.rule):
            near = difflib.get_close_matches(change.rule, book.ids(), n=1, cutoff=0.6)
            hint = f"did you mean '{near[0]}'?" if near else "`firstcourse rules` lists them"
            yield ("rules", index, "rule"), f"'{change.rule}' is not a rule of the rule book; {hint}"
            continue
        try:
            load_rules(job.date, job.practice, (change.override(),))
        except InputValueError as error:
            yield ("rules", index, "value"), str(error)


def _room(room: Room, stocks: Uses, tape: Tape) -> Iterator[Wrong]:
    yield from _twice(list(room.corners), ("corners",), "corner")
    sides = room.side_pairs()
    if set(room.sides) == {_swapped(pair) for pair in sides}:
        yield (
            ("corners",),
            f"{', '.join(room.corners)} runs the other way round than the sides do ({next(iter(room.sides))} and "
            "so on). Stand inside, turn to the right and name the corners in that order; if the sides were named "
            f"so, it is {_backwards(room.corners)}",
        )
        return
    for pair in room.sides:
        if pair not in sides:
            hint = f"; write {_swapped(pair)}" if _swapped(pair) in sides else ""
            yield (
                ("sides", pair),
                f"'{pair}' is not a side of this room{hint}: the sides are {', '.join(sides)}",
            )
    for pair in sides:
        if pair not in room.sides:
            yield ("sides",), f"side {pair} is not taped"
    drawn = set()
    for pair in room.diagonals:
        one, other = pair.split("-")
        if one not in room.corners or other not in room.corners or one == other:
            yield ("diagonals", pair), f"'{pair}' does not join two corners of this room"
        elif pair in sides or _swapped(pair) in sides:
            yield ("diagonals", pair), f"'{pair}' is a side; give it under sides"
        elif frozenset((one, other)) in drawn:
            yield ("diagonals", pair), f"'{pair}' is given twice, once from each end"
        drawn.add(frozenset((one, other)))
    for field in ("heights", "levels"):
        for corner in getattr(room, field):
            if corner not in room.corners:
                yield (field, corner), f"'{corner}' is not a corner of this room"
    for pair in sides:
        rise = abs(room.levels.get(pair.split("-")[0], 0) - room.levels.get(pair.split("-")[1], 0))
        if rise > max(STEEPEST_FLOOR * room.sides.get(pair, LONGEST_SIDE_MM * rise), mm(HIGHEST_STEP_MM)):
            yield (
                ("levels",),
                f"between the ends of {pair} the floor rises {format_length(rise, tape)}, over a length of "
                f"{format_length(room.sides[pair], tape)}: no floor is so steep; check the levels",
            )
    for pair in room.plumb:
        if pair not in sides:
            yield ("plumb", pair), f"'{pair}' is not a side of this room"
    if room.walls and room.height is None and set(room.heights) != set(room.corners):
        yield (), "walls need a height: give `height`, or `heights` at every corner"
    yield from _twice([wall.wall for wall in room.walls], ("walls",), "wall")
    for index, wall in enumerate(room.walls):
        for path, message in _wall(room, wall, sides, stocks, tape):
            yield ("walls", index, *path), message
    for kind, part in ((SurfaceKind.FLOOR, room.floor), (SurfaceKind.CEILING, room.ceiling)):
        if part is None:
            continue
        for path, message in _flat(part.framing, part.openings, part.stock, sides, stocks, kind):
            yield (kind.value, *path), message
    if room.floor is not None:
        for index, joint in enumerate(room.floor.panel_joints):
            if joint.parallel_to not in sides:
                yield ("floor", "panel_joints", index), f"'{joint.parallel_to}' is not a side of this room"
        for index, door in enumerate(room.floor.doorways):
            if door.wall is not None and door.wall not in sides:
                yield ("floor", "doorways", index, "wall"), f"'{door.wall}' is not a side of this room"
            elif door.wall is not None and _past_end(door.left, door.width, room.sides.get(door.wall)):
                yield ("floor", "doorways", index), "it reaches past the end of its wall; check left and width"
        if room.floor.panel_screws is not None and room.floor.framing is None:
            yield ("floor", "panel_screws"), "screws run in rows on the joists: give the framing"
        for path, message in check_shower(room):
            yield ("floor", "shower", *path), message
    if room.floor is None and not room.walls and room.ceiling is None:
        yield (), "nothing in this room is to be boarded: give a floor, walls or a ceiling"


def _past_end(left: int | None, width: int | None, side: int | None) -> bool:
    """Whether a door ends beyond its side; of a side that is not taped nothing is known."""
    return side is not None and (left or 0) + (width or 0) > side


def _backwards(corners: tuple[str, ...]) -> str:
    """The corners the other way round, as one would have begun."""
    return ", ".join((corners[-1], *reversed(corners[:-1])))


def _wall(room: Room, wall: BoardedWall, sides: tuple[str, ...], stocks: Uses, tape: Tape) -> Iterator[Wrong]:
    if wall.wall not in sides:
        hint = f"; seen from inside it is {_swapped(wall.wall)}" if _swapped(wall.wall) in sides else ""
        yield ("wall",), f"'{wall.wall}' is not a wall of this room{hint or '; its walls are ' + ', '.join(sides)}"
        return
    yield from _stocks(wall.stock, stocks, SurfaceKind.WALL)
    length = room.sides.get(wall.wall)
    if length is None:
        return
    left, right = wall.wall.split("-")
    # A missing height is said once, for the room; it is no reason to call everything on the wall too high.
    unknown = mm(LONGEST_SIDE_MM)
    heights = [room.heights.get(corner, room.height or unknown) for corner in (left, right)]
    height = max(heights)
    if unknown not in heights and height - min(heights) > STEEPEST * length:
        low, high = (format_length(one, tape) for one in sorted(heights))
        yield (
            ("wall",),
            f"its corners are {low} and {high} high, over a length of {format_length(length, tape)}: no ceiling "
            "rises so steeply; check the heights",
        )
    boards = wall.boards
    for field, value, most in (
        ("left", boards.left, length),
        ("right", boards.right, length),
        ("bottom", boards.bottom, height),
        ("top", boards.top, height),
    ):
        if value is not None and value > most:
            yield ("boards", field), f"lies beyond the wall ({left}-{right} as taped)"
    yield from _members(wall.framing, length)
    for index, reading in enumerate(wall.faces):
        if ("up" in reading.model_fields_set) != ("up" in wall.faces[0].model_fields_set):
            yield (
                ("faces", index),
                "some readings of this wall have `up` and some have not: give it with all, or with none where one "
                "string was read along the wall",
            )
            break
    yield from _twice([opening.id for opening in wall.openings], ("openings",), "opening")
    for index, opening in enumerate(wall.openings):
        if (message := _outside(opening, length, height, tape)) is not None:
            yield ("openings", index), message
    for index, piece in enumerate(wall.blocking):
        if piece.right > length or piece.at > height:
            yield ("blocking", index), "lies outside the wall"
    for index, zone in enumerate(wall.no_fasteners):
        if zone.right > length or zone.top > height:
            yield ("no_fasteners", index), "lies outside the wall"


def _outside(opening: WallOpening, length: int, height: int, tape: Tape) -> str | None:
    if opening.points:
        across = [point[0] for point in opening.points]
        up = [point[1] for point in opening.points]
        spans = (min(across), max(across), min(up), max(up))
    else:
        assert opening.left is not None and opening.bottom is not None
        if opening.diameter is not None:
            half = opening.diameter // 2
            spans = (opening.left - half, opening.left + half, opening.bottom - half, opening.bottom + half)
        else:
            assert opening.width is not None and opening.height is not None
            spans = (
                opening.left,
                opening.left + opening.width,
                opening.bottom,
                opening.bottom + opening.height,
            )
    found = []
    if spans[0] < 0:
        found.append(f"begins {format_length(-spans[0], tape)} before the left corner")
    if spans[1] > length:
        wall = format_length(length, tape)
        found.append(f"ends {format_length(spans[1], tape)} from the left corner on a wall {wall} long")
    if spans[2] < 0:
        found.append(f"begins {format_length(-spans[2], tape)} below the floor")
    if spans[3] > height:
        found.append(f"ends {format_length(spans[3], tape)} up on a wall {format_length(height, tape)} high")
    if found:
        return f"opening '{opening.id}' {' and '.join(found)}; check left, bottom and its size"
    return None


def _flat(
    framing: FloorFraming | None,
    openings: tuple[object, ...],
    stock: tuple[str, ...],
    sides: tuple[str, ...],
    stocks: Uses,
    kind: SurfaceKind,
) -> Iterator[Wrong]:
    yield from _stocks(stock, stocks, kind)
    if framing is not None:
        if framing.parallel_to not in sides:
            yield ("framing", "parallel_to"), f"'{framing.parallel_to}' is not a side of this room"
        yield from _overlapping(framing.members)
    yield from _twice([str(getattr(o, "id", "")) for o in openings], ("openings",), "opening")
    for index, opening in enumerate(openings):
        side = getattr(opening, "side", None)
        if side is not None and side not in sides:
            yield ("openings", index, "side"), f"'{side}' is not a side of this room"


def _overlapping(members: tuple[Member, ...]) -> Iterator[Wrong]:
    order = sorted(range(len(members)), key=lambda index: members[index].at)
    for one, other in pairwise(order):
        apart = members[other].at - members[one].at
        if 2 * apart < (members[one].width or 0) + (members[other].width or 0) or apart == 0:
            yield (
                ("framing", "members", max(one, other), "at"),
                f"members {min(one, other) + 1} and {max(one, other) + 1} lie over each other; "
                "check where they stand",
            )


def _members(framing: WallFraming, length: int) -> Iterator[Wrong]:
    for index, member in enumerate(framing.members):
        if member.at > length:
            yield ("framing", "members", index, "at"), "this stud lies outside the wall"
    yield from _overlapping(framing.members)
    if framing.first is not None and framing.first > length:
        yield ("framing", "first"), "the first stud lies outside the wall"


def _stocks(named: tuple[str, ...], stocks: Uses, kind: SurfaceKind) -> Iterator[Wrong]:
    for index, name in enumerate(named):
        if name not in stocks:
            yield ("stock", index), f"'{name}' is not one of the job's stocks"
        elif stocks[name] and kind not in stocks[name]:
            uses = " and ".join(f"a {use.value}" for use in stocks[name])
            yield (
                ("stock", index),
                f"'{name}' is for {uses} by its own `for`, not for a {kind.value}; name another, or change that",
            )


def _twice(names: list[str], path: tuple[str | int, ...], what: str) -> Iterator[Wrong]:
    for index, name in enumerate(names):
        if name in names[:index]:
            yield (*path, index), f"{what} '{name}' stands twice; each needs a name of its own"


def _swapped(pair: str) -> str:
    one, other = pair.split("-")
    return f"{other}-{one}"

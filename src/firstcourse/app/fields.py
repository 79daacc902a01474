"""Where a surface, and what is open or stands in it, is in the job document, and changes of these."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from firstcourse.app.session import Session
from firstcourse.job import (
    BoardedCeiling,
    BoardedFloor,
    BoardedWall,
    FieldValue,
    Job,
    edited_text,
    exact_length,
    without_item,
)
from firstcourse.plan import Surface
from firstcourse.units import LengthError, Tape, parse_length

Part = Literal["floor", "wall", "ceiling"]
WALL_KINDS = ("niche", "window", "pipe", "valve", "box", "door", "other")
FLOOR_KINDS = ("flange", "drain", "pipe", "tub", "tray", "cabinet", "column", "other")
_WALL_FIELDS = ("left", "bottom", "width", "height", "diameter")
_FLOOR_FIELDS = ("left", "out", "width", "depth", "diameter")


@dataclass(frozen=True, slots=True, kw_only=True)
class SurfaceField:
    """A surface in the document.

    Attributes:
        surface: Its id in plans, such as `hall bath/wall/A-B`.
        field: Its path, such as `rooms[1].walls[2]`.
        room: Number of its room, from 1.
    """

    surface: str
    field: str
    room: int
    part: Part
    said: BoardedFloor | BoardedWall | BoardedCeiling

    @property
    def names(self) -> tuple[str, ...]:
        """Fields that say where a thing is and how large."""
        return _WALL_FIELDS if self.part == "wall" else _FLOOR_FIELDS

    @property
    def kinds(self) -> tuple[str, ...]:
        """What there may be."""
        return WALL_KINDS if self.part == "wall" else FLOOR_KINDS


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """An opening or a fixture as the document says it.

    Attributes:
        number: Its place in the list, from 1.
        side: Of a floor: the side it is measured from; empty on a wall.
        values: Each of its fields on the tape; those not given are missing.
        points: Given by points all round, so not moved here.
    """

    number: int
    id: str
    kind: str
    side: str
    values: Mapping[str, str]
    points: bool


def surface_fields(job: Job) -> dict[str, SurfaceField]:
    """By its id, where each surface of a job is in its document."""
    found: dict[str, SurfaceField] = {}
    for number, room in enumerate(job.rooms, start=1):
        parts: list[tuple[str, str, Part, BoardedFloor | BoardedWall | BoardedCeiling | None]] = [
            ("floor", "floor", "floor", room.floor),
            *((f"wall/{wall.wall}", f"walls[{i}]", "wall", wall) for i, wall in enumerate(room.walls, start=1)),
            ("ceiling", "ceiling", "ceiling", room.ceiling),
        ]
        for name, field, part, said in parts:
            if said is not None:
                surface = f"{room.name}/{name}"
                found[surface] = SurfaceField(
                    surface=surface, field=f"rooms[{number}].{field}", room=number, part=part, said=said
                )
    return found


def things(where: SurfaceField, job: Job) -> tuple[Thing, ...]:
    """What is open or stands in a surface, in the document's order."""
    sides = job.rooms[where.room - 1].side_pairs()
    return tuple(
        Thing(
            number=number,
            id=one.id,
            kind=one.kind.value,
            side="" if where.part == "wall" else getattr(one, "side", None) or sides[0],
            values={
                name: exact_length(value, job.tape)
                for name in where.names
                if (value := getattr(one, name)) is not None
            },
            points=bool(getattr(one, "points", ())),
        )
        for number, one in enumerate(where.said.openings, start=1)
    )


def typed(text: str, tape: Tape) -> str:
    """What was typed into a field for a length, with its unit where none was typed; empty stays empty."""
    plain = " ".join(text.replace(",", ".").split())
    if not plain:
        return ""
    try:
        parse_length(plain)
    except LengthError:
        return f"{plain} {'in' if tape is Tape.INCH else 'mm'}"
    return plain


def with_thing(session: Session, where: SurfaceField, number: int, values: Mapping[str, str]) -> Session:
    """The document with a thing put elsewhere, or with one more.

    Raises:
        JobError: The document would say something a job cannot say, or the thing does not lie on its surface.
    """
    return checked(text_with_thing(session, where, number, values), session)


def text_with_thing(session: Session, where: SurfaceField, number: int, values: Mapping[str, str]) -> str:
    """The text of a document with a thing put elsewhere, or with one more; what it says then is not read.

    Args:
        session: The document; it stays as it is.
        where: The surface.
        number: Which thing, from 1; one more than there are for a new one.
        values: Field to value as typed; empty ones stay as they are.

    Raises:
        JobError: The document has no place for it.
    """
    text, base = session.text, f"{where.field}.openings"
    given: dict[str, FieldValue] = {name: value for name, value in values.items() if value}
    if number > len(where.said.openings):
        # A document may leave the list out where it is empty.
        listed = "openings" in where.said.model_fields_set
        text = (
            edited_text(text, f"{base}[{number}]", given, name=session.name)
            if listed
            else edited_text(text, base, [given], name=session.name)
        )
    else:
        now = {one.number: one for one in things(where, session.job)}[number].values
        for name, value in given.items():
            if name not in now or _ticks(now[name]) != _ticks(str(value)):
                text = edited_text(text, f"{base}[{number}].{name}", value, name=session.name)
    return text


def moved(
    thing: Thing, where: SurfaceField, surface: Surface, by: tuple[int, int], tape: Tape
) -> dict[str, str] | None:
    """Where a thing is when it is moved across its surface as drawn, to whole marks of the tape.

    Args:
        thing: What is moved.
        where: Its surface in the document.
        surface: The same as surveyed.
        by: How far to the right and up on the drawing [ticks].
        tape: The tape of the job.

    Returns:
        Field to value; None where it is not moved by hand: its side is not on the drawing.
    """
    ways = directions(thing, where, surface)
    if ways is None:
        return None
    step = tape.graduation
    told = {}
    for name, (x, y) in zip(("left", "bottom" if where.part == "wall" else "out"), ways, strict=True):
        now = _ticks(thing.values.get(name, ""))
        if now is None:
            return None
        there = now + by[0] * x + by[1] * y
        told[name] = exact_length(max(0, round(there / step) * step), tape)
    return told


def directions(
    thing: Thing, where: SurfaceField, surface: Surface
) -> tuple[tuple[float, float], tuple[float, float]] | None:
    """Which way on the drawing its two distances grow; None where its side is not on the drawing."""
    if thing.points:
        return None
    if where.part == "wall":
        return (1.0, 0.0), (0.0, 1.0)
    if where.part != "floor" or len(surface.corners) != len(surface.outline):
        return None
    # The outline runs against the order of the corners.
    at = dict(zip(reversed(surface.corners), surface.outline, strict=True))
    left, _, right = thing.side.partition("-")
    if left not in at or right not in at:
        return None
    length = math.dist(at[left], at[right])
    x, y = ((b - a) / length for a, b in zip(at[left], at[right], strict=True))
    return (x, y), (y, -x)


def without_thing(session: Session, where: SurfaceField, number: int) -> Session:
    """The document without a thing.

    Raises:
        JobError: Something else in the document rests on it.
    """
    text = without_item(session.text, f"{where.field}.openings", number - 1)
    return checked(text, session)


def with_start(session: Session, where: SurfaceField, start: tuple[int, int] | None) -> Session:
    """The document with the start of a surface's pattern locked, or found again.

    Args:
        session: The document; it stays as it is.
        where: The surface.
        start: Left and up [ticks]; None to find it again.

    Raises:
        JobError: The surface is not tiled, or its pattern cannot start there.
    """
    tape = session.job.tape
    value: FieldValue = None
    if start is not None:
        value = {"left": exact_length(start[0], tape), "up": exact_length(start[1], tape)}
    text = edited_text(session.text, f"{where.field}.tiling.start", value, name=session.name)
    return checked(text, session)


def checked(text: str, session: Session) -> Session:
    """A changed document, its readings surveyed so that what lies outside its surface is refused at once.

    Raises:
        JobError: It says something a job cannot say.
    """
    changed = Session(text, name=session.name)
    changed.survey()
    return changed


def _ticks(text: str) -> int | None:
    try:
        return parse_length(text)
    except LengthError:
        return None

"""Round the room with the tape: what was walked and taped so far, and what to tape next.

A walk is kept as data until the room is sure enough; then it is written into the job document.
"""

import math
from collections.abc import Mapping, Sequence
from typing import Annotated, Literal, Self

from pydantic import BaseModel, ConfigDict, Field, ValidationError, model_validator

from firstcourse.app.session import Session
from firstcourse.errors import InputValueError
from firstcourse.job import FieldValue, edited_text
from firstcourse.job.fields import CORNER_PATTERN, MOST_CORNERS, NAME_PATTERN, PAIR_PATTERN
from firstcourse.rules import RuleSet
from firstcourse.survey import NextReading, Reading, Taping, taping, walked_outline
from firstcourse.units import LengthError, Tape, format_length, parse_length, to_mm

__all__ = ["FieldValue", "NextReading", "Taped", "Taping", "Turn", "Walk", "begun", "path_mm", "written"]

Turn = Literal[90, -90, 45, -45]
"""Degrees to the right."""
_LONGEST_TICKS = 64_000_000
"""100 m: no room is longer, and no tape."""
_CORNERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"


class _Kept(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", strict=True)


class Taped(_Kept):
    """One distance as it was read.

    Attributes:
        pair: Two corners, such as `A-C`.
        length: [ticks].
        twice: Whether it was read again with the same answer.
    """

    pair: Annotated[str, Field(pattern=PAIR_PATTERN)]
    length: Annotated[int, Field(gt=0, le=_LONGEST_TICKS)]
    twice: bool = False


class Walk(_Kept):
    """A room that is being taped.

    Attributes:
        room: Its name.
        tape: The tape in the hand.
        corners: Names, clockwise.
        turns: Degrees to the right at the end of each side, in the order walked; to the left below 0.
        about: About how long each side is [ticks].
        readings: In the order they were taped.
        skipped: Distances that cannot be taped, or not now.
    """

    room: Annotated[str, Field(pattern=NAME_PATTERN)]
    tape: Tape
    corners: Annotated[tuple[Annotated[str, Field(pattern=CORNER_PATTERN)], ...], Field(max_length=MOST_CORNERS)]
    turns: tuple[Turn, ...]
    about: tuple[Annotated[int, Field(gt=0, le=_LONGEST_TICKS)], ...]
    readings: Annotated[tuple[Taped, ...], Field(max_length=MOST_CORNERS * MOST_CORNERS)] = ()
    skipped: tuple[Annotated[str, Field(pattern=PAIR_PATTERN)], ...] = ()

    @model_validator(mode="after")
    def _is_whole(self) -> Self:
        if len({*self.corners}) != len(self.corners):
            raise ValueError("two corners have one name")
        if not len(self.corners) == len(self.turns) == len(self.about):
            raise ValueError("each corner has one side and one turn")
        for pair in [*(taped.pair for taped in self.readings), *self.skipped]:
            one, other = pair.split("-")
            if one == other or not {one, other} <= {*self.corners}:
                raise ValueError(f"{pair} is not between two corners of this room")
        return self

    def outline_mm(self) -> list[tuple[float, float]]:
        """Where the corners are thought to be from the walk and the sides that were taped [mm].

        Raises:
            InputValueError: The walk does not come back to where it began.
        """
        lengths = {frozenset(taped.pair.split("-")): taped.length for taped in self.readings}
        sides = [frozenset(side) for side in zip(self.corners, self._next_corners(), strict=True)]
        taped = {index for index, side in enumerate(sides) if side in lengths}
        known = [to_mm(lengths.get(side, about)) for side, about in zip(sides, self.about, strict=True)]
        return walked_outline(self.turns, known, taped)

    def taped(self, pair: str, text: str) -> Self:
        """The walk with one more reading, or with one read again.

        Args:
            pair: Two corners, such as `A-C`.
            text: As read, such as `5' 3-1/2"`.

        Raises:
            InputValueError: No length that a room can have, or not between two corners.
        """
        length = _length(text, pair)
        if not 0 < length <= _LONGEST_TICKS:
            raise InputValueError(f"'{text}' is no distance in a room", field=pair)
        same = frozenset(pair.split("-"))
        earlier = [one for one in self.readings if frozenset(one.pair.split("-")) == same]
        twice = any(abs(one.length - length) <= self.tape.graduation for one in earlier)
        kept = [one for one in self.readings if frozenset(one.pair.split("-")) != same]
        return self._with(readings=(*kept, Taped(pair=pair, length=length, twice=twice)))

    def without(self, pair: str) -> Self:
        """The walk without a reading that was a slip, and no longer skipping it."""
        same = frozenset(pair.split("-"))
        return self._with(
            readings=tuple(one for one in self.readings if frozenset(one.pair.split("-")) != same),
            skipped=tuple(one for one in self.skipped if frozenset(one.split("-")) != same),
        )

    def skipping(self, pair: str) -> Self:
        """The walk without asking for a distance again.

        Raises:
            InputValueError: Not between two corners.
        """
        return self._with(skipped=(*(one for one in self.skipped if one != pair), pair))

    def stands(self, rules: RuleSet) -> Taping:
        """How the room stands, and what to tape next.

        Raises:
            InputValueError: The walk does not come back to where it began.
        """
        sigma = to_mm(rules.ticks("tape.precision.inch" if self.tape is Tape.INCH else "tape.precision.mm"))
        readings = []
        for one in self.readings:
            a, b = one.pair.split("-")
            readings.append(Reading(one=a, other=b, length_mm=to_mm(one.length), sigma_mm=sigma))
        return taping(
            self.corners,
            self.outline_mm(),
            readings,
            sigma_mm=sigma,
            sure_mm=to_mm(rules.ticks("survey.corner.sure")),
            limit=rules.number("survey.blunder.limit"),
            skipped=self.skipped,
            confirmed=[one.pair for one in self.readings if one.twice],
        )

    def room_values(self) -> dict[str, FieldValue]:
        """What a job document says of this room: its name, corners, sides and diagonals."""
        lengths = {frozenset(one.pair.split("-")): format_length(one.length, self.tape) for one in self.readings}
        pairs = list(zip(self.corners, self._next_corners(), strict=True))
        sides = {f"{a}-{b}": lengths.pop(frozenset((a, b))) for a, b in pairs if frozenset((a, b)) in lengths}
        others = {
            f"{a}-{b}": lengths[frozenset((a, b))]
            for index, a in enumerate(self.corners)
            for b in self.corners[index + 1 :]
            if frozenset((a, b)) in lengths
        }
        return {"name": self.room, "corners": [*self.corners], "sides": sides, "diagonals": others}

    def _next_corners(self) -> Sequence[str]:
        return [*self.corners[1:], self.corners[0]]

    def _with(self, **changed: object) -> Self:
        try:
            return self.model_validate({**dict(self), **changed})
        except ValidationError as error:
            raise InputValueError("that is not between two corners of this room", field="pair") from error


def _length(text: str, field: str) -> int:
    try:
        return parse_length(text)
    except LengthError as error:
        raise InputValueError(str(error), field=field) from None


def begun(room: str, tape: Tape, legs: Sequence[tuple[Turn, str]]) -> Walk:
    """A walk round a room, before anything is taped.

    Args:
        room: Its name.
        tape: The tape in the hand.
        legs: In the order walked: degrees to the right at the end of a side, and about how long it is: `8'`.

    Raises:
        InputValueError: The walk does not come back to where it began, or says something no room has.
    """
    if not 3 <= len(legs) <= MOST_CORNERS:
        raise InputValueError(f"a room has 3 to {MOST_CORNERS} sides, not {len(legs)}", field="legs")
    names = [
        _CORNERS[i % len(_CORNERS)] + (str(i // len(_CORNERS)) if i >= len(_CORNERS) else "")
        for i in range(len(legs))
    ]
    try:
        walk = Walk(
            room=room,
            tape=tape,
            corners=tuple(names),
            turns=tuple(turn for turn, _ in legs),
            about=tuple(_length(about, "legs") for _, about in legs),
        )
    except ValidationError as error:
        raise InputValueError("a walk has a name, and for each side a turn and a length", field="legs") from error
    walk.outline_mm()
    return walk


def path_mm(legs: Sequence[tuple[Turn, str]]) -> list[tuple[float, float]]:
    """Where a walk went so far, not closed: its corners, and where it ends [mm].

    Args:
        legs: As for `begun`.

    Raises:
        InputValueError: A side has no length that a room can have.
    """
    at, heading = [(0.0, 0.0)], 0
    for turn, about in legs:
        length = to_mm(_length(about, "legs"))
        if not 0 < length <= to_mm(_LONGEST_TICKS):
            raise InputValueError(f"'{about}' is no distance in a room", field="legs")
        u, v = at[-1]
        at.append((u + length * math.cos(math.radians(heading)), v - length * math.sin(math.radians(heading))))
        heading += turn
    return at


def written(
    session: Session,
    walk: Walk,
    *,
    index: int,
    besides: Mapping[str, FieldValue] | None = None,
    in_place: bool = False,
) -> Session:
    """The job document with a room as it was taped.

    Args:
        session: The document; it stays as it is.
        walk: What was taped.
        index: Which room of the document, from 1; one more than it has for a new one.
        besides: What else is said of the room, such as its height and what is to be boarded: a room that is new
            needs that to be a job.
        in_place: Whether all that the document says of that room goes; else only its readings do.

    Raises:
        JobError: The document would say something a job cannot say, such as a wall between corners that are gone.
    """
    text, values = session.text, {**walk.room_values(), **(besides or {})}
    if in_place or index > len(session.job.rooms):
        return Session(edited_text(text, f"rooms[{index}]", values, name=session.name), name=session.name)
    for key, value in values.items():
        text = edited_text(text, f"rooms[{index}].{key}", value, name=session.name)
    return Session(text, name=session.name)

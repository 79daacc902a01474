"""Reads back what was ticked and measured on a phone; docs/papers.md says what stands in such a file.

The file comes from outside: nothing in it is taken for granted, and it fits one plan alone.
"""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any, Literal

from pydantic import AwareDatetime, BaseModel, ConfigDict, Field, ValidationError

from firstcourse.errors import InputValueError
from firstcourse.files import utf8_text
from firstcourse.papers.by_room import room_parts, whole_part
from firstcourse.papers.phone_items import ids_of
from firstcourse.papers.phone_pack import FORMAT, LONGEST_ENTRY, plan_digest
from firstcourse.plan import Plan
from firstcourse.units import LengthError, parse_length

MOST_BYTES = 2_000_000
"""The largest file of ticks that is read; one that ticks ten thousand tiles takes half of it [bytes]."""
_COURSE = "course/"
_TOLD = 5
"""So many faults of one kind are told by name."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """What was written into one blank.

    Attributes:
        text: As it was written.
        ticks: Where a length was asked: that length [ticks of 1/640 mm]; else None.
        at: When.
    """

    text: str
    ticks: int | None
    at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class Ticked:
    """What a phone sent back.

    Attributes:
        plan: SHA-256 of the plan.json it belongs to.
        saved: When the file was saved.
        ticks: When each thing was ticked, by its id.
        measured: What was measured or found, by the id of its blank.
    """

    plan: str
    saved: datetime
    ticks: Mapping[str, datetime]
    measured: Mapping[str, Measured]

    @property
    def boards(self) -> tuple[str, ...]:
        """Ids of boards that are up."""
        return self._named("board/")

    @property
    def first_courses(self) -> dict[str, int]:
        """By the id of a wall, how high over the floor its first course stands [ticks]."""
        found = {
            name.removeprefix(_COURSE): one.ticks
            for name, one in self.measured.items()
            if name.startswith(_COURSE)
        }
        return {name: ticks for name, ticks in found.items() if ticks is not None}

    def cut(self, plan: Plan) -> tuple[str, ...]:
        """Ids of boards that are cut and not up: every cut of their sheet is ticked.

        Args:
            plan: That the ticks belong to.
        """
        cut_up = {
            part.piece
            for sheet in plan.sheets
            if sheet.cuts and all(f"cut/{sheet.id}/{n}" in self.ticks for n in range(1, len(sheet.cuts) + 1))
            for part in sheet.parts
        }
        up = set(self.boards)
        boards = (board for surface in plan.surfaces for board in surface.boards)
        return tuple(
            board.id for board in boards if board.piece in cut_up and board.id not in up and not board.fixed
        )

    def _named(self, kind: str) -> tuple[str, ...]:
        return tuple(name.removeprefix(kind) for name in self.ticks if name.startswith(kind))


class _Strict(BaseModel):
    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)


class _Written(_Strict):
    value: str = Field(min_length=1, max_length=LONGEST_ENTRY)
    at: AwareDatetime


class _File(_Strict):
    format: Literal["firstcourse-ticked"]
    version: Literal[1]
    plan: str = Field(pattern=r"^[0-9a-f]{64}$")
    job: str = Field(max_length=1000)
    saved: AwareDatetime
    ticks: dict[str, AwareDatetime]
    measured: dict[str, _Written]


def read_ticked(data: bytes, plan: Plan) -> Ticked:
    """What was ticked, held against the plan it must belong to.

    Args:
        data: The file.
        plan: The whole plan, not one room's part.

    Raises:
        InputValueError: It is too large, no such file, of another plan, ticks what the plan does not have, or a
            length in it is none; the message says what stands there and what to do.
    """
    if len(data) > MOST_BYTES:
        raise InputValueError(f"{len(data):,} bytes are too many for a file of ticks ({MOST_BYTES:,} at most)")
    file = _parsed(utf8_text(data))
    digest = plan_digest(plan)
    if file.plan != digest:
        raise InputValueError(
            f"plan: '{file.plan[:12]}…' is another plan than this one ('{digest[:12]}…'); "
            "read it with the plan.json that was written together with the pack on that phone"
        )
    known, blanks = _ids(plan)
    if unknown := [*(file.ticks.keys() - known), *(file.measured.keys() - blanks.keys())]:
        raise InputValueError(f"{_some(unknown)}: the plan has nothing of that name to tick or to fill in")
    wrong: list[str] = []
    measured = {}
    for name, written in sorted(file.measured.items()):
        try:
            ticks = parse_length(written.value) if blanks[name] == "length" else None
        except LengthError as error:
            wrong.append(f"measured.{name}: {error}")
            continue
        measured[name] = Measured(text=written.value, ticks=ticks, at=written.at)
    if wrong:
        raise InputValueError("\n".join(wrong[:_TOLD]))
    return Ticked(plan=digest, saved=file.saved, ticks=dict(sorted(file.ticks.items())), measured=measured)


def _parsed(text: str) -> _File:
    try:
        json.loads(text, object_pairs_hook=_once)
    except (ValueError, RecursionError) as error:
        raise InputValueError(f"is no file of ticks: {error}; save it anew from the phone") from None
    try:
        return _File.model_validate_json(text)
    except ValidationError as error:
        faults = error.errors(include_url=False)
        told = "\n".join(_fault(dict(fault)) for fault in faults[:_TOLD])
        raise InputValueError(
            f"{told}\nis no file of ticks ({FORMAT}, version 1); save it anew from the phone"
        ) from None


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) != len(pairs):
        names = [name for name, _ in pairs]
        raise ValueError(f"'{next(name for name in names if names.count(name) > 1)[:80]}' stands twice")
    return found


def _fault(fault: Mapping[str, Any]) -> str:
    where = ".".join(str(step) for step in fault["loc"]) or "the file"
    return f"{where[:200]}: {str(fault['input'])[:80]!r}: {fault['msg']}"


def _ids(plan: Plan) -> tuple[frozenset[str], dict[str, str]]:
    """All ids of the packs of a plan: of its rooms and of the whole."""
    known: frozenset[str] = frozenset()
    blanks: dict[str, str] = {}
    for _, part, _ in plan_parts(plan):
        ticked, entries = ids_of(part)
        known, blanks = known | ticked, blanks | entries
    return known, blanks


def plan_parts(plan: Plan) -> Iterator[tuple[str, Plan, bool]]:
    """The parts that packs are made of: each one's room, its plan, and whether it is what several rooms share."""
    rooms = room_parts(plan)
    yield ("", whole_part(plan), True) if rooms else ("", plan, False)
    yield from ((part.room, part.plan, False) for part in rooms)


def _some(names: list[str]) -> str:
    told = ", ".join(f"'{name[:80]}'" for name in sorted(names)[:_TOLD])
    return told if len(names) <= _TOLD else f"{told} and {len(names) - _TOLD} more"

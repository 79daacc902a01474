"""What was recorded on site, as somebody entered it: photos, batches, checks, tests, spares and colors."""

from collections.abc import Collection, Iterator
from datetime import date, datetime
from decimal import Decimal
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, StringConstraints, model_validator

from firstcourse.placed import KeyPath, read_placed
from firstcourse.plan import Frozen

LARGEST_RECORD = 1_000_000
MOST_PHOTOS = 200
Text = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=200)]
Stage = Literal["framing", "members", "fasteners", "tape", "membrane", "flood_test", "drain_test", "tile", "end"]


def _level(value: Any) -> Decimal:
    text = value.strip().removesuffix("mm").rstrip() if isinstance(value, str) else ""
    if not text.replace(".", "", 1).isdecimal() or len(text) > 12:
        raise ValueError("must be a level in millimetres, such as 52 mm, from a mark that stays")
    return Decimal(text)


Level = Annotated[Decimal, BeforeValidator(_level)]


class Photo(Frozen):
    """A photo of a place at a stage; `file` lies beside the record."""

    file: Text
    at: Text
    stage: Stage
    on: date


class Batch(Frozen):
    """The lot of something that was used, as its pack says."""

    item: Text
    lot: Text


class Check(Frozen):
    """Something that was looked over, and whether it was as it should be."""

    what: Literal["framing", "members", "fasteners", "tape", "membrane", "drain_test"]
    at: Text
    on: date
    who: Text
    holds: bool


class Flood(Frozen):
    """A flood test: when water stood, and its level over a mark at start and end [mm]."""

    at: Text
    starts: datetime
    ends: datetime
    start_level: Level
    end_level: Level
    who: Text

    @model_validator(mode="after")
    def _in_order(self) -> "Flood":
        if self.starts.tzinfo is not None or self.ends.tzinfo is not None:
            raise ValueError("gives a time zone; give local times such as 2026-12-03T16:00")
        if self.ends <= self.starts:
            raise ValueError(f"ends at {self.ends}, not after it starts at {self.starts}")
        return self


class Spare(Frozen):
    """What stays with the owner: how much of it, and where it lies."""

    item: Text
    amount: Text
    where: Text


class Color(Frozen):
    """The color of grout or sealant, as its pack says."""

    of: Literal["grout", "sealant"]
    color: Text
    at: Text | None = None


class Record(Frozen):
    """All that was recorded of a job.

    Attributes:
        invented: Names and dates in it are made up, which every page then says.
        on: The day of handing over.
    """

    invented: bool = False
    business: Text
    on: date
    photos: Annotated[tuple[Photo, ...], Field(max_length=MOST_PHOTOS)] = ()
    batches: tuple[Batch, ...] = ()
    checks: tuple[Check, ...] = ()
    tests: tuple[Flood, ...] = ()
    spares: tuple[Spare, ...] = ()
    colors: tuple[Color, ...] = ()


def read_record(data: bytes, name: str, known: Collection[str]) -> Record:
    """Read what was recorded.

    Args:
        data: YAML or JSON.
        name: What to call it in messages.
        known: Rooms and ids of surfaces that the plan has.

    Raises:
        JobError: It says what it cannot say, or names a place that the plan does not have; with line and column.
    """

    def misplaced(record: Record) -> Iterator[tuple[KeyPath, str]]:
        listed = {"photos": record.photos, "checks": record.checks, "tests": record.tests, "colors": record.colors}
        for field, rows in listed.items():
            for number, row in enumerate(rows):
                at = getattr(row, "at", None)
                if at is not None and at not in known:
                    yield (field, number, "at"), f"the plan has no place '{at[:80]}'; it has {', '.join(known)}"

    return read_placed(data, name, Record, "a record of proof", misplaced)

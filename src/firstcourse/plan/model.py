"""The whole plan. In Python every length is whole ticks; in plan.json it is millimetres."""

from typing import Literal

from pydantic import Field

from firstcourse.findings import Finding
from firstcourse.plan.base import Frozen
from firstcourse.plan.boards import Piece, Sheet, Stock
from firstcourse.plan.bounds import LayoutBound
from firstcourse.plan.buying import Quantity
from firstcourse.plan.doors import Door
from firstcourse.plan.given import Given
from firstcourse.plan.schedule import Schedule
from firstcourse.plan.stamp import JobStamp, RuleNote
from firstcourse.plan.structure import StructureSheet
from firstcourse.plan.surfaces import Surface
from firstcourse.plan.tiles import TileStock
from firstcourse.workings import Working


class Count(Frozen):
    """Sheets used of one stock beside a proven lower bound."""

    used: int
    lower_bound: int
    proven: bool


class Plan(Frozen):
    """The whole plan, as written to plan.json.

    Attributes:
        schedule: Its calendar, where the job says when and by whom it is done; else it is left out of plan.json.
    """

    format: Literal["firstcourse-plan"] = "firstcourse-plan"
    version: Literal[2] = 2
    job: JobStamp
    given: Given = Given()
    surfaces: tuple[Surface, ...] = ()
    doors: tuple[Door, ...] = ()
    pieces: tuple[Piece, ...] = ()
    sheets: tuple[Sheet, ...] = ()
    stock: tuple[Stock, ...] = ()
    tile_stock: tuple[TileStock, ...] = ()
    counts: dict[str, Count] = Field(default={})
    bounds: tuple[LayoutBound, ...] = ()
    findings: tuple[Finding, ...] = ()
    quantities: tuple[Quantity, ...] = ()
    workings: dict[str, Working] = Field(default={})
    structures: tuple[StructureSheet, ...] = ()
    schedule: Schedule | None = Field(default=None, exclude_if=lambda value: value is None)

    @property
    def rules(self) -> tuple[RuleNote, ...]:
        """The rule values it rests on."""
        return self.given.rules

"""How much a floor that falls rises: what its least and greatest falls ask, and what the tape's marks allow."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Self

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, Tape
from firstcourse.verify.fall_fields import Fall
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_EVEN = 1e-6
"""Share by which a limit may be missed: what rounding leaves."""
_LEVEL = 1e-6
"""A valley that falls less, for a rise of 1 mm, lies level: no rise makes it fall."""


@dataclass(frozen=True, slots=True)
class Rise:
    """Rises that keep the limits [ticks]; falls grow in step with the rise.

    Attributes:
        valleys: Keeps the least fall in the valleys too; infinite where one lies level.
        planes: Keeps it on the planes.
        allowed: Keeps the greatest fall; infinite where the practice names none.
    """

    valleys: float
    planes: float
    allowed: float

    @classmethod
    def of(cls, fall: Fall, rules: RuleSet) -> Self:
        """What a floor's falls ask."""
        rise, least = float(fall.rise), rules.number("fall.min")
        level = fall.least_fall <= _LEVEL * rise / TICKS_PER_MM
        flat = min(fall.least_plane_fall, fall.greatest_fall) <= 0
        return cls(
            valleys=math.inf if level else rise * least / fall.least_fall,
            planes=math.inf if flat else rise * least / fall.least_plane_fall,
            allowed=rise * rules.number("fall.max") / fall.greatest_fall
            if rules.has("fall.max") and not flat
            else math.inf,
        )

    @property
    def kept(self) -> str:
        """Where the least fall is kept: the whole `flow`, its `planes` alone, or `none` as is allowed."""
        if self.valleys <= self.allowed * (1 + _EVEN):
            return "flow"
        return "planes" if self.planes <= self.allowed * (1 + _EVEN) else "none"

    def chosen(self, tape: Tape) -> float:
        """The rise to build: the next mark of the tape within the limits, else what the first of them asks."""
        wanted, bound = {
            "flow": (self.valleys, self.allowed),
            "planes": (self.allowed, self.planes),
            "none": (self.planes, math.inf),
        }[self.kept]
        marks = wanted / tape.graduation
        if bound >= wanted:
            marked = tape.graduation * math.ceil(marks - _EVEN)
            return wanted if marked > bound * (1 + _EVEN) else marked
        marked = tape.graduation * math.floor(marks + _EVEN)
        return wanted if marked < bound * (1 - _EVEN) else marked


def check_rise(surface: Surface, fall: Fall, plan: Document) -> Iterator[Objection]:
    """Object to a floor that rises to another height than its limits and the tape ask."""
    rise = Rise.of(fall, plan.rules)
    if math.isinf(rise.planes) or abs(rise.chosen(plan.tape) - fall.rise) > 1:
        yield Objection("VER-772", surface.id, "rises to another height than its limits and the tape ask")

"""How far what must shed water falls over its depth: a bench, a sill, a kerb top, a shelf."""

import math
from dataclasses import dataclass

from firstcourse.rules import RuleSet
from firstcourse.units import Tape, ceil_to, ticks_from_mm, to_mm


@dataclass(frozen=True, slots=True, kw_only=True)
class FallLimits:
    """Falls allowed.

    Attributes:
        least: Least fall to the drain.
        greatest: Greatest; None where the practice names none.
    """

    least: float
    greatest: float | None = None


def least_drop(depth: int, rules: RuleSet, tape: Tape) -> int:
    """How much a bench, sill or kerb top falls over its depth at least, up to half marks of the tape [ticks]."""
    low, _ = drop_of_shelf(to_mm(depth), FallLimits(least=rules.number("fall.shelf.min"), greatest=None))
    return ceil_to(ticks_from_mm(low), tape.graduation // 2)


def drop_of_shelf(depth: float, limits: FallLimits) -> tuple[float, float]:
    """Least and greatest drop of a bench, sill, kerb top or niche shelf over its depth."""
    return depth * limits.least, math.inf if limits.greatest is None else depth * limits.greatest

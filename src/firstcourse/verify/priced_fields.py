"""What is read of plan.json and price.json to prove a price: decimals, rings and measures."""

import math
from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from typing import Any

_NEAR = Fraction(1, 10**8)
"""Computed numbers are kept to nine figures."""


def decimal(text: Any) -> Decimal:
    """A decimal that stands as a text.

    Raises:
        ValueError: It is no text of a finite number.
    """
    if not isinstance(text, str):
        raise ValueError(f"no decimal: {text!r}")
    found = Decimal(text)
    if not found.is_finite() or len(text) > 80:
        raise ValueError(f"no decimal: {text[:40]}")
    return found


def near(one: Any, other: float) -> bool:
    """Whether a decimal that stands as a text is a computed number, as near as nine figures keep it."""
    return math.isclose(float(decimal(one)), other, rel_tol=float(_NEAR), abs_tol=1e-12)


def area(ring: Sequence[Sequence[float]]) -> float:
    """Area of a ring whichever way it runs [mm²]."""
    pairs = zip(ring, [*ring[1:], *ring[:1]], strict=True)
    return abs(math.fsum(a[0] * b[1] - b[0] * a[1] for a, b in pairs)) / 2


def net(thing: Mapping[str, Any]) -> float:
    """Area of what has an outline and perhaps holes [mm²]."""
    return area(thing["outline"]) - math.fsum(area(hole) for hole in thing.get("holes", ()))


def measures(working: Mapping[str, Any], name: str) -> list[float]:
    """Numbers of an input of a working, one or several."""
    found = working["inputs"].get(name, [])
    return [one["value"] for one in (found if isinstance(found, list) else [found])]


def total(amounts: Iterable[Decimal]) -> Decimal:
    """Exact sum of decimals."""
    return sum(amounts, Decimal(0))

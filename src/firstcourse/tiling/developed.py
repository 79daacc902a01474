"""Membrane laid out flat: what is known of each surface's, and the strips that it is cut in.

Lengths are millimetres, areas square metres.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, to_mm

Kind = Literal["liner", "sheet", "liquid"]
_MM2_PER_M2 = 1e6


@dataclass(frozen=True, slots=True, kw_only=True)
class Developed:
    """The membrane of one surface, laid out flat.

    Attributes:
        kind: What it is of.
        area: Area covered, niche linings, upturns and kerb counted in.
        laps: Area under laps of one sheet over the next; none for liquid.
        strips: How many strips it is cut in, and how long each is; liquid has none.
        band: Length of sealing band at its changes of plane.
        inside: Preformed pieces where three planes meet inwards.
        outside: Preformed pieces where they meet outwards.
        collars: Openings that take a collar, by their kind.
        how: Parts of the area in words with their sizes.
    """

    surface: str
    kind: Kind
    area: float
    laps: float = 0.0
    strips: tuple[int, float] = (0, 0.0)
    band: float = 0.0
    inside: int = 0
    outside: int = 0
    collars: tuple[str, ...] = ()
    how: Mapping[str, str] = field(default_factory=dict)


def strips_of(length: float, height: float, kind: Kind, rules: RuleSet) -> tuple[tuple[int, float], float]:
    """Strips that cover a rectangle with laps, the way that takes fewer laps; and the area under the laps."""
    if kind == "liquid":
        return (0, 0.0), 0.0
    width = to_mm(rules.ticks("water.liner.width" if kind == "liner" else "water.sheet.width"))
    lap = to_mm(rules.ticks("water.lap"))
    ways = []
    for across, along in ((length, height), (height, length)):
        number = max(1, math.ceil((across - lap) / (width - lap) - 1e-9))
        ways.append(((number - 1) * lap * along / _MM2_PER_M2, number, along))
    laps, number, along = min(ways)
    return (number, along), laps


def square_metres(ticks2: float) -> float:
    """Square metres of an area in square ticks."""
    return float(ticks2) / (1000 * TICKS_PER_MM) ** 2

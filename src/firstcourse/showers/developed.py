"""Membrane laid out flat: what is known of each surface's, and the strips that it is cut in.

Lengths are millimetres, areas square metres.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from firstcourse.plan import Opening
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, to_mm
from firstcourse.values import Measure, Ref, Value, Word, length, measure
from firstcourse.workings import Working

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
        collars: Openings that take a collar or a flange.
        of: What it lies on: the `face` of what is boarded, a shower's `floor`, a face of a `bench`.
        parts: Parts of the area with their sizes, by name.
    """

    surface: str
    kind: Kind
    area: float
    laps: float = 0.0
    strips: tuple[int, float] = (0, 0.0)
    band: float = 0.0
    inside: int = 0
    outside: int = 0
    collars: tuple[Opening, ...] = ()
    of: Literal["face", "floor", "bench"] = "face"
    parts: Mapping[str, Value] = field(default_factory=dict)

    def working(self, rules: RuleSet) -> Working:
        """What it comes to; what there is none of is left out."""
        inputs: dict[str, Value] = {"kind": Word(word=self.kind), **self.parts}
        if self.kind != "liquid":
            number, long = self.strips
            inputs |= {"strips": number, "long": measure(long, "mm"), "lap": length(rules.ticks("water.lap"))}
        told: dict[str, Value] = {
            "laps": square(self.laps),
            "band": measure(self.band, "mm"),
            "inside": self.inside,
            "outside": self.outside,
            "collars": tuple(Ref(ref=f"{self.surface}/opening/{opening.id}") for opening in self.collars),
        }
        inputs |= {name: value for name, value in told.items() if value and value not in _NOTHING}
        return Working(
            formula=f"water-{self.of}",
            at=(self.surface,),
            inputs=inputs,
            result=square(self.area + self.laps),
            rule="water.upturn.above_threshold" if self.kind == "liner" else "",
        )


def square(m2: float) -> Measure:
    """An area [m2] as plans keep it."""
    return measure(m2, "m2")


_NOTHING = (square(0.0), measure(0.0, "mm"))


def strips_of(wide: float, high: float, kind: Kind, rules: RuleSet) -> tuple[tuple[int, float], float]:
    """Strips that cover a rectangle with laps, the way that takes fewer laps; and the area under the laps."""
    if kind == "liquid":
        return (0, 0.0), 0.0
    width = to_mm(rules.ticks("water.liner.width" if kind == "liner" else "water.sheet.width"))
    lap = to_mm(rules.ticks("water.lap"))
    ways = []
    for across, along in ((wide, high), (high, wide)):
        number = max(1, math.ceil((across - lap) / (width - lap) - 1e-9))
        ways.append(((number - 1) * lap * along / _MM2_PER_M2, number, along))
    laps, number, along = min(ways)
    return (number, along), laps


def square_metres(ticks2: float) -> float:
    """Square metres of an area in square ticks."""
    return float(ticks2) / (1000 * TICKS_PER_MM) ** 2

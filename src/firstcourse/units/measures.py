"""Weights, stiffnesses and other measures with their unit, inch or metric, as one number in one unit.

Exact definitions (National Institute of Standards and Technology, Handbook 44, appendix C): 1 lb = 0.45359237 kg,
1 in = 25.4 mm; standard gravity 9.80665 m/s².
"""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from firstcourse.units.mass import KG_PER_LB

_MM_PER_IN = 25.4
_N_PER_LB = KG_PER_LB * 9.80665
_N_MM2_PER_LB_IN2 = _N_PER_LB * _MM_PER_IN**2
_G_M2_PER_EMITTED_LB = 1000 * KG_PER_LB / (1000 * (12 * _MM_PER_IN / 1000) ** 2)
_LONGEST_TEXT = 40
_NUMBER = re.compile(r"(?P<number>\d+(?:\.\d+)?|\.\d+)(?:e(?P<power>[+-]?\d{1,2}))?\s*(?P<unit>\D.*)?")
_SIGNS = str.maketrans({"²": "2", "³": "3", "⁴": "4", "·": "", "*": "", "-": "", "^": "", " ": ""})


class MeasureError(ValueError):
    """A text is not a measure that can be read in one way only."""


@dataclass(frozen=True, slots=True, kw_only=True)
class MeasureKind:
    """One kind of measure.

    Attributes:
        what: The word for it, such as `weight`.
        base: The unit that it is read into.
        units: What one of each unit is in the base unit, the unit's signs and spaces left out.
        examples: How it is written, inch and metric.
        most: More than this many of the base unit is a slip of the pen.
        least: The least that may be; what is not more than it is refused where `above`.
        above: Whether it is more than the least.
    """

    what: str
    base: str
    units: Mapping[str, float]
    examples: tuple[str, ...]
    most: float
    least: float = 0.0
    above: bool = True

    def read(self, text: str) -> float:
        """Read a measure.

        Args:
            text: A number and a unit, such as `120 kg` or `2.1 kN·m²`.

        Returns:
            The number of base units.

        Raises:
            MeasureError: No unit, another unit, a comma, or out of range.

        Example:
            >>> round(WEIGHT.read("120 kg"), 2), WEIGHT.read("620 lb")
            (264.55, 620.0)
        """
        how = f"write it like {' or '.join(self.examples)}"
        if len(text) > _LONGEST_TEXT:
            raise MeasureError(f"'{text[:_LONGEST_TEXT]}…' is too long for a {self.what}; {how}")
        if "," in text:
            raise MeasureError(f"'{text}' has a comma, which may mean two things; {how}")
        found = _NUMBER.fullmatch(text.strip().lower().replace("×10^", "e"))
        if found is None:
            raise MeasureError(f"'{text}' is not a {self.what}; {how}")
        if found["unit"] is None:
            raise MeasureError(f"'{text}' has no unit; {how}")
        unit = found["unit"].translate(_SIGNS)
        if unit not in self.units:
            raise MeasureError(f"'{text}' is not in a unit of a {self.what}; {how}")
        value = float(found["number"]) * 10.0 ** int(found["power"] or 0) * self.units[unit]
        if value > self.most or value < self.least or (self.above and value == self.least):
            bound = "more than" if self.above else "at least"
            raise MeasureError(
                f"'{text}' is out of range: it is {bound} {self.least:g} and at most {self.most:g} {self.base}"
            )
        return value


def _weights(**more: float) -> dict[str, float]:
    pounds, kilos, newtons = 1.0, 1 / KG_PER_LB, 1 / _N_PER_LB
    return {"lb": pounds, "lbs": pounds, "lbf": pounds, "kg": kilos, "n": newtons, "kn": 1000 * newtons, **more}


WEIGHT = MeasureKind(
    what="weight", base="lb", units=_weights(), examples=("620 lb", "280 kg"), most=1e5, above=False
)
LOAD = MeasureKind(what="load", base="lb", units=_weights(), examples=("300 lb", "1.4 kN"), most=1e5)
STIFFNESS = MeasureKind(
    what="stiffness",
    base="lb in²",
    units={
        "lbin2": 1.0,
        "lbfin2": 1.0,
        "nmm2": 1 / _N_MM2_PER_LB_IN2,
        "knmm2": 1e3 / _N_MM2_PER_LB_IN2,
        "nm2": 1e6 / _N_MM2_PER_LB_IN2,
        "knm2": 1e9 / _N_MM2_PER_LB_IN2,
    },
    examples=("2.0e8 lb in2", "574 kN m2"),
    most=1e12,
)
INERTIA = MeasureKind(
    what="second moment of area",
    base="in⁴",
    units={"in4": 1.0, "mm4": _MM_PER_IN**-4, "cm4": 1e4 * _MM_PER_IN**-4},
    examples=("0.551 in4", "22.9 cm4"),
    most=1000,
)
SHEET_STEEL = MeasureKind(
    what="thickness",
    base="mil",
    units={"mil": 1.0, "mils": 1.0, "in": 1000.0, "mm": 1000 / _MM_PER_IN},
    examples=("33 mil", "0.84 mm"),
    most=1000,
)
EMISSION = MeasureKind(
    what="moisture emission",
    base="lb",
    units={
        "lb": 1.0,
        "lb/1000sqft": 1.0,
        "lb/1000ft2": 1.0,
        "g/m2": 1 / _G_M2_PER_EMITTED_LB,
    },
    examples=("3 lb", "14.6 g/m2"),
    most=100,
    above=False,
)
WARMTH = MeasureKind(
    what="range of temperature",
    base="°F",
    units={"f": 1.0, "°f": 1.0, "degf": 1.0, "c": 1.8, "°c": 1.8, "degc": 1.8, "k": 1.8},
    examples=("120 F", "65 C"),
    most=300,
)

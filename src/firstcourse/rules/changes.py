"""A rule's value set by a job: read with its unit, held against what the rule is."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from firstcourse.errors import InputValueError
from firstcourse.units import (
    KG_PER_LB,
    TICKS_PER_FOOT,
    TICKS_PER_INCH,
    TICKS_PER_MM,
    LengthError,
    parse_length,
)

_LENGTHS: Mapping[str, float] = {
    "in": TICKS_PER_INCH,
    "ft": TICKS_PER_FOOT,
    "mm": TICKS_PER_MM,
    "cm": 10 * TICKS_PER_MM,
    "m": 1000 * TICKS_PER_MM,
}
_MASSES: Mapping[str, float] = {"lb": KG_PER_LB, "kg": 1.0}
_UNITLESS = ("", "ratio", "share", "count")
"""Of these a bare number can mean one thing only."""
_ZERO_MEANS_NONE = ("in", "ft", "mm", "share", "percent")
"""In these units 0 asks for nothing, so that it may always be set; elsewhere where the rule says so."""
_SAME = {"%": "percent", "°f": "f", "°": "deg", "³": "3", "²": "2", "lbs": "lb", "hours": "h", "years": "year"}
_NUMBER = re.compile(r"(?P<number>[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)(?P<unit>.*)", re.DOTALL)
_YES_NO = {"true": True, "yes": True, "false": False, "no": False}
_LARGEST = 1e12


@dataclass(frozen=True, slots=True, kw_only=True)
class Override:
    """A rule's value set by the job.

    Attributes:
        rule: Rule id.
        value: A number, yes or no, or a text: words, or a number with its unit.
        unit: Of a bare number; None where the value is in the rule's own unit, as a plan keeps it.
        reason: Why; printed on the papers.
    """

    rule: str
    value: float | str | bool
    reason: str
    unit: str | None = None


def changed_value(
    override: Override, was: float | str | bool, unit: str, words: frozenset[str], *, zero: bool
) -> float | str | bool:
    """What an override sets its rule to, in the rule's unit.

    Args:
        override: As the job or a plan gives it.
        was: The book's value; the new one is of its kind.
        unit: The rule's unit.
        words: Of a list of words, those that the rule knows; empty where any text will do.
        zero: Whether the rule may be 0 in any unit, as a weight may that is switched off.

    Raises:
        InputValueError: Another kind of value, another unit or none, or no sensible size.
    """
    rule, value = override.rule, override.value
    if isinstance(was, bool):
        said = _YES_NO.get(str(value).lower())
        if said is None:
            raise InputValueError(f"rule '{rule}' wants yes or no, not '{value}'")
        return said
    if isinstance(was, str):
        if not isinstance(value, str) or not value.strip():
            raise InputValueError(f"rule '{rule}' wants words such as '{was}', not '{value}'")
        if words and (strange := sorted(set(value.split()) - words)):
            raise InputValueError(f"rule '{rule}' knows no '{strange[0]}'; take from {', '.join(sorted(words))}")
        return value
    if isinstance(value, bool):
        raise InputValueError(f"rule '{rule}' wants a number of {unit or 'units'}, not '{value}'")
    number = value if override.unit is None and not isinstance(value, str) else _in_unit(override, unit)
    may_be_zero = zero or not was or unit in _ZERO_MEANS_NONE
    if not 0 <= number <= _LARGEST or (number == 0 and not may_be_zero):
        raise InputValueError(f"rule '{rule}' wants a number of {unit or 'units'}, not '{value}'")
    return number


def _in_unit(override: Override, unit: str) -> float:
    """A number with its unit, in the unit of the rule."""
    rule = override.rule
    text = f"{override.value} {override.unit or ''}".strip()
    found = _NUMBER.fullmatch(text)
    named = _plain(found["unit"]) if found else ""
    if unit in _LENGTHS and (found is None or named not in _LENGTHS):
        # Feet and inches, fractions, or no unit at all: as every other length of a job is read.
        try:
            return parse_length(text) / _LENGTHS[unit]
        except LengthError as error:
            raise InputValueError(f"rule '{rule}': {error}") from None
    if found is None:
        raise InputValueError(f"rule '{rule}' wants a number of {unit or 'units'}, not '{text}'")
    number = float(found["number"])
    if named == _plain(unit) or (not named and unit in _UNITLESS):
        return number
    if unit == "share" and named == "percent":
        return number / 100
    for same in (_LENGTHS, _MASSES):
        if unit in same and named in same:
            return number * same[named] / same[unit]
    said = f"is in {named}" if named else "has no unit"
    raise InputValueError(f"rule '{rule}' is in {unit or 'plain numbers'}, and '{text}' {said}")


def _plain(unit: str) -> str:
    name = unit.strip().lower()
    for written, plain in _SAME.items():
        name = plain if name == written else name.replace(written, plain) if len(written) == 1 else name
    return name

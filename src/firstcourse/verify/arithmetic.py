"""Printed sums worked out again: each side of an equals sign, with what rounding of the printed numbers allows."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

_UNITS = (
    "lb·in²", "lb·in", "lb/in", "lb/ft", "in³", "in⁴", "in²", "kg/m³", "kg/m²", "kg/m3", "psf", "psi", "litres",
    "mm²", "mm", "m²", "m2", "m³", "in", "ft", "lb", "kg", "m", "l",
)  # fmt: skip
_UNIT = re.compile(rf"(?<=[\d⁰¹²³⁴⁵⁶⁷⁸⁹])\s*(?:{'|'.join(map(re.escape, _UNITS))})(?![A-Za-z_²³⁴·/])")
_TOKEN = re.compile(r"\s*(?:(\d[\d,]*(?:\.\d+)?(?:×10[⁰¹²³⁴⁵⁶⁷⁸⁹]+)?)|([-+×/()−x])|([⁰¹²³⁴⁵⁶⁷⁸⁹]+))")
_LEADING = re.compile(r"\s*\d[\d,]*(?:\.\d+)?(?:×10[⁰¹²³⁴⁵⁶⁷⁸⁹]+)?")
_HIGH = str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789")
_EXACT = frozenset({"144", "384", "360", "1000"})
"""Whole numbers of published formulas; others of three digits or more may have been rounded."""
_SLACK = 5e-4
_M_PER_IN, _M_PER_MM = 0.0254, 0.001


@dataclass(frozen=True, slots=True)
class Span:
    """What a printed number, or a sum of such, may lie between."""

    low: float
    high: float

    def meets(self, other: "Span") -> bool:
        """Whether both may be one number."""
        slack = _SLACK * max(abs(self.low), abs(self.high), abs(other.low), abs(other.high))
        return self.low <= other.high + slack and other.low <= self.high + slack


class _NoSumError(Exception):
    """A text is no sum of numbers alone."""


def wrong_sums(text: str) -> Iterator[str]:
    """Every equation of a printed line whose two sides, both in numbers, are not equal.

    Example:
        >>> list(wrong_sums("M = 0.125 w L² = 0.125 × 6.335 × 150² = 17,817 lb·in"))
        []
        >>> list(wrong_sums("5.00 + 3.94 = 9.04 psf"))
        ['5.00 + 3.94 = 9.04 psf']
    """
    parts = text.split(" = ")
    for number, (left, right) in enumerate(pairwise(parts), 2):
        one, other = span(left), span(right)
        if other is None and number == len(parts):
            other = span(_lead(right))
        if one is not None and other is not None and not one.meets(other):
            yield f"{left} = {right}"


def outcome(text: str) -> Span | None:
    """The number after the last equals sign of a printed line; None where none stands there."""
    last = text.rpartition(" = ")[2]
    return span(last) or span(_lead(last))


def span(text: str) -> Span | None:
    """What a sum of numbers with their units comes to; None where it holds more than that.

    An inch or millimetre of something with a density comes to kilograms on a square metre.
    """
    scale = 1.0
    if "kg/m³" in text and "×" in text:
        scale = _M_PER_MM if re.search(r"\d mm ×", text) else _M_PER_IN if re.search(r"\d in ×", text) else 1.0
    reader = _Reader(_UNIT.sub("", text))
    try:
        found = reader.whole()
    except (_NoSumError, ZeroDivisionError, OverflowError):
        return None
    return Span(found.low * scale, found.high * scale)


def _lead(text: str) -> str:
    found = _LEADING.match(text)
    return found[0] if found else ""


class _Reader:
    """Reads a sum from left to right: products before sums, powers before both."""

    def __init__(self, text: str) -> None:
        self.tokens: list[str] = []
        self.alone = False
        at = 0
        text = text.strip()
        while at < len(text):
            found = _TOKEN.match(text, at)
            if found is None:
                self.tokens = []
                return
            self.tokens.append(found[0].strip())
            at = found.end()
        # A number by itself is what a sum came to, and rounded; within a sum a small whole number is a count.
        self.alone = len(self.tokens) == 1

    def whole(self) -> Span:
        found = self._sum()
        if self.tokens:
            raise _NoSumError
        return found

    def _next(self) -> str:
        return self.tokens[0] if self.tokens else ""

    def _sum(self) -> Span:
        found = self._product()
        while self._next() in ("+", "-", "−"):
            plus = self.tokens.pop(0) == "+"
            other = self._product()
            if plus:
                found = Span(found.low + other.low, found.high + other.high)
            else:
                found = Span(found.low - other.high, found.high - other.low)
        return found

    def _product(self) -> Span:
        found = self._power()
        while self._next() in ("×", "x", "/"):
            times = self.tokens.pop(0) != "/"
            other = self._power()
            ends = [
                one * two if times else one / two
                for one in (found.low, found.high)
                for two in (other.low, other.high)
            ]
            found = Span(min(ends), max(ends))
        return found

    def _power(self) -> Span:
        found = self._one()
        if self._next() and self._next()[0] in "⁰¹²³⁴⁵⁶⁷⁸⁹":
            exponent = int(self.tokens.pop(0).translate(_HIGH))
            if exponent > 9:
                raise _NoSumError
            found = Span(found.low**exponent, found.high**exponent)
        return found

    def _one(self) -> Span:
        if not self.tokens:
            raise _NoSumError
        token = self.tokens.pop(0)
        if token == "(":
            found = self._sum()
            if self._next() != ")":
                raise _NoSumError
            self.tokens.pop(0)
            return found
        if not token[0].isdecimal():
            raise _NoSumError
        digits, _, power = token.partition("×10")
        value, places = float(digits.replace(",", "")), len(digits.partition(".")[2])
        rounded = places > 0 or (value >= 100 and token not in _EXACT) or self.alone
        half = 0.5 * 10.0**-places if rounded else 0.0
        scale = 10.0 ** min(int(power.translate(_HIGH)), 99) if power else 1.0
        return Span((value - half) * scale, (value + half) * scale)

"""Measures within a text, in one system of units: what stands in the other is converted where it stands."""

import re
from fractions import Fraction
from typing import NamedTuple

from firstcourse.units import TICKS_PER_MM, Tape, format_length, parse_length, ticks_from_mm

_MM_PER_IN, _KG_PER_LB, _L_PER_GAL, _ML_PER_OZ = 25.4, 0.45359237, 3.785411784, 29.5735295625
_MM_PER_FT = 12 * _MM_PER_IN
_M2_PER_FT2 = (_MM_PER_FT / 1000) ** 2
_M3_PER_FT3 = (_MM_PER_FT / 1000) ** 3
_KPA_PER_PSI = 6.894757293168361
_N_PER_LBF = 4.4482216152605


class _Unit(NamedTuple):
    """What a unit becomes: a factor and the other unit, or a way of writing lengths."""

    factor: float
    other: str


_TO_INCH: dict[str, _Unit] = {
    "mm/m": _Unit(12 / 1000, "in/ft"),
    "mm per m": _Unit(12 / 1000, "in per ft"),
    "l/m²": _Unit(_M2_PER_FT2 / _L_PER_GAL * 100, "gal per 100 sq ft"),
    "kg/m²": _Unit(_M2_PER_FT2 / _KG_PER_LB, "lb/sq ft"),
    "kg/m³": _Unit(_M3_PER_FT3 / _KG_PER_LB, "lb/cu ft"),
    "kg/l": _Unit(_L_PER_GAL / _KG_PER_LB, "lb/gal"),
    "kN/m²": _Unit(1 / _KPA_PER_PSI * 144, "psf"),
    "kPa": _Unit(1 / _KPA_PER_PSI * 144, "psf"),
    "N/mm²": _Unit(1000 / _KPA_PER_PSI, "psi"),
    "MPa": _Unit(1000 / _KPA_PER_PSI, "psi"),
    "kN": _Unit(1000 / _N_PER_LBF, "lb"),
    "m²": _Unit(1 / _M2_PER_FT2, "sq ft"),
    "m³": _Unit(1 / _M3_PER_FT3, "cu ft"),
    "kg": _Unit(1 / _KG_PER_LB, "lb"),
    "litres": _Unit(1 / _L_PER_GAL, "gal"),
    "l": _Unit(1 / _L_PER_GAL, "gal"),
    "ml": _Unit(1 / _ML_PER_OZ, "fl oz"),
    "m": _Unit(1000 / _MM_PER_FT, "ft"),
}
_TO_MM: dict[str, _Unit] = {
    "in/ft": _Unit(1000 / 12, "mm/m"),
    "in per ft": _Unit(1000 / 12, "mm per m"),
    "lb/sq ft": _Unit(_KG_PER_LB / _M2_PER_FT2, "kg/m²"),
    "psf": _Unit(_KPA_PER_PSI / 144, "kPa"),
    "psi": _Unit(_KPA_PER_PSI / 1000, "MPa"),
    "pcf": _Unit(_KG_PER_LB / _M3_PER_FT3, "kg/m³"),
    "lb/cu ft": _Unit(_KG_PER_LB / _M3_PER_FT3, "kg/m³"),
    "plf": _Unit(_N_PER_LBF / _MM_PER_FT, "kN/m"),
    "lb/ft": _Unit(_N_PER_LBF / _MM_PER_FT, "kN/m"),
    "lb/in": _Unit(_N_PER_LBF / _MM_PER_IN, "N/mm"),
    "lb·in": _Unit(_N_PER_LBF * _MM_PER_IN / 1000, "N·m"),
    "lb·in²": _Unit(_N_PER_LBF * _MM_PER_IN**2 / 1e6, "N·m²"),
    "in⁴": _Unit(_MM_PER_IN**4, "mm⁴"),
    "in³": _Unit(_MM_PER_IN**3, "mm³"),
    "in²": _Unit(_MM_PER_IN**2, "mm²"),
    "sq ft": _Unit(_M2_PER_FT2, "m²"),
    "cu ft": _Unit(_M3_PER_FT3 * 1000, "l"),
    "gallons": _Unit(_L_PER_GAL, "l"),
    "gal": _Unit(_L_PER_GAL, "l"),
    "fl oz": _Unit(_ML_PER_OZ, "ml"),
    "lb": _Unit(_KG_PER_LB, "kg"),
    "ft": _Unit(_MM_PER_FT / 1000, "m"),
}
_SPELT = {
    "m2": "m²",
    "m3": "m³",
    "l/m2": "l/m²",
    "kg/m2": "kg/m²",
    "kg/m3": "kg/m³",
    "N/mm2": "N/mm²",
    "litre": "litres",
}
_NUMBER = r"(?P<number>[+-]?(?:(?:\d+[- ])?\d+/\d+|\d[\d,]*(?:\.\d+)?))"
_AFTER = r"(?![\w²³⁴/·]|\s?×\s?10|(?<=1 in) \d)"
"""What does not follow a unit; `1 in 80` is a slope."""
_NAMED = re.compile(r"((?<![\w'])'[^'\n]+'(?!\w))")
"""A name in quotes, such as 'added 1'; it stands as it was given, and its last quote is no foot mark."""


def _pattern(units: list[str]) -> re.Pattern[str]:
    longest = sorted(units, key=lambda unit: (-len(unit), unit))
    return re.compile(rf"(?<![\w.,/'-]){_NUMBER}\s?(?P<unit>{'|'.join(map(re.escape, longest))}){_AFTER}")


_METRIC = _pattern([*_TO_INCH, *_SPELT, "mm", "°C"])
_ON_TAPE = re.compile(
    r"(?<![\w.,/'-])(?:\d+'(?: \d+(?:-\d+/\d+)?\"| \d+/\d+\")?"
    r"|(?:\d+(?:-\d+/\d+)?|\d+/\d+)\"|\d+ ft \d+(?: \d+/\d+)? in\b)"
)
"""Feet and inches as an inch tape reads them."""
_INCHED = _pattern([*_TO_MM, "in", "°F"])


def in_units(text: str, tape: Tape) -> str:
    r"""A text with every measure in the system of a tape.

    Lengths become what the tape reads where its marks are fine enough, else decimals. Where a text gives a measure
    in both systems, one in brackets behind the other or after a comma, the reader's own stands alone.

    Args:
        text: As the house writes it.
        tape: The reader's.

    Example:
        >>> in_units("face: 2.463 m2, 10 mm wide", Tape.INCH)
        'face: 26.51 sq ft, 3/8" wide'
        >>> in_units("42.9 kg/m² (8.79 psf)", Tape.INCH)
        '8.79 psf'
        >>> in_units("8.79 psf on 27.08 sq ft", Tape.MM)
        '0.421 kPa on 2.516 m²'
        >>> in_units("23/32 in panel, 1' 8-1/8\" long, 9 ft 8 in span", Tape.MM)
        '18.3 mm panel, 511.2 mm long, 2946 mm span'
        >>> in_units("add stud 'added 1', falls 1 in 80, 1 in wide", Tape.MM)
        "add stud 'added 1', falls 1 in 80, 25.4 mm wide"
    """
    parts = _NAMED.split(text)
    return "".join(part if place % 2 else _measures_in(part, tape) for place, part in enumerate(parts))


def _measures_in(text: str, tape: Tape) -> str:
    """A text that holds no names, in the system of a tape."""
    inch = tape is Tape.INCH
    own, foreign = (_INCHED, _METRIC) if inch else (_METRIC, _INCHED)
    text = _own_alone(text, own, foreign)
    if not inch:
        text = _ON_TAPE.sub(lambda found: f"{_rounded(parse_length(found[0]) / TICKS_PER_MM, 4)} mm", text)
    return foreign.sub(_to_inch if inch else _to_mm, text)


def unit_for(unit: str, tape: Tape) -> tuple[float, str]:
    """What a number with a unit is to be multiplied by for a tape, and its unit then.

    Example:
        >>> factor, unit = unit_for("ml", Tape.INCH)
        >>> round(300 * factor, 1), unit
        (10.1, 'fl oz')
        >>> unit_for("pieces", Tape.INCH)
        (1.0, 'pieces')
    """
    told = _SPELT.get(unit, unit)
    if tape is Tape.INCH:
        found = _TO_INCH.get(told, _Unit(1 / _MM_PER_IN, "in") if told == "mm" else None)
    else:
        found = _TO_MM.get(told, _Unit(_MM_PER_IN, "mm") if told == "in" else None)
    return (found.factor, found.other) if found is not None else (1.0, told)


def _own_alone(text: str, own: re.Pattern[str], foreign: re.Pattern[str]) -> str:
    """Drops what is told again in the other system."""
    text = re.sub(rf"(?P<a>{_bare(own)})\s\((?P<b>{_bare(foreign)})\)", lambda found: found["a"], text)
    text = re.sub(rf"(?P<a>{_bare(foreign)})\s\((?P<b>{_bare(own)})\)", lambda found: found["b"], text)
    return re.sub(rf"(?P<a>{_bare(foreign)}), (?P<b>{_bare(own)})", lambda found: found["b"], text)


def _bare(pattern: re.Pattern[str]) -> str:
    """A pattern without names of its groups, to stand in another."""
    return re.sub(r"\?P<\w+>", "?:", pattern.pattern)


def _to_inch(found: re.Match[str]) -> str:
    value, unit = _value(found), _SPELT.get(found["unit"], found["unit"])
    if unit == "mm":
        return _tape_or_decimals(value)
    if unit == "°C":
        return f"{value * 9 / 5 + 32:.0f} °F"
    return _converted(found, value, _TO_INCH[unit])


def _to_mm(found: re.Match[str]) -> str:
    value, unit = _value(found), found["unit"]
    if unit == "in":
        return f"{_rounded(value * _MM_PER_IN, _digits(found['number']))} mm"
    if unit == "°F":
        return f"{(value - 32) * 5 / 9:.0f} °C"
    return _converted(found, value, _TO_MM[unit])


def _value(found: re.Match[str]) -> float:
    """The number as it stands, a fraction with its whole."""
    number = found["number"].replace(",", "")
    if "/" not in number:
        return float(number)
    whole, part = re.fullmatch(r"([+-]?\d+(?=[- ]))?[- ]?(.+)", number).groups()  # type: ignore[union-attr]
    return float(whole or 0) + float(Fraction(part))


def _converted(found: re.Match[str], value: float, unit: _Unit) -> str:
    return f"{_rounded(value * unit.factor, _digits(found['number']))} {unit.other}"


def _digits(number: str) -> int:
    """Figures of a number that count, three at least and five at most."""
    return 3 if "/" in number else min(5, max(3, len(re.sub(r"[^\d]", "", number).lstrip("0"))))


def _rounded(value: float, digits: int) -> str:
    if value == 0:
        return "0"
    text = f"{value:.{digits}g}"
    if "e" in text:
        text = f"{float(text):.0f}" if abs(value) >= 1 else f"{value:.6f}".rstrip("0")
    return f"{float(text):,.0f}" if abs(float(text)) >= 10_000 else text


def _tape_or_decimals(value_mm: float) -> str:
    """As the tape reads it; what is finer than its marks, in decimals."""
    ticks = ticks_from_mm(value_mm)
    if value_mm == 0 or abs(ticks) >= 2 * Tape.INCH.graduation:
        return format_length(ticks, Tape.INCH)
    return f"{value_mm / _MM_PER_IN:.3f} in"

"""Measures as a reader's tape and units show them: on the tape's marks, or in figures."""

import math
from fractions import Fraction
from typing import Literal

from firstcourse.units import (
    TICKS_PER_INCH,
    Tape,
    ceil_to,
    floor_to,
    format_length,
    inch_text,
    inches_beside,
    ticks_from_mm,
)
from firstcourse.values import Measure
from firstcourse.words.measures import unit_for

Way = Literal["near", "up", "down"]

_DECIMALS = {
    "mm": 2, "in": 3, "ft": 2, "m": 3, "sq ft": 2, "m²": 3, "psf": 2, "kPa": 3, "kg": 1, "lb": 1, "kg/m²": 1,
    "lb/sq ft": 2, "psi": 0, "MPa": 2, "%": 1, "gal": 2, "litres": 2, "l": 2, "fl oz": 1, "ml": 0, "°": 1,
    "days": 0, "hours": 0,
}  # fmt: skip
"""Decimals of a computed number by the unit it is printed in; four figures where nothing is said."""
_WRITTEN = {"deg": "°", "percent": "%", "degC": "°C"}
_CLOSE = {"°", "%"}
"""Units that stand right behind their number."""
_SPAN_RATIO = "L/x"
"""Of a span over its deflection, said as L/360 and never rounded up."""
_STRAIGHT = 100_000
"""A span over its deflection from which on nobody can see or measure that it bends."""
_MM_PER_IN = 25.4
_LITRES_PER_CUBIC_FOOT = (12 * _MM_PER_IN / 100) ** 3


def on_tape(found: Measure, tape: Tape, way: Way = "near", *, feet: bool = True) -> str:
    r"""A length as the tape reads it.

    Args:
        found: In millimetres.
        tape: The reader's.
        way: To the nearest mark, or to the next that is not less (`up`) or not more (`down`).
        feet: Inch tape only: feet and inches from 12 in upwards; else inches alone.

    Raises:
        ValueError: It is no length.

    Example:
        >>> on_tape(Measure(value=1613.0, unit="mm"), Tape.INCH, "up")
        '5\' 3-9/16"'
    """
    if found.unit != "mm":
        raise ValueError(f"{found.value:g} {found.unit} is no length")
    ticks = ticks_from_mm(found.value)
    rounded = {"near": ticks, "up": ceil_to(ticks, tape.graduation), "down": floor_to(ticks, tape.graduation)}[way]
    return format_length(rounded, tape, feet=feet)


def fine(found: Measure, tape: Tape) -> str:
    """A small length, with finer marks than the tape has where it needs them.

    Example:
        >>> fine(Measure(value=2.38125, unit="mm"), Tape.INCH), fine(Measure(value=2.5, unit="mm"), Tape.MM)
        ('3/32"', '2.5 mm')
    """
    ticks = ticks_from_mm(found.value)
    if tape is Tape.MM:
        return f"{found.value:.2f}".rstrip("0").rstrip(".") + " mm"
    if ticks % tape.graduation == 0:
        return format_length(ticks, tape)
    finer = Fraction(ticks, TICKS_PER_INCH)
    if 64 % finer.denominator == 0:
        whole, part = divmod(finer, 1)
        return f'{whole}-{part}"' if whole else f'{part}"'
    return f"{ticks / TICKS_PER_INCH:.4f}".rstrip("0").rstrip(".") + " in"


def spaced(found: Measure, tape: Tape, limit: Measure | None = None) -> str:
    """How far members stand apart, as frames are spoken of: inches alone; beside a limit on its own side of it.

    Example:
        >>> spaced(Measure(value=609.6, unit="mm"), Tape.INCH), spaced(Measure(value=609.6, unit="mm"), Tape.MM)
        ('24 in', '610 mm')
        >>> spaced(Measure(value=406.654, unit="mm"), Tape.INCH, Measure(value=406.4, unit="mm"))
        '16-1/64 in'
    """
    if tape is Tape.INCH:
        inches = found.value / _MM_PER_IN
        return f"{inch_text(inches) if limit is None else inches_beside(inches, limit.value / _MM_PER_IN)} in"
    near = round(found.value)
    hidden = limit is not None and (near > limit.value) is not (found.value > limit.value)
    return f"{found.value:.2f} mm" if hidden else on_tape(found, tape)


def beside(found: Measure, limit: Measure, tape: Tape) -> str:
    """A small length on its own side of a limit, to the nearest mark that shows it so.

    Example:
        >>> beside(Measure(value=3.6, unit="mm"), Measure(value=3.175, unit="mm"), Tape.INCH)
        '9/64"'
    """
    if tape is Tape.MM:
        return f"{found.value:.3g} mm"
    return f'{inches_beside(found.value / _MM_PER_IN, limit.value / _MM_PER_IN)}"'


def thick(found: Measure, tape: Tape) -> str:
    """How thick a panel is, as it is sold, with marks that no tape has.

    Example:
        >>> thick(Measure(value=15.08125, unit="mm"), Tape.INCH), thick(Measure(value=18.0, unit="mm"), Tape.MM)
        ('19/32 in', '18 mm')
    """
    return f"{inch_text(found.value / _MM_PER_IN)} in" if tape is Tape.INCH else f"{found.value:.4g} mm"


def plain(found: Measure, tape: Tape) -> str:
    """A number as somebody read or set it, with the reader's unit and no decimals that it does not have.

    Example:
        >>> plain(Measure(value=24.0, unit="%"), Tape.INCH), plain(Measure(value=0.5, unit="perm"), Tape.MM)
        ('24%', '0.5 perm')
    """
    factor, unit = unit_for(found.unit, tape)
    number = number_text(found.value * factor, None)
    return f"{number}{unit}" if unit in _CLOSE else f"{number} {unit}".rstrip()


def cut(found: Measure, tape: Tape) -> str:
    """A width that must not read as more than it is, down to the mark of the tape below it.

    Example:
        >>> cut(Measure(value=50.8, unit="mm"), Tape.MM), cut(Measure(value=0.8, unit="mm"), Tape.MM)
        ('50 mm', 'under 1 mm')
    """
    ticks = ticks_from_mm(found.value)
    if ticks and ticks < tape.graduation:
        return f"under {format_length(tape.graduation, tape)}"
    return on_tape(found, tape, "down")


def run(found: Measure, tape: Tape) -> str:
    r"""A running length: metres to two places, or feet and inches.

    Example:
        >>> run(Measure(value=4787.9, unit="mm"), Tape.MM), run(Measure(value=4787.9, unit="mm"), Tape.INCH)
        ('4.79 m', '15\' 8-1/2"')
    """
    return f"{found.value / 1000:.2f} m" if tape is Tape.MM else on_tape(found, tape)


def slope(found: Measure, tape: Tape) -> str:
    """A fall as the trade says it: inches per foot, or one in so many.

    Example:
        >>> slope(Measure(value=1 / 48), Tape.INCH), slope(Measure(value=1 / 80), Tape.MM)
        ('0.25 in per ft', '1:80')
    """
    if tape is Tape.INCH:
        return f"{12 * found.value:.3g} in per ft"
    return f"1:{1 / found.value:.3g}" if found.value > 0 else "level"


def small_area(found: Measure, tape: Tape) -> str:
    """An area [m2] as small as a shower: whole square inches, or square metres to two places.

    Example:
        >>> area = Measure(value=0.58, unit="m2")
        >>> small_area(area, Tape.INCH), small_area(area, Tape.MM)
        ('899 sq in', '0.58 m²')
    """
    return f"{found.value / 0.0254**2:.0f} sq in" if tape is Tape.INCH else f"{found.value:.2f} m²"


def bulk(found: Measure, tape: Tape) -> str:
    """A volume [l] of what is bought by the bag: cubic feet to two places, or litres to one.

    Example:
        >>> bulk(Measure(value=42.49, unit="l"), Tape.INCH), bulk(Measure(value=42.49, unit="l"), Tape.MM)
        ('1.50 cu ft', '42.5 l')
    """
    return f"{found.value / _LITRES_PER_CUBIC_FOOT:.2f} cu ft" if tape is Tape.INCH else f"{found.value:.1f} l"


def in_figures(
    found: Measure, tape: Tape, decimals: int | None = None, *, sign: bool = False, up: bool = False
) -> str:
    """A measure in decimals with the reader's unit.

    Args:
        found: The measure.
        tape: Says which units the reader has.
        decimals: How many; those usual for the unit where not given.
        sign: Print a plus before what is not negative.
        up: Round up, so that it is never said to be less than it is.

    Example:
        >>> in_figures(Measure(value=2.75, unit="mm"), Tape.INCH)
        '0.108 in'
        >>> in_figures(Measure(value=8.79, unit="psf"), Tape.MM)
        '0.421 kPa'
    """
    if found.unit == _SPAN_RATIO:
        return f"L/{int(found.value)}" if found.value < _STRAIGHT else "no deflection"
    factor, unit = unit_for(_WRITTEN.get(found.unit, found.unit), tape)
    value = found.value * factor
    if unit == "°C" and tape is Tape.INCH:
        value, unit = value * 9 / 5 + 32, "°F"
    number = number_text(value, _DECIMALS.get(unit) if decimals is None else decimals, sign=sign, up=up)
    return f"{number}{unit}" if unit in _CLOSE else f"{number} {unit}".rstrip()


def span(found: Measure, tape: Tape) -> str:
    r"""How far members span: inches, and on an inch tape feet and inches beside.

    Example:
        >>> span(Measure(value=3810.0, unit="mm"), Tape.INCH), span(Measure(value=3810.0, unit="mm"), Tape.MM)
        ('150 in (12\' 6")', '3810 mm')
    """
    return f"{spaced(found, tape)} ({on_tape(found, tape)})" if tape is Tape.INCH else spaced(found, tape)


def inch_pound(
    found: Measure, decimals: int | None = None, figures: int | None = None, *, millions: bool = False
) -> str:
    """The figures of a measure in inches and pounds, for a formula that is worked in them.

    Args:
        found: The measure.
        decimals: How many.
        figures: How many figures at least, where decimals are not said; six at most where neither is.
        millions: Write it in millions.

    Example:
        >>> inch_pound(Measure(value=3810.0, unit="mm")), inch_pound(Measure(value=0.0012345678), figures=4)
        ('150', '0.001235')
        >>> inch_pound(Measure(value=61932600.0, unit="lb·in²"), millions=True)
        '61.933×10⁶'
    """
    value = found.value * unit_for(found.unit, Tape.INCH)[0]
    if millions:
        return f"{value / 1e6:.3f}×10⁶"
    if figures is not None and value:
        decimals = max(0, figures - 1 - math.floor(math.log10(abs(value))))
    return f"{value:g}" if decimals is None else f"{value:,.{decimals}f}"


def less(found: Measure, other: Measure, tape: Tape) -> str:
    """What is left of a measure without another, both as printed: a reader who subtracts finds the same.

    Example:
        >>> ground, board = Measure(value=5.00049, unit="m2"), Measure(value=4.9995, unit="m2")
        >>> in_figures(ground, Tape.MM), in_figures(board, Tape.MM), less(ground, board, Tape.MM)
        ('5.000 m²', '5.000 m²', '0.000 m²')
    """
    factor, unit = unit_for(found.unit, tape)
    decimals = _DECIMALS[unit]
    left = round(found.value * factor, decimals) - round(other.value * factor, decimals)
    return f"{number_text(max(0.0, left), decimals)} {unit}"


def number_text(value: float, decimals: int | None, *, sign: bool = False, up: bool = False) -> str:
    """A number with so many decimals, halves or all rounded up; with four figures where none are said.

    Example:
        >>> number_text(1234567.0, 0), number_text(0.421496, None), number_text(-0.001, 2)
        ('1,234,567', '0.4215', '0.00')
    """
    if decimals is None:
        text = f"{value:.4g}"
        return text if "e" not in text else f"{value:,.0f}"
    scale = 10**decimals
    rounded = float(Fraction(round(abs(value) * scale * 1e6)) / Fraction(10**6))
    whole = math.ceil(rounded - 1e-6) if up else int(rounded + 0.5)
    shown = whole / scale
    minus = "-" if value < 0 and whole else ("+" if sign else "")
    return f"{minus}{shown:,.{decimals}f}"

"""Length in whole ticks of 1/640 mm: exact for millimetres and for 1/128 in.

Text needs a unit and a strict shape; what could mean two things is refused, never guessed.
"""

import math
import re
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache

TICKS_PER_MM = 640
TICKS_PER_INCH = 16_256
TICKS_PER_FOOT = 12 * TICKS_PER_INCH

_HOW = "write it like 5' 3-1/2\", 63 1/2 in, 1615 mm or 1.615 m"
_LONGEST_TEXT = 40
_MARKS = (16, 64)
"""Parts of an inch: those of a tape, and finer ones."""
_VULGAR = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_NUMBER = r"(?P<whole>\d+)(?:(?:[ -]+)(?P<num>\d+)/(?P<den>\d+)|\.(?P<dec>\d+))?|(?P<fnum>\d+)/(?P<fden>\d+)"
_METRIC = re.compile(r"(?P<sign>[+-]?)(?P<number>\d+(?:\.\d+)?|\.\d+)\s*(?P<unit>mm|cm|m)")
_FEET = re.compile(r"(?P<feet>\d+(?:\.\d+)?)\s*(?:'|ft\.?|feet|foot)(?:[\s-]*(?P<rest>\d.*))?")
_INCHES = re.compile(rf"(?:{_NUMBER})\s*(?:\"|''|in\.?|inch|inches)")


class LengthError(ValueError):
    """A text is not a length that can be read in one way only."""


class Tape(StrEnum):
    """The tape in the setter's hand; its graduation is what can be marked.

    An inch tape reads to 1/16 in, a millimetre tape to 1 mm.
    """

    INCH = "inch"
    MM = "mm"

    @property
    def graduation(self) -> int:
        """Smallest mark [ticks]: 1/16 in or 1 mm."""
        return TICKS_PER_INCH // 16 if self is Tape.INCH else TICKS_PER_MM


@lru_cache(maxsize=4096)
def mm(value: float | Fraction) -> int:
    """Millimetres as ticks, nearest tick (exact for whole mm and for 1/128 in)."""
    return _nearest(Fraction(value) * TICKS_PER_MM)


@lru_cache(maxsize=4096)
def inches(value: float | Fraction) -> int:
    """Inches as ticks, nearest tick (exact for whole mm and for 1/128 in).

    Example:
        >>> inches(63.5)
        1032256
    """
    return _nearest(Fraction(value) * TICKS_PER_INCH)


def to_mm(ticks: int) -> float:
    """Ticks as millimetres; exact, since 1/640 mm has at most 7 decimals."""
    return ticks / TICKS_PER_MM


def to_inches(ticks: int) -> float:
    """Ticks as inches, for calculation in inch units only."""
    return ticks / TICKS_PER_INCH


def ticks_from_mm(value_mm: float) -> int:
    """Nearest tick to a length in millimetres."""
    return math.floor(value_mm * TICKS_PER_MM + 0.5)


def ticks_from_mm_ceil(value_mm: float) -> int:
    """Ticks not less than a length in millimetres: a piece is never short."""
    return math.ceil(round(value_mm * TICKS_PER_MM, 6))


def ticks_from_mm_floor(value_mm: float) -> int:
    """Ticks not more than a length in millimetres: stock is never optimistic."""
    return math.floor(round(value_mm * TICKS_PER_MM, 6))


def floor_to(ticks: int, step: int) -> int:
    """Largest multiple of `step` that is not more than `ticks`."""
    return ticks // step * step


def ceil_to(ticks: int, step: int) -> int:
    """Smallest multiple of `step` that is not less than `ticks`."""
    return -(-ticks // step) * step


@lru_cache(maxsize=8192)
def parse_length(text: str) -> int:
    r"""Read a length as a tape gives it.

    Args:
        text: Such as `5' 3-1/2"`, `5ft 3 1/2in`, `63.5in`, `1615 mm`, `1.615 m`.

    Returns:
        The length [ticks]: exact for mm and 1/128 in, else the nearest tick.

    Raises:
        LengthError: No unit, an ambiguous comma, 12 or more inches after feet.

    Example:
        >>> parse_length("5' 3-1/2\\"") == parse_length("63.5 in")
        True
    """
    if len(text) > _LONGEST_TEXT:
        raise LengthError(f"'{text[:_LONGEST_TEXT]}…' is too long for a length; {_HOW}")
    clean = _plain(text)
    if not clean:
        raise LengthError(f"an empty text is no length; {_HOW}")
    if "," in clean:
        raise LengthError(f"'{text}' has a comma, which may mean two things; {_HOW}")
    if re.fullmatch(r"[+-]?(\d+(\.\d+)?|\.\d+|\d+([ -]\d+)?/\d+)", clean):
        raise LengthError(f"'{text}' has no unit; {_HOW}")
    if metric := _METRIC.fullmatch(clean):
        scale = {"mm": 1, "cm": 10, "m": 1000}[metric["unit"]]
        value = Fraction(metric["number"]) * scale * TICKS_PER_MM
        return _nearest(-value if metric["sign"] == "-" else value)
    sign, body = (-1, clean[1:].lstrip()) if clean.startswith("-") else (1, clean.lstrip("+"))
    return _nearest(sign * _imperial(body, text) * TICKS_PER_INCH)


def format_length(ticks: int, tape: Tape, *, feet: bool = True) -> str:
    r"""Write a length as the tape reads it, to the nearest graduation.

    Args:
        ticks: Length [ticks].
        tape: Which tape to write for.
        feet: Inch tape only: feet and inches from 12 in upwards; else inches alone.

    Example:
        >>> format_length(parse_length("63.5 in"), Tape.INCH)
        '5\\' 3-1/2"'
        >>> format_length(parse_length("1615 mm"), Tape.MM)
        '1615 mm'
    """
    marks = math.floor(Fraction(ticks, tape.graduation) + Fraction(1, 2))
    if tape is Tape.MM:
        return f"{marks} mm"
    sign, marks = ("-" if marks < 0 else ""), abs(marks)
    whole, sixteenths = divmod(marks, 16)
    fraction = str(Fraction(sixteenths, 16)) if sixteenths else ""
    lead = ""
    if feet and whole >= 12:
        lead, whole = f"{whole // 12}' ", whole % 12
    text = f"{whole}-{fraction}" if whole and fraction else fraction or str(whole)
    return f'{sign}{lead}{text}"'


def inch_text(value: float, *, finest: int = 64) -> str:
    """Inches as one writes them by hand: a fraction where it is one, else to four decimals.

    Args:
        value: Inches.
        finest: Fractions go no finer than one part in so many.

    Example:
        >>> inch_text(16.1875), inch_text(0.375), inch_text(12), inch_text(0.1083)
        ('16-3/16', '3/8', '12', '0.1083')
    """
    parts = round(value * finest)
    if abs(value * TICKS_PER_INCH - parts * TICKS_PER_INCH / finest) > 1:
        return f"{value:.4f}".rstrip("0").rstrip(".")
    whole, part = divmod(Fraction(abs(parts), finest), 1)
    sign = "-" if parts < 0 else ""
    return f"{sign}{whole}-{part}" if whole and part else f"{sign}{part or whole}"


def inches_beside(found: float, limit: float) -> str:
    """Inches to the nearest mark of a tape, or a finer one where that would hide whether they keep a limit."""
    text = inch_text(found)
    for finest in _MARKS if "." in text else ():
        mark = round(found * finest) / finest
        if (mark > limit, mark < limit) == (found > limit, found < limit):
            return inch_text(mark)
    return text


def _plain(text: str) -> str:
    clean = text.strip().lower().replace("\u00a0", " ").replace("\u202f", " ").replace("\u2212", "-")
    for quote in "\u2019\u2018\u2032`\u00b4":
        clean = clean.replace(quote, "'")
    for quote in "\u201d\u201c\u2033":
        clean = clean.replace(quote, '"')
    for sign, plain in _VULGAR.items():
        clean = re.sub(rf"(?<=\d){sign}", f" {plain}", clean).replace(sign, plain)
    return re.sub(r"\s+", " ", clean)


def _imperial(body: str, text: str) -> Fraction:
    if feet := _FEET.fullmatch(body):
        total = Fraction(feet["feet"]) * 12
        if feet["rest"] is None:
            return total
        if "." in feet["feet"]:
            raise LengthError(f"'{text}' mixes decimal feet with inches; {_HOW}")
        rest = _INCHES.fullmatch(feet["rest"])
        if rest is None:
            raise LengthError(f"'{text}' has no inch mark after its inches; {_HOW}")
        inch = _mixed(rest, text)
        if inch >= 12:
            raise LengthError(f"'{text}' has 12 or more inches after the feet; {_HOW}")
        return total + inch
    if match := _INCHES.fullmatch(body):
        return _mixed(match, text)
    raise LengthError(f"'{text}' is not a length; {_HOW}")


def _mixed(match: re.Match[str], text: str) -> Fraction:
    if match["fnum"] is not None:
        return _proper(match["fnum"], match["fden"], text)
    whole = Fraction(match["whole"])
    if match["num"] is not None:
        return whole + _proper(match["num"], match["den"], text)
    return whole + (Fraction("0." + match["dec"]) if match["dec"] else 0)


def _proper(num: str, den: str, text: str) -> Fraction:
    if int(den) == 0 or int(num) >= int(den):
        raise LengthError(f"'{text}' has a fraction that is not below one; {_HOW}")
    if int(den) not in (2, 4, 8, 16, 32, 64, 128):
        raise LengthError(f"'{text}' has a fraction that no tape shows; use halves down to 1/128")
    return Fraction(int(num), int(den))


def _nearest(value: Fraction) -> int:
    # A reading such as 63.7 in lies between ticks; the nearest is within 0.8 micrometres.
    return math.floor(value + Fraction(1, 2))

"""Lengths in exact ticks and masses, money and angles; reading and writing what a tape says."""

from firstcourse.units.counting import as_needed, counted, one_or_more
from firstcourse.units.length import (
    TICKS_PER_FOOT,
    TICKS_PER_INCH,
    TICKS_PER_MM,
    LengthError,
    Tape,
    ceil_to,
    floor_to,
    format_length,
    inch_text,
    inches,
    mm,
    parse_length,
    ticks_from_mm,
    ticks_from_mm_ceil,
    ticks_from_mm_floor,
    to_inches,
    to_mm,
)
from firstcourse.units.mass import KG_PER_LB
from firstcourse.units.printing import printable

__all__ = [
    "KG_PER_LB",
    "TICKS_PER_FOOT",
    "TICKS_PER_INCH",
    "TICKS_PER_MM",
    "LengthError",
    "Tape",
    "as_needed",
    "ceil_to",
    "counted",
    "floor_to",
    "format_length",
    "inch_text",
    "inches",
    "mm",
    "one_or_more",
    "parse_length",
    "printable",
    "ticks_from_mm",
    "ticks_from_mm_ceil",
    "ticks_from_mm_floor",
    "to_inches",
    "to_mm",
]

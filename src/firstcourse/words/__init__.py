"""All that is said: sentences by code, in a reader's tongue, trade words and units."""

from firstcourse.words.measures import in_units, unit_for
from firstcourse.words.reader import speaker_for, why_barred
from firstcourse.words.said import SaidFinding, SaidQuantity, SaidWorking, alike_together
from firstcourse.words.sheets import SaidLine, SaidSheet
from firstcourse.words.speaker import Speaker
from firstcourse.words.terms import TERMS, Term, terms_of

__all__ = [
    "TERMS",
    "SaidFinding",
    "SaidLine",
    "SaidQuantity",
    "SaidSheet",
    "SaidWorking",
    "Speaker",
    "Term",
    "alike_together",
    "in_units",
    "speaker_for",
    "terms_of",
    "unit_for",
    "why_barred",
]

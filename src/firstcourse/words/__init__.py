"""All that is said: sentences by code, in a reader's tongue, trade words and units."""

from firstcourse.words.figures import in_figures
from firstcourse.words.measures import in_units
from firstcourse.words.reader import speaker_for, why_barred
from firstcourse.words.said import SaidFinding, SaidWorking, alike_together
from firstcourse.words.sheets import SaidLine, SaidSheet
from firstcourse.words.speaker import Speaker
from firstcourse.words.terms import TERMS, terms_of

__all__ = [
    "TERMS",
    "SaidFinding",
    "SaidLine",
    "SaidSheet",
    "SaidWorking",
    "Speaker",
    "alike_together",
    "in_figures",
    "in_units",
    "speaker_for",
    "terms_of",
    "why_barred",
]

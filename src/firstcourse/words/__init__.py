"""The words and units that a reader expects: one table of terms, one system of units."""

from firstcourse.words.measures import in_units, unit_for
from firstcourse.words.speaker import Speaker
from firstcourse.words.terms import TERMS, Term, terms_of

__all__ = ["TERMS", "Speaker", "Term", "in_units", "terms_of", "unit_for"]

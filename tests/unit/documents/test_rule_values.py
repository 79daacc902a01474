"""Rules are printed with the book's unit, and in the tape's where that is another."""

import pytest

from firstcourse.documents.rule_values import shown_value
from firstcourse.units import Tape


@pytest.mark.parametrize(
    ("value", "unit", "tape", "shown"),
    [
        ("0.125", "in", Tape.MM, "0.125 in (3.175 mm)"),
        ("0.125", "in", Tape.INCH, "0.125 in"),
        ("5.905511811023622", "in", Tape.MM, "5.90551 in (150 mm)"),
        ("3", "ft", Tape.MM, "3 ft (914.4 mm)"),
        ("3", "ft", Tape.INCH, "3 ft"),
        ("6", "mm", Tape.INCH, "6 mm (0.2362 in)"),
        ("0", "in", Tape.MM, "0 mm"),
        ("50", "ft", Tape.MM, "50 ft (15240 mm)"),
        ("0.95", "share", Tape.MM, "0.95 share"),
        ("True", "", Tape.MM, "yes"),
        ("square", "", Tape.MM, "square"),
    ],
)
def test_a_value_reads_as_the_tape_does(value: str, unit: str, tape: Tape, shown: str) -> None:
    assert shown_value(value, unit, tape) == shown

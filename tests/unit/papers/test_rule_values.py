"""Rules are printed in the tape's unit, with the book's beside it where that is another."""

import pytest

from firstcourse.papers.rule_values import shown_value
from firstcourse.units import Tape


@pytest.mark.parametrize(
    ("value", "unit", "tape", "shown"),
    [
        ("0.125", "in", Tape.MM, "3.175 mm (0.125 in)"),
        ("0.125", "in", Tape.INCH, "1/8 in"),
        ("1.25", "in", Tape.INCH, "1-1/4 in"),
        ("0.09375", "in", Tape.INCH, "3/32 in"),
        ("16", "in", Tape.INCH, "16 in"),
        ("0.42", "in", Tape.INCH, "0.42 in"),
        ("51", "lb", Tape.MM, "23.13 kg (51 lb)"),
        ("51", "lb", Tape.INCH, "51 lb"),
        ("5.905511811023622", "in", Tape.MM, "150 mm (5.90551 in)"),
        ("3", "ft", Tape.MM, "914.4 mm (3 ft)"),
        ("3", "ft", Tape.INCH, "3 ft"),
        ("6", "mm", Tape.INCH, "0.2362 in (6 mm)"),
        ("0", "in", Tape.MM, "0 mm"),
        ("50", "ft", Tape.MM, "15240 mm (50 ft)"),
        ("0.95", "share", Tape.MM, "0.95 share"),
        ("29500000", "psi", Tape.INCH, "29,500,000 psi"),
        ("29500000", "psi", Tape.MM, "203,400 MPa (29,500,000 psi)"),
        ("True", "", Tape.MM, "yes"),
        ("square", "", Tape.MM, "square"),
    ],
)
def test_a_value_reads_as_the_tape_does(value: str, unit: str, tape: Tape, shown: str) -> None:
    assert shown_value(value, unit, tape) == shown

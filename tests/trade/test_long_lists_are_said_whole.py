"""A finding with a list longer than 2,500 characters, such as 60 members to add, stopped all papers.

However many places a finding names, each of them is printed.
"""

from firstcourse.findings import Finding, Severity
from firstcourse.units import inches
from firstcourse.values import Ref, Word, length
from said import said

MANY = 400


def test_every_member_to_add_is_said() -> None:
    places = tuple(length(inches(16 * number)) for number in range(MANY))
    found = Finding(
        code="BRD-101",
        severity=Severity.FIX,
        at=("bath/floor",),
        remedies=("add",),
        values={
            "count": 2 * MANY,
            "kind": Word(word="blocking"),
            "uprights": MANY,
            "levels": MANY,
            **{f"{way}_{what}": places for way in ("upright", "level") for what in ("at", "from", "to")},
        },
    )
    measured = said(found).measured
    assert measured.count("off the bottom edge") == measured.count("off the left edge") == MANY


def test_every_thin_strip_is_said() -> None:
    found = Finding(
        code="BRD-206",
        severity=Severity.NOTE,
        at=("bath/floor",),
        remedies=("break_off", "dust"),
        values={
            "widths": (length(inches(0.25)),) * MANY,
            "boards": tuple(Ref(ref=f"bath/floor#{number}") for number in range(MANY)),
            "sheets": tuple(Ref(ref=f"sheet/S{number}") for number in range(MANY)),
        },
    )
    assert said(found).measured.count("(sheet S") == MANY

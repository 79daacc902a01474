"""Planks and panels by the joists' spacing.

NHBC Standards 6.4.19, Table 7, and IRC 2018, Table R503.1 (known = read); AS 1860.2 as a merchant tells it.
"""

import datetime

import pytest

from firstcourse.frames.decks import Deck, Planks, judge_deck, judge_planks
from firstcourse.rules import load_rules
from firstcourse.units import inches, mm

DAY = datetime.date(2026, 11, 25)
US, UK, AU = (load_rules(DAY, practice) for practice in ("us", "uk", "au"))
THICK = mm(40)


@pytest.mark.parametrize(
    ("kind", "at_400", "at_450", "at_600"),
    [
        (Deck.PLANKS, 16, 16, 19),
        (Deck.CHIPBOARD, 18, 18, 22),
        (Deck.PLYWOOD, 15, 15, 18),
        (Deck.STRAND_BOARD, 15, 15, 18),
    ],
)
def test_nhbc_table_7(kind: Deck, at_400: int, at_450: int, at_600: int) -> None:
    """The printed thickness holds and 1 mm less does not, at each printed spacing."""
    for spacing, least in ((400, at_400), (450, at_450), (600, at_600)):
        for thickness, holds in ((least, True), (least - 1, False)):
            if kind is Deck.PLANKS:
                found = judge_planks(
                    UK, "bath/floor", Planks(kind=kind, thickness=mm(thickness)), (THICK,), mm(spacing)
                )
            else:
                found = judge_deck(UK, "bath/floor", kind, (mm(thickness),), mm(spacing))
            assert holds is not any(finding.severity == "stop" for finding in found), (spacing, thickness)


@pytest.mark.parametrize(
    ("kind", "spacing", "least"),
    [
        (Deck.PLANKS, 16, 5 / 8),
        (Deck.PLANKS, 24, 11 / 16),
        (Deck.PLANKS_DIAGONAL, 16, 5 / 8),
        (Deck.PLANKS_DIAGONAL, 24, 3 / 4),
    ],
)
def test_table_r503_1(kind: Deck, spacing: int, least: float) -> None:
    """Net thickness square to the joists and on the diagonal, joists at 16 and 24 in."""
    for thickness, holds in ((least, True), (least - 1 / 16, False)):
        found = judge_planks(
            US, "bath/floor", Planks(kind=kind, thickness=inches(thickness)), (THICK,), inches(spacing)
        )
        assert holds is not any(finding.severity == "stop" for finding in found)


@pytest.mark.parametrize(("spacing", "least"), [(450, 19), (600, 22)])
def test_as_1860_2(spacing: int, least: int) -> None:
    """19 mm sheets at 450 mm, 22 mm at 600 mm."""
    for thickness, holds in ((least, True), (least - 1, False)):
        found = judge_deck(AU, "bath/floor", Deck.CHIPBOARD, (mm(thickness),), mm(spacing))
        assert holds is not bool(found)

"""Packs are read in several tongues and on two tapes; a number that differs by more than its unit is a fault.

A ticket in Spanish was drawn at another scale, with other sizes on it, since a longer word had no room. Numbers
are compared as they are handed to the page maker, of one plan that is told to several readers.
"""

from functools import cache

import pytest

import printed_numbers as printed
from example_plans import plan_of
from firstcourse.units import Tape

EXAMPLES = ("tub-bathroom", "tiled-shower")


@cache
def site(name: str, tape: Tape, tongue: str = "en", practice: str = "us") -> dict[str, list[str]]:
    return printed.site_numbers(printed.retold(plan_of(name), tape=tape, tongue=tongue, practice=practice))


def office(name: str, tongue: str) -> dict[str, list[str]]:
    return printed.office_numbers(printed.retold(plan_of(name), tongue=tongue))


@pytest.mark.parametrize("name", EXAMPLES)
@pytest.mark.parametrize("tape", list(Tape))
def test_spanish_site_packs_have_the_same_numbers_place_by_place(name: str, tape: Tape) -> None:
    english = site(name, tape)
    assert sum(len(printed.found(text)) for texts in english.values() for text in texts) > 500
    assert printed.differing(english, site(name, tape, "es")) == []


def test_spanish_office_packs_have_the_same_numbers_place_by_place() -> None:
    assert printed.differing(office("tub-bathroom", "en"), office("tub-bathroom", "es")) == []


@pytest.mark.parametrize("name", EXAMPLES)
def test_words_of_another_trade_have_the_same_numbers(name: str) -> None:
    assert printed.differing(site(name, Tape.MM), site(name, Tape.MM, practice="uk")) == []


@pytest.mark.parametrize("name", EXAMPLES)
def test_inches_and_millimetres_are_the_same_places(name: str) -> None:
    assert printed.disagreeing(site(name, Tape.INCH), site(name, Tape.MM)) == []


def test_a_number_that_differs_is_seen() -> None:
    one = {"cuts": ['sheet, 8-5/8" from left', "2 of 3 kept"]}
    assert printed.differing(one, {"cuts": ['hoja, 8-5/8" desde la izquierda', "3 de 2 guardadas"]}) == []
    assert printed.differing(one, {"cuts": ['hoja, 8-9/16" desde la izquierda', "2 de 3"]})
    assert printed.disagreeing(one, {"cuts": ["sheet, 219 mm from left", "2 of 3 kept"]}) == []
    assert printed.disagreeing(one, {"cuts": ["sheet, 222 mm from left", "2 of 3 kept"]})
    assert printed.disagreeing(one, {"cuts": ["sheet, 219 mm from left", "2 of 4 kept"]})

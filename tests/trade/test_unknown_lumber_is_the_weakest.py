"""Southern pine of unknown grade was judged as No. 2, because the rule book held no lower grade of it.

The book holds every grade of each species group it offers, so that an unknown one is never better than a known.
"""

import datetime
import itertools
from dataclasses import replace

import pytest

from firstcourse.errors import InputValueError
from firstcourse.frames.floors import FloorInput, check_floor
from firstcourse.frames.lumber import SPECIES, UNKNOWN, grades_of, lumber
from firstcourse.frames.panels import Panel
from firstcourse.layers import Layer
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))
SIZES = ("2x4", "2x6", "2x8", "2x10", "2x12")
TILE = Layer(name="tile", thickness_in=0.375, density_kg_m3=2350)


def bending(one):
    return one.fb_psi * one.size_factor


@pytest.mark.parametrize(("size", "species"), list(itertools.product(SIZES, SPECIES)))
def test_unknown_is_no_better_than_any_grade_of_any_species(size, species):
    for unknown in (lumber(RULES, size, species), lumber(RULES, size)):
        for grade in grades_of(size):
            known = lumber(RULES, size, species, grade)
            assert bending(unknown) <= bending(known)
            assert unknown.e_psi <= known.e_psi
            assert unknown.fv_psi <= known.fv_psi
            assert unknown.fc_perp_psi <= known.fc_perp_psi


@pytest.mark.parametrize("grade", grades_of("2x10"))
def test_an_unknown_species_is_no_better_than_any_of_that_grade(grade):
    unknown = lumber(RULES, "2x10", UNKNOWN, grade)
    for species in SPECIES:
        assert bending(unknown) <= bending(lumber(RULES, "2x10", species, grade))


def test_southern_pine_of_unknown_grade_is_judged_as_no_3():
    assert lumber(RULES, "2x10", "sp").fb_psi == 475
    assert lumber(RULES, "2x10", "sp").e_psi == 1_300_000


def test_no_verdict_of_unknown_lumber_is_better_than_a_known_one():
    floor = FloorInput(
        ref="bath/floor",
        span_in=144, spacing_in=16, panel=Panel(layers=("23/32",)), layers=(TILE,),
        size="2x10", species="sp", bearing_in=1.5,
    )  # fmt: skip
    as_unknown = {check.name: check for check in check_floor(RULES, floor)}
    assert not as_unknown["bending"].holds
    for grade in grades_of("2x10"):
        for check in check_floor(RULES, replace(floor, grade=grade)):
            assert check.holds or not as_unknown[check.name].holds


def test_a_grade_that_is_not_made_in_a_size_says_so():
    with pytest.raises(InputValueError, match="2x4 alone"):
        lumber(RULES, "2x10", "dfl", "construction")


def test_unknown_is_refused_where_the_book_lacks_a_grade():
    entries = {name: entry for name, entry in RULES.entries.items() if not name.startswith("lumber.sp.no3.")}
    lacking = type(RULES)(on=RULES.on, practice=RULES.practice, entries=entries)
    with pytest.raises(InputValueError, match=r"no values for southern pine No\. 3"):
        lumber(lacking, "2x10", "sp")
    assert lumber(lacking, "2x10", "sp", "no2").fb_psi == 800

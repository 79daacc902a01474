"""AWC NDS Supplement 2018: design values of dimension lumber, sizes and factors in the rule book.

Known = read for most (Table 4A as copied in an open library, cross-checked by the code's spans); the select
structural bending value of spruce-pine-fir, the repetition and the duration factor are from memory. Values are the
printed ones, so they must be equal.
"""

import datetime

import pytest

from firstcourse.frames import beams
from firstcourse.frames.lumber import lumber
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))

PRINTED = {
    "nds-dfl-no2-fb": ("lumber.dfl.no2.fb", 900),
    "nds-dfl-no2-e": ("lumber.dfl.no2.e", 1_600_000),
    "nds-dfl-no2-fv": ("lumber.dfl.fv", 180),
    "nds-dfl-no2-fcperp": ("lumber.dfl.fc_perp", 625),
    "nds-hf-no2-fb": ("lumber.hf.no2.fb", 850),
    "nds-hf-no2-e": ("lumber.hf.no2.e", 1_300_000),
    "nds-hf-no2-fv": ("lumber.hf.fv", 150),
    "nds-hf-no2-fcperp": ("lumber.hf.fc_perp", 405),
    "nds-spf-no2-fb": ("lumber.spf.no2.fb", 875),
    "nds-spf-no2-e": ("lumber.spf.no2.e", 1_400_000),
    "nds-spf-no2-fv": ("lumber.spf.fv", 135),
    "nds-spf-no2-fcperp": ("lumber.spf.fc_perp", 425),
    "nds-dfl-no1-fb": ("lumber.dfl.no1.fb", 1000),
    "nds-dfl-no1-e": ("lumber.dfl.no1.e", 1_700_000),
    "nds-dfl-ss-fb": ("lumber.dfl.ss.fb", 1500),
    "nds-dfl-ss-e": ("lumber.dfl.ss.e", 1_900_000),
    "nds-spf-ss-fb": ("lumber.spf.ss.fb", 1250),
    "nds-sp-no2-fb-2x6": ("lumber.sp.no2.fb.2x6", 1000),
    "nds-sp-no2-fb-2x8": ("lumber.sp.no2.fb.2x8", 925),
    "nds-sp-no2-fb-2x10": ("lumber.sp.no2.fb.2x10", 800),
    "nds-sp-no2-fb-2x12": ("lumber.sp.no2.fb.2x12", 750),
    "nds-sp-no2-e": ("lumber.sp.no2.e", 1_400_000),
    "nds-dfl-no3-fb": ("lumber.dfl.no3.fb", 525),
    "nds-dfl-no3-e": ("lumber.dfl.no3.e", 1_400_000),
    "nds-dfl-stud-fb": ("lumber.dfl.stud.fb", 700),
    "nds-dfl-stud-e": ("lumber.dfl.stud.e", 1_400_000),
    "nds-hf-no3-fb": ("lumber.hf.no3.fb", 500),
    "nds-hf-no3-e": ("lumber.hf.no3.e", 1_200_000),
    "nds-hf-stud-fb": ("lumber.hf.stud.fb", 675),
    "nds-hf-stud-e": ("lumber.hf.stud.e", 1_200_000),
    "nds-spf-no3-fb": ("lumber.spf.no3.fb", 500),
    "nds-spf-no3-e": ("lumber.spf.no3.e", 1_200_000),
    "nds-spf-stud-fb": ("lumber.spf.stud.fb", 675),
    "nds-spf-stud-e": ("lumber.spf.stud.e", 1_200_000),
    "nds-hf-ss-fb": ("lumber.hf.ss.fb", 1400),
    "nds-hf-ss-e": ("lumber.hf.ss.e", 1_600_000),
    "nds-hf-no1-fb": ("lumber.hf.no1.fb", 975),
    "nds-hf-no1-e": ("lumber.hf.no1.e", 1_500_000),
    "nds-cf-stud-2x4": ("lumber.size_factor.stud.2x4", 1.1),
    "nds-cf-fb-2x4": ("lumber.size_factor.2x4", 1.5),
    "nds-cf-fb-2x6": ("lumber.size_factor.2x6", 1.3),
    "nds-cf-fb-2x8": ("lumber.size_factor.2x8", 1.2),
    "nds-cf-fb-2x10": ("lumber.size_factor.2x10", 1.1),
    "nds-cf-fb-2x12": ("lumber.size_factor.2x12", 1.0),
    "nds-cr": ("lumber.repetitive_factor", 1.15),
    "nds-cd-occupancy": ("lumber.duration.floor", 1.0),
    "lumber-depth-2x6": ("lumber.depth.2x6", 5.5),
    "lumber-depth-2x8": ("lumber.depth.2x8", 7.25),
    "lumber-depth-2x10": ("lumber.depth.2x10", 9.25),
    "lumber-depth-2x12": ("lumber.depth.2x12", 11.25),
}


@pytest.mark.parametrize("printed", PRINTED.values(), ids=PRINTED.keys())
def test_rule_has_the_printed_value(printed):
    rule, value = printed
    assert RULES.number(rule) == value


METRIC = {  # Fb in MPa of 2x4, 2x6, 2x8, 2x10, 2x12, then E in GPa, as a metric edition prints them
    "ss": ((16.2, 14.5, 13.4, 11.7, 11.0), 12.4),
    "no1": ((10.3, 9.3, 8.6, 7.2, 6.9), 11.0),
    "no2": ((7.6, 6.9, 6.4, 5.5, 5.2), 9.7),
    "no3": ((4.5, 4.0, 3.6, 3.3, 3.1), 9.0),
    "stud": ((4.5, 4.0, 3.6, 3.3, 3.1), 9.0),
}


@pytest.mark.parametrize("grade", METRIC)
def test_southern_pine_has_the_printed_metric_values(grade):
    """One decimal is printed, so half of one is exact."""
    bending, stiffness = METRIC[grade]
    for size, printed in zip(("2x4", "2x6", "2x8", "2x10", "2x12"), bending, strict=True):
        assert lumber(RULES, size, "sp", grade).fb_psi / 145.038 == pytest.approx(printed, abs=0.051)
    assert lumber(RULES, "2x8", "sp", grade).e_psi / 145_038 == pytest.approx(stiffness, abs=0.051)


def test_wide_stud_grade_has_the_values_of_no_3():
    wide, third = lumber(RULES, "2x10", "hf", "stud"), lumber(RULES, "2x10", "hf", "no3")
    assert (wide.fb_psi, wide.size_factor, wide.e_psi) == (third.fb_psi, third.size_factor, third.e_psi)


def test_what_is_from_memory_says_so():
    for rule in (
        "lumber.spf.ss.fb",
        "lumber.dfl.utility.fb.2x4",
        "lumber.repetitive_factor",
        "lumber.duration.floor",
    ):
        assert RULES.entry(rule).read == "memory"


@pytest.mark.parametrize("size", ["2x6", "2x8", "2x10", "2x12"])
def test_southern_pine_has_its_size_effect_in_its_values(size):
    assert lumber(RULES, size, "sp", "no2").size_factor == 1.0


def test_section_of_a_2x10():
    """section-2x10-s and section-2x10-i, Table 1B: two decimals are printed."""
    assert beams.section_modulus(1.5, 9.25) == pytest.approx(21.39, abs=0.005)
    assert beams.second_moment(1.5, 9.25) == pytest.approx(98.93, abs=0.005)

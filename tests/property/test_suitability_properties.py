"""What can never be: a deeper joist failing where a shallower passed, or a longer span or more load helping."""

import datetime
import itertools
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.rules import load_rules
from firstcourse.suitability import FloorInput, Layer, Panel, floor_remedies
from firstcourse.suitability.floors import check_floor

RULES = load_rules(datetime.date(2026, 11, 25))
SIZES = ("2x6", "2x8", "2x10", "2x12")


@st.composite
def floors(draw):
    return FloorInput(
        where="floor",
        span_in=draw(st.integers(60, 260)),
        spacing_in=draw(st.sampled_from((12, 16, 19.2, 24))),
        size=draw(st.sampled_from(SIZES)),
        species=draw(st.sampled_from(("dfl", "hf", "spf", "sp", "unknown"))),
        grade="no2",
        panel=Panel(layers=draw(st.sampled_from((("19/32",), ("23/32",), ("19/32", "19/32"))))),
        layers=(Layer(name="tile", thickness_in=draw(st.sampled_from((0.25, 0.5, 1.0))), density_kg_m3=2350),),
        bearing_in=draw(st.sampled_from((1.5, 3.5))),
    )


def passing(floor):
    return [check.name for check in check_floor(RULES, floor) if check.holds]


def never_helps(worse, better):
    assert set(passing(worse)) <= set(passing(better))


@settings(deadline=None, max_examples=60)
@given(floors(), st.integers(1, 40))
def test_longer_span_never_helps(floor, more):
    never_helps(replace(floor, span_in=floor.span_in + more), floor)


@settings(deadline=None, max_examples=60)
@given(floors(), st.floats(0.1, 30))
def test_more_dead_load_never_helps(floor, more):
    never_helps(replace(floor, extra_dead_psf=more), floor)


@settings(deadline=None, max_examples=60)
@given(floors())
def test_deeper_joist_never_fails_where_a_shallower_passed(floor):
    for shallow, deep in itertools.pairwise(SIZES):
        never_helps(replace(floor, size=shallow), replace(floor, size=deep))


@settings(deadline=None, max_examples=60)
@given(floors())
def test_closer_joists_and_sisters_never_hurt(floor):
    never_helps(floor, replace(floor, spacing_in=floor.spacing_in / 2))
    never_helps(floor, replace(floor, plies=2))


@settings(deadline=None, max_examples=25)
@given(floors())
def test_remedies_said_to_pass_do_pass(floor):
    for remedy in floor_remedies(RULES, floor):
        assert remedy.passes == all(check.holds for check in remedy.checks)

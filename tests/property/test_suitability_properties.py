"""What can never be: a deeper joist failing where a shallower passed, or a longer span or more load helping."""

import datetime
import itertools
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.frames.ceilings import Above, CeilingInput, check_ceiling
from firstcourse.frames.floors import FloorInput, check_floor, floor_joist
from firstcourse.frames.panels import Panel
from firstcourse.frames.remedies import floor_remedies
from firstcourse.frames.walls import SteelStud, Studs, check_studs
from firstcourse.layers import Layer
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))
SIZES = ("2x6", "2x8", "2x10", "2x12")


@st.composite
def floors(draw):
    return FloorInput(
        ref="bath/floor",
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
    never_helps(replace(floor, other=(("membrane", more),)), floor)


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
        assert remedy.passes == all(check.stands for check in remedy.checks)


@st.composite
def runs(draw):
    """A floor whose joists run over two or three spans, the first the longest."""
    floor = draw(floors())
    others = draw(st.lists(st.floats(0.3, 1.0), min_size=1, max_size=2))
    spans = (float(floor.span_in), *(floor.span_in * share for share in others))
    return replace(floor, span_in=spans[0], run_in=spans)


def stretched(floor, factor):
    spans = tuple(span * factor for span in floor.run_in)
    return replace(floor, span_in=max(spans), run_in=spans)


@settings(deadline=None, max_examples=40)
@given(runs(), st.floats(1.01, 1.5), st.floats(0.1, 30))
def test_a_longer_run_and_more_load_never_help(floor, factor, more):
    never_helps(stretched(floor, factor), floor)
    never_helps(replace(floor, other=(("membrane", more),)), floor)
    for shallow, deep in itertools.pairwise(SIZES):
        never_helps(replace(floor, size=shallow), replace(floor, size=deep))


@settings(deadline=None, max_examples=40)
@given(runs())
def test_knowing_less_of_a_run_never_passes_more(floor):
    """The longest span alone is judged at least as hard in bending and deflection."""
    known = {check.name: check for check in check_floor(RULES, floor)}
    less = {check.name: check for check in check_floor(RULES, replace(floor, run_in=(), continuous=True))}
    for name in ("live_deflection_finish", "live_deflection_code", "total_deflection"):
        assert known[name].found >= less[name].found * (1 - 1e-9)
    assert known["bending"].found <= less["bending"].found * (1 + 1e-9)


@st.composite
def ceilings(draw):
    return CeilingInput(
        ref="bath/ceiling",
        span_in=draw(st.integers(60, 260)),
        spacing_in=draw(st.sampled_from((12, 16, 24))),
        size=draw(st.sampled_from(SIZES)),
        species=draw(st.sampled_from(("dfl", "hf", "spf", "sp", "unknown"))),
        grade="no2",
        above=draw(st.sampled_from(tuple(Above))),
        layers=(Layer(name="tile", thickness_in=draw(st.sampled_from((0.25, 0.5, 1.0))), density_kg_m3=2350),),
    )


def held(checks):
    return {check.name for check in checks if check.holds}


@settings(deadline=None, max_examples=60)
@given(ceilings(), st.integers(1, 40), st.floats(0.1, 2.0))
def test_a_ceiling_never_gains_by_span_mass_or_less_depth(ceiling, more, thicker):
    here = held(check_ceiling(RULES, ceiling))
    assert held(check_ceiling(RULES, replace(ceiling, span_in=ceiling.span_in + more))) <= here
    tile = ceiling.layers[0]
    heavy = replace(ceiling, layers=(replace(tile, thickness_in=tile.thickness_in + thicker),))
    assert held(check_ceiling(RULES, heavy)) <= here
    for shallow, deep in itertools.pairwise(SIZES):
        better = held(check_ceiling(RULES, replace(ceiling, size=deep)))
        assert held(check_ceiling(RULES, replace(ceiling, size=shallow))) <= better


@settings(deadline=None, max_examples=60)
@given(
    st.floats(60, 240),
    st.floats(8, 24),
    st.floats(1.5, 8),
    st.integers(18, 97),
    st.floats(0.1, 60),
    st.integers(1, 40),
)
def test_studs_never_gain_by_height_spacing_thinner_steel_or_less_depth(height, spacing, depth, mils, more, mil):
    def checked(**changes):
        steel = SteelStud(depth_in=changes.get("depth", depth), mils=changes.get("mils", mils + mil))
        studs = Studs(
            height_in=changes.get("height", height), spacing_in=changes.get("spacing", spacing), steel=steel
        )
        return held(check_studs(RULES, studs))

    here = checked()
    assert checked(height=height + more) <= here
    assert checked(spacing=spacing + more) <= here
    assert checked(mils=mils) <= here
    assert here <= checked(depth=depth + more / 10)


NEWTON, MM = 4.4482216152605, 25.4
PASCAL_PER_PSF = NEWTON * 1e6 / (12 * MM) ** 2


@settings(deadline=None, max_examples=60)
@given(floors())
def test_metric_and_inch_agree(floor):
    """The whole joist worked again in N and mm; both factors are exact, so only floating point may differ."""
    joist = floor_joist(RULES, floor)
    wood = joist.wood
    span, spacing = joist.span_in * MM, joist.spacing_in * MM
    width, depth = wood.width_in * MM, wood.depth_in * MM
    stress = NEWTON / MM**2
    live, dead = (psf * PASCAL_PER_PSF / 1e6 * spacing for psf in (joist.live_psf, joist.dead_psf))
    stiffness = wood.e_psi * stress * width * depth**3 / 12
    found = {check.name: check.found for check in check_floor(RULES, floor)}
    assert found["live_deflection_code"] == pytest.approx(384 * stiffness / (5 * live * span**3), rel=1e-9)
    assert found["total_deflection"] == pytest.approx(384 * stiffness / (5 * (live + dead) * span**3), rel=1e-9)
    bending = (live + dead) * span**2 / 8 / (width * depth**2 / 6)
    assert found["bending"] * stress == pytest.approx(bending, rel=1e-9)
    shear = 1.5 * (live + dead) * (span / 2 - depth) / (width * depth)
    assert found["shear"] * stress == pytest.approx(shear, rel=1e-9)

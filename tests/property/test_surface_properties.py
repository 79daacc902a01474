"""Surfaces: what may never turn better by being made worse, and the same readings in other places and units."""

import datetime
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.grounds import Doorway, Fitting
from firstcourse.grounds.build_up import BuildUp, judge_build_up
from firstcourse.grounds.flatness import Spot, judge_flatness, tolerance_for
from firstcourse.grounds.levelling import floor_fillings
from firstcourse.grounds.plumb import Corner, Stance, corner_taper_mm, furring_mm, judge_stance
from firstcourse.layers import BOND_COAT, TILE, Layer
from firstcourse.rules import load_rules
from firstcourse.units import Tape

RULES = load_rules(datetime.date(2026, 11, 25))
LARGE = tolerance_for(RULES, 600)
heights = st.lists(st.integers(-20, 20), min_size=9, max_size=9)
quick = settings(max_examples=40, deadline=None)


def grid(values):
    return tuple(
        Spot(u_mm=600.0 * (n % 3), v_mm=600.0 * (n // 3), height_mm=float(each)) for n, each in enumerate(values)
    )


@quick
@given(heights)
def test_every_way_to_fill_passes_and_never_takes_away_what_it_pours(values):
    spots = grid(values)
    if judge_flatness(spots, LARGE).passes:
        return
    for filling in floor_fillings(RULES, spots, LARGE, 4.0):
        if filling.remedy.names == ("smaller_tile",):
            continue
        assert filling.remedy.passes and filling.volume_l >= 0
        assert (filling.bags - 1) * RULES.number("surface.fill.yield") < filling.volume_l + 1e-6
        assert min(filling.depths_mm) >= (-3.176 if filling.remedy.names == ("grind",) else -1e-6)


@quick
@given(heights, st.integers(1, 10))
def test_a_lower_low_never_needs_less_to_pour_level(values, deeper):
    lowest = min(range(9), key=lambda i: values[i])
    worse = [each - deeper if i == lowest else each for i, each in enumerate(values)]
    one, other = (
        next(
            each.volume_l
            for each in floor_fillings(RULES, grid(rows), LARGE, 4.0)
            if each.remedy.names == ("level_out",)
        )
        for rows in (values, worse)
    )
    assert other >= one


@quick
@given(heights)
def test_a_smaller_tile_never_fails_where_a_large_one_passed(values):
    # Beyond the short straightedge, whose length differs; a long one of either passes or fails by its limit alone.
    spots = tuple(Spot(u_mm=2 * s.u_mm, v_mm=2 * s.v_mm, height_mm=s.height_mm / 4) for s in grid(values))
    if judge_flatness(spots, LARGE).passes:
        assert judge_flatness(spots, tolerance_for(RULES, 300)).passes


@quick
@given(st.floats(-30, 30), st.floats(0, 30), st.floats(0.0, 1.0))
def test_a_greater_lean_never_asks_less_furring(lean, more, share):
    stance = Stance(ref="bath/wall/A-B", tape=Tape.MM, height_mm=2400, bottom_mm=0, top_mm=2400)
    greater = lean + more if lean >= 0 else lean - more
    assert furring_mm(stance, greater, 2400 * share) >= furring_mm(stance, lean, 2400 * share) - 1e-9
    assert furring_mm(stance, lean, 2400 * share) >= 0


@quick
@given(st.floats(-30, 30), st.floats(45, 135), st.floats(100, 2400))
def test_taper_is_told_alike_on_either_tape(lean, angle, tiled):
    corner = Corner(name="B", wall="B-C", lean_mm=lean, height_mm=2400, angle_deg=angle)
    stance = Stance(
        ref="bath/wall/A-B",
        tape=Tape.INCH,
        height_mm=2400,
        bottom_mm=0,
        top_mm=tiled,
        corners=(corner,),
        over="none",
    )
    inch, metric = (judge_stance(RULES, replace(stance, tape=tape))[1] for tape in Tape)
    assert inch == metric
    assert abs(corner_taper_mm(corner, tiled)) >= abs(lean) * tiled / 2400 - 1e-9


@quick
@given(st.floats(0, 2), st.floats(0, 1), st.floats(0, 3), st.floats(0, 3))
def test_a_thicker_layer_never_opens_a_gap_under_a_door(thickness, more, door, flange):
    def codes(tile):
        surface = BuildUp(
            ref="bath/wall/A-B",
            tape=Tape.INCH,
            layers=(
                Layer(name=BOND_COAT, thickness_in=0.1, density_kg_m3=1600),
                Layer(name=TILE, thickness_in=tile, density_kg_m3=2350),
            ),
            area_m2=1.0,
            doorways=(Doorway(ref="bath/floor/door/d", other_floor_in=0.5, door_underside_in=door),),
            flanges=(Fitting(ref="bath/floor/opening/flange", top_in=flange),),
        )
        return surface, {finding.code for finding in judge_build_up(RULES, surface)[0]}

    thin, found = codes(thickness)
    thick, after = codes(thickness + more)
    if "SUI-603" in found:
        assert "SUI-603" in after
    mass = [judge_build_up(RULES, each)[1][1].result.value for each in (thin, thick)]
    assert mass[1] >= mass[0]
    assert mass[0] == pytest.approx(0.0254 * (0.1 * 1600 + thickness * 2350), abs=0.051)

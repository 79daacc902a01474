"""Readings of a floor or a wall: flat or not, where it is high, and what would make it flat."""

import datetime
import itertools
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.errors import InputValueError
from firstcourse.findings import Severity
from firstcourse.frames import remedy_workings
from firstcourse.grounds.flat_enough import ReadGround, judge_ground
from firstcourse.grounds.flatness import Spot, best_line, best_plane, judge_flatness, least_zone, tolerance_for
from firstcourse.grounds.gaps import Gap, judge_gaps
from firstcourse.grounds.levelling import fill_bags, mean_depth_mm
from firstcourse.grounds.straightening import corrections_mm
from firstcourse.rules import load_rules
from firstcourse.units import Tape
from said import all_said, worked

RULES = load_rules(datetime.date(2026, 11, 25))
UK = load_rules(datetime.date(2026, 11, 25), "uk")
INCH = 25.4


def grid(heights, step=600.0):
    return tuple(
        Spot(u_mm=j * step, v_mm=i * step, height_mm=float(height))
        for i, row in enumerate(heights)
        for j, height in enumerate(row)
    )


def floor(spots, edge_mm=600.0, tape=Tape.MM):
    return ReadGround(
        ref="bath/floor",
        is_floor=True,
        tape=tape,
        spots=spots,
        tile_edge_mm=edge_mm,
        area_m2=4.0,
    )


def wall(faces_mm, edge_mm=600.0, tape=Tape.INCH):
    spots = tuple(Spot(u_mm=i * 16 * INCH, v_mm=0.0, height_mm=face) for i, face in enumerate(faces_mm))
    return ReadGround(
        ref="bath/wall/A-B",
        is_floor=False,
        tape=tape,
        spots=spots,
        tile_edge_mm=edge_mm,
        area_m2=6.0,
        string=True,
    )


def in_words(done, formula, tape=Tape.INCH):
    return [worked(working, tape) for working in done.workings if working.formula == f"ground-{formula}"]


HUMP = grid([[0, 0, 0], [0, 7, 0], [0, 0, 0]])


def test_a_flat_floor_has_its_map_and_no_finding():
    done = judge_ground(RULES, floor(grid([[0, 3, 6], [3, 6, 9]], step=300.0)))
    assert all_said(done.findings) == () and done.remedies == ()
    (chart,) = in_words(done, "map", Tape.MM)
    assert float(chart.result) == pytest.approx(0, abs=0.005)
    edges = in_words(done, "straightedge")
    assert len(edges) == 2 and all(edge.values["limit"].endswith(": holds") for edge in edges)


def test_readings_too_far_apart_do_not_pass_for_flat():
    done = judge_ground(RULES, floor(grid([[0, 3, 6], [3, 6, 9]])))
    (note,) = all_said(done.findings, Tape.MM)
    assert (note.code, note.severity) == ("SUI-404", Severity.NOTE) and "under 610 mm" in note.message
    assert [f"{edge.result} {edge.unit}" for edge in in_words(done, "straightedge")][1] == "cannot tell"


def test_a_hump_is_found_mapped_and_mended_by_every_way_that_passes():
    done = judge_ground(RULES, floor(HUMP))
    told = all_said(done.findings, Tape.MM)
    assert [finding.code for finding in told] == ["SUI-401", "SUI-403", "SUI-404"]
    assert told[0].severity is Severity.FIX
    assert "highest +6 mm at left 600 mm out 600 mm" in told[1].message
    # A gap of 7 mm against 1/8 in, said once.
    assert (told[0].measured, told[0].limit) == ("7 mm", "at most 3.17 mm")
    assert told[0].remedy.startswith("By computation: ") and " Or: " in told[0].remedy
    assert told[0].remedy.endswith("have old layers sampled for asbestos and lead first.")
    in_inches = all_said(judge_ground(RULES, replace(floor(HUMP), tape=Tape.INCH)).findings)[0]
    assert (in_inches.measured, in_inches.limit) == ('1/4"', 'at most 1/8"')
    assert {option.names[0] for option in done.remedies if option.passes} == {"patch", "level_out", "grind"}
    small = next(option for option in done.remedies if option.names == ("smaller_tile",))
    assert not small.passes and small.still_failing == ("long_straightedge",)
    assert done.remedies[-1] is small


def test_grinding_saves_compound_and_levelling_costs_height():
    done = judge_ground(RULES, floor(HUMP))
    volume = {}
    for name in ("patch", "grind", "level_out"):
        (told,) = in_words(done, name, Tape.MM)
        volume[name] = float(told.result)
    assert volume["grind"] < volume["patch"] < volume["level_out"]
    height = {option.names[0]: option.height_in for option in done.remedies}
    assert height["patch"] == height["grind"] == 0 and height["level_out"] == pytest.approx(0.125)


def test_a_smaller_tile_may_be_enough():
    done = judge_ground(RULES, floor(grid([[0, 0, 0], [0, 5, 0], [0, 0, 0]])))
    assert next(o for o in done.remedies if o.names == ("smaller_tile",)).passes
    assert judge_ground(RULES, floor(grid([[0, 0, 0], [0, 5, 0], [0, 0, 0]]), edge_mm=300)).remedies == ()


def test_british_practice_asks_the_finished_tolerance_of_the_ground():
    over = judge_ground(UK, floor(grid([[0, 0, 0], [0, 4, 0], [0, 0, 0]])))
    assert all_said(over.findings)[0].rule == "surface.finished.flatness"
    assert all_said(over.findings, Tape.MM)[0].limit == "at most 3 mm"
    assert all_said(judge_ground(UK, floor(grid([[0, 0, 0], [0, 3, 0], [0, 0, 0]]))).findings) == ()


def test_a_wall_handed_over_in_tolerance_is_told_from_a_bad_one():
    bowed, bad = (all_said(judge_ground(UK, wall([0, 0, -gap, 0, 0])).findings, Tape.MM)[0] for gap in (4.0, 6.0))
    assert "handed over as flat to 5 mm" in bowed.message and "handed over" not in bad.message


def test_a_bowed_wall_lists_every_stud():
    done = judge_ground(RULES, wall([0, 0, -3 / 16 * INCH, 0, 0]))
    assert [finding.code for finding in all_said(done.findings)] == ["SUI-401", "SUI-403", "SUI-404"]
    (shim,) = in_words(done, "shim")
    shims = shim.values
    assert shims["stud at 2' 8\""] == 'shim 3/16"' and shims['stud at 0"'] == "leave"
    assert done.remedies[0].names == ("shim",) and done.remedies[0].passes
    planed = next(option for option in done.remedies if option.names == ("plane_down",))
    assert planed.still_failing[-1] == "too_much" and not planed.passes
    (plane,) = in_words(done, "plane_down")
    assert plane.argument[0].endswith("more than may be shimmed or planed off.")
    assert plane.values["limit"] == 'at most 1/8"'


def test_a_proud_stud_is_planed_down_where_that_is_little():
    done = judge_ground(RULES, wall([0, 0, 1 / 8 * INCH + 0.5, 0, 0]))
    planed = next(option for option in done.remedies if option.names == ("plane_down",))
    (told,) = [worked(one) for one in remedy_workings("bath/wall/A-B", [planed], "ground-remedy")]
    assert planed.passes and told.title.startswith("Plane the proud studs down to the deepest: 1 stud,")


def test_a_wall_read_at_two_heights_has_a_plane():
    spots = tuple(
        Spot(u_mm=u, v_mm=v, height_mm=-5.0 if (u, v) == (800, 1200) else 0.0)
        for u in (0, 400, 800, 1200, 1600)
        for v in (300, 1200)
    )
    ground = ReadGround(
        ref="bath/wall/A-B",
        is_floor=False,
        tape=Tape.MM,
        spots=spots,
        tile_edge_mm=600,
        area_m2=4.0,
        string=False,
    )
    (shims,) = in_words(judge_ground(RULES, ground), "shim", Tape.MM)
    assert shims.values["stud at 800 mm"].endswith("shim 5 mm at 1200 mm up")


def test_inch_and_metric_readings_agree():
    metric = judge_ground(RULES, floor(HUMP, tape=Tape.MM))
    inch = judge_ground(RULES, floor(HUMP, tape=Tape.INCH))
    assert [o.names for o in metric.remedies] == [o.names for o in inch.remedies]
    assert metric.workings == inch.workings


@pytest.mark.parametrize(
    ("reach_in", "gap_in", "edge_mm", "code"),
    [
        (120, 0.1875, 600, "SUI-401"),
        (120, 0.1875, 300, None),
        (24, 0.09375, 600, "SUI-402"),
        (24, 0.0625, 600, None),
        (24, 0.09375, 300, None),
        (12, 0.09375, 300, "SUI-402"),
        (72, 0.125, 600, None),
    ],
)
def test_a_gap_is_held_against_its_straightedge(reach_in, gap_in, edge_mm, code):
    gap = Gap(place="door", reach_mm=reach_in * INCH, gap_mm=gap_in * INCH)
    findings, working = judge_gaps(RULES, "bath/wall/A-B", (gap,), edge_mm, read=True)
    assert [finding.code for finding in findings] == ([] if code is None else [code])
    assert ("DOES NOT HOLD" in worked(working).values["1. door"]) is bool(code)


heights = st.lists(st.integers(-20, 20), min_size=9, max_size=9)


@settings(max_examples=60, deadline=None)
@given(heights, st.floats(-0.02, 0.02), st.floats(-0.02, 0.02))
def test_a_slope_changes_no_verdict(values, slope_u, slope_v):
    flat = grid([values[:3], values[3:6], values[6:]])
    sloped = tuple(
        Spot(u_mm=s.u_mm, v_mm=s.v_mm, height_mm=s.height_mm + slope_u * s.u_mm + slope_v * s.v_mm) for s in flat
    )
    tolerance = tolerance_for(RULES, 600)
    one, other = judge_flatness(flat, tolerance), judge_flatness(sloped, tolerance)
    assert one.worst_long_mm == pytest.approx(other.worst_long_mm, abs=1e-5)
    assert least_zone(flat)[1] == pytest.approx(least_zone(sloped)[1], abs=1e-6)


@settings(max_examples=60, deadline=None)
@given(heights)
def test_the_least_zone_is_never_wider_than_that_of_least_squares(values):
    spots = grid([values[:3], values[3:6], values[6:]])
    plane, width = least_zone(spots)
    off = [s.height_mm - plane.height_at(s.u_mm, s.v_mm) for s in spots]
    squares = [s.height_mm - best_plane(spots).height_at(s.u_mm, s.v_mm) for s in spots]
    assert max(off) - min(off) == pytest.approx(width, abs=1e-6)
    assert width <= max(squares) - min(squares) + 1e-6


@settings(max_examples=60, deadline=None)
@given(st.lists(st.floats(-10, 10), min_size=3, max_size=8), st.booleans())
def test_corrected_studs_stand_in_one_line(faces, plane_down):
    spots = [Spot(u_mm=i * 400.0, v_mm=0.0, height_mm=face) for i, face in enumerate(faces)]
    by = corrections_mm(spots, plane_down=plane_down, string=True)
    after = [face + each for face, each in zip(faces, by, strict=True)]
    steps = [b - a for a, b in itertools.pairwise(after)]
    assert max(steps) - min(steps) < 1e-5
    assert all(each <= 1e-6 for each in by) if plane_down else all(each >= -1e-6 for each in by)


def test_depths_off_a_grid_are_weighed_by_triangles():
    corners = grid([[2, 2], [2, 2]])
    middle = Spot(u_mm=300, v_mm=300, height_mm=8.0)
    mean, how = mean_depth_mm((*corners, middle), (2, 2, 2, 2, 8))
    # A pyramid 6 mm high over a slab of 2 mm.
    assert mean == pytest.approx(4.0) and how == "triangles"
    again, _ = mean_depth_mm((*corners, middle, middle), (2, 2, 2, 2, 7, 9))
    assert again == pytest.approx(mean)


def test_bags_are_whole():
    assert fill_bags(RULES, 13.0) == 1
    assert fill_bags(RULES, 13.1) == 2


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: best_plane([Spot(u_mm=i, v_mm=i, height_mm=0) for i in range(4)]),
        lambda: best_plane([]),
        lambda: best_line([]),
        lambda: best_line([Spot(u_mm=1, v_mm=i, height_mm=0) for i in range(4)]),
        lambda: mean_depth_mm([Spot(u_mm=i, v_mm=i, height_mm=0) for i in range(4)], (1, 2, 3, 4)),
        lambda: judge_flatness(grid([[0] * 11] * 11), tolerance_for(RULES, 300)),
    ],
)
def test_readings_that_fix_nothing_are_refused(wrong):
    with pytest.raises(InputValueError):
        wrong()

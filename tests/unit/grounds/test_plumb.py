"""A wall that leans and a floor that rises: what to fur, the tub lap, and cuts that taper."""

import datetime
import math
from dataclasses import replace

import pytest

from firstcourse.findings import Severity
from firstcourse.grounds.plumb import Corner, Stance, corner_taper_mm, furring_mm, judge_stance, plumb_limit_mm
from firstcourse.rules import load_rules
from firstcourse.units import Tape
from said import all_said, worked

RULES = load_rules(datetime.date(2026, 11, 25))
INCH = 25.4
WALL = Stance(
    ref="bath/wall/A-B",
    tape=Tape.INCH,
    height_mm=96 * INCH,
    bottom_mm=15 * INCH,
    top_mm=84 * INCH,
    over="tub",
    ends=("A", "B"),
)
SQUARE = Corner(name="B", wall="B-C", lean_mm=0.0, height_mm=96 * INCH, angle_deg=90.0)


def codes(stance):
    return [finding.code for finding in judge_stance(RULES, stance)[0]]


def test_an_eighth_in_eight_feet_is_allowed():
    assert plumb_limit_mm(RULES, 96 * INCH) == pytest.approx(INCH / 8)
    assert "SUI-411" not in codes(replace(WALL, lean_mm=INCH / 8))
    # A 95-7/8 in wall may lean a hair less, which no tape shows.
    assert "SUI-411" not in codes(replace(WALL, height_mm=95.875 * INCH, lean_mm=INCH / 8))
    assert "SUI-411" in codes(replace(WALL, lean_mm=-INCH * 3 / 16))


def test_a_wall_that_leans_in_is_furred_at_its_foot_and_covers_the_rim():
    findings, workings = judge_stance(RULES, replace(WALL, lean_mm=3 / 8 * INCH))
    plumb, lap = all_said(findings)
    assert plumb.measured == '3/8" over 8\' 0"' and "leans into the room" in plumb.message
    # 3/8 in less 15/96 and 84/96 of it: 0.316 and 0.047 in, rounded up.
    assert '3/8" at the lowest board edge and 1/16" at the highest' in plumb.remedy
    # 3/8 in over 69 of 96 in: 0.27 in.
    assert lap.code == "SUI-412" and '1/4" nearer' in lap.message and '5/16" more of the rim' in lap.message
    told = worked(workings[0], Tape.MM)
    assert told.result == "9.53" and "DOES NOT HOLD" in told.values["limit"]


def test_a_wall_that_leans_out_is_furred_at_its_top():
    plumb, lap = all_said(judge_stance(RULES, replace(WALL, lean_mm=-3 / 8 * INCH))[0])
    assert '1/16" at the lowest board edge and 3/8" at the highest' in plumb.remedy
    assert "back from the tub" in lap.message and "farther back" in lap.message


def test_a_wall_over_the_floor_has_no_lap():
    assert codes(replace(WALL, lean_mm=3 / 8 * INCH, over="floor")) == ["SUI-411"]


def test_furring_leaves_a_plumb_face():
    for lean in (8.0, -8.0):
        face = [lean * share + furring_mm(WALL, lean, share * WALL.height_mm) for share in (0, 0.3, 1)]
        assert face == pytest.approx([max(lean, 0.0)] * 3)


def test_the_other_wall_tapers_the_last_cut():
    leaning = replace(SQUARE, lean_mm=3 / 8 * INCH)
    (cut,) = all_said(judge_stance(RULES, replace(WALL, corners=(leaning,)))[0])
    assert (cut.code, cut.severity) == ("SUI-413", Severity.FIX)
    assert cut.measured == '1/4" over 5\' 9" of tile' and "narrower towards the top" in cut.message
    little = replace(SQUARE, lean_mm=-1 / 8 * INCH)
    # What does not show is no finding.
    assert judge_stance(RULES, replace(WALL, corners=(little,)))[0] == ()


def test_a_corner_off_square_tapers_more():
    leaning = replace(SQUARE, lean_mm=-8.0, height_mm=2400.0)
    assert corner_taper_mm(leaning, 1200.0) == pytest.approx(4.0)
    blunt = replace(leaning, angle_deg=135.0)
    assert corner_taper_mm(blunt, 1200.0) == pytest.approx(4.0 * math.sqrt(2))


def test_a_floor_out_of_level_tapers_the_first_course():
    floor = replace(WALL, over="floor", bottom_mm=0.0)
    (level,) = all_said(judge_stance(RULES, replace(floor, rise_mm=5 / 16 * INCH))[0])
    assert (level.code, level.severity) == ("SUI-414", Severity.FIX)
    assert "from corner A to corner B" in level.message
    assert 'cut 5/16" higher at corner A than at corner B' in level.message
    assert judge_stance(RULES, replace(floor, rise_mm=-1 / 16 * INCH))[0] == ()


def test_inch_and_metric_agree():
    inch = judge_stance(RULES, replace(WALL, lean_mm=9.525, corners=(replace(SQUARE, lean_mm=9.525),)))
    metric = judge_stance(
        RULES, replace(WALL, tape=Tape.MM, lean_mm=9.525, corners=(replace(SQUARE, lean_mm=9.525),))
    )
    assert [f.code for f in inch[0]] == [f.code for f in metric[0]]
    assert inch[1] == metric[1]

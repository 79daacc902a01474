"""Layers and what meets their height: doorways, doors, flanges, drains, valves, trim; mass on the backing."""

import datetime
from dataclasses import replace

import pytest

from firstcourse.findings import Severity
from firstcourse.grounds import Doorway, Fitting
from firstcourse.grounds.build_up import BuildUp, judge_build_up
from firstcourse.grounds.fittings import ValveWindow
from firstcourse.layers import BOND_COAT, TILE, Layer
from firstcourse.rules import load_rules
from firstcourse.units import Tape
from said import all_said, said, worked

DAY = datetime.date(2026, 11, 25)
RULES = load_rules(DAY)
FLOOR = BuildUp(
    ref="bath/floor",
    tape=Tape.INCH,
    layers=(
        Layer(name="board", thickness_in=0.25, density_kg_m3=1300, of="board"),
        Layer(name=BOND_COAT, thickness_in=0.125, density_kg_m3=1600, of="mortar"),
        Layer(name=TILE, thickness_in=0.375, density_kg_m3=2350, of="tile"),
    ),
    area_m2=4.0,
)


def found(surface, rules=RULES):
    return all_said(judge_build_up(rules, surface)[0])


def in_words(surface, tape=Tape.INCH, rules=RULES):
    return {working.formula: worked(working, tape) for working in judge_build_up(rules, surface)[1]}


def at(**changes):
    return found(replace(FLOOR, **changes))


def test_height_and_mass_are_summed():
    told, metric = in_words(FLOOR), in_words(FLOOR, Tape.MM)["height-mass"]
    assert told["height-build_up"].result == "0.750"
    assert told["height-build_up"].unit.endswith('3/4"')
    # 0.25 in x 1300 + 0.125 in x 1600 + 0.375 in x 2350, each in metres.
    assert float(metric.result) == pytest.approx(35.7, abs=0.05)
    assert metric.values["whole surface"] == "143 kg"
    assert told["height-mass"].values["whole surface"] == "315 lb"
    assert found(FLOOR) == ()


def test_a_metric_tape_is_told_metric_sums():
    metric = replace(
        FLOOR,
        tape=Tape.MM,
        doorways=(Doorway(ref="bath/floor/door/door", other_floor_in=0.5, door_underside_in=1.0),),
    )
    told = in_words(metric, Tape.MM)
    height = told["height-build_up"]
    assert (height.result, height.unit) == ("19.05", "mm, on the tape 19 mm")
    assert all(text.endswith(" mm") for text in height.values.values())
    step = told["height-doorway_step"]
    assert (step.result, step.unit, step.values["gap under the door"]) == ("+6.35", "mm", "6.35 mm")


@pytest.mark.parametrize(
    ("other", "codes", "words"),
    [
        (0.5, [], "none, or a straight edge trim"),
        (0.4375, ["SUI-601"], 'bevelled reducer at least 5/8" long (1 in 2)'),
        (0.0, ["SUI-602"], 'ramped threshold at least 9" long (1 in 12)'),
        (1.75, ["SUI-602"], "ramped threshold at least 1' 0\" long (1 in 12)"),
    ],
)
def test_a_step_is_named_with_what_takes_it_up(other, codes, words):
    door = replace(FLOOR, doorways=(Doorway(ref="bath/floor/door/door to hall", other_floor_in=other),))
    findings, _ = judge_build_up(RULES, door)
    assert [finding.code for finding in findings] == codes
    assert in_words(door)["height-doorway_step"].values["profile"] == words
    assert all(words in said(finding).remedy for finding in findings)


def test_too_high_a_step_says_how_much_thinner():
    (step,) = at(doorways=(Doorway(ref="bath/floor/door/d", other_floor_in=0.0),))
    assert step.severity is Severity.FIX and 'layers 1/4" thinner in all' in step.remedy
    (down,) = at(doorways=(Doorway(ref="bath/floor/door/d", other_floor_in=1.5),))
    assert 'layers 1/4" thicker in all' in down.remedy and "steps down" in down.message


def test_a_door_is_cut_to_clear_the_tile():
    (cut,) = at(doorways=(Doorway(ref="bath/floor/door/d", other_floor_in=0.75, door_underside_in=1.0),))
    assert (cut.code, cut.measured, cut.remedy) == ("SUI-603", '1/4"', 'Cut 1/8" off the door before laying.')
    (shut,) = at(doorways=(Doorway(ref="bath/floor/door/d", other_floor_in=0.75, door_underside_in=0.5),))
    assert "not open over" in shut.message and 'Cut 5/8"' in shut.remedy
    assert at(doorways=(Doorway(ref="bath/floor/door/d", other_floor_in=0.75, door_underside_in=1.125),)) == ()


@pytest.mark.parametrize(
    ("top", "remedy"),
    [
        (0.5, 'extension rings of 1/4" to 1/2" in all'),
        (0.6875, 'extension rings of 1/16" to 5/16" in all'),  # none is as thin as what is missing
        (0.75, None),
        (1.0, None),
        (1.5, 'lower it by 1/2"'),
    ],
)
def test_a_flange_stands_on_the_tile(top, remedy):
    findings = at(flanges=(Fitting(ref="bath/floor/flange", top_in=top),))
    assert [f.code for f in findings] == ([] if remedy is None else ["SUI-604"])
    assert all(remedy in f.remedy for f in findings)


@pytest.mark.parametrize(
    ("top", "remedy"),
    [(0.75, None), (0.6875, None), (0.5, 'Raise its rim by 3/16"'), (0.875, 'Lower its rim by 1/8"')],
)
def test_a_drain_lies_level_or_a_little_low(top, remedy):
    findings = at(drains=(Fitting(ref="bath/floor/opening/drain", top_in=top),))
    assert [f.code for f in findings] == ([] if remedy is None else ["SUI-607"])
    assert all(remedy in f.remedy for f in findings)


def test_a_valve_has_its_window():
    assert at(valves=(ValveWindow(ref="bath/wall/A-B/opening/valve", least_in=0.5, most_in=1.0),)) == ()
    (deep,) = at(valves=(ValveWindow(ref="bath/wall/A-B/opening/valve", least_in=1.0, most_in=2.0),))
    assert (deep.code, deep.limit) == ("SUI-605", '1" to 2" from the studs\' faces')
    assert "back by 1/4" in deep.remedy and "short of" in deep.message
    (proud,) = at(valves=(ValveWindow(ref="bath/wall/A-B/opening/valve", least_in=0.0, most_in=0.5),))
    assert "out by 1/4" in proud.remedy and "beyond" in proud.message


def test_furring_counts_in_a_valves_depth():
    window = ValveWindow(ref="bath/wall/A-B/opening/valve", least_in=0.875, most_in=1.0, furring_in=0.25)
    (note,) = at(valves=(window,))
    assert (note.code, note.severity) == ("SUI-608", Severity.NOTE)
    assert note.measured == '1", 1/4" of furring with it'
    (out,) = at(valves=(replace(window, least_in=0.5, most_in=0.875),))
    assert (out.code, out.severity) == ("SUI-605", Severity.FIX) and 'out by 1/8"' in out.remedy


def test_trim_ends_level_with_the_tile():
    assert at(trim_in=0.5) == ()
    (low,) = at(trim_in=0.375)
    assert low.code == "SUI-606" and low.remedy == 'Take trim of 1/2".' and "below" in low.message


def test_heavy_tile_on_weak_backing_is_refused():
    uk = load_rules(DAY, "uk")
    wall = replace(FLOOR, backings=("plasterboard",), tile_area_m2=0.04)
    (bed,) = found(wall, uk)
    assert (bed.code, bed.severity) == ("SUI-305", Severity.NOTE)
    assert found(replace(wall, tile_area_m2=0.2), uk) == ()
    thick = Layer(name=TILE, thickness_in=0.5, density_kg_m3=2350, of="tile")
    over = replace(wall, layers=(*FLOOR.layers[:2], thick))
    (heavy,) = found(over, uk)
    assert in_words(over, rules=uk)["height-backing"].values["limit"].endswith(": DOES NOT HOLD")
    assert (heavy.code, heavy.severity) == ("SUI-304", Severity.STOP)
    assert found(wall) == ()

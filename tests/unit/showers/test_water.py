"""Membranes laid out flat, and what they take: counted by hand on one small shower."""

import datetime
import math
from pathlib import Path
from typing import Any

import pytest
import yaml

from firstcourse.job import Job, read_job_text
from firstcourse.rules import RuleSet, load_rules
from firstcourse.showers.shower_floor import plan_fall
from firstcourse.showers.water import Membrane, membrane
from firstcourse.survey import SurveyResult, survey_job
from firstcourse.takeoff.membranes import bed_mortar, membranes
from firstcourse.values import Ref

EXAMPLE = Path(__file__).parents[3] / "examples" / "tiled-shower" / "job.yaml"
RULES = load_rules(datetime.date(2026, 11, 25))


COVER = 0.25 + 0.10825
"""Mosaic 1/4 in thick in the mortar of a 1/4 in V notch held at 60 degrees [in]."""


def example(**shower: Any) -> tuple[Job, SurveyResult, RuleSet]:
    asked = yaml.safe_load(EXAMPLE.read_text(encoding="utf-8"))
    asked["date"] = str(asked["date"])
    asked["rooms"][0]["floor"]["shower"].update(shower)
    return changed(asked)


def changed(asked: dict[str, Any]) -> tuple[Job, SurveyResult, RuleSet]:
    job = read_job_text(yaml.safe_dump(asked))
    return job, survey_job(job, RULES), RULES


def laid_out(job: Job, survey: SurveyResult, rules: RuleSet) -> Membrane:
    showers = [(item, plan_fall(item, job.tiles, rules, job.tape).fall) for item in survey.showers]
    return membrane(survey.surfaces, showers, job, rules, job.tape)


def test_walls_take_the_sheet_of_the_floor_and_line_their_niche():
    found = laid_out(*example(membrane="sheet"))
    back, plumbed, floor = found.developed
    assert [item.kind for item in found.developed] == ["sheet", "sheet", "sheet"]
    # 54 in by 81 1/2 in; the niche's back replaces its opening and its returns come on top.
    assert back.area * 1550.0031 == pytest.approx(54 * 81.5 + 3.5 * 2 * (14.5 + 12), rel=2e-3)
    assert (back.inside, back.outside, back.collars) == (4, 4, ())
    assert sorted(opening.kind for opening in plumbed.collars) == ["pipe", "valve"]
    # The band of the corner at A is counted once, with the wall to its left.
    assert plumbed.band == pytest.approx(81.5 * 25.4, rel=1e-3)
    assert back.band == pytest.approx(2 * 2 * (14.5 + 12) * 25.4, rel=1e-3)
    # The kerb's band runs up the walls at both its ends: inner face, top and outer face. That stands on the
    # panels where no floor is planned before it: bed and cover under the drain, and the fall of its top besides.
    outer = 1.25 + COVER + 4.5 + 1 / 8
    assert floor.band == pytest.approx((2 * (48 + 36) + 2 * (4.5 - 11 / 16 + COVER + 5 + outer)) * 25.4, rel=1e-3)
    assert floor.inside == 4
    assert found.findings == ()


def test_a_liner_runs_up_the_walls_and_over_the_kerb_down_to_the_panels():
    found = laid_out(*example(membrane="liner"))
    floor = found.developed[-1]
    rise, bed = 11 / 16, 1.5
    # The kerb's top, 5 in wide, falls inwards by 1/8 in; the liner lies under bed, mortar and tile.
    upturn = 4.5 + 1 / 8 + 3 - rise + bed + COVER
    # Its outer face stands on the panels; a slope 1/2 in thick at the drain lies under the liner.
    outer = 1 / 2 + bed + COVER + 4.5 + 1 / 8
    kerb = 4.5 - rise + bed + COVER + 5 + outer
    # Where the kerb turns a right corner, its outer side is longer by its width either way.
    assert floor.area * 1550.0031 == pytest.approx(
        48 * 36 + 84 * upturn + 84 * kerb + 5 * (5 + 2 * outer), rel=1e-3
    )
    number, long = floor.strips
    # With its flaps it is wider than the roll, 60 in, either way; across the shorter side its lap is shorter.
    assert 36 + upturn + kerb > 60 and number == 2
    assert long == pytest.approx((36 + upturn + kerb) * 25.4, rel=2e-3)
    assert (floor.inside, floor.outside, [opening.id for opening in floor.collars]) == (0, 3, ["drain"])
    assert [item.kind for item in found.developed[:-1]] == ["liquid", "liquid"]


def test_strips_lap_the_way_that_takes_less():
    back = laid_out(*example(membrane="sheet")).developed[0]
    # Two strips of 39 in stand 54 in wide with one lap of 2 in over their height; lying they would take three.
    assert back.strips[0] == 2
    assert back.laps == pytest.approx(2 * 81.5 / 1550.0031, rel=1e-3)


def spoilt(change: Any) -> list[str]:
    asked = yaml.safe_load(EXAMPLE.read_text(encoding="utf-8"))
    asked["date"] = str(asked["date"])
    change(asked["rooms"][0]["walls"])
    return [finding.code for finding in laid_out(*changed(asked)).findings]


def test_a_low_wall_a_dry_wall_and_an_unguarded_foot_are_said():
    assert spoilt(lambda walls: walls[0]["boards"].update(top="66 in")) == ["WAT-101"]
    assert spoilt(lambda walls: walls[1].pop("exposure")) == ["WAT-102"]
    assert spoilt(lambda walls: walls[0].update(foot="floor")) == ["WAT-103"]


def test_what_is_bought_follows_from_what_is_laid_out():
    job, survey, rules = example(membrane="sheet")
    laid = laid_out(job, survey, rules)
    lines = {
        quantity.item: (quantity, working) for quantity, working in membranes(laid.developed, rules, job.tape)
    }
    sheet, working = lines["sheet_membrane"]
    assert sheet.exact == pytest.approx(math.fsum(item.area + item.laps for item in laid.developed), rel=1e-4)
    assert sheet.buy == math.ceil(sheet.exact * 1.1 / (39 / 12 * 33 * 0.3048**2))
    assert working.inputs["surface"] == tuple(Ref(ref=item.surface) for item in laid.developed)
    assert lines["inside_corners"][0].buy == 8
    assert lines["collars/valve"][0].buy == 1
    assert lines["drain_flanges"][0].buy == 1
    assert "liquid_membrane" not in lines


def test_a_liner_is_cut_off_the_roll_and_its_walls_take_liquid():
    job, survey, rules = example()
    laid = laid_out(job, survey, rules)
    lines = {quantity.item: quantity for quantity, _ in membranes(laid.developed, rules, job.tape)}
    number, long = laid.developed[-1].strips
    assert lines["liner"].exact == pytest.approx(number * long, abs=0.1)
    assert lines["liner"].buy == math.ceil(number * long / 304.8)
    liquid = math.fsum(item.area for item in laid.developed if item.kind == "liquid") * 1.2
    assert lines["liquid_membrane"].exact == pytest.approx(liquid, abs=1e-3)


def test_bed_mortar_is_bought_by_the_bag():
    job, survey, rules = example()
    fall = plan_fall(survey.showers[0], job.tiles, rules, job.tape).fall
    assert fall is not None
    ((quantity, _),) = list(bed_mortar([("bath/floor/shower", fall)], rules))
    litres = fall.bed_litres + fall.pre_slope_litres
    assert (quantity.exact, quantity.unit) == (pytest.approx(litres / 1000, rel=1e-4), "m3")
    assert quantity.buy == math.ceil(litres * 1.05 / 17)
    assert list(bed_mortar([], rules)) == []


def test_a_dry_job_has_no_membrane():
    job, survey, rules = example()
    assert membrane(survey.surfaces[:1], [], job, rules, job.tape).developed == ()
    assert list(membranes((), rules, job.tape)) == []

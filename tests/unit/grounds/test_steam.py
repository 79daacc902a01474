"""A steam room's ceiling is asked to fall, and to keep the steam in; other rooms are left alone."""

import datetime
from typing import Any

import pytest
import yaml

from firstcourse.findings import Finding
from firstcourse.job import read_job_text
from firstcourse.rules import load_rules
from firstcourse.steps import plan_job
from firstcourse.steps.judging import judge_job
from firstcourse.survey import survey_job
from said import all_said


def _job(*, practice: str = "us", wall: str = "steam", ceiling: str | None = "steam", **room: Any) -> str:
    """A room of 5 x 4 ft with one wall boarded."""
    document: dict[str, Any] = {
        "name": "steam",
        "practice": practice,
        "date": "2026-11-25",
        "tape": "inch",
        "rooms": [
            {
                "name": "steam",
                "corners": ["A", "B", "C", "D"],
                "sides": {"A-B": "60 in", "B-C": "48 in", "C-D": "60 in", "D-A": "48 in"},
                "diagonals": {"A-C": "76 13/16 in", "B-D": "76 13/16 in"},
                "height": "84 in",
                "walls": [
                    {"wall": "A-B", "exposure": {"zone": wall}, "framing": {"spacing": "16 in", "first": "16 in"}}
                ],
                **room,
            }
        ],
    }
    if ceiling is not None:
        framing = {"parallel_to": "A-B", "spacing": "16 in", "first": "8 in"}
        document["rooms"][0]["ceiling"] = {"framing": framing, "exposure": {"zone": ceiling}}
    return yaml.safe_dump(document, sort_keys=False)


def _said(text: str) -> dict[str, Finding]:
    job = read_job_text(text)
    rules = load_rules(job.date, job.practice)
    findings = all_said(judge_job(job, survey_job(job, rules), rules).findings, sources=rules.sources())
    return {finding.code: finding for finding in findings if finding.code in ("SUI-610", "SUI-611")}


def test_a_level_ceiling_over_steam_is_to_be_framed_with_a_fall():
    said = _said(_job())
    assert set(said) == {"SUI-610"}
    fall = said["SUI-610"]
    assert (fall.severity, fall.where) == ("fix", "steam: ceiling")
    assert (fall.measured, fall.limit) == ("level", "at least 2 in per ft")
    # 2 in for each of the 4 ft.
    assert '8" over the 4\' 0" from wall to wall' in fall.remedy
    assert "SR613" in fall.source


@pytest.mark.parametrize(("low", "asked"), [("76 in", False), ("76 1/16 in", False), ("77 in", True)])
def test_a_ceiling_that_falls_by_the_rule_is_not_asked(low: str, asked: bool):
    said = _said(_job(heights={"C": low, "D": low}))
    assert ("SUI-610" in said) is asked


def test_a_ceiling_may_lean_by_a_floor_that_does():
    # The floor drops by 8 in towards C-D and the walls are as high everywhere: the ceiling drops with it.
    assert _said(_job(levels={"A": "0 in", "B": "0 in", "C": "-8 in", "D": "-8 in"})) == {}


def test_heights_that_are_not_known_are_asked_for():
    said = _said(_job(height=None, walls=[]))
    assert said["SUI-610"].severity == "note"
    assert "Give its height at each corner" in said["SUI-610"].remedy


@pytest.mark.parametrize(("ceiling", "measured"), [(None, "no exposure given"), ("damp", "zone: damp")])
def test_a_ceiling_that_is_not_said_to_hold_steam_is_named(ceiling: str | None, measured: str):
    said = _said(_job(ceiling=ceiling))
    assert set(said) == {"SUI-610", "SUI-611"}
    assert said["SUI-611"].measured == measured
    assert said["SUI-611"].limit.startswith("a membrane of at most 0.5 perm")


def test_a_room_without_steam_is_left_alone():
    assert _said(_job(wall="wet", ceiling="wet")) == {}


def test_the_rule_stands_in_the_plan_with_its_source():
    plan = plan_job(read_job_text(_job(ceiling=None)), effort=0).plan
    note = next(note for note in plan.rules if note.id == "ceiling.steam.fall.min")
    assert "TCNA" in note.source and "2 in per ft" in note.source
    assert any(finding.code == "SUI-610" for finding in all_said(plan.findings))


def test_it_holds_in_metric_practices_too():
    assert "SUI-610" in _said(_job(practice="uk"))


def test_the_rule_book_knows_what_two_inches_to_the_foot_are():
    rules = load_rules(datetime.date(2026, 11, 25))
    assert rules.number("ceiling.steam.fall.min") == pytest.approx(2 / 12, abs=1e-6)

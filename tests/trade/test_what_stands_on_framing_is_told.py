"""A closet flange on a joist and a niche on a stud were planned without a word, so was a tiled shower's drain.

Joists askew to the axes of the drawing were left out, and moves were told as up and down on it.
A niche wider than every bay was to be moved out of the room.
"""

from typing import Any

import pytest
import yaml

from firstcourse.findings import Finding
from firstcourse.job import read_job_text
from firstcourse.rules import load_rules
from firstcourse.survey import survey_job
from said import all_said


def told(flange_out: str, niche_left: str, niche_width: str = "14 1/2 in") -> list[Finding]:
    framing = {"spacing": "16 in", "first": "16 in"}
    room: dict[str, Any] = {
        "name": "bath",
        "corners": ["A", "B", "C", "D"],
        "sides": {"A-B": "60 in", "B-C": "96 in", "C-D": "60 in", "D-A": "96 in"},
        "diagonals": {"A-C": "113 3/16 in", "B-D": "113 3/16 in"},
        "height": "96 in",
        "floor": {
            "framing": {"parallel_to": "A-B", **framing},
            "openings": [
                {"id": "closet", "kind": "flange", "side": "A-B", "left": "30 in", "out": flange_out,
                 "diameter": "4 1/2 in"},
            ],
        },
        "walls": [
            {"wall": "B-C", "framing": framing,
             "openings": [{"id": "shelf", "kind": "niche", "left": niche_left, "bottom": "48 in",
                           "width": niche_width, "height": "12 in"}]},
        ],
    }  # fmt: skip
    return findings_of(room)


def findings_of(room: dict[str, Any]) -> list[Finding]:
    stock = [{"id": "b", "size": ["36 in", "60 in"], "thickness": "1/2 in"}]
    job = {
        "name": "on framing",
        "practice": "us",
        "date": "2026-11-25",
        "tape": "inch",
        "stock": stock,
        "tiles": [{"id": "t", "size": ["2 in", "2 in"], "thickness": "1/4 in", "joint": "1/8 in"}],
        "rooms": [room],
    }
    read = read_job_text(yaml.safe_dump(job))
    found = survey_job(read, load_rules(read.date, read.practice, ()))
    return [finding for finding in all_said(found.findings) if finding.code == "SUR-108"]


def test_nothing_is_said_between_members() -> None:
    assert not told("24 in", "16 3/4 in")


@pytest.mark.parametrize(
    ("out", "moves"),
    [
        ("32 in", ('3" away from wall A-B', '3" towards wall A-B')),
        ("33 in", ('2" away from wall A-B', '4" towards wall A-B')),
    ],
)
def test_a_flange_on_a_joist_says_how_far_to_move(out: str, moves: tuple[str, str]) -> None:
    (finding,) = told(out, "16 3/4 in")
    assert all(move in finding.remedy for move in moves) and "local code" in finding.remedy


def test_a_niche_on_a_stud_says_how_far_to_move() -> None:
    (finding,) = told("24 in", "18 in")
    assert "stud" in finding.message and '1-1/4" to the left' in finding.remedy


def askew(flange_out: str, **floor: Any) -> list[Finding]:
    """A room whose wall B-C slants; its joists run along that wall."""
    room: dict[str, Any] = {
        "name": "bath",
        "corners": ["A", "B", "C", "D"],
        "sides": {"A-B": "60 in", "B-C": "100 in", "C-D": "88 in", "D-A": "96 in"},
        "diagonals": {"A-C": "130 1/4 in", "B-D": "113 3/16 in"},
        "height": "96 in",
        "floor": {
            "framing": {"parallel_to": "B-C", "spacing": "16 in", "first": "16 in"},
            "openings": [
                {"id": "closet", "kind": "flange", "side": "B-C", "left": "40 in", "out": flange_out,
                 "diameter": "4 1/2 in"},
            ],
            **floor,
        },
    }  # fmt: skip
    return findings_of(room)


def test_members_askew_to_the_axes_are_looked_at() -> None:
    assert not askew("24 in")
    (finding,) = askew("33 in")
    assert '2" away from wall B-C' in finding.remedy and '4" towards wall B-C' in finding.remedy


def shower(drain: dict[str, Any], **size: str) -> list[Finding]:
    asked = {"side": "A-B", "left": "0 in", "out": "0 in", "width": "60 in", "depth": "40 in"} | size
    kerb: dict[str, Any] = {"recess": "2 in"} if size else {"kerb": {"height": "4 1/2 in", "width": "5 in"}}
    room: dict[str, Any] = {
        "name": "bath",
        "corners": ["A", "B", "C", "D"],
        "sides": {"A-B": "60 in", "B-C": "96 in", "C-D": "60 in", "D-A": "96 in"},
        "diagonals": {"A-C": "113 3/16 in", "B-D": "113 3/16 in"},
        "height": "96 in",
        "floor": {
            "framing": {"parallel_to": "A-B", "spacing": "16 in", "first": "16 in"},
            "shower": asked | kerb | {"drain": drain},
        },
    }
    return findings_of(room)


def test_the_drain_of_a_tiled_shower_on_a_joist_is_told() -> None:
    assert not shower({"left": "30 in", "out": "24 in", "diameter": "4 in"})
    (finding,) = shower({"left": "30 in", "out": "17 in", "diameter": "4 in"})
    assert finding.where == "bath: shower floor, drain"
    assert '1-3/4" away from wall A-B' in finding.remedy and '3-3/4" towards wall A-B' in finding.remedy


def test_the_drain_of_a_shower_that_takes_the_whole_room_is_told() -> None:
    (finding,) = shower({"left": "30 in", "out": "32 in", "diameter": "4 in"}, depth="96 in")
    assert '2-3/4" away' in finding.remedy


def test_a_linear_drain_across_joists_has_room_for_its_outlet_and_one_along_a_joist_has_none() -> None:
    assert not shower({"ends": [["30 in", "4 in"], ["30 in", "36 in"]], "width": "3 in"})
    (finding,) = shower({"ends": [["4 in", "16 in"], ["56 in", "16 in"]], "width": "3 in"})
    assert "drain" in finding.message and '2-1/4" away from wall A-B' in finding.remedy


def test_nothing_is_sent_out_of_its_room() -> None:
    (finding,) = told("24 in", "33 in", "25 in")
    assert "There is no bay it fits into: head the stud off" in finding.remedy
    (finding,) = told("24 in", "79 in", "15 1/4 in")  # the bay to the right is narrower
    assert "Move it" not in finding.remedy

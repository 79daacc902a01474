"""A closet flange on a joist and a niche on a stud were planned without a word."""

from typing import Any

import pytest
import yaml

from firstcourse.findings import Finding
from firstcourse.job import read_job_text
from firstcourse.rules import load_rules
from firstcourse.survey import survey_job


def told(flange_out: str, niche_left: str) -> list[Finding]:
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
                           "width": "14 1/2 in", "height": "12 in"}]},
        ],
    }  # fmt: skip
    stock = [{"id": "b", "size": ["36 in", "60 in"], "thickness": "1/2 in"}]
    job = {
        "name": "on framing",
        "practice": "us",
        "date": "2026-11-25",
        "tape": "inch",
        "stock": stock,
        "rooms": [room],
    }
    read = read_job_text(yaml.safe_dump(job))
    found = survey_job(read, load_rules(read.date, read.practice, ()))
    return [finding for finding in found.findings if finding.code == "SUR-108"]


def test_nothing_is_said_between_members() -> None:
    assert not told("24 in", "16 3/4 in")


@pytest.mark.parametrize(("out", "moves"), [("32 in", ('3" up', '3" down')), ("33 in", ('2" down', '4" up'))])
def test_a_flange_on_a_joist_says_how_far_to_move(out: str, moves: tuple[str, str]) -> None:
    (finding,) = told(out, "16 3/4 in")
    assert all(move in finding.remedy for move in moves) and "local code" in finding.remedy


def test_a_niche_on_a_stud_says_how_far_to_move() -> None:
    (finding,) = told("24 in", "18 in")
    assert "stud" in finding.message and '1-1/4" to the left' in finding.remedy

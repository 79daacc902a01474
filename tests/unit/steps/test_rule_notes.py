"""Values borrowed from another practice are told of on the papers; the proof misses the word where it is gone."""

import json
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import firstcourse
from firstcourse.job import read_job
from firstcourse.papers.office_pack import office_data
from firstcourse.plan import Plan
from firstcourse.steps import plan_job
from proving import verify
from said import all_said

EXAMPLE = Path(__file__).parents[3] / "examples" / "metric-column" / "job.yaml"
FRAMED = EXAMPLE.parents[1] / "tub-bathroom" / "job.yaml"


@cache
def _planned(practice: str) -> tuple[Plan, str]:
    done = plan_job(read_job(EXAMPLE).model_copy(update={"practice": practice}), effort=0)
    return done.plan, done.document


@pytest.mark.parametrize("practice", ["uk", "au"])
def test_the_plan_says_how_many_of_its_values_are_borrowed(practice: str) -> None:
    plan, _ = _planned(practice)
    borrowed = [note.id for note in plan.rules if note.taken_from == "us"]
    assert "boards.stagger.end_joints" in borrowed
    told = next(finding for finding in all_said(plan.findings) if finding.code == "RUL-101")
    assert told.message.startswith(f"{len(borrowed)} of the {len(plan.rules)} values")
    assert f"none of {practice.upper()} practice" in told.message
    assert f"--practice {practice}" in told.remedy
    pack = office_data(plan)
    assert [row[0] for row in pack["borrowed"]] == borrowed
    assert not {row[0] for row in pack["rules"]} & set(borrowed)


def test_the_job_own_values_are_not_borrowed() -> None:
    plan, _ = _planned("uk")
    assert [note.taken_from for note in plan.rules if note.id == "boards.piece.min"] == [""]
    home, _ = _planned("us")
    assert not [finding for finding in all_said(home.findings) if finding.code == "RUL-101"]
    assert not office_data(home)["borrowed"]


def test_the_judgement_alone_tells_of_them_too(tmp_path: Path) -> None:
    job = tmp_path / "job.yaml"
    # What to ask of a frame that is not judged is of US practice; spacings have values of their own.
    job.write_text(FRAMED.read_text(encoding="utf-8").replace("practice: us", "practice: uk"), encoding="utf-8")
    assert [finding.code for finding in firstcourse.open(job).judge().findings].count("RUL-101") == 1
    assert not [finding for finding in firstcourse.open(FRAMED).judge().findings if finding.code == "RUL-101"]


def _silent(document: Any) -> None:
    document["findings"] = [said for said in document["findings"] if said["code"] != "RUL-101"]


def _claimed(document: Any) -> None:
    next(note for note in document["given"]["rules"] if note["taken_from"])["taken_from"] = ""


@pytest.mark.parametrize(
    ("spoil", "codes"),
    # A claim breaks the seal of what was given as well, and then too few borrowed values are told of.
    [(_silent, {"VER-910"}), (_claimed, {"VER-002", "VER-904", "VER-910"})],
)
def test_the_proof_asks_for_the_word_on_borrowed_values(spoil: Any, codes: set[str]) -> None:
    document = json.loads(_planned("uk")[1])
    assert not verify(document).objections
    spoil(document)
    assert {objection.code for objection in verify(document).objections} == codes

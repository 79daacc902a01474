"""A session over a job document: opened, edited, refused as a file is, with files through a port."""

import dataclasses
from collections.abc import Iterable
from pathlib import Path

import pytest

import firstcourse
from firstcourse.app.as_json import json_value
from firstcourse.errors import JobError
from firstcourse.job import starter_text
from firstcourse.papers.papers import Paper

FLOOR = """# a floor
name: Hall   # the name
date: 2026-11-25
tape: inch
rooms:
  - name: hall
    corners: [A, B, C, D]
    sides: {A-B: 5 ft, B-C: 4 ft, C-D: 5 ft, D-A: 4 ft}
    diagonals: {A-C: 76.8 in, B-D: 76.8 in}
    height: 8 ft
    floor: {framing: {parallel_to: D-A, spacing: 16 in, first: 14 in}}  # as found
"""


class InMemory:
    """Files that are kept in memory."""

    def __init__(self, **texts: str) -> None:
        self.texts = {Path(name): text for name, text in texts.items()}
        self.written: dict[Path, list[str]] = {}

    def read_job(self, path: Path) -> str:
        return self.texts[path]

    read_plan = read_job

    def read_beside(self, path: Path, name: str) -> str | None:
        return None

    def write_new(self, path: Path, text: str) -> None:
        self.texts[path] = text

    def check_folder(self, folder: Path) -> None:
        pass

    def write_folder(self, papers: Iterable[Paper], folder: Path, *, record: bool) -> tuple[Path, ...]:
        self.written[folder] = [paper.name for paper in papers]
        return tuple(folder / name for name in self.written[folder])


def test_a_session_needs_no_disk() -> None:
    files = InMemory(hall=FLOOR)
    session = firstcourse.open("hall", files=files)
    plan = session.plan(effort=0)
    assert session.papers(plan, "out")[0] == Path("out/plan.json")
    assert "site-pack-a4.pdf" in files.written[Path("out")]
    files.texts[Path("plan")] = plan.document
    assert firstcourse.prove("plan", files=files).verdict.verified
    session.judgement_papers(session.judge(), "judged")
    assert files.written[Path("judged")] == ["judgement-letter.pdf", "judgement-a4.pdf"]


def test_an_edit_keeps_comments_and_plans_what_it_says() -> None:
    session = firstcourse.Session(FLOOR)
    session.edit("name", "Corridor")
    session.edit("rooms[1].floor.framing.first", "12 in")
    assert session.text == FLOOR.replace("Hall ", "Corridor ").replace("first: 14 in", "first: 12 in")
    assert session.plan(effort=0).document == firstcourse.Session(session.text).plan(effort=0).document
    assert session.job.name == "Corridor"


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("rooms[1].floor.framing.first", "14"),
        ("rooms[1].corners[2]", "A"),
        ("rooms[1].heigth", "8 ft"),
        ("practice", "mars"),
        ("rooms[1].floor.framing.spacing", "-16 in"),
    ],
)
def test_a_wrong_edit_is_refused_as_the_file_would_be_and_changes_nothing(field: str, value: str) -> None:
    session = firstcourse.Session(FLOOR, name="hall.yaml")
    before = session.text, session.job
    with pytest.raises(JobError) as refused:
        session.edit(field, value)
    assert (session.text, session.job) == before
    problem = refused.value.problems[0]
    assert problem.file == "hall.yaml" and problem.line > 1
    assert value in str(problem) or field.rpartition(".")[2] in str(problem)


def test_readings_that_do_not_fit_are_placed_in_the_document_as_edited() -> None:
    session = firstcourse.Session(FLOOR, name="hall.yaml")
    session.edit("date", "1901-01-01")
    for step in (session.survey, session.judge, session.plan):
        with pytest.raises(JobError, match=r"hall.yaml:3:7: date: .*1901-01-01"):
            step()


def test_a_difference_names_what_changed_and_what_stays() -> None:
    session = firstcourse.Session(starter_text())
    before = session.plan(effort=0)
    assert not firstcourse.difference(before, session.plan(effort=0))
    session.edit("rooms[1].sides.A-B", "8' 0-1/2\"")
    session.edit("rooms[1].sides.C-D", "8' 0-3/8\"")
    after = session.plan(effort=0)
    change = firstcourse.difference(before, after)
    assert change and change.boards.changed and change.cuts
    names = {board.id for surface in after.plan.surfaces for board in surface.boards}
    assert {*change.boards.added, *change.boards.changed, *change.boards.stay} == names
    for was in change.boards.changed.values():
        assert was.before.id == was.after.id and was.before != was.after
    shown = json_value(change)
    assert set(shown) == {field.name for field in dataclasses.fields(change)}
    assert shown["boards"]["stay"] == list(change.boards.stay)

"""A tub was cut to a U round a chimney, to what was left of it past a wall, and stood where a column stands.

A tub or tray comes in one piece: where walls or another thing would cut it, the job is refused at its line.
"""

from typing import Any

import pytest
import yaml

from firstcourse.errors import JobError
from firstcourse.geometry import bounds
from firstcourse.job import problems_placed, read_job_text
from firstcourse.rules import load_rules
from firstcourse.survey import survey_job
from firstcourse.units import inches

TUB = {
    "id": "tub",
    "kind": "tub",
    "side": "A-B",
    "left": "0 in",
    "out": "0 in",
    "width": "60 in",
    "depth": "30 in",
}
SQUARE = {
    "corners": ["A", "B", "C", "D"],
    "sides": {"A-B": "60 in", "B-C": "96 in", "C-D": "60 in", "D-A": "96 in"},
    "diagonals": {"A-C": "113 3/16 in"},
}
CHIMNEY = {
    # A chimney 12 in wide and 10 in deep stands in the middle of the wall that the tub is put at.
    "corners": ["A", "B", "C", "D", "E", "F", "G", "H"],
    "sides": {
        "A-B": "24 in", "B-C": "10 in", "C-D": "12 in", "D-E": "10 in",
        "E-F": "24 in", "F-G": "96 in", "G-H": "60 in", "H-A": "96 in",
    },
    "diagonals": {
        "B-H": "98.955 in", "C-H": "89.286 in", "D-H": "93.231 in", "D-G": "89.286 in", "E-G": "98.955 in",
        "C-G": "93.231 in", "B-G": "102.528 in", "E-H": "102.528 in", "A-G": "113.208 in", "F-H": "113.208 in",
    },
}  # fmt: skip


def openings_of(room: dict[str, Any], *openings: dict[str, str]) -> list[tuple[str, tuple[int, int, int, int]]]:
    floor = {"framing": {"parallel_to": "A-B", "spacing": "16 in", "first": "8 in"}, "openings": list(openings)}
    job = {"name": "x", "date": "2026-11-25", "tape": "inch", "rooms": [{"name": "bath", **room, "floor": floor}]}
    text = yaml.safe_dump(job, sort_keys=False)
    with problems_placed(text, "job.yaml"):
        found = survey_job(read_job_text(text), load_rules(read_job_text(text).date, "us"))
    (surface,) = found.surfaces
    return [(one.id, bounds(one.outline)) for one in surface.openings if one.outline is not None]


def refused(room: dict[str, Any], *openings: dict[str, str]) -> tuple[str, str]:
    with pytest.raises(JobError) as caught:
        openings_of(room, *openings)
    (problem,) = caught.value.problems
    assert problem.line > 0
    return problem.field, problem.message


@pytest.mark.parametrize("kind", ["tub", "tray"])
def test_a_chimney_stands_in_no_tub(kind: str) -> None:
    field, message = refused(CHIMNEY, TUB | {"kind": kind, "side": "G-H", "out": "66 in"})
    assert field == "rooms[1].floor.openings[1]"
    assert f"a corner of the walls stands in {kind} 'tub', which is made in one piece" in message


def test_a_cabinet_is_built_round_a_chimney() -> None:
    cabinet = TUB | {"kind": "cabinet", "side": "G-H", "out": "66 in"}
    assert [name for name, _ in openings_of(CHIMNEY, cabinet)] == ["tub"]


@pytest.mark.parametrize("kind", ["tub", "tray", "cabinet"])
def test_what_lies_past_a_wall_is_refused(kind: str) -> None:
    _, message = refused(SQUARE, TUB | {"kind": kind, "left": "15 in"})
    assert f"{kind} 'tub' reaches farther through a wall than one out of square explains" in message


def test_a_tub_ends_at_a_wall_it_was_taped_a_little_past() -> None:
    ((_, box),) = openings_of(SQUARE, TUB | {"width": "61 in"})
    assert box[2] - box[0] == inches(60)


@pytest.mark.parametrize("kind", ["column", "tray", "cabinet"])
def test_nothing_stands_where_a_tub_stands(kind: str) -> None:
    other = {"id": "it", "kind": kind, "side": "A-B", "left": "20 in", "out": "20 in", "width": "20 in"}
    field, message = refused(SQUARE, TUB, other | {"depth": "20 in"})
    assert field == "rooms[1].floor.openings[2]"
    assert message.startswith(f"{kind} 'it' stands where tub 'tub' stands")


def test_a_cabinet_is_built_round_a_column_and_one_ends_at_a_tub() -> None:
    cabinet = {"kind": "cabinet", "side": "A-B", "left": "0 in", "width": "40 in", "depth": "20 in"}
    column = {"id": "column", "kind": "column", "side": "A-B", "left": "10 in", "out": "35 in", "width": "8 in"}
    found = openings_of(SQUARE, TUB, cabinet | {"id": "vanity", "out": "29 1/2 in"}, column | {"depth": "8 in"})
    assert [name for name, _ in found] == ["tub", "vanity", "column"]

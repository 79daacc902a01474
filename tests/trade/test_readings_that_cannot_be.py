"""A diagonal taped as 17 mm was adjusted with the rest, and the room drawn through it.

A reading longer than the way round by others, or far from where all others put it, is refused by its name and
line; where no reading alone can be told, all that may be wrong are named.
"""

from typing import Any

import pytest
import yaml

from firstcourse.errors import JobError
from firstcourse.findings import Severity
from firstcourse.job import problems_placed, read_job_text
from firstcourse.steps import PlanResult, plan_job
from said import said

LANDING = {
    "A-B": 1500, "B-C": 900, "C-D": 600, "D-E": 600, "E-F": 900, "F-A": 1500,
    "A-C": 1749, "A-D": 1273, "B-D": 1082, "A-E": 1749, "D-F": 1082,
}  # fmt: skip
BATH = {"A-B": 2400, "B-C": 1650, "C-D": 2410, "D-A": 1650, "A-C": 2915, "B-D": 2917}


def planned(readings: dict[str, int]) -> PlanResult:
    corners = sorted({corner for pair in readings for corner in pair.split("-")})
    pairs = [f"{one}-{other}" for one, other in zip(corners, [*corners[1:], corners[0]], strict=True)]
    room: dict[str, Any] = {
        "name": "landing",
        "corners": corners,
        "sides": {pair: f"{readings[pair]} mm" for pair in pairs},
        "diagonals": {pair: f"{long} mm" for pair, long in readings.items() if pair not in pairs},
        "floor": {"framing": {"parallel_to": "A-B", "spacing": "400 mm", "first": "200 mm"}},
    }
    sheet = {"id": "sheet", "size": ["900 mm", "1800 mm"], "thickness": "6 mm", "for": ["floor"]}
    job = {"name": "x", "date": "2026-11-25", "tape": "mm", "stock": [sheet], "rooms": [room]}
    text = yaml.safe_dump(job, sort_keys=False)
    with problems_placed(text, "job.yaml"):
        return plan_job(read_job_text(text), effort=0)


def refused(readings: dict[str, int]) -> tuple[str, str]:
    with pytest.raises(JobError) as caught:
        planned(readings)
    (problem,) = caught.value.problems
    assert problem.line > 0
    return problem.field, problem.message


@pytest.mark.parametrize("taped", [17, 525, 2624, 17490])
def test_a_diagonal_that_no_way_round_allows_is_refused_by_its_name(taped: int) -> None:
    field, message = refused(LANDING | {"A-C": taped})
    assert field == "rooms[1].diagonals.A-C"
    assert f"A-C, taped {taped} mm, cannot be" in message


def test_a_side_in_the_wrong_unit_is_refused_by_its_name() -> None:
    field, message = refused(BATH | {"C-D": 241})
    assert field == "rooms[1].sides.C-D"
    assert "C-D, taped 241 mm, cannot be" in message


def test_of_readings_that_cannot_be_told_apart_all_are_named() -> None:
    _, message = refused(BATH | {"A-C": 3800})
    assert "A-C at 2916 mm, not 3800 mm" in message
    assert "one of A-B, B-C, C-D, D-A, A-C, B-D is wrong" in message


def test_a_flat_corner_that_does_not_close_is_refused() -> None:
    # Nothing checks this room; A, B and C lie on one line that is 20 mm too short.
    readings = {pair: long for pair, long in BATH.items() if pair != "B-D"}
    _, message = refused(readings | {"B-C": 495})
    assert (
        "A-C (2915 mm) is longer than the way round by A-B (2400 mm) and B-C (495 mm), 2895 mm in all" in message
    )


def test_a_misreading_by_a_hand_is_a_finding_still() -> None:
    plan = planned(BATH | {"A-C": 3015}).plan
    (found,) = [one for one in plan.findings if one.code == "SUR-101"]
    assert found.severity is Severity.STOP
    assert "A-C" in said(found).message

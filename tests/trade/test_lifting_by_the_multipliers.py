"""Sheets were held against the ideal 51 lb alone, which nobody may lift with a sheet's reach and grip."""

import json

import pytest

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from proving import verify
from said import said_of

JOB = """\
name: Heavy sheets
date: 2026-11-25
tape: TAPE
stock: [{id: board, size: [36 in, 60 in], thickness: THICK in, density_kg_m3: 1300}]
LIFTING
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 5 ft, B-C: 4 ft, C-D: 5 ft, D-A: 4 ft}
    diagonals: {A-C: 76.8 in, B-D: 76.8 in}
    height: 8 ft
    floor: {framing: {parallel_to: D-A, spacing: 16 in, first: 14 in}}
"""


def document(thick: str, lifting: str = "", tape: str = "inch") -> dict:
    text = JOB.replace("THICK", thick).replace("LIFTING", lifting).replace("TAPE", tape)
    return json.loads(plan_job(read_job_text(text), effort=0).document)


def told(plan: dict) -> list[tuple[str, str]]:
    return [
        (one.code, one.limit.removeprefix("at most ")) for one in said_of(plan) if one.code.startswith("QTY-10")
    ]


@pytest.mark.parametrize(
    ("thick", "found"), [("0.2", []), ("0.42", [("QTY-101", "25.8 lb")]), ("0.625", [("QTY-102", "51.5 lb")])]
)
def test_one_person_two_or_neither(thick: str, found: list[tuple[str, str]]) -> None:
    assert told(document(thick)) == found


def test_what_the_job_says_of_lifting_counts() -> None:
    close = "lifting: {reach: 10 in, low: 30 in, high: 35 in, grip: good}"
    assert told(document("0.42", close)) == []
    far = document("0.42", "lifting: {reach: 22 in, times_a_minute: 3, turn_degrees: 45}")
    assert [code for code, _limit in told(far)] == ["QTY-102"]
    changed = {change["rule"] for change in far["job"]["overrides"]}
    assert changed == {"safety.lift.reach", "safety.lift.per_minute", "safety.lift.turn"}


def test_metric_jobs_have_kilograms() -> None:
    assert told(document("0.42", tape="mm")) == [("QTY-101", "11.7 kg")]


def test_the_verifier_computes_the_limit_again() -> None:
    plan = document("0.42")
    assert not verify(plan).objections

    def objected(change: object) -> bool:
        spoiled = json.loads(json.dumps(plan))
        change(spoiled)  # type: ignore[operator]
        codes = {"VER-910", "VER-903", "VER-907"}
        return bool(codes & {objection.code for objection in verify(spoiled).objections})

    def result(spoiled: dict) -> None:
        spoiled["workings"]["quantities-lifting@job"]["result"]["value"] = 23.1

    def silent(spoiled: dict) -> None:
        spoiled["findings"] = [said for said in spoiled["findings"] if said["code"] != "QTY-101"]

    def lighter(spoiled: dict) -> None:
        next(said for said in spoiled["findings"] if said["code"] == "QTY-101")["measured"]["value"] = 10.9

    def gone(spoiled: dict) -> None:
        del spoiled["workings"]["quantities-lifting@job"]

    assert all(objected(change) for change in (result, silent, lighter, gone))

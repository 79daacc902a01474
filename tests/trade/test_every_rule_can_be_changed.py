"""209 of 429 rules were refused when a job changed them, and `verify` did not say which a plan had changed."""

import datetime
import json
from pathlib import Path
from typing import Any

import pytest

from firstcourse.cli import run
from firstcourse.errors import JobError
from firstcourse.job import job_text, read_job_text
from firstcourse.rules import Override, RuleEntry, load_rules
from firstcourse.steps import plan_job
from firstcourse.units import Tape
from sealing import reseal

DAY = datetime.date(2026, 11, 25)
JOB = """\
name: Small floor
date: 2026-11-25
rules: RULES
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 5 ft, B-C: 4 ft, C-D: 5 ft, D-A: 4 ft}
    diagonals: {A-C: "6' 4-13/16\\"", B-D: "6' 4-13/16\\""}
    height: 8 ft
    floor: {framing: {parallel_to: D-A, spacing: 16 in, first: 14 in}}
"""


def job_with(*changes: dict[str, object]) -> str:
    return JOB.replace("RULES", json.dumps(list(changes)))


def written(entry: RuleEntry) -> list[dict[str, Any]]:
    """The ways in which a job may write a rule's own value."""
    if isinstance(entry.value, bool | str):
        return [{"value": entry.value}]
    ways: list[dict[str, Any]] = [{"value": f"{entry.value} {entry.unit}"}]
    if entry.unit:
        ways.append({"value": entry.value, "unit": entry.unit})
    if entry.unit in ("", "ratio", "share", "count"):
        ways.append({"value": entry.value})
    return ways


@pytest.mark.parametrize("practice", ["us", "uk", "au"])
def test_every_rule_takes_a_value_with_its_unit_and_reason(practice: str) -> None:
    book = load_rules(DAY, practice)
    for entry in book.entries.values():
        for way in written(entry):
            change = Override(rule=entry.id, reason="as told", unit=str(way.get("unit", "")), value=way["value"])  # type: ignore[arg-type]
            found = load_rules(DAY, practice, (change,)).entry(entry.id)
            assert found.value == pytest.approx(entry.value) if entry.unit else found.value == entry.value, (
                entry.id
            )
            assert "changed for this job: as told" in found.cited


def test_every_rule_can_stand_in_a_job_document() -> None:
    book = load_rules(DAY)
    changes = [{"rule": e.id, "reason": "as told", **written(e)[-1]} for e in book.entries.values()]
    for start in range(0, len(changes), 300):
        some = changes[start : start + 300]
        job = read_job_text(job_with(*some))
        assert len(load_rules(DAY, "us", job.overrides()).entries) == len(book.entries)
        assert read_job_text(job_text(job)) == job


@pytest.mark.parametrize(
    ("rule", "value", "fault"),
    [
        ("floor.load.live", 50, "has no unit"),
        ("floor.load.live", "50 kg", "is in kg"),
        ("floor.load.live", "plenty", "wants a number"),
        ("floor.load.live", "0 psf", "wants a number"),
        ("boards.gap.between", 3, "no unit"),
        ("boards.gap.between", "-3 mm", ""),
        ("framing.end_studs", "maybe", "wants yes or no"),
        ("fastening.type", " ", "wants words"),
        ("exposure.membrane.waterproof", "damp marsh", "knows no 'marsh'"),
        ("tile.trowel.small.shape", "round", "knows no 'round'"),
    ],
)
def test_what_cannot_be_meant_is_refused_at_its_place(rule: str, value: object, fault: str) -> None:
    with pytest.raises(JobError, match=r"rules\[1\]") as error:
        read_job_text(job_with({"rule": rule, "value": value, "reason": "why not"}))
    assert fault in str(error.value)


def test_units_are_converted() -> None:
    for rule, value, wanted in (
        ("safety.lift.max", "23 kg", 50.706),
        ("fastening.edge.min", "10 mm", 0.3937),
        ("fall.bed.waste", "15 %", 0.15),
    ):
        found = load_rules(DAY, "us", (Override(rule=rule, value=value, unit="", reason="as told"),)).number(rule)
        assert found == pytest.approx(wanted, rel=1e-3), rule


def test_plan_and_verify_say_which(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    change = {"rule": "fastening.spacing.floor", "value": "6 in", "reason": "the board's own sheet"}
    unused = {"rule": "ceiling.load.live_attic", "value": 12, "unit": "psf", "reason": "stores above"}
    unused["rule"] = next(rule for rule in load_rules(DAY).ids() if rule.startswith("ceiling.load"))
    job = tmp_path / "job.yaml"
    job.write_text(job_with(change, unused), encoding="utf-8")
    assert run(["plan", str(job), "--effort", "0", "--out", str(tmp_path / "plan")]) == 0
    said = capsys.readouterr().out
    assert "fastening.spacing.floor 6 in (the board's own sheet)" in said
    assert run(["verify", str(tmp_path / "plan")]) == 0
    proved = capsys.readouterr().out
    assert "fastening.spacing.floor 6 in (the board's own sheet)" in proved
    plan = json.loads((tmp_path / "plan" / "plan.json").read_text(encoding="utf-8"))
    # What a change does not do stops no work: it stands in the plan and its report, not among the ten lines.
    assert [(one["code"], one["rule"]) for one in plan["findings"] if one["code"].startswith("RUL-")] == [
        ("RUL-102", unused["rule"])
    ]
    (note,) = [note for note in plan["given"]["rules"] if note["id"] == "fastening.spacing.floor"]
    assert note["override"] == "the board's own sheet" and plan["job"]["overrides"][0]["unit"] == "in"
    for spoil in ({"override": ""}, {"source": "common practice"}, {"value": "8"}):
        spoiled = json.loads(json.dumps(plan))
        next(n for n in spoiled["given"]["rules"] if n["id"] == note["id"]).update(spoil)
        reseal(spoiled)
        (tmp_path / "spoiled.json").write_text(json.dumps(spoiled), encoding="utf-8")
        assert run(["verify", str(tmp_path / "spoiled.json")]) == 1
        assert "VER-904" in capsys.readouterr().out


def test_tapes_are_told_in_their_own_units() -> None:
    assert plan_job(read_job_text(job_with()), effort=0).plan.job.tape is Tape.INCH

"""Papers printed 339 rules as behind a plan that asked for 123, and a UK plan called 81 borrowed where 54 were."""

import ast
import json
import re
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from firstcourse.app.processes import Processes
from firstcourse.job import read_job, read_job_text
from firstcourse.papers.office_pack import office_data
from firstcourse.plan import Plan
from firstcourse.rules import RuleSet, load_rules
from firstcourse.rules.reading import read_book
from firstcourse.steps import plan_job
from proving import verify
from said import all_said

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "examples"
NAMES = ("tub-bathroom", "metric-column", "tiled-shower")


@cache
def planned(name: str, practice: str = "us") -> tuple[Plan, str]:
    job = read_job(EXAMPLES / name / "job.yaml").model_copy(update={"practice": practice})
    done = plan_job(job, effort=0)
    return done.plan, done.document


def test_a_set_of_rules_keeps_what_it_was_asked_for() -> None:
    rules = load_rules(read_job(EXAMPLES / NAMES[0] / "job.yaml").date)
    assert rules.asked == set()
    assert rules.has("boards.gap.between") and rules.ids("boards.") and rules.find("no.such") is None
    assert rules.asked == set()
    rules.ticks("boards.gap.between")
    rules.find("fastening.edge.min")
    list(rules.under("tile.trowel.small."))
    assert {"boards.gap.between", "fastening.edge.min", "tile.trowel.small.shape"} <= rules.asked
    assert len(rules.asked) == 2 + len(rules.ids("tile.trowel.small."))


def test_nothing_reads_a_rule_past_the_set() -> None:
    """Whoever reads `entries` would leave no record: only what prints or proves the record may."""
    allowed = {"rules/book.py", "steps/rule_notes.py", "verify/rule_notes.py"}
    # Entries of a card to fill in, none of a rule set.
    allowed |= {"app/site.py", "papers/phone_items.py", "papers/phone_pack.py", "web/pages/onsite.py"}
    package = ROOT / "src" / "firstcourse"
    for file in package.rglob("*.py"):
        if file.relative_to(package).as_posix() in allowed:
            continue
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Attribute) and node.attr == "entries":
                pytest.fail(
                    f"{file.relative_to(package)}:{node.lineno} reads a rule set's entries: use has or find"
                )


@pytest.mark.parametrize("name", NAMES)
def test_a_plan_lists_what_its_planning_asked_for_and_papers_print_that(
    name: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: set[str] = set()
    entry = RuleSet.entry

    def noted(self: RuleSet, rule_id: str) -> Any:
        asked.add(rule_id)
        return entry(self, rule_id)

    monkeypatch.setattr("firstcourse.steps.plan.verify_text", lambda _text, **_given: verify_nothing())
    monkeypatch.setattr(RuleSet, "entry", noted)
    plan = plan_job(read_job(EXAMPLES / name / "job.yaml"), effort=0).plan
    listed = [note.id for note in plan.rules]
    assert listed == sorted(set(listed))
    assert set(listed) == asked
    pack = office_data(plan)
    told = {text.split()[0] for row in pack["rules"] for text in row[1].split("; ")}
    told |= {row[0] for row in (*pack["assumptions"], *pack["borrowed"])}
    assert told == {rule for rule in listed if not rule.startswith("safety.caution.")} | {
        rule for rule in told if rule.startswith("safety.caution.")
    }


def verify_nothing() -> Any:
    return type("Verdict", (), {"objections": ()})()


def test_a_floor_of_boards_alone_rests_on_no_rule_of_tile_or_water() -> None:
    listed = {note.id for note in planned("metric-column")[0].rules}
    assert len(listed) < 100
    # How near a wall a thing may end is asked for the column on the floor too.
    listed -= {"shower.touch", "shower.doubt"}
    assert not {rule for rule in listed if re.match(r"(fall|shower|lumber|wall|moisture|exposure)\.", rule)}


def test_what_is_borrowed_is_counted_among_what_was_asked() -> None:
    plan = planned("metric-column", "uk")[0]
    borrowed = [note for note in plan.rules if note.taken_from]
    (told,) = [finding for finding in all_said(plan.findings) if finding.code == "RUL-101"]
    assert told.measured == f"{len(borrowed)} of {len(plan.rules)}" and 0 < len(borrowed) < 54


def test_processes_give_their_record_back() -> None:
    room = """
  - name: NAME
    corners: [A, B, C, D]
    sides: {A-B: 5 ft, B-C: 4 ft, C-D: 5 ft, D-A: 4 ft}
    diagonals: {A-C: 76.8 in, B-D: 76.8 in}
    height: 8 ft
    floor: {framing: {parallel_to: D-A, spacing: 16 in, first: 14 in}}"""
    rooms = "".join(room.replace("NAME", name) for name in ("one", "two"))
    job = read_job_text(f"name: Two floors\ndate: 2026-11-25\nrooms:{rooms}\n")
    alone, shared = (plan_job(job, effort=0, share=Processes(workers, least=2)).document for workers in (1, 2))
    assert alone == shared and "boards.gap.between" in {note["id"] for note in json.loads(alone)["given"]["rules"]}


def test_a_rule_that_a_finding_names_must_stand_there() -> None:
    document = json.loads(planned("tub-bathroom")[1])
    assert not verify(document).objections
    named = next(finding["rule"] for finding in document["findings"] if finding["rule"])
    document["given"]["rules"] = [note for note in document["given"]["rules"] if note["id"] != named]
    assert "VER-904" in {objection.code for objection in verify(document).objections}


def test_no_source_is_printed_as_surer_than_it_was_read() -> None:
    """A title of the book stands nowhere in a plan without how it was read, but where its own text was."""
    _rules, sources = read_book()
    by_title: dict[str, list[str]] = {}
    for source in sources.values():
        how = {"quoted": f"as quoted in {source.quoted_in}", "memory": "from memory, not seen"}.get(
            source.read, ""
        )
        by_title.setdefault(source.title, ["from memory, not seen"]).append(how)
    for name in (*NAMES, "limber-floor", "out-of-true"):
        for text in texts(json.loads(planned(name)[1])):
            for title, hows in by_title.items():
                assert title not in text or any(how in text for how in hows), (name, text)


def texts(value: Any) -> list[str]:
    if isinstance(value, str):
        return [value]
    inner = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    return [text for item in inner for text in texts(item)]


def test_a_value_that_was_rounded_into_another_unit_says_from_what() -> None:
    stagger = load_rules(read_job(EXAMPLES / NAMES[0] / "job.yaml").date, "uk").entry("boards.stagger.end_joints")
    assert (stagger.value, stagger.unit, stagger.converted) == (400, "mm", "16 in")
    assert stagger.cited.endswith("(as quoted in a trade foundation's summary; converted from 16 in)")
    note = next(n for n in planned("metric-column", "uk")[0].rules if n.id == "boards.stagger.end_joints")
    assert (note.read, note.converted, note.source) == ("quoted", "16 in", stagger.cited)

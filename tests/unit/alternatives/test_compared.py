"""Alternatives of one small floor side by side: figures, who is beaten, and a proof that notices any change."""

import copy
import json
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest

import firstcourse
from firstcourse.alternatives import Alternative, Change
from firstcourse.app import Compared, price_book
from firstcourse.app.compared import comparison_papers
from firstcourse.app.pricing import price_document
from firstcourse.verify import verify_comparison

ROOT = Path(__file__).parents[3]
JOB = (ROOT / "examples" / "metric-column" / "job.yaml").read_text(encoding="utf-8").replace("EUR", "USD")


def _sheet(name: str, *size: str) -> Alternative:
    return Alternative(name=name, changes=(Change(field="stock[1].size", to=list(size)),))


@cache
def made() -> Compared:
    session = firstcourse.Session(JOB)
    asked = (
        _sheet("large", "1220 mm", "2440 mm"),
        _sheet("small", "600 mm", "900 mm"),
        _sheet("none \u4e0d", "0 mm", "900 mm"),
    )
    done = session.compare(asked, book=price_book(ROOT / "examples" / "prices.yaml"), effort=0)
    assert session.text == JOB
    return done


def documents() -> list[tuple[str, str] | None]:
    return [
        None if one is None or one[1] is None else (one[0].document, price_document(one[1]))
        for one in made().plans
    ]


def test_what_cannot_be_planned_is_told_and_the_others_stand() -> None:
    rows = made().comparison.rows
    assert [row.name for row in rows] == ["", "large", "small", "none \u4e0d"]
    assert [row.figures is not None for row in rows] == [True, True, True, False]
    assert "stock[1].size" in rows[3].problem
    assert made().plans[3] is None


def test_figures_are_those_of_the_plan() -> None:
    for row, plan in zip(made().comparison.rows, made().plans, strict=True):
        if row.figures is None or plan is None:
            continue
        assert row.figures.sheets == sum(count.used for count in plan[0].plan.counts.values())
        wide, high = (side / 640_000 for side in plan[0].plan.stock[0].size)
        # What is bought is hung, kept or waste; without offcuts the floor is what is hung, less its gaps.
        assert 0 <= row.figures.waste_m2 < row.figures.sheets * wide * high
        assert row.figures.cost == plan[1].total if plan[1] else False


def test_larger_sheets_take_fewer_and_none_beats_itself() -> None:
    """The boards are as thick, and small sheets take more of them."""
    best = made().comparison.best
    base, large, small = (row.figures for row in made().comparison.rows[:3])
    assert base and large and small
    assert large.sheets < base.sheets < small.sheets
    assert best["fewest_cuts"] == (1,)
    for number, row in enumerate(made().comparison.rows[:3]):
        assert number not in row.beaten_by


def _figure(name: str, value: Any) -> Callable[[dict[str, Any]], None]:
    return lambda told: told["rows"][1]["figures"].update({name: value})


@pytest.mark.parametrize(
    ("spoil", "code"),
    [
        *(
            (_figure(name, value), "VER-992")
            for name, value in {
                "sheets": 1,
                "cuts": 1,
                "tile_cuts": 1,
                "smallest_cut": 5.0,
                "waste_m2": 0.01,
                "kg": 3.0,
                "height": 1.0,
                "hours": "1",
                "cost": "1.00",
                "complete": None,
                "days": 3,
            }.items()
        ),
        (lambda told: told.update(invented=False), "VER-991"),
        (lambda told: told["rows"][1].update(plan="0"), "VER-991"),
        (lambda told: told["rows"][1].update(price="0"), "VER-991"),
        (lambda told: told["rows"][1].update(stops=["SUI-101"]), "VER-993"),
        (lambda told: told["rows"][1].update(beaten_by=[2]), "VER-994"),
        (lambda told: told["rows"][3].update(problem=""), "VER-991"),
        (lambda told: told["best"].update(lightest=[]), "VER-995"),
        (lambda told: told["best"].pop("least_waste"), "VER-995"),
        (lambda told: told["rows"].pop(), "VER-990"),
        (lambda told: told.pop("rows"), "VER-990"),
    ],
)
def test_the_proof_notices(spoil: Callable[[dict[str, Any]], Any], code: str) -> None:
    text = made().comparison.model_dump_json()
    assert verify_comparison(text, documents()) == ()
    told = copy.deepcopy(json.loads(text))
    spoil(told)
    assert code in {one.code for one in verify_comparison(json.dumps(told), documents())}


def test_the_folder_holds_what_is_compared() -> None:
    papers = {paper.name: paper.content for paper in comparison_papers(made())}
    assert papers.keys() == {
        "compare.json", "compare-letter.pdf", "compare-a4.pdf",
        *(f"{kind}-{number}.json" for kind in ("plan", "price") for number in range(3)),
    }  # fmt: skip
    assert papers["compare-a4.pdf"].startswith(b"%PDF")


def test_the_terminal_says_it_in_both_tongues() -> None:
    from firstcourse.app import compared_lines
    from firstcourse.papers.compare_page import compare_page
    from firstcourse.words import speaker_for

    lines = compared_lines(made())
    assert any(line.startswith("Fewest cuts: 1: large") for line in lines)
    plan = made().plans[0]
    assert plan is not None
    stamp = plan[0].plan.job.model_copy(update={"tongue": "es"})
    page = compare_page(made().comparison, speaker_for(plan[0].plan.model_copy(update={"job": stamp})))
    assert "Menos cortes: 1: large" in page["best"]
    assert page["changed"][1] == "1: large: stock[1].size = [1220 mm, 2440 mm]"

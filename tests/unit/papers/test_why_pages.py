"""The page "why n sheets": every sheet a bar that is full, every stock with its counts and its argument."""

import io
import re

import pypdf
import pytest

from example_plans import plan_of
from firstcourse.papers.office_pack import office_pack
from firstcourse.papers.why_pages import MOST_BOXES, why_page
from firstcourse.plan import Count, RuleOverride
from firstcourse.words import speaker_for
from firstcourse.workings import Working, by_id


@pytest.mark.parametrize("name", ["tub-bathroom", "l-shower-room", "metric-column"])
def test_every_bar_is_full_and_every_sheet_there(name: str) -> None:
    plan = plan_of(name)
    page = why_page(plan)
    bought = sum(sheet.source == "new" for sheet in plan.sheets)
    offcut = " and 1 kept offcut used up" if bought < len(plan.sheets) else ""
    assert page["title"] == f"Why {bought} sheets{offcut}"
    sheets = [sheet for stock in page["stocks"] for sheet in stock["sheets"]]
    assert {sheet["id"] for sheet in sheets} == {sheet.id for sheet in plan.sheets}
    for sheet in sheets:
        assert sum(part["share"] for part in sheet["parts"]) + sheet["waste"] == pytest.approx(1)
        assert 0 < sheet["width"] <= 1
        assert all(part["name"] in sheet["words"] for part in sheet["parts"])


def test_a_kept_offcut_is_named_and_shorter_than_a_sheet() -> None:
    bars = [bar for stock in why_page(plan_of("tub-bathroom"))["stocks"] for bar in stock["sheets"]]
    (offcut,) = [bar for bar in bars if "kept offcut rack 1" in bar["words"]]
    assert offcut["width"] == pytest.approx(20 * 36 / (36 * 60))


def test_counts_stand_beside_each_other() -> None:
    plan = plan_of("metric-column")
    (stock,) = why_page(plan)["stocks"]
    assert [row["label"] for row in stock["counts"]] == [
        "plain practice buys",
        "this plan buys",
        "these boards need at least",
        "any other layout needs at least",
    ]
    assert [row["number"] for row in stock["counts"]][1] == len(plan.sheets)


def test_many_sheets_are_told_by_number() -> None:
    plan = plan_of("metric-column")
    (name,) = plan.counts
    many = Working(
        formula="boards-practice",
        at=(f"stock/{name}",),
        inputs={"keeps": True, "faults": (), "numbers": ()},
        result=MOST_BOXES + 1,
    )
    plan = plan.model_copy(
        update={
            "counts": {name: Count(used=MOST_BOXES, lower_bound=0, proven=False)},
            "workings": by_id((many,)),
            "bounds": (),
        }
    )
    rows = why_page(plan)["stocks"][0]["counts"]
    assert [(row["number"], row["boxes"]) for row in rows] == [(MOST_BOXES + 1, 0), (MOST_BOXES, MOST_BOXES)]


def test_every_weight_stands_there_with_its_value_and_reason() -> None:
    plan = plan_of("tub-bathroom")
    change = RuleOverride(rule="choice.piece.step", value=2.0, unit="in", reason="narrow is no trouble")
    plan = plan.model_copy(update={"job": plan.job.model_copy(update={"overrides": (change,)})})
    rows = why_page(plan)["weights"]
    text = "\n".join(" ".join(row) for row in rows)
    weights = [rule for rule in plan.rules if rule.id.startswith("choice.")]
    assert len(weights) == 5 and all(rule.id in text for rule in weights)
    assert [row[0] for row in rows][:2] == ["the sheets to buy cost less", "there are fewer boards"]
    assert {row[0]: row[3] for row in rows if row[3]} == {"the narrowest board is wider": "narrow is no trouble"}
    assert "in steps of 25% of a sheet" in text and "steps of 0" not in text


def test_shares_make_a_hundred_in_words_and_in_all() -> None:
    for name in ("tub-bathroom", "l-shower-room"):
        for stock in why_page(plan_of(name))["stocks"]:
            told = [bar["words"] for bar in stock["sheets"]] + [stock["reasons"][-1].split(" To keep")[0]]
            for words in told:
                assert sum(int(number) for number in re.findall(r"(\d+)%", words)) == 100, words


def test_who_subtracts_the_areas_finds_what_is_printed() -> None:
    sums = 0
    for name in ("tub-bathroom", "l-shower-room", "metric-column"):
        for stock in why_page(plan_of(name))["stocks"]:
            for reason in stock["reasons"]:
                found = re.search(r"takes ([\d.]+) \S+ ?f?t? − ([\d.]+) .+ = ([\d.]+) .* of board", reason)
                if found:
                    ground, gaps, least = (float(number) for number in found.groups())
                    assert ground - gaps == pytest.approx(least)
                    sums += 1
    assert sums == 5


def test_the_argument_over_every_layout_is_told() -> None:
    plan = plan_of("tub-bathroom")
    for stock, bound in zip(why_page(plan)["stocks"], plan.bounds, strict=True):
        assert "no layout that keeps the rules takes fewer. This is proven." in stock["answer"]
        said = speaker_for(plan).told([plan.workings[f"bounds-every_layout@stock/{bound.stocks[0]}"]])
        assert len(said) == 5 and [reason for reason in stock["reasons"] if reason in said] == said


def test_what_is_open_over_every_layout_is_said() -> None:
    plan = plan_of("metric-column")
    (stock,) = why_page(plan)["stocks"]
    (bound,) = plan.bounds
    assert bound.lower_bound < bound.used
    assert f"fewer than {bound.lower_bound} are impossible" in stock["answer"]
    assert any("is not known" in reason for reason in stock["reasons"])


def test_stocks_that_share_surfaces_are_bounded_by_cost_and_told_once() -> None:
    plan = plan_of("l-shower-room")
    shared = next(bound for bound in plan.bounds if len(bound.stocks) > 1)
    reasons = [reason for stock in why_page(plan)["stocks"] for reason in stock["reasons"]]
    assert sum("The cheapest sheets with so much in them are" in reason for reason in reasons) == 1
    assert shared.cost is not None and shared.least_cost is not None and shared.least_cost <= shared.cost


def test_the_pack_prints_it() -> None:
    plan = plan_of("tub-bathroom")
    text = "\n".join(p.extract_text() for p in pypdf.PdfReader(io.BytesIO(office_pack(plan, "a4"))).pages)
    assert why_page(plan)["title"] in text
    assert "plain practice buys" in text

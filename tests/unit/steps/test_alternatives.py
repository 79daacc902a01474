"""What if: each alternative changes one thing of the job, is planned in full, and is ranked."""

import datetime
from pathlib import Path

import pytest

from firstcourse.errors import InputValueError
from firstcourse.job import Job, read_job
from firstcourse.plan import Plan
from firstcourse.steps import PlanResult, plan_job
from firstcourse.steps.why import Change, Explanation, Outcome, _rank, changes, explain_job
from firstcourse.units import Tape, inches, mm
from firstcourse.words import Speaker

EXAMPLES = Path(__file__).parents[3] / "examples"
WALL = {"wall": "A-B", "framing": {"spacing": "16 in", "first": "12 in"}}


def job(**more: object) -> Job:
    """A wall of 5 by 7 feet that one stock serves, or what `more` says."""
    room = {
        "name": "bath",
        "corners": ["A", "B", "C", "D"],
        "sides": {"A-B": "5 ft", "B-C": "5 ft", "C-D": "5 ft", "D-A": "5 ft"},
        "diagonals": {"A-C": "84.852 in", "B-D": "84.852 in"},
        "height": "7 ft",
        "walls": more.pop("walls", [WALL]),
    }
    stock = [{"id": "small", "size": ["36 in", "60 in"], "thickness": "1/2 in", "price": 15, "for": ["wall"]}]
    return Job.model_validate(
        {"name": "test", "date": datetime.date(2026, 1, 1), "stock": stock, "rooms": [room], **more}
    )


@pytest.fixture(scope="module")
def plan() -> Plan:
    return plan_job(job(), effort=0).plan


def what(change: Change) -> str:
    return Speaker("us", Tape.INCH).statement(change.what)


def found(asked: Job, plan: Plan, kind: str, *, effort: int = 0) -> list[Change]:
    return [change for change in changes(asked, plan, effort=effort) if change.kind == kind]


def test_other_usual_sizes_cost_by_area(plan: Plan) -> None:
    sizes = found(job(), plan, "size")
    assert {change.job.stock[0].size for change in sizes} == {
        (inches(36), inches(48)), (inches(32), inches(60)), (inches(48), inches(96)),
    }  # fmt: skip
    large = next(change for change in sizes if change.job.stock[0].size == (inches(48), inches(96)))
    assert large.job.stock[0].price == pytest.approx(15 * 48 * 96 / (36 * 60), abs=0.005)
    assert large.cost_by_area and '48" × 96"' in what(large)


@pytest.mark.parametrize("practice", ["us", "uk", "au"])
def test_every_practice_knows_usual_sizes(practice: str, plan: Plan) -> None:
    sizes = [change.job.stock[0].size for change in found(job(practice=practice), plan, "size")]
    assert len(sizes) == 3 and len(set(sizes)) == 3
    assert all(mm(500) < width < length < mm(3000) for width, length in sizes)


def test_without_a_price_none_is_made_up(plan: Plan) -> None:
    unpriced = job(stock=[{"id": "small", "size": ["36 in", "60 in"], "thickness": "1/2 in", "for": ["wall"]}])
    assert all(c.job.stock[0].price is None and not c.cost_by_area for c in found(unpriced, plan, "size"))


def test_the_rule_books_sheets_are_written_out_where_the_job_names_none() -> None:
    plain = job(stock=[])
    sizes = found(plain, plan_job(plain, effort=0).plan, "size")
    assert {what(change).split(" in ")[0] for change in sizes} == {"wall board"}
    assert all({stock.id for stock in change.job.stock} == {"floor board", "wall board"} for change in sizes)


def test_each_stock_alone(plan: Plan) -> None:
    small = {"id": "small", "size": ["36 in", "60 in"], "thickness": "1/2 in"}
    large = {"id": "large", "size": ["48 in", "96 in"], "thickness": "1/2 in", "for": ["wall", "ceiling"]}
    asked = job(stock=[small, large], offcuts=[{"id": "left", "stock": "large", "size": ["20 in", "20 in"]}])
    one, other = found(asked, plan, "stock")
    assert what(one) == "only small, without large"
    assert [stock.id for stock in one.job.stock] == ["small"] and one.job.offcuts == ()
    assert what(other) == "only large, without small"
    assert [stock.id for stock in other.job.stock] == ["large"] and len(other.job.offcuts) == 1


def test_one_stock_has_no_alternative_of_another(plan: Plan) -> None:
    assert found(job(), plan, "stock") == []


def test_a_row_of_blocking_above_the_foot(plan: Plan) -> None:
    low, high = found(job(), plan, "blocking")
    (row,) = low.job.rooms[0].walls[0].blocking
    assert row.at == inches(36 + 1 / 4 + 1 / 16)
    assert row.left == 0 and inches(59) < row.right < inches(60)
    assert high.job.rooms[0].walls[0].blocking[0].at == inches(60 + 1 / 4 + 1 / 16)


def test_no_blocking_above_the_boards(plan: Plan) -> None:
    low = {**WALL, "boards": {"top": "38 in"}}
    assert found(job(walls=[low]), plan, "blocking") == []


@pytest.mark.parametrize(("first", "moved"), [("12 in", 4), ("4 in", 12), ("0 in", 8)])
def test_studs_move_by_half_their_spacing(first: str, moved: float, plan: Plan) -> None:
    asked = job(walls=[{"wall": "A-B", "framing": {"spacing": "16 in", "first": first}}])
    (change,) = found(asked, plan, "stud")
    assert change.job.rooms[0].walls[0].framing.first == inches(moved)
    assert what(change) == "first stud half a spacing on in bath: wall A-B"


def test_studs_as_found_stay_where_they_are(plan: Plan) -> None:
    asked = job(
        walls=[{"wall": "A-B", "framing": {"members": [{"at": "1 in"}, {"at": "30 in"}, {"at": "59 in"}]}}]
    )
    assert found(asked, plan, "stud") == []


def test_several_walls_move_apart_and_together(plan: Plan) -> None:
    pairs = ("A-B", "B-C", "C-D")
    asked = job(walls=[{**WALL, "wall": pair} for pair in pairs])
    assert [what(change).split(" in ")[1] for change in found(asked, plan, "stud")] == [
        *(f"bath: wall {pair}" for pair in pairs), "all regularly framed walls",
    ]  # fmt: skip
    assert all(wall.framing.first == inches(4) for wall in found(asked, plan, "stud")[-1].job.rooms[0].walls)


def with_ceiling(framing: dict[str, object]) -> Job:
    """The job with a ceiling boarded too."""
    plain = job(stock=[{"id": "small", "size": ["36 in", "60 in"], "thickness": "1/2 in"}])
    room = plain.rooms[0].model_dump(exclude_defaults=True, mode="json")
    room |= {"ceiling": {"framing": {"parallel_to": "A-B", **framing}}}
    return Job.model_validate(
        {
            **plain.model_dump(exclude_defaults=True, mode="json", by_alias=True),
            "date": "2026-01-01",
            "rooms": [room],
        }
    )


def test_ceiling_joists_move_and_one_more_is_added() -> None:
    asked = with_ceiling({"spacing": "16 in", "first": "12 in"})
    planned = plan_job(asked, effort=0).plan
    moved = found(asked, planned, "stud")[-1]
    assert what(moved) == "first ceiling joist half a spacing on"
    ceiling = moved.job.rooms[0].ceiling
    assert ceiling is not None and ceiling.framing.first == inches(4)
    added = found(asked, planned, "blocking")[-1]
    assert what(added).startswith("one more ceiling joist, 36")
    ceiling = added.job.rooms[0].ceiling
    assert ceiling is not None and ceiling.framing.spacing is None
    places = [member.at for member in ceiling.framing.members]
    assert places == [*(inches(at) for at in (12, 28, 44)), inches(36 + 3 / 16)]
    assert plan_job(added.job, effort=0).plan.sheets


def test_joists_as_found_stay_and_one_is_added() -> None:
    asked = with_ceiling({"members": [{"at": "1 in"}, {"at": "24 in"}, {"at": "59 in"}]})
    planned = plan_job(asked, effort=0).plan
    assert not any("ceiling" in what(change) for change in found(asked, planned, "stud"))
    ceiling = found(asked, planned, "blocking")[-1].job.rooms[0].ceiling
    assert ceiling is not None and len(ceiling.framing.members) == 4


def test_more_effort_until_there_is_none(plan: Plan) -> None:
    (longer,) = found(job(), plan, "effort", effort=1)
    assert longer.effort == 2 and longer.job == job()
    assert found(job(), plan, "effort", effort=3) == []


@pytest.fixture(scope="module")
def explained() -> Explanation:
    return explain_job(job(), effort=0)


def test_alternatives_are_ranked(explained: Explanation) -> None:
    def key(outcome: Outcome) -> tuple[int, int, float, int, float]:
        return outcome.stops, outcome.sheets, outcome.cost or 0.0, outcome.cuts, outcome.mass_kg

    assert len(explained.alternatives) == 7
    assert [key(o) for o in explained.alternatives] == sorted(key(o) for o in explained.alternatives)
    assert {o.kind for o in explained.alternatives} == {"size", "blocking", "stud", "effort"}
    assert not any(o.failed for o in explained.alternatives)


def test_figures_of_the_plan_are_those_of_its_sheets(explained: Explanation) -> None:
    plan, outcome = explained.result.plan, explained.outcome
    assert outcome.sheets == len(plan.sheets) and dict(outcome.by_stock) == {"small": outcome.sheets}
    assert outcome.cost == 15 * outcome.sheets
    assert outcome.cuts == sum(len(sheet.cuts) for sheet in plan.sheets)
    sheet_kg = 0.9144 * 1.524 * 0.0127 * 1300
    assert outcome.mass_kg == pytest.approx(sheet_kg * outcome.sheets)
    assert 0 < outcome.heaviest_kg <= sheet_kg + 1e-9


def test_what_cannot_be_planned_comes_last_and_says_why(monkeypatch: pytest.MonkeyPatch) -> None:
    def only_as_it_is(asked: Job, **given: object) -> PlanResult:
        if asked != job() or given["effort"]:
            raise InputValueError("no such sheet")
        return plan_job(job(), effort=0)

    monkeypatch.setattr("firstcourse.steps.why.plan_job", only_as_it_is)
    alternatives = explain_job(job(), effort=0).alternatives
    assert {outcome.failed for outcome in alternatives} == {"no such sheet"}
    ranked = sorted((alternatives[0], explain_job(job(), effort=0).outcome), key=_rank)
    assert [outcome.failed for outcome in ranked] == ["", "no such sheet"]


def test_without_what_if_only_the_plan_is_explained() -> None:
    done = explain_job(read_job(EXAMPLES / "tub-bathroom" / "job.yaml"), effort=0, what_if=False)
    assert done.alternatives == ()
    assert [stock.stock for stock in done.why] == list(done.result.plan.counts)

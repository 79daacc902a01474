"""An order and a price follow from the plan and the price book alone, and changing any one field is noticed."""

import json
from collections.abc import Iterator
from copy import deepcopy
from decimal import Decimal
from functools import cache
from typing import Any

import pytest

from example_plans import EXAMPLES, plan_of
from firstcourse.errors import InputValueError
from firstcourse.plan import Plan
from firstcourse.pricing import Offer, PriceBook, offer, read_book
from firstcourse.pricing.hours import learned
from firstcourse.pricing.offer import Load, OrderLine, Task
from firstcourse.pricing.total import price_steps
from firstcourse.verify import verify_price

BOOK = """\
book: {name: Made up, currency: USD}
profit: {way: margin, percent: 20}
overhead: {percent: 10}
taxes: [{name: vat, percent: 8.25, on: price}]
risks: [{name: rot, cost: 100, percent: 50}]
"""


@cache
def example_plan(name: str) -> tuple[Plan, str]:
    plan = plan_of(name)
    return plan, plan.model_dump_json(by_alias=True, indent=1) + "\n"


@pytest.fixture(scope="module")
def examples_prices() -> PriceBook:
    return read_book((EXAMPLES / "prices.yaml").read_bytes(), "prices.yaml")


@pytest.fixture(scope="module")
def made(examples_prices: PriceBook) -> tuple[str, Offer]:
    plan, document = example_plan("tub-bathroom")
    return document, offer(plan, document, examples_prices)


def leaves(value: Any, path: tuple[Any, ...] = ()) -> Iterator[tuple[tuple[Any, ...], Any]]:
    if isinstance(value, dict | list):
        for key, item in value.items() if isinstance(value, dict) else enumerate(value):
            yield from leaves(item, (*path, key))
    else:
        yield path, value


def one_of_each(value: Any) -> list[tuple[Any, ...]]:
    """One leaf of every field of every list, filled and empty ones apart."""
    found: dict[tuple[Any, ...], tuple[Any, ...]] = {}
    for path, leaf in leaves(value):
        form = tuple("each" if isinstance(key, int) else key for key in path)
        found.setdefault((*form, type(leaf)), path)
    return list(found.values())


def other(value: Any) -> Any:
    if isinstance(value, bool):
        return not value
    if isinstance(value, int | float):
        return value + 1
    if value is None:
        return "1"
    try:
        return str(Decimal(value) + Decimal("0.01"))
    except ArithmeticError:
        return value + "x"


def test_a_price_holds_and_any_changed_field_is_noticed(made: tuple[str, Offer]) -> None:
    document, priced = made
    text = priced.model_dump_json()
    assert verify_price(document, text) == ()
    assert Offer.model_validate_json(text) == priced
    whole = json.loads(text)
    without_book = {key: value for key, value in whole.items() if key != "book"}
    paths = [*one_of_each(without_book), ("book", "profit", "percent")]
    assert len(paths) > 60
    for path in paths:
        spoiled = deepcopy(whole)
        at = spoiled
        for key in path[:-1]:
            at = at[key]
        at[path[-1]] = other(at[path[-1]])
        assert verify_price(document, json.dumps(spoiled)), path
    for listed in ("order", "tasks", "steps", "findings"):
        assert verify_price(document, json.dumps(whole | {listed: whole[listed][1:]})), listed


def test_dearer_packs_are_objected_to(made: tuple[str, Offer]) -> None:
    """Two large packs instead of the cheapest mix, everything added up rightly."""
    document, priced = made
    whole = json.loads(priced.model_dump_json())
    line = next(one for one in whole["order"] if one["item"] == "tile_mortar")
    line["bought"] = [{"supplier": "Tile store", "holds": "22.68", "packs": 3, "each": "24.60", "cost": "73.80"}]
    line["cost"] = "73.80"
    assert "VER-953" in {one.code for one in verify_price(document, json.dumps(whole))}


@pytest.mark.parametrize("text", ["", "[]", "{}", '{"format": "firstcourse-price", "version": 1}', "[" * 100_000])
def test_what_is_no_price_is_objected_to(made: tuple[str, Offer], text: str) -> None:
    assert [one.code for one in verify_price(made[0], text)] == ["VER-950"]


def steps_of(book: str, materials: str, labour: str) -> tuple[dict[str, Decimal], Decimal, Decimal]:
    none = Decimal(0)
    line = OrderLine(item="grout", unit="kg", exact=none, breakage=none, spares=none, need=none)
    line = line.model_copy(update={"cost": Decimal(materials)})
    task = Task(
        task="mix", amount=none, unit="kg", rate=none, spread=none, jobs=0, basis="yours", source="", hours=none,
        each=none, cost=Decimal(labour),
    )  # fmt: skip
    steps, price, total = price_steps([line], [task], Load(kg=none), read_book(book.encode(), "book.yaml"))
    return {step.formula: step.result for step in steps}, price, total


def test_margin_and_tax_by_hand() -> None:
    """1,000 direct, 50 for risks, 10 % on 1,050: 1,155 of cost; a margin of 20 % is a fifth of 1,443.75."""
    steps, price, total = steps_of(BOOK, "400", "600")
    assert (steps["price-cost"], price) == (Decimal(1155), Decimal("1443.75"))
    # 8.25 % of 1,443.75 is 119.109375, rounded once.
    assert (steps["price-tax"], total) == (Decimal("119.11"), Decimal("1562.86"))


def test_mark_up_by_hand_is_another_number() -> None:
    _, price, _ = steps_of(BOOK.replace("margin", "mark_up"), "400", "600")
    assert price == Decimal("1386.00")  # 1,155 × 1.2


def test_half_a_cent_of_tax_goes_up() -> None:
    book = "book: {name: a, currency: USD}\ntaxes: [{name: gst, percent: 5, on: materials}]\n"
    steps, _, _ = steps_of(book, "10.50", "0")
    assert steps["price-tax"] == Decimal("0.53")  # 0.525


def test_finished_jobs_move_the_rate_by_hand(examples_prices: PriceBook) -> None:
    """Worth two jobs at 0.05 h, then two jobs at 0.06 h: 0.055 h, and less sure of nothing than before."""
    rate = next(one for one in examples_prices.rates if one.task == "set_tile_wall")
    done = [one for one in examples_prices.done if one.task == "set_tile_wall"]
    same = [one.model_copy(update={"amount": Decimal(100), "hours": Decimal(6)}) for one in done]
    before, after = learned(rate, []), learned(rate, same)
    assert (before.mean, before.jobs, after.jobs) == (0.05, 0, 2)
    assert before.spread == pytest.approx(0.015) and after.mean == pytest.approx(0.055)
    assert after.spread < before.spread


def test_another_currency_or_unit_is_refused(examples_prices: PriceBook) -> None:
    plan, document = example_plan("tub-bathroom")
    euro = examples_prices.model_copy(update={"book": examples_prices.book.model_copy(update={"currency": "EUR"})})
    with pytest.raises(InputValueError, match="in EUR and the job in USD"):
        offer(plan, document, euro)
    by_litre = examples_prices.materials[5].model_copy(update={"unit": "l"})
    with pytest.raises(InputValueError, match="priced by the l; the plan counts by the kg"):
        offer(plan, document, examples_prices.model_copy(update={"materials": (by_litre,)}))


def test_sheets_that_do_not_go_round_a_stair_are_told(examples_prices: PriceBook) -> None:
    plan, document = example_plan("tub-bathroom")
    assert examples_prices.access is not None
    narrow = examples_prices.access.model_copy(update={"turn_wide": Decimal(300)})
    tight = offer(plan, document, examples_prices.model_copy(update={"access": narrow}))
    assert {one.at for one in tight.findings if one.code == "PRI-104"} == {
        ("stock/floor board 3x5",),
        ("stock/wall board 3x5",),
    }
    assert verify_price(document, tight.model_dump_json()) == ()


def test_a_book_that_lacks_things_says_so(examples_prices: PriceBook) -> None:
    plan, document = example_plan("tub-bathroom")
    bare = offer(plan, document, PriceBook(book=examples_prices.book))
    assert not bare.complete and bare.total == 0
    assert {one.code for one in bare.findings} == {"PRI-102", "PRI-103"}
    assert verify_price(document, bare.model_dump_json()) == ()

"""Ten random price books: every sum is as computed apart, in whole fractions and by trying all packs."""

import json
import random
from fractions import Fraction
from itertools import product
from typing import Any

import pytest

from example_plans import plan_of
from firstcourse.pricing import offer, read_book
from firstcourse.verify import verify_price

_EXAMPLE = plan_of("limber-floor")
# A job without a currency of its own takes the book's.
PLAN = _EXAMPLE.model_copy(update={"job": _EXAMPLE.job.model_copy(update={"currency": ""})})
TEXT = PLAN.model_dump_json(by_alias=True, indent=1) + "\n"
TASKS = (
    "set_up_room", "protect_and_clean", "set_board_floor", "fasten", "cut_board", "cut_board_hole",
    "cut_board_notch", "mix", "tape_seams", "trowel", "grout_joints", "seal_joints", "carry", "set_tile_floor",
    "set_large_tile_floor", "cut_tile_straight", "cut_tile_slanted", "cut_tile_notch", "cut_tile_hole",
)  # fmt: skip
SUPPLIERS = ("North", "South")


def money(rng: random.Random, most: int) -> str:
    return f"{rng.randint(1, most * 100) / 100:.2f}"


def random_book(seed: int) -> dict[str, Any]:
    """Packs from two suppliers, some cheaper by number; rates, risks, profit and taxes of every kind."""
    rng = random.Random(seed)
    book: dict[str, Any] = {
        "book": {"name": f"book {seed}", "currency": rng.choice(["USD", "GBP", "AUD", "MXN"]), "invented": True},
        "materials": [],
        "deliveries": [{"supplier": name, "price": money(rng, 80)} for name in SUPPLIERS[: rng.randint(0, 2)]],
        "labour": [{"task": "any", "price": money(rng, 90)}, {"task": "fasten", "price": money(rng, 40)}],
        "rates": [],
        "hire": [{"item": "saw", "days": rng.randint(1, 9), "price": money(rng, 60)}],
        "risks": [{"name": "rot", "cost": money(rng, 900), "percent": rng.randint(0, 100)}],
        "overhead": {"percent": rng.randint(0, 40)},
        "profit": {"way": rng.choice(["margin", "mark_up"]), "percent": rng.randint(0, 60)},
        "taxes": [
            {"name": rng.choice(["sales_tax", "vat", "gst"]), "percent": money(rng, 20), "on": base}
            for base in rng.sample(["price", "materials", "labour"], rng.randint(0, 2))
        ],
    }
    quote = {"quoted_by": "desk", "quoted_on": "2026-01-01", "valid_until": "2030-01-01"}
    for quantity in PLAN.quantities:
        if quantity.exact <= 0:
            continue
        for supplier in SUPPLIERS:
            holds = max(1, round(quantity.exact / rng.randint(2, 5)))
            row = {
                "item": quantity.item,
                "supplier": supplier,
                "holds": holds,
                "unit": quantity.unit,
                "kg": 5,
            } | quote
            book["materials"].append(row | {"price": money(rng, 60)})
            if rng.random() < 0.5:
                book["materials"].append(row | {"price": money(rng, 60), "from_packs": rng.randint(2, 4)})
    for task in TASKS:
        hours = f"{rng.randint(1, 4000) / 10_000:.4f}"
        book["rates"].append(
            {"task": task, "hours": hours, "spread": rng.randint(1, 60), "basis": "invented", "source": "drawn"}
        )
    return book


def cheapest(line: dict[str, Any], rows: list[dict[str, Any]]) -> Fraction:
    """The least that packs for a need cost: every number of packs of each supplier is tried."""
    need = Fraction(line["need"]) * (1 - Fraction(1, 10**9))
    sizes = sorted({(row["supplier"], row["holds"]) for row in rows})

    def cost(size: tuple[str, int], packs: int) -> Fraction:
        tiers = [row for row in rows if (row["supplier"], row["holds"]) == size]
        tier = max(
            (row for row in tiers if row.get("from_packs", 1) <= packs), key=lambda r: r.get("from_packs", 1)
        )
        return packs * Fraction(tier["price"])

    # A cheaper price by number may be worth packs that are not needed: some more than enough are tried.
    most = [range(int(-(-need // holds)) + 5) for _, holds in sizes]
    return min(
        sum((cost(size, packs) for size, packs in zip(sizes, mix, strict=True) if packs), Fraction(0))
        for mix in product(*most)
        if sum(packs * holds for packs, (_, holds) in zip(mix, sizes, strict=True)) >= need
        and not (line["one_lot"] and sum(packs > 0 for packs in mix) > 1)
    )


def cents(amount: Fraction) -> Fraction:
    """Half a cent goes up."""
    return Fraction(int(amount * 100 + Fraction(1, 2)), 100)


@pytest.mark.parametrize("seed", range(10))
def test_every_sum_is_as_computed_apart(seed: int) -> None:
    asked = random_book(seed)
    made = offer(PLAN, TEXT, read_book(json.dumps(asked).encode(), "book.json"))
    price = json.loads(made.model_dump_json())
    assert verify_price(TEXT, made.model_dump_json()) == ()
    lines = price["order"]
    assert len(lines) == sum(quantity.exact > 0 for quantity in PLAN.quantities)
    for line in lines:
        rows = [row for row in asked["materials"] if row["item"] == line["item"]]
        if not line["cuts"]:
            assert Fraction(line["cost"]) == cheapest(line, rows), line["item"]
    materials = sum((Fraction(line["cost"]) for line in lines), Fraction(0))
    brought = {pack["supplier"] for line in lines for pack in line["bought"]}
    deliveries = sum(
        (Fraction(one["price"]) for one in asked["deliveries"] if one["supplier"] in brought), Fraction(0)
    )
    rates = {one["task"]: Fraction(one["hours"]) for one in asked["rates"]}
    each = {one["task"]: Fraction(one["price"]) for one in asked["labour"]}
    labour = Fraction(0)
    for task in price["tasks"]:
        # Hours of a task are rounded to a hundredth, half up, as a cent is.
        hours = cents(Fraction(task["amount"]) * rates[task["task"]])
        assert Fraction(task["hours"]) == hours, task["task"]
        labour += hours * each.get(task["task"], each["any"])
    hire = sum((one["days"] * Fraction(one["price"]) for one in asked["hire"]), Fraction(0))
    direct = materials + deliveries + labour + hire
    risk = sum((Fraction(one["cost"]) * one["percent"] / 100 for one in asked["risks"]), Fraction(0))
    cost = (direct + risk) * (1 + Fraction(asked["overhead"]["percent"], 100))
    share = Fraction(asked["profit"]["percent"], 100)
    before = cents(cost / (1 - share) if asked["profit"]["way"] == "margin" else cost * (1 + share))
    bases = {"price": before, "materials": materials, "labour": labour}
    taxes = [cents(bases[one["on"]] * Fraction(one["percent"]) / 100) for one in asked["taxes"]]
    assert Fraction(price["price"]) == before
    assert Fraction(price["total"]) == before + sum(taxes, Fraction(0))

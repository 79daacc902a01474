"""Proves an order and a price again from price.json and the plan.json it is for."""

import hashlib
import json
import math
from collections.abc import Iterator, Mapping
from decimal import ROUND_HALF_UP, Decimal, DecimalException, localcontext
from typing import Any

from firstcourse.verify.priced_fields import decimal, total
from firstcourse.verify.priced_order import check_order
from firstcourse.verify.priced_work import check_load, check_tasks, work_of
from firstcourse.verify.verdict import Objection

Row = Mapping[str, Any]
_CENT = Decimal("0.01")
_FIELDS = {
    "format", "version", "plan", "on", "currency", "digest", "book", "order", "load", "tasks", "steps", "findings",
    "complete", "price", "total",
}  # fmt: skip


def verify_price(plan_text: str, price_text: str) -> tuple[Objection, ...]:
    """Every objection to a price; none where each line follows from the plan and the price book in it.

    Args:
        plan_text: A plan.json, which `verify_text` proves by itself.
        price_text: The price.json of that plan.
    """
    try:
        plan, price = json.loads(plan_text), json.loads(price_text)
        if price["format"] != "firstcourse-price" or price["version"] != 1 or set(price) != _FIELDS:
            return (Objection("VER-950", "price", "is no price of format 1"),)
        with localcontext(prec=60):
            return tuple(_objections(plan, plan_text, price))
    except (
        KeyError,
        TypeError,
        ValueError,
        AttributeError,
        IndexError,
        ArithmeticError,
        DecimalException,
    ) as error:
        return (Objection("VER-950", "price", f"cannot be read: {type(error).__name__} {error}"),)
    except RecursionError:
        return (Objection("VER-950", "price", "is nested too deep"),)


def _objections(plan: Row, plan_text: str, price: Row) -> Iterator[Objection]:
    book = price["book"]
    text = json.dumps(book, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    if hashlib.sha256(text.encode()).hexdigest() != price["digest"]:
        yield Objection("VER-950", "book", "is not the one that was sealed")
    if hashlib.sha256(plan_text.encode()).hexdigest() != price["plan"]:
        yield Objection("VER-950", "plan", "is another plan than the one that was priced")
    own = plan["job"]["currency"]
    if price["currency"] != book["book"]["currency"] or own not in ("", price["currency"]):
        yield Objection("VER-950", "currency", "is not that of the book and the job")
    if price["on"] != plan["job"]["date"]:
        yield Objection("VER-950", "on", "is not the day of the plan")
    yield from check_order(plan, price)
    yield from check_load(plan, price)
    yield from check_tasks(plan, price)
    yield from _steps(price)
    yield from _told(plan, price)


def _steps(price: Row) -> Iterator[Objection]:
    wanted = list(_wanted(price))
    told = [
        (one["formula"], one["of"], {name: decimal(value) for name, value in one["inputs"].items()}, one["result"])
        for one in price["steps"]
    ]
    for step, (formula, of, inputs, result) in zip(told, wanted, strict=False):
        if step[:3] != (formula, of, inputs) or decimal(step[3]) != result:
            yield Objection("VER-958", f"{formula} {of}".strip(), f"does not come to {result}")
    if len(told) != len(wanted):
        yield Objection("VER-958", "steps", "are not those of the book")
    before = next((result for formula, _, _, result in wanted if formula == "price-before_tax"), None)
    if decimal(price["price"]) != before or decimal(price["total"]) != wanted[-1][3]:
        yield Objection("VER-958", "total", "is not what the steps come to")


def _wanted(price: Row) -> Iterator[tuple[str, str, dict[str, Decimal], Decimal]]:
    """Each step as it must be: formula, what it is of, inputs, result."""
    book, load = price["book"], price["load"]
    suppliers = {one["supplier"] for line in price["order"] for one in line["bought"]}
    direct = {
        "materials": total(decimal(line["cost"]) for line in price["order"]),
        "deliveries": total(decimal(one["price"]) for one in book["deliveries"] if one["supplier"] in suppliers),
        "labour": total(decimal(task["cost"]) for task in price["tasks"]),
        "hire": total(decimal(one["price"]) * one["days"] for one in book["hire"]),
        "disposal": total(
            decimal(one["price"]) * load["number"] for one in book["disposal"] if one["by"] == load["by"]
        ),
    }
    for name, cost in direct.items():
        yield f"price-{name}", "", {}, cost
    cost = total(direct.values())
    yield "price-direct", "", direct, cost
    risks = {}
    for one in book["risks"]:
        inputs = {"cost": decimal(one["cost"]), "percent": decimal(one["percent"])}
        risks[one["name"]] = inputs["cost"] * inputs["percent"] / 100
        yield "price-risk", one["name"], inputs, risks[one["name"]]
    aside = total(risks.values())
    yield "price-contingency", "", risks, aside
    percent = decimal(book["overhead"]["percent"]) if book["overhead"] else Decimal(0)
    overhead = (cost + aside) * percent / 100
    yield "price-overhead", "", {"direct": cost, "contingency": aside, "percent": percent}, overhead
    whole = cost + aside + overhead
    yield "price-cost", "", {"direct": cost, "contingency": aside, "overhead": overhead}, whole
    way, share = (
        (book["profit"]["way"], decimal(book["profit"]["percent"])) if book["profit"] else ("none", Decimal(0))
    )
    asked = _cents(whole / (1 - share / 100) if way == "margin" else whole * (1 + share / 100))
    shares = {"margin": _part(asked - whole, asked), "mark_up": _part(asked - whole, whole)}
    yield "price-before_tax", way, {"cost": whole, "percent": share, **shares}, asked
    base = {"price": asked, "materials": direct["materials"], "labour": direct["labour"]}
    taxes = []
    for one in book["taxes"]:
        rate = decimal(one["percent"])
        taxes.append(_cents(base[one["on"]] * rate / 100))
        yield "price-tax", f"{one['name']}-{one['on']}", {"base": base[one["on"]], "percent": rate}, taxes[-1]
    yield "price-total", "", {"price": asked, "tax": total(taxes)}, asked + total(taxes)


def _cents(amount: Decimal) -> Decimal:
    return amount.quantize(_CENT, ROUND_HALF_UP)


def _part(part: Decimal, whole: Decimal) -> Decimal:
    return _cents(100 * part / whole) if whole else Decimal(0)


def _told(plan: Row, price: Row) -> Iterator[Objection]:
    """Stale prices, what has no price or no rate, and sheets that do not go up are told; nothing else is."""
    book = price["book"]
    wanted = [_found("PRI-102", line["item"], "price") for line in price["order"] if not line["bought"]]
    done = {task["task"] for task in price["tasks"]}
    without = [task for task in work_of(plan, price) if task not in done]
    wanted += [_found("PRI-103", "job", "rate", task={"name": task}) for task in without]
    if price["complete"] != (not wanted):
        yield Objection("VER-959", "complete", "is said otherwise than prices and rates are")
    for line in price["order"]:
        wanted += _stale(line, price)
    wanted += _too_long(plan, book["access"])
    told = list(price["findings"])
    for one in wanted:
        if one not in told:
            yield Objection("VER-959", one["at"][0], f"{one['code']} is not told, or not as it is")
        else:
            told.remove(one)
    for one in told:
        yield Objection("VER-959", one["at"][0], f"{one['code']} is told, and is not so")


def _found(
    code: str, at: str, remedy: str, measured: Any = None, limit: Any = None, **values: Any
) -> dict[str, Any]:
    """A finding as it must stand."""
    told = {"code": code, "severity": "fix", "at": [at], "measured": measured, "limit": limit, "rule": ""}
    return {**told, "remedies": [remedy], "values": values}


def _stale(line: Row, price: Row) -> Iterator[dict[str, Any]]:
    """Of each supplier of a line the first of its quotes to run out, where that is before the day."""
    used = {(one["supplier"], decimal(one["holds"])) for one in line["bought"]}
    rows = [row for row in price["book"]["materials"] if row["item"] == line["item"]]
    own = [row for row in rows if (row["supplier"], decimal(row["holds"])) in used]
    for supplier in {row["supplier"] for row in own}:
        first = min((row for row in own if row["supplier"] == supplier), key=lambda row: row["valid_until"])
        if first["valid_until"] < price["on"]:
            names = {"supplier": supplier, "by": first["quoted_by"], "quoted": first["quoted_on"]}
            names["until"] = first["valid_until"]
            yield _found("PRI-101", line["item"], "ask", **{key: {"name": name} for key, name in names.items()})


def _too_long(plan: Row, access: Row | None) -> Iterator[dict[str, Any]]:
    if access is None or access["turn_wide"] is None:
        return
    longest = math.sqrt(8) * float(decimal(access["turn_wide"]))
    high = math.inf if access["door_high"] is None else float(decimal(access["door_high"]))
    new = {sheet["stock"] for sheet in plan["sheets"] if sheet["source"] == "new"}
    for item in plan["stock"]:
        ways = [(a, b) for a, b in (item["size"], reversed(item["size"])) if a <= longest and b <= high]
        if item["id"] in new and not ways:
            long = {"value": max(item["size"]), "unit": "mm"}
            limit = {"value": float(f"{longest:.9g}"), "unit": "mm", "sense": "most"}
            yield _found("PRI-104", f"stock/{item['id']}", "cut", long, limit)

"""Proof of a comparison from the plans and prices it is of: every figure, who is best and who is beaten."""

import hashlib
import json
import math
from collections.abc import Iterator, Sequence
from datetime import date
from decimal import Decimal
from typing import Any

from firstcourse.verify.verdict import Objection

_CLOSE = 2e-6
"""Areas and masses are kept to so much of a unit or of themselves."""
_NAMES = ("cheapest", "lightest", "quickest", "fewest_cuts", "least_waste")


def verify_comparison(text: str, plans: Sequence[tuple[str, str] | None]) -> tuple[Objection, ...]:
    """Every objection to a comparison; none where it follows from its plans, which `verify_text` proves.

    Args:
        text: The comparison as JSON.
        plans: By its rows, each plan.json and its price.json, empty without one; None where it has no plan.
    """
    try:
        return tuple(_objections(json.loads(text), plans))
    except (KeyError, TypeError, ValueError, AttributeError, IndexError, ArithmeticError) as error:
        return (Objection("VER-990", "comparison", f"cannot be read: {type(error).__name__} {error}"),)


def _objections(told: Any, plans: Sequence[tuple[str, str] | None]) -> Iterator[Objection]:
    if len(told["rows"]) != len(plans):
        yield Objection("VER-990", "comparison", f"has {len(told['rows'])} rows for {len(plans)} plans")
        return
    sound: dict[int, dict[str, Any]] = {}
    for number, (row, documents) in enumerate(zip(told["rows"], plans, strict=True)):
        if documents is None:
            if row["figures"] is not None or not row["problem"] or row["plan"] or row["price"]:
                yield Objection("VER-991", f"row {number}", "has figures, and no plan")
            continue
        seals = [hashlib.sha256(one.encode()).hexdigest() if one else "" for one in documents]
        if [row["plan"], row["price"]] != seals or row["problem"]:
            yield Objection("VER-991", f"row {number}", "is of another plan or another price")
        plan, price = json.loads(documents[0]), json.loads(documents[1]) if documents[1] else None
        figures = _figures(plan, price)
        for name in figures.keys() | row["figures"].keys():
            if not _same(row["figures"].get(name), figures.get(name)):
                found = figures.get(name)
                yield Objection("VER-992", f"row {number}", f"says {name} {row['figures'].get(name)}, is {found}")
        stops = sorted({one["code"] for one in plan["findings"] if one["severity"] == "stop"})
        if row["stops"] != stops:
            yield Objection("VER-993", f"row {number}", f"says that {row['stops']} stop the work, is {stops}")
        if not stops:
            sound[number] = row["figures"]
        if price is not None and price["currency"] != told["currency"]:
            yield Objection("VER-991", f"row {number}", f"is priced in {price['currency']}")
        if price is not None and _is_invented(price["book"]) != told["invented"]:
            yield Objection("VER-991", f"row {number}", "is priced by a book that is invented, or is not")
    for number, row in enumerate(told["rows"]):
        beaten = [] if row["figures"] is None else _beaten(row["figures"], sound)
        if row["beaten_by"] != beaten:
            yield Objection("VER-994", f"row {number}", f"is beaten by {beaten}, not by {row['beaten_by']}")
    if told["best"] != (best := _best(list(sound.items()))):
        yield Objection("VER-995", "comparison", f"says {told['best']}, the best are {best}")


def _is_invented(book: Any) -> bool:
    return book["book"]["invented"] or any(rate["basis"] == "invented" for rate in book["rates"])


def _same(one: Any, other: Any) -> bool:
    if isinstance(one, float) and isinstance(other, float):
        return math.isclose(one, other, rel_tol=_CLOSE, abs_tol=1e-3)
    return bool(one == other)


def _ring(ring: Sequence[Sequence[float]]) -> float:
    """Area [m²] of a ring in millimetres, by its corners."""
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return abs(math.fsum(a[0] * b[1] - b[0] * a[1] for a, b in pairs)) / 2e6


def _face(shape: Any) -> float:
    return _ring(shape["outline"]) - math.fsum(_ring(hole) for hole in shape.get("holes", ()))


def _figures(plan: Any, price: Any) -> dict[str, Any]:
    tiles = [tile for surface in plan["surfaces"] for tile in surface["tiles"]]
    starts = [area["starts"][0] for surface in plan["surfaces"] for area in surface["tiled"] if area["starts"]]
    narrow = [start["smallest_cut"] for start in starts if start["smallest_cut"] > 0]
    bought = [sheet for sheet in plan["sheets"] if sheet["source"] == "new"]
    heights = [
        math.fsum(layer["thickness"] for layer in surface["layers"])
        for surface in plan["surfaces"]
        if surface["kind"] == "floor"
    ]
    days = None
    if plan.get("schedule"):
        begun = min(date.fromisoformat(task["starts"].split("T")[0]) for task in plan["schedule"]["tasks"])
        days = 1 + (date.fromisoformat(plan["schedule"]["ends"].split("T")[0]) - begun).days
    hours = (
        None
        if price is None
        else format(sum((Decimal(task["hours"]) for task in price["tasks"]), Decimal(0)), "f")
    )
    return {
        "sheets": len(bought),
        "cuts": len([cut for sheet in plan["sheets"] for cut in sheet["cuts"]]),
        "tile_cuts": len([tile for tile in tiles if not tile["whole"]]),
        "smallest_cut": min(narrow, default=None),
        "waste_m2": _waste(bought, {piece["id"]: piece for piece in plan["pieces"]}),
        "kg": math.fsum(map(_mass, plan["surfaces"])),
        "height": max(heights, default=0.0),
        "hours": hours,
        "cost": None if price is None else price["total"],
        "complete": price is None or price["complete"],
        "days": days,
    }


def _waste(bought: Sequence[Any], pieces: dict[str, Any]) -> float:
    whole = math.fsum(sheet["size"][0] * sheet["size"][1] / 1e6 for sheet in bought)
    parts = [part for sheet in bought for part in sheet["parts"]]
    hung = math.fsum(_face(pieces[part["piece"]]) for part in parts if part.get("piece") is not None)
    kept = [part["size"] for part in parts if part.get("piece") is None and part.get("keep")]
    return whole - hung - math.fsum(wide * high / 1e6 for wide, high in kept)


def _mass(surface: Any) -> float:
    boards, tile = (math.fsum(map(_face, surface[name])) for name in ("boards", "tiles"))
    return math.fsum(
        (boards if layer["of"].startswith("board") else tile) * layer["thickness"] / 1000 * layer["density_kg_m3"]
        for layer in surface["layers"]
    )


def _ranks(row: Any) -> list[Decimal | float | None]:
    """The figures as numbers of which less is better; None where there is none."""
    least = row["smallest_cut"]
    priced = row["complete"] and row["cost"] is not None
    whole = [row[name] for name in ("sheets", "cuts", "tile_cuts", "waste_m2", "kg", "height", "days")]
    money = [Decimal(row[name]) if priced else None for name in ("hours", "cost")]
    return [*whole, -math.inf if least is None else -least, *money]


def _beaten(row: Any, sound: dict[int, Any]) -> list[int]:
    own = _ranks(row)
    found = []
    for number, other in sound.items():
        pairs = list(zip(_ranks(other), own, strict=True))
        if any((a is None) != (b is None) for a, b in pairs):
            continue
        known = [(a, b) for a, b in pairs if a is not None and b is not None]
        if all(a <= b for a, b in known) and any(a < b for a, b in known):
            found.append(number)
    return found


def _best(sound: list[tuple[int, Any]]) -> dict[str, list[int]]:
    whole = [(number, row) for number, row in sound if row["complete"] and row["cost"] is not None]
    if all(row["days"] is not None for _, row in sound):
        quick = [(number, row["days"]) for number, row in sound]
    else:
        quick = [(number, Decimal(row["hours"])) for number, row in whole]
    asked = (
        [(number, Decimal(row["cost"])) for number, row in whole],
        [(number, row["kg"]) for number, row in sound],
        quick,
        [(number, row["cuts"] + row["tile_cuts"]) for number, row in sound],
        [(number, row["waste_m2"]) for number, row in sound],
    )
    return {
        name: [number for number, value in values if value == min(value for _, value in values)]
        for name, values in zip(_NAMES, asked, strict=True)
        if values
    }

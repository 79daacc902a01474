"""A building proved again: the plan of each phase by itself, what is carried between them, sums and deliveries."""

import json
from collections import Counter
from collections.abc import Iterator, Mapping
from hashlib import sha256
from typing import Any

from firstcourse.verify.proof import verify_text
from firstcourse.verify.verdict import Objection

HEAP = ""
"""All rooms as one, among the plans of phases."""
_MOST_KEPT = 400
"""Kept offcuts that a job document takes."""
_Tree = dict[str, Any]


def verify_building(document: str, plans: Mapping[str, str]) -> tuple[Objection, ...]:
    """Prove a building.json from itself and the plans of its phases.

    Args:
        document: The building.json.
        plans: By phase its plan.json; under no name that of all rooms as one, where there is one.

    Returns:
        Everything that does not hold.
    """
    try:
        building = json.loads(document)
        read = {name: json.loads(text) for name, text in plans.items()}
        if (building["format"], building["version"]) != ("firstcourse-building", 1):
            return (Objection("VER-961", "format", "is no building.json of version 1"),)
        own = [*_plans(plans), *_groups(building, read)]
        return tuple(
            own or (*_phases(building, read, plans), *_heap(building, read, plans), *_orders(building, read))
        )
    except (ValueError, KeyError, TypeError, AttributeError, IndexError, RecursionError) as error:
        return (Objection("VER-961", "building", f"cannot be read: {type(error).__name__} {error}"),)


def _plans(plans: Mapping[str, str]) -> Iterator[Objection]:
    for name, text in plans.items():
        for one in verify_text(text).objections:
            yield Objection(one.code, f"{name or 'all rooms'}: {one.where}", one.message)


def _groups(building: _Tree, read: Mapping[str, _Tree]) -> Iterator[Objection]:
    """Each room is in one phase, each phase in one delivery, and there is a plan of each phase and no other."""
    given = building["given"]
    for what, known, named in (
        (
            "rooms",
            [one["number"] for one in given["rooms"]],
            [name for p in given["phases"] for name in p["rooms"]],
        ),
        (
            "phases",
            [one["id"] for one in given["phases"]],
            [name for d in given["deliveries"] for name in d["phases"]],
        ),
    ):
        if sorted(known) != sorted(named) or len(set(known)) != len(known):
            yield Objection("VER-962", what, "are not each named once, and in one group")
    phases = [one["id"] for one in given["phases"]]
    wanted = {*phases, *([HEAP] if building["derived"]["heap"] is not None else ())}
    if set(read) != wanted or [one["id"] for one in building["derived"]["phases"]] != phases:
        yield Objection("VER-962", "phases", f"have plans {sorted(read)}, not {sorted(wanted)}")
        return
    rooms = {one["id"]: one["rooms"] for one in given["phases"]}
    rooms |= {HEAP: [one["number"] for one in given["rooms"]]}
    for name, plan in read.items():
        if [room["name"] for room in plan["given"]["job"]["rooms"]] != rooms[name]:
            yield Objection("VER-963", name or "all rooms", "is not the plan of its rooms")
    yield from _taped(building, read)


def _taped(building: _Tree, read: Mapping[str, _Tree]) -> Iterator[Objection]:
    """Rooms told to be alike are, others are not, and a room is taped in the heap as in its phase."""
    taped: dict[str, _Tree] = {}
    heads = []
    for plan in read.values():
        job = plan["given"]["job"]
        heads.append({name: value for name, value in job.items() if name not in ("rooms", "offcuts")})
        for room in job["rooms"]:
            number, own = room["name"], {name: value for name, value in room.items() if name != "name"}
            if taped.setdefault(number, own) != own:
                yield Objection("VER-963", number, "is taped otherwise in two plans")
    if any(head != heads[0] for head in heads):
        yield Objection("VER-963", "phases", "are not of one building: they are given otherwise")
    types = {one["number"]: one["type"] for one in building["given"]["rooms"]}
    told = [tuple(one["rooms"]) for one in building["derived"]["alike"]]
    groups: dict[str, list[str]] = {}
    for number, kind in types.items():
        groups.setdefault(json.dumps([kind, taped[number]], sort_keys=True), []).append(number)
    if sorted(told) != sorted(map(tuple, groups.values())):
        yield Objection(
            "VER-964", "alike", f"says {sorted(told)}; the plans give {sorted(map(tuple, groups.values()))}"
        )
    for one in building["derived"]["alike"]:
        if any(types[number] != one["type"] for number in one["rooms"]):
            yield Objection("VER-964", one["type"], "is not the type of the rooms named")


def _new(plan: _Tree) -> dict[str, int]:
    return dict(Counter(sheet["stock"] for sheet in plan["sheets"] if sheet["source"] == "new"))


def _cut(where: str, told: _Tree, plan: _Tree, text: str) -> Iterator[Objection]:
    if told["plan"] != sha256(text.encode()).hexdigest():
        yield Objection("VER-965", where, "its plan.json is another than the one that was planned")
    if told["sheets"] != _new(plan):
        yield Objection("VER-966", where, f"says {told['sheets']} new sheets, its plan cuts {_new(plan)}")


def _phases(building: _Tree, read: Mapping[str, _Tree], plans: Mapping[str, str]) -> Iterator[Objection]:
    total: Counter[str] = Counter()
    # What is on the rack at first is what the first phase is given.
    first = building["given"]["phases"][0]["id"]
    rack = _rack(read[first]["given"]["job"].get("offcuts", []))
    for told in building["derived"]["phases"]:
        name, plan = told["id"], read[told["id"]]
        yield from _cut(name, told, plan, plans[name])
        if _rack(plan["given"]["job"].get("offcuts", [])) != rack:
            yield Objection("VER-967", name, "is not given the pieces that are on the rack before it")
        used = sorted(one["source"].removeprefix("offcut:") for one in plan["sheets"] if one["source"] != "new")
        if list(told["used"]) != used:
            yield Objection("VER-967", name, f"says it uses {told['used']}, its plan uses {used}")
        left = [one for one in rack if one[0] not in used]
        left += [
            (f"{name} {sheet['id']} {part['id']}", sheet["stock"], tuple(part["size"]))
            for sheet in plan["sheets"]
            for part in sheet["parts"]
            if part["keep"]
        ]
        rack = sorted(sorted(left, key=lambda one: (-one[2][0] * one[2][1], one[0]))[:_MOST_KEPT])
        if _rack(told["rack"]) != rack:
            yield Objection(
                "VER-967", name, "the rack after it is not what was on it, less what it used, and what it kept"
            )
        total.update(_new(plan))
    if building["derived"]["sheets"] != dict(total):
        yield Objection(
            "VER-966", "sheets", f"says {building['derived']['sheets']}, the phases take {dict(total)}"
        )


def _rack(pieces: list[_Tree]) -> list[tuple[str, str, tuple[float, ...]]]:
    return sorted((one["id"], one["stock"], tuple(one["size"])) for one in pieces)


def _heap(building: _Tree, read: Mapping[str, _Tree], plans: Mapping[str, str]) -> Iterator[Objection]:
    derived = building["derived"]
    told, sheets = derived["heap"], derived["sheets"]
    if told is None:
        if derived["saved"]:
            yield Objection("VER-968", "saved", "nothing is compared")
        return
    plan = read[HEAP]
    yield from _cut("all rooms", told, plan, plans[HEAP])
    first = read[building["given"]["phases"][0]["id"]]
    if _rack(plan["given"]["job"].get("offcuts", [])) != _rack(first["given"]["job"].get("offcuts", [])):
        yield Objection("VER-967", "all rooms", "is not given the pieces that are on the rack at first")
    stocks = {*sheets, *told["sheets"]}
    saved = {stock: sheets.get(stock, 0) - told["sheets"].get(stock, 0) for stock in stocks}
    if derived["saved"] != saved:
        yield Objection("VER-968", "saved", f"says {derived['saved']}, it is {saved}")


def _orders(building: _Tree, read: Mapping[str, _Tree]) -> Iterator[Objection]:
    lots = {one["tile"]: one["packs"] for one in building["given"]["lots"]}
    given, told = building["given"]["deliveries"], building["derived"]["deliveries"]
    if [one["id"] for one in given] != [one["id"] for one in told]:
        yield Objection("VER-969", "deliveries", "are not those given")
        return
    for delivery, order in zip(given, told, strict=True):
        packs: Counter[str] = Counter()
        kinds = {}
        for phase in delivery["phases"]:
            for one in read[phase]["quantities"]:
                packs[one["item"]] += one["buy"]
                kinds[one["item"]] = one["pack"]
        lines = [{"item": item, "packs": packs[item], "pack": kinds[item]} for item in sorted(packs)]
        if order["lines"] != lines:
            yield Objection("VER-969", order["id"], "its packs are not those of its phases")
        over = [tile for tile, most in lots.items() if packs[f"tile_stock/{tile}"] > most]
        if list(order["over"]) != over:
            yield Objection("VER-969", order["id"], f"says {order['over']} go beyond one lot, it is {over}")

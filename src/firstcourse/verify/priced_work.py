"""Hours held against what is drawn, the book's rates and the hours that were kept."""

import math
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from decimal import ROUND_HALF_UP, Decimal
from typing import Any

from firstcourse.verify.priced_fields import area, decimal, measures, near, net, total
from firstcourse.verify.verdict import Objection

Row = Mapping[str, Any]
_SIN_9 = math.sin(math.radians(9))
_LARGE_MM = 381


def work_of(plan: Row, price: Row) -> dict[str, tuple[float, str]]:
    """By task, how much of it the plan asks for, with its unit."""
    found: dict[str, tuple[float, str]] = {}
    surfaces = plan["surfaces"]
    found["set_up_room"] = len({one["room"] for one in surfaces}), "room"
    floor = math.fsum(area(one["outline"]) for one in surfaces if one["kind"] == "floor")
    found["protect_and_clean"] = floor / 1e6, "m2"
    counted: Counter[str] = Counter()
    fixed = {board["piece"] for one in surfaces for board in one["boards"] if board["fixed"]}
    size = {item["id"]: _kind(item) for item in plan["tile_stock"]}
    fasteners = 0
    for one in surfaces:
        place = one["kind"] if one["kind"] in ("floor", "wall") else "other"
        for board in one["boards"]:
            if not board["fixed"]:
                counted[f"set_board_{place}"] += 1
                fasteners += len(board["fasteners"])
        for tile in one["tiles"]:
            if not tile["fixed"] and tile["stock"] in size:
                counted[f"set_{size[tile['stock']]}_{place}"] += 1
    for task, number in counted.items():
        found[task] = number, "board" if "board" in task else "tile"
    found["fasten"] = fasteners, "fastener"
    pieces = [piece for piece in plan["pieces"] if piece["id"] not in fixed]
    found["cut_board"] = math.fsum(_sawn(sheet) for sheet in plan["sheets"]) / 1000, "m"
    found["cut_board_hole"] = sum(len(piece["holes"]) for piece in pieces), "hole"
    found["cut_board_notch"] = sum(_inner(piece["outline"]) for piece in pieces), "notch"
    found |= _by_workings(plan)
    found["carry"] = float(decimal(price["load"]["kg"])), "kg"
    return {task: (amount, unit) for task, (amount, unit) in found.items() if amount > 0}


def _kind(item: Row) -> str:
    return "mosaic" if item["sheet"] else "large_tile" if max(item["size"]) >= _LARGE_MM else "tile"


def _sawn(sheet: Row) -> float:
    """A cut runs through the part it is made in, whose size the two halves give."""
    size = {part["id"]: tuple(part["size"]) for part in sheet["parts"]}
    sawn = 0.0
    for cut in reversed(sheet["cuts"]):
        (w1, h1), (w2, h2) = size[cut["gives"][0]], size[cut["gives"][1]]
        across = cut["along"] == "x"
        sawn += w1 if across else h1
        size[cut["of"]] = (w1, h1 + h2) if across else (w1 + w2, h1)
    return sawn


def _inner(ring: Sequence[Sequence[float]]) -> int:
    count = 0
    for index, b in enumerate(ring):
        a, c = ring[index - 1], ring[(index + 1) % len(ring)]
        p, q = (b[0] - a[0], b[1] - a[1]), (c[0] - b[0], c[1] - b[1])
        count += p[0] * q[1] - p[1] * q[0] < -_SIN_9 * math.hypot(*p) * math.hypot(*q)
    return count


def _by_workings(plan: Row) -> dict[str, tuple[float, str]]:
    mixed = ("bedding_mortar", "tile_mortar", "large_tile_mortar", "grout")
    need = {one["item"]: one for one in plan["quantities"]}
    found = {"mix": (math.fsum(need[name]["exact"] for name in mixed if name in need), "kg")}
    if "seam_tape" in need:
        found["tape_seams"] = need["seam_tape"]["exact"] / 1000, "m"
    named = {
        "trowel": (mixed[:3], "area", 1.0, "m2"),
        "grout_joints": (("grout",), "area", 1.0, "m2"),
        "seal_joints": (("joint_sealant",), "along", 1000.0, "m"),
    }
    for task, (items, field, size, unit) in named.items():
        workings = [plan["workings"][need[item]["working"]] for item in items if item in need]
        found[task] = math.fsum(number for one in workings for number in measures(one, field)) / size, unit
    for working in plan["workings"].values():
        if working["formula"] == "quantities-cuts":
            kinds = [one["word"] for one in working["inputs"]["kinds"]]
            for kind, along in zip(kinds, measures(working, "lengths"), strict=True):
                before = found.get(f"cut_tile_{kind}", (0.0, "m"))[0]
                found[f"cut_tile_{kind}"] = before + along / 1000, "m"
    return found


def check_tasks(plan: Row, price: Row) -> Iterator[Objection]:
    """Every task with a rate and a price of an hour is there, with its amount, hours and cost."""
    work, book = work_of(plan, price), price["book"]
    rates = {one["task"]: one for one in book["rates"]}
    each = {one["task"]: one["price"] for one in book["labour"]}
    able = {task for task in work if task in rates and (task in each or "any" in each)}
    told = [task["task"] for task in price["tasks"]]
    if set(told) != able or len(told) != len(able):
        yield Objection("VER-956", "tasks", "are not those that the plan asks for and the book has rates for")
        return
    for task in price["tasks"]:
        amount, unit = work[task["task"]]
        if task["unit"] != unit or not near(task["amount"], amount):
            yield Objection("VER-956", task["task"], f"is not {amount:.9g} {unit}, as drawn")
        rate = rates[task["task"]]
        done = [one for one in book["done"] if one["task"] == task["task"]]
        mean, spread = _after(rate, done)
        hours = decimal(task["amount"]) * decimal(task["rate"])
        if (
            not near(task["rate"], mean)
            or not near(task["spread"], spread)
            or (task["jobs"], task["basis"], task["source"]) != (len(done), rate["basis"], rate["source"])
            or decimal(task["hours"]) != hours.quantize(Decimal("0.01"), ROUND_HALF_UP)
            or decimal(task["each"]) != decimal(each.get(task["task"], each.get("any")))
            or decimal(task["cost"]) != decimal(task["hours"]) * decimal(task["each"])
        ):
            yield Objection("VER-957", task["task"], "its rate, hours or cost do not follow from the book")


def _after(rate: Row, done: Sequence[Row]) -> tuple[float, float]:
    """Mean and spread of a rate after jobs, heard one after the other."""
    mean, worth, shape = float(rate["hours"]), float(rate["worth"]), 2.0
    scale = (float(rate["spread"]) / 100 * mean) ** 2 * worth / (worth + 1)
    for one in done:
        found = float(one["hours"]) / float(one["amount"])
        scale += worth * (found - mean) ** 2 / (2 * (worth + 1))
        mean = (worth * mean + found) / (worth + 1)
        worth, shape = worth + 1, shape + 0.5
    return mean, math.sqrt(scale * (worth + 1) / (worth * (shape - 1)))


def check_load(plan: Row, price: Row) -> Iterator[Objection]:
    """Mass, trips, waste and how it goes."""
    load, book = price["load"], price["book"]
    kg = total(decimal(line["kg"]) for line in price["order"] if line["kg"] is not None)
    unknown = [line["item"] for line in price["order"] if line["kg"] is None]
    trips = climbed = None
    if book["access"] is not None:
        trips = math.ceil(kg / decimal(book["access"]["trip_kg"]))
        climbed = trips * book["access"]["steps"]
    if decimal(load["kg"]) != kg or (load["unknown"], load["trips"], load["climbed"]) != (unknown, trips, climbed):
        yield Objection("VER-960", "load", "does not weigh what is ordered, or takes other trips")
    waste = [*_boards_left(plan), *_tiles_left(plan, price)]
    mass, litres = math.fsum(one for one, _ in waste), math.fsum(one for _, one in waste) / 1e6
    if not near(load["waste_kg"], mass) or not near(load["waste_litres"], litres):
        yield Objection("VER-960", "load", "its waste is not what is cut off and breaks")
    heavy, bulky = decimal(load["waste_kg"]), decimal(load["waste_litres"])
    ways = []
    for one in book["disposal"]:
        number = max(math.ceil(bulky / decimal(one["litres"])), math.ceil(heavy / decimal(one["most_kg"])))
        if number:
            ways.append((decimal(one["price"]) * number, number, one["by"]))
    _, number, by = min(ways, default=(Decimal(0), 0, ""))
    if (load["by"], load["number"]) != (by, number):
        yield Objection("VER-960", "load", "waste goes cheaper otherwise, or does not go")


def _boards_left(plan: Row) -> Iterator[tuple[float, float]]:
    pieces = {piece["id"]: net(piece) for piece in plan["pieces"]}
    for item in plan["stock"]:
        mass = plan["workings"].get(f"quantities-sheet_mass@stock/{item['id']}")
        if mass is None:
            continue
        left = 0.0
        for sheet in plan["sheets"]:
            if sheet["stock"] == item["id"] and sheet["source"] == "new":
                left += math.prod(sheet["size"])
                for part in sheet["parts"]:
                    if part["piece"] is not None:
                        left -= pieces[part["piece"]]
                    elif part["keep"]:
                        left -= math.prod(part["size"])
        yield left / math.prod(item["size"]) * mass["result"]["value"], left * item["thickness"]


def _tiles_left(plan: Row, price: Row) -> Iterator[tuple[float, float]]:
    need = {line["item"]: float(decimal(line["exact"]) + decimal(line["breakage"])) for line in price["order"]}
    for item in plan["tile_stock"]:
        laid, dense = 0.0, 0.0
        for surface in plan["surfaces"]:
            own = [tile for tile in surface["tiles"] if tile["stock"] == item["id"] and not tile["fixed"]]
            laid += math.fsum(map(net, own))
            layers = [one for one in surface["layers"] if one["of"] == "tile" and own]
            same = [one["density_kg_m3"] or 0.0 for one in layers if one["thickness"] == item["thickness"]]
            dense = max([dense, *same])
        wide, high = item["size"]
        face = wide**2 * math.sqrt(3) / 2 if item["shape"] == "hexagon" else wide * high
        left = max(0.0, need.get(f"tile_stock/{item['id']}", 0.0) * face - laid) * item["thickness"]
        yield left / 1e9 * dense, left

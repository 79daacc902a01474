"""Proves a proposal again from proposal.json, the price.json it rests on, and the plan.json of both."""

import hashlib
import json
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, timedelta
from decimal import Decimal, localcontext
from fractions import Fraction
from typing import Any

from firstcourse.verify.priced_fields import decimal, near, net, total
from firstcourse.verify.verdict import Objection

Row = Mapping[str, Any]
_FIELDS = {
    "format", "version", "plan", "offer", "on", "currency", "words", "rooms", "stops", "included", "excluded",
    "assumed", "found", "sections", "price", "taxes", "total", "payments", "starts", "ends", "valid_until",
}  # fmt: skip
_OF_WATER = ("liquid_membrane", "sheet_membrane", "liner", "sealing_band", "inside_corners", "outside_corners",
             "drain_flanges", "collars", "bed_mortar")  # fmt: skip
_OF_TILE = ("tile_stock", "tile_mortar", "large_tile_mortar", "grout", "joint_sealant", "bond_breaker",
            "edge_trim", "spacers", "backer_rod")  # fmt: skip
_NOT_DONE = ("strip_out", "plumbing", "electrical", "structure")
_NOT_OURS = ("old_layers", "fixtures", "decorating", "permits")


def verify_proposal(plan_text: str, price_text: str, proposal_text: str) -> tuple[Objection, ...]:
    """Every objection to a proposal; none where scope, sums and days are what plan and price say.

    Args:
        plan_text: A plan.json, which `verify_text` proves by itself.
        price_text: Its price.json, which `verify_price` proves by itself.
        proposal_text: The proposal.json.
    """
    try:
        plan, price, said = json.loads(plan_text), json.loads(price_text), json.loads(proposal_text)
        if said["format"] != "firstcourse-proposal" or said["version"] != 1 or set(said) != _FIELDS:
            return (Objection("VER-970", "proposal", "is no proposal of format 1"),)
        sealed = {"plan": plan_text, "offer": price_text}
        with localcontext(prec=60):
            return (
                *_sealed(said, price, sealed),
                *_scope(plan, price, said),
                *_days(plan, price, said),
                *_money(price, said),
            )
    except (KeyError, TypeError, ValueError, AttributeError, IndexError, ArithmeticError) as error:
        return (Objection("VER-970", "proposal", f"cannot be read: {type(error).__name__} {error}"),)
    except RecursionError:
        return (Objection("VER-970", "proposal", "is nested too deep"),)


def _sealed(said: Row, price: Row, texts: Mapping[str, str]) -> Iterator[Objection]:
    for name, text in texts.items():
        if hashlib.sha256(text.encode()).hexdigest() != said[name]:
            yield Objection("VER-971", name, "is another than the one that was offered")
    if price["plan"] != said["plan"]:
        yield Objection("VER-971", "offer", "is the price of another plan")
    if not price["complete"]:
        yield Objection("VER-971", "offer", "leaves something without a price; no total can be promised")


def _scope(plan: Row, price: Row, said: Row) -> Iterator[Objection]:
    wanted = {
        "stops": [f"{one['code']} {one['at'][0]}" for one in plan["findings"] if one["severity"] == "stop"],
        "included": list(_done(plan, price)),
        "excluded": list(_left_out(plan)),
        "assumed": list(_taken_as_so(plan)),
    }
    for name, codes in wanted.items():
        if said[name] != codes:
            yield Objection("VER-972", name, f"is not what the plan says: {', '.join(codes) or 'nothing'}")
    built = [one for one in plan["surfaces"] if _is_built(one)]
    rooms = list(dict.fromkeys(one["room"] for one in built))
    if [room["room"] for room in said["rooms"]] != rooms:
        yield Objection("VER-972", "rooms", "are not those in which something is built")
    for room in said["rooms"]:
        own = [one for one in built if one["room"] == room["room"]]
        if [one["surface"] for one in room["surfaces"]] != [one["id"] for one in own]:
            yield Objection("VER-972", room["room"], "has other surfaces than the plan builds there")
            continue
        for told, surface in zip(room["surfaces"], own, strict=True):
            yield from _surface(told, surface)
        standing = [wall for wall in _walls(plan, room["room"]) if wall not in {one["id"] for one in own}]
        if room["untouched"] != standing:
            yield Objection("VER-972", room["room"], "names other walls that stay as they are")


def _surface(told: Row, surface: Row) -> Iterator[Objection]:
    tiled = [
        {"tiles": one["tiles"], "pattern": one["pattern"], "angle": one["angle"], "joint": one["joint"]}
        for one in surface["tiled"]
    ]
    parts = [part for one in surface["tiled"] for part in one["area"]] or [{"outline": surface["outline"]}]
    right = {
        "surface": surface["id"],
        "boards": any(not board["fixed"] for board in surface["boards"]),
        "membrane": surface["membrane"],
        "tiled": tiled,
        "area": told["area"],
    }
    if told != right or not near(told["area"], sum(map(net, parts)) / 1e6):
        yield Objection("VER-972", surface["id"], "is told otherwise than it is planned")


def _is_built(surface: Row) -> bool:
    return bool(surface["tiled"]) or any(not board["fixed"] for board in surface["boards"])


def _walls(plan: Row, name: str) -> list[str]:
    found = []
    for room in plan["given"]["job"].get("rooms", []):
        if room["name"] == name:
            names = room["corners"]
            found += [f"{name}/wall/{one}-{names[(at + 1) % len(names)]}" for at, one in enumerate(names)]
    return found


def _done(plan: Row, price: Row) -> Iterator[str]:
    surfaces = plan["surfaces"]
    needs = {line["item"].split("/")[0] for line in price["order"]}
    if any(task["task"] == "protect_and_clean" for task in price["tasks"]):
        yield "protect"
    if any(one["added"] for surface in surfaces for one in surface["supports"]):
        yield "members"
    if any(not one["fixed"] for surface in surfaces for one in surface["boards"]):
        yield "boards"
    if "seam_tape" in needs:
        yield "tape"
    if any(surface["membrane"] for surface in surfaces):
        yield "membrane"
    if "bed_mortar" in needs:
        yield "bed"
    if any(surface["tiles"] for surface in surfaces):
        yield "tile"
    for item, code in (("grout", "grout"), ("joint_sealant", "soft_joints"), ("edge_trim", "trim")):
        if item in needs:
            yield code
    if any(decimal(line["spares"]) for line in price["order"]):
        yield "spares"
    if price["load"]["by"]:
        yield "waste"


def _left_out(plan: Row) -> Iterator[str]:
    yield from _NOT_DONE
    if any(surface["kind"] == "floor" for surface in plan["surfaces"]):
        yield "level_floor"
    yield from _NOT_OURS


def _taken_as_so(plan: Row) -> Iterator[str]:
    yield from ("measured", "unseen", "old_house")
    if any(surface["supports"] for surface in plan["surfaces"]):
        yield "framing"
    judged = {sheet["surface"] for sheet in plan["structures"] if sheet["lines"]}
    if any(surface["kind"] == "floor" and surface["id"] not in judged for surface in plan["surfaces"]):
        yield "floor_unjudged"
    yield from ("tile_sizes", "access")


def _money(price: Row, said: Row) -> Iterator[Objection]:
    for name in ("price", "total", "on", "currency"):
        if said[name] != price[name]:
            yield Objection("VER-973", name, "is not that of the price")
    if said["found"] != price["book"]["found"]:
        yield Objection("VER-973", "found", "are not the unit prices of the price book")
    taxes = [{"of": one["of"], "amount": one["result"]} for one in price["steps"] if one["formula"] == "price-tax"]
    if said["taxes"] != taxes:
        yield Objection("VER-973", "taxes", "are not those of the price")
    words = said["words"]
    wanted = [(name, part) for name, part in _parts(price) if part] if words["price_by"] == "section" else []
    if [(one["section"], decimal(one["amount"])) for one in said["sections"]] != wanted:
        yield Objection("VER-974", "sections", "do not add up to the price by what each costs")
    shares = [decimal(one["percent"]) for one in words["payments"]]
    amounts = _shares(decimal(price["total"]), shares)
    dues = [(one["at"], decimal(one["percent"]), decimal(one["amount"])) for one in said["payments"]]
    stages = [one["at"] for one in words["payments"]]
    if total(shares) != 100 or dues != list(zip(stages, shares, amounts, strict=True)):
        yield Objection("VER-974", "payments", "do not add up to the total by their shares")


def _days(plan: Row, price: Row, said: Row) -> Iterator[Objection]:
    calendar, site = plan.get("schedule"), plan["job"]["site"]
    wanted = {"starts": site["starts"], "ends": site["ends"]}
    if calendar:
        wanted = {
            "starts": min(one["first"] for one in calendar["visits"]),
            "ends": calendar["ends"].split("T")[0],
        }
    wanted["valid_until"] = _last_day(price, said["words"]["valid_days"])
    for name, day in wanted.items():
        if said[name] != day:
            yield Objection("VER-975", name, f"is not {day or 'left open'}, as calendar, job and quotes have it")


def _parts(price: Row) -> list[tuple[str, Decimal]]:
    costs = {"ground": Decimal(0), "water": Decimal(0), "tile": Decimal(0), "site": Decimal(0)}
    for line in price["order"]:
        kind = line["item"].split("/")[0]
        costs["water" if kind in _OF_WATER else "tile" if kind in _OF_TILE else "ground"] += decimal(line["cost"])
    for task in price["tasks"]:
        costs[_section(task["task"])] += decimal(task["cost"])
    for one in price["steps"]:
        if one["formula"] in ("price-deliveries", "price-hire", "price-disposal"):
            costs["site"] += decimal(one["result"])
    return list(zip(costs, _shares(decimal(price["price"]), list(costs.values())), strict=True))


def _section(task: str) -> str:
    if task in ("set_up_room", "protect_and_clean", "carry"):
        return "site"
    setting = task.startswith("set_") and not task.startswith("set_board_")
    tile = setting or task.startswith("cut_tile_") or task in ("trowel", "mix", "grout_joints", "seal_joints")
    return "tile" if tile else "ground"


def _shares(amount: Decimal, weights: Sequence[Decimal]) -> list[Decimal]:
    """Whole cents by weight: each part rounded down, the cents left over to the largest rests."""
    cents, whole = int(amount * 100), Fraction(total(weights))
    if not whole:
        return [amount, *(Decimal(0) for _ in weights[1:])]
    given = [divmod(cents * Fraction(weight) / whole, 1) for weight in weights]
    counts = [int(floor) for floor, _ in given]
    for place in sorted(range(len(given)), key=lambda at: (-given[at][1], at))[: cents - sum(counts)]:
        counts[place] += 1
    return [Decimal(count) / 100 for count in counts]


def _last_day(price: Row, days: int) -> str:
    first = date.fromisoformat(price["on"])
    ends = [first + timedelta(days=days)]
    sold = {(line["item"], one["supplier"]) for line in price["order"] for one in line["bought"]}
    for row in price["book"]["materials"]:
        until = date.fromisoformat(row["valid_until"])
        if (row["item"], row["supplier"]) in sold and until >= first:
            ends.append(until)
    return min(ends).isoformat()

"""The shopping list counted again, line by line, with what its workings print of it."""

import math
from collections import Counter
from collections.abc import Iterator, Mapping

from firstcourse.verify.board_needs import board_needs
from firstcourse.verify.needs import Need
from firstcourse.verify.printed import prints
from firstcourse.verify.shopping_fields import Quantity, Working
from firstcourse.verify.structure import Document
from firstcourse.verify.tile_needs import tile_needs
from firstcourse.verify.verdict import Objection
from firstcourse.verify.water_needs import water_needs

_DUST = 1e-9
_FIGURES = 1e-8
"""Nine figures are kept of what is computed."""


def check_quantities(plan: Document) -> Iterator[Objection]:
    """Object to what is listed and not needed, to what is needed and not listed, and to packs that do not fit."""
    needs = {need.item: need for need in (*board_needs(plan), *tile_needs(plan), *water_needs(plan))}
    listed = Counter(quantity.item for quantity in plan.quantities)
    for name in sorted(name for name, number in listed.items() if number > 1):
        yield Objection("VER-803", name, "is listed twice")
    for name, need in needs.items():
        if round(need.exact, need.places) > 0 and name not in listed:
            yield Objection("VER-804", name, "is needed and not on the list")
    for quantity in plan.quantities:
        if quantity.exact < 0 or (quantity.exact > 0 and quantity.buy == 0):
            yield Objection("VER-802", quantity.item, "is less than nothing, or is needed and not bought")
        found = needs.get(quantity.item)
        if found is None:
            yield Objection("VER-804", quantity.item, "is on the list, and nothing drawn needs it")
            continue
        yield from _line(quantity, found)
        working = plan.workings.get(quantity.working)
        if working is None:
            yield Objection("VER-902", quantity.item, f"working '{quantity.working}' does not exist")
        else:
            yield from _working(quantity, found, working)


def _line(quantity: Quantity, need: Need) -> Iterator[Objection]:
    # A need on the edge between two roundings may be rounded either way.
    unit, per = need.kept
    exact = quantity.exact / per
    if abs(exact - need.exact) > 0.51 * 10.0**-need.places:
        yield Objection("VER-801", quantity.item, f"{exact:g} {need.unit} said, {need.exact:.6g} counted")
    elif abs(exact - round(exact, need.places)) > _FIGURES * exact + _DUST:
        yield Objection("VER-801", quantity.item, f"{quantity.exact!r} is finer than it is counted")
    sold = (need.kind, unit, need.sheets, need.width)
    said = (quantity.pack.kind, quantity.pack.unit, quantity.pack.sheets, quantity.pack.width)
    if quantity.unit != unit or said != sold or abs(quantity.pack.size / per - need.pack) > _FIGURES * need.pack:
        yield Objection(
            "VER-805", quantity.item, f"comes by the {need.pack_name} in {need.unit}, and another pack is said"
        )
    packs = _packs(round(exact, need.places), need)
    if quantity.buy != packs:
        yield Objection("VER-802", quantity.item, f"takes {packs} packs, not {quantity.buy}")


def _packs(exact: float, need: Need) -> int:
    if need.buy is not None:
        return need.buy
    return math.ceil(exact * (1 + need.share) / need.pack - _DUST) if exact > 0 else 0


def _working(quantity: Quantity, need: Need, working: Working) -> Iterator[Objection]:
    values = working.values
    exact = round(quantity.exact / need.kept[1], need.places)
    if working.unit != need.unit or not prints(working.result, exact):
        yield Objection("VER-903", quantity.item, f"its working gives {working.result} {working.unit}")
    shown = dict(need.shown)
    said = dict(need.said)
    # Sheets are bought as they are cut: their working knows neither allowance nor packs.
    if not quantity.item.startswith("stock/"):
        shown |= {"exact need": exact, "packs to buy": quantity.buy}
        said["pack"] = need.pack_name
        if not any(_allows(text, exact * need.share, need.share) for text in values.values()):
            yield Objection("VER-903", quantity.item, f"its working does not allow {need.share:.0%} on top")
    yield from _prints(quantity.item, values, shown, said)


def _allows(text: str, amount: float, share: float) -> bool:
    head, equals, rest = text.partition(" = ")
    return bool(equals) and head == f"{share:.0%}" and prints(rest, amount)


def _prints(
    where: str, values: Mapping[str, str], shown: Mapping[str, float], said: Mapping[str, str]
) -> Iterator[Objection]:
    for name, value in shown.items():
        if not prints(values.get(name, "").lstrip("("), value):
            yield Objection(
                "VER-903", where, f"its working gives '{values.get(name, 'nothing')}' for {name}: {value:.6g}"
            )
    for name, text in said.items():
        if values.get(name) != text:
            yield Objection(
                "VER-903", where, f"its working gives '{values.get(name, 'nothing')}' for {name}, not '{text}'"
            )

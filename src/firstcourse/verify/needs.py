"""Lines of the shopping list whose workings are printed: what they must be, and what differs from it."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from firstcourse.verify.printed import prints
from firstcourse.verify.shopping_fields import Pack, Quantity, Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_DUST = 1e-9
_FIGURES = 1e-8
"""Nine figures are kept of what is computed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Need:
    """One line of the shopping list as it must be.

    Attributes:
        exact: Exact need, in `unit`.
        places: Decimals that it is rounded to.
        share: Allowance on top, share of the need.
        pack: How much one pack holds, in `unit`.
        pack_name: The pack in words.
        kind: What one pack is.
        width: Of the roll that it is cut off [ticks].
        kept_as: Unit that the plan keeps it in, and how much of it `unit` is; that usual for it where not given.
        shown: Numbers that its working must print, by the name of the value.
        said: Texts that its working must give, by the name of the value.
    """

    item: str
    exact: float
    places: int
    unit: str
    share: float = 0.0
    pack: float = 1.0
    pack_name: str
    kind: str
    width: int | None = None
    kept_as: tuple[str, float] | None = None
    shown: Mapping[str, float] = field(default_factory=dict)
    said: Mapping[str, str] = field(default_factory=dict)

    @property
    def kept(self) -> tuple[str, float]:
        """Unit that the plan keeps it in, and how much of it one of `unit` is."""
        return self.kept_as or KEPT_AS[self.unit]


KEPT_AS = {
    "ft": ("mm", 304.8), "m": ("mm", 1000.0), "l": ("l", 1.0), "sq ft": ("m2", 0.09290304), "m²": ("m2", 1.0),
    "pieces": ("piece", 1.0),
}  # fmt: skip


def printed_line(plan: Document, quantity: Quantity, need: Need) -> Iterator[Objection]:
    """Object to a line whose working is printed, where it or its working is not as it must be."""
    yield from _bought(quantity, need)
    working = plan.workings.get(quantity.working)
    if working is None:
        yield Objection("VER-902", quantity.item, f"working '{quantity.working}' does not exist")
    else:
        yield from _working(quantity, need, working)


def _bought(quantity: Quantity, need: Need) -> Iterator[Objection]:
    # A need on the edge between two roundings may be rounded either way.
    unit, per = need.kept
    exact = quantity.exact / per
    if abs(exact - need.exact) > 0.51 * 10.0**-need.places:
        yield Objection("VER-801", quantity.item, f"{exact:g} {need.unit} said, {need.exact:.6g} counted")
    elif abs(exact - round(exact, need.places)) > _FIGURES * exact + _DUST:
        yield Objection("VER-801", quantity.item, f"{quantity.exact!r} is finer than it is counted")
    sold = Pack(need.kind, quantity.pack.size, unit, None, need.width)
    wrong_size = abs(quantity.pack.size / per - need.pack) > _FIGURES * need.pack
    if quantity.unit != unit or quantity.pack != sold or wrong_size:
        yield Objection(
            "VER-805", quantity.item, f"comes by the {need.pack_name} in {need.unit}, and another pack is said"
        )
    exact = round(exact, need.places)
    packs = math.ceil(exact * (1 + need.share) / need.pack - _DUST) if exact > 0 else 0
    if quantity.buy != packs:
        yield Objection("VER-802", quantity.item, f"takes {packs} packs, not {quantity.buy}")


def _working(quantity: Quantity, need: Need, working: Working) -> Iterator[Objection]:
    values = working.values
    exact = round(quantity.exact / need.kept[1], need.places)
    if working.unit != need.unit or not prints(working.result, exact):
        yield Objection("VER-903", quantity.item, f"its working gives {working.result} {working.unit}")
    shown = {**need.shown, "exact need": exact, "packs to buy": quantity.buy}
    said = {**need.said, "pack": need.pack_name}
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

"""One line of the shopping list whose working is printed as it stands; for what is not kept as values yet."""

import math

from firstcourse.plan import Pack, PackKind, Quantity, Unit
from firstcourse.units import counted
from firstcourse.values import kept
from firstcourse.workings import Working

_DUST = 1e-9
_KEPT_AS: dict[str, tuple[Unit, float]] = {
    "ft": ("mm", 304.8), "m": ("mm", 1000.0), "l": ("l", 1.0), "sq ft": ("m2", 0.09290304), "m²": ("m2", 1.0),
    "pieces": ("piece", 1.0),
}  # fmt: skip
"""By the unit that a working prints, the plan's own unit and how much of it that is."""


def printed_line(
    item: str,
    exact: float,
    unit: str,
    *,
    kind: PackKind,
    share: float,
    pack: float,
    pack_name: str,
    spare: str,
    base: Working,
    kept_as: tuple[Unit, float] | None = None,
    sheets: int | None = None,
    width: int | None = None,
) -> tuple[Quantity, Working]:
    """One line to buy, and its working: the exact need, the allowance apart, whole packs.

    Args:
        item: Code of what is bought.
        exact: Exact need, in `unit`.
        unit: Unit of the need, as the tape has it.
        kind: What one pack is.
        share: Allowance on top, share of the need.
        pack: How much one pack holds, in `unit`.
        pack_name: The pack in words.
        spare: What the allowance is for, in words.
        base: How the exact need came about.
        kept_as: Unit that the plan keeps it in, and how much of it `unit` is; that usual for it where not given.
        sheets: Mounted sheets in a box of mosaic.
        width: Of the roll that it is cut off [ticks].
    """
    buy = math.ceil(exact * (1 + share) / pack - _DUST) if exact > 0 else 0
    working = base.model_copy(
        update={
            "values": {
                **base.values,
                "exact need": counted(exact, unit),
                spare: f"{share:.0%} = {counted(round(exact * share, 2), unit)}",
                "pack": pack_name,
                "packs to buy": str(buy),
            }
        }
    )
    code, factor = kept_as or _KEPT_AS[unit]
    quantity = Quantity(
        item=item,
        exact=kept(exact * factor),
        unit=code,
        buy=buy,
        pack=Pack(kind=kind, size=kept(pack * factor), unit=code, sheets=sheets, width=width),
        working=f"quantity {item}",
    )
    return quantity, working

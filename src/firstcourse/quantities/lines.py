"""One line of the shopping list: what is needed, what is added, and what is bought."""

import math

from firstcourse.plan import Pack, PackKind, Quantity, Unit
from firstcourse.units import KG_PER_LB, Tape, counted
from firstcourse.values import kept
from firstcourse.workings import Working

_SQ_M_PER_SQ_FT = 0.09290304
# Products of decimals such as 0.05 leave dust in the last places; a pack is not bought for dust.
_DUST = 1e-9
_KEPT_AS: dict[str, tuple[Unit, float]] = {
    "lb": ("kg", KG_PER_LB), "kg": ("kg", 1.0), "ft": ("mm", 304.8), "m": ("mm", 1000.0), "l": ("l", 1.0),
    "sq ft": ("m2", _SQ_M_PER_SQ_FT), "m²": ("m2", 1.0), "ml": ("ml", 1.0), "fasteners": ("fastener", 1.0),
    "chips": ("chip", 1.0), "tiles": ("tile", 1.0), "spacers": ("spacer", 1.0), "pieces": ("piece", 1.0),
}  # fmt: skip
"""By the unit that a working prints, the plan's own unit and how much of it that is."""


def square_text(m2: float, tape: Tape) -> str:
    """An area in the unit that goes with the tape, fine enough to reckon on with."""
    return f"{m2:.3f} m²" if tape is Tape.MM else f"{m2 / _SQ_M_PER_SQ_FT:.2f} sq ft"


def line(
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


def by_mass(
    item: str, kg: float, bag_kg: float, share: float, tape: Tape, base: Working
) -> tuple[Quantity, Working]:
    """One line of something bought by mass, in the unit that goes with the tape.

    Args:
        item: Name of what is bought.
        kg: Exact need [kg].
        bag_kg: Mass in one bag [kg].
        share: Allowance on top, share of the need.
        tape: Tape of the job.
        base: How the exact need came about.
    """
    unit, factor = ("kg", 1.0) if tape is Tape.MM else ("lb", KG_PER_LB)
    bag = bag_kg / factor
    return line(
        item,
        round(kg / factor, 3),
        unit,
        kind="bag",
        share=share,
        pack=bag,
        pack_name=f"bag of {bag:.3g} {unit}",
        spare="lost in buckets and on tools",
        base=base,
    )

"""One line of the shopping list: what is needed, what is added, and what is bought."""

import math
from collections.abc import Mapping
from types import MappingProxyType

from firstcourse.plan import Pack, Quantity
from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_MM, Tape
from firstcourse.values import Measure, Value, Word, measure
from firstcourse.workings import Working

Line = tuple[Quantity, Working]
"""Something to buy, and how its number came about."""
# Products of decimals such as 0.05 leave dust in the last places; a pack is not bought for dust.
_DUST = 1e-9


def line(
    item: str,
    need: Measure,
    pack: Pack,
    working: Working,
    *,
    share: float = 0.0,
    buy: int | None = None,
    beyond: Mapping[str, Value] = MappingProxyType({}),
) -> Line:
    """One line to buy, and its working: the exact need, the allowance apart, whole packs.

    Args:
        item: Code of what is bought.
        need: Exact need, in the unit of the pack.
        pack: How it is sold.
        working: How the exact need came about; what is added and bought comes to its inputs.
        share: Allowance on top, share of the need.
        buy: Packs to buy, where they are not as many as hold the need and its allowance.
        beyond: Inputs that say what else the packs hold.
    """
    if buy is None:
        buy = math.ceil(need.value * (1 + share) / pack.size - _DUST) if need.value > 0 else 0
    whole = working.model_copy(
        update={
            "inputs": {
                **working.inputs,
                "exact": need,
                "share": measure(100 * share, "%"),
                "spare": measure(need.value * share, need.unit),
                "pack": Measure(value=pack.size, unit=pack.unit),
                "sold": Word(word=pack.kind),
                "packs": buy,
                **beyond,
            }
        }
    )
    quantity = Quantity(item=item, exact=need.value, unit=pack.unit, buy=buy, pack=pack, working=whole.id)
    return quantity, whole


def by_mass(item: str, kg: float, bag_kg: float, share: float, working: Working) -> Line:
    """One line of something bought by the bag.

    Args:
        item: Code of what is bought.
        kg: Exact need [kg].
        bag_kg: Mass in one bag [kg].
        share: Allowance on top, share of the need.
        working: How the exact need came about.
    """
    bag = Pack(kind="bag", size=measure(bag_kg).value, unit="kg")
    return line(item, measure(kg, "kg"), bag, working, share=share)


def running(tape: Tape) -> Pack:
    """One running metre or foot."""
    return Pack(kind="running", size=(1000 if tape is Tape.MM else TICKS_PER_FOOT / TICKS_PER_MM), unit="mm")

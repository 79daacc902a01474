"""The cheapest packs that hold what is needed, found exactly: sizes mix, and more packs may cost less each."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from firstcourse.errors import InputValueError

MOST_PACKS = 20_000
"""Of one size in one order; a need that takes more is surely in a wrong unit."""
MOST_STATES = 400_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """A pack of one size.

    Attributes:
        holds: How much of the need one pack holds.
        tiers: From how many packs on each price of one pack holds, ascending, the first from 1.
    """

    holds: Fraction
    tiers: tuple[tuple[int, Fraction], ...]

    def cost(self, packs: int) -> Fraction:
        """What so many packs cost: the price of the tier reached holds for all of them."""
        return packs * max(tier for tier in self.tiers if tier[0] <= packs)[1] if packs else Fraction(0)


def cheapest(need: Fraction, offers: Sequence[Offer]) -> tuple[int, ...]:
    """Packs of each offer that hold the need at the least cost.

    Of equal cost the fewest packs win, then those that hold most, then more of the earlier offers.

    Args:
        need: In the unit of the offers.
        offers: At least one, each with positive prices and sizes.

    Raises:
        InputValueError: The need takes more packs than an order can have.

    Example:
        >>> cheapest(Fraction(7), [Offer(holds=Fraction(5), tiers=((1, Fraction(8)),)),
        ...                        Offer(holds=Fraction(1), tiers=((1, Fraction(2)),))])
        (1, 2)
    """
    alone = [(offer.cost(ceil(need / offer.holds)), index) for index, offer in enumerate(offers)]
    ceiling = min(alone)[0]
    # What can be had for a cost and a number of packs; a state is dropped where another has no less for no more.
    states: list[_State] = [(Fraction(0), 0, Fraction(0), ())]
    for offer in offers:
        grown: list[_State] = []
        for cost, packs, have, taken in states:
            for number in _numbers(need - have, offer):
                total = cost + offer.cost(number)
                if total <= ceiling:
                    grown.append((total, packs + number, have + number * offer.holds, (*taken, number)))
            if len(grown) > MOST_STATES:
                raise InputValueError("too many packs to choose among; give larger packs or fewer sizes")
        states = _undominated(grown)
    enough = [state for state in states if state[2] >= need]
    return min(enough, key=_rank)[3]


_State = tuple[Fraction, int, Fraction, tuple[int, ...]]
"""Cost, packs, how much they hold, and how many of each offer."""


def _rank(state: _State) -> tuple[Fraction, int, Fraction, tuple[int, ...]]:
    cost, packs, have, taken = state
    return cost, packs, -have, tuple(-number for number in taken)


def _numbers(rest: Fraction, offer: Offer) -> list[int]:
    """Packs worth trying: up to as many as hold the rest, and beyond that only as many as reach a better price."""
    most = max(0, ceil(rest / offer.holds))
    if most > MOST_PACKS:
        raise InputValueError(f"{most:,} packs would be needed; look at what a pack holds and its unit")
    return [*range(most + 1), *(start for start, _ in offer.tiers if start > most)]


def _undominated(states: list[_State]) -> list[_State]:
    kept: list[_State] = []
    most = Fraction(-1)
    for state in sorted(states, key=_rank):
        if state[2] > most:
            kept.append(state)
            most = state[2]
    return kept

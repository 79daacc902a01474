"""Packs and stock lengths of an order are the cheapest and fewest there are, against trying everything."""

from fractions import Fraction
from itertools import product
from math import ceil

from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.pricing.lengths import cut_lengths
from firstcourse.pricing.packs import Offer, cheapest


@st.composite
def offers(draw: st.DrawFn) -> Offer:
    price = draw(st.integers(1, 40))
    tiers = [(1, Fraction(price))]
    if draw(st.booleans()):
        tiers.append((draw(st.integers(2, 9)), Fraction(draw(st.integers(1, price)))))
    return Offer(holds=Fraction(draw(st.integers(1, 12)), draw(st.sampled_from([1, 2, 3]))), tiers=tuple(tiers))


@settings(max_examples=120, deadline=None)
@given(need=st.integers(1, 14), several=st.lists(offers(), min_size=1, max_size=3))
def test_the_cheapest_packs_are_those_that_trying_all_finds(need: int, several: list[Offer]) -> None:
    # Beyond what holds the need alone, only a better price can be a reason for more.
    ranges = [range(max(ceil(need / offer.holds), offer.tiers[-1][0]) + 1) for offer in several]
    best = min(
        (sum(offer.cost(number) for offer, number in zip(several, taken, strict=True)), sum(taken))
        for taken in product(*ranges)
        if sum(offer.holds * number for offer, number in zip(several, taken, strict=True)) >= need
    )
    found = cheapest(Fraction(need), several)
    assert sum(offer.holds * number for offer, number in zip(several, found, strict=True)) >= need
    assert (sum(offer.cost(number) for offer, number in zip(several, found, strict=True)), sum(found)) == best


@settings(max_examples=80, deadline=None)
@given(pieces=st.lists(st.integers(1, 130), min_size=1, max_size=7), kerf=st.integers(0, 3))
def test_the_fewest_lengths_are_those_that_trying_all_finds(pieces: list[int], kerf: int) -> None:
    stock = 100
    found = cut_lengths(pieces, stock, kerf)
    rests = [piece % stock + kerf for piece in pieces if piece % stock]
    full = sum(piece // stock for piece in pieces)
    # Every way to share pieces out: each goes into one that is begun, or begins the next.
    fewest = min(_used(rests, stock + kerf, []), default=0)
    assert len(found.lengths) == found.least == full + fewest
    for index, piece in enumerate(pieces):
        assert sum(index in length for length in found.lengths) == piece // stock + bool(piece % stock)


def _used(rests: list[int], room: int, free: list[int]) -> list[int]:
    if not rests:
        return [len(free)]
    first, *others = rests
    found = []
    for number, left in enumerate(free):
        if first <= left:
            found += _used(others, room, [*free[:number], left - first, *free[number + 1 :]])
    return found + _used(others, room, [*free, room - first])

"""Who is best and who is beaten, from figures alone; the proof finds the same by its own code."""

from decimal import Decimal
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from firstcourse.alternatives import Figures
from firstcourse.alternatives.compared import _beaten_by, _best
from firstcourse.verify.compared import _beaten as proven_beaten
from firstcourse.verify.compared import _best as proven_best

BASE: dict[str, Any] = {
    "sheets": 5, "cuts": 8, "tile_cuts": 20, "smallest_cut": 640 * 60, "waste_m2": 1.5, "kg": 90.0,
    "height": 640 * 15, "hours": Decimal("12.00"), "cost": Decimal("1800.00"), "days": 4,
}  # fmt: skip


def figures(**other: Any) -> Figures:
    return Figures(**{**BASE, **other})


def test_beaten_is_no_better_in_any_and_worse_in_one() -> None:
    sound = {0: figures(), 1: figures(cuts=9), 2: figures(cuts=7, kg=91.0), 3: figures(smallest_cut=640 * 50)}
    assert [_beaten_by(one, sound) for one in sound.values()] == [(), (0,), (), (0,)]


def test_a_cut_that_is_not_there_is_the_widest() -> None:
    sound = {0: figures(), 1: figures(smallest_cut=None)}
    assert _beaten_by(sound[0], sound) == (1,)


def test_a_price_that_is_not_whole_is_not_compared() -> None:
    sound = {0: figures(), 1: figures(cost=Decimal(1), complete=False), 2: figures(cost=Decimal("1799.99"))}
    assert _best(sound)["cheapest"] == (2,)
    assert _beaten_by(sound[0], sound) == (2,)


def test_equals_are_best_together_and_beat_each_other_not() -> None:
    sound = {0: figures(), 1: figures()}
    assert _best(sound)["quickest"] == (0, 1)
    assert _beaten_by(sound[0], sound) == ()


some = st.builds(
    figures,
    sheets=st.integers(1, 3),
    cuts=st.integers(1, 3),
    smallest_cut=st.none() | st.integers(1, 3),
    kg=st.sampled_from([80.0, 90.0]),
    cost=st.sampled_from([Decimal("1.10"), Decimal("1.20")]),
    complete=st.booleans(),
    days=st.none() | st.integers(1, 2),
)


@given(st.lists(some, max_size=6))
def test_the_proof_finds_the_same(rows: list[Figures]) -> None:
    sound = dict(enumerate(rows))
    plain = {number: one.model_dump(mode="json") for number, one in sound.items()}
    assert {name: list(found) for name, found in _best(sound).items()} == proven_best(list(plain.items()))
    for number, one in sound.items():
        found = _beaten_by(one, sound)
        assert list(found) == proven_beaten(plain[number], plain)
        assert number not in found
        # Whoever beats the one that beats me beats me too.
        assert all(set(_beaten_by(sound[other], sound)) <= set(found) for other in found)

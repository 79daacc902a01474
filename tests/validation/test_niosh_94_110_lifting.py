"""Revised lifting equation, NIOSH Publication 94-110: its own multipliers and worked examples.

Read as quoted: the equation in a textbook of ergonomics, the low lift at 20 in in a worked answer; example 1 of
the manual from memory. The manual rounds each multiplier to two places before it multiplies.
"""

import datetime
import math

import pytest

from firstcourse.rules import load_rules
from firstcourse.takeoff.lifting import Lift, weight_limits

RULES = load_rules(datetime.date(2026, 11, 25))


def lift(*, reach: float, low: float, high: float, grip: str, rate: float = 0.2, turn: float = 0.0) -> Lift:
    return Lift(reach_in=reach, low_in=low, high_in=high, turn_deg=turn, per_minute=rate, grip=grip)


def test_the_ideal_lift_is_the_load_constant() -> None:
    for limit in weight_limits(RULES, lift(reach=10, low=30, high=30, grip="good")):
        assert limit.lb == pytest.approx(51)


def test_the_low_lift_at_20_in() -> None:
    """HM 0.50, VM 0.82, DM 0.93, CM 0.95: 18.4 lb by rounded multipliers, 18.5 lb by whole ones."""
    origin, _ = weight_limits(RULES, lift(reach=20, low=6, high=22, grip="fair"))
    assert [round(origin.multipliers[name], 2) for name in ("HM", "VM", "DM", "CM")] == [0.5, 0.82, 0.93, 0.95]
    rounded = 51 * math.prod(round(value, 2) for value in origin.multipliers.values())
    assert rounded == pytest.approx(18.4, abs=0.1)
    assert origin.lb == pytest.approx(18.52, abs=0.01)


def test_example_1_of_the_manual_from_memory() -> None:
    """Loading punch press stock: 16.3 lb where it is picked up, 14.5 lb set down; index 2.7 and 3.0."""
    ends = weight_limits(RULES, lift(reach=23, low=15, high=63, grip="fair"))
    # The manual takes 0.44 for 10/23; whole multipliers give a little less.
    for limit, printed, index in zip(ends, (16.3, 14.5), (2.7, 3.0), strict=True):
        by_hand = 51 * 0.44 * math.prod(round(v, 2) for name, v in limit.multipliers.items() if name != "HM")
        assert by_hand == pytest.approx(printed, abs=0.15)
        assert limit.lb == pytest.approx(printed, rel=0.025)
        assert 44 / limit.lb == pytest.approx(index, abs=0.1)


@pytest.mark.parametrize(
    ("rate", "multiplier"),
    [(0.1, 1.0), (0.2, 1.0), (0.5, 0.97), (1, 0.94), (2, 0.91), (3, 0.88), (2.5, 0.88), (5, 0.8)],
)
def test_the_frequency_multiplier_of_an_hour_or_less(rate: float, multiplier: float) -> None:
    origin, _ = weight_limits(RULES, lift(reach=10, low=30, high=40, grip="good", rate=rate))
    assert origin.multipliers["FM"] == multiplier


@pytest.mark.parametrize(
    "beyond",
    [
        lift(reach=25.1, low=30, high=40, grip="good"),
        lift(reach=10, low=71, high=72, grip="good"),
        lift(reach=10, low=30, high=40, grip="good", turn=136),
    ],
)
def test_nothing_is_lifted_beyond_the_bounds(beyond: Lift) -> None:
    assert weight_limits(RULES, beyond)[0].lb == 0


def test_a_turn_of_90_degrees_takes_off_29_percent() -> None:
    assert weight_limits(RULES, lift(reach=10, low=30, high=40, grip="good", turn=90))[0].multipliers[
        "AM"
    ] == pytest.approx(0.71, abs=0.005)

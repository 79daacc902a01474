"""Needs as people read them."""

import pytest

from firstcourse.units import as_needed


@pytest.mark.parametrize(
    ("need", "shown"),
    [
        (104.766, "104.8"),
        (36.0, "36"),
        (8.256, "8.26"),
        (5.9302, "5.94"),
        (0.001, "0.01"),
        (0.0, "0"),
        (20.0000000001, "20"),
    ],
)
def test_a_need_is_rounded_up_to_a_decimal_or_two(need: float, shown: str) -> None:
    assert as_needed(need) == shown

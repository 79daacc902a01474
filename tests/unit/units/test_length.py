"""Reading and writing lengths."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from firstcourse.units import (
    TICKS_PER_INCH,
    TICKS_PER_MM,
    LengthError,
    Tape,
    ceil_to,
    floor_to,
    format_length,
    inches,
    mm,
    parse_length,
    ticks_from_mm,
    ticks_from_mm_ceil,
    ticks_from_mm_floor,
    to_mm,
)


@pytest.mark.parametrize(
    ("text", "ticks"),
    [
        ("5' 3-1/2\"", inches(63.5)),
        ("5ft 3 1/2in", inches(63.5)),
        ("5 ft 3½ in", inches(63.5)),
        ("5’ 3½”", inches(63.5)),
        ("63.5in", inches(63.5)),
        ("63 1/2 in", inches(63.5)),
        ('1/2"', inches(0.5)),
        ("8'", inches(96)),
        ("8.5 ft", inches(102)),
        ("1615 mm", mm(1615)),
        ("161.5cm", mm(1615)),
        ("1.615 m", mm(1615)),
        ("-1/4 in", -inches(0.25)),
        ("0 mm", 0),
    ],
)
def test_reads_what_a_tape_says(text: str, ticks: int) -> None:
    assert parse_length(text) == ticks


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("1,200 mm", "comma"),
        ("1600", "no unit"),
        ("63 1/2", "no unit"),
        ("5' 13\"", "12 or more inches"),
        ("5' 3", "no inch mark"),
        ("5.5' 3\"", "decimal feet"),
        ("3 5/4 in", "not below one"),
        ("3 1/3 in", "no tape shows"),
        ("3 1/0 in", "not below one"),
        ("", "empty"),
        ("nan", "not a length"),
        ("inf mm", "not a length"),
        ("1e3 mm", "not a length"),
        ("five feet", "not a length"),
        ("9" * 60 + " mm", "too long"),
    ],
)
def test_refuses_what_could_mean_two_things(text: str, why: str) -> None:
    with pytest.raises(LengthError, match=why):
        parse_length(text)


@given(st.integers(0, 16 * 12 * 200))
def test_sixteenths_round_trip(sixteenths: int) -> None:
    ticks = sixteenths * TICKS_PER_INCH // 16
    assert parse_length(format_length(ticks, Tape.INCH)) == ticks
    assert parse_length(format_length(ticks, Tape.INCH, feet=False)) == ticks


@given(st.integers(0, 100_000))
def test_millimetres_round_trip(value: int) -> None:
    assert parse_length(format_length(mm(value), Tape.MM)) == mm(value)


@given(st.integers(-(10**9), 10**9))
def test_ticks_survive_json_millimetres(ticks: int) -> None:
    assert ticks_from_mm(to_mm(ticks)) == ticks
    assert ticks_from_mm(float(f"{to_mm(ticks):.7f}")) == ticks


@given(st.floats(0, 1e5), st.sampled_from([1, 640, 1016]))
def test_rounding_takes_the_safe_side(value: float, step: int) -> None:
    low, high = ticks_from_mm_floor(value), ticks_from_mm_ceil(value)
    assert low <= value * TICKS_PER_MM + 1e-6
    assert high >= value * TICKS_PER_MM - 1e-6
    assert floor_to(low, step) <= low <= ceil_to(low, step)
    assert ceil_to(low, step) - floor_to(low, step) in (0, step)

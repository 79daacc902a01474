"""Joint lines of each pattern, and the fewest that divide a field."""

import math
from fractions import Fraction
from itertools import combinations, pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import box

from firstcourse.plan import TileStock
from firstcourse.tiles.lay import lay
from firstcourse.tiles.lines import Lines, joint_lines, positions
from firstcourse.tiles.model import CellPiece, RepeatCell
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.units import mm

JOINT = 3.0
SHIFT = (17.25, 40.5)
AREA = box(0, 0, 1500, 1100)


def cell_of(pattern: Any, width: float, height: float, **more: Any) -> RepeatCell:
    tile = TileStock(
        id="t",
        size=(mm(width), mm(height)),
        thickness=mm(8),
        kind="ceramic",
        joint=mm(JOINT),
        shape="hexagon" if pattern == "hexagon" else "rectangle",
    )
    return repeat_cell(pattern, [tile], JOINT, **more)


def straight(found: tuple[Lines, ...]) -> list[str]:
    return [family.way for family in found if family.straight]


CASES = [
    ("stacked", 300, 200, {}, ["level", "upright"]),
    ("running", 300, 200, {"offset": Fraction(1, 3)}, ["level"]),
    ("running", 300, 200, {"offset": Fraction(1, 2), "angle": 90}, ["upright"]),
    ("diagonal", 300, 300, {}, ["slanted", "slanted"]),
    ("herringbone", 200, 97, {}, []),
    ("double_herringbone", 403, 97, {}, []),
    ("basket_weave", 197, 97, {}, ["level", "upright"]),
    ("hexagon", 100, 115.47, {}, []),
]


@pytest.mark.parametrize(("pattern", "width", "height", "more", "ways"), CASES)
def test_which_patterns_have_straight_joints(
    pattern: Any, width: float, height: float, more: Any, ways: Any
) -> None:
    assert straight(joint_lines(cell_of(pattern, width, height, **more), SHIFT)) == ways


@pytest.mark.parametrize(("pattern", "width", "height", "more", "ways"), CASES)
def test_no_tile_lies_over_a_straight_joint(
    pattern: Any, width: float, height: float, more: Any, ways: Any
) -> None:
    cell = cell_of(pattern, width, height, **more)
    tiles = lay(cell, SHIFT, AREA)
    for family in joint_lines(cell, SHIFT):
        crossed = 0
        for k in range(-4, 5):
            line = family.line(family.nearest(family.at + k * family.step), AREA)
            strip = line.buffer(JOINT / 2 - 0.01)
            crossed += sum(tile.shape.intersection(strip).area > 0.01 for tile in tiles)
        assert (crossed == 0) == family.straight


def test_steps_without_a_common_measure_have_no_lines_that_recur() -> None:
    ring = ((0.0, 0.0), (97.0, 0.0), (97.0, 97.0), (0.0, 97.0))
    cell = RepeatCell(
        step_a=(100.0, 0.0),
        step_b=(100 / math.pi, 100.0),
        pieces=(CellPiece(tile="t", ring=ring),),
        joint=JOINT,
    )
    assert [family.way for family in joint_lines(cell, SHIFT)] == ["level"]


def test_a_field_within_the_limit_needs_no_joint() -> None:
    family = Lines(normal=(1.0, 0.0), at=10, step=303, straight=True)
    assert positions(family, AREA, 1500) == ((), False)


def test_joints_lie_evenly_on_the_pattern_s_lines() -> None:
    family = Lines(normal=(1.0, 0.0), at=10, step=303, straight=True)
    found, cut = positions(family, box(0, 0, 6000, 1000), 3657.6)
    assert (found, cut) == ((10 + 10 * 303,), False)


def test_joints_already_there_count() -> None:
    family = Lines(normal=(1.0, 0.0), at=10, step=303, straight=True)
    assert positions(family, box(0, 0, 6000, 1000), 3657.6, forced=(2500.0,)) == ((), False)


def test_without_lines_the_field_is_cut_evenly() -> None:
    assert positions(Lines.none((1.0, 0.0)), box(0, 0, 6000, 1000), 2500) == ((2000.0, 4000.0), True)


def test_tiles_longer_than_the_limit_are_cut() -> None:
    family = Lines(normal=(1.0, 0.0), at=0, step=3000, straight=True)
    found, cut = positions(family, box(0, 0, 8000, 1000), 2500)
    assert (found, cut) == ((2000.0, 4000.0, 6000.0), True)


@settings(deadline=None, max_examples=60)
@given(
    extent=st.integers(1000, 9000),
    step=st.integers(150, 700),
    at=st.integers(0, 700),
    limit=st.integers(1500, 4000),
)
def test_few_and_even_against_every_choice(extent: int, step: int, at: int, limit: int) -> None:
    """Brute force: no smaller set of lines keeps the limit, and no other set as small is more even."""
    family = Lines(normal=(1.0, 0.0), at=float(at), step=float(step), straight=True)
    found, cut = positions(family, box(0, 0, extent, 100), limit)
    candidates = [place for k in range(-5, 70) if 0 < (place := at + k * step) < extent]

    def parts(chosen: tuple[float, ...]) -> list[float]:
        return [b - a for a, b in pairwise((0, *chosen, extent))]

    for count in range(len(found) + 1):
        good = [parts(c) for c in combinations(candidates, count) if max(parts(c)) <= limit]
        if good:
            assert not cut
            assert count == len(found)
            assert sum(p * p for p in parts(found)) == pytest.approx(min(sum(p * p for p in g) for g in good))
            return
    assert cut

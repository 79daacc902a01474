"""Bands open the courses at a joint and lose no ground but the joints beside them."""

import pytest
from shapely import box

from firstcourse.tiling.bands import Band, Laying, with_bands
from firstcourse.tiling.model import CellPiece, RepeatCell


def _courses(tile: str, width: float, height: float, joint: float) -> RepeatCell:
    ring = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height))
    return RepeatCell(
        step_a=(width + joint, 0.0),
        step_b=(0.0, height + joint),
        pieces=(CellPiece(tile=tile, ring=ring),),
        joint=joint,
    )


MAIN = Laying(cell=_courses("white", 300, 98, 2), shift=(10.0, 0.0), area=box(0, 0, 1500, 1000))
GLASS = _courses("glass", 48, 48, 2)


def test_a_band_begins_at_the_nearest_course_joint():
    lower, band, upper = with_bands(MAIN, [Band(cell=GLASS, bottom=520, courses=2)])
    assert lower.area.bounds == pytest.approx((0, 0, 1500, 498))
    assert band.area.bounds == pytest.approx((0, 500, 1500, 598))
    assert band.shift == (10.0, 500.0)
    assert upper.area.bounds == pytest.approx((0, 600, 1500, 1000))
    assert upper.shift == (10.0, 600.0)


def test_without_bands_nothing_changes():
    (only,) = with_bands(MAIN, [])
    assert only.area.equals(MAIN.area)
    assert only.shift == MAIN.shift


def test_a_band_at_the_foot_leaves_nothing_below_it():
    band, upper = with_bands(MAIN, [Band(cell=GLASS, bottom=0, courses=1)])
    assert band.area.bounds == pytest.approx((0, 0, 1500, 48))
    assert upper.area.bounds == pytest.approx((0, 50, 1500, 1000))


def test_bands_that_would_overlap_stack_up():
    parts = with_bands(MAIN, [Band(cell=GLASS, bottom=500, courses=4), Band(cell=GLASS, bottom=510, courses=1)])
    bands = [part for part in parts if part.cell is GLASS]
    assert [part.area.bounds[1] for part in bands] == pytest.approx([500, 700])

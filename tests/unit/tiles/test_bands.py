"""Bands open the courses at a joint, lose no ground but the joints beside them, and count in the search."""

import datetime

import pytest
from shapely import box

from firstcourse.errors import InputValueError
from firstcourse.rules import load_rules
from firstcourse.tiles.bands import Band, Laying, course_level, with_bands, without_bands
from firstcourse.tiles.lay import lay
from firstcourse.tiles.model import CellPiece, Edge, RepeatCell, TileArea
from firstcourse.tiles.start import find_starts


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
GLASS_BAND = Band(cell=GLASS, bottom=520, height=98)


def test_a_band_begins_at_the_nearest_course_joint():
    lower, band, upper = with_bands(MAIN, [Band(cell=GLASS, bottom=520, height=98)])
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
    band, upper = with_bands(MAIN, [Band(cell=GLASS, bottom=0, height=48)])
    assert band.area.bounds == pytest.approx((0, 0, 1500, 48))
    assert upper.area.bounds == pytest.approx((0, 50, 1500, 1000))


def test_bands_that_would_overlap_stack_up():
    parts = with_bands(MAIN, [Band(cell=GLASS, bottom=500, height=198), Band(cell=GLASS, bottom=510, height=48)])
    bands = [part for part in parts if part.cell is GLASS]
    assert [part.area.bounds[1] for part in bands] == pytest.approx([500, 700])


RULES = load_rules(datetime.date(2026, 11, 25))


def _wall(height: float, **more: object) -> TileArea:
    edges = (
        Edge(a=(0.0, 0.0), b=(1500.0, 0.0), side="floor"),
        Edge(a=(1500.0, 0.0), b=(1500.0, height)),
        Edge(a=(1500.0, height), b=(0.0, height), side="ceiling"),
        Edge(a=(0.0, height), b=(0.0, 0.0)),
    )
    return TileArea(area=box(0, 0, 1500, height), edges=edges, **more)  # type: ignore[arg-type]


def test_a_wall_without_its_band_is_lower_by_band_and_joint():
    closed = without_bands(_wall(1000, wanted=(("u", 900.0), ("u", 540.0), ("v", 300.0))), [GLASS_BAND])
    assert closed.area.bounds == pytest.approx((0, 0, 1500, 900))
    assert closed.area.area == pytest.approx(1500 * 900)
    assert closed.wanted == (("u", 800.0), ("v", 300.0))
    assert closed.edges[2].a == pytest.approx((1500, 900))


def test_a_band_over_the_whole_wall_leaves_nothing_to_search():
    assert without_bands(_wall(90), [Band(cell=GLASS, bottom=0, height=98)]).area.is_empty


@pytest.mark.parametrize("rise", [30, 47, 73])
def test_the_start_counts_the_courses_cut_above_the_band(rise: int):
    # Eight courses fill the wall but for the band, whatever its height: the best start cuts none of them.
    band = Band(cell=GLASS, bottom=410, height=rise - 2)
    field = _wall(798 + rise)
    start = find_starts(MAIN.cell, without_bands(field, [band]), RULES)[0]
    parts = with_bands(Laying(cell=MAIN.cell, shift=start.shift, area=field.area), [band])
    heights = {
        round(tile.shape.bounds[3] - tile.shape.bounds[1], 3)
        for part in parts
        if part.role == "field"
        for tile in lay(part.cell, part.shift, part.area)
    }
    assert heights == {98.0}
    blind = find_starts(MAIN.cell, field, RULES)[0]
    assert blind.shift[1] % 100 != pytest.approx(start.shift[1] % 100)


def test_courses_above_a_band_lie_higher_by_it():
    assert course_level((0.0, 3.0), [GLASS_BAND], 300) == 3.0
    assert course_level((0.0, 3.0), [GLASS_BAND], 800) == 103.0


@pytest.mark.parametrize("bottom", [1040, 1600, -300])
def test_a_band_where_nothing_is_tiled_is_refused(bottom: float):
    with pytest.raises(InputValueError, match=r"lies where nothing is tiled .* from 0 mm .* to 1000 mm"):
        with_bands(MAIN, [Band(cell=GLASS, bottom=bottom, height=98)])

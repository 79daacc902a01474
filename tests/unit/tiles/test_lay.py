"""Tiles laid over areas that can be counted by hand."""

import math

import pytest
from shapely import MultiPolygon, Polygon, box

from firstcourse.plan import TileStock
from firstcourse.tiles.lay import lay
from firstcourse.tiles.model import CellPiece, RepeatCell
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.units import mm


def stacked(width: float = 100, height: float = 50, joint: float = 2) -> RepeatCell:
    tile = TileStock(id="t", size=(mm(width), mm(height)), thickness=mm(8), kind="ceramic", joint=mm(joint))
    return repeat_cell("stacked", [tile], joint)


def test_rows_run_from_bottom_to_top_and_left_to_right() -> None:
    tiles = lay(stacked(), (0, 0), box(0, 0, 202, 102))
    assert [tile.laid[0] for tile in tiles] == [(0, 0), (102, 0), (0, 52), (102, 52)]
    assert all(tile.whole for tile in tiles)


def test_cut_tiles_keep_what_lies_in_the_area() -> None:
    tiles = lay(stacked(), (30, 0), box(0, 0, 160, 50))
    assert [(tile.whole, tile.shape.bounds) for tile in tiles] == [
        (False, (0, 0, 28, 50)),
        (True, (30, 0, 130, 50)),
        (False, (132, 0, 160, 50)),
    ]


def test_a_tile_on_the_edge_but_for_rounding_is_whole() -> None:
    assert lay(stacked(), (-0.001, 0), box(0, 0, 100, 50))[0].whole
    assert not lay(stacked(), (-0.01, 0), box(0, 0, 100, 50))[0].whole
    assert not lay(stacked(600, 20), (-0.01, 0), box(0, 0, 600, 20))[0].whole


def test_specks_fill_with_grout() -> None:
    assert len(lay(stacked(), (-101.99, 0), box(0, 0, 100.01, 50))) == 1
    corner = Polygon([(0, 0), (100, 0), (100, 50), (0, 50)]).difference(Polygon([(0, 1), (99, 50), (0, 50)]))
    assert all(tile.shape.area >= 1 for tile in lay(stacked(), (0.5, 0), corner))


def test_an_opening_parts_a_tile_into_pieces_of_the_same_tile() -> None:
    tiles = lay(stacked(), (0, 0), box(0, 0, 100, 50).difference(box(40, -10, 60, 60)))
    assert [tile.shape.bounds for tile in tiles] == [(0, 0, 40, 50), (60, 0, 100, 50)]
    assert tiles[0].laid == tiles[1].laid


def test_a_hole_within_a_tile_stays_a_hole() -> None:
    (tile,) = lay(stacked(), (0, 0), box(0, 0, 100, 50).difference(box(40, 10, 60, 30)))
    assert not tile.whole
    assert len(tile.shape.interiors) == 1
    assert tile.shape.area == pytest.approx(5000 - 400)


def test_parts_of_an_area_are_laid_as_one() -> None:
    area = MultiPolygon([box(0, 0, 100, 50), box(204, 0, 304, 50)])
    assert [tile.laid[0][0] for tile in lay(stacked(), (0, 0), area)] == [0, 204]


def test_no_area_takes_no_tile() -> None:
    assert lay(stacked(), (0, 0), Polygon()) == ()


def test_a_corner_that_reaches_over_an_edge_is_cut_however_little_it_loses() -> None:
    # Diagonal tiles whose points reach 0.5 mm past the right side: each loses a quarter of a square millimetre.
    side = 100.0
    half = side / math.sqrt(2)
    ring = ((0.0, -half), (half, 0.0), (0.0, half), (-half, 0.0))
    cell = RepeatCell(
        step_a=(2 * half, 0.0), step_b=(half, half), pieces=(CellPiece(tile="t", ring=ring),), joint=0.0
    )
    tiles = lay(cell, (0.0, 0.0), box(-half, -half, half - 0.5, half))
    middle = next(tile for tile in tiles if tile.laid[0][0] == 0.0 and abs(tile.laid[0][1] + half) < 1e-6)
    assert not middle.whole
    assert middle.shape.bounds[2] <= half - 0.5 + 1e-9

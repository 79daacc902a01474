"""The tile drawing shows every tile true to scale and hatches what is cut; cut tiles are drawn one by one."""

import pytest
from shapely import Polygon

from example_plans import plan_of
from firstcourse.drawings import draw_tiling
from firstcourse.drawings.cut_tiles import chip_places, cut_kinds, cut_scale, draw_cut
from firstcourse.drawings.falls import draw_fall
from firstcourse.drawings.mosaic import mosaics
from firstcourse.geometry import bounds
from firstcourse.plan import Plan
from firstcourse.units import TICKS_PER_MM
from firstcourse.words import speaker_for
from said import places_of


def _plan() -> Plan:
    return plan_of("tub-bathroom")


def _shower() -> Plan:
    return plan_of("tiled-shower")


@pytest.mark.parametrize("number", range(4))
def test_every_tile_is_drawn_true_to_the_scale_stated(number: int):
    surface = _plan().surfaces[number]
    drawing = draw_tiling(_plan(), surface)
    drawn = {poly.name: poly for poly in drawing.polys if poly.layer == "tile" and len(poly.points) >= 3}
    assert drawn.keys() == {tile.id for tile in surface.tiles}
    tile = next(tile for tile in surface.tiles if tile.whole)
    left, lower, right, upper = bounds(tile.outline)
    xs = [x for x, _ in drawn[tile.id].points]
    ys = [y for _, y in drawn[tile.id].points]
    assert (max(xs) - min(xs)) * drawing.scale == pytest.approx((right - left) / TICKS_PER_MM)
    assert (max(ys) - min(ys)) * drawing.scale == pytest.approx((upper - lower) / TICKS_PER_MM)


@pytest.mark.parametrize("number", range(4))
def test_every_cut_piece_is_listed_under_its_mark_and_told_where_it_goes(number: int):
    surface = _plan().surfaces[number]
    kinds = cut_kinds(surface, without={})
    assert sum(kind.count for kind in kinds) == sum(not tile.whole for tile in surface.tiles)
    assert {kind.mark for kind in kinds} == {tile.mark for tile in surface.tiles if tile.mark}
    scale = cut_scale(_plan(), kinds)
    for kind in kinds:
        assert sum(count for _, count in kind.places) == kind.count
        assert all(place for place, _ in kind.places)
        if kind.is_fit:
            continue
        drawing = draw_cut(_plan(), kind, scale)
        outline = drawing.polys[0].points
        for axis, size in enumerate(kind.size):
            reach = max(p[axis] for p in outline) - min(p[axis] for p in outline)
            assert reach * scale == pytest.approx(size / TICKS_PER_MM)
        assert drawing.texts


def test_a_piece_at_a_corner_goes_to_both_its_sides():
    surface = _plan().surfaces[0]
    places = {place for kind in cut_kinds(surface, without={}) for place in places_of(kind.places)}
    assert {"wall C-D", "wall C-D and wall D-A", "wall B-C and tub", "closet flange"} <= places


def test_holes_lie_within_the_pieces_they_are_cut_in():
    chips = mosaics(_shower())
    holed = [kind for one in _shower().surfaces for kind in cut_kinds(one, without=chips) if kind.tile.holes]
    assert holed
    for kind in holed:
        outline, *holes = [poly for poly in draw_cut(_shower(), kind, 4).polys if poly.name == kind.mark]
        assert holes and all(Polygon(outline.points).contains(Polygon(hole.points)) for hole in holes)


def test_chips_of_mosaic_are_faint_within_their_sheets():
    surface = next(surface for surface in _shower().surfaces if surface.fall is not None)
    drawing = draw_tiling(_shower(), surface)
    chips = [poly for poly in drawing.polys if poly.layer == "chip" and len(poly.points) >= 3]
    sheets = [Polygon(poly.points) for poly in drawing.polys if poly.layer == "sheet"]
    assert {poly.name for poly in chips} == {tile.id for tile in surface.tiles}
    assert not any(line.layer == "hatch" for line in drawing.lines)
    per = TICKS_PER_MM * drawing.scale
    stock = next(stock for stock in _shower().tile_stock if stock.sheet is not None)
    assert stock.sheet is not None
    across, up = (count * (side + stock.joint) / per for count, side in zip(stock.sheet, stock.size, strict=True))
    whole = max(sheets, key=lambda one: one.area)
    left, lower, right, upper = whole.bounds
    assert (right - left, upper - lower) == pytest.approx((across, up), abs=0.05)
    # Every chip lies on one sheet, and on no other.
    for poly in chips:
        shape = Polygon(poly.points)
        assert sum(sheet.intersection(shape).area > 0.5 * shape.area for sheet in sheets) == 1
    places = chip_places(surface, mosaics(_shower()))
    assert sum(count for _, count in places) == sum(not tile.whole for tile in surface.tiles)
    assert cut_kinds(surface, without=mosaics(_shower())) == ()


def test_falls_name_the_sides_and_the_fall_of_every_plane():
    surface = next(surface for surface in _shower().surfaces if surface.fall is not None)
    assert surface.fall is not None
    texts = [text.text for text in draw_fall(_shower(), surface, surface.fall).texts]
    assert sum(text.endswith("in/ft") for text in texts) == len(surface.fall.planes)
    speaker = speaker_for(_shower())
    assert {speaker.words(speaker.edge(side)) for side in surface.sides} <= set(texts)
    assert "curb" in texts and "kerb" not in texts, "an American job reads its own words"


def test_soft_joints_and_hatching_are_drawn():
    surface = _plan().surfaces[1]
    layers = {line.layer for line in draw_tiling(_plan(), surface).lines}
    assert {"soft", "hatch"} <= layers

"""Cut tiles from whole ones: what shares a tile, what keeps its factory edges, and that nothing is mirrored."""

import math
from itertools import combinations, pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, box

from firstcourse.errors import InputValueError
from firstcourse.plan import TileStock
from firstcourse.tiles.lay import lay
from firstcourse.tiles.model import LaidTile
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.tiles.shared_cuts import Sharing
from firstcourse.tiles.sharing import fewest, share
from firstcourse.units import mm

KERF = 2.0
HEX = (100.0, 200 / math.sqrt(3))


def tile_at(x: float, y: float, width: float, height: float, shape: Polygon, turned: bool = False) -> LaidTile:
    w, h = (height, width) if turned else (width, height)
    return LaidTile(tile="t", laid=((x, y), (x + w, y), (x + w, y + h), (x, y + h)), shape=shape, whole=False)


def cut(left: float, lower: float, right: float, upper: float, size: tuple[float, float] = (300, 200)) -> LaidTile:
    """A piece between these lines of a tile laid at the origin."""
    return tile_at(0, 0, *size, box(left, lower, right, upper))


def laid(pattern: Any, size: tuple[float, float], area: Polygon) -> list[LaidTile]:
    stock = TileStock(
        id="t",
        size=(mm(size[0]), mm(size[1])),
        thickness=mm(8),
        kind="ceramic",
        joint=mm(3),
        shape="hexagon" if pattern == "hexagon" else "rectangle",
    )
    return [tile for tile in lay(repeat_cell(pattern, [stock], 3), (17, 23), area) if not tile.whole]


def sources(done: Sharing) -> list[int]:
    return [place.source for place in done.places]


def test_two_ends_of_a_course_share_a_tile_where_the_saw_leaves_room() -> None:
    left, right = cut(201, 0, 300, 200), cut(0, 0, 199, 200)
    assert share([left, right], (300, 200), kerf=KERF).sources == 1
    assert share([left, right], (300, 200), kerf=KERF + 0.1).sources == 2


def test_a_piece_is_turned_so_that_its_factory_edges_stay() -> None:
    """Both pieces are left ends: the second comes from the right of the tile, turned by half."""
    done = share([cut(0, 0, 149, 200), cut(0, 0, 148, 200)], (300, 200), kerf=KERF)
    assert sources(done) == [1, 1]
    assert [place.turned for place in done.places] == [0, 180]
    assert max(x for x, _ in done.places[1].outline) == 300


def test_a_grain_forbids_turning() -> None:
    pieces = [cut(0, 0, 149, 200), cut(0, 0, 148, 200)]
    assert share(pieces, (300, 200), kerf=KERF, directional=True).sources == 2
    assert share([pieces[0], cut(152, 0, 300, 200)], (300, 200), kerf=KERF, directional=True).sources == 1


def test_a_middle_piece_is_never_cut_for_an_end() -> None:
    """Three strips fit by area, but each keeps a factory edge, and a tile has two ends."""
    assert share([cut(0, 0, 90, 200)] * 3, (300, 200), kerf=KERF).sources == 2


def test_four_corners_come_from_one_tile() -> None:
    corners = [cut(0, 0, 140, 90), cut(160, 0, 300, 90), cut(0, 110, 140, 200), cut(160, 110, 300, 200)]
    assert share(corners, (300, 200), kerf=KERF).sources == 1
    # The same corner four times over cannot: a piece turned by a quarter is too high beside its neighbour.
    assert share(corners[:1] * 4, (300, 200), kerf=KERF).sources == 2


def test_pieces_without_a_factory_edge_lie_side_by_side() -> None:
    piece = cut(100, 50, 190, 150)
    three, six = (share([piece] * number, (300, 200), kerf=KERF) for number in (3, 6))
    assert (three.sources, three.lower_bound, three.proven) == (1, 1, True)
    assert (six.sources, six.lower_bound, six.proven) == (2, 1, False)


def test_a_turned_tile_is_cut_from_the_same_blank() -> None:
    upright = tile_at(500, 500, 300, 200, box(500, 500, 700, 650), turned=True)
    done = share([upright, cut(0, 0, 140, 200)], (300, 200), kerf=KERF)
    assert sources(done) == [1, 1]
    xs = [x for x, _ in done.places[0].outline]
    assert max(xs) - min(xs) == pytest.approx(150)


def test_halves_of_diagonal_tiles_share_a_tile() -> None:
    below = LaidTile(
        tile="t",
        laid=((0, 0), (100, 0), (100, 100), (0, 100)),
        shape=Polygon([(0, 0), (98, 0), (0, 98)]),
        whole=False,
    )
    done = share([below, below], (100, 100), kerf=KERF)
    assert done.sources == 1
    assert share([below] * 3, (100, 100), kerf=KERF).sources == 2


def test_parts_on_both_sides_of_an_opening_come_from_one_tile() -> None:
    """The lower part would fit the first tile; it goes to the one that its upper part comes from."""
    first = cut(0, 80, 300, 200)
    upper = tile_at(1000, 0, 300, 200, box(1000, 80.5, 1300, 200))
    lower = tile_at(1000, 0, 300, 200, box(1000, 0, 1300, 70))
    assert sources(share([first, upper, lower], (300, 200), kerf=KERF)) == [1, 2, 2]


def test_an_outline_of_another_tile_is_refused() -> None:
    with pytest.raises(InputValueError, match="not that of this tile"):
        share([cut(0, 0, 50, 50)], (250, 150), kerf=KERF)


def test_nothing_to_cut_needs_nothing() -> None:
    done = share([], (300, 200), kerf=KERF)
    assert (done.sources, done.lower_bound, done.proven, done.places) == (0, 0, True, ())


def area_of(ring: Any) -> float:
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, (*ring[1:], ring[0]), strict=True)) / 2


SKEW = Polygon([(0, 0), (2950, 0), (2890, 1733), (45, 1800)])


@pytest.mark.parametrize(
    ("pattern", "size"),
    [
        ("stacked", (300, 200)),
        ("running", (200, 100)),
        ("diagonal", (150, 150)),
        ("herringbone", (203, 100)),
        ("basket_weave", (203, 100)),
        ("hexagon", HEX),
    ],
)
@pytest.mark.parametrize("directional", [False, True])
def test_every_piece_is_there_uncrowded_and_not_mirrored(pattern: Any, size: Any, directional: bool) -> None:
    tiles = laid(pattern, size, SKEW)
    done = share(tiles, size, kerf=KERF, hexagon=pattern == "hexagon", directional=directional)
    assert done == share(tiles, size, kerf=KERF, hexagon=pattern == "hexagon", directional=directional)
    assert len(tiles) > 20
    assert done.lower_bound <= done.sources <= len(tiles)
    assert sorted(set(sources(done))) == list(range(1, done.sources + 1))
    w, h = size
    blank = (
        Polygon([(w / 2, 0), (w, h / 4), (w, h * 3 / 4), (w / 2, h), (0, h * 3 / 4), (0, h / 4)])
        if pattern == "hexagon"
        else box(0, 0, w, h)
    ).buffer(0.01)
    by_source: dict[int, list[Polygon]] = {}
    for tile, place in zip(tiles, done.places, strict=True):
        ring = list(tile.shape.exterior.coords[:-1])
        assert area_of(place.outline) == pytest.approx(area_of(ring))
        for (a, b), (c, d) in zip(pairwise(ring), pairwise(place.outline), strict=True):
            assert math.dist(a, b) == pytest.approx(math.dist(c, d), abs=1e-6)
        assert blank.covers(Polygon(place.outline))
        by_source.setdefault(place.source, []).append(Polygon(place.outline).convex_hull)
        if directional:
            assert place.turned == 0
    for hulls in by_source.values():
        assert all(a.distance(b) >= KERF - 0.01 for a, b in combinations(hulls, 2))


@pytest.mark.parametrize(("pattern", "size"), [("stacked", (300, 200)), ("diagonal", (150, 150))])
def test_factory_edges_stay_factory_edges(pattern: Any, size: Any) -> None:
    tiles = laid(pattern, size, SKEW)
    done = share(tiles, size, kerf=KERF)
    rim = box(0, 0, *size).exterior.buffer(0.02)
    for tile, place in zip(tiles, done.places, strict=True):
        own = Polygon(tile.laid).exterior.buffer(0.02)
        here = tile.shape.exterior.intersection(own).length
        there = Polygon(place.outline).exterior.intersection(rim).length
        assert there >= here - 0.5


def packed(shares: tuple[float, ...]) -> int:
    """Fewest bins by trying every way; only for a handful."""
    best = len(shares)

    def put(index: int, bins: list[float]) -> None:
        nonlocal best
        if len(bins) >= best:
            return
        if index == len(shares):
            best = len(bins)
            return
        for k in range(len(bins)):
            if bins[k] + shares[index] <= 1 + 1e-9:
                put(index + 1, [*bins[:k], bins[k] + shares[index], *bins[k + 1 :]])
        put(index + 1, [*bins, shares[index]])

    put(0, [])
    return best


@settings(deadline=None, max_examples=150)
@given(st.lists(st.integers(1, 20), max_size=7))
def test_the_bound_never_exceeds_what_is_needed(parts: list[int]) -> None:
    shares = tuple(part / 20 for part in parts)
    assert fewest(shares) <= packed(shares)


@settings(deadline=None, max_examples=40)
@given(st.lists(st.integers(20, 295), min_size=1, max_size=7))
def test_strips_of_full_height_against_every_pairing(widths: list[int]) -> None:
    """Each strip keeps one end, so a tile gives two at most; brute force over all pairings."""
    done = share([cut(0, 0, width, 200) for width in widths], (300, 200), kerf=KERF)

    def pairs(left: tuple[int, ...]) -> int:
        if not left:
            return 0
        rest = left[1:]
        options = [1 + pairs(rest)]
        for k, other in enumerate(rest):
            if left[0] + other + KERF <= 300:
                options.append(1 + pairs(rest[:k] + rest[k + 1 :]))
        return min(options)

    assert done.sources == pairs(tuple(widths))


def test_a_piece_longer_than_its_tile_by_rounding_reaches_out_on_both_sides_alike() -> None:
    hair = 0.006
    # Its own tile keeps the larger piece; the other turns into what that leaves, 200 mm high.
    pieces = [cut(0, 0, 190, 200), cut(0, 0, 200 + hair, 60)]
    done = share(pieces, (300, 200), kerf=KERF)
    assert sources(done) == [1, 1] and done.places[1].turned
    heights = [y for _, y in done.places[1].outline]
    assert min(heights) == pytest.approx(-hair / 2) and max(heights) == pytest.approx(200 + hair / 2)

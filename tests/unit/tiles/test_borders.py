"""Borders part an area without losing ground, turn at every corner, and look alike from both hands."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import MultiPolygon, Point, Polygon, unary_union
from shapely.affinity import scale

from firstcourse.errors import InputValueError
from firstcourse.tiles.borders import Border, Bordered, with_border
from firstcourse.tiles.lay import lay
from firstcourse.tiles.model import CellPiece, Edge, RepeatCell

JOINT = 3.0
BAR = RepeatCell(
    step_a=(203.0, 0.0),
    step_b=(0.0, 103.0),
    pieces=(CellPiece(tile="bar", ring=((0.0, 0.0), (200.0, 0.0), (200.0, 100.0), (0.0, 100.0))),),
    joint=JOINT,
)
ELL = Polygon([(0, 0), (1700, 0), (1700, 1200), (3200, 1200), (3200, 2700), (0, 2700)])
SKEW = Polygon([(0, 0), (2400, 60), (2300, 1900), (900, 2300), (-40, 1500)])


def bordered(shape: Polygon, *, corners: str = "mitred", distance: float = 150, width: float = 100) -> Bordered:
    border = Border(cell=BAR, width=width, distance=distance, corners=corners)  # type: ignore[arg-type]
    points = list(shape.exterior.coords)
    edges = [Edge(a=a, b=b, side=f"side {i}") for i, (a, b) in enumerate(pairwise(points))]
    return with_border(shape, shape, edges, border)


def parts(done: Bordered) -> list[Polygon | MultiPolygon]:
    return [done.inside, done.outside, *(strip.area for strip in done.strips)]


@pytest.mark.parametrize("corners", ["mitred", "butted"])
@pytest.mark.parametrize("shape", [ELL, SKEW], ids=["ell", "skew"])
def test_parts_keep_one_joint_apart_and_lose_nothing_else(shape: Polygon, corners: str):
    done = bordered(shape, corners=corners)
    every = parts(done)
    for index, one in enumerate(every):
        for other in every[:index]:
            assert one.distance(other) >= JOINT - 1e-6
    closed = unary_union([part.buffer(JOINT / 2 + 1e-6, join_style="mitre", mitre_limit=50) for part in every])
    assert shape.difference(closed.buffer(0.01)).area < 1


@pytest.mark.parametrize("corners", ["mitred", "butted"])
def test_the_border_is_as_wide_and_as_far_off_as_asked(corners: str):
    done = bordered(ELL, corners=corners)
    ring = unary_union([strip.area.buffer(JOINT / 2, join_style="mitre") for strip in done.strips])
    inwards = ELL.buffer(-150, join_style="mitre").difference(ELL.buffer(-250, join_style="mitre"))
    grown = inwards.buffer(JOINT / 2, join_style="mitre")
    assert ring.symmetric_difference(grown).area < 30 * JOINT**2
    assert len(done.strips) == 6
    assert [edge.side for edge in done.edges] == [f"side {i}" for i in range(6)]


def test_along_the_edge_nothing_lies_outside():
    done = bordered(ELL, distance=0)
    assert done.outside.is_empty
    assert done.inside.area == pytest.approx(ELL.buffer(-103, join_style="mitre").area)


@pytest.mark.parametrize("corners", ["mitred", "butted"])
@pytest.mark.parametrize("shape", [ELL, SKEW], ids=["ell", "skew"])
def test_a_mirrored_area_gives_the_mirrored_border(shape: Polygon, corners: str):
    def pieces(area: Polygon) -> list[Polygon]:
        return [t.shape for s in bordered(area, corners=corners).strips for t in lay(s.cell, s.shift, s.area)]

    here = pieces(shape)
    there = [scale(piece, -1, 1, origin=(0, 0)) for piece in pieces(scale(shape, -1, 1, origin=(0, 0)))]
    assert len(here) == len(there)
    whole = unary_union([piece.buffer(-0.01) for piece in there])
    assert sum(piece.difference(whole.buffer(0.02)).area for piece in here) < 1


def test_both_ends_of_a_strip_are_cut_alike():
    strip = bordered(Polygon([(0, 0), (2600, 0), (2600, 1500), (0, 1500)]), corners="butted").strips[0]
    tiles = [tile.shape for tile in lay(strip.cell, strip.shift, strip.area)]
    assert tiles[0].area == pytest.approx(tiles[-1].area)


def test_a_pipe_in_the_border_is_cut_round():
    area = ELL.difference(Point(200, 1500).buffer(40))
    border = Border(cell=BAR, width=100, distance=150, corners="mitred")
    done = with_border(area, ELL, (), border)
    assert sum(strip.area.area for strip in done.strips) == pytest.approx(
        sum(strip.area.area for strip in bordered(ELL).strips) - Point(200, 1500).buffer(40).area
    )


@pytest.mark.parametrize(
    ("shape", "words"),
    [
        (Polygon([(0, 0), (2000, 0), (2000, 400), (0, 400)]), "too short|meets itself"),
        (
            Polygon(
                [(0, 0), (2000, 0), (2000, 900), (1100, 900), (1100, 1100), (1000, 1100), (1000, 900), (0, 900)]
            ),
            "too short",
        ),
    ],
)
def test_a_border_that_cannot_turn_is_refused(shape: Polygon, words: str):
    with pytest.raises(InputValueError, match=words):
        bordered(shape)


def test_an_area_in_parts_is_refused():
    two = MultiPolygon([ELL, Polygon([(5000, 0), (6000, 0), (6000, 900)])])
    with pytest.raises(InputValueError, match="several parts"):
        with_border(two, two, (), Border(cell=BAR, width=100, distance=0, corners="mitred"))


@given(
    width=st.integers(900, 5000),
    height=st.integers(900, 5000),
    distance=st.integers(0, 150),
    wide=st.integers(20, 100),
    corners=st.sampled_from(["mitred", "butted"]),
)
def test_any_rectangle_is_parted_exactly(width: int, height: int, distance: int, wide: int, corners: str):
    room = Polygon([(0, 0), (width, 0), (width, height), (0, height)])
    done = bordered(room, corners=corners, distance=distance, width=wide)
    out, inner = distance, distance + wide
    ring = (width - 2 * out) * (height - 2 * out) - (width - 2 * inner) * (height - 2 * inner)
    # A mitre is longer than the border is wide by the root of two.
    joints = 4 * wide * JOINT * (2**0.5 if corners == "mitred" else 1)
    assert sum(strip.area.area for strip in done.strips) == pytest.approx(ring - joints, abs=4 * JOINT**2)
    assert done.inside.area == pytest.approx((width - 2 * inner - 6) * (height - 2 * inner - 6))

"""Any repeat fills the plane with joints of one width, and what is laid covers what it should."""

import math
from fractions import Fraction
from itertools import pairwise, product
from typing import Any

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, affinity, box

from firstcourse.plan import TileStock
from firstcourse.tiles.lay import lay
from firstcourse.tiles.model import RepeatCell
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.units import mm

ROUNDING = 1e-6


@st.composite
def cells(draw: st.DrawFn) -> RepeatCell:
    pattern: Any = draw(
        st.sampled_from(
            [
                "stacked",
                "running",
                "diagonal",
                "herringbone",
                "double_herringbone",
                "basket_weave",
                "hexagon",
            ]
        )
    )
    joint = draw(st.integers(1, 10))
    short = draw(st.integers(60, 300))
    long = draw(st.integers(short, 900))
    if pattern in ("herringbone", "double_herringbone"):
        long = max(long, (2 if pattern == "double_herringbone" else 1) * short + 1)
    elif pattern == "basket_weave":
        num = draw(st.integers(2, 4))
        long = num * short + (num - 1) * joint
    size = (mm(short), mm(long)) if draw(st.booleans()) else (mm(long), mm(short))
    if pattern == "hexagon":
        size = (mm(short), mm(short * 2 / math.sqrt(3)))
    tile = TileStock(
        id="t",
        size=size,
        thickness=mm(8),
        kind="ceramic",
        shape="hexagon" if pattern == "hexagon" else "rectangle",
        joint=mm(joint),
    )
    bottom = draw(st.integers(2, 7))
    offset = Fraction(draw(st.integers(1, bottom - 1)), bottom)
    angle: Any = draw(st.sampled_from([0, 45, 90]))
    return repeat_cell(pattern, [tile], joint, offset=offset, angle=angle)


@settings(max_examples=60, deadline=None)
@given(cells())
def test_every_gap_is_one_joint_wide(cell: RepeatCell) -> None:
    pieces = [Polygon(piece.ring) for piece in cell.pieces]
    # With half the joint round it each piece is a module; modules fill the plane without overlap.
    modules = [piece.buffer(cell.joint / 2, join_style="mitre") for piece in pieces]
    cross = cell.step_a[0] * cell.step_b[1] - cell.step_a[1] * cell.step_b[0]
    assert sum(module.area for module in modules) == pytest.approx(abs(cross), rel=1e-9)
    copies = [
        (i, j, number, affinity.translate(piece, i * cell.step_a[0] + j * cell.step_b[0], y))
        for i, j in product(range(-9, 10), repeat=2)
        for y in (i * cell.step_a[1] + j * cell.step_b[1],)
        for number, piece in enumerate(pieces)
    ]
    tree = shapely.STRtree([copy[3] for copy in copies])
    for number, piece in enumerate(pieces):
        near = [copies[k] for k in tree.query(piece, predicate="dwithin", distance=cell.joint * 1.5)]
        gaps = [piece.distance(other) for i, j, k, other in near if (i, j, k) != (0, 0, number)]
        assert len(gaps) >= 4
        assert min(gaps) == pytest.approx(cell.joint, abs=ROUNDING)


@settings(max_examples=15, deadline=None)
@given(cells(), st.integers(-300, 300), st.integers(-300, 300), st.integers(0, 3))
def test_what_is_laid_is_what_the_whole_plane_of_tiles_leaves_in_the_area(
    cell: RepeatCell, x: int, y: int, cut_out: int
) -> None:
    area = box(0, 0, 700, 500).difference(box(200, 100, 200 + 100 * cut_out, 300))
    tiles = lay(cell, (x, y), area)
    plane = [
        affinity.translate(Polygon(piece.ring), x + i * cell.step_a[0] + j * cell.step_b[0], y + at)
        for i, j in product(range(-40, 41), repeat=2)
        for at in (i * cell.step_a[1] + j * cell.step_b[1],)
        if abs(i * cell.step_a[0] + j * cell.step_b[0]) < 4000 and abs(at) < 4000
        for piece in cell.pieces
    ]
    pieces = [part for tile in plane for part in shapely.get_parts(tile.intersection(area)) if part.area >= 1]
    assert len(tiles) == len(pieces)
    assert sum(tile.shape.area for tile in tiles) == pytest.approx(sum(piece.area for piece in pieces), rel=1e-6)
    assert sum(tile.whole for tile in tiles) == sum(area.buffer(0.001).covers(tile) for tile in plane)
    lows = [min(v for _, v in tile.laid) for tile in tiles]
    assert all(upper >= lower - 0.001 for lower, upper in pairwise(lows))

"""Floating point decided whether an edge of just the least length counts, for planner and proof apart."""

import pytest
from shapely import Polygon
from shapely.affinity import scale, translate

from firstcourse.tiles.area_edges import lines
from firstcourse.tiles.cut_measures import measured_cuts
from firstcourse.tiles.lay import lay
from firstcourse.tiles.model import CellPiece, RepeatCell, TileArea
from firstcourse.units import TICKS_PER_MM

SHORTEST_MM = 25.4


def _head(up: int) -> Polygon:
    """The ground beside a door, an inch of it over the door's head, so far up its wall [ticks]."""
    ground = Polygon(
        [(0, 0), (400_000, 0), (400_000, 416_256), (-400_000, 416_256), (-400_000, 400_000), (0, 400_000)]
    )
    return scale(translate(ground, 555_757, up), 1 / TICKS_PER_MM, 1 / TICKS_PER_MM, origin=(0, 0))


@pytest.mark.parametrize("up", [0, 24_384, 863_904, 1_263_905])
def test_every_edge_counts_wherever_it_lies(up: int) -> None:
    assert len(lines(TileArea(area=_head(up), edges=()), SHORTEST_MM)) == 6


@pytest.mark.parametrize("up", [0, 24_384, 863_904, 1_263_905])
def test_a_tile_cut_along_it_is_measured_wherever_it_lies(up: int) -> None:
    piece = CellPiece(tile="large", ring=((0.0, 0.0), (700.0, 0.0), (700.0, 700.0), (0.0, 700.0)))
    cell = RepeatCell(pieces=(piece,), step_a=(703.0, 0.0), step_b=(0.0, 703.0), joint=3.0)
    left = 155_757 / TICKS_PER_MM
    tiles = lay(cell, (left - 300.0, up / TICKS_PER_MM + 300.0), _head(up))
    ends = [cut.edge for cut in measured_cuts(tiles, SHORTEST_MM) if cut.edge is not None]
    assert any(abs(a[0] - left) < 0.01 and abs(b[0] - left) < 0.01 for a, b in ends)

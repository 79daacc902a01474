"""A slanting edge with no tile beside it told a cut of nothing in the worst room, as at a kerb's mitred end."""

import datetime

import numpy as np

from firstcourse.rules import load_rules
from firstcourse.tiles.area_edges import EdgeLine
from firstcourse.tiles.edges import met_by_tiles, start_costs
from firstcourse.tiles.model import CellPiece, RepeatCell

DATE = datetime.date(2026, 11, 25)
PLANK = RepeatCell(
    step_a=(300.0, 0.0),
    step_b=(0.0, 1200.0),
    pieces=(CellPiece(tile="plank", ring=((0.0, 0.0), (297.0, 0.0), (297.0, 1197.0), (0.0, 1197.0))),),
    joint=3.0,
)


def test_an_edge_beside_which_no_tile_has_its_middle_leaves_whole_tiles() -> None:
    edge = EdgeLine(a=(100.0, 0.0), b=(70.0, 30.0), weight=1.0, side="", share=1.0, hole=False, free=True)
    found = met_by_tiles(
        edge, PLANK, np.array([[0.0, 0.0]]), unsure=0.0, costs=start_costs(load_rules(DATE, "us", ()))
    )
    assert not found.sliver[0]
    assert found.kept[0] == 1.0
    assert found.sure[0] > 297.0
    assert found.slack[0] > 297.0

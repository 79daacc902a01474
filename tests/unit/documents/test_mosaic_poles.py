"""Story poles of mosaic: marks stand where its sheets do, a sheet's width apart."""

from itertools import pairwise

import pytest
from test_site_pack import plan_of

from firstcourse.documents.mosaic_poles import by_sheets
from firstcourse.drawings.mosaic import mosaics, sheet_rings
from firstcourse.plan import Plan
from firstcourse.tiling.story_pole import story_poles
from firstcourse.units import TICKS_PER_MM


@pytest.fixture(scope="module")
def plan() -> Plan:
    return plan_of("tiled-shower")


def test_sheets_are_marked_in_place_of_chips(plan: Plan) -> None:
    surface = next(surface for surface in plan.surfaces if surface.fall is not None)
    (stock,) = mosaics(plan).values()
    assert stock.sheet is not None
    edges = list(sheet_rings(surface, mosaics(plan)))
    for pole in story_poles(surface):
        axis = 1 if pole.along == "v" else 0
        marks = [mark for mark in by_sheets(pole, surface, plan).marks if mark.kind == "tile"]
        assert 2 < len(marks) < len([mark for mark in pole.marks if mark.kind == "tile"]) / 3
        pitch = stock.sheet[axis] * (stock.size[axis] + surface.tiled[0].joint)
        starts = [mark.at for mark in marks[1:-1]]
        assert all(abs(b - a - pitch) < TICKS_PER_MM // 10 for a, b in pairwise(starts))
        assert marks[0].name.startswith("sheet 1") and marks[-1].name == f"end of sheet {len(marks) - 1}"
        # The drawing's sheets begin half a joint before the chips.
        line = next(line.line for line in surface.tiled[0].lines if line.line[0][axis] == line.line[1][axis])
        assert pole.control is not None
        foot = (line[0][axis] - pole.control) / TICKS_PER_MM
        drawn = {min(point[axis] for point in ring) for ring in edges}
        half = surface.tiled[0].joint / TICKS_PER_MM / 2
        for start in starts:
            assert any(abs(foot + start / TICKS_PER_MM - half - edge) < 0.2 for edge in drawn)


def test_openings_ends_and_lines_stay(plan: Plan) -> None:
    surface = next(surface for surface in plan.surfaces if surface.fall is not None)
    for pole in story_poles(surface):
        others = [mark for mark in pole.marks if mark.kind != "tile"]
        assert [mark for mark in by_sheets(pole, surface, plan).marks if mark.kind != "tile"] == others


def test_poles_of_tile_set_one_by_one_are_left_as_they_are(plan: Plan) -> None:
    for surface in plan.surfaces:
        if surface.tiled and surface.fall is None:
            assert all(by_sheets(pole, surface, plan) is pole for pole in story_poles(surface))

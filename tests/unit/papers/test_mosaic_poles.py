"""Story poles of mosaic: marks stand where its sheets do, a sheet's width apart."""

from itertools import pairwise

import pytest

from example_plans import plan_of
from firstcourse.drawings.mosaic import mosaics, sheet_rings
from firstcourse.papers.poles import plan_poles
from firstcourse.plan import Plan
from firstcourse.units import TICKS_PER_MM


@pytest.fixture(scope="module")
def plan() -> Plan:
    return plan_of("tiled-shower")


def test_sheets_are_marked_in_place_of_chips(plan: Plan) -> None:
    surface = next(surface for surface in plan.surfaces if surface.fall is not None)
    (stock,) = mosaics(plan).values()
    assert stock.sheet is not None
    edges = list(sheet_rings(surface, mosaics(plan)))
    poles = [pole for pole in plan_poles(plan) if pole.surfaces == (surface.id,)]
    assert len(poles) == 2
    for pole in poles:
        axis = 1 if pole.way == "along the first line" else 0
        marks = [mark for mark in pole.marks if mark.kind == "tile"]
        assert 2 < len(marks) < 10
        pitch = stock.sheet[axis] * (stock.size[axis] + surface.tiled[0].joint)
        starts = [mark.at for mark in marks[1:-1]]
        assert all(abs(b - a - pitch) < TICKS_PER_MM // 10 for a, b in pairwise(starts))
        assert marks[0].name.startswith("sheet 1") and marks[-1].name == f"end of sheet {len(marks) - 1}"
        # The drawing's sheets begin half a joint before the chips.
        control = next(mark.at for mark in pole.marks if mark.kind == "control")
        line = next(mark.line for mark in surface.marks if mark.line[0][axis] == mark.line[1][axis])
        foot = (line[0][axis] - control) / TICKS_PER_MM
        drawn = {min(point[axis] for point in ring) for ring in edges}
        half = surface.tiled[0].joint / TICKS_PER_MM / 2
        for start in starts:
            assert any(abs(foot + start / TICKS_PER_MM - half - edge) < 0.2 for edge in drawn)


def test_tile_set_one_by_one_is_marked_one_by_one(plan: Plan) -> None:
    names = [
        mark.name for pole in plan_poles(plan) if pole.way == "up" for mark in pole.marks if mark.kind == "tile"
    ]
    assert len(names) > 10 and not any("sheet" in name for name in names)

"""The area that takes tile: what is taken off at sides and openings, and which sides are looked at."""

import datetime

import pytest

from firstcourse.geometry.polygon import rectangle
from firstcourse.plan import Opening, OpeningKind, Side, SideKind, Surface, SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.tiles.field import areas, tiled_field
from firstcourse.units import ticks_from_mm

RULES = load_rules(datetime.date(2026, 11, 25))


def _mm(*values: float) -> tuple[int, ...]:
    return tuple(ticks_from_mm(value) for value in values)


def _wall(*openings: Opening) -> Surface:
    kinds = (SideKind.FOOT, SideKind.PERIMETER, SideKind.FREE, SideKind.PERIMETER)
    met = ("bath/fixture/tub", "bath/corner/B", "stops_here", "bath/wall/D-A")
    return Surface(
        id="bath/wall/A-B",
        room="bath",
        kind=SurfaceKind.WALL,
        outline=rectangle(*_mm(0, 380, 1524, 2130)),
        sides=tuple(Side(kind=kind, meets=meets) for kind, meets in zip(kinds, met, strict=True)),
        openings=openings,
    )


def _field(surface: Surface, *, before: tuple[float, ...] = (0, 0, 0, 0), seen_first: tuple[str, ...] = ()):
    return tiled_field(
        surface,
        edge_joint=ticks_from_mm(3),
        before=_mm(*before),
        seen_first=seen_first,
        uncertainty_mm=1.5,
        rules=RULES,
    )


def test_sides_lose_their_joint_and_what_stands_before_them_but_a_free_side_loses_nothing():
    field = _field(_wall(), before=(0, 11, 5, 0))
    assert field.area.bounds == pytest.approx((3, 383, 1524 - 3 - 11, 2130), abs=1e-3)
    assert field.uncertainty == 1.5


def test_a_niche_is_met_flush_and_its_edges_are_wanted_on_joints():
    niche = Opening(id="niche", kind=OpeningKind.NICHE, outline=rectangle(*_mm(400, 1200, 760, 1800)))
    field = _field(_wall(niche))
    (hole,) = field.area.interiors
    assert hole.bounds == pytest.approx((400, 1200, 760, 1800), abs=1e-3)
    assert sorted(field.wanted) == [("u", 1200.0), ("u", 1800.0), ("v", 400.0), ("v", 760.0)]


def test_a_round_hole_gets_its_gap_all_round():
    pipe = Opening(id="pipe", kind=OpeningKind.PIPE, centre=_mm(700, 1000), diameter=ticks_from_mm(32))
    (hole,) = _field(_wall(pipe)).area.interiors
    gap = RULES.number("tiling.gap.opening") * 25.4
    radii = [((x - 700) ** 2 + (y - 1000) ** 2) ** 0.5 for x, y in hole.coords]
    assert min(radii) >= 16 + gap - 1e-3
    assert max(radii) <= 16 + gap + 0.2


def test_a_column_gets_the_joint_that_is_left_free_to_move():
    column = Opening(id="column", kind=OpeningKind.COLUMN, outline=rectangle(*_mm(600, 900, 800, 1100)))
    (hole,) = _field(_wall(column)).area.interiors
    assert hole.bounds == pytest.approx((597, 897, 803, 1103), abs=1e-3)


def test_sides_weigh_by_how_they_are_seen():
    wall = _wall()
    weights = {edge.side: edge.weight for edge in _field(wall, seen_first=("D-A",)).edges}
    assert list(map(weights.get, (f"{wall.id}/side/{index}" for index in range(4)))) == [1.5, 1.0, 2.0, 3.0]


def test_areas_come_back_in_ticks():
    (area,) = areas(_field(_wall()).area)
    assert area.outline == rectangle(*_mm(3, 383, 1521, 2130))

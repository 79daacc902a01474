"""Every cut tile is told by what it is cut along: sides, openings, borders, bands, benches and soft joints."""

from functools import cache
from pathlib import Path

import pytest

import firstcourse
from firstcourse.plan import (
    Area,
    Plan,
    Side,
    SideKind,
    SoftJoint,
    StartPoint,
    Surface,
    SurfaceKind,
    Tile,
    TiledArea,
)
from firstcourse.plan.cut_places import CutPlaces
from firstcourse.units import ticks_from_mm
from said import places_of

TESTS = Path(__file__).parents[2]


@cache
def _plan(name: str) -> Plan:
    return firstcourse.open(TESTS / name).plan(effort=0).plan


def _places(surface: Surface) -> dict[str, int]:
    return places_of(CutPlaces(surface).counted(tile for tile in surface.tiles if not tile.whole))


def _place(places: CutPlaces, tile: Tile) -> str:
    (place,) = places_of(places.counted([tile]))
    return place


def _ring(left: float, lower: float, right: float, upper: float) -> tuple[tuple[int, int], ...]:
    corners = ((left, lower), (right, lower), (right, upper), (left, upper))
    return tuple((ticks_from_mm(u), ticks_from_mm(v)) for u, v in corners)


def _surface(*areas: TiledArea, joints: tuple[SoftJoint, ...] = ()) -> Surface:
    return Surface(
        id="floor",
        room="bath",
        kind=SurfaceKind.FLOOR,
        outline=_ring(0, 0, 1000, 1000),
        sides=tuple(
            Side(kind=SideKind.PERIMETER, meets=f"bath/wall/{name}") for name in ("C-D", "B-C", "A-B", "D-A")
        ),
        tiled=areas,
        soft_joints=joints,
    )


def _area(role: str, left: float, lower: float, right: float, upper: float, angle: int = 0) -> TiledArea:
    return TiledArea.model_validate(
        {
            "pattern": "stacked",
            "tiles": ("a",),
            "area": (Area(outline=_ring(left, lower, right, upper)),),
            "joint": ticks_from_mm(2),
            "angle": angle,
            "step_a": (302.0, 0.0),
            "step_b": (0.0, 302.0),
            "starts": (StartPoint(origin=(0, 0), smallest_cut=0, cut_tiles=0),),
            "role": role,
        }
    )


def _cut(laid: tuple[tuple[int, int], ...], outline: tuple[tuple[int, int], ...]) -> Tile:
    return Tile(id="1", outline=outline, laid=laid, whole=False)


@pytest.mark.parametrize(
    "job", ["e2e/tile_details.yaml", "../examples/metric-column/job.yaml", "../examples/tiled-shower/job.yaml"]
)
def test_no_tile_is_cut_for_no_reason(job: str):
    for surface in _plan(job).surfaces:
        assert "in the field" not in _places(surface), surface.id


def test_a_border_is_named_from_within_from_without_and_at_its_corners():
    places = _places(next(one for one in _plan("e2e/tile_details.yaml").surfaces if one.id == "bath/floor"))
    assert {"border", "wall C-D and border", "corner of the border", "soft joint"} <= places.keys()


def test_bands_and_benches_are_named():
    surfaces = {surface.id: surface for surface in _plan("e2e/tile_details.yaml").surfaces}
    assert {"edge of the band", "bench", "tray flange and bench"} <= _places(surfaces["bath/wall/A-B"]).keys()
    assert "bench" in _places(surfaces["bath/floor/shower"])


def test_a_tile_that_reaches_across_a_border_to_the_wall_is_cut_at_the_border():
    inside, strip = _area("field", 0, 42, 1000, 1000), _area("border", 0, 0, 1000, 40)
    tile = _cut(_ring(400, -150, 700, 150), _ring(400, 42, 700, 150))
    assert _place(CutPlaces(_surface(inside, strip)), tile) == "border"


def test_a_strip_is_cut_across_at_corners_and_lengthwise_along_its_edge():
    strip, side = _area("border", 0, 0, 900, 100), _area("border", 902, 0, 1000, 1000, angle=90)
    field = _area("field", 0, 102, 900, 1000)
    places = CutPlaces(_surface(field, strip, side))
    assert _place(places, _cut(_ring(700, 0, 1000, 100), _ring(700, 0, 900, 100))) == "corner of the border"
    assert _place(places, _cut(_ring(300, 0, 600, 150), _ring(300, 0, 600, 100))) == "edge of the border"


def test_soft_joints_along_edges_are_not_told_twice():
    def joint(u: float) -> SoftJoint:
        return SoftJoint(
            line=((ticks_from_mm(u), 0), (ticks_from_mm(u), ticks_from_mm(1000))),
            width=ticks_from_mm(6),
            why="field",
        )

    areas = _area("field", 6, 0, 497, 1000), _area("field", 503, 0, 1000, 1000)
    places = CutPlaces(_surface(*areas, joints=(joint(3), joint(500))))
    assert _place(places, _cut(_ring(300, 0, 600, 300), _ring(300, 0, 497, 300))) == "soft joint"
    assert _place(places, _cut(_ring(-100, 0, 200, 300), _ring(6, 0, 200, 300))) == "wall D-A"

"""Borders and bands of a whole job: planned, counted, verified, mirrored, and no tampering that passes."""

import copy
import json
import math
from collections import Counter
from collections.abc import Callable
from functools import cache
from typing import Any

import pytest
import yaml
from shapely import Polygon, unary_union
from shapely.affinity import affine_transform

from firstcourse.errors import JobError
from firstcourse.job import read_job_text
from firstcourse.plan import Plan, Surface
from firstcourse.steps import PlanResult, plan_job
from firstcourse.units import TICKS_PER_MM
from proving import verify_text

TILES = [
    {"id": "white", "size": ["298 mm", "98 mm"], "thickness": "8 mm", "joint": "2 mm"},
    {"id": "floor", "size": ["297 mm", "297 mm"], "thickness": "8 mm", "joint": "2 mm"},
    {"id": "bar", "size": ["198 mm", "98 mm"], "thickness": "8 mm", "joint": "2 mm"},
    {"id": "chip", "size": ["148 mm", "73 mm"], "thickness": "8 mm", "joint": "2 mm"},
]


def _document(*, floor: dict[str, Any], wall: dict[str, Any], mirrored: bool = False) -> dict[str, Any]:
    """A hall in the shape of an L and its long wall; the mirrored one is listed from the other end."""
    lengths = [3200, 1500, 1500, 1200, 1700, 2700]
    names = ["A", "B", "C", "D", "E", "F"]
    points = [(0, 0), (3200, 0), (3200, 1500), (1700, 1500), (1700, 2700), (0, 2700)]
    if mirrored:
        # The first side stays the long one: the corner at its other end becomes the first.
        lengths = [3200, 2700, 1700, 1200, 1500, 1500]
        points = [(0, 0), (3200, 0), (3200, 2700), (1500, 2700), (1500, 1500), (0, 1500)]
    # Each room is taped from a corner that sees the others; the mirrored one's A does not see round the notch.
    first = 1 if mirrored else 0
    (x, y), seen = points[first], range(first + 2, first + 5)
    diagonals = {
        f"{names[first]}-{names[n]}": f"{math.hypot(points[n][0] - x, points[n][1] - y):.3f} mm" for n in seen
    }
    return {
        "name": "hall",
        "date": "2026-11-25",
        "tape": "mm",
        "tiles": TILES,
        "rooms": [
            {
                "name": "hall",
                "corners": names,
                "sides": {
                    f"{a}-{b}": f"{length} mm"
                    for a, b, length in zip(names, names[1:] + names[:1], lengths, strict=True)
                },
                "diagonals": diagonals,
                "height": "2400 mm",
                "floor": {"tiling": floor},
                "walls": [
                    {"wall": "A-B", "framing": {"spacing": "400 mm", "first": "400 mm"}, "tiling": wall},
                ],
            }
        ],
    }


BORDER: dict[str, Any] = {"tile": "floor", "border": {"tile": "bar", "distance": "150 mm"}}
BAND: dict[str, Any] = {
    "tile": "white",
    "bands": [{"tile": "chip", "bottom": "1200 mm", "pattern": "herringbone", "height": "250 mm"}],
}


@cache
def _result(mirrored: bool = False, corners: str = "mitred", pattern: str = "stacked") -> PlanResult:
    floor = {**BORDER, "pattern": pattern, "border": {**BORDER["border"], "corners": corners}}
    text = yaml.safe_dump(_document(floor=floor, wall=BAND, mirrored=mirrored), sort_keys=False)
    return plan_job(read_job_text(text), effort=0)


def _plan(**how: Any) -> Plan:
    return _result(**how).plan


def _floor(plan: Plan) -> Surface:
    return next(surface for surface in plan.surfaces if surface.id == "hall/floor")


def _wall(plan: Plan) -> Surface:
    return next(surface for surface in plan.surfaces if surface.id.endswith("A-B"))


@pytest.mark.parametrize("corners", ["mitred", "butted"])
def test_a_border_is_planned_counted_and_worded(corners: str):
    plan = _plan(corners=corners)
    floor = _floor(plan)
    assert [area.role for area in floor.tiled] == ["field", "field", *["border"] * 6]
    inside, outside, *strips = floor.tiled
    assert len(inside.starts) == 3 and floor.marks
    assert outside.starts[0].origin == inside.starts[0].origin
    assert {strip.tiles for strip in strips} == {("bar",)}
    bars = [tile for tile in floor.tiles if tile.stock == "bar"]
    quantity = next(q for q in plan.quantities if q.item == "tile_stock/bar")
    assert quantity.exact == sum(t.whole for t in bars) + len({t.from_ for t in bars if not t.whole})


@pytest.mark.parametrize("pattern", ["stacked", "diagonal"])
def test_a_mirrored_room_gives_the_mirrored_border(pattern: str):
    here, there = (_floor(_plan(mirrored=mirrored, pattern=pattern)) for mirrored in (False, True))
    width = max(u for u, _ in here.outline)
    turned = [
        affine_transform(Polygon(t.outline), (-1, 0, 0, 1, width, 0)) for t in there.tiles if t.stock == "bar"
    ]
    bars = [Polygon(tile.outline) for tile in here.tiles if tile.stock == "bar"]
    assert len(turned) == len(bars)
    covered = unary_union([shape.buffer(TICKS_PER_MM / 10) for shape in turned])
    assert sum(bar.difference(covered).area for bar in bars) < TICKS_PER_MM**2
    if pattern == "stacked":
        assert len(here.tiles) == len(there.tiles)


def test_a_band_has_its_own_pattern_and_start():
    wall = _wall(_plan())
    assert [(area.role, area.pattern) for area in wall.tiled] == [
        ("field", "stacked"),
        ("band", "herringbone"),
        ("field", "stacked"),
    ]
    assert len(wall.tiled[1].starts) == 3
    assert wall.tiled[2].starts[0].why == "courses_below"


def test_a_wall_takes_a_border_as_well():
    wall = {"tile": "white", "border": {"tile": "chip", "distance": "0 mm", "courses": 2, "corners": "butted"}}
    text = yaml.safe_dump(_document(floor={"tile": "floor"}, wall=wall), sort_keys=False)
    planned = _wall(plan_job(read_job_text(text), effort=0).plan)
    assert Counter(area.role for area in planned.tiled) == {"field": 1, "border": 4}


@pytest.mark.parametrize(
    ("floor", "wall", "words"),
    [
        ({"border": {"tile": "green"}}, {}, "'green' is not one of the job's rectangular tiles"),
        ({"border": {"tile": "bar", "width": "150 mm"}}, {}, r"rooms\[1\]\.floor\.tiling.*wider than 1 course"),
        (
            {"border": {"tile": "bar", "distance": "800 mm"}},
            {},
            r"rooms\[1\]\.floor\.tiling.*too short for the border",
        ),
        ({}, {**BAND, "border": {"tile": "bar"}}, "bands or a border, not both"),
        ({}, {"bands": [{"tile": "chip", "bottom": "1 m", "pattern": "diagonal"}]}, "needs a height"),
        ({}, {"bands": [{"tile": "chip", "bottom": "1 m", "height": "1 m"}]}, "so many courses"),
        ({}, {"bands": [{"tile": "chip", "bottom": "1 m", "offset": "1/3"}]}, "offset belongs"),
        ({}, {"bands": [{"tile": "chip", "bottom": "1 m", "pattern": "hexagon", "height": "1 m"}]}, "hexagons"),
    ],
)
def test_what_cannot_be_is_refused_in_words(floor: dict[str, Any], wall: dict[str, Any], words: str):
    document = _document(floor={"tile": "floor", **floor}, wall={"tile": "white", **wall})
    with pytest.raises(JobError, match=words):
        plan_job(read_job_text(yaml.safe_dump(document, sort_keys=False)), effort=0)


def _without_a_strip(plan: dict[str, Any]) -> None:
    floor = plan["surfaces"][0]
    gone = next(area for area in floor["tiled"] if area["role"] == "border")
    floor["tiled"].remove(gone)
    ring = Polygon(gone["area"][0]["outline"]).buffer(0.1)
    floor["tiles"] = [tile for tile in floor["tiles"] if not ring.covers(Polygon(tile["outline"]))]


def _of_another_tile(plan: dict[str, Any]) -> None:
    tiles = [tile for tile in plan["surfaces"][0]["tiles"] if tile["stock"] == "bar"]
    tiles[0]["stock"] = "chip"


def _without_a_piece(plan: dict[str, Any]) -> None:
    tiles = plan["surfaces"][0]["tiles"]
    tiles.remove(next(tile for tile in tiles if tile["stock"] == "bar"))


@pytest.mark.parametrize(
    ("change", "code"),
    [(_without_a_strip, "VER-712"), (_of_another_tile, "VER-710"), (_without_a_piece, "VER-705")],
)
def test_verify_objects_to_a_spoilt_border(change: Callable[[dict[str, Any]], None], code: str):
    plan = json.loads(_result().document)
    assert verify_text(json.dumps(plan)).objections == ()
    spoilt = copy.deepcopy(plan)
    change(spoilt)
    assert code in {objection.code for objection in verify_text(json.dumps(spoilt)).objections}

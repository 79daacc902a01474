"""The membrane over a bench, counted by hand; and that one which stays bare in the wet is objected to."""

import copy
import datetime
import json
from typing import Any

import pytest
import yaml

from firstcourse.details.footings import level_foot
from firstcourse.details.linings import bench_linings
from firstcourse.geometry import rectangle
from firstcourse.job import read_job_text
from firstcourse.plan import Surface, Zone
from firstcourse.rules import load_rules
from firstcourse.showers.bench_water import bench_membranes
from firstcourse.showers.developed import Developed
from firstcourse.steps import plan_job
from firstcourse.tiles.lined import Rim
from firstcourse.units import inches
from proving import verify

RULES = load_rules(datetime.date(2026, 11, 25))
LEFT, RIGHT = Rim(meets="bath/wall/D-A"), Rim(meets="bath/wall/B-C")


def bench(ends: tuple[Rim | None, Rim | None], low: int = 0) -> list[Surface]:
    """A bench of 40 x 16 in, 18 in high, that falls level; tile and bed of its front are 1/2 in."""
    feet = (level_foot(inches(40), low), *[level_foot(inches(16), low)] * 2)
    found = bench_linings(
        ("bath/bench/seat", "bath"), width=inches(40), depth=inches(16), feet=feet,
        height=inches(18), drop=0, ends=ends, back=Rim(meets="bath/wall/A-B"), on_front=inches(0.5),
    )  # fmt: skip
    return [lining.surface for lining in found]


def by_face(surfaces: list[Surface], kind: Any = "liquid") -> dict[str, Developed]:
    found = bench_membranes(surfaces, {"bath/wall/A-B": kind}, {}, {}, RULES)
    return {item.surface.rpartition("/")[2]: item for item in found}


def test_between_two_walls_every_line_but_the_front_edge_lies_in_a_corner():
    found = by_face(bench((LEFT, RIGHT)))
    assert set(found) == {"top", "front"}
    assert found["top"].area == pytest.approx(40 * 16.5 * 0.0254**2)
    assert found["front"].area == pytest.approx(40 * 18 * 0.0254**2)
    # Round the top; the front's foot and both its ends, its upper edge being the top's.
    assert found["top"].band == pytest.approx(2 * (40 + 16.5) * 25.4)
    assert found["front"].band == pytest.approx((40 + 2 * 18) * 25.4)
    # Both corners at the back and both at the foot turn inwards; the front edge runs into a wall at either end.
    assert (found["top"].inside, found["top"].outside) == (2, 2)
    assert (found["front"].inside, found["front"].outside) == (2, 0)


def test_a_free_bench_has_ends_that_reach_the_floor_though_tile_begins_higher():
    found = by_face(bench((None, None), low=inches(2)))
    assert set(found) == {"top", "front", "left end", "right end"}
    assert found["left end"].area == pytest.approx(16 * 18 * 0.0254**2)
    assert found["left end"].band == pytest.approx((16 + 18) * 25.4)
    assert sum(item.inside for item in found.values()) == 2
    # Four corners of its top, and the feet of its two upright edges.
    assert sum(item.outside for item in found.values()) == 6


def test_what_is_on_the_left_counts_as_what_is_on_the_right():
    one, other = by_face(bench((LEFT, None))), by_face(bench((None, RIGHT)))

    def counted(found: dict[str, Developed]) -> list[Any]:
        faces = sorted(found.items(), key=lambda pair: pair[0].rpartition(" ")[2])
        return [(item.area, round(item.band, 3), item.inside, item.outside) for _, item in faces]

    assert counted(one) == counted(other)
    assert sum(item.inside for item in one.values()) == 1 + 1 + 1
    assert sum(item.outside for item in one.values()) == 3 + 1


def test_sheet_is_cut_in_strips_that_lap():
    (top, *_) = by_face(bench((LEFT, RIGHT)), "sheet").values()
    assert top.strips == (1, pytest.approx(40 * 25.4))
    assert top.laps == 0.0


def test_a_bench_on_a_dry_wall_takes_none_unless_it_stands_in_the_shower():
    faces = bench((LEFT, RIGHT))
    assert not list(bench_membranes(faces, {"bath/wall/C-D": "sheet"}, {"bath": "sheet"}, {}, RULES))
    zone = Zone(outline=rectangle(0, 0, 10, 10), why="bath/bench/seat")
    shower = Surface.model_validate(
        {
            "id": "bath/floor/shower", "room": "bath", "kind": "floor", "boarded": False, "fall": _shower_fall(),
            "outline": [[0, 0], [900, 0], [900, 900], [0, 900]],
        }
    ).model_copy(update={"not_tiled": (zone,)})  # fmt: skip
    found = list(bench_membranes([shower, *faces], {}, {"bath": "sheet"}, {}, RULES))
    assert {item.kind for item in found} == {"sheet"}
    assert len(found) == 2


def _shower_fall() -> dict[str, Any]:
    test = {"hours": 24, "level": 50, "litres": 1.0, "kg": 1.0, "dam": True}
    return {
        "drain": [[450, 450]], "layout": "level", "planes": [], "levels": [], "rise": 20, "least_fall": 0.02,
        "least_plane_fall": 0.02, "greatest_fall": 0.02, "bed": 30, "bed_litres": 1.0, "membrane": "sheet",
        "flood_test": test,
    }  # fmt: skip


WET_ROOM: dict[str, Any] = {
    "name": "bath", "date": "2026-11-25", "tape": "mm",
    "tiles": [{"id": "white", "size": ["298 mm", "98 mm"], "thickness": "8 mm", "joint": "2 mm"}],
    "rooms": [
        {
            "name": "bath",
            "corners": ["A", "B", "C", "D"],
            "sides": {"A-B": "1500 mm", "B-C": "2000 mm", "C-D": "1500 mm", "D-A": "2000 mm"},
            "diagonals": {"A-C": "2500 mm", "B-D": "2500 mm"},
            "height": "2400 mm",
            "benches": [
                {
                    "id": "seat", "wall": "A-B", "left": "0 mm", "width": "900 mm", "depth": "400 mm",
                    "height": "450 mm", "tile": "white",
                },
            ],
            "walls": [
                {
                    "wall": "A-B",
                    "framing": {"spacing": "400 mm", "first": "350 mm"},
                    "exposure": {"zone": "wet", "membrane": True},
                    "tiling": {"tile": "white"},
                },
            ],
        },
    ],
}  # fmt: skip


@pytest.fixture(scope="module")
def wet_plan() -> dict[str, Any]:
    result = plan_job(read_job_text(yaml.safe_dump(WET_ROOM)), effort=0)
    found: dict[str, Any] = json.loads(result.document)
    return found


def test_the_plan_counts_it_with_the_walls(wet_plan: dict[str, Any]):
    faces = [surface for surface in wet_plan["surfaces"] if "/bench/" in surface["id"]]
    assert [face["membrane"] for face in faces] == ["liquid"] * 3
    assert {f"water-bench@{face['id']}" for face in faces} <= wet_plan["workings"].keys()
    (liquid,) = [line for line in wet_plan["quantities"] if line["item"] == "liquid_membrane"]
    listed = wet_plan["workings"][liquid["working"]]["inputs"]["surface"]
    assert {face["id"] for face in faces} <= {one["ref"] for one in listed}
    assert liquid["exact"] > 0


def test_a_bench_left_bare_in_the_wet_is_objected_to(wet_plan: dict[str, Any]):
    for index in range(3):
        plan = copy.deepcopy(wet_plan)
        face = [surface for surface in plan["surfaces"] if "/bench/" in surface["id"]][index]
        face["membrane"] = ""
        codes = {objection.code for objection in verify(plan).objections}
        assert {"VER-763", "VER-801"} <= codes


def test_other_corners_bands_and_areas_than_the_faces_have_are_objected_to(wet_plan: dict[str, Any]):
    for key, said in (("inside", 9), ("outside", 9), ("band", {"value": 100.0, "unit": "mm"})):
        plan = copy.deepcopy(wet_plan)
        plan["workings"]["water-bench@bath/bench/seat/top"]["inputs"][key] = said
        assert "VER-903" in {objection.code for objection in verify(plan).objections}

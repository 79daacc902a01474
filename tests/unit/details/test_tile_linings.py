"""Niches, benches and kerbs of a job: what is refused, which courses are kept, and mirrored rooms."""

from typing import Any

import pytest
import yaml
from shapely import Polygon, unary_union
from shapely.affinity import affine_transform

from firstcourse.drawings import draw_room, draw_tiling
from firstcourse.errors import JobError
from firstcourse.findings import Finding
from firstcourse.geometry import bounds
from firstcourse.job import read_job_text
from firstcourse.plan import Plan, Surface
from firstcourse.steps import plan_job
from firstcourse.units import TICKS_PER_MM, mm
from said import all_said, said_of

LEFT, WIDE, LENGTH = 400, 360, 1500


def _document(
    *,
    mirrored: bool = False,
    niche: dict[str, Any] | None = None,
    bench: dict[str, Any] | None = None,
    **tiling: Any,
) -> dict[str, Any]:
    """A bathroom whose wall A-B has a niche, with a bench in the corner beside it where asked."""
    left = LENGTH - LEFT - WIDE if mirrored else LEFT
    opening = {
        "id": "niche", "kind": "niche", "left": f"{left} mm", "bottom": "1202 mm",
        "width": f"{WIDE} mm", "height": "302 mm",
    }  # fmt: skip
    lined = {"niche": "niche", "depth": "90 mm", **(niche or {})}
    room: dict[str, Any] = {
        "name": "bath",
        "corners": ["A", "B", "C", "D"],
        "sides": {"A-B": "1500 mm", "B-C": "2000 mm", "C-D": "1500 mm", "D-A": "2000 mm"},
        "diagonals": {"A-C": "2500 mm", "B-D": "2500 mm"},
        "height": "2400 mm",
        "walls": [
            {
                "wall": "A-B",
                "framing": {"spacing": "400 mm", "first": "350 mm"},
                "openings": [opening],
                "tiling": {"tile": "white", "niches": [lined], **tiling},
            }
        ],
    }
    if bench is not None:
        room["benches"] = [bench]
    return {
        "name": "bath",
        "date": "2026-11-25",
        "tape": "mm",
        "tiles": [
            {"id": "white", "size": ["298 mm", "98 mm"], "thickness": "8 mm", "joint": "2 mm"},
            {"id": "chip", "size": ["48 mm", "48 mm"], "thickness": "6 mm", "joint": "2 mm"},
            {"id": "hex", "shape": "hexagon", "size": ["50 mm", "57.7 mm"], "thickness": "6 mm", "joint": "2 mm"},
        ],
        "rooms": [room],
    }


BENCH: dict[str, Any] = {
    "id": "seat", "wall": "A-B", "left": "0 mm", "width": "900 mm",
    "depth": "400 mm", "height": "450 mm", "tile": "white",
}  # fmt: skip


def _plan(**how: Any) -> Plan:
    return plan_job(read_job_text(yaml.safe_dump(_document(**how), sort_keys=False)), effort=0).plan


def _surfaces(plan: Plan) -> dict[str, Surface]:
    return {surface.id.removeprefix("bath/"): surface for surface in plan.surfaces}


def _said(plan: Plan, code: str) -> Finding:
    return next(finding for finding in said_of(plan) if finding.code == code)


def test_courses_run_on_over_the_back_where_no_sliver_comes_of_it():
    found = _surfaces(_plan())
    wall, back = found["wall/A-B"].tiled[0].starts[0], found["wall/A-B/niche/back"].tiled[0].starts[0]
    assert back.why in ("host_joints", "no_sliver")
    if back.why == "host_joints":
        assert back.origin == wall.origin


def test_a_tile_of_its_own_has_a_start_of_its_own():
    found = _surfaces(_plan(niche={"tile": "hex", "pattern": "hexagon", "returns": "white"}))
    assert found["wall/A-B/niche/back"].tiled[0].tiles == ("hex",)
    assert found["wall/A-B/niche/head"].tiled[0].tiles == ("white",)
    assert len(found["wall/A-B/niche/back"].tiled[0].starts) == 3


def test_courses_above_a_band_run_on_into_the_niche():
    # Above the band a course begins just over the tile of the sill.
    start = {"left": "0 mm", "up": "60 mm"}
    found = _surfaces(_plan(bands=[{"tile": "chip", "bottom": "800 mm"}], start=start))
    upper = found["wall/A-B"].tiled[2].starts[0].origin[1]
    side = found["wall/A-B/niche/left"].tiled[0]
    assert side.starts[0].why == "host_joints"
    assert (side.starts[0].origin[1] - upper) % mm(100) in (0, 1, mm(100) - 1)


def test_a_bench_in_the_corner_has_one_free_end_and_keeps_the_wall_bare_behind_it():
    found = _surfaces(_plan(bench=BENCH))
    assert [name for name in found if name.startswith("bench")] == [
        "bench/seat/top",
        "bench/seat/front",
        "bench/seat/right end",
    ]
    lowest = [bounds(tile.outline) for tile in found["wall/A-B"].tiles if bounds(tile.outline)[0] < mm(850)]
    assert min(box[1] for box in lowest) > mm(450)


def _standing(**bench: Any) -> tuple[Plan, int]:
    """A bench on a boarded and tiled floor, with the height of that floor."""
    document = _document(bench={**BENCH, **bench})
    document["rooms"][0]["floor"] = {"tiling": {"tile": "white"}}
    plan = plan_job(read_job_text(yaml.safe_dump(document, sort_keys=False)), effort=0).plan
    return plan, mm(plan.workings["height-build_up@bath/floor"].result.value)


def test_a_bench_beside_no_shower_begins_on_the_room_s_floor():
    plan, floor = _standing()
    for name in ("front", "right end"):
        face = _surfaces(plan)[f"bench/seat/{name}"]
        assert bounds(face.outline)[1] == pytest.approx(floor, abs=mm(0.01))
        assert face.sides[0].meets == "bath/floor"


def test_a_front_may_begin_above_the_floor_but_not_within_it():
    plan, floor = _standing(bottom="60 mm")
    front = _surfaces(plan)["bench/seat/front"]
    assert (bounds(front.outline)[1], front.sides[0].meets) == (mm(60), "own_height")
    assert not any(finding.code == "TIL-126" for finding in all_said(plan.findings))
    plan, floor = _standing(bottom="5 mm")
    assert bounds(_surfaces(plan)["bench/seat/front"].outline)[1] == pytest.approx(floor, abs=mm(0.01))
    assert _said(plan, "TIL-126").measured == "5 mm"


def test_a_bench_that_ends_below_the_floor_is_refused():
    with pytest.raises(JobError, match=r"benches\[1\].*ends below the finished floor"):
        _standing(height="10 mm")


def test_a_mirrored_room_lines_its_niche_alike():
    here, there = (_surfaces(_plan(mirrored=mirrored)) for mirrored in (False, True))
    for name, other in (
        ("back", "back"),
        ("left", "right"),
        ("right", "left"),
        ("sill", "sill"),
        ("head", "head"),
    ):
        one, two = here[f"wall/A-B/niche/{name}"], there[f"wall/A-B/niche/{other}"]
        assert len(one.tiles) == len(two.tiles)
        width = min(u for u, _ in one.outline) + max(u for u, _ in two.outline)
        turned = [affine_transform(Polygon(t.outline), (-1, 0, 0, 1, width, 0)) for t in two.tiles]
        covered = unary_union([shape.buffer(TICKS_PER_MM / 10) for shape in turned])
        assert sum(Polygon(t.outline).difference(covered).area for t in one.tiles) < TICKS_PER_MM**2


def test_a_sill_that_falls_too_little_is_to_be_mended():
    assert _said(_plan(niche={"drop": "1 mm"}), "TIL-124").severity == "fix"
    assert _said(_plan(niche={"drop": "3 mm"}), "TIL-124").severity == "note"


@pytest.mark.parametrize(
    ("how", "words"),
    [
        ({"niche": {"niche": "shelf"}}, "'shelf' is not one of this wall's openings"),
        ({"niche": {"tile": "green"}}, "'green' is not one of the job's tiles"),
        ({"niche": {"tile": "hex"}}, "hexagons go with pattern: hexagon"),
        ({"niches": [{"niche": "niche", "depth": f"{n} mm"} for n in (90, 91)]}, "stands twice"),
        ({"niche": {"drop": "300 mm"}}, r"walls\[1\]\.tiling\.niches\[1\].*leaves nothing open"),
        ({"bench": {**BENCH, "wall": "A-C"}}, "'A-C' is not a wall"),
        ({"bench": {**BENCH, "left": "700 mm"}}, "past the end of its wall"),
        ({"bench": {**BENCH, "tile": "hex"}}, "rectangular tiles"),
        ({"bench": {**BENCH, "bottom": "500 mm"}}, "less than height"),
    ],
)
def test_what_cannot_be_is_refused_in_words(how: dict[str, Any], words: str):
    with pytest.raises(JobError, match=words):
        _plan(**how)


def test_linings_stay_out_of_the_unfolded_room_and_the_bench_is_named_on_its_wall():
    plan = _plan(bench=BENCH)
    unfolded = draw_room(plan, "bath")
    assert [text.text for text in unfolded.texts if text.text.startswith("wall")] == ["wall A-B"]
    wall = next(surface for surface in plan.surfaces if surface.id == "bath/wall/A-B")
    assert "seat" in [text.text for text in draw_tiling(plan, wall).texts]

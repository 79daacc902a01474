"""A job with every detail of tile, from the command line: planned, drawn, counted and verified."""

import copy
import json
import math
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator
from shapely import Polygon, unary_union

from firstcourse.cli import run
from firstcourse.units import TICKS_PER_MM
from proving import verify_text
from said import said_of

JOB = Path(__file__).parent / "tile_details.yaml"
NICHE = "bath/wall/A-B/niche"
INCH = 25.4
MORTAR = 0.25 * 0.375 * math.sqrt(3) / 2 / 0.5 + 1 / 32
"""Under tile of 11 7/8 in: a square notch of 1/4 x 3/8 in held at 60 degrees, and butter on the back [in]."""
LININGS = [f"{NICHE}/{name}" for name in ("back", "sill", "head", "left", "right")]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("details")
    assert run(["plan", str(JOB), "--out", str(out), "--effort", "0"]) == 0
    return out


@pytest.fixture(scope="module")
def plan(folder: Path) -> dict[str, Any]:
    found: dict[str, Any] = json.loads((folder / "plan.json").read_text())
    return found


def _surface(plan: dict[str, Any], name: str) -> dict[str, Any]:
    return next(surface for surface in plan["surfaces"] if surface["id"] == name)


def test_it_verifies_from_the_command_line(folder: Path, capsys: pytest.CaptureFixture[str]):
    assert run(["verify", str(folder / "plan.json")]) == 0
    capsys.readouterr()


def test_it_matches_the_published_schema(plan: dict[str, Any], capsys: pytest.CaptureFixture[str]):
    assert run(["schema", "plan"]) == 0
    Draft202012Validator(json.loads(capsys.readouterr().out)).validate(plan)


def test_every_lining_is_a_surface_with_its_drawing(folder: Path, plan: dict[str, Any]):
    ids = [surface["id"] for surface in plan["surfaces"] if surface["tiles"]]
    assert _surface(plan, "bath/wall/A-B")["linings"] == LININGS
    assert set(LININGS) <= set(ids)
    assert {"bath/bench/bench/top", "bath/bench/bench/front", "bath/bench/bench/left end"} <= set(ids)
    assert {"bath/floor/shower/kerb 1/top", "bath/floor/shower/kerb 2/outer"} <= set(ids)
    drawn = {path.name for path in (folder / "drawings").glob("*-tile.svg")}
    assert {"bath-wall-a-b-niche-back-tile.svg", "bath-bench-bench-top-tile.svg"} <= drawn


def test_tile_and_joints_fill_every_lining(plan: dict[str, Any]):
    for name in (*LININGS, "bath/bench/bench/front", "bath/floor/shower/kerb 1/top"):
        surface = _surface(plan, name)
        (area,) = surface["tiled"]
        ground = unary_union([Polygon(part["outline"]) for part in area["area"]])
        tiles = unary_union([Polygon(tile["outline"]) for tile in surface["tiles"]])
        assert tiles.difference(ground.buffer(0.01)).area < 0.1
        bare = ground.difference(tiles.buffer(area["joint"] / 2 + 0.01, join_style="mitre"))
        assert bare.area < 1


def test_courses_of_the_wall_run_on_into_the_niche(plan: dict[str, Any]):
    wall, side = (_surface(plan, name)["tiled"][0] for name in ("bath/wall/A-B", f"{NICHE}/left"))
    step = wall["step_b"][1]
    off = (side["starts"][0]["origin"][1] - wall["starts"][0]["origin"][1]) % step
    assert min(off, step - off) < 0.01
    assert side["starts"][0]["why"] == "host_joints"


def test_the_bench_stands_before_wall_and_floor(plan: dict[str, Any]):
    for name in ("bath/wall/D-A", "bath/wall/A-B", "bath/floor/shower"):
        surface = _surface(plan, name)
        (zone,) = [zone for zone in surface["not_tiled"] if zone["why"] == "bath/bench/bench"]
        taken = Polygon(zone["outline"]).buffer(-1 / TICKS_PER_MM)
        assert not any(taken.intersects(Polygon(tile["outline"])) for tile in surface["tiles"])


def _span(surface: dict[str, Any]) -> float:
    heights = [v for _, v in surface["outline"]]
    return (max(heights) - min(heights)) / INCH


def test_a_kerb_s_faces_reach_from_the_floor_before_each_to_the_tile_of_its_top(plan: dict[str, Any]):
    fall = _surface(plan, "bath/floor/shower")["fall"]
    layers = plan["workings"]["height-build_up@bath/floor"]["result"]["value"]
    # Bed, mortar of a 1/4 in V notch and mosaic under the drain's top; mortar, board, mortar and tile under the
    # room's floor.
    assert fall["drain_height"] / INCH == pytest.approx(1.25 + 0.1083 + 0.25, abs=0.001)
    assert fall["room_floor"] / INCH == pytest.approx(layers / INCH, abs=0.001)
    # The finished top lies 4 1/2 in over the drain, at its outer edge 1/8 in higher; under it lie 3/8 + 0.194 in.
    under = 4.5 - (3 / 8 + MORTAR)
    assert _span(_surface(plan, "bath/floor/shower/kerb 1/inner")) == pytest.approx(
        under - fall["rise"] / INCH, abs=0.001
    )
    for number in (1, 2):
        outer = _surface(plan, f"bath/floor/shower/kerb {number}/outer")
        rise = (fall["drain_height"] - fall["room_floor"]) / INCH
        assert _span(outer) == pytest.approx(under + 1 / 8 + rise, abs=0.001)
        assert rise == pytest.approx(1.608 - 0.927, abs=0.001)


def test_a_bench_s_front_and_end_begin_on_the_shower_floor_as_it_falls(plan: dict[str, Any]):
    fall = _surface(plan, "bath/floor/shower")["fall"]
    drain, at_the_wall = (height / INCH for height in (fall["drain_height"], fall["drain_height"] + fall["rise"]))
    front, end = (_surface(plan, f"bath/bench/bench/{name}") for name in ("front", "left end"))
    (left, right), (back, near) = ([v / INCH for _, v in face["outline"][:2]] for face in (front, end))
    assert (right, back) == pytest.approx((at_the_wall, at_the_wall), abs=0.001)
    # The drain lies 22 in from D-A and 20 in from A-B: the plane of each rises 5/8 in on the way back from there,
    # and the higher of both is the floor. The front's left end is 14 in from A-B.
    to_both = (22 - 15 - 5 / 16 - MORTAR) / 22, (20 - 14) / 20
    assert left == pytest.approx(drain + 0.625 * max(to_both), abs=0.002)
    assert near == pytest.approx(drain + 0.625 * (22 - 15) / 22, abs=0.002)
    assert front["sides"][0]["meets"] == end["sides"][0]["meets"] == "bath/floor/shower"
    # Tiles of its lowest course are cut to the floor.
    lowest = min(front["tiles"], key=lambda tile: min(v for _, v in tile["outline"]))
    assert not lowest["whole"]
    assert len({v for _, v in lowest["outline"]}) > 2
    (said,) = [finding for finding in said_of(plan) if finding.code == "TIL-125"]
    assert (said.where, said.severity) == ("bath: bench", "note")
    assert "front and left end" in said.message


def test_tiles_of_linings_are_bought(plan: dict[str, Any]):
    for stock in ("mosaic", "wall", "floor", "bar"):
        own = [tile for surface in plan["surfaces"] for tile in surface["tiles"] if tile["stock"] == stock]
        cut = {tile["from"] for tile in own if not tile["whole"]}
        quantity = next(item for item in plan["quantities"] if item["item"] == f"tile_stock/{stock}")
        assert quantity["exact"] == sum(tile["whole"] for tile in own) + len(cut)


def test_falls_of_sill_bench_and_kerb_are_said_with_their_rule(plan: dict[str, Any]):
    said = [finding for finding in said_of(plan) if finding.code == "TIL-124"]
    assert [finding.where for finding in said] == [
        "bath: wall A-B, niche",
        "bath: bench",
        "bath: shower floor, kerb",
    ]
    assert {finding.rule for finding in said} == {"fall.shelf.min"}
    # Limits that a tape reads: no decimals of an inch.
    assert not any(finding.limit.endswith(" in") or "." in finding.limit for finding in said)


@pytest.mark.parametrize(
    ("code", "at", "told"),
    [
        ("TIL-124", "bath/wall/A-B/opening/niche", ("measured",)),
        ("TIL-124", "bath/floor/shower/kerb", ("measured",)),
        ("TIL-125", "bath/bench/bench", ("values", "low")),
        ("TIL-125", "bath/bench/bench", ("values", "high")),
    ],
)
def test_a_height_that_a_finding_tells_is_derived_again(
    plan: dict[str, Any], code: str, at: str, told: tuple[str, ...]
):
    spoilt = copy.deepcopy(plan)
    found = next(one for one in spoilt["findings"] if one["code"] == code and one["at"] == [at])
    for step in told:
        found = found[step]
    found["value"] += 0.5
    objected = {one.code for one in verify_text(json.dumps(spoilt)).objections}
    assert objected == {"VER-910" if code == "TIL-124" else "VER-769"}


def test_the_membrane_runs_over_the_bench(plan: dict[str, Any]):
    faces = {surface["id"]: surface for surface in plan["surfaces"] if surface["id"].startswith("bath/bench/")}
    assert {face["membrane"] for face in faces.values()} == {_surface(plan, "bath/wall/D-A")["membrane"]}
    for item in ("inside_corners", "sealing_band"):
        listed = plan["workings"][f"quantities-{item}@{item}"]["inputs"]["surface"]
        assert set(faces) <= {one["ref"] for one in listed}


def _without_a_lining(plan: dict[str, Any]) -> None:
    plan["surfaces"].remove(_surface(plan, f"{NICHE}/back"))


def _without_the_bench(plan: dict[str, Any]) -> None:
    plan["surfaces"] = [surface for surface in plan["surfaces"] if "/bench/" not in surface["id"]]


def _without_its_joints(name: str) -> Callable[[dict[str, Any]], None]:
    def change(plan: dict[str, Any]) -> None:
        _surface(plan, name)["soft_joints"] = []

    return change


def _with_a_tile_gone(plan: dict[str, Any]) -> None:
    _surface(plan, f"{NICHE}/left")["tiles"].pop()


def _with_more_trim(plan: dict[str, Any]) -> None:
    for side in _surface(plan, f"{NICHE}/sill")["sides"]:
        side["shown"] = True


def _tiled_behind_the_bench(plan: dict[str, Any]) -> None:
    zones = _surface(plan, "bath/wall/D-A")["not_tiled"]
    zone = next(zone for zone in zones if zone["why"] == "bath/bench/bench")
    zone["outline"] = [[u, v + 300] for u, v in zone["outline"]]


def _moved(field: str) -> Callable[[dict[str, Any]], None]:
    def change(plan: dict[str, Any]) -> None:
        _surface(plan, "bath/floor/shower")["fall"][field] += 3.175

    return change


def _with_a_taller_kerb(plan: dict[str, Any]) -> None:
    outline = _surface(plan, "bath/floor/shower/kerb 2/outer")["outline"]
    outline[:] = [[u, v + 25.4 if v > 0 else v] for u, v in outline]


def _floating(name: str) -> Callable[[dict[str, Any]], None]:
    def change(plan: dict[str, Any]) -> None:
        outline = _surface(plan, f"bath/bench/bench/{name}")["outline"]
        outline[:] = [[u, round((v + 3.175) * 640) / 640 if v < 100 else v] for u, v in outline]

    return change


def _begun_within_the_floor(plan: dict[str, Any]) -> None:
    front = _surface(plan, "bath/bench/bench/front")
    front["outline"] = [[u, 25.4 if v < 100 else v] for u, v in front["outline"]]
    front["sides"][0]["meets"] = "own_height"


def _on_a_lower_floor(plan: dict[str, Any]) -> None:
    outline = _surface(plan, "bath/floor/shower/kerb 1/inner")["outline"]
    outline[:] = [[u, v + 12.7 if v > 0 else v] for u, v in outline]


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (_moved("drain_height"), "VER-764"),
        (_moved("room_floor"), "VER-764"),
        (_with_a_taller_kerb, "VER-765"),
        (_on_a_lower_floor, "VER-765"),
        (_floating("front"), "VER-766"),
        (_floating("left end"), "VER-766"),
        (_begun_within_the_floor, "VER-766"),
        (_without_a_lining, "VER-713"),
        (_without_the_bench, "VER-713"),
        (_without_its_joints(f"{NICHE}/back"), "VER-708"),
        (_without_its_joints(f"{NICHE}/left"), "VER-708"),
        (_without_its_joints("bath/bench/bench/top"), "VER-708"),
        (_with_a_tile_gone, "VER-705"),
        (_with_more_trim, "VER-801"),
        (_tiled_behind_the_bench, "VER-701"),
    ],
)
def test_verify_objects_to_spoilt_details(
    plan: dict[str, Any], change: Callable[[dict[str, Any]], None], code: str
):
    spoilt = copy.deepcopy(plan)
    change(spoilt)
    assert code in {objection.code for objection in verify_text(json.dumps(spoilt)).objections}

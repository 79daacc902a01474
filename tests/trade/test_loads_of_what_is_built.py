"""A shower's bed of 27 psf, its kerb, benches and a filled tub were missing from the load on the joists.

A joist at 1,030 of 1,242 psi passed that has some 1,400 with what the plan itself builds on it.
"""

import json
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

import firstcourse
from firstcourse.errors import JobError
from firstcourse.job import read_job
from firstcourse.verify.load_masses import check_load_masses
from firstcourse.verify.reading import read_document
from proving import verify

BASE = """
name: bath
date: 2026-11-25
tape: inch
stock:
  - {id: floor board, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}
tiles:
  - {id: mosaic, size: [2 in, 2 in], thickness: 1/4 in, joint: 1/8 in, size_spread: 1/32 in}
  - {id: floor tile, size: [12 in, 12 in], thickness: 3/8 in, joint: 3/16 in, size_spread: 1/16 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 96 in, B-C: 66 in, C-D: 96 in, D-A: 66 in}
    diagonals: {A-C: 116 1/2 in}
    height: 96 in
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}
      joists: {span: 11 ft, size: 2x8, species: dfl, grade: no2, bearing: 3 in}
      panels: {layers: [23/32 in]}
      tiling: {tile: floor tile}
"""
SHOWER = {
    "side": "A-B", "left": "0 in", "out": "0 in", "width": "48 in", "depth": "36 in",
    "drain": {"left": "22 in", "out": "17 in"},
    "kerb": {"height": "4 1/2 in", "width": "5 in"},
    "membrane": "liner",
    "tiling": {"tile": "mosaic"},
}  # fmt: skip
TUB = {
    "id": "tub",
    "kind": "tub",
    "side": "A-B",
    "left": "0 in",
    "out": "0 in",
    "width": "60 in",
    "depth": "30 in",
}
BENCH = {"id": "bench", "wall": "C-D", "left": "0 in", "width": "36 in", "depth": "15 in", "height": "18 in",
         "tile": "floor tile"}  # fmt: skip


def job(shower=None, *, openings=(), bench=None, **changes):
    data = yaml.safe_load(BASE)
    room = data["rooms"][0]
    if shower is not None:
        room["floor"]["shower"] = shower
    if openings:
        room["floor"]["openings"] = list(openings)
    if bench is not None:
        room["benches"] = [bench]
    for name, change in changes.items():
        room["floor"][name] = {**room["floor"].get(name, {}), **change}
    return data


@cache
def _judged(text, folder):
    path = Path(folder) / "job.yaml"
    path.write_text(text, encoding="utf-8")
    return firstcourse.open(path).judge()


@pytest.fixture
def judged(tmp_path):
    return lambda data: _judged(yaml.safe_dump(data, sort_keys=False, default_flow_style=None), str(tmp_path))


def sheet(done):
    (floor,) = [one for one in done.structures if one.kind == "floor"]
    return floor


def found(done):
    """What each line comes to, by what it checks or by its key."""
    return {line.name or line.working: line.found.value for line in sheet(done).lines}


def own_psf(sheet):
    return sum(layer.mass.value for layer in sheet.layers) * 0.204816


def areas(done):
    return {area.kind: area for area in sheet(done).areas}


def test_the_bed_of_a_shower_stands_on_the_joists(judged):
    plain, wet = judged(job()), judged(job(SHOWER))
    bed = areas(wet)["shower"]
    kg = {row.of: row.kg for row in bed.rows}
    # 69.6 litres of bed and slope at 2,100 kg/m3 on 12 sq ft are 26.9 psf.
    assert kg["bed"] / 2.1 == pytest.approx(69.6, abs=0.2)
    assert kg["bed"] / bed.area_m2 * 0.2048 == pytest.approx(26.9, abs=0.1)
    assert found(wet)["frames-area_load@bath/floor+bath/floor/shower"] == pytest.approx(
        bed.psf + 5 + 0.71875 * 3.3, abs=0.06
    )
    assert found(plain)["bending"] < 1242 < found(wet)["bending"]
    assert {finding.code for finding in wet.findings} >= {"SUI-103", "SUI-113"}


def test_kerb_bench_and_tub_are_weighed_where_they_stand(judged):
    done = judged(job(SHOWER, bench=BENCH))
    kerb, bench = areas(done)["kerb"], areas(done)["bench"]
    assert kerb.area_m2 * 1550 == pytest.approx(5 * (48 + 5 + 36), rel=0.01)
    # Bed and slope at the drain, mortar, tile and kerb: some seven inches of masonry at 2,200 kg/m3.
    assert 65 < kerb.psf < 95
    assert {row.of: row.kg for row in bench.rows}["body"] == pytest.approx(
        36 * 15 * 18 * 0.0254**3 * 2200, rel=0.01
    )
    framed = areas(judged(job(SHOWER, bench=BENCH | {"body": "framed"})))["bench"]
    hung = areas(judged(job(SHOWER, bench=BENCH | {"body": "hung"})))["bench"]
    assert hung.psf == 0 < framed.psf < bench.psf / 3
    assert sum(finding.code == "SUI-114" for finding in done.findings) == 2
    tub = areas(judged(job(openings=[TUB])))["tub"]
    assert tub.psf == pytest.approx(60) and tub.assumed == "mass.tub_filled"


def test_a_tub_is_asked_for_and_its_water_counted(judged):
    light = judged(job(openings=[TUB | {"weight_lb": 350}]))
    heavy = judged(job(openings=[TUB | {"weight_lb": 900}]))
    none = judged(job(openings=[TUB | {"weight_lb": 0}]))
    by = [found(done)["bending"] for done in (none, light, heavy)]
    assert by == sorted(by) and by[0] < by[2]
    assert by[0] == found(judged(job()))["bending"]
    assert "SUI-114" not in {finding.code for finding in heavy.findings}
    # The water lasts; the code's live load alone makes the live deflection.
    assert found(none)["live_deflection_code"] == found(heavy)["live_deflection_code"]


@pytest.mark.parametrize("run", [{"continuous": True}, {"spans": ["11 ft", "9 ft"]}])
def test_a_start_belongs_to_one_span(tmp_path, run):
    path = tmp_path / "job.yaml"
    path.write_text(yaml.safe_dump(job(SHOWER, joists={"start": "0 in", **run})), encoding="utf-8")
    with pytest.raises(JobError, match="start is of joists over one span"):
        read_job(path)


@pytest.mark.parametrize("run", [{"continuous": True}, {"spans": ["11 ft", "9 ft"]}, {"sistered": "part"}])
def test_joists_of_every_kind_are_proven_with_it(tmp_path, run):
    path = tmp_path / "job.yaml"
    path.write_text(yaml.safe_dump(job(SHOWER, joists=run)), encoding="utf-8")
    floor = next(one for one in firstcourse.open(path).plan(effort=0).plan.structures if one.kind == "floor")
    assert floor.joist_loads


def test_a_weight_belongs_to_what_stands(tmp_path):
    wrong = job(openings=[{"id": "d", "kind": "drain", "left": "9 in", "out": "9 in", "diameter": "3 in",
                           "weight_lb": 9}])  # fmt: skip
    path = tmp_path / "job.yaml"
    path.write_text(yaml.safe_dump(wrong), encoding="utf-8")
    with pytest.raises(JobError, match="weight_lb"):
        read_job(path)


def test_joists_either_way_carry_it(judged):
    along = sheet(judged(job(SHOWER)))
    across = sheet(judged(job(SHOWER, framing={"parallel_to": "B-C", "spacing": "16 in", "first": "8 in"})))
    for one, length in ((along, 48), (across, 36)):
        bed = [load for load in one.joist_loads if load.of == "bath/floor/shower"]
        assert max(load.length_in for load in bed) == pytest.approx(length, abs=0.1)
    # Joists run half-way to each other and to the walls, so between them they carry it all.
    weigh = [sum(load.load_lb for load in one.joist_loads) for one in (along, across)]
    assert weigh[0] == pytest.approx(weigh[1], rel=0.01)


def test_a_load_on_the_square_foot_is_one_on_the_joist_by_its_spacing(judged):
    wide = sheet(judged(job(SHOWER)))
    close = sheet(judged(job(SHOWER, framing={"parallel_to": "A-B", "spacing": "12 in", "first": "6 in"})))
    bed, layers = (
        areas(judged(job(SHOWER)))["shower"],
        own_psf(wide),
    )
    for one, spacing in ((wide, 16), (close, 12)):
        full = [load for load in one.joist_loads if load.of == bed.of and load.width_in == pytest.approx(spacing)]
        # The bed is thinner than its mean about the drain and thicker at the walls.
        for load in full:
            assert load.load_lb / load.length_in == pytest.approx((bed.psf - layers) * spacing / 144, rel=0.12)


def test_where_the_room_lies_along_the_span_can_be_told(judged):
    anywhere = judged(job(SHOWER))
    at_end = judged(job(SHOWER, joists={"start": "0 in"}))
    beyond = judged(job(SHOWER, joists={"start": "-36 in"}))
    bending = {name: found(done)["bending"] for name, done in
               (("anywhere", anywhere), ("end", at_end), ("beyond", beyond))}  # fmt: skip
    assert bending["end"] < bending["beyond"] <= bending["anywhere"]
    assert {load.start_in for load in sheet(beyond).joist_loads if load.of == "bath/floor/shower"} == {36.0}
    assert all(load.start_in is None for load in sheet(anywhere).joist_loads)


def test_membrane_and_levelling_lie_on_all_of_the_floor(judged):
    data = job(exposure={"zone": "damp", "membrane": True})
    data["rooms"][0]["floor"]["spots"] = [
        {"left": f"{left} in", "out": f"{out} in", "height": "-1 in" if left == 48 else "0 in"}
        for left in (0, 24, 48, 72, 96) for out in (0, 33, 66)
    ]  # fmt: skip
    names = dict(sheet(judged(data)).other)
    assert names["membrane"] == pytest.approx(1.5 * 0.2048, abs=0.01)
    assert names["levelling_compound"] > 1
    more = found(judged(data))["dead_load"] - found(judged(job()))["dead_load"]
    assert more == pytest.approx(sum(names.values()), abs=0.11)


def test_a_shower_that_takes_the_whole_floor_is_all_of_its_load(judged):
    whole = SHOWER | {
        "width": "96 in",
        "depth": "66 in",
        "recess": "0 in",
        "drain": {"left": "48 in", "out": "33 in"},
    }
    del whole["kerb"]
    done = judged(job(whole))
    assert sheet(done).layers == ()
    assert found(done)["dead_load"] == pytest.approx(5 + 0.71875 * 3.3, abs=0.06)
    assert areas(done)["shower"].psf > 25
    assert "SUI-103" in {finding.code for finding in done.findings}


@cache
def planned(folder):
    path = Path(folder) / "job.yaml"
    path.write_text(yaml.safe_dump(job(SHOWER, bench=BENCH)), encoding="utf-8")
    return firstcourse.open(path).plan(effort=0).document, firstcourse.open(path).judge()


@pytest.fixture(scope="module")
def document(tmp_path_factory):
    return planned(str(tmp_path_factory.mktemp("plan")))


def test_judge_and_plan_show_the_same_load(document):
    plan, done = document
    assert json.loads(plan)["structures"] == [sheet.model_dump(mode="json") for sheet in done.structures]


@pytest.mark.parametrize(
    "change",
    [
        lambda s: s["areas"].pop(0),
        lambda s: s["areas"].pop(1),
        lambda s: s["areas"].pop(2),
        lambda s: s["areas"][0].update(psf=s["areas"][0]["psf"] - 2),
        lambda s: s["areas"][0]["rows"][0].update(kg=s["areas"][0]["rows"][0]["kg"] * 0.9),
        lambda s: s["joist_loads"].pop(0),
        lambda s: s["joist_loads"][0].update(load_lb=s["joist_loads"][0]["load_lb"] * 0.9),
        lambda s: s["joist_loads"][0].update(joist=99),
        lambda s: s["joist_loads"][0].update(length_in=s["joist_loads"][0]["length_in"] + 4),
        lambda s: s["joist_loads"][0].update(width_in=s["joist_loads"][0]["width_in"] - 1),
        lambda s: s["joist_lines"].__setitem__(0, [[0, 50], [2000, 50]]),
        lambda s: s.update(joist_loads=[], joist_lines=[]),
    ],
)
def test_the_verifier_weighs_and_shares_again(document, change):
    plan = json.loads(document[0])
    change(plan["structures"][0])
    assert {said.code for said in verify(plan).objections} & {"VER-903", "VER-917", "VER-919", "VER-923"}


def test_bodies_and_loads_over_all_of_the_floor_are_as_given(document):
    plan = read_document(json.loads(document[0]))
    (frame,) = plan.frames
    bench = next(area for area in frame.loads.areas if area.kind == "bench")
    kerb = next(area for area in frame.loads.areas if area.kind == "kerb")
    assert not [*check_load_masses(plan)]
    body = next(row for row in (*bench.rows, *kerb.rows) if row.density)
    lighter = replace(body, density=(body.density or 0.0) / 2, kg=body.kg / 2)
    spoilt = [replace(frame.loads, other=(*frame.loads.other, ("planks", 2.0)))]
    spoilt += [
        replace(frame.loads, areas=tuple(other if one is area else one for one in frame.loads.areas))
        for area in (bench, kerb)
        for other in (
            replace(area, assumed="" if area.assumed else "mass.kerb"),
            replace(area, rows=tuple(lighter if row is body else row for row in area.rows)),
        )
        if other != area
    ]
    for loads in spoilt:
        assert [*check_load_masses(replace(plan, frames=(replace(frame, loads=loads),)))]


@settings(deadline=None, max_examples=12)
@given(
    st.sampled_from(("A-B", "B-C")), st.sampled_from((12, 16, 24)), st.integers(30, 60), st.integers(30, 45),
    st.sampled_from(("liner", "sheet")), st.booleans(),
)  # fmt: skip
def test_no_less_is_judged_than_stands_there(tmp_path_factory, side, spacing, width, depth, membrane, tub):
    """All that is built, less the layers in whose place it lies, is on the joists."""
    shower = SHOWER | {"width": f"{width} in", "depth": f"{depth} in", "membrane": membrane,
                       "drain": {"left": f"{width // 2} in", "out": f"{depth // 2} in"}}  # fmt: skip
    standing = TUB | {"side": "C-D", "width": "30 in", "depth": "12 in"}
    data = job(
        shower,
        openings=[standing] if tub else [],
        framing={"parallel_to": side, "spacing": f"{spacing} in", "first": f"{spacing / 2:g} in"},
    )
    path = tmp_path_factory.mktemp("job") / "job.yaml"
    path.write_text(yaml.safe_dump(data), encoding="utf-8")
    done = sheet(firstcourse.open(path).judge())
    layers = own_psf(done)
    assert sum(one.kind in ("shower", "kerb", "tub") for one in done.areas) >= 2 + tub
    carried = sum(load.load_lb for load in done.joist_loads)
    stands = sum((area.psf - layers) * area.area_m2 * 10.7639 for area in done.areas)
    # The last strip may end half a spacing before a wall, which carries the rest.
    walls = 0.0 if {"A-B": 66, "B-C": 96}[side] % spacing == 0 else 0.2 * stands
    assert carried + walls >= 0.99 * stands


def test_the_longest_span_bears_it_too(judged):
    plain, wet = judged(job()), judged(job(SHOWER))
    longest, other = (found(done)["frames-longest_span@bath/floor"] / 25.4 for done in (wet, plain))
    assert longest < 132 < other
    # At that span bending comes to what the wood bears, by the sums of the sheet itself.
    at = judged(job(SHOWER, joists={"span": f"{round(longest * 16) / 16} in"}))
    assert found(at)["bending"] == pytest.approx(1242, rel=0.005)

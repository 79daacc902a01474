"""Falls are worked out again from plan.json: what is right passes, and every field that is spoilt is named."""

import copy
import json
from pathlib import Path
from typing import Any

import pytest
import yaml

from changed import changes
from firstcourse.findings import Finding, Severity
from firstcourse.job import Job, job_values, read_job_text
from firstcourse.layers import tile_layers, tiling_tile
from firstcourse.plan import Given, JobStamp, Plan, sealed
from firstcourse.rules import RuleSet, load_rules
from firstcourse.showers.shower_floor import plan_fall
from firstcourse.steps.rule_notes import rule_notes
from firstcourse.steps.waterproofing import waterproof
from firstcourse.survey import survey_job
from firstcourse.values import Word
from firstcourse.verify.formulas import FORMULAS
from firstcourse.verify.reading import read_document
from firstcourse.workings import by_id
from proving import verify

EXAMPLE = Path(__file__).parents[3] / "examples" / "tiled-shower" / "job.yaml"
L_POINTS = [["0 in", "0 in"], ["60 in", "0 in"], ["60 in", "36 in"], ["36 in", "36 in"], ["36 in", "60 in"],
            ["0 in", "60 in"]]  # fmt: skip
L_SHAPE = {"points": L_POINTS, "left": None, "out": None, "width": None, "depth": None}


_FLOOR = "bath/floor/shower"


def _left_open(code: str, at: tuple[str, ...], remedies: tuple[str, ...], *wanted: str) -> Finding:
    values = {"wanted": tuple(Word(word=one) for one in wanted)}
    return Finding(code=code, severity=Severity.NOTE, at=at, remedies=remedies, values=values)


_LEFT_OPEN = (
    _left_open("SUI-130", (_FLOOR,), ("enter",), "slab_heights", "slab_moisture"),
    _left_open("SUI-910", ("bath", _FLOOR), ("enter",), "wants_exposure"),
    _left_open("SUI-910", ("bath", _FLOOR), (), "made_by_bed"),
)
"""What a job that gives a room nothing but a shower leaves unjudged."""


def _given(job: Job, rules: RuleSet) -> Given:
    """The job with nothing of its room but the shower."""
    values = job_values(job)
    room = {"name": "bath", "floor": {"shower": values["rooms"][0]["floor"]["shower"]}}
    kept = {name: values[name] for name in ("name", "date", "practice", "tape", "tiles") if name in values}
    return sealed({**kept, "rooms": [room]}, rule_notes(rules))


def shower_plan(**change: Any) -> dict[str, Any]:
    """A plan that holds one shower floor alone, as plan.json gives it."""
    asked = yaml.safe_load(EXAMPLE.read_text(encoding="utf-8"))
    shower = asked["rooms"][0]["floor"]["shower"]
    shower.update(change)
    asked["rooms"][0]["floor"]["shower"] = {key: value for key, value in shower.items() if value is not None}
    asked["date"] = str(asked["date"])
    job = read_job_text(yaml.safe_dump(asked))
    rules = load_rules(job.date, job.practice)
    survey = survey_job(job, rules)
    (surveyed,) = survey.showers
    result = plan_fall(surveyed, job.tiles, rules, job.tape)
    kind = "" if result.fall is None else result.fall.membrane
    tiling = surveyed.shower.tiling
    layers = () if tiling is None else tile_layers(tiling_tile(job, tiling), rules)
    floor = surveyed.surface.model_copy(update={"fall": result.fall, "membrane": kind, "layers": layers})
    water = waterproof(job, survey, (), (floor,), rules)
    plan = Plan(
        job=JobStamp(name=job.name, digest="0", date=job.date.isoformat(), practice=job.practice, tape=job.tape),
        surfaces=(floor,),
        findings=(*result.findings, *water.findings, *_LEFT_OPEN),
        quantities=water.quantities,
        workings=by_id((*result.workings, *water.workings)),
        given=_given(job, rules),
    )
    found: dict[str, Any] = json.loads(plan.model_dump_json(by_alias=True))
    return found


def codes(plan: dict[str, Any]) -> set[str]:
    return {objection.code for objection in verify(plan).objections}


@pytest.mark.parametrize(
    "change",
    [
        {},
        {"falls": "square"},
        {"membrane": "sheet"},
        {"falls": "single", "drain": {"along": "A-B"}},
        {"drain": {"ends": [["12 in", "18 in"], ["36 in", "18 in"]]}},
        {"drain": {"ends": [["12 in", "14 in"], ["34 in", "20 in"]]}},
        {"falls": "single", "drain": {"ends": [["4 in", "0 in"], ["44 in", "0 in"]]}},
        {"drain": {"left": "8 in", "out": "18 in"}},
        {"kerb": None, "recess": "1 in"},
        {"kerb": {"height": "1/2 in", "width": "5 in"}},
        {**L_SHAPE, "drain": {"left": "18 in", "out": "18 in"}},
        {**L_SHAPE, "drain": {"left": "50 in", "out": "30 in"}},
    ],
)  # fmt: skip
def test_what_was_planned_is_proven(change):
    assert verify(shower_plan(**change)).objections == ()


@pytest.mark.parametrize(
    ("change", "finding", "told"),
    [
        ({"drain": {"left": "8 in", "out": "18 in"}}, "FAL-103", ("measured", "limit", "needed", "allowed")),
        ({"width": "60 in", "depth": "32 in", "drain": {"left": "30 in", "out": "16 in"}}, "FAL-104",
         ("measured", "limit")),
        ({"kerb": {"height": "1/2 in", "width": "5 in"}}, "FAL-201", ("measured", "limit")),
        ({"kerb": {"height": "1/2 in", "width": "5 in"}}, "FAL-202", ("measured", "rise")),
        ({"kerb": None, "recess": "1 in"}, "FAL-203", ("measured", "limit", "deeper")),
        ({"kerb": None, "recess": "4 in", "falls": "single", "drain": {"along": "A-B"}}, "FAL-204",
         ("low", "high")),
    ],
)  # fmt: skip
def test_a_number_that_a_finding_tells_is_derived_again(
    change: dict[str, Any], finding: str, told: tuple[str, ...]
) -> None:
    plan = shower_plan(**change)
    assert codes(plan) == set()
    for name in told:
        spoilt = copy.deepcopy(plan)
        said = next(one for one in spoilt["findings"] if one["code"] == finding)
        (said[name] if name in said else said["values"][name])["value"] += 0.5
        assert codes(spoilt) in ({"VER-769"}, {"VER-920"}), name


def fall_of(plan: dict[str, Any]) -> dict[str, Any]:
    found: dict[str, Any] = plan["surfaces"][0]["fall"]
    return found


def put(path: str, value: Any) -> Any:
    """A change that sets the field at a dotted path of the fall."""

    def change(plan: dict[str, Any]) -> None:
        *way, last = path.split(".")
        at: Any = fall_of(plan)
        for step in way:
            at = at[int(step)] if step.isdecimal() else at[step]
        at[int(last) if last.isdecimal() else last] = value

    return change


def drop(key: str, index: int = 0) -> Any:
    return lambda plan: fall_of(plan)[key].pop(index)


@pytest.fixture(scope="module")
def good() -> dict[str, Any]:
    return shower_plan()


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (lambda plan: plan["surfaces"][0].update(fall=None), "VER-751"),
        (drop("planes"), "VER-751"),
        (put("planes.0.heights.0", 30.0), "VER-752"),
        (put("planes.0.gradient.0", 0.5), "VER-752"),
        (put("drain.0", [300.0, 1200.0]), "VER-754"),
        (put("drain.0", [3000.0, 1200.0]), "VER-754"),
        (drop("valleys"), "VER-755"),
        (put("valleys.0.1", [10.0, 700.0]), "VER-755"),
        (put("levels.0.height", 25.0), "VER-756"),
        (drop("levels"), "VER-756"),
        (put("valley_levels.0.height", 1.0), "VER-756"),
        (put("valley_levels.1.height", 2.0), "VER-756"),
        (put("valley_levels.1.at", [700.0, 100.0]), "VER-756"),
        (drop("valley_levels"), "VER-756"),
        (drop("valley_levels", 1), "VER-756"),
        (put("levels.0.sides", [0, 1]), "VER-756"),
        (put("levels.0.kind", "side"), "VER-756"),
        (put("levels.0.along", 10.0), "VER-756"),
        (put("valley_levels.0.kind", "valley_end"), "VER-756"),
        (put("valley_levels.1.between", [5, 3]), "VER-756"),
        (put("valley_levels.1.between", [5, 30]), "VER-756"),
        (put("valley_levels.1.along", 300.0), "VER-756"),
        (put("valley_levels.1.sides", [0]), "VER-756"),
        (put("valley_levels.1.kind", "hole"), "VER-001"),
        (put("valley_levels.1.between", ["5", 3]), "VER-001"),
        (put("rise", 25.0), "VER-757"),
        (put("least_fall", 0.03), "VER-757"),
        (put("least_plane_fall", 0.03), "VER-757"),
        (put("greatest_fall", 0.03), "VER-757"),
        (put("bed_litres", 30.0), "VER-758"),
        (put("pre_slope_litres", 30.0), "VER-758"),
        (put("pre_slope", 0.0), "VER-758"),
        (put("bed", 50.0), "VER-758"),
        (put("kerb", 25.4), "VER-920"),
        (put("kerb", 254.0), "VER-770"),
        (put("recess", 100.0), "VER-760"),
        (put("kerb", None), "VER-760"),
        (put("flood_test.litres", 50.0), "VER-761"),
        (put("flood_test.hours", 1.0), "VER-761"),
        (put("flood_test.dam", True), "VER-761"),
        (put("largest_tile", None), "VER-762"),
        (put("planes.1.ring.0.0", 0.78125), "VER-753"),
        (put("planes.1.heights.0", 17.4640625), "VER-753"),
        (put("valleys.0.1.0", 0.78125), "VER-753"),
        (put("drain.0.0", 560.5171875), "VER-753"),
        (put("levels.1.height", 17.4640625), "VER-753"),
        (put("layout", "square"), "VER-770"),
        (put("membrane", "sheet"), "VER-770"),
        (put("kerb", 115.0), "VER-770"),
        (put("kerb_width", 120.0), "VER-770"),
        (put("bed", 38.0), "VER-770"),
        (put("pre_slope", 12.0), "VER-770"),
        (put("tile_step", 0.5), "VER-770"),
        (put("drain", [[560.515625, 1247.3828125], [570.0, 1247.3828125]]), "VER-770"),
        (lambda plan: plan["surfaces"][0].update(membrane="sheet"), "VER-770"),
        (lambda plan: plan["surfaces"].clear(), "VER-770"),
        (put("flood_test.hours", 25.0), "VER-761"),
        (put("membrane_below", 47.3), "VER-761"),
        (put("drain", []), "VER-001"),
        (put("layout", "cone"), "VER-001"),
        (put("planes.0.heights", [0.0]), "VER-001"),
        (put("planes.0.gradient", [0.0]), "VER-001"),
    ],
)  # fmt: skip
def test_every_field_that_is_spoilt_is_named(good, change, code):
    plan = copy.deepcopy(good)
    change(plan)
    assert code in codes(plan)


def test_a_step_between_planes_is_found(good):
    plan = copy.deepcopy(good)
    plane = fall_of(plan)["planes"][0]
    plane["heights"] = [height + 1.0 for height in plane["heights"]]
    assert "VER-753" in codes(plan)


def test_a_floor_that_rises_more_than_it_needs_is_found(good):
    plan = copy.deepcopy(good)
    fall = fall_of(plan)
    # All falls grow in step with the rise: two marks more keep both limits, and are not what is asked.
    share = 1 + 2 * 25.4 / 16 / fall["rise"]
    for plane in fall["planes"]:
        plane["heights"] = [round(height * share * 640) / 640 for height in plane["heights"]]
        plane["gradient"] = [slope * share for slope in plane["gradient"]]
    fall["rise"] = round(fall["rise"] * share * 640) / 640
    for name in ("least_fall", "least_plane_fall", "greatest_fall"):
        fall[name] *= share
    said = [one.message for one in verify(plan).objections if one.code == "VER-772"]
    assert said == ["rises to another height than its limits and the tape ask"]


def test_a_rule_that_is_broken_needs_its_finding():
    for change, code in (
        ({"drain": {"left": "8 in", "out": "18 in"}}, "VER-759"),
        ({"falls": "single", "drain": {"ends": [["4 in", "0 in"], ["44 in", "0 in"]]}}, "VER-754"),
        ({"kerb": {"height": "1/2 in", "width": "5 in"}}, "VER-920"),
    ):
        plan = shower_plan(**change)
        plan["findings"] = [one for one in plan["findings"] if one["code"].startswith("SUI-")]
        assert code in codes(plan)


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"drain": {"left": "8 in", "out": "18 in"}}, "FAL-103"),
        ({"width": "60 in", "depth": "32 in", "drain": {"left": "30 in", "out": "16 in"}}, "FAL-104"),
        ({"falls": "single", "drain": {"ends": [["4 in", "0 in"], ["44 in", "0 in"]]}}, "FAL-102"),
        ({**L_SHAPE, "drain": {"left": "50 in", "out": "30 in"}}, "FAL-101"),
    ],
)
def test_what_is_told_of_falls_is_told_whole(change: dict[str, Any], code: str) -> None:
    plan = shower_plan(**change)
    (said,) = [one for one in plan["findings"] if one["code"] == code]
    spoilt = [
        said | {"severity": "fix"},
        said | {"rule": "wall.plumb.max"},
        said | {"at": [*said["at"], "bath/floor"]},
        said | {"remedies": [*said["remedies"], "square"]},
        said | {"remedies": said["remedies"][:-1]},
        said | {"values": said["values"] | {"more": True}},
        *(said | {"values": {k: v for k, v in said["values"].items() if k != name}} for name in said["values"]),
        *(said | {"values": said["values"] | {name: {"ref": "no"}}} for name in said["values"]),
    ]
    assert codes(plan) == set()
    for other in spoilt:
        held = {**plan, "findings": [other if one is said else one for one in plan["findings"]]}
        assert codes(held), other


@pytest.mark.parametrize(
    ("change", "asked"),
    [
        ({"kerb": {"height": "4 1/2 in", "width": "5 in", "entry": "20 in"}}, "FAL-213"),
        ({"kerb": None, "recess": "1 in"}, "FAL-203"),
        ({"shelves": [{"id": "ledge", "depth": "6 in", "drop": "0 in"}]}, "FAL-221"),
        ({"tiling": {"tile": "floor tile 12x12"}}, "FAL-301"),
        ({}, "WAT-102"),
    ],
)
def test_just_the_findings_that_a_shower_asks_for_are_there(change: dict[str, Any], asked: str) -> None:
    plan = shower_plan(**change)
    assert codes(plan) == set()
    (found,) = [one for one in plan["findings"] if one["code"] == asked][:1]
    without = {**plan, "findings": [one for one in plan["findings"] if one is not found]}
    assert {"VER-910", "VER-920"} & codes(without)
    assert {"VER-910", "VER-920"} & codes({**plan, "findings": [*plan["findings"], found]})


def test_a_tile_too_large_for_the_folds_is_found(good):
    plan = copy.deepcopy(good)
    plan["tile_stock"] = [
        {"id": "big", "size": [300.0, 300.0], "thickness": 9.0, "kind": "ceramic", "joint": 3.0, "sheet": None}
    ]
    u, v = fall_of(plan)["drain"][0]
    ring = [[u - 100, v - 100], [u + 200, v - 100], [u + 200, v + 200], [u - 100, v + 200]]
    plan["surfaces"][0]["tiles"] = [{"id": "t", "outline": ring, "whole": True, "stock": "big"}]
    assert "VER-762" in codes(plan)


@pytest.mark.parametrize(
    "change", [{}, {"kerb": None, "recess": "6 in"}, {"membrane": "sheet", "falls": "square"}]
)
def test_any_value_of_a_working_that_is_changed_is_noticed(change):
    plan = read_document(shower_plan(**change))
    assert {one.formula.partition("-")[0] for one in plan.workings.values()} == {"showers", "water", "quantities"}
    for working in plan.workings.values():
        assert list(FORMULAS[working.formula](plan, working)) == []
        for what, changed in changes(working):
            assert list(FORMULAS[working.formula](plan, changed)), (working.key, what)


def test_a_working_that_is_left_out_is_asked_for(good):
    for key, working in good["workings"].items():
        if working["at"]:
            spoilt = {**good, "workings": {name: one for name, one in good["workings"].items() if name != key}}
            assert ("VER-907", key) in {(one.code, one.where) for one in verify(spoilt).objections}

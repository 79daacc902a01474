"""Every floor of 23/32 in panels on joists at 16 in was stopped at L/347 of 360, which its own span rating allows.

A panel is taken by its rating, the least of its thickness unless entered; deflection beside a rating that spans
the joists is a note that says what a second layer gains.
"""

import datetime
import json
from dataclasses import replace

import pytest

from firstcourse.findings import Severity
from firstcourse.frames import judge, remedy_workings, structure_sheet
from firstcourse.frames.floors import FloorInput, check_floor
from firstcourse.frames.judge import JudgeInput
from firstcourse.frames.panels import Panel
from firstcourse.layers import Layer
from firstcourse.plan import JobStamp, Plan, Side, SideKind, Surface, SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.workings import by_id
from proving import verify
from said import all_said, worked
from sealing import bare

DATE = datetime.date(2026, 11, 25)
RULES = load_rules(DATE)


def floor(*layers, spacing=16.0, ratings=()):
    return FloorInput(
        ref="bath/floor",
        span_in=120, spacing_in=spacing, size="2x10", species="dfl", grade="no2", bearing_in=3,
        panel=Panel(layers=layers, ratings=ratings),
        layers=(Layer(name="tile", thickness_in=0.375, density_kg_m3=2350),),
    )  # fmt: skip


def checks(one):
    return {check.name: check for check in check_floor(RULES, one)}


def test_one_layer_of_23_32_at_16_in_is_not_stopped_and_says_what_a_second_gains():
    done = judge(JudgeInput(floors=(floor("23/32"),)), RULES)
    assert not done.stops
    (note,) = [finding for finding in all_said(done.findings) if finding.code == "SUI-201"]
    assert note.severity is Severity.NOTE
    gained = checks(floor("23/32", "19/32"))["panel_point"]
    assert f"L/{int(gained.found)}" in note.remedy and note.measured == "L/260"


@pytest.mark.parametrize(
    ("entered", "rating", "stiffness"),
    [((), "24 oc", 300_000), (("24 oc",), "24 oc", 300_000), (("48/24",), "48/24", 400_000)],
)
def test_23_32_is_24_oc_unless_entered_otherwise(entered, rating, stiffness):
    working = checks(floor("23/32", ratings=entered))["panel_point"].working("bath/floor")
    shown = worked(working)
    assert f"({rating})" in shown.values["layers"]
    assert f"EI = {stiffness:,} " in shown.steps[0]


@pytest.mark.parametrize(("layer", "spacing"), [("19/32", 24.0), ("15/32", 19.2), ("23/32", 32.0)])
def test_joists_farther_apart_than_the_rating_are_stopped(layer, spacing):
    found = checks(floor(layer, spacing=spacing))
    assert not found["panel_rating"].holds
    assert not found["panel_point"].stands
    codes = {
        said.code for said in all_said(judge(JudgeInput(floors=(floor(layer, spacing=spacing),)), RULES).findings)
    }
    assert {"SUI-201", "SUI-205"} <= codes


def test_a_load_beyond_what_ratings_stand_for_makes_a_limit_of_advice():
    bed = Layer(name="mortar bed", thickness_in=6, density_kg_m3=2100)
    loaded = replace(floor("23/32"), layers=(bed,))
    assert not checks(loaded)["panel_uniform"].advised
    assert checks(floor("23/32"))["panel_uniform"].advised


def plan(one):
    done = judge(JudgeInput(floors=(one,)), RULES)
    ranked = [working for each in done.remedies for working in remedy_workings(*each)]
    surface = Surface(
        id="bath/floor", room="bath", kind=SurfaceKind.FLOOR, boarded=False,
        outline=((0, 0), (640_000, 0), (640_000, 640_000), (0, 640_000)),
        sides=tuple(Side(kind=SideKind.FREE) for _ in range(4)),
    )  # fmt: skip
    made = Plan(
        job=JobStamp(name="bath", digest="0", date=DATE.isoformat()),
        given=bare("bath", DATE.isoformat()),
        surfaces=(surface,),
        structures=tuple(structure_sheet(member, ranked) for member in done.members),
        workings=by_id((*done.workings, *ranked)),
        findings=done.findings,
    )
    return json.loads(made.model_dump_json(by_alias=True))


def objections(made):
    return {said.code for said in verify(made).objections} - {"VER-004", "VER-106", "VER-904"}  # it has no job


def test_the_verifier_judges_the_panel_again():
    good = plan(floor("23/32"))
    assert objections(good) == set()
    stiffer = json.loads(json.dumps(good).replace("24 oc", "48/24"))
    assert "VER-903" in objections(stiffer)
    wide = plan(floor("23/32", spacing=32.0))
    for line in wide["structures"][0]["lines"]:
        line["advised"] = line["advised"] or line["name"] == "panel_point"
    assert "VER-918" in objections(wide)

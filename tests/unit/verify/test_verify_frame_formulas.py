"""Frames judged by the planner are proven by formulas of the verifier's own, whatever their spans and loads."""

import datetime
import json
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.plan import JobStamp, Plan, Side, SideKind, Surface, SurfaceKind
from firstcourse.planning.structure import keyed_workings, structure_sheets
from firstcourse.rules import load_rules
from firstcourse.suitability import (
    Above,
    CeilingInput,
    FloorInput,
    JudgeInput,
    Layer,
    Panel,
    PointLoad,
    SteelStud,
    Studs,
    WallInput,
    judge,
    lumber,
)
from firstcourse.suitability.joists import SisterPart
from firstcourse.suitability.loads import AreaKind, AreaLoad, JoistLoads, LoadRow, PartLoad
from firstcourse.verify import verify
from sealing import bare

DATE = datetime.date(2026, 11, 25)
RULES = load_rules(DATE)
FLOOR = FloorInput(
    ref="bath/floor",
    where="floor",
    span_in=150,
    spacing_in=16,
    size="2x8",
    species="hf",
    grade="no2",
    panel=Panel(layers=("23/32", "19/32")),
    layers=(Layer(name="tile", thickness_in=0.375, density_kg_m3=2350),),
    bearing_in=3,
)
LAYER = st.builds(
    Layer,
    name=st.just("tile"),
    thickness_in=st.floats(0.05, 1.2),
    density_kg_m3=st.sampled_from([520.0, 1300.0, 1600.5, 2350.0]),
)
TUB = AreaLoad(
    of="bath/floor/tub",
    name="tub",
    kind=AreaKind.TUB,
    outline=((0, 0), (640_000, 0), (640_000, 320_000), (0, 320_000)),
    area_m2=0.5,
    rows=(LoadRow(of="filled tub", kg=150.0),),
)
PART = PartLoad(of=TUB.of, name="tub", load_lb=180.0, length_in=30.0, width_in=16.0)
LOADED = (
    (
        JoistLoads(joist=1, parts=(PART,)),
        JoistLoads(joist=2, parts=(replace(PART, load_lb=90.0, length_in=55.0),)),
    ),
    (JoistLoads(joist=1, parts=(replace(PART, start_in=12.0), replace(PART, start_in=24.0, load_lb=70.0))),),
)
FLOORS = st.builds(
    FloorInput,
    ref=st.just("bath/floor"),
    where=st.just("floor"),
    span_in=st.floats(60, 240),
    spacing_in=st.sampled_from([12.0, 16.0, 19.2, 400 / 25.4, 24.0]),
    size=st.sampled_from(["2x6", "2x8", "2x10", "2x12"]),
    species=st.sampled_from(["hf", "spf", "dfl", "sp", "unknown"]),
    grade=st.sampled_from(["no2", "unknown"]),
    plies=st.integers(1, 2),
    bearing_in=st.sampled_from([None, 1.5, 3.0, 3.5]),
    panel=st.just(FLOOR.panel),
    layers=st.lists(LAYER, min_size=1, max_size=4).map(tuple),
    points=st.sampled_from([(), (PointLoad(load_lb=250, at_in=40),)]),
    sister=st.sampled_from([None, None, SisterPart(share=0.7)]),
    continuous=st.booleans(),
    joists=st.sampled_from([(), *LOADED]),
)


def plan_of(asked: JudgeInput) -> dict[str, Any]:
    """A plan of one bare surface on which everything asked is judged."""
    judged = judge(asked, RULES)
    surface = Surface(
        id="bath/floor",
        room="bath",
        kind=SurfaceKind.FLOOR,
        outline=((0, 0), (640_000, 0), (640_000, 640_000), (0, 640_000)),
        sides=tuple(Side(kind=SideKind.FREE) for _ in range(4)),
        boarded=False,
    )
    plan = Plan(
        job=JobStamp(name="bath", digest="0", date=DATE.isoformat()),
        given=bare("bath", DATE.isoformat()),
        surfaces=(surface,),
        structures=structure_sheets(surface, judged.members, ""),
        workings=keyed_workings(surface.id, judged.members),
        findings=judged.findings,
    )
    found: dict[str, Any] = json.loads(plan.model_dump_json(by_alias=True))
    return found


def objections(plan: dict[str, Any]) -> list[tuple[str, str]]:
    """What is said of the plan, but that its bare surface bears no boards and that it lists no rules."""
    return [(o.code, o.message) for o in verify(plan).objections if o.code not in ("VER-106", "VER-904")]


@given(FLOORS)
@settings(max_examples=40, deadline=None)
def test_floors_are_proven(floor):
    if floor.joists:
        lines = (((0, 160_000), (640_000, 160_000)), ((0, 480_000), (640_000, 480_000)))
        floor = replace(floor, areas=(TUB,), joist_lines=lines)
    # Where a load lies on the plan is another proof.
    assert [said for said in objections(plan_of(JudgeInput(floors=(floor,)))) if said[0] != "VER-919"] == []


@given(
    st.floats(60, 200), st.sampled_from([12.0, 16.0, 24.0]), st.sampled_from(["2x4", "2x6", "2x8"]),
    st.sampled_from(list(Above)), st.lists(LAYER, min_size=1, max_size=4),
)  # fmt: skip
@settings(max_examples=25, deadline=None)
def test_ceilings_are_proven(span, spacing, size, above, layers):
    ceiling = CeilingInput(
        ref="bath/floor",
        where="ceiling",
        span_in=span,
        spacing_in=spacing,
        size=size,
        above=above,
        layers=tuple(layers),
    )
    assert objections(plan_of(JudgeInput(ceilings=(ceiling,)))) == []


@given(st.floats(60, 150), st.sampled_from([12.0, 16.0, 400 / 25.4]), st.sampled_from(["2x4", "2x6", "", "mils"]))
@settings(max_examples=25, deadline=None)
def test_walls_are_proven(height, spacing, size):
    wood = lumber(RULES, size, "spf", "no2") if size.startswith("2x") else None
    steel = SteelStud(depth_in=3.625, mils=43 if size else None) if wood is None else None
    studs = Studs(height_in=height, spacing_in=spacing, wood=wood, steel=steel)
    assert objections(plan_of(JudgeInput(walls=(WallInput(ref="bath/floor", where="wall", studs=studs),)))) == []


def line(name: str, key: str, value: Any) -> Any:
    def change(plan: dict[str, Any]) -> None:
        next(row for row in plan["structures"][0]["lines"] if row["name"] == name)[key] = value

    return change


def fact(name: str, value: str) -> Any:
    def change(plan: dict[str, Any]) -> None:
        next(row for row in plan["structures"][0]["facts"] if row[0] == name)[1] = value

    return change


def step(number: int, old: str, new: str) -> Any:
    def change(plan: dict[str, Any]) -> None:
        working = plan["workings"][f"suitability.bath/floor.{number}"]
        assert any(old in text for text in working["steps"])
        working["steps"] = [text.replace(old, new) for text in working["steps"]]

    return change


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (line("bending", "found", "1,056 psi"), "VER-915"),
        (line("bending", "limit", "at most 1,573 psi"), "VER-916"),
        (line("shear", "limit", "at most 250 psi"), "VER-916"),
        (line("bearing", "limit", "at most 805 psi"), "VER-916"),
        (line("live deflection (code)", "found", "L/417"), "VER-915"),
        (fact("clear span, face to face", "140 in (11 ft 8 in, 3,556 mm)"), "VER-916"),
        (fact("joists, centre to centre", "12 in (305 mm)"), "VER-916"),
        (fact("joists", "2x8, 1.5 × 7.75 in, 1 side by side"), "VER-916"),
        (fact("live load", "30 psf"), "VER-916"),
        (fact("dead load", "12.0 psf, layers below"), "VER-916"),
        (step(1, "4.58", "3.58"), "VER-901"),
        (step(4, "0.125 × ", "0.115 × "), "VER-901"),
        (step(8, "0.4", "0.3"), "VER-901"),
    ],
)
def test_a_frame_that_says_otherwise_is_objected_to(change, code):
    plan = plan_of(JudgeInput(floors=(FLOOR,)))
    assert objections(plan) == []
    change(plan)
    assert code in {found for found, _ in objections(plan)}


def test_loads_that_the_formulas_do_not_know_are_left_to_their_sums():
    loaded = replace(FLOOR, points=(PointLoad(load_lb=250, at_in=60),))
    assert objections(plan_of(JudgeInput(floors=(loaded,)))) == []

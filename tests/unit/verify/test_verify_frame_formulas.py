"""Frames judged by the planner are proven by formulas of the verifier's own, whatever their spans and loads."""

import datetime
import json
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st

from firstcourse.frames import judge, remedy_workings, structure_sheet
from firstcourse.frames.ceilings import Above, CeilingInput
from firstcourse.frames.floors import FloorInput
from firstcourse.frames.joists import PointLoad, SisterPart
from firstcourse.frames.judge import JudgeInput, WallInput
from firstcourse.frames.loads import AreaKind, AreaLoad, JoistLoads, LoadRow, PartLoad
from firstcourse.frames.lumber import lumber
from firstcourse.frames.notches import Cut
from firstcourse.frames.panels import Panel
from firstcourse.frames.walls import SteelStud, Studs
from firstcourse.layers import Layer
from firstcourse.plan import JobStamp, Plan, Side, SideKind, Surface, SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.verify.fields import FieldError
from firstcourse.verify.formulas import check_formulas
from firstcourse.verify.frames import check_frames
from firstcourse.verify.reading import read_document
from firstcourse.workings import by_id
from proving import verify
from sealing import bare

DATE = datetime.date(2026, 11, 25)
RULES = load_rules(DATE)
FLOOR = FloorInput(
    ref="bath/floor",
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
    kind=AreaKind.TUB,
    outline=((0, 0), (640_000, 0), (640_000, 320_000), (0, 320_000)),
    area_m2=0.5,
    rows=(LoadRow(of="filled_tub", kg=150.0),),
)
PART = PartLoad(of=TUB.of, load_lb=180.0, length_in=30.0, width_in=16.0)
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
    ranked = [working for each in judged.remedies for working in remedy_workings(*each)]
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
        structures=tuple(structure_sheet(member, ranked) for member in judged.members),
        workings=by_id((*judged.workings, *ranked)),
        findings=judged.findings,
    )
    found: dict[str, Any] = json.loads(plan.model_dump_json(by_alias=True))
    return found


def objections(plan: dict[str, Any]) -> list[tuple[str, str]]:
    """What is said of the plan, but that its bare surface bears no boards and that no job gives its frame."""
    return [
        (o.code, o.message) for o in verify(plan).objections if o.code not in ("VER-004", "VER-106", "VER-904")
    ]


@given(FLOORS)
@settings(max_examples=25, deadline=None, phases=(Phase.generate,))
def test_floors_are_proven(floor):
    if floor.joists:
        lines = (((0, 160_000), (640_000, 160_000)), ((0, 480_000), (640_000, 480_000)))
        floor = replace(floor, areas=(TUB,), joist_lines=lines)
    # Where a load lies on the plan is another proof.
    assert [
        said for said in objections(plan_of(JudgeInput(floors=(floor,)))) if said[0] not in ("VER-919", "VER-923")
    ] == []


@given(
    st.floats(60, 200), st.sampled_from([12.0, 16.0, 24.0]), st.sampled_from(["2x4", "2x6", "2x8"]),
    st.sampled_from(list(Above)), st.lists(LAYER, min_size=1, max_size=4),
)  # fmt: skip
@settings(max_examples=15, deadline=None, phases=(Phase.generate,))
def test_ceilings_are_proven(span, spacing, size, above, layers):
    ceiling = CeilingInput(
        ref="bath/floor",
        span_in=span,
        spacing_in=spacing,
        size=size,
        above=above,
        layers=tuple(layers),
    )
    assert objections(plan_of(JudgeInput(ceilings=(ceiling,)))) == []


@given(st.floats(60, 150), st.sampled_from([12.0, 16.0, 400 / 25.4]), st.sampled_from(["2x4", "2x6", "", "mils"]))
@settings(max_examples=15, deadline=None, phases=(Phase.generate,))
def test_walls_are_proven(height, spacing, size):
    wood = lumber(RULES, size, "spf", "no2") if size.startswith("2x") else None
    steel = SteelStud(depth_in=3.625, mils=43 if size else None) if wood is None else None
    studs = Studs(height_in=height, spacing_in=spacing, wood=wood, steel=steel)
    assert objections(plan_of(JudgeInput(walls=(WallInput(ref="bath/floor", studs=studs),)))) == []


RICH = replace(
    FLOOR,
    size="2x12",
    species="dfl",
    areas=(replace(TUB, rows=(LoadRow(of="bed", kg=150.0, litres=75.0, density_kg_m3=2000.0),)),),
    joists=LOADED[0],
    joist_lines=(((0, 160_000), (640_000, 160_000)), ((0, 480_000), (640_000, 480_000))),
    points=(PointLoad(load_lb=250, at_in=60),),
    cuts=(Cut(kind="hole", size_in=1, at_in=30, edge_in=2), Cut(kind="notch", size_in=1, at_in=20, length_in=2)),
    other=(("membrane", 0.5),),
)
RUN = replace(
    FLOOR,
    run_in=(150.0, 120.0),
    size="2x12",
    grade="unknown",
    panel=Panel(layers=("23/32",) * 2, glued_and_screwed=True),
)
STEEL = Studs(height_in=150, spacing_in=24, steel=SteelStud(depth_in=2.5, mils=18))


def others(value: Any) -> Iterator[Any]:
    """A value of a plan, changed in one place at a time."""
    if isinstance(value, list):
        yield value[:-1] or ["other"]
        for at, one in enumerate(value):
            yield from ([*value[:at], other, *value[at + 1 :]] for other in others(one))
    elif isinstance(value, dict):
        for key, one in value.items():
            yield from (value | {key: other} for other in others(one))
    elif isinstance(value, bool):
        yield not value
    elif isinstance(value, int | float):
        yield value * 1.0001 + (1 if isinstance(value, int) else 1e-4)
    elif isinstance(value, str):
        yield f"{value}x"


def changed(held: Any) -> Iterator[tuple[str, Any, str]]:
    """Everything of a sheet and its workings: where it stands, under which key, as what."""
    (sheet,) = held["structures"]
    yield from (("facts", sheet["facts"], name) for name in sheet["facts"])
    yield from ((name, sheet, name) for name in ("assumed", "unjudged", "remedies", "mass"))
    for row in (*sheet["lines"], *sheet["layers"]):
        yield from ((f"{row.get('working', row.get('of'))} {name}", row, name) for name in row)
    for key, working in held["workings"].items():
        yield from ((f"{key} {name}", working["inputs"], name) for name in working["inputs"])
        yield from ((f"{key} {name}", working, name) for name in ("result", "limit", "rule", "formula", "at"))


def told(plan: dict[str, Any]) -> list[str]:
    try:
        read = read_document(plan)
        return [said.message for check in (check_frames, check_formulas) for said in check(read)]
    except FieldError as error:
        return [str(error)]


@pytest.mark.parametrize(
    "asked",
    [
        JudgeInput(floors=(RICH,)),
        JudgeInput(floors=(RUN,)),
        JudgeInput(floors=(replace(FLOOR, sister=SisterPart(share=0.7)),)),
        JudgeInput(walls=(WallInput(ref="bath/floor", studs=STEEL, layers=FLOOR.layers),)),
        JudgeInput(ceilings=(CeilingInput(ref="bath/floor", span_in=150, spacing_in=24, size="2x6",
                                          layers=FLOOR.layers),)),
    ],
    ids=["loaded and cut", "run, lumber unknown", "part sister", "steel studs", "ceiling"],
)  # fmt: skip
def test_nothing_of_a_sheet_can_be_changed(asked):
    plan = plan_of(asked)
    assert told(plan) == []
    unseen, tried = [], 0
    for where, row, name in list(changed(plan)):
        kept = row[name]
        # One change stands for all of what is compared in one place.
        row[name] = next(others(kept), "other")
        tried += 1
        unseen += [] if told(plan) else [f"{where}: {row[name]}"]
        row[name] = kept
    assert unseen == [] and tried > 50


def test_a_value_forged_in_every_place_at_once_is_objected_to():
    """A stronger wood, with the limit and the finding that follow from it, is not the wood of the rules."""
    plan = json.loads(json.dumps(plan_of(JudgeInput(floors=(FLOOR,)))).replace("850.0", "1850.0"))
    assert any("1850" in message for _, message in objections(plan))
    taken = json.loads(json.dumps(plan_of(JudgeInput(floors=(FLOOR,)))))
    del taken["workings"]["frames-bending@bath/floor"]
    sheet = taken["structures"][0]
    sheet["lines"] = [row for row in sheet["lines"] if row["name"] != "bending"]
    assert "VER-917" in {code for code, _ in objections(taken)}

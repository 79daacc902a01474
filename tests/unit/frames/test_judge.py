import datetime
from dataclasses import replace

import pytest

from firstcourse.errors import InputValueError
from firstcourse.findings import Severity
from firstcourse.frames import judge, remedy_workings
from firstcourse.frames.checks import as_found
from firstcourse.frames.floors import Finish, FloorInput, check_floor
from firstcourse.frames.joists import PointLoad, SisterPart
from firstcourse.frames.judge import JudgeInput, WallInput
from firstcourse.frames.lumber import lumber
from firstcourse.frames.notches import Cut
from firstcourse.frames.panels import Panel, panel_stiffness, thickness_in
from firstcourse.frames.remedies import floor_remedies
from firstcourse.frames.walls import SteelStud, Studs
from firstcourse.layers import Layer
from firstcourse.rules import load_rules
from said import all_said, worked

DAY = datetime.date(2026, 11, 25)
RULES = load_rules(DAY)
TILE = Layer(name="tile", thickness_in=0.375, density_kg_m3=2350)
GOOD = FloorInput(
    ref="bath/floor",
    span_in=120,
    spacing_in=16,
    size="2x10",
    species="dfl",
    grade="no2",
    panel=Panel(layers=("19/32", "19/32")),
    layers=(Layer(name="board", thickness_in=0.25, density_kg_m3=1300), TILE),
    bearing_in=3.0,
)
BAD = replace(
    GOOD,
    span_in=150,
    size="2x8",
    species="hf",
    panel=Panel(layers=("23/32",)),
    layers=(Layer(name="mortar bed", thickness_in=1.25, density_kg_m3=2000), TILE),
)


def codes(judgement):
    return [finding.code for finding in all_said(judgement.findings)]


def test_a_good_floor_passes_with_its_workings_and_the_engineers_boundary():
    done = judge(JudgeInput(floors=(GOOD,)), RULES)
    assert not done.stops and codes(done) == ["SUI-900"] and done.remedies == ()
    shown = [worked(working, sources=RULES.sources()) for working in done.workings]
    assert shown[0].title == "Dead load of the floor"
    assert any("ongest span" in working.title for working in shown)
    assert all(working.source for working in shown)


def test_a_failing_floor_stops_with_three_remedies_and_passes_with_one_applied():
    done = judge(JudgeInput(floors=(BAD,)), RULES)
    assert done.stops
    (_where, options), = done.remedies  # fmt: skip
    passing = [option for option in options if option.passes]
    assert len(passing) >= 3
    assert passing == sorted(passing, key=lambda o: (o.height_in, o.material, o.labour_h, o.names))
    mended = replace(
        BAD,
        sister=SisterPart(share=RULES.number("remedy.sister_part.share")),
        layers=(Layer(name="mortar bed", thickness_in=0.1875, density_kg_m3=2000), TILE),
    )
    assert passing[0].names == ("sister_part", "thinner_bed")
    assert not judge(JudgeInput(floors=(mended,)), RULES).stops


def test_blocking_is_shown_not_to_help():
    options = floor_remedies(RULES, BAD)
    blocking = next(option for option in options if option.names == ("blocking",))
    assert not blocking.passes
    (told,) = [worked(one) for one in remedy_workings("bath/floor", [blocking])]
    assert "no stiffness" in told.title and told.result == "fails"


def test_every_finding_carries_measured_limit_source_and_remedy():
    for finding in all_said(judge(JudgeInput(floors=(BAD,)), RULES).findings, sources=RULES.sources()):
        if finding.severity is Severity.STOP:
            assert finding.measured and finding.limit and finding.source and finding.remedy


def test_stone_is_held_to_its_own_limit_beside_the_code():
    # 160 in: inside the span for L/480 and outside that for L/720.
    floor = replace(GOOD, span_in=160, finish=Finish.STONE)
    found = codes(judge(JudgeInput(floors=(floor,)), RULES))
    assert "SUI-107" in found and "SUI-109" not in found
    ceramic = replace(floor, finish=Finish.CERAMIC)
    assert not judge(JudgeInput(floors=(ceramic,)), RULES).stops


def test_unknown_lumber_is_the_weakest_and_said_so():
    unknown = lumber(RULES, "2x10")
    for species in ("dfl", "hf", "spf", "sp"):
        known = lumber(RULES, "2x10", species, "no2")
        assert unknown.fb_psi * unknown.size_factor <= known.fb_psi * known.size_factor
        assert unknown.e_psi <= known.e_psi and unknown.fv_psi <= known.fv_psi
    done = judge(JudgeInput(floors=(replace(GOOD, species="unknown"),)), RULES)
    assert "SUI-110" in codes(done)


def test_engineered_joists_are_held_to_480_and_their_cuts_to_the_maker():
    floor = replace(
        GOOD, size=None, stiffness=2.0e8, bearing_in=None, cuts=(Cut(kind="hole", size_in=1, at_in=30, edge_in=3),)
    )
    found = check_floor(RULES, floor)
    assert {check.limit for check in found if check.name == "live_deflection_finish"} == {480}
    assert {"SUI-111", "SUI-121"} <= set(codes(judge(JudgeInput(floors=(floor,)), RULES)))


@pytest.mark.parametrize(
    ("cut", "stops"),
    [
        (Cut(kind="hole", size_in=3, at_in=30, edge_in=2.5), False),
        (Cut(kind="hole", size_in=3.2, at_in=30, edge_in=2.5), True),
        (Cut(kind="hole", size_in=1, at_in=30, edge_in=1.5), True),
        (Cut(kind="notch", size_in=1.5, at_in=20, length_in=3), False),
        (Cut(kind="notch", size_in=1.5, at_in=50, length_in=3), True),
        (Cut(kind="notch", size_in=1.6, at_in=20, length_in=3), True),
        (Cut(kind="notch", size_in=1, at_in=20, length_in=4), True),
        (Cut(kind="end_notch", size_in=2.3, at_in=0), False),
        (Cut(kind="end_notch", size_in=2.4, at_in=0), True),
    ],
)
def test_cuts_against_the_code(cut, stops):
    assert ("SUI-120" in codes(judge(JudgeInput(floors=(replace(GOOD, cuts=(cut,)),)), RULES))) is stops


def test_a_tub_on_the_joist_adds_bending_and_bearing():
    plain = {check.name: check.found for check in check_floor(RULES, GOOD)}
    tub = replace(GOOD, points=(PointLoad(load_lb=300, at_in=60),))
    loaded = {check.name: check.found for check in check_floor(RULES, tub)}
    assert loaded["bending"] - plain["bending"] == pytest.approx(300 * 120 / 4 / (1.5 * 9.25**2 / 6))
    assert loaded["bearing"] - plain["bearing"] == pytest.approx(150 / (1.5 * 3.0))


def test_wood_studs_pass_and_thin_steel_does_not():
    wood = WallInput(
        ref="bath/wall/A-B",
        studs=Studs(height_in=96, spacing_in=16, wood=lumber(RULES, "2x4", "spf", "no2")),
    )
    steel = SteelStud(depth_in=3.5, mils=18)
    thin = WallInput(ref="bath/wall/B-C", studs=Studs(height_in=96, spacing_in=24, steel=steel))
    assert not judge(JudgeInput(walls=(wood,)), RULES).stops
    assert {"SUI-301", "SUI-303"} <= set(codes(judge(JudgeInput(walls=(thin,)), RULES)))


def test_code_may_allow_a_stud_that_tile_does_not():
    tall = Studs(height_in=150, spacing_in=16, wood=lumber(RULES, "2x4", "spf", "no3"))
    done = judge(JudgeInput(walls=(WallInput(ref="bath/wall/A-B", studs=tall),)), RULES)
    assert [f.rule for f in all_said(done.findings) if f.code == "SUI-302"] == ["wall.deflection.tile"]


def test_gauge_alone_is_asked_about():
    wall = WallInput(
        ref="bath/wall/A-B",
        studs=Studs(height_in=96, spacing_in=16, steel=SteelStud(depth_in=3.625)),
    )
    assert "SUI-310" in codes(judge(JudgeInput(walls=(wall,)), RULES))


def test_a_practice_without_rules_is_not_judged_rather_than_passed():
    done = judge(JudgeInput(floors=(GOOD,)), load_rules(DAY, "uk"))
    (unknown,) = [finding for finding in all_said(done.findings) if finding.code == "SUI-901"]
    assert unknown.severity is Severity.NOTE and "Cannot tell" in unknown.message and not done.members


def test_glued_layers_gain_only_a_share():
    loose = panel_stiffness(RULES, Panel(layers=("19/32", "19/32")))
    glued = panel_stiffness(RULES, Panel(layers=("19/32", "19/32"), glued_and_screwed=True))
    assert loose == 420_000 and loose < glued < 4 * loose
    assert thickness_in("1-1/8") == 1.125


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: lumber(RULES, "2x7"),
        lambda: lumber(RULES, "2x8", "oak"),
        lambda: lumber(RULES, "2x8", "dfl", "no9"),
        lambda: lumber(RULES, "2x8", "sp", "standard"),
        lambda: replace(GOOD, stiffness=1e8),
        lambda: check_floor(RULES, replace(GOOD, span_in=0)),
        lambda: check_floor(RULES, replace(GOOD, points=(PointLoad(load_lb=1, at_in=500),))),
        lambda: panel_stiffness(RULES, Panel(layers=())),
        lambda: panel_stiffness(RULES, Panel(layers=("5/8",))),
        lambda: thickness_in("thick"),
        lambda: Studs(height_in=96, spacing_in=16),
        lambda: Layer(name="tile", thickness_in=-1, density_kg_m3=1),
    ],
)
def test_wrong_input_is_refused(wrong):
    with pytest.raises(InputValueError):
        wrong()


@pytest.mark.parametrize(
    ("found", "printed"),
    [(16.2, "16-3/16 in"), (16.01, "16-1/64 in"), (16.001, "16.001 in"), (16, "16 in"), (15.99, "15-63/64 in")],
)
def test_a_spacing_reads_as_on_a_tape_and_on_its_own_side_of_the_limit(found, printed):
    check = as_found(RULES, "stud_spacing", found, "framing.stud_spacing.max", at_least=False)
    shown = worked(check.working("bath/wall/A-B"))
    assert (f"{shown.result} {shown.unit}", shown.values["limit"]) == (printed, "at most 16 in")
    assert check.holds is (found <= 16)

"""What a job says of frame, layers and exposure reaches the judgement; what it leaves out is told."""

from dataclasses import replace
from pathlib import Path

import pytest

import firstcourse
from firstcourse.errors import JobError
from firstcourse.findings import Severity
from firstcourse.frames import remedy_workings
from firstcourse.job import Job, read_job_text, starter_text
from firstcourse.rules import Override, load_rules
from firstcourse.steps import plan_job
from firstcourse.steps.judging import JobJudgement, judge_job
from firstcourse.survey import survey_job
from firstcourse.units import Tape
from firstcourse.values import Measure
from proving import verify_text
from said import all_said, worked

LIMBER = Path(__file__).parents[3] / "examples" / "limber-floor" / "job.yaml"
TEXT = LIMBER.read_text(encoding="utf-8")
MENDED = TEXT.replace("sistered: none ", "sistered: full ")


def judged(text: str) -> JobJudgement:
    job = read_job_text(text)
    overrides = tuple(Override(rule=c.rule, value=c.value, reason=c.reason) for c in job.rules)
    rules = load_rules(job.date, job.practice, overrides)
    return judge_job(job, survey_job(job, rules), rules)


def codes(text: str) -> set[str]:
    return {finding.code for finding in all_said(judged(text).findings)}


def stops(done: JobJudgement) -> list[str]:
    return [finding.code for finding in all_said(done.findings) if finding.severity is Severity.STOP]


def swapped(old: str, new: str, text: str = MENDED) -> str:
    assert text.count(old) == 1, old
    return text.replace(old, new)


def test_a_job_that_says_nothing_is_not_judged_and_told_so():
    done = judged(starter_text())
    told = all_said(done.findings)
    assert {(note.code, note.severity, note.where) for note in told} == {("SUI-910", Severity.NOTE, "bath")}
    assert [note.message for note in told] == [
        "Not judged: floor (joists, panels, tile, exposure).",
        "Not judged: wall A-B (studs, exposure).",
    ]
    assert done.judged == () and done.workings == {} and done.remedies == ()


def test_the_limber_floor_stops_with_ranked_remedies_and_the_boundary_last():
    done = firstcourse.open(LIMBER).judge()
    # L/317 is short of the code's L/360 and of the tile's limit beyond it: told once.
    assert sorted(stops(done)) == ["SUI-103", "SUI-107", "SUI-108"]
    assert done.judged == ("upper bath, floor", "upper bath, wall A-B")
    ((where, options),) = done.remedies
    assert where == "upper bath/floor"
    assert [option.names for option in options if option.passes] == [
        ("sister_part",),
        ("sister_full",),
        ("added_joists",),
        ("mid_support",),
    ]
    assert all_said(done.findings)[-1].code == "SUI-900"
    assert [finding.code for finding in all_said(done.findings)].count("SUI-900") == 1
    assert any("licensed engineer" in caution for caution in done.cautions)


def test_what_a_remedy_adds_is_told_in_the_unit_of_the_tape():
    ((where, options),) = firstcourse.open(LIMBER).judge().remedies
    for height, tape, told in (
        (0.59375, Tape.INCH, "19/32 in"),
        (0.59375, Tape.MM, "15 mm"),
        (-0.59375, Tape.INCH, "-19/32 in"),
    ):
        (working,) = remedy_workings(where, [replace(options[0], height_in=height)])
        assert worked(working, tape).values["height"] == told


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("sistered: none ", "sistered: part "),
        ("sistered: none ", "sistered: full "),
        ("spacing: 16 in, first: 14 1/2 in", "spacing: 8 in, first: 6 1/2 in"),
        ("span: 12' 6\"", "span: 6' 3\"\n        continuous: yes"),
    ],
)
def test_each_remedy_applied_to_the_job_lets_it_pass(old, new):
    done = judged(swapped(old, new, TEXT))
    assert stops(done) == [] and done.remedies == ()


def test_workings_are_named_by_surface_and_give_their_limit():
    done = judged(TEXT)
    names = [name for name in done.workings if name.startswith("frames-") and "@upper bath/floor" in name]
    assert len(names) > 8 and names[0] == "frames-dead_load@upper bath/floor"
    assert "frames-remedy@upper bath/floor+option/1" in names
    deflection = done.workings["frames-live_deflection@upper bath/floor+rule/floor.deflection.live_code"]
    assert worked(deflection).values == {"L": "150 in", "limit": "at least L/360"}
    assert all(working.rule or worked(working).source for working in done.workings.values())


def test_dead_load_holds_every_layer_entered():
    bed = swapped("edge: 12 in", "edge: 12 in, mortar_bed: 1 1/4 in, heating: 3/8 in")
    plain, loaded = (judged(text).workings["frames-dead_load@upper bath/floor"] for text in (MENDED, bed))
    rows = {of.word: psf.value for of, psf in zip(loaded.inputs["of"], loaded.inputs["loads"], strict=True)}
    # 1-1/4 in at 2100 kg/m3 is 66.7 kg/m2, 13.66 psf; 3/8 in at 1600 is 15.2 kg/m2, 3.12 psf.
    assert rows["mortar_bed"] == pytest.approx(13.66, abs=0.005)
    assert rows["heating"] == pytest.approx(3.12, abs=0.005)
    assert "mortar bed" in worked(loaded).values["made of"] and "mortar bed" not in worked(plain).values["made of"]
    assert loaded.result.value > plain.result.value + 16.7


def test_metric_entries_give_the_same_verdict():
    metric = MENDED.replace("span: 12' 6\"", "span: 3810 mm").replace("tape: inch", "tape: mm")
    metric = metric.replace("thickness: 3/8 in, edge", "thickness: 9.525 mm, edge")
    told = [tuple(judged(text).workings.items()) for text in (metric, MENDED)]
    for (name, one), (same, other) in zip(*told, strict=True):
        assert name == same
        if isinstance(one.result, Measure):
            assert one.result.unit == other.result.unit
            assert one.result.value == pytest.approx(other.result.value, rel=1e-6)
        else:
            assert one.result == other.result


def test_a_nominal_panel_counts_as_the_next_thinner_one():
    thick = judged(swapped("layers: [23/32 in, 19/32 in]", "layers: [3/4 in, 19/32 in]"))
    (note,) = [finding for finding in all_said(thick.findings) if finding.code == "SUI-204"]
    assert "23/32" in note.message and stops(thick) == []
    assert "SUI-204" not in codes(MENDED)


def test_what_the_book_cannot_judge_stops_rather_than_passing():
    thin = judged(swapped("layers: [23/32 in, 19/32 in]", "layers: [3/8 in]"))
    assert "SUI-902" in stops(thin)
    assert "thinner than 7/16 in" in next(f.message for f in all_said(thin.findings) if f.code == "SUI-902")
    assert "SUI-902" in stops(judged(swapped("thickness: 1/4 in,", "thickness: 1/4 in, kind: cork,")))
    assert "SUI-902" in stops(
        judged(swapped("species: hf", "species: sp").replace("grade: no2\n", "grade: utility\n"))
    )
    british = [
        f for f in all_said(judged(swapped("practice: us", "practice: uk")).findings) if f.where.endswith("floor")
    ]
    (unknown,) = [finding for finding in british if finding.code == "SUI-901"]
    assert unknown.severity is Severity.NOTE and "Ask a structural engineer" in unknown.remedy


def test_members_as_found_are_judged_at_their_widest_spacing():
    found = "parallel_to: D-A, members: [{at: 2 in}, {at: 18 in}, {at: 50 in}, {at: 66 in}, {at: 80 in}]"
    done = judged(swapped("parallel_to: D-A, spacing: 16 in, first: 14 1/2 in", found))
    spacing = worked(done.workings["frames-joist_spacing@upper bath/floor"])
    assert spacing.result == "32" and "SUI-101" in stops(done)
    lone = judged(swapped("spacing: 16 in, first: 15 1/4 in", "members: [{at: 42 in}]"))
    assert "wall A-B (spacing of the studs)" in all_said(lone.findings)[-2].message


@pytest.mark.parametrize(
    ("old", "new", "code"),
    [
        ("membrane: yes", "membrane: no", "SUI-503"),
        ("membrane: yes", "membrane: yes, retarder_behind: yes", "SUI-502"),
        ("membrane: yes", "membrane: yes, wood_moisture_percent: 24", "SUI-505"),
        ("thickness: 0.42 in,", "thickness: 0.42 in, kind: greenboard,", "SUI-501"),
        ("studs: {size: 2x4, species: spf, grade: no2,", "studs: {steel: 3 1/2 in, mils: 18,", "SUI-303"),
        ("studs: {size: 2x4, species: spf, grade: no2,", "studs: {steel: 3 1/2 in,", "SUI-310"),
        ("species: hf", "species: unknown", "SUI-110"),
        ("kind: ceramic", "kind: stone", "SUI-107"),
        ("door_underside: 1 3/8 in", "door_underside: 7/8 in", "SUI-603"),
        ("flange_top: 1 in", "flange_top: 1 1/2 in", "SUI-604"),
        ("height: -1/8 in", "height: -1/2 in", "SUI-401"),
        ("bearing: 3 in", "bearing: 1 in", "SUI-106"),
        ("bearing: 3 in", "cuts: [{kind: hole, size: 3 in, at: 20 in, edge: 2 in}]", "SUI-120"),
        ("bearing: 3 in", "loads: [{load_lb: 4000, at: 6 ft}]", "SUI-103"),
        ("size: 2x8", "ei_lb_in2: 2.0e+8", "SUI-111"),
    ],
)
def test_every_entry_reaches_its_check(old, new, code):
    assert code not in codes(MENDED)
    text = swapped(old, new)
    assert code in codes(text.replace("sistered: full", "sistered: none") if "ei_lb" in new else text)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("size: 2x8", "grade_stamp: 1", "did you mean"),
        ("size: 2x8", "size: 2x7", "2x7"),
        ("        size: 2x8\n", "", "give either size"),
        ("size: 2x8", "size: 2x8\n        ei_lb_in2: 1e8", "give either size"),
        ("bearing: 3 in", "loads: [{load_lb: 100, at: 14 ft}]", "within the span"),
        ("bearing: 3 in", "cuts: [{kind: hole, size: 1 in, at: 9 in}]", "hole's edge"),
        ("bearing: 3 in", "cuts: [{kind: notch, size: 1 in, at: 9 in}]", "notch's length"),
        ("studs: {size: 2x4,", "studs: {", "give either size"),
        ("studs: {size: 2x4,", "studs: {size: 2x4, mils: 33,", "are for steel studs"),
        ("zone: wet", "zone: soaked", "soaked"),
    ],
)
def test_wrong_entries_are_placed_in_the_document(old, new, said):
    with pytest.raises(JobError) as caught:
        read_job_text(swapped(old, new))
    assert said in str(caught.value) and "job.yaml:" in str(caught.value)


def test_a_slab_has_no_frame_and_a_ceiling_says_what_it_lacks():
    slab = """
name: Slab
date: 2026-11-25
rooms:
  - name: wc
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 60 in, C-D: 60 in, D-A: 60 in}
    diagonals: {A-C: 84 7/8 in, B-D: 84 7/8 in}
    floor: {exposure: {zone: wet, membrane: yes}}
    ceiling: {framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}, exposure: {zone: steam}}
"""
    done = judged(slab)
    assert {"SUI-501", "SUI-503"} <= set(stops(done))
    (note,) = [finding for finding in all_said(done.findings) if finding.code == "SUI-910"]
    assert "ceiling (joists, tiling)" in note.message
    (slab_note,) = [finding for finding in all_said(done.findings) if finding.code == "SUI-130"]
    assert "nothing bends" in slab_note.message and "its moisture" in slab_note.remedy


def test_the_plan_carries_the_judgement_and_the_rules_it_rests_on():
    job = read_job_text(TEXT)
    plan = plan_job(job, effort=0).plan
    done = judged(TEXT)
    assert set(all_said(done.findings)) <= set(all_said(plan.findings))
    assert done.workings.items() <= plan.workings.items()
    named = {note.id for note in plan.rules}
    assert {finding.rule for finding in all_said(done.findings) if finding.rule} <= named
    untold = Job.model_validate(job.model_dump() | bare(job))
    assert not any(note.id.startswith("floor.") for note in plan_job(untold, effort=0).plan.rules)


def bare(job: Job) -> dict[str, object]:
    """The same rooms with nothing said for the judgement."""
    floor = {"joists": None, "panels": None, "tile": None, "exposure": None}
    rooms = [
        room.model_copy(
            update={
                "floor": room.floor and room.floor.model_copy(update=floor),
                "walls": tuple(w.model_copy(update={"studs": None, "exposure": None}) for w in room.walls),
            }
        )
        for room in job.rooms
    ]
    return {"rooms": [room.model_dump() for room in rooms]}


WHOLE_SHOWER = """
      shower:
        points: [[0 in, 0 in], [84 in, 0 in], [84 in, 74 1/4 in], [0 in, 74 1/4 in]]
        drain: {left: 42 in, out: 37 in}
        recess: 4 in
      doorways:"""


@pytest.mark.parametrize("practice", ["us", "uk"])
def test_a_shower_that_takes_the_whole_floor_is_carried_by_its_frame(practice: str):
    text = swapped("practice: us", f"practice: {practice}", swapped("\n      doorways:", WHOLE_SHOWER, TEXT))
    done = judged(text)
    codes_of_floor = {finding.code for finding in done.findings if finding.at[0] == "upper bath/floor/shower"}
    assert codes_of_floor >= ({"SUI-107"} if practice == "us" else {"SUI-901"})
    notes = [finding.message for finding in all_said(done.findings) if finding.code == "SUI-910"]
    assert "Not judged: shower floor (flatness: the shower's bed makes its heights)." in notes


def test_a_frame_that_a_practice_cannot_judge_leaves_a_plan_that_verifies():
    done = plan_job(read_job_text(swapped("practice: us", "practice: uk")), effort=0)
    assert "SUI-901" in {finding.code for finding in all_said(done.plan.findings)}
    assert verify_text(done.document).objections == ()

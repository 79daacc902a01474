"""What a job says of its surfaces reaches the judgement: readings, leans, levels, layers, fittings, materials."""

import re
from functools import cache
from pathlib import Path

import pytest

from firstcourse.errors import JobError
from firstcourse.findings import Severity
from firstcourse.job import read_job_text
from firstcourse.rules import load_rules
from firstcourse.steps.judging import JobJudgement, judge_job
from firstcourse.survey import survey_job
from firstcourse.units import Tape
from said import all_said, worked

JOB = Path(__file__).parents[3] / "examples" / "out-of-true" / "job.yaml"
TEXT = JOB.read_text(encoding="utf-8")


@cache
def judged(text: str) -> JobJudgement:
    job = read_job_text(text)
    rules = load_rules(job.date, job.practice)
    return judge_job(job, survey_job(job, rules), rules)


def found(text: str) -> set[tuple[str, str]]:
    told = all_said(judged(text).findings)
    return {(one.code, re.sub("^back bath[,:] ", "", one.where)) for one in told}


def swapped(old: str, new: str, text: str = TEXT) -> str:
    assert text.count(old) == 1, old
    return text.replace(old, new)


def test_everything_wrong_with_the_old_bathroom_is_found():
    assert found(TEXT) >= {
        ("SUI-401", "floor"),
        ("SUI-403", "floor"),
        ("SUI-515", "floor"),
        ("SUI-516", "floor"),
        ("SUI-604", "floor"),
        ("SUI-606", "floor"),
        ("SUI-601", "floor, door to hall"),
        ("SUI-603", "floor, door to hall"),
        ("SUI-401", "wall A-B"),
        ("SUI-411", "wall A-B"),
        ("SUI-412", "wall A-B"),
        ("SUI-413", "wall A-B"),
        ("SUI-502", "wall A-B"),
        ("SUI-411", "wall D-A"),
        ("SUI-413", "wall D-A"),
        ("SUI-608", "wall D-A"),
    }


@pytest.mark.parametrize(
    ("old", "new", "code", "where"),
    [
        ("height: 3/8 in}", "height: 1/8 in}", "SUI-401", "floor"),
        ("slab_humidity_percent: 82", "slab_humidity_percent: 70", "SUI-516", "floor"),
        ("wet_friction: 0.38", "wet_friction: 0.5", "SUI-515", "floor"),
        ("top: 1/4 in}", "top: 3/4 in}", "SUI-604", "floor"),
        ("trim: 3/8 in", "trim: 5/8 in", "SUI-606", "floor"),
        ("door_underside: 7/8 in", "door_underside: 1 1/8 in", "SUI-603", "floor, door to hall"),
        ("other_floor: 1/4 in", "other_floor: 1/2 in", "SUI-601", "floor, door to hall"),
        ("face: 3/16 in", "face: 1/16 in", "SUI-401", "wall A-B"),
        ("A-B: 3/8 in, B-C", "A-B: 1/16 in, B-C", "SUI-411", "wall A-B"),
        (", retarder_behind: yes", "", "SUI-502", "wall A-B"),
        ("depth: [1 in, 1 3/4 in]", "depth: [3/4 in, 1 3/4 in]", "SUI-608", "wall D-A"),
    ],
)
def test_each_thing_mended_is_found_no_more(old, new, code, where):
    assert (code, where) not in found(swapped(old, new))


FLANGE = "kind: flange, side: D-A, left: 42 in, out: 12 in, diameter: 4 1/2 in, top: 1/4 in"
FASTENED = "fasteners: backer_screw}\n      - wall: D-A"


@pytest.mark.parametrize(
    ("old", "new", "code", "where"),
    [
        (FASTENED, FASTENED.replace("backer_screw", "staple"), "SUI-512", "wall A-B"),
        ("mortar: improved, slab", "over: painted, mortar: improved, slab", "SUI-510", "floor"),
        ("zone: damp, mortar: improved", "zone: wet, membrane: yes, mortar: unmodified", "SUI-514", "floor"),
        ("slab_humidity_percent: 82", "slab_emission_lb: 5", "SUI-517", "floor"),
        ("depth: [1 in, 1 3/4 in]", "depth: [1 1/2 in, 2 in]", "SUI-605", "wall D-A"),
        (FLANGE, FLANGE.replace("flange", "drain"), "SUI-607", "floor"),
        ("edge: 24 in, absorption_percent: 0.3}", "edge: 24 in, absorption_percent: 25}", "SUI-513", "wall A-B"),
    ],
)
def test_each_entry_reaches_its_check(old, new, code, where):
    assert (code, where) in found(swapped(old, new))


def test_levels_reach_the_walls_that_stand_on_the_floor():
    text = swapped("levels: {A: 0 in, B: 1/16 in", "levels: {A: 0 in, B: 1/2 in")
    assert ("SUI-414", "wall A-B") not in found(text)
    foot = (
        "      - wall: A-B                       # the long wall of the tub, read with a string at half height\n"
    )
    assert ("SUI-414", "wall A-B") in found(
        swapped(foot + "        foot: tub", foot + "        foot: floor", text)
    )


def test_ways_to_flatten_are_computed_and_shown():
    done = judged(TEXT)
    options = dict(done.remedies)
    assert [option.names[0] for option in options["back bath/floor/flatness"] if option.passes] == [
        "patch",
        "grind",
        "level_out",
    ]
    assert [option.names[0] for option in options["back bath/wall/A-B/flatness"]] == ["shim", "plane_down"]
    ranked = worked(done.workings["ground-remedy@back bath/floor+option/2"])
    assert ranked.title.startswith("Grind the high spots and fill the low ones to one plane: ")
    assert "asbestos" in ranked.title and ranked.result == "passes"
    shims = worked(done.workings["ground-shim@back bath/wall/A-B"]).values
    assert shims.pop("limit") == 'at most 1/2"'
    assert shims == {"stud at 1' 2\"": 'shim 1/8"', "stud at 2' 6\"": "leave", "stud at 3' 10\"": 'shim 1/8"'}
    assert "ground-map@back bath/floor" in done.workings


def test_a_leaning_bowed_wall_is_packed_plumb_and_straight_at_once():
    packed = worked(judged(TEXT).workings["ground-packing@back bath/wall/A-B"]).values
    # Furring 0.316 in at the foot and 0.047 in at the top, less the latter; shims 5/32, 0, 5/32 in.
    assert packed == {
        "stud at 1' 2\"": 'foot 7/16", top 1/8"',
        "stud at 2' 6\"": 'foot 1/4", top 0"',
        "stud at 3' 10\"": 'foot 7/16", top 1/8"',
    }
    plumb = judged(swapped("A-B: 3/8 in, B-C", "A-B: 1/16 in, B-C")).workings
    assert not any(name.startswith("ground-packing@") for name in plumb)


def test_fill_is_the_mean_depth_over_what_is_boarded():
    working = worked(judged(TEXT).workings["ground-patch@back bath/floor"], Tape.MM)
    # 60 by 90 in less the tub's 60 by 30 in and the flange's 4-1/2 in circle: 3,584 sq in.
    assert working.values["area"] == "2.313 m²"
    mean = float(working.values["mean depth"].split(" mm")[0])
    assert float(working.result) == pytest.approx(mean * 2.313, abs=0.1)


def test_layers_and_materials_are_worked_out_for_each_surface():
    workings = judged(TEXT).workings
    wall = worked(workings["height-build_up@back bath/wall/D-A"])
    assert list(wall.values) == ["board", "mortar under the tile", "tile"]
    assert wall.values["board"] == "0.420 in" and wall.values["tile"] == "0.313 in"
    materials = worked(workings["ground-materials@back bath/wall/A-B"])
    assert materials.values["membranes"] == "low perm, waterproof"
    assert all(working.rule or worked(working).source for working in workings.values())


def test_straightedge_gaps_are_enough_to_judge_by():
    text = swapped(
        "trim: 3/8 in", "trim: 3/8 in\n      straightedge: [{reach: 24 in, gap: 1/8 in, place: by the tub}]"
    )
    assert ("SUI-402", "floor") in found(text)
    wall = swapped("face: 1/16 in}\n", "face: 1/16 in}\n        straightedge: [{reach: 6 ft, gap: 1/4 in}]\n")
    working = worked(judged(wall).workings["ground-gaps@back bath/wall/A-B"])
    assert working.result == '1/4"' and "1. unnamed place" in working.values


def test_a_tiling_names_its_tile_for_the_judgement():
    chosen = swapped("rooms:\n", "tiles:\n  - {id: big, size: [12 in, 24 in], thickness: 3/8 in}\n\nrooms:\n")
    tiled = swapped(
        "tile: {kind: ceramic, thickness: 5/16 in, edge: 24 in, absorption_percent: 0.3}",
        "tiling: {tile: big}",
        chosen,
    )
    assert ("SUI-401", "wall A-B") in found(tiled)


def test_metric_entries_give_the_same_verdict():
    metric = TEXT.replace("tape: inch", "tape: mm").replace("thickness: 3/8 in", "thickness: 9.525 mm")
    assert {code for code, _ in found(metric)} == {code for code, _ in found(TEXT)}
    # What a tape can show differs on the studs; the floor's verdicts do not.
    one, other = (
        [option.passes for where, options in judged(text).remedies if "floor" in where for option in options]
        for text in (TEXT, metric)
    )
    assert one == other == [True, True, True, False]


def test_british_practice_judges_the_same_surfaces():
    british = judged(swapped("practice: us", "practice: uk"))
    by_code = {finding.code: finding for finding in all_said(british.findings) if finding.where.endswith("floor")}
    assert by_code["SUI-401"].rule == "surface.finished.flatness"
    assert by_code["SUI-516"].limit == "at most 75% relative humidity"


def test_only_what_is_wrong_with_materials_stops():
    stops = [finding.code for finding in all_said(judged(TEXT).findings) if finding.severity is Severity.STOP]
    assert stops == ["SUI-502"]


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("kind: valve, left", "kind: pipe, left", "a valve's window"),
        ("depth: [1 in, 1 3/4 in]", "depth: [2 in, 1 in]", "the least, then the most"),
        ("width: 60 in, depth: 30 in}", "width: 60 in, depth: 30 in, top: 1 in}", "rim of a drain or flange"),
        ("zone: damp, mortar", "zone: damp, membrane_kind: low_perm, mortar", "set membrane: yes"),
        ("mortar: improved, slab", "mortar: glue, slab", "glue"),
    ],
)
def test_wrong_entries_are_placed_in_the_document(old, new, said):
    with pytest.raises(JobError) as caught:
        read_job_text(swapped(old, new))
    assert said in str(caught.value) and "job.yaml:" in str(caught.value)


def test_readings_that_fix_no_plane_stop_with_what_to_do():
    lone = swapped(
        "          - {at: 30 in, face: 3/16 in}\n          - {at: 46 in, face: 1/16 in}\n",
        "",
    )
    (stop,) = [finding for finding in all_said(judged(lone).findings) if finding.code == "SUI-902"]
    assert "two readings or more" in stop.message

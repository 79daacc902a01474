"""The joint, the shift of courses and the step allowed, on the job's own words."""

import datetime
from fractions import Fraction
from typing import Any

import pytest

from firstcourse.findings import Severity
from firstcourse.job.tile import ChosenTile, Tiling
from firstcourse.plan import SurfaceKind
from firstcourse.rules import Override, load_rules
from firstcourse.tiles.joints import bow_step, step_allowed, tile_joint
from firstcourse.units import Tape, inches, mm
from said import all_said, worked

DAY = datetime.date(2026, 11, 25)
US, UK, AU = (load_rules(DAY, practice) for practice in ("us", "uk", "au"))


def tile(width: float = 12, height: float = 12, **more: Any) -> ChosenTile:
    fields = {"id": "plain", "size": (inches(width), inches(height)), "thickness": inches(0.375), **more}
    return ChosenTile.model_construct(**{**ChosenTile.model_construct().model_dump(), **fields})


def stacked() -> Tiling:
    return Tiling(tile="plain")


def running(offset: str = "1/2") -> Tiling:
    return Tiling(tile="plain", pattern="running", offset=Fraction(offset))


def codes(choice: Any) -> list[str]:
    return [finding.code for finding in all_said(choice.findings)]


def test_the_jobs_own_joint_is_used_where_it_is_legal() -> None:
    choice = tile_joint(tile(joint=inches(0.1875), size_spread=inches(0.03125)), stacked(), US)
    assert (choice.joint, choice.least, all_said(choice.findings)) == (inches(0.1875), inches(0.09375), ())


def test_too_narrow_a_joint_is_mended_and_said() -> None:
    choice = tile_joint(tile(joint=inches(0.125), size_spread=inches(0.0625)), stacked(), US)
    assert choice.joint == inches(0.1875)
    (finding,) = all_said(choice.findings)
    assert (finding.code, finding.severity, finding.rule) == ("TIL-101", Severity.FIX, "tile.joint.spread_factor")
    assert (finding.measured, finding.limit) == ('1/8"', 'at least 3/16"')


def test_without_a_joint_or_a_spread_a_wide_one_is_used_and_a_measurement_asked_for() -> None:
    choice = tile_joint(tile(), stacked(), US)
    assert choice.joint == inches(3 * 0.0625)
    assert codes(choice) == ["TIL-102"]


def test_a_joint_that_is_found_falls_on_half_marks_of_the_tape() -> None:
    spread = mm(0.7)
    assert tile_joint(tile(size_spread=spread), stacked(), US, tape=Tape.MM).joint == mm(2.5)
    assert tile_joint(tile(size_spread=spread), stacked(), US).joint == inches(3 / 32)
    assert tile_joint(tile(size_spread=spread), stacked(), US).least == mm(2.1)


@pytest.mark.parametrize(
    ("pattern", "expected"), [("stacked", 0.0625), ("diagonal", 0.0625), ("herringbone", 0.1875)]
)
def test_only_offset_patterns_ask_long_tiles_for_more(pattern: Any, expected: float) -> None:
    choice = tile_joint(tile(16, 8, size_spread=0), Tiling(tile="plain", pattern=pattern), US)
    assert choice.joint == inches(expected)


def test_fifteen_inches_are_not_yet_long() -> None:
    assert tile_joint(tile(15, 15, size_spread=0), running(), US).joint == inches(0.0625)
    assert all_said(tile_joint(tile(15, 15, size_spread=0), running(), US).findings) == ()


@pytest.mark.parametrize(("offset", "said"), [("1/2", True), ("1/3", False), ("2/3", False), ("2/5", True)])
def test_long_tiles_are_shifted_by_a_third_at_most(offset: str, said: bool) -> None:
    choice = tile_joint(tile(24, 6, size_spread=0), running(offset), US)
    assert codes(choice) == (["TIL-103"] if said else [])


def test_only_the_side_that_is_shifted_counts_for_the_shift() -> None:
    assert all_said(tile_joint(tile(6, 24, size_spread=0), running(), US).findings) == ()


def test_a_bow_that_uses_up_the_step_is_said_where_warpage_is_not_added() -> None:
    bowed = tile(24, 6, size_spread=0, joint=mm(6), warpage=mm(1.2), edges="rectified")
    assert all_said(tile_joint(bowed, running("1/3"), US).findings) == ()
    choice = tile_joint(bowed, running("1/3"), UK, tape=Tape.MM)
    (finding,) = (finding for finding in all_said(choice.findings, Tape.MM) if finding.code == "TIL-104")
    assert (finding.measured, finding.limit, finding.rule) == ("1.07 mm", "at most 1 mm", "tile.lippage.narrow")


def test_the_bow_is_a_parabola() -> None:
    assert [bow_step(2.0, share) for share in (0.0, 0.25, 0.5)] == [0.0, 1.5, 2.0]


def test_walls_have_their_own_minima() -> None:
    wall = tile_joint(tile(4, 4, size_spread=0), stacked(), UK, kind=SurfaceKind.WALL, tape=Tape.MM)
    floor = tile_joint(tile(4, 4, size_spread=0), stacked(), UK, kind=SurfaceKind.FLOOR, tape=Tape.MM)
    assert (wall.joint, floor.joint) == (mm(2), mm(3))


@pytest.mark.parametrize(
    ("rules", "edges", "joint", "expected"),
    [(AU, "pressed", 2, 1), (AU, "pressed", 4, 2), (AU, "rectified", 4, 1.5), (AU, "rectified", 3, 1)],
)
def test_ground_tiles_are_held_to_less(rules: Any, edges: str, joint: float, expected: float) -> None:
    assert step_allowed(tile(edges=edges), mm(joint), rules)[0] == mm(expected)


def test_an_override_moves_the_limit() -> None:
    rules = load_rules(
        DAY, overrides=(Override(rule="tile.joint.min_floor", value="1/8 in", reason="as the tile's maker asks"),)
    )
    assert tile_joint(tile(size_spread=0), stacked(), rules).joint == inches(0.125)


@pytest.mark.parametrize("rules", [US, UK, AU], ids=["us", "uk", "au"])
@pytest.mark.parametrize("kind", list(SurfaceKind))
def test_every_practice_answers_for_every_surface(rules: Any, kind: SurfaceKind) -> None:
    stone = tile(24, 12, kind="stone", edges="rectified", size_spread=mm(1), warpage=mm(0.5))
    choice = tile_joint(stone, running("1/3"), rules, kind=kind)
    assert choice.joint >= choice.least >= mm(3)
    assert [working.formula for working in choice.workings] == ["tiles-joint", "tiles-offset", "tiles-lippage"]
    sources = {entry.id: entry.cited for entry in rules.entries.values()}
    assert all(worked(working, sources=sources).source for working in choice.workings)

"""Backer rod was ordered for joints it cannot be pressed into, all soft joints of a surface had one width, tile
met a cabinet's plinth as it meets a wall, and a tile nobody had measured got the least joint of all.
"""

import datetime

import pytest

from firstcourse.findings import Finding
from firstcourse.job import read_job_text
from firstcourse.job.tile import ChosenTile, Tiling
from firstcourse.plan import Plan, SurfaceKind
from firstcourse.rules import load_rules
from firstcourse.steps import plan_job
from firstcourse.tiles.joints import tile_joint
from firstcourse.tiles.movement import field_spacing, joint_section
from firstcourse.units import inches, mm
from proving import verify_text

DAY = datetime.date(2026, 11, 25)
US, UK = load_rules(DAY), load_rules(DAY, "uk")


@pytest.mark.parametrize(
    ("width", "deep", "rod"),
    [
        # The thinnest rod is twice as wide as the joint.
        (1 / 8, 1.0, 0),
        # Rod a third over the joint goes in, where sealant and rod together are no deeper than the joint.
        (3 / 16, 1 / 2, 1 / 4),
        (3 / 16, 7 / 16, 1 / 4),
        (3 / 16, 3 / 8, 0),
        (1 / 4, 1 / 2, 0),
        (1 / 4, 5 / 8, 3 / 8),
    ],
)
def test_rod_is_taken_where_the_joint_can_hold_it(width: float, deep: float, rod: float) -> None:
    assert joint_section(inches(width), inches(deep), US).rod == inches(rod)


def test_thin_rod_that_is_not_sold_is_not_ordered() -> None:
    assert joint_section(mm(3), mm(20), UK).rod == 0
    assert joint_section(mm(6), mm(20), UK).rod == mm(8)


def test_widths_go_by_place() -> None:
    floor, mosaic = (field_spacing(SurfaceKind.FLOOR, US, mosaic=mosaic) for mosaic in (False, True))
    assert (floor.width, floor.edge) == (inches(1 / 4), inches(1 / 4))
    assert (mosaic.width, mosaic.edge) == (inches(1 / 8), inches(1 / 4))
    wall = field_spacing(SurfaceKind.WALL, US)
    assert (wall.width, wall.edge) == (inches(1 / 8), inches(1 / 8))
    outside = field_spacing(SurfaceKind.FLOOR, US, exposure="exterior", mosaic=True)
    assert outside.width == outside.edge == inches(1 / 2)


def chosen(**more: object) -> ChosenTile:
    return ChosenTile.model_validate({"id": "t", "size": ["12 in", "12 in"], "thickness": "3/8 in", **more})


@pytest.mark.parametrize(
    ("more", "joint"),
    [
        ({}, 3 / 16),
        ({"edges": "rectified"}, 3 / 32),
        ({"size_spread": "1/64 in"}, 1 / 16),
        ({"joint": "1/8 in"}, 1 / 8),
    ],
)
def test_a_tile_that_is_not_measured_gets_a_joint_that_is_wide_enough(more: dict[str, str], joint: float) -> None:
    choice = tile_joint(chosen(**more), Tiling(tile="t", pattern="stacked"), US)
    assert choice.joint == inches(joint)
    said: list[Finding] = [finding for finding in choice.findings if finding.code == "TIL-102"]
    assert bool(said) is (not more.keys() & {"size_spread", "joint"})


JOB = """
name: kitchen
date: 2026-11-25
tape: inch
tiles:
- {id: square, size: [12 in, 12 in], thickness: 3/8 in, kind: porcelain, joint: 1/8 in, edges: rectified}
rooms:
- name: kitchen
  corners: [A, B, C, D]
  sides: {A-B: 10', B-C: 8', C-D: 10', D-A: 8'}
  diagonals: {A-C: 12' 9-11/16", B-D: 12' 9-11/16"}
  floor:
    openings:
    - {id: base, kind: KIND, side: A-B, left: 30 in, out: 30 in, width: 36 in, depth: 24 in}
    tiling: {tile: square}
"""


def planned(kind: str) -> tuple[Plan, str]:
    done = plan_job(read_job_text(JOB.replace("KIND", kind)), effort=0)
    return done.plan, done.document


def test_a_cabinet_s_plinth_covers_a_gap_and_a_column_gets_its_joint() -> None:
    joints = {}
    for kind in ("cabinet", "column"):
        plan, document = planned(kind)
        (floor,) = plan.surfaces
        joints[kind] = [joint for joint in floor.soft_joints if joint.at.endswith("/base")]
        assert {joint.place for joint in floor.soft_joints} == {"edge"}
        assert not verify_text(document).objections
    assert joints["cabinet"] == [] and len(joints["column"]) == 4
    assert {joint.width for joint in joints["column"]} == {inches(1 / 4)}

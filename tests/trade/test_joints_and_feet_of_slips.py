"""Plausible slips ended as our own fault: a doorway's joint that ends in mid-floor, tile below a floor, a bench.

A joint that does not run across the field was taken to part it; beside a tiled shower floor the walls' tile began
within the room's floor where that is not tiled; and where a bench covers the foot of a wall's tile a joint along
that foot was asked for.
"""

import pytest

from firstcourse.errors import JobError
from firstcourse.job import read_job_text
from firstcourse.plan import Plan
from firstcourse.steps import plan_job

HEAD = """
name: slips
practice: us
date: 2026-11-25
tape: inch
stock: [{id: b, size: [36 in, 60 in], thickness: 1/4 in}]
tiles: [{id: t, size: [12 in, 12 in], thickness: 1/4 in, joint: 1/8 in}]
"""
SMALL = """
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 96 in, C-D: 60 in, D-A: 96 in}
    diagonals: {B-D: 113 1/4 in}
    height: 96 in
"""
FRAMING = "framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}"


def planned(text: str) -> Plan:
    return plan_job(read_job_text(HEAD + text), effort=0).plan


@pytest.mark.parametrize("ends", ["[[60 in, 120 in], [200 in, 120 in]]", "[[120 in, 60 in], [120 in, 200 in]]"])
def test_a_doorway_joint_that_ends_in_mid_floor_parts_no_field(ends: str) -> None:
    plan = planned(f"""
rooms:
  - name: hall
    corners: [A, B, C, D]
    sides: {{A-B: 320 in, B-C: 320 in, C-D: 320 in, D-A: 320 in}}
    diagonals: {{B-D: 452 1/2 in}}
    height: 96 in
    floor: {{{FRAMING}, tiling: {{tile: t, soft_joints: [{{over: doorway, side: A-B, ends: {ends}}}]}}}}
""")
    assert any(joint.why == "doorway" for joint in plan.surfaces[0].soft_joints)


def test_tile_of_walls_begins_above_an_untiled_floor_beside_a_shower() -> None:
    plan = planned(f"""{SMALL}
    floor:
      {FRAMING}
      shower:
        side: A-B
        left: 0 in
        out: 15 in
        width: 60 in
        depth: 36 in
        kerb: {{height: 4 in, width: 5 in}}
        drain: {{left: 30 in, out: 30 in}}
        tiling: {{tile: t}}
    walls: [{{wall: D-A, framing: {{spacing: 16 in, first: 16 in}}, tiling: {{tile: t}}}}]
""")
    assert any(surface.id == "bath/wall/D-A" and surface.tiles for surface in plan.surfaces)


def test_no_joint_is_asked_for_along_the_foot_that_a_bench_covers() -> None:
    plan = planned(f"""{SMALL}
    floor: {{{FRAMING}, tiling: {{tile: t}}}}
    walls:
      - wall: A-B
        framing: {{spacing: 16 in, first: 16 in}}
        boards: {{bottom: 18 in}}
        tiling: {{tile: t}}
    benches: [{{id: seat, wall: A-B, left: 0 in, width: 30 in, depth: 15 in, height: 18 in, tile: t}}]
""")
    assert any(surface.id.endswith("seat/top") for surface in plan.surfaces)


def test_a_floor_tile_of_another_thickness_is_refused_with_its_place() -> None:
    with pytest.raises(JobError, match=r"job\.yaml:\d+:\d+: rooms\[1\]\.floor\.tile\.thickness"):
        planned(
            f"{SMALL}    floor: {{{FRAMING}, tile: {{kind: ceramic, thickness: 3/8 in}}, tiling: {{tile: t}}}}\n"
        )

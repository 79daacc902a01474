"""The story pole of a hexagon mosaic listed every single chip, a mark at each inch.

Mosaic on sheets is marked by the sheet, hexagons too; small tile without sheets by every so-manyth course, with
the sum printed, and the verifier derives which.
"""

import json
from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest

from firstcourse.job import read_job_text
from firstcourse.papers.poles import plan_poles
from firstcourse.papers.tile_pages import tile_poles
from firstcourse.plan import Plan
from firstcourse.steps import plan_job
from firstcourse.units import TICKS_PER_INCH
from firstcourse.verify.poles import check_poles
from firstcourse.verify.reading import read_document
from proving import verify

JOB = """
name: Mosaic
practice: us
date: 2026-11-25
tape: inch
tiles:
  - {id: chip, size: [SIZE], thickness: 1/4 in, joint: 1/8 in, size_spread: 1/32 in MORE}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 60 in, B-C: 48 in, C-D: 60 in, D-A: 48 in}
    diagonals: {A-C: 76 7/8 in}
    height: 96 in
    floor: {tiling: {tile: chip, pattern: PATTERN}}
"""


def _text(size: str, more: str, pattern: str) -> str:
    job = JOB.replace("SIZE", size).replace("MORE", more).replace("PATTERN", pattern)
    return plan_job(read_job_text(job), effort=0).document


@pytest.mark.parametrize(
    ("size", "more", "pattern", "every"),
    [
        ("2 in, 2.309 in", ", shape: hexagon, sheet: [6, 6]", "hexagon", (6, 6)),
        # Rows 2-1/8 in apart across, and 1.840 in up: two and three of them are 4 in or more.
        ("2 in, 2.309 in", ", shape: hexagon", "hexagon", (2, 3)),
        ("1 in, 1 in", "", "stacked", (4, 4)),
        ("4 in, 4 in", "", "stacked", (1, 1)),
        ("6 in, 3 in", "", "running", (1, 1)),
    ],
)
def test_marks_stand_a_readable_way_apart(size: str, more: str, pattern: str, every: tuple[int, int]) -> None:
    text = _text(size, more, pattern)
    plan = Plan.model_validate_json(text)
    (floor,) = (surface for surface in plan.surfaces if surface.tiles)
    poles = plan_poles(plan)
    assert len(poles) == 2
    for pole, printed in zip(
        poles, (stick for row in tile_poles(plan) for part in row for stick in part), strict=True
    ):
        axis = 1 if pole.way == "along the first line" else 0
        starts = [mark.at for mark in pole.marks if mark.kind == "tile"][1:-1]
        a, b = floor.tiled[0].step_a, floor.tiled[0].step_b
        step = (a[0], b[1])[axis] * 640
        assert starts and all(abs(two - one - every[axis] * step) < 10 for one, two in pairwise(starts))
        if every[axis] > 1 and "sheet" not in more:
            assert (
                f"{every[axis]} x" in printed["title"]
                and f"{every[axis] * step / TICKS_PER_INCH:.3f}" in printed["title"]
            )
        names = [mark.name for mark in pole.marks if mark.kind == "tile"]
        assert all(name.startswith(("sheet", "end of sheet")) for name in names) == ("sheet" in more)


def test_the_verifier_derives_which_courses_are_marked() -> None:
    plan = read_document(json.loads(_text("2 in, 2.309 in", ", shape: hexagon", "hexagon")))
    assert not list(check_poles(plan))
    (index,) = (number for number, surface in enumerate(plan.surfaces) if surface.tiles)
    surface = plan.surfaces[index]
    for place, mark in enumerate(surface.marks):
        if mark.kind == "pole" and "/tile " in mark.to:
            for other in (replace(mark, every=mark.every + 1), None):
                marks = (*surface.marks[:place], *([] if other is None else [other]), *surface.marks[place + 1 :])
                spoilt = replace(plan, surfaces=(*plan.surfaces[:index], replace(surface, marks=marks),
                                                 *plan.surfaces[index + 1 :]))  # fmt: skip
                assert list(check_poles(spoilt)), mark


def test_a_course_left_out_is_noticed_in_the_document_itself() -> None:
    plan: dict[str, Any] = json.loads(_text("1 in, 1 in", "", "stacked"))
    for surface in plan["surfaces"]:
        for mark in surface["marks"]:
            if mark["kind"] == "pole":
                mark.pop("every", None)
    assert "VER-720" in {found.code for found in verify(plan).objections}

"""Sheets of one inch and floors of a hundred thousand tiles were worked on for minutes, or until memory ended.

They are refused by an estimate before anything is laid out, with the estimate and where to look.
"""

import pytest

from firstcourse.errors import JobError
from firstcourse.job import read_job_text
from firstcourse.steps import plan as steps
from firstcourse.steps import plan_job


def refused(side: int, sheet: str, tile: str, tiling: str) -> str:
    text = f"""
name: too many
practice: us
date: 2026-11-25
tape: mm
stock: [{{id: b, size: [{sheet}], thickness: 6 mm}}]
tiles: [{{id: t, size: [{tile}], thickness: 6 mm, joint: 2 mm}}]
rooms:
  - name: hall
    corners: [A, B, C, D]
    sides: {{A-B: {side} mm, B-C: {side} mm, C-D: {side} mm, D-A: {side} mm}}
    diagonals: {{B-D: {side * 2**0.5:.0f} mm}}
    height: 2400 mm
    floor: {{framing: {{parallel_to: A-B, spacing: 400 mm, first: 200 mm}}{tiling}}}
"""
    with pytest.raises(JobError) as caught:
        plan_job(read_job_text(text), effort=0)
    return str(caught.value)


@pytest.mark.parametrize(("side", "sheet"), [(2400, "100 mm, 100 mm"), (30_000, "900 mm, 1500 mm")])
def test_far_too_many_boards_are_refused_with_the_estimate(side: int, sheet: str) -> None:
    said = refused(side, sheet, "300 mm, 300 mm", "")
    assert "stock[1].size" in said and "boards on hall/floor, more than the 500" in said


def test_far_too_many_tiles_are_refused_with_the_estimate() -> None:
    said = refused(2400, "1200 mm, 2400 mm", "9 mm, 9 mm", ", tiling: {tile: t}")
    assert "rooms[1].floor.tiling" in said and "tiles on one surface are more than 40000" in said


def test_far_too_many_tiles_are_refused_before_boards_are_searched(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(steps, "board", lambda *_, **__: pytest.fail("boards were searched first"))
    said = refused(24_000, "1200 mm, 2400 mm", "100 mm, 100 mm", ", tiling: {tile: t}")
    assert "rooms[1].floor.tiling" in said and "tiles on one surface are more than 40000" in said

"""Where a room unfolded filled its page, the lines to sign stood alone on the next one."""

import io
from functools import cache
from typing import Any

import pypdf
import pytest

from firstcourse.job import read_job_text
from firstcourse.papers.site_pack import pack_data, print_pack
from firstcourse.steps import plan_job

JOB = """
name: Deep room
practice: us
date: 2026-11-25
tape: mm
stock:
  - {id: wall board, size: [900 mm, 1500 mm], thickness: 12 mm, for: [wall]}
  - {id: floor board, size: [900 mm, 1500 mm], thickness: 6 mm, for: [floor]}
tiles:
  - {id: wall tile, size: [597 mm, 297 mm], thickness: 9 mm, joint: 3 mm}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 2100 mm, B-C: DEEP mm, C-D: 2100 mm, D-A: DEEP mm}
    diagonals: {A-C: ACROSS mm, B-D: ACROSS mm}
    taped_to: studs
    height: 2450 mm
    floor:
      framing: {parallel_to: A-B, spacing: 400 mm, first: 400 mm, width: 38 mm}
    walls:
      - wall: A-B
        framing: {spacing: 400 mm, first: 400 mm, width: 38 mm}
      - wall: C-D
        framing: {spacing: 400 mm, first: 400 mm, width: 38 mm}
        tiling: {tile: wall tile}
"""
"""Floor and two walls in line are higher on paper than wide, and fill more or less of it at their scale."""


@cache
def data(deep: int) -> dict[str, Any]:
    across = f"{(2100**2 + deep**2) ** 0.5:.0f}"
    job = JOB.replace("DEEP", str(deep)).replace("ACROSS", across)
    return pack_data(plan_job(read_job_text(job), effort=0).plan)


@pytest.mark.parametrize("deep", [1900, 2300])
def test_the_lines_to_sign_stand_below_the_room(deep: int) -> None:
    pages = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(print_pack(data(deep), "letter"))).pages]
    (signed,) = (text for text in pages if "Agreed as drawn" in text)
    assert "unfolded" in signed and "Scale 1:" in signed

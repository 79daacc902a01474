"""A shower with a niche and a bench had 19 pages: small faces in rows left half of their pages empty."""

import io
from functools import cache
from typing import Any

import pypdf
import pytest

from firstcourse.job import read_job_text
from firstcourse.papers.site_pack import pack_data, print_pack
from firstcourse.steps import plan_job

JOB = """
name: Shower in hexagons
practice: us
date: 2026-11-25
tape: inch
stock:
  - {id: floor board 3x5, size: [36 in, 60 in], thickness: 1/4 in, for: [floor]}
  - {id: wall board 3x5, size: [36 in, 60 in], thickness: 1/2 in, for: [wall]}
tiles:
  - id: hexagon mosaic
    size: [1 7/8 in, 2.165 in]
    shape: hexagon
    thickness: 1/4 in
    joint: 1/8 in
    size_spread: 1/32 in
    sheet: [6, 6]
  - {id: wall tile 4x12, size: [11 15/16 in, 3 15/16 in], thickness: 5/16 in, joint: 1/8 in, size_spread: 1/32 in}
rooms:
  - name: main bath
    corners: [A, B, C, D]
    sides: {A-B: 6' 0", B-C: 9' 6", C-D: 6' 0-1/8", D-A: 9' 5-7/8"}
    diagonals: {A-C: 11' 2-13/16", B-D: 11' 2-7/8"}
    taped_to: studs
    height: 8' 0"
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 14 in}
      openings:
        - {id: closet flange, kind: flange, side: D-A, left: 30 in, out: 12 1/2 in, diameter: 4 1/2 in}
      tiling: {tile: hexagon mosaic, pattern: hexagon}
      shower:
        side: A-B
        left: 0 in
        out: 0 in
        width: 72 in
        depth: 42 in
        drain: {left: 36 in, out: 22 in}
        kerb: {height: 4 1/2 in, width: 5 in, entry: 28 in}
        membrane: sheet
        tiling: {tile: hexagon mosaic, pattern: hexagon}
    benches:
      - id: bench
        wall: B-C
        left: 0 in
        width: 42 in
        depth: 14 in
        height: 18 in
        body: framed
        tile: wall tile 4x12
    walls:
      - wall: A-B
        foot: tray
        boards: {bottom: 2 1/2 in, top: 90 in}
        framing: {spacing: 16 in, first: 16 in}
        openings:
          - {id: niche, kind: niche, left: 33 in, bottom: 48 in, width: 14 in, height: 20 in}
        exposure: {zone: wet, membrane: yes}
        tiling: {tile: wall tile 4x12, pattern: stacked, niches: [{niche: niche, depth: 3 1/2 in}]}
      - wall: B-C
        foot: tray
        boards: {right: 48 in, bottom: 2 1/2 in, top: 90 in}
        framing: {spacing: 16 in, first: 16 in}
        exposure: {zone: wet, membrane: yes}
        tiling: {tile: wall tile 4x12, pattern: stacked}
      - wall: D-A
        foot: tray
        boards: {left: 65 7/8 in, bottom: 2 1/2 in, top: 90 in}
        framing: {spacing: 16 in, first: 16 in}
        openings:
          - {id: valve, kind: valve, left: 92 in, bottom: 44 in, diameter: 5 in}
          - {id: shower head, kind: pipe, left: 92 in, bottom: 82 in, diameter: 1 1/4 in}
        exposure: {zone: wet, membrane: yes}
        tiling: {tile: wall tile 4x12, pattern: stacked}
"""
MOST_PAGES = 18


@cache
def data() -> dict[str, Any]:
    return pack_data(plan_job(read_job_text(JOB), effort=0).plan)


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_pages_are_few_and_none_all_but_empty(paper: str) -> None:
    pages = pypdf.PdfReader(io.BytesIO(print_pack(data(), paper))).pages  # type: ignore[arg-type]
    assert len(pages) <= MOST_PAGES
    assert min(len(page.extract_text()) for page in pages) > 250


def test_small_faces_stand_in_columns_that_share_their_page() -> None:
    blocks = [block for row in data()["tile"] for block in row if block["kind"] == "faces"]
    assert [block["title"].rpartition(": ")[0] for block in blocks] == [
        "main bath: wall A-B, niche",
        "main bath: bench",
    ]
    # Narrow faces take three columns; a long bench, which these would make too small, takes two.
    assert [len(block["columns"]) for block in blocks] == [3, 2]
    # None of the columns is left empty but the one that holds what all share.
    for block in blocks:
        assert all(cells or place == block["last"] for place, cells in enumerate(block["columns"]))

"""The pack of a shower with a window and a niche had 22 pages: its cover ran over, and each strip of a niche or a
window had half a page, some pages next to nothing.
"""

import io
from functools import cache
from typing import Any

import pypdf
import pytest

from firstcourse.job import read_job_text
from firstcourse.papers.blocks import HIGH_MM
from firstcourse.papers.site_pack import pack_data, print_pack
from firstcourse.steps import plan_job

JOB = """
name: Shower with a window
practice: us
date: 2026-11-25
tape: inch
stock:
  - {id: floor board 3x5, size: [36 in, 60 in], thickness: 1/4 in, price: 14.50, for: [floor]}
  - {id: wall board 3x5, size: [36 in, 60 in], thickness: 1/2 in, price: 17.25, for: [wall]}
tiles:
  - {id: shower mosaic, size: [2 in, 2 in], thickness: 1/4 in, joint: 1/8 in, size_spread: 1/32 in, sheet: [6, 6]}
  - {id: wall tile 8x16, size: [15 7/8 in, 7 7/8 in], thickness: 5/16 in, joint: 1/8 in, size_spread: 1/32 in}
  - {id: floor tile 12x12, size: [11 13/16 in, 11 13/16 in], thickness: 3/8 in, joint: 1/4 in}
rooms:
  - name: back bath
    corners: [A, B, C, D]
    sides: {A-B: 5' 0", B-C: 9' 0-1/8", C-D: 4' 11-7/8", D-A: 9' 0"}
    diagonals: {A-C: 10' 3-9/16", B-D: 10' 3-1/2"}
    taped_to: studs
    height: 8' 0"
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 15 1/4 in}
      openings:
        - {id: closet flange, kind: flange, side: D-A, left: 32 in, out: 12 1/2 in, diameter: 4 1/2 in}
      tiling: {tile: floor tile 12x12}
      shower:
        side: A-B
        left: 0 in
        out: 0 in
        width: 60 in
        depth: 36 in
        drain: {left: 30 in, out: 20 in}
        kerb: {height: 4 1/2 in, width: 5 in, entry: 26 in}
        membrane: sheet
        tiling: {tile: shower mosaic}
    walls:
      - wall: A-B
        foot: tray
        boards: {bottom: 2 1/2 in, top: 90 in}
        framing: {members: [{at: 3/4 in}, {at: 16 in}, {at: 46 in}, {at: 59 1/4 in}]}
        blocking:
          - {at: 47 1/4 in, left: 16 3/4 in, right: 45 1/4 in}
          - {at: 78 3/4 in, left: 16 3/4 in, right: 45 1/4 in}
        openings:
          - id: window
            kind: window
            left: 18 in
            bottom: 48 in
            width: 26 in
            height: 30 in
            returns: {depth: 4 in}
        exposure: {zone: wet, membrane: yes}
        tiling: {tile: wall tile 8x16, pattern: running, offset: 1/3}
      - wall: B-C
        foot: tray
        boards: {right: 42 in, bottom: 2 1/2 in, top: 90 in}
        framing: {spacing: 16 in, first: 16 in}
        openings:
          - {id: niche, kind: niche, left: 17 in, bottom: 48 in, width: 13 in, height: 20 in}
        exposure: {zone: wet, membrane: yes}
        tiling: {tile: wall tile 8x16, pattern: running, offset: 1/3, niches: [{niche: niche, depth: 3 1/2 in}]}
      - wall: D-A
        foot: tray
        boards: {left: 66 in, bottom: 2 1/2 in, top: 90 in}
        framing: {spacing: 16 in, first: 16 in}
        openings:
          - {id: valve, kind: valve, left: 88 in, bottom: 44 in, diameter: 5 in}
          - {id: shower head, kind: pipe, left: 88 in, bottom: 82 in, diameter: 1 1/4 in}
        exposure: {zone: wet, membrane: yes}
        tiling: {tile: wall tile 8x16, pattern: running, offset: 1/3}
"""
MOST_PAGES = 19
SMALLEST = 96
"""Two boards of many figures had no room at any usual scale, and were drawn as a dot at 1:12288."""
_MM = 25.4 / 72


@cache
def data() -> dict[str, Any]:
    return pack_data(plan_job(read_job_text(JOB), effort=0).plan)


@cache
def pages(paper: str) -> list[pypdf.PageObject]:
    return list(pypdf.PdfReader(io.BytesIO(print_pack(data(), paper))).pages)  # type: ignore[arg-type]


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_pages_are_few_and_none_is_under_a_third_full(paper: str) -> None:
    assert len(pages(paper)) <= MOST_PAGES
    for number, page in enumerate(pages(paper), start=1):
        places: list[float] = []

        def seen(text: str, cm: list[float], tm: list[float], *_: Any, places: list[float] = places) -> None:
            if text.strip():
                places.append((tm[5] * cm[3] + cm[5]) * _MM)

        page.extract_text(visitor_text=seen)
        high = float(page.mediabox.height) * _MM
        # What stands in the head and in the foot fills no page.
        within = [place for place in places if 20.0 < place < high - 14.0]
        assert high - 22.0 - min(within) > HIGH_MM / 3, f"page {number}"


def test_every_board_with_second_cuts_is_drawn_at_a_usual_scale() -> None:
    scales = {piece["id"]: piece["scale"] for row in data()["second"] for piece in row}
    assert len(scales) > 4
    assert {name for name, scale in scales.items() if int(scale.removeprefix("1:")) > SMALLEST} == set()


@pytest.mark.parametrize("paper", ["letter", "a4"])
def test_the_cover_is_one_page(paper: str) -> None:
    cover, room = (page.extract_text() for page in pages(paper)[:2])
    assert "In this pack" in cover and "In this pack" not in room
    assert "unfolded" in room.splitlines()[1] or "Agreed as drawn" in room


def test_faces_of_one_thing_are_drawn_together() -> None:
    faces = [block for row in data()["tile"] for block in row if block["kind"] == "faces"]
    named = {
        block["title"]: {name for column in block["columns"] for cell in column for name in _names(cell)}
        for block in faces
    }
    assert named == {
        "back bath: wall A-B, window: tile": {"sill", "head", "left", "right"},
        "back bath: wall B-C, niche: tile": {"back", "sill", "head", "left", "right"},
    }
    lists = [listed["title"] for listed in data()["saw"]["lists"]]
    assert "back bath: wall B-C, niche" in lists and len(set(lists)) == len(lists)


def _names(cell: dict[str, Any]) -> list[str]:
    # Faces with the very same words share them.
    return cell["name"].split(", ")  # type: ignore[no-any-return]

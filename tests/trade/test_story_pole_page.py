"""Every wall's pole was printed by itself at full size on many pages, though a setter marks one plain stick.

The site pack has each stick's numbers together on one page, walls that lie alike share a stick, and the strips at
full size are printed only where they are asked for.
"""

import io
from pathlib import Path

import pypdf
import pytest

from example_plans import plan_of, site_pack_of
from firstcourse.cli import run
from firstcourse.drawings import draw_tiling
from firstcourse.papers.papers import STORY_POLE_A4, STORY_POLE_LETTER
from firstcourse.papers.poles import plan_poles
from firstcourse.papers.site_pack import pack_data
from firstcourse.units import format_length


@pytest.mark.parametrize("name", ["tub-bathroom", "tiled-shower"])
def test_all_sticks_stand_on_one_page_with_the_numbers_of_the_plan(name: str) -> None:
    plan = plan_of(name)
    poles = [pole for row in pack_data(plan)["poles"] for column in row for pole in column]
    assert [pole["title"] for pole in poles] == [pole.title for pole in plan_poles(plan)]
    for printed, pole in zip(poles, plan_poles(plan), strict=True):
        wanted = list(dict.fromkeys(format_length(mark.at, plan.job.tape) for mark in pole.marks))
        assert [row["at"] for row in printed["rows"]] == wanted
        assert sum(row["held"] for row in printed["rows"]) == 1
    pages = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(site_pack_of(name, "letter"))).pages]
    with_sticks = [page for page in pages if "from the end" in page]
    assert len(with_sticks) == 1


def test_the_figures_of_a_drawing_are_those_of_its_stick() -> None:
    plan = plan_of("tub-bathroom")
    wall = next(surface for surface in plan.surfaces if surface.id.endswith("wall/D-A"))
    marked = {format_length(mark.distance, plan.job.tape) for mark in wall.marks if mark.kind == "pole"}
    figures = {text.text for text in draw_tiling(plan, wall).texts if text.text.endswith('"')}
    assert len(figures) > 8 and figures <= marked


WALL = """
name: One wall
practice: us
date: 2026-11-25
tape: inch
stock:
  - {id: wall board, size: [36 in, 60 in], thickness: 0.42 in, for: [wall]}
tiles:
  - {id: wall tile, size: [11 7/8 in, 11 7/8 in], thickness: 5/16 in, joint: 1/8 in, size_spread: 1/32 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 5' 0", B-C: 8' 0", C-D: 5' 0", D-A: 8' 0"}
    diagonals: {A-C: 9' 5-1/4"}
    height: 8' 0"
    walls:
      - wall: A-B
        foot: tub
        tiling: {tile: wall tile}
        boards: {bottom: 15 in, top: 60 in}
        framing: {spacing: 16 in, first: 16 in}
"""


def test_strips_at_full_size_are_printed_where_they_are_asked_for(tmp_path: Path) -> None:
    job = tmp_path / "job.yaml"
    job.write_text(WALL, encoding="utf-8")
    names = {STORY_POLE_LETTER, STORY_POLE_A4}
    for asked in (["--poles"], []):
        run(["plan", str(job), "--out", str(tmp_path / "plan"), "--effort", "0", *asked])
        written = {file.name for file in (tmp_path / "plan").iterdir()}
        assert names & written == (names if asked else set())

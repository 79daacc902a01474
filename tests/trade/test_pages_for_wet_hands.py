"""The pack of a small bathroom had 53 pages; cut drawings lay over each other and past the margin, letters could
not be read at small scales, and pages stood all but empty.
"""

import io
import sys
from pathlib import Path

import pypdf
import pytest

from example_plans import plan_of
from firstcourse.drawings.tickets import part_numbers, parts_within
from firstcourse.job import read_job_text
from firstcourse.papers.blocks import Block, beside_each_other, in_columns, in_rows, two_to_a_page
from firstcourse.papers.pages import _compiler
from firstcourse.papers.site_pack import pack_data, print_pack
from firstcourse.papers.ticket_pages import tickets
from firstcourse.plan import Sheet
from firstcourse.steps import plan_job

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / "benchmarks"))

from random_papers import LEAST_LETTERS, faults, faults_of_drawings, faults_of_pages  # noqa: E402
from random_rooms import random_job  # noqa: E402
from random_tiles import tiled  # noqa: E402

MOST_PAGES = {"tub-bathroom": 12, "tiled-shower": 18}


@pytest.mark.parametrize(("name", "paper"), [("tub-bathroom", "letter"), ("tiled-shower", "a4")])
def test_a_bathroom_goes_to_site_on_few_pages_and_none_is_empty(name: str, paper: str) -> None:
    pdf = print_pack(pack_data(plan_of(name)), paper)  # type: ignore[arg-type]
    pages = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(pdf)).pages]
    assert len(pages) <= MOST_PAGES[name]
    assert min(len("".join(text.split())) for text in pages) >= LEAST_LETTERS
    assert not list(faults_of_pages(pdf))


@pytest.mark.parametrize("name", ["tub-bathroom", "tiled-shower"])
def test_no_text_of_a_drawing_meets_another_and_every_drawing_fits_the_page(name: str) -> None:
    assert not list(faults_of_drawings(plan_of(name)))


LARGE_TILE_AND_PIPES = """
name: pipes
date: 2026-11-25
tiles: [{id: plank, size: [11 7/8 in, 23 7/8 in], thickness: 3/8 in, joint: 1/8 in, size_spread: 1/32 in}]
rooms:
  - name: room
    corners: [A, B, C, D]
    sides: {A-B: 9 ft 1 in, B-C: 20 ft, C-D: 9 ft 2 in, D-A: 20 ft 1 in}
    diagonals: {A-C: 21 ft 11 3/4 in}
    height: 8 ft
    walls:
      - wall: A-B
        framing: {spacing: 16 in, first: 3/4 in}
        openings:
          - {id: supply hot, kind: pipe, left: 30 in, bottom: 20 in, diameter: 1 1/4 in}
          - {id: supply cold, kind: pipe, left: 34 in, bottom: 20 in, diameter: 1 1/4 in}
          - {id: waste, kind: pipe, left: 32 in, bottom: 17 in, diameter: 2 in}
          - {id: valve, kind: valve, left: 72 in, bottom: 44 in, diameter: 5 in}
          - {id: box, kind: box, left: 50 in, bottom: 42 in, width: 4 in, height: 4 in}
          - {id: head, kind: pipe, left: 72 in, bottom: 80 in, diameter: 1 1/4 in}
        tiling: {tile: plank, pattern: running, offset: 1/3}
"""


def test_large_tile_with_pipes_keeps_its_cuts_apart_and_on_the_page() -> None:
    plan = plan_job(read_job_text(LARGE_TILE_AND_PIPES), effort=0).plan
    assert not list(faults_of_drawings(plan))
    data = pack_data(plan)
    assert sum(len(row) for row in data["saw"]["rows"]) >= 5
    assert not list(faults_of_pages(print_pack(data, "letter")))


def test_faults_on_a_page_are_seen() -> None:
    page = b"""#set page(width: 120mm, height: 60mm, margin: 5mm)
#set text(font: "IBM Plex Sans", size: 10pt)
#lorem(8)
#place(top + left, text(size: 12pt)[over the line])
#place(top + left, dx: 100mm, dy: 30mm, box(width: 60mm)[far over the edge])
#place(bottom + left, text(size: 5pt)[small])"""
    found = list(faults_of_pages(_compiler().compile(page, format="pdf")))
    assert any("over the line" in fault and " on " in fault for fault in found)
    assert any("leaves the page" in fault for fault in found)
    assert any("'small' is set in 5.00 pt" in fault for fault in found)
    assert any("letters" in fault for fault in found)


@pytest.mark.parametrize("seed", [3, 17])
def test_random_jobs_print_clean(seed: int) -> None:
    assert not (faults(tiled(random_job(seed), seed), "letter") or [])


def test_parts_are_numbered_as_the_cuts_set_them_free() -> None:
    sheet = Sheet.model_validate(
        {
            "id": "S1",
            "stock": "b",
            "size": [900.0, 1500.0],
            "source": "new",
            "cuts": [
                {"of": "S1", "along": "x", "at": 600.0, "gives": ["S1a", "S1b"]},
                {"of": "S1b", "along": "y", "at": 300.0, "gives": ["S1ba", "S1bb"]},
                {"of": "S1a", "along": "y", "at": 400.0, "gives": ["S1aa", "S1ab"]},
            ],
            "parts": [
                {"id": "S1aa", "at": [0, 0], "size": [400.0, 600.0], "piece": "PW1-1"},
                {"id": "S1ab", "at": [400.0, 0], "size": [500.0, 600.0]},
                {"id": "S1ba", "at": [0, 600.0], "size": [300.0, 900.0], "piece": "PW1-2"},
                {"id": "S1bb", "at": [300.0, 600.0], "size": [600.0, 900.0], "keep": True},
            ],
        }
    )
    assert part_numbers(sheet) == {"S1ba": 1, "S1bb": 2, "S1aa": 3}
    held = parts_within(sheet)
    assert (held["S1"], held["S1a"], held["S1b"]) == ((1, 2, 3), (3,), (1, 2))


def test_a_ticket_tells_every_cut_by_the_numbers_of_its_parts() -> None:
    plan = plan_of("tub-bathroom")
    for sheet, ticket in zip(plan.sheets, tickets(plan), strict=True):
        numbers = set(part_numbers(sheet).values())
        assert numbers == set(range(1, len(numbers) + 1))
        assert [row[0] for row in ticket["cuts"]] == [f"({n})" for n in range(1, len(sheet.cuts) + 1)]
        named = "+".join(side for row in ticket["cuts"] for side in row[2].split(" | ")).split("+")
        told = {int(number) for number in named if number != "waste"}
        assert told == numbers


def test_narrow_surfaces_share_pages_and_none_stands_on_half_a_page() -> None:
    assert two_to_a_page({"a": (900, 2000), "b": (800, 2000), "c": (3000, 2000)}) == {"a", "b"}
    assert two_to_a_page({"a": (900, 2000), "b": (800, 2000), "c": (1500, 2000)}) == {"a", "b"}
    assert two_to_a_page({"a": (900, 2000)}) == frozenset()
    blocks = [
        Block(kind="k", data={"n": number}, height=100.0, half=half)
        for number, half in enumerate((True, False, True, False, False))
    ]
    rows = [[block["n"] for block in row] for row in in_rows(blocks)]
    assert rows == [[0, 2], [1], [3], [4]]
    assert [row[0]["tall"] for row in in_rows([Block(kind="k", data={}, height=high) for high in (90, 900)])] == [
        False,
        True,
    ]


def test_columns_are_about_as_high_as_each_other_and_keep_their_order() -> None:
    (columns,) = in_columns(list("abcdefg"), [5.0] * 7, 3)
    assert columns == [["a", "b", "c"], ["d", "e", "f"], ["g"]] and in_columns([], [], 3) == []
    rows = in_columns(list(range(20)), [30.0] * 20, 2, most=100.0)
    assert [len(column) for row in rows for column in row] == [3, 3, 3, 3, 3, 3, 1, 1]
    assert beside_each_other("abc", [100.0, 80.0, 50.0], 4.0) == [["a", "b"], ["c"]]


def test_the_pack_goes_with_an_office_pack_and_says_so() -> None:
    plan = plan_of("tub-bathroom")
    cover = pypdf.PdfReader(io.BytesIO(print_pack(pack_data(plan), "letter"))).pages[0].extract_text()
    assert "office pack" in cover

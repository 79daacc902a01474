"""The story pole strips, measured in the PDF: the check length and every mark are true to size."""

import io
import math
import re
from functools import cache
from pathlib import Path

import pypdf
import pytest
from pypdf.generic import ContentStream

from example_plans import plan_of
from firstcourse.papers.pages import Paper
from firstcourse.papers.papers import STORY_POLE_A4, STORY_POLE_LETTER, all_papers
from firstcourse.papers.pole_strip import (
    CHECK_PEN_PT,
    CHECK_TICKS,
    FIRST_X_MM,
    FOOT_MM,
    PAGE_MM,
    STRIP_TICKS,
    STRIPS,
    pole_strip,
    strip_data,
    strips_of,
)
from firstcourse.papers.poles import plan_poles
from firstcourse.plan import JobStamp, Plan, SurfaceKind
from firstcourse.units import TICKS_PER_MM, Tape

EXAMPLES = Path(__file__).parents[3] / "examples"
MM_PER_POINT = 25.4 / 72
TRUE_MM = 0.1

Matrix = tuple[float, float, float, float, float, float]
Line = tuple[float, tuple[float, float], tuple[float, float]]


@cache
def pages(tape: Tape, paper: Paper) -> list[list[Line]]:
    plan = plan_of("tub-bathroom")
    plan = plan.model_copy(update={"job": plan.job.model_copy(update={"tape": tape})})
    return [stroked(page) for page in pypdf.PdfReader(io.BytesIO(pole_strip(plan, paper))).pages]


def _times(one: Matrix, other: Matrix) -> Matrix:
    a, b, c, d, e, f = one
    p, q, r, s, t, u = other
    return a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s, e * p + f * r + t, e * q + f * s + u


def stroked(page: pypdf.PageObject) -> list[Line]:
    """Every straight line that a page strokes: its pen and its ends [pt], all transformations applied."""
    now: Matrix = (1, 0, 0, 1, 0, 0)
    pen = 1.0
    stack: list[tuple[Matrix, float]] = []
    points: list[tuple[float, float]] = []
    found: list[Line] = []
    for operands, operator in ContentStream(page.get_contents(), page.pdf).operations:
        if operator == b"q":
            stack.append((now, pen))
        elif operator == b"Q":
            now, pen = stack.pop()
        elif operator == b"cm":
            now = _times(tuple(float(value) for value in operands), now)  # type: ignore[arg-type]
        elif operator == b"w":
            pen = float(operands[0])
        elif operator == b"m":
            points = [(float(operands[0]), float(operands[1]))]
        elif operator == b"l":
            points.append((float(operands[0]), float(operands[1])))
        elif operator == b"S" and len(points) == 2:
            ends = [(now[0] * x + now[2] * y + now[4], now[1] * x + now[3] * y + now[5]) for x, y in points]
            scale = math.sqrt(abs(now[0] * now[3] - now[1] * now[2]))
            found.append((pen * scale, ends[0], ends[1]))
    return found


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("tape", list(Tape))
def test_the_check_length_is_true_on_every_page(tape: Tape, paper: Paper) -> None:
    assert pages(tape, paper)
    wanted = {Tape.INCH: 254.0, Tape.MM: 250.0}[tape]
    assert CHECK_TICKS[tape] == round(wanted * TICKS_PER_MM)
    for lines in pages(tape, paper):
        checks = [math.dist(a, b) * MM_PER_POINT for pen, a, b in lines if abs(pen - CHECK_PEN_PT) < 1e-3]
        assert len(checks) == 1
        assert checks[0] == pytest.approx(wanted, abs=TRUE_MM)


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("tape", list(Tape))
def test_marks_lie_true_to_size_from_strip_to_strip(tape: Tape, paper: Paper) -> None:
    pole = plan_poles(plan_of("tub-bathroom"))[0]
    width = (PAGE_MM[paper][0] - FIRST_X_MM - 6.5) / STRIPS
    reached: set[float] = set()
    # The first pole fills strips from left to right, page by page; its marks start at each strip's left edge.
    for number, strip in enumerate(strips_of(pole, STRIP_TICKS[paper][tape])):
        left = FIRST_X_MM + number % STRIPS * width
        reached |= {
            round(a[1] * MM_PER_POINT - FOOT_MM + strip.start / TICKS_PER_MM, 2)
            for pen, a, b in pages(tape, paper)[number // STRIPS]
            if pen > 0.45
            and abs(a[0] * MM_PER_POINT - left) < 0.01
            and abs(a[1] - b[1]) < 0.01
            and math.dist(a, b) * MM_PER_POINT < 20
        }
    wanted = sorted({mark.at / TICKS_PER_MM for mark in pole.marks})
    assert all(min(abs(at - one) for one in reached) < TRUE_MM for at in wanted)
    assert all(min(abs(at - one) for one in wanted) < TRUE_MM for at in reached)


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("name", ["tub-bathroom", "tiled-shower"])
def test_everything_lies_on_the_page_and_no_text_on_another(name: str, paper: Paper) -> None:
    width, height = PAGE_MM[paper]
    for page in strip_data(plan_of(name), paper)["pages"]:
        for x0, y0, x1, y1, _ in page["lines"]:
            assert min(x0, x1) > 6 and max(x0, x1) < width - 6
            assert min(y0, y1) > 6.5 and max(y0, y1) < height - 6.5
        level = [text for text in page["texts"] if not text["up"]]
        for index, one in enumerate(level):
            assert one["x"] + len(one["text"]) * one["size"] * 0.4 < width
            for other in level[index + 1 :]:
                # Figures and capitals take 0.7 of the type's size.
                apart = abs(one["y"] - other["y"]) >= 0.35 * (one["size"] + other["size"])
                assert apart or abs(one["x"] - other["x"]) > 30


@pytest.mark.parametrize("paper", ["letter", "a4"])
@pytest.mark.parametrize("name", ["tub-bathroom", "tiled-shower"])
def test_every_figure_is_four_millimetres_high(name: str, paper: Paper) -> None:
    cap_height = 0.698
    figure = re.compile(r"(\d+' )?[\d/-]+\"")
    for page in strip_data(plan_of(name), paper)["pages"]:
        sizes = [text["size"] for text in page["texts"] if figure.fullmatch(text["text"])]
        assert sizes and min(sizes) * cap_height > 3.85
        assert max(sizes) * cap_height >= 4.0


def test_walls_whose_courses_lie_alike_share_one_pole() -> None:
    plan = plan_of("tub-bathroom")
    first = plan_poles(plan)[0]
    assert first.title == "hall bath: walls A-B, B-C and D-A, up"
    names = [mark.name for mark in first.marks]
    assert "wall A-B: niche, lower edge" in names and "wall D-A: valve, centre" in names
    assert names.count("course 5") == 1
    pages_of = {
        name: len(strip_data(plan_of(name), "letter")["pages"]) for name in ("tub-bathroom", "tiled-shower")
    }
    assert max(pages_of.values()) <= 12


def test_walls_come_first_and_strips_are_written_for_tile_only() -> None:
    plan = plan_of("tub-bathroom")
    names = [paper.name for paper in all_papers(plan, poles=True)]
    assert {STORY_POLE_LETTER, STORY_POLE_A4} <= set(names)
    kinds = {surface.id: surface.kind for surface in plan.surfaces}
    order = [(kinds[pole.surfaces[0]] is not SurfaceKind.WALL, pole.way != "up") for pole in plan_poles(plan)]
    assert order[:2] == [(False, False), (False, True)] and [wall for wall, _ in order] == sorted(
        w for w, _ in order
    )
    empty = Plan(job=JobStamp(name="empty", digest="0" * 64, date="2026-11-25"))
    assert not {STORY_POLE_LETTER, STORY_POLE_A4} & {paper.name for paper in all_papers(empty, poles=True)}

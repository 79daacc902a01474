"""Print the site packs of random jobs and look at every page: nothing overlaps, leaves the page or is too small.

    python benchmarks/random_papers.py --seed 1 --count 200

Jobs are those of `random_rooms.py --tiled`, planned at effort 0. Of each plan every drawing that gets a file of
its own is checked in its model, box by box, and the printed pages by where their letters stand. A job that ends
in an error of ours is counted as a fault and the run goes on. The exit code is 1 where anything is wrong.
"""

import argparse
import io
import re
import sys
import time
import traceback
from collections.abc import Iterator
from typing import Any

import pypdf
from pypdf.generic import NameObject, StreamObject
from random_rooms import random_job
from random_tiles import tiled

from firstcourse.drawings import Drawing, draw_heights, draw_surface, draw_tiling
from firstcourse.drawings.face import text_width
from firstcourse.drawings.model import LEAST_TEXT_MM
from firstcourse.drawings.placing import meeting
from firstcourse.drawings.svg import svg_size
from firstcourse.errors import JobError, PlanRefusedError
from firstcourse.job import read_job_text
from firstcourse.papers.blocks import HIGH_MM, WIDE_MM
from firstcourse.papers.pages import Paper
from firstcourse.papers.site_pack import pack_data, print_pack
from firstcourse.plan import Plan
from firstcourse.steps import plan_job

LEAST_PT = 7.0
"""No letter is printed smaller [pt]."""
LEAST_LETTERS = 120
"""A page with fewer letters on it is all but empty."""
_SAME_PT, _TOUCH_PT, _KERNED = 0.6, 0.8, 0.01
"""Taken off a run of letters before it may meet another: across its line, along it, and of its length."""
_LETTERS = re.compile(rb"(\nBT .*?\nET\n)", re.DOTALL)
_PLACES = re.compile(rb"^(?:q(?: [-\d.]+){6} cm|(?:[-\d.]+ ){6}cm|[qQ])\b", re.MULTILINE)
_NOTHING = re.compile(rb"q(?: [-\d. ]+ cm)?\nQ\n")
"""Letters in a page's content; what places them; places at which there are none."""


def drawings(plan: Plan) -> Iterator[Drawing]:
    """Every drawing that gets a file of its own; all others are seen on their pages."""
    for surface in plan.surfaces:
        if surface.boarded:
            yield draw_surface(plan, surface)
        if surface.tiled:
            yield draw_tiling(plan, surface)
        if surface.heights:
            yield draw_heights(plan, surface)


def faults_of_drawings(plan: Plan) -> Iterator[str]:
    """Texts that meet or are too small, and drawings that are larger than a page."""
    for drawing in drawings(plan):
        for one, other in meeting([text.box for text in drawing.texts]):
            a, b = drawing.texts[one].text, drawing.texts[other].text
            yield f"{drawing.title}, 1:{drawing.scale}: '{a}' on '{b}'"
        yield from (
            f"{drawing.title}: '{text.text}' is set {text.size:.2f} mm high"
            for text in drawing.texts
            if text.size < LEAST_TEXT_MM
        )
        wide, high = svg_size(drawing)
        if wide > WIDE_MM or high > HIGH_MM:
            yield f"{drawing.title}: {wide:.0f} × {high:.0f} mm on paper"


def faults_of_pages(pdf: bytes) -> Iterator[str]:
    """What is printed off the page, too small, on other letters, or on a page that is all but empty."""
    reader = pypdf.PdfReader(io.BytesIO(pdf))
    for number, page in enumerate(reader.pages, start=1):
        found = list(_printed(page))
        letters = sum(len(text) for text, *_ in found)
        if letters < LEAST_LETTERS:
            yield f"page {number}: {letters} letters"
        width, height = float(page.mediabox.width), float(page.mediabox.height)
        for text, size, box in found:
            if size < LEAST_PT - 0.01:
                yield f"page {number}: '{text}' is set in {size:.2f} pt"
            if box[0] < 0 or box[1] < 0 or box[2] > width or box[3] > height:
                yield f"page {number}: '{text}' leaves the page"
        for one, other in meeting([_shrunk(box) for *_, box in found]):
            yield f"page {number}: '{found[one][0]}' on '{found[other][0]}'"


def _shrunk(box: tuple[float, ...]) -> tuple[float, float, float, float]:
    # Kerning is not measured, which shortens a long run by more, and neighbours on a line touch.
    left, lower, right, upper = box
    kerned = _TOUCH_PT + _KERNED * max(right - left, upper - lower)
    if right - left >= upper - lower:
        return left + _TOUCH_PT, lower + _SAME_PT, right - kerned, upper - _SAME_PT
    return left + _SAME_PT, lower + _TOUCH_PT, right - _SAME_PT, upper - kerned


def _printed(page: Any) -> list[tuple[str, float, tuple[float, float, float, float]]]:
    """Runs of letters with their size and the box from their line of writing to the height of capitals [pt]."""
    found: list[tuple[str, float, tuple[float, float, float, float]]] = []

    def visit(text: str, cm: list[float], tm: list[float], font: Any, size: float) -> None:
        run = text.strip()
        if not run:
            return
        a, b, c, d, e, f = _times(tm, cm)
        bold = "SemiBold" in str((font or {}).get("/BaseFont", ""))
        length = text_width(run, size, bold=bold)
        corners = [(0.0, 0.0), (length, 0.0), (0.0, 0.7 * size), (length, 0.7 * size)]
        xs = [a * x + c * y + e for x, y in corners]
        ys = [b * x + d * y + f for x, y in corners]
        found.append((run, size * (c * c + d * d) ** 0.5, (min(xs), min(ys), max(xs), max(ys))))

    _without_lines(page)
    page.extract_text(visitor_text=visit)
    return found


def _without_lines(page: Any) -> None:
    """Take every drawn line off a page: reading them takes far longer than reading all letters."""
    parts = _LETTERS.split(page.get_contents().get_data())
    placed = [
        part if index % 2 else b"".join(found + b"\n" for found in _PLACES.findall(part))
        for index, part in enumerate(parts)
    ]
    stream = StreamObject()
    stream.set_data(_NOTHING.sub(b"", b"".join(placed)))
    page[NameObject("/Contents")] = stream


def _times(m: list[float], n: list[float]) -> tuple[float, float, float, float, float, float]:
    return (
        m[0] * n[0] + m[1] * n[2],
        m[0] * n[1] + m[1] * n[3],
        m[2] * n[0] + m[3] * n[2],
        m[2] * n[1] + m[3] * n[3],
        m[4] * n[0] + m[5] * n[2] + n[4],
        m[4] * n[1] + m[5] * n[3] + n[5],
    )


def faults(document: str, paper: Paper) -> list[str] | None:
    """All that is wrong with a job's drawings and printed pages; nothing for a job that has no plan.

    Whether a random job is planned at all is what `random_rooms.py` looks at.
    """
    try:
        plan = plan_job(read_job_text(document), effort=0).plan
    except (JobError, PlanRefusedError):
        return None
    pdf = print_pack(pack_data(plan), paper)
    return [*faults_of_drawings(plan), *faults_of_pages(pdf)]


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--count", type=int, default=200)
    options = parser.parse_args()
    started, planned, wrong = time.perf_counter(), 0, 0
    for number in range(options.count):
        seed = options.seed + number
        papers: tuple[Paper, ...] = ("letter", "a4")
        try:
            found = faults(tiled(random_job(seed), seed), papers[number % 2])
        except Exception:
            found = [traceback.format_exc(limit=-3)]
        if number % 20 == 19:
            print(f"{number + 1} jobs, {time.perf_counter() - started:.0f} s", file=sys.stderr, flush=True)
        if found is None:
            continue
        planned += 1
        wrong += bool(found)
        for fault in found[:6]:
            print(f"seed {seed}: {fault}", flush=True)
        if len(found) > 6:
            print(f"seed {seed}: and {len(found) - 6} more", flush=True)
    print(f"{planned} of {options.count} jobs planned, {wrong} with faults, {time.perf_counter() - started:.0f} s")
    return int(wrong > 0)


if __name__ == "__main__":
    sys.exit(main())

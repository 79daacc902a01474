"""The cover bore the job's name alone: no address, nobody to call, no days, nobody who does the work."""

import io
import re

import pypdf
import pytest

from firstcourse.drawings.face import advances
from firstcourse.errors import FirstcourseError
from firstcourse.job import read_job_text
from firstcourse.job.fields import PRINTED_PATTERN
from firstcourse.papers.site_pack import site_pack
from firstcourse.steps import plan_job

JOB = """
name: cover
date: 2026-11-25
site: {client: M. Example, address: 12 Example Street, phone: 555 0100, starts: 2026-12-07}
rooms:
  - name: room
    corners: [A, B, C, D]
    sides: {A-B: 40 in, B-C: 50 in, C-D: 40 in, D-A: 50 in}
    diagonals: {A-C: 64 in}
    height: 8 ft
    floor: {framing: {parallel_to: A-B, spacing: 16 in, first: 8 in}}
"""


def test_what_is_told_is_printed_and_the_rest_is_a_blank_to_fill() -> None:
    plan = plan_job(read_job_text(JOB), effort=0).plan
    site = plan.job.site
    assert (site.client, site.address, site.starts) == ("M. Example", "12 Example Street", "2026-12-07")
    assert (site.setter, site.ends) == ("", "")
    cover = pypdf.PdfReader(io.BytesIO(site_pack(plan, "letter"))).pages[0].extract_text()
    for wanted in ("M. Example", "12 Example Street", "555 0100", "2026-12-07", "Setter", "Ends"):
        assert wanted in cover


@pytest.mark.parametrize(
    ("old", "new", "field"),
    [
        ("12 Example Street", "\u4f8b", "address"),
        ("rooms:", "rules: [{rule: boards.piece.min, value: 5 in, reason: \u4f8b\u4f8b\u4f8b}]\nrooms:", "reason"),
    ],
)
def test_letters_that_the_papers_cannot_print_are_refused(old: str, new: str, field: str) -> None:
    with pytest.raises(FirstcourseError, match=rf"(?s){field}.*Latin script"):
        read_job_text(JOB.replace(old, new))


def test_the_face_has_every_letter_that_is_let_through() -> None:
    let_through = {code for code in range(0x20, 0x2100) if re.fullmatch(PRINTED_PATTERN, chr(code))}
    assert len(let_through) > 300
    for bold in (False, True):
        assert let_through <= set(advances(bold=bold)[0])

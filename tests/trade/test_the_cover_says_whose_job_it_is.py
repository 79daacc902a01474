"""The cover bore the job's name alone: no address, nobody to call, no days, nobody who does the work."""

import io

import pypdf
import pytest

from firstcourse.documents.site_pack import site_pack
from firstcourse.errors import FirstcourseError
from firstcourse.job import read_job_text
from firstcourse.planning import plan_job

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


def test_letters_that_the_papers_cannot_print_are_refused() -> None:
    with pytest.raises(FirstcourseError, match="address"):
        read_job_text(JOB.replace("12 Example Street", "\u4f8b"))

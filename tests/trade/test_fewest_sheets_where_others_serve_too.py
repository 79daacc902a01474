"""Sheets found by a search of one kind alone were called the fewest, though others served the same boards.

Three large sheets at 56 were said to be the least that could be paid; the small ones at 36 had not been looked at.
"""

import json

from firstcourse.job import read_job_text
from firstcourse.steps import plan_job
from firstcourse.verify.fewest import Offer, proves, proves_cost
from firstcourse.verify.reading import read_document

JOB = """\
name: Two sheets
date: 2026-11-25
tape: mm
stock:
  - {id: small, size: [900 mm, 1500 mm], thickness: 12 mm, price: 36}
  - {id: large, size: [1200 mm, 2400 mm], thickness: 12 mm, price: 56}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 1460 mm, B-C: 1400 mm, C-D: 1460 mm, D-A: 1400 mm}
    diagonals: {A-C: 2023 mm, B-D: 2023 mm}
    height: 2390 mm
    floor: {framing: {parallel_to: A-B, spacing: 400 mm, first: 200 mm}}
    walls:
      - {wall: A-B, framing: {spacing: 400 mm, first: 300 mm}}
"""


def test_what_is_called_the_least_is_the_least_of_all_sheets() -> None:
    plan = plan_job(read_job_text(JOB), effort=0).plan
    assert set(plan.counts) == {"small", "large"}
    document = read_document(json.loads(plan.model_dump_json(by_alias=True)))
    least = document.workings["bounds-cost@job"].comes_to
    assert least is not None and least < 168
    counts = {count.stock: count.lower_bound for count in document.counts}
    assert proves_cost(document, counts, round(100 * least)) and not proves_cost(document, counts, 16_800)


def test_what_spoils_a_sheet_counts_as_the_whole() -> None:
    sheet = [Offer((60, 36), 1)]
    large = [(31, 32)] * 3
    assert proves(large, sheet, [], 3) and not proves(large, sheet, [], 4)
    assert proves(large, sheet, [(31, 32)], 2) and not proves(large, sheet, [(31, 32)], 3)
    assert not proves([(30, 32)] * 2, sheet, [], 2)

"""A room a little askew had page after page of drawings, each of a board that tapers by a millimetre."""

from math import dist

import pytest

from firstcourse.job import read_job_text
from firstcourse.papers.ticket_pages import is_slight, second_cuts, slight_tapers
from firstcourse.plan import Plan
from firstcourse.steps import plan_job


def planned(askew_mm: int) -> Plan:
    text = f"""
name: askew
practice: us
date: 2026-11-25
tape: mm
stock: [{{id: board, size: [900 mm, 1500 mm], thickness: 6 mm}}]
rooms:
  - name: hall
    corners: [A, B, C, D]
    sides: {{A-B: 3000 mm, B-C: 2000 mm, C-D: {3000 - askew_mm} mm, D-A: 2000 mm}}
    diagonals: {{A-C: {(3000**2 + 2000**2) ** 0.5 - askew_mm * 0.4:.0f} mm}}
    height: 2400 mm
    floor: {{framing: {{parallel_to: A-B, spacing: 400 mm, first: 200 mm}}}}
"""
    return plan_job(read_job_text(text), effort=0).plan


@pytest.mark.parametrize("askew_mm", [3, 40])
def test_each_piece_that_is_cut_again_is_drawn_or_listed(askew_mm: int) -> None:
    plan = planned(askew_mm)
    again = {
        piece.id.removeprefix("P")
        for piece in plan.pieces
        if set(piece.outline) != {(0, 0), (piece.blank[0], 0), piece.blank, (0, piece.blank[1])}
    }
    listed = {row[0] for row in slight_tapers(plan)}
    drawn = {piece["id"] for row in second_cuts(plan) for piece in row}
    assert listed | drawn <= again and not listed & drawn
    pieces = {piece.id.removeprefix("P"): piece for piece in plan.pieces}
    for left_out in again - listed - drawn:
        width, height = pieces[left_out].blank
        corners = ((0, 0), (width, 0), (width, height), (0, height))
        assert all(min(dist(at, corner) for corner in corners) <= 640 for at in pieces[left_out].outline)
    assert listed if askew_mm == 3 else drawn, "nothing to show"


def test_lengths_listed_are_those_of_the_outline() -> None:
    plan = planned(3)
    pieces = {piece.id.removeprefix("P"): piece for piece in plan.pieces}
    for mark, across, up in slight_tapers(plan):
        piece = pieces[mark]
        assert is_slight(piece, plan.job.tape)
        for told, side in ((across, piece.blank[0]), (up, piece.blank[1])):
            for length in told.split(" | "):
                assert 0 <= side / 640 - float(length.removesuffix(" mm").replace(",", "")) <= 4.5

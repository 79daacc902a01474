"""Why a sliver stands where one does: none is free of it, one costs more elsewhere, or the job asks for it."""

from collections.abc import Iterator, Sequence

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.tiling.edges import extent, spacing
from firstcourse.tiling.model import RepeatCell, Start
from firstcourse.units import Tape, floor_to, format_length, ticks_from_mm, ticks_from_mm_floor, to_mm

_ASKEW_MM = 1.0
"""A side that leaves an axis by more than this runs askew [mm]."""


def sliver_findings(
    starts: Sequence[Start], cell: RepeatCell, where: str, given: bool, tape: Tape, rules: RuleSet
) -> Iterator[Finding]:
    """A note where the start that is used leaves a sliver, with the reason.

    Args:
        starts: The start that is used, then the alternatives, best first.
        cell: The repeat.
        where: The surface in words.
        given: Whether the job itself says where to start.
        tape: Tape of the job.
        rules: What a sliver is.
    """
    pick = starts[0]
    if not pick.sliver:
        return
    rule = rules.entry("tiling.start.least_cut")
    least = format_length(rules.ticks(rule.id), tape)
    share = rules.number("tiling.start.least_share")
    without = next((number for number, start in enumerate(starts) if not start.sliver), 0)
    if given:
        why, remedy = (
            "The start that the job gives asks for it.",
            "Leave out the start to have the best one found.",
        )
    elif without:
        why = f"The start without one, instead {without}, weighs worse in all: {starts[without].words}."
        remedy = "Give that start in the job if the other cuts matter less."
    elif _met_in_many_ways(cell, to_mm(rules.ticks(rule.id)), share):
        why = "The pattern meets its edges in many ways at once: every start leaves narrow cuts along some edge."
        remedy = "Hide them under trim, cabinet or door, or frame the field with a border of straight tiles."
    elif pick.exact:
        why = "Every start leaves one: the edges lie so that what a start gains at one, another loses."
        remedy = "Another joint, another size of tile or a moved opening would take it away; see the alternatives."
    else:
        why = "None of the starts tried is without one: what a start gains at one edge, another loses."
        remedy = "Another joint, another size of tile or a moved opening would take it away; see the alternatives."
    yield rule.finding(
        code="TIL-121",
        severity=Severity.NOTE,
        where=where,
        message=f"A cut{pick.poorest} is a sliver. {why}",
        measured=f"smallest cut {_smallest(pick, to_mm(rules.ticks(rule.id)), tape)}",
        limit=f"at least {least}, of a small tile {share:.0%} of it",
        remedy=remedy,
    )


def _smallest(pick: Start, least: float, tape: Tape) -> str:
    """The cut that falls short of the limit, so that what is measured never reads as if it reached it."""
    if pick.smallest_cut < least:
        return format_length(ticks_from_mm(pick.smallest_cut), tape)
    # An edge is judged by every course that it may meet: where it runs askew, narrower than any tile laid there.
    return format_length(floor_to(ticks_from_mm_floor(pick.narrowest), tape.graduation), tape)


def _met_in_many_ways(cell: RepeatCell, least: float, share: float) -> bool:
    """Whether an edge along an axis always meets tiles askew, or rows that lie closer together than a good cut."""
    for axis in (0, 1):
        step = spacing(cell, axis)
        if step is None or step < min(least, share * max(extent(piece.ring, axis) for piece in cell.pieces)):
            return True
    return any(
        abs(a[0] - b[0]) > _ASKEW_MM and abs(a[1] - b[1]) > _ASKEW_MM
        for piece in cell.pieces
        for a, b in zip(piece.ring, (*piece.ring[1:], piece.ring[0]), strict=True)
    )

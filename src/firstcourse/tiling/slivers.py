"""Why a sliver stands where one does: none is free of it, one costs more elsewhere, or the job asks for it."""

from collections.abc import Iterator, Sequence

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.tiling.edges import extent, spacing
from firstcourse.tiling.model import RepeatCell, Start
from firstcourse.tiling.words import cut_text
from firstcourse.units import Tape, format_length, ticks_from_mm_floor, to_mm

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
        more = starts[without].cut_tiles - pick.cut_tiles
        why = (
            f"The start without one, instead {without}, cuts {more} more tiles; up to "
            f"{rules.number('tiling.start.more_cuts'):g} more are taken to be rid of it."
        )
        remedy = "Give that start in the job if the other cuts matter less."
    elif _met_in_many_ways(cell, to_mm(rules.ticks(rule.id)), share):
        why = "The pattern meets its edges in many ways at once: every start leaves narrow cuts along some edge."
        remedy = "Hide them under trim, cabinet or door, or frame the field with a border of straight tiles."
    else:
        why = (
            f"Of {pick.num_laid} starts tried none is without one: what a start gains at one edge, another loses."
        )
        remedy = "Another joint, another size of tile or a moved opening would take it away; see the alternatives."
    smallest, sliver = (
        cut_text(ticks_from_mm_floor(width), tape) for width in (pick.smallest_cut, pick.narrowest)
    )
    yield rule.finding(
        code="TIL-121",
        severity=Severity.NOTE,
        where=where,
        message=f"A cut{pick.poorest} is a sliver. {why}",
        # Of small tiles beside large ones the smallest cut need be no sliver.
        measured=f"smallest cut {smallest}" if smallest == sliver else f"the sliver {sliver}",
        limit=f"at least {least}, of a small tile {share:.0%} of it",
        remedy=remedy,
    )


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

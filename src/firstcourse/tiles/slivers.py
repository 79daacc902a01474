"""Why a sliver stands where one does: none is free of it, one costs more elsewhere, or the job asks for it."""

from collections.abc import Iterator, Sequence

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.tiles.edges import extent, spacing
from firstcourse.tiles.model import RepeatCell, Start
from firstcourse.units import ticks_from_mm_floor, to_mm
from firstcourse.values import Ref, Word, just, least, length, measure

_ASKEW_MM = 1.0
"""A side that leaves an axis by more than this runs askew [mm]."""


def sliver_findings(
    starts: Sequence[Start], cell: RepeatCell, at: str, given: bool, rules: RuleSet
) -> Iterator[Finding]:
    """A note where the start that is used leaves a sliver, with the reason.

    Args:
        starts: The start that is used, then the alternatives, best first.
        cell: The repeat.
        at: Reference to the surface, or to the band across it.
        given: Whether the job itself says where to start.
        rules: What a sliver is.
    """
    pick = starts[0]
    if not pick.sliver:
        return
    rule = rules.entry("tiling.start.least_cut")
    share = rules.number("tiling.start.least_share")
    without = next((number for number, start in enumerate(starts) if not start.sliver), 0)
    if given:
        why = "given"
    elif without:
        why = "cuts_more"
    elif _met_in_many_ways(cell, to_mm(rules.ticks(rule.id)), share):
        why = "many_ways"
    else:
        why = "none_without"
    smallest, sliver = map(ticks_from_mm_floor, (pick.smallest_cut, pick.narrowest))
    yield rule.found(
        "TIL-121",
        Severity.NOTE,
        at,
        measured=length(sliver),
        limit=least(length(rules.ticks(rule.id))),
        remedies=(why,),
        why=Word(word=why),
        edge=Ref(ref=pick.poorest),
        named=bool(pick.poorest),
        # Of small tiles beside large ones the smallest cut need be no sliver.
        smallest=smallest == sliver,
        share=measure(100 * share, "%"),
        instead=without,
        more=starts[without].cut_tiles - pick.cut_tiles,
        most_more=int(rules.number("tiling.start.more_cuts")),
        tried=pick.num_laid,
    )


def thin_pieces(number: int, widest: int, at: str, rules: RuleSet) -> Finding:
    """That pieces are not set whose place a soft joint takes.

    Args:
        number: How many.
        widest: Of the joint that comes out [ticks].
        at: Reference to the surface.
        rules: For how much wider a joint may come out.
    """
    rule = rules.entry("tiling.start.joint_takes")
    return rule.found(
        "TIL-133",
        Severity.NOTE,
        at,
        measured=length(widest),
        limit=just(length(rules.ticks(rule.id))),
        remedies=("spread",),
        number=number,
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

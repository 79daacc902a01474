"""What speaks for a start and against it: of the one that is used by itself, of the others beside it."""

from collections.abc import Iterator

from firstcourse.plan import EdgeCut, StartPoint
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import Ref, Statement, Word, length, statement
from firstcourse.words import Speaker

_EVEN_SHARE = 0.02
"""Cuts that differ by less than this share of a tile look even."""
_TOLD = TICKS_PER_MM
"""Differences below this are not worth a word [ticks]."""
_CONTINUED = ("courses_below", "field_joints", "both_corners")


def start_reasons(speaker: Speaker, start: StartPoint, used: StartPoint) -> str:
    """What the papers say of a start.

    Args:
        speaker: Says it.
        start: The start.
        used: The one that is used; the same where it is that.
    """
    if start.why in _CONTINUED:
        return speaker.statement(statement("tiles-start_because", why=Word(word=start.why)))
    if start != used:
        return _beside(speaker, start, used)
    said = "; ".join(map(speaker.statement, _by_itself(start)))
    if start.why == "given":
        return speaker.text("tiles-start_given", said=said)
    if start.why == "best":
        return said
    return f"{said}; {speaker.statement(statement('tiles-start_because', why=Word(word=start.why)))}"


def _by_itself(start: StartPoint) -> Iterator[Statement]:
    """What speaks for a start by itself."""
    worst = "sliver" if start.sliver else "under_half" if start.under_half else "over_half"
    yield statement(
        "tiles-start_cuts",
        cuts=Word(word=worst if start.cut_tiles else "none"),
        named=bool(start.narrowest_at),
        at=Ref(ref=start.narrowest_at),
    )
    if start.cut_tiles and start.uneven is not None and start.uneven <= _EVEN_SHARE:
        yield statement("tiles-start_even")
    if start.wanted:
        yield statement("tiles-start_joints", number=start.on_joints, of=start.wanted)
    if start.unsure and not start.sliver:
        known = start.cut_tiles > 0 and start.sure_cut >= _TOLD
        yield statement(
            "tiles-start_sure",
            sure=Word(word="no" if start.may_sliver else "cut" if known else "yes"),
            cut=length(start.sure_cut),
        )


def _beside(speaker: Speaker, start: StartPoint, used: StartPoint) -> str:
    """What a start gives and takes beside the one that is used."""
    gains, losses = list(_better(start, used)), list(_better(used, start, turned=True))
    if gains and not losses and start.smallest_cut < used.smallest_cut:
        # A start is never told as all gain: what little it is worse by stands too.
        losses.append(statement("tiles-start_little"))
    told = []
    for code, reasons in (("for", gains), ("against", losses)):
        if reasons:
            said = ", ".join(map(speaker.statement, reasons))
            told.append(speaker.text(f"tiles-start_{code}", said=said))
    return "; ".join(told) or speaker.text("tiles-start_alike")


def _better(one: StartPoint, other: StartPoint, *, turned: bool = False) -> Iterator[Statement]:
    """What one start has over another; turned, in the words of what the other lacks."""

    def reason(code: str, **values: Ref | Word | int) -> Statement:
        return statement(f"tiles-start_{code}", turned=turned, **values)

    if one.cut_tiles < other.cut_tiles:
        yield reason("fewer", number=other.cut_tiles - one.cut_tiles)
    if one.smallest_cut > other.smallest_cut + _TOLD:
        yield reason("wider")
    if other.sliver and not one.sliver:
        yield reason("no_sliver")
    elif one.sliver == other.sliver and other.under_half and not one.under_half:
        yield reason("no_under_half")
    yield from _edge(one, other, turned=turned)
    if one.uneven is not None and other.uneven is not None and other.uneven - one.uneven > _EVEN_SHARE:
        yield reason("more_even")
    if one.on_joints > other.on_joints:
        yield reason("more_joints", number=one.on_joints - other.on_joints)
    if one.slack > other.slack + _TOLD:
        yield reason("slack")
    elif abs(one.slack - other.slack) <= _TOLD and one.sure_cut > other.sure_cut + _TOLD:
        yield reason("surer")


def _edge(one: StartPoint, other: StartPoint, *, turned: bool) -> Iterator[Statement]:
    """The side where most is won: told of one side alone, a start would seem to be all gain."""
    theirs = {edge.at: edge for edge in other.edges}
    rows = [
        (round(edge.weight * (edge.share - theirs[edge.at].share), 6), edge, theirs[edge.at])
        for edge in one.edges
        if edge.at in theirs and _differ(edge, theirs[edge.at])
    ]
    by, mine, their = max(rows, key=lambda row: row[0], default=(0.0, None, None))
    if mine is not None and their is not None and by > _EVEN_SHARE:
        none = mine.width is None or their.width is None
        yield statement(
            "tiles-start_edge", turned=turned, how=Word(word="none" if none else "wider"), at=Ref(ref=mine.at)
        )


def _differ(one: EdgeCut, other: EdgeCut) -> bool:
    if one.width is None or other.width is None:
        return one.width is not other.width
    return abs(one.width - other.width) > _TOLD

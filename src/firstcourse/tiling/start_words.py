"""What a start brings, and its words: what speaks for the pick, and what each of the others trades."""

from dataclasses import dataclass

from firstcourse.units import Tape, floor_to, format_length, one_or_more, ticks_from_mm_floor

_EVEN_SHARE = 0.02
"""Cuts that differ by less than this share of a tile look even."""
_TOLD_MM = 1.0
"""Differences below this are not worth a word [mm]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Along:
    """The narrowest cut along the edges of one name.

    Attributes:
        label: What the setter calls them.
        weight: How much a poor cut shows there.
        width: Of the cut; None where no tile is cut there [mm].
        share: The same as a share of the longest side of a tile; 1 where none is cut.
    """

    label: str
    weight: float
    width: float | None
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """What a start brings, as its words tell it.

    Attributes:
        cut_tiles: How many tiles are cut.
        smallest_cut: Least width of any cut tile, as laid [mm].
        sure_cut: Narrowest cut along an edge in the worst room that the survey allows [mm].
        slack: How far the room may differ before a sliver stands [mm].
        short: How far the poorest cut, as laid, falls short of what is wanted; 0 to 1.
        sliver: One of the cuts, as laid, is a sliver.
        may_sliver: One may stand there in a room that the survey allows.
        uneven: Greatest difference of cuts on opposite sides, share of a tile; None where nothing faces.
        where: The side of the narrowest sliver, else of the narrowest cut that is narrower than wanted, in words;
            empty where there is none.
        on_joints: Wanted lines that lie on joints.
        num_wanted: How many lines are wanted on joints.
        unsure: Whether the survey leaves the room any play.
        along: The narrowest cut along every edge that has a name, as laid.
    """

    cut_tiles: int
    smallest_cut: float
    sure_cut: float
    slack: float
    short: float
    sliver: bool
    may_sliver: bool
    uneven: float | None
    where: str
    on_joints: int
    num_wanted: int
    unsure: bool
    along: tuple[Along, ...]


def praise(facts: Facts, tape: Tape) -> str:
    """What speaks for a start by itself."""
    if facts.cut_tiles == 0:
        said = ["no tile is cut"]
    elif facts.short == 0:
        said = ["no cut along an edge is under half a tile"]
    elif not facts.sliver:
        said = [f"some cuts{facts.where} are under half a tile, none is a sliver"]
    else:
        said = [f"a cut{facts.where} is a sliver"]
    if facts.cut_tiles and facts.uneven is not None and facts.uneven <= _EVEN_SHARE:
        said.append("cuts on opposite sides are even")
    if facts.num_wanted:
        said.append(f"{facts.on_joints} of {facts.num_wanted} edges of niches and windows lie on joints")
    if facts.unsure and not facts.sliver:
        said.append(
            "within the survey's error a sliver may appear"
            if facts.may_sliver
            else f"holds for every room that the survey allows{_sure(facts, tape)}"
        )
    return "; ".join(said)


def _sure(facts: Facts, tape: Tape) -> str:
    if facts.cut_tiles == 0 or facts.sure_cut < _TOLD_MM:
        return ""
    least = floor_to(ticks_from_mm_floor(facts.sure_cut), tape.graduation)
    return f": no cut along an edge is under {format_length(least, tape)} in any of them"


def trade(facts: Facts, pick: Facts) -> str:
    """What a start gives and takes beside the pick."""
    gains: list[str] = []
    losses: list[str] = []
    fewer = pick.cut_tiles - facts.cut_tiles
    if fewer:
        (gains if fewer > 0 else losses).append(
            f"{abs(fewer)} {'fewer' if fewer > 0 else 'more'} {one_or_more(abs(fewer), 'tiles')} to cut"
        )
    if abs(facts.smallest_cut - pick.smallest_cut) > _TOLD_MM:
        wider = facts.smallest_cut > pick.smallest_cut
        (gains if wider else losses).append(f"the smallest cut is {'wider' if wider else 'narrower'}")
    if facts.sliver != pick.sliver:
        (losses if facts.sliver else gains).append("a sliver" if facts.sliver else "no sliver")
    elif (facts.short == 0) != (pick.short == 0):
        (gains if facts.short == 0 else losses).append(
            f"cuts {'all over' if facts.short == 0 else 'under'} half a tile"
        )
    for sign, told in ((1, gains), (-1, losses)):
        # The greatest change either way: told of one alone, a start would seem to be all gain.
        rows = [
            (round(sign * one.weight * (one.share - other.share), 6), _change(one, other))
            for one, other in zip(facts.along, pick.along, strict=True)
        ]
        by, word = max(((by, word) for by, word in rows if word), key=lambda row: row[0], default=(0.0, ""))
        if by > _EVEN_SHARE:
            told.append(word)
    if facts.uneven is not None and pick.uneven is not None and abs(facts.uneven - pick.uneven) > _EVEN_SHARE:
        (gains if facts.uneven < pick.uneven else losses).append(
            f"cuts on opposite sides are {'more' if facts.uneven < pick.uneven else 'less'} even"
        )
    more = facts.on_joints - pick.on_joints
    if more:
        (gains if more > 0 else losses).append(
            f"{abs(more)} {'more' if more > 0 else 'fewer'} {one_or_more(abs(more), 'edges')} of niches and "
            "windows on joints"
        )
    if abs(facts.slack - pick.slack) > _TOLD_MM:
        (gains if facts.slack > pick.slack else losses).append(
            f"stands {'more' if facts.slack > pick.slack else 'less'} error of the room"
        )
    elif abs(facts.sure_cut - pick.sure_cut) > _TOLD_MM:
        wider = facts.sure_cut > pick.sure_cut
        (gains if wider else losses).append(f"{'wider' if wider else 'narrower'} cuts if the survey is off")
    if gains and not losses and facts.smallest_cut < pick.smallest_cut:
        # A start is never told as all gain: what little it is worse by stands too.
        losses.append("the smallest cut is a little narrower")
    said = [f"for it: {', '.join(gains)}"] if gains else []
    said += [f"against it: {', '.join(losses)}"] if losses else []
    return "; ".join(said) or "much like the pick, with the joints elsewhere"


def _change(one: Along, pick: Along) -> str:
    """What becomes of the cuts along an edge, beside the pick; empty where nothing to speak of."""
    if one.width is None or pick.width is None:
        return f"no cuts at {one.label}" if one.width is None else f"cuts at {one.label}"
    if abs(one.width - pick.width) <= _TOLD_MM:
        return ""
    return f"cuts at {one.label} {'wider' if one.width > pick.width else 'narrower'}"

"""Readings that cannot be: longer than the way round over other readings, or far from where all others put them.

A misreading by a hand's breadth is a finding, and the room is drawn all the same. Beyond that the adjustment would
spread an error over corners that are right, so such a reading is refused. All lengths here are millimetres.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from firstcourse.errors import InputValueError
from firstcourse.survey.network import Adjustment, adjust
from firstcourse.survey.shapes import Reading
from firstcourse.units import Tape, format_length, ticks_from_mm

_OPEN_SHARE, _OPEN_SIGMAS = 0.025, 12.0
"""Corners on one line seldom close to the mark: so much shorter may a way round be before it is an error."""
_FAR_SHARE = 0.25
"""Of the length that all other readings give; a misreading by a foot or by a tape's case is less on most sides."""
_DOUBTED_SHARE = 0.15
"""First estimates of an error are rough where it is large: from this share on the others are adjusted alone."""


_SETTLED_MM = 0.005
"""What may be left of the pull at a corner once steps have become too small to count."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Way:
    """A reading with a shorter way round between its corners, as the readings it runs along."""

    reading: Reading
    along: tuple[Reading, ...]

    @property
    def length_mm(self) -> float:
        return sum(one.length_mm for one in self.along)


def refuse_contradicted(
    readings: Sequence[Reading], sides: Sequence[str], tape: Tape, *, open_share: float = _OPEN_SHARE
) -> None:
    """Refuse a reading longer than a way round between its two corners along others.

    Args:
        readings: Of one room.
        sides: Which of them are its sides.
        tape: Tape of the job.
        open_share: By how much of the way round a reading may be longer.

    Raises:
        InputValueError: Naming the reading which, left out, leaves the others in keeping; or those that do.
    """
    first = _shorter(readings, open_share)
    if first is None:
        return
    doubted = (first.reading, *first.along)
    wrong = [
        reading
        for reading in doubted
        if _shorter([one for one in readings if one is not reading], open_share) is None
    ] or list(doubted)
    round_ = " and ".join(f"{one.name} ({_said(one.length_mm, tape)})" for one in first.along)
    raise InputValueError(
        f"{first.reading.name} ({_said(first.reading.length_mm, tape)}) is longer than the way round by {round_}, "
        f"{_said(first.length_mm, tape)} in all: {_measure_again(wrong, tape)}",
        field=_field(wrong, sides),
    )


def refuse_far_off(
    corners: Sequence[str],
    readings: Sequence[Reading],
    adjustment: Adjustment,
    sides: Sequence[str],
    tape: Tape,
    *,
    limit: float,
) -> None:
    """Refuse a reading that differs from what all others give by more than a quarter of that.

    Args:
        corners: Names, clockwise.
        readings: Of the room.
        adjustment: Of all of them.
        sides: Which of them are its sides.
        tape: Tape of the job.
        limit: Standardised residual from which a reading counts as likely wrong.

    Raises:
        InputValueError: Naming the reading, or those of which one must be so far off.
    """
    doubted = [
        found.reading
        for found in adjustment.residuals
        if found.standardised is not None and found.standardised >= limit and found.error_mm is not None
    ]
    rough = [abs(found.error_mm or 0.0) / found.reading.length_mm for found in adjustment.suspects]
    if max(rough, default=0.0) < _DOUBTED_SHARE:
        return
    others = {reading.name: _given_by_others(reading, corners, readings, limit) for reading in doubted}
    alone = [(reading, others[reading.name]) for reading in doubted if others[reading.name] > 0]
    if not alone or any(abs(reading.length_mm - given) <= _FAR_SHARE * given for reading, given in alone):
        return
    told = " or ".join(
        f"{reading.name} at {_said(given, tape)}, not {_said(reading.length_mm, tape)}" for reading, given in alone
    )
    wrong = [reading for reading, _ in alone]
    raise InputValueError(
        f"the other readings put {told}: {_measure_again(wrong, tape)}", field=_field(wrong, sides)
    )


def refuse_unsettled(
    readings: Sequence[Reading], adjustment: Adjustment, sides: Sequence[str], tape: Tape
) -> None:
    """Refuse readings for which no best room was found: flat corners that they all but contradict.

    Where the squares of all changes sum up to the least, what pulls at each corner is nothing together.

    Args:
        readings: Of one room.
        adjustment: Of all of them.
        sides: Which of them are its sides.
        tape: Tape of the job.

    Raises:
        InputValueError: Naming the reading that is longer than a way round, or else the one that is off the most.
    """
    at = adjustment.corners_mm
    pull = dict.fromkeys(at, (0.0, 0.0))
    for found in adjustment.residuals:
        one, other = at[found.reading.one], at[found.reading.other]
        share = found.residual_mm / max(math.dist(one, other), 1.0)
        by = share * (other[0] - one[0]), share * (other[1] - one[1])
        for name, sign in ((found.reading.one, -1), (found.reading.other, 1)):
            pull[name] = pull[name][0] + sign * by[0], pull[name][1] + sign * by[1]
    if max(math.hypot(*by) for by in pull.values()) <= _SETTLED_MM:
        return
    refuse_contradicted(readings, sides, tape, open_share=0.0)
    worst = max(adjustment.residuals, key=lambda found: abs(found.residual_mm)).reading
    raise InputValueError(
        f"the readings do not settle on one room: {_measure_again([worst], tape)}", field=_field([worst], sides)
    )


def _given_by_others(reading: Reading, corners: Sequence[str], readings: Sequence[Reading], limit: float) -> float:
    """The length that all other readings give a distance, 0 where they do not fix it or do not agree [mm]."""
    try:
        done = adjust(corners, [one for one in readings if one is not reading], limit=limit)
    except InputValueError:
        return 0.0
    return 0.0 if done.suspects else math.dist(*(done.corners_mm[name] for name in (reading.one, reading.other)))


def _shorter(readings: Sequence[Reading], open_share: float) -> _Way | None:
    """The reading that is longest compared with the shortest way round; None where each is the shortest way."""
    ways = (_way_round(reading, readings) for reading in readings)
    longer = [way for way in ways if way is not None and way.reading.length_mm > _allowed(way, open_share)]
    return max(longer, key=lambda way: round(way.reading.length_mm / way.length_mm, 9), default=None)


def _allowed(way: _Way, open_share: float) -> float:
    return way.length_mm + max(open_share * way.length_mm, _OPEN_SIGMAS * way.reading.sigma_mm)


def _way_round(reading: Reading, readings: Sequence[Reading]) -> _Way | None:
    """The shortest way between a reading's corners along others (Dijkstra)."""
    best: dict[str, tuple[float, tuple[Reading, ...]]] = {reading.one: (0.0, ())}
    done: set[str] = set()
    while open_ := [name for name in best if name not in done]:
        here = min(open_, key=lambda name: (best[name][0], name))
        done.add(here)
        if here == reading.other:
            return _Way(reading=reading, along=best[here][1])
        for one in readings:
            if one is reading or here not in (one.one, one.other):
                continue
            there = one.other if here == one.one else one.one
            far = best[here][0] + one.length_mm
            if there not in best or far < best[there][0]:
                best[there] = far, (*best[here][1], one)
    return None


def _measure_again(wrong: Sequence[Reading], tape: Tape) -> str:
    if len(wrong) == 1:
        taped = _said(wrong[0].length_mm, tape)
        return f"{wrong[0].name}, taped {taped}, cannot be; check its unit and measure it again"
    return f"one of {', '.join(one.name for one in wrong)} is wrong; check their units and measure them again"


def _said(length_mm: float, tape: Tape) -> str:
    return format_length(ticks_from_mm(length_mm), tape)


def _field(wrong: Sequence[Reading], sides: Sequence[str]) -> str:
    first = wrong[0].name
    return f"{'sides' if first in sides else 'diagonals'}.{first}"

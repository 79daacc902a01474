"""A room while it is being taped: its sketch, how sure it is so far, and which distance to tape next.

It begins with a walk round the room, clockwise: how each corner turns and about how far it is to the next. The
walk only tells which way the room goes; where the corners are is what the tape says, as soon as that fixes them.
All lengths here are millimetres.
"""

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from firstcourse.errors import InputValueError
from firstcourse.survey.advice import UnfixedError, fitted, unread_in_sight
from firstcourse.survey.network import Adjustment, Residual, adjust, surest_while_loose
from firstcourse.survey.shapes import Reading
from firstcourse.survey.sight import XY, is_room

Reason = Literal["side", "again", "fixes", "settles", "surer", "checks", "contradicts"]

_FULL_TURN = 360
_PACED_SHARE = 0.15
"""How far off a distance may well be that was only paced or guessed, as a share of it; a house assumption."""
_TAPED_SHARE = 0.003
"""The same for a side that was taped, in a room whose corners are only nearly square; a house assumption."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NextReading:
    """The distance to tape next, and why.

    Attributes:
        pair: Two corners, such as `A-C`.
        why: `side`, a side not taped yet; `again`, likely misread; `fixes`, the room can still lean without it;
            `settles`, two rooms have these readings; `surer`, a corner is not sure enough yet; `checks`, nothing
            checks some corners; `contradicts`, no room has these readings and this came last.
        error_mm: For `again`: as taped, less what all else says, if it alone is wrong [mm]; else None.
        among: For `again`: all readings that explain the misfit as well, this one among them.
    """

    pair: str
    why: Reason
    error_mm: float | None = None
    among: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Taping:
    """A room as far as it is taped.

    Attributes:
        corners_mm: Where the corners are, or are thought to be [mm].
        fixed: Whether the readings alone say where they are.
        uncertainty_mm: Corner to the longer half-axis of its 95 % ellipse [mm]; empty until it is fixed.
        residuals: What the adjustment makes of each reading; empty until it is fixed.
        next: What to tape next; None where the room is sure enough to plan, or nothing can be taped any more.
        sure: Whether it is sure enough to plan.
    """

    corners_mm: Mapping[str, XY]
    fixed: bool
    uncertainty_mm: Mapping[str, float]
    residuals: tuple[Residual, ...]
    next: NextReading | None
    sure: bool


def walked_outline(turns: Sequence[int], lengths_mm: Sequence[float], taped: Collection[int] = ()) -> list[XY]:
    """The outline somebody walked, closed by changing each length as little as its doubt allows.

    Args:
        turns: Degrees to the right at the end of each side, in the order walked; to the left below 0.
        lengths_mm: About how long each side is, or as taped [mm].
        taped: Indices of the sides that were taped; these give way last.

    Returns:
        The corners where the sides begin, clockwise, the first at the origin [mm].

    Raises:
        InputValueError: The turns do not bring one back, or no room closes with them.
    """
    if len(turns) != len(lengths_mm) or len(turns) < 3:
        raise InputValueError("a room has three sides at least", field="turns")
    if sum(turns) != _FULL_TURN:
        short = _FULL_TURN - sum(turns)
        way = "right" if short > 0 else "left"
        raise InputValueError(
            f"walking so does not bring you back to where you began: {abs(short)} degrees more to the {way} would",
            field="turns",
        )
    headings = np.radians(-np.concatenate(([0], np.cumsum(turns)[:-1])))
    ways = np.stack([np.cos(headings), np.sin(headings)], axis=1)
    lengths = np.array(lengths_mm, dtype=float)
    doubt = (lengths * [_TAPED_SHARE if i in taped else _PACED_SHARE for i in range(len(turns))]) ** 2
    give = np.linalg.solve((ways * doubt[:, None]).T @ ways, lengths @ ways)
    closed = lengths - doubt * (ways @ give)
    points = np.concatenate((np.zeros((1, 2)), np.cumsum(closed[:-1, None] * ways[:-1], axis=0)))
    outline = [(float(u), float(v)) for u, v in points]
    if bool(np.any(closed <= 0)) or not is_room(outline):
        raise InputValueError("no room closes with these turns and distances; check them", field="turns")
    return outline


def taping(
    corners: Sequence[str],
    outline: Sequence[XY],
    readings: Sequence[Reading],
    *,
    sigma_mm: float,
    sure_mm: float,
    limit: float,
    skipped: Collection[str] = (),
    confirmed: Collection[str] = (),
) -> Taping:
    """How a room stands, and what to tape next.

    Args:
        corners: Names, clockwise.
        outline: Where they are thought to be, as `walked_outline` says [mm].
        readings: What is taped, in the order it was.
        sigma_mm: Standard error of a reading [mm].
        sure_mm: How sure each corner must be before it is planned [mm].
        limit: Standardised residual from which a reading counts as likely wrong.
        skipped: Distances that cannot be taped, or not now, such as `B-D`.
        confirmed: Distances that were taped again, with the same answer; they are not asked for a third time.

    References:
        Which reading next: the one that leaves the largest of the corners' error ellipses smallest, by the
        covariance of the least squares that adjust the room.
    """
    taken = {frozenset((reading.one, reading.other)) for reading in readings}
    left_out = {frozenset(pair.split("-")) for pair in skipped}
    sides = [f"{a}-{b}" for a, b in zip(corners, [*corners[1:], corners[0]], strict=True)]
    moved = fitted(outline, corners, readings)[0] if readings else list(outline)
    guess = moved if is_room(moved) else list(outline)
    for pair in (side for side in sides if frozenset(side.split("-")) not in taken | left_out):
        return _loose(corners, guess, NextReading(pair=pair, why="side"))
    try:
        adjustment = adjust(corners, readings, limit=limit)
    except UnfixedError:
        pairs = [p for p in unread_in_sight(corners, guess, readings) if frozenset(p.split("-")) not in left_out]
        doubt = _PACED_SHARE * max(math.dist(a, b) for a in guess for b in guess)
        pair = surest_while_loose(pairs, guess, corners, readings, sigma_mm=sigma_mm, doubt_mm=doubt)
        return _loose(corners, guess, NextReading(pair=pair, why="fixes") if pair else None)
    except InputValueError:
        return _loose(corners, guess, NextReading(pair=readings[-1].name, why="contradicts"))
    found = _next_of(adjustment, left_out, {frozenset(pair.split("-")) for pair in confirmed}, sure_mm)
    unsure = max(adjustment.uncertainty_mm.values()) > sure_mm
    return Taping(
        corners_mm=adjustment.corners_mm,
        fixed=True,
        uncertainty_mm=adjustment.uncertainty_mm,
        residuals=adjustment.residuals,
        next=found,
        sure=found is None and not unsure and not adjustment.ambiguous and not adjustment.suspects,
    )


def _loose(corners: Sequence[str], at: Sequence[XY], asked: NextReading | None) -> Taping:
    return Taping(
        corners_mm=dict(zip(corners, at, strict=True)),
        fixed=False,
        uncertainty_mm={},
        residuals=(),
        next=asked,
        sure=False,
    )


def _next_of(
    adjustment: Adjustment,
    left_out: Collection[frozenset[str]],
    confirmed: Collection[frozenset[str]],
    sure_mm: float,
) -> NextReading | None:
    """What a room needs whose corners are fixed: the gravest first."""
    can = [pair for pair in adjustment.in_sight if frozenset(pair.split("-")) not in left_out]
    again = [s for s in adjustment.suspects if frozenset((s.reading.one, s.reading.other)) not in confirmed]
    if again:
        among = tuple(suspect.reading.name for suspect in adjustment.suspects)
        return NextReading(pair=again[0].reading.name, why="again", error_mm=again[0].error_mm, among=among)
    if adjustment.suspects and can:
        # Each was taped twice and one is wrong all the same: another distance tells which.
        return NextReading(pair=adjustment.surest if adjustment.surest in can else can[0], why="checks")
    if adjustment.ambiguous and (adjustment.settled_by in can or can):
        settling = adjustment.settled_by if adjustment.settled_by in can else can[0]
        return NextReading(pair=settling, why="settles")
    surest = adjustment.surest if adjustment.surest in can else next(iter(can), "")
    if surest and max(adjustment.uncertainty_mm.values()) > sure_mm:
        return NextReading(pair=surest, why="surer")
    loose = _unchecked(adjustment)
    checking = max(can, key=lambda pair: len(loose & {*pair.split("-")}), default="")
    if checking and loose & {*checking.split("-")}:
        return NextReading(pair=checking, why="checks")
    return None


def _unchecked(adjustment: Adjustment) -> set[str]:
    """Corners none of whose readings anything checks."""
    checked = {
        name
        for residual in adjustment.residuals
        if residual.redundancy > 0
        for name in (residual.reading.one, residual.reading.other)
    }
    return {*adjustment.corners_mm} - checked

"""Least squares over taped distances between corners.

Corners run clockwise seen from above; the first is the origin, the second lies on the u axis. Distances alone do
not tell a room from its mirror image: the order of the corners does. All lengths here are millimetres.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from firstcourse.errors import InputValueError
from firstcourse.survey.advice import UnfixedError, mirrored_over, missing_readings, settling, unread_in_sight
from firstcourse.survey.shapes import Reading, UnplacedError, candidate_shapes, num_hidden, skew
from firstcourse.survey.sight import XY, Floats, is_room

_STEPS = 60
_SAME_MM = 1e-9
_FARTHEST_STEP_MM = 200.0
_WEAK = 1e-9
"""What moves readings by less than this share of what moves them most is left where it is."""
# Two fits whose corners all lie this near are one room.
_ALIKE_MM = 10.0
# A shape counts as likely up to this many times the best sum of squares, plus what chance may add.
_MUCH_WORSE = 1.5
_CHANCE = 12.0
# How far from right angles a plainly square room may be for each corner, and by how much more the next must be.
_SQUARE_RAD = 0.1
_PLAIN_RAD = 0.35


@dataclass(frozen=True, slots=True, kw_only=True)
class Residual:
    """What the adjustment makes of one reading.

    Attributes:
        adjusted_mm: Distance between the adjusted corners [mm].
        residual_mm: Adjusted less taped [mm].
        redundancy: 0 where nothing checks the reading, up to 1 where all else does.
        standardised: Residual over its own standard error; None where nothing checks it.
        error_mm: Taped less true, if this reading alone is wrong [mm]; None where nothing checks it.
    """

    reading: Reading
    adjusted_mm: float
    residual_mm: float
    redundancy: float
    standardised: float | None
    error_mm: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Adjustment:
    """Adjusted corners and how sure they are.

    Attributes:
        corners_mm: Corner to (u, v), first corner at the origin, second on the u axis [mm].
        uncertainty_mm: Corner to the longer half-axis of its 95 % ellipse, from the tape's precision [mm].
        freedom: Readings beyond those needed.
        suspects: The readings most likely wrong, worst first; several where they cannot be told apart.
        ambiguous: Whether another shape fits the readings as well.
        settled_by: The distance that differs most between the two shapes and can be taped; `surest` where none
            tells them apart; empty where there is one shape only.
        mirrored_over: The line over which the other shape is this one folded, such as `A-C`; empty if it is not.
        differing: The corners that lie elsewhere in the other shape.
        in_sight: Distances that are not taped and can be, between corners that see each other.
        surest: Which of these would make the least sure corner surest; empty where there is none.
    """

    corners_mm: Mapping[str, XY]
    uncertainty_mm: Mapping[str, float]
    residuals: tuple[Residual, ...]
    freedom: int
    suspects: tuple[Residual, ...]
    ambiguous: bool
    settled_by: str
    mirrored_over: str
    differing: tuple[str, ...]
    in_sight: tuple[str, ...]
    surest: str


def adjust(corners: Sequence[str], readings: Sequence[Reading], *, limit: float) -> Adjustment:
    """Adjust all readings of one room at once.

    Args:
        corners: Names, clockwise seen from above.
        readings: Every taped distance, sides and diagonals.
        limit: Standardised residual from which a reading counts as likely wrong.

    Returns:
        The adjusted corners, each reading's residual, and the likely blunder if there is one.

    Raises:
        UnfixedError: A corner hangs on too few readings.
        InputValueError: The readings contradict each other so far that no room has them.

    References:
        Weighted least squares by normal equations (Chandra, Surveying, chapter 5); data snooping by standardised
        residuals (Baarda 1968).
    """
    index = {name: number for number, name in enumerate(corners)}
    free = [column for column in range(2 * len(corners)) if column not in (0, 1, 3)]
    weights = np.array([1 / reading.sigma_mm for reading in readings])
    try:
        shapes = candidate_shapes(corners, readings)
    except UnplacedError as error:
        raise _unfixed(corners, readings, error.corners[0]) from None
    at, other = _best_fit(
        [_fit(shape, corners, index, readings, free, weights) for shape in shapes], corners, readings
    )
    design, distances = _design(at, index, readings, free)
    scaled = design * weights[:, None]
    if np.linalg.matrix_rank(scaled, tol=1e-6 * float(np.max(weights))) < len(free):
        name, pair = _loosest(at, scaled, corners, index, readings, free)
        raise UnfixedError(name, (pair,), leans=True)
    covariance = np.linalg.inv(scaled.T @ scaled)
    leverage = np.einsum("ij,jk,ik->i", scaled, covariance, scaled)
    residuals = tuple(
        _residual(reading, float(distance), max(0.0, 1 - float(taken)))
        for reading, distance, taken in zip(readings, distances, leverage, strict=True)
    )
    points = [(float(u), float(v)) for u, v in at]
    second = points if other is None else [(float(u), float(v)) for u, v in other]
    in_sight = unread_in_sight(corners, points, readings)
    surest = _surest(in_sight, at, corners, index, free, covariance, max(r.sigma_mm for r in readings))
    mirror, differing = ("", ()) if other is None else mirrored_over(corners, points, second)
    return Adjustment(
        corners_mm={name: (float(at[i, 0]), float(at[i, 1])) for name, i in index.items()},
        uncertainty_mm=_ellipses(corners, free, covariance),
        residuals=residuals,
        freedom=len(readings) - len(free),
        suspects=_suspects(residuals, limit),
        ambiguous=other is not None,
        settled_by="" if other is None else settling(corners, points, second, readings) or surest,
        mirrored_over=mirror,
        differing=differing,
        in_sight=in_sight,
        surest=surest,
    )


def _fit(
    shape: Mapping[str, XY],
    corners: Sequence[str],
    index: Mapping[str, int],
    readings: Sequence[Reading],
    free: Sequence[int],
    weights: Floats,
) -> tuple[float, Floats]:
    """Sum of squared residuals over their standard errors, and the corners, by Gauss-Newton steps."""
    at = np.array([shape[name] for name in corners], dtype=float)
    taped = np.array([reading.length_mm for reading in readings])
    for _ in range(_STEPS):
        design, distances = _design(at, index, readings, free)
        # A corner that almost nothing holds would run away: it moves no further at a time than the shape is known.
        step = np.linalg.lstsq(design * weights[:, None], (taped - distances) * weights, rcond=_WEAK)[0]
        largest = float(np.max(np.abs(step), initial=0.0))
        at.reshape(-1)[free] += step * min(1.0, _FARTHEST_STEP_MM / max(largest, _SAME_MM))
        if largest < _SAME_MM:
            break
    misfit = (taped - _design(at, index, readings, free)[1]) * weights
    return float(misfit @ misfit), at


def _best_fit(
    fits: Sequence[tuple[float, Floats]], corners: Sequence[str], readings: Sequence[Reading]
) -> tuple[Floats, Floats | None]:
    """Of the rooms that fit about equally well the one nearest to square, and another if that is as likely."""
    rooms = [(misfit, at) for misfit, at in fits if is_room([(float(u), float(v)) for u, v in at])]
    if not rooms:
        nearest = _points(min(fits, key=lambda fit: fit[0])[1], corners) if fits else {}
        seen = unread_in_sight(corners, [*nearest.values()], readings) if nearest else ()
        raise InputValueError(
            "no room with corners in this order, clockwise seen from above, has these readings; "
            "check the order of the corners and each reading" + (f", and tape {seen[0]} as well" if seen else ""),
            field="diagonals",
        )
    best = min(misfit for misfit, _ in rooms)
    rooms = [room for room in rooms if room[0] <= _MUCH_WORSE * best + _CHANCE]
    hidden = [num_hidden(_points(at, corners), corners, readings) for _, at in rooms]
    rooms = [room for room, count in zip(rooms, hidden, strict=True) if count == min(hidden)]
    likely: list[tuple[float, float, Floats]] = []
    for misfit, at in sorted(rooms, key=lambda room: room[0]):
        alike = any(float(np.max(np.abs(at - other))) < _ALIKE_MM for _, _, other in likely)
        if not alike:
            likely.append((skew(_points(at, corners), corners), misfit, at))
    likely.sort(key=lambda room: (round(room[0], 6), room[1]))
    if len(likely) == 1:
        return likely[0][2], None
    # Squareness decides only where one shape is plainly square and the next plainly is not.
    square = likely[0][0] < _SQUARE_RAD * len(corners) and likely[1][0] > likely[0][0] + _PLAIN_RAD
    return likely[0][2], None if square else likely[1][2]


def _points(at: Floats, corners: Sequence[str]) -> dict[str, XY]:
    return {name: (float(u), float(v)) for name, (u, v) in zip(corners, at, strict=True)}


def _unfixed(corners: Sequence[str], readings: Sequence[Reading], name: str) -> UnfixedError:
    """What is missing to work the room out corner by corner, and whether it can still lean."""
    missing = missing_readings(corners, readings)
    # Corners in general position have as many independent readings as any room with these readings can have.
    at = np.array([(math.cos(1.7 * k * k + 1), math.sin(2.3 * k * k + 2)) for k in range(len(corners))])
    index = {corner: number for number, corner in enumerate(corners)}
    design, _ = _design(at, index, readings, range(2 * len(corners)))
    leans = int(np.linalg.matrix_rank(design)) < 2 * len(corners) - 3
    return UnfixedError(name, missing, leans=leans)


def surest_while_loose(
    pairs: Sequence[str],
    points: Sequence[XY],
    corners: Sequence[str],
    readings: Sequence[Reading],
    *,
    sigma_mm: float,
    doubt_mm: float,
) -> str:
    """Of distances that can be taped, the one that leaves a room surest that its readings do not fix yet.

    Args:
        pairs: The distances, such as `A-C`.
        points: Where the corners are thought to be [mm].
        corners: Names, clockwise.
        readings: What is taped.
        sigma_mm: Standard error of a reading [mm].
        doubt_mm: How far off each corner may well be before anything is taped [mm].

    Returns:
        The pair; empty where there is none.
    """
    index = {name: number for number, name in enumerate(corners)}
    free = [column for column in range(2 * len(corners)) if column not in (0, 1, 3)]
    at = np.array(points, dtype=float)
    held = np.eye(len(free)) / doubt_mm**2
    if readings:
        scaled = _design(at, index, readings, free)[0] / np.array([r.sigma_mm for r in readings])[:, None]
        held += scaled.T @ scaled
    return _surest(pairs, at, corners, index, free, np.linalg.inv(held), sigma_mm)


def _surest(
    pairs: Sequence[str],
    at: Floats,
    corners: Sequence[str],
    index: Mapping[str, int],
    free: Sequence[int],
    covariance: Floats,
    sigma_mm: float,
) -> str:
    """The distance that leaves the largest of the corners' ellipses smallest."""
    best, least = "", math.inf
    for pair in pairs:
        one, other = pair.split("-")
        reading = Reading(one=one, other=other, length_mm=1.0, sigma_mm=sigma_mm)
        row = _design(at, index, [reading], free)[0][0]
        towards = covariance @ row
        after = covariance - np.outer(towards, towards) / (sigma_mm**2 + float(row @ towards))
        largest = round(max(_ellipses(corners, free, after).values()), 6)
        if largest < least:
            best, least = pair, largest
    return best


def _loosest(
    at: Floats,
    scaled: Floats,
    corners: Sequence[str],
    index: Mapping[str, int],
    readings: Sequence[Reading],
    free: Sequence[int],
) -> tuple[str, str]:
    """Of a room drawn out so far that it can still move: the corner that moves most, and what would hold it."""
    motion = np.linalg.svd(scaled)[2][-1]
    moved = np.zeros(at.size)
    moved[list(free)] = motion
    shifts = np.hypot(*moved.reshape(-1, 2).T)
    points = [(float(u), float(v)) for u, v in at]
    pairs = [
        Reading(one=pair.split("-")[0], other=pair.split("-")[1], length_mm=1.0, sigma_mm=1.0)
        for pair in unread_in_sight(corners, points, readings) or (f"{corners[0]}-{corners[2]}",)
    ]
    held = np.abs(_design(at, index, pairs, free)[0] @ motion)
    return corners[int(np.argmax(shifts))], pairs[int(np.argmax(np.round(held, 9)))].name


def _residual(reading: Reading, distance: float, redundancy: float) -> Residual:
    residual = distance - reading.length_mm
    checked = redundancy > 1e-6
    return Residual(
        reading=reading,
        adjusted_mm=distance,
        residual_mm=residual,
        redundancy=redundancy if checked else 0.0,
        standardised=abs(residual) / (reading.sigma_mm * math.sqrt(redundancy)) if checked else None,
        error_mm=-residual / redundancy if checked else None,
    )


def _suspects(residuals: Sequence[Residual], limit: float) -> tuple[Residual, ...]:
    checked = [(r.standardised, r) for r in residuals if r.standardised is not None]
    worst = max((value for value, _ in checked), default=0.0)
    if worst < limit:
        return ()
    # Readings whose standardised residuals are this alike explain the misclosure equally well.
    alike = [(value, r) for value, r in checked if value > 0.97 * worst]
    return tuple(r for _, r in sorted(alike, key=lambda pair: (-pair[0], pair[1].reading.name)))


def _design(
    at: Floats,
    index: Mapping[str, int],
    readings: Sequence[Reading],
    free: Sequence[int],
) -> tuple[Floats, Floats]:
    rows = np.arange(len(readings))
    one = np.array([index[reading.one] for reading in readings], np.int64)
    other = np.array([index[reading.other] for reading in readings], np.int64)
    delta = at[other] - at[one]
    distances = np.array([math.hypot(u, v) for u, v in delta.tolist()])
    unit = delta / np.maximum(distances, 1e-9)[:, None]
    full = np.zeros((len(readings), len(at), 2))
    full[rows, one] = -unit
    full[rows, other] = unit
    return full.reshape(len(readings), -1)[:, free], distances


def _ellipses(corners: Sequence[str], free: Sequence[int], covariance: Floats) -> dict[str, float]:
    position = {column: row for row, column in enumerate(free)}
    scale_95 = math.sqrt(5.991)  # chi-square, two degrees of freedom, 95 %
    result = {}
    for number, name in enumerate(corners):
        rows = [position[c] for c in (2 * number, 2 * number + 1) if c in position]
        part = covariance[np.ix_(rows, rows)]
        largest = float(np.max(np.linalg.eigvalsh(part))) if rows else 0.0
        result[name] = scale_95 * math.sqrt(max(0.0, largest))
    return result

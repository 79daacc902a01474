"""Least squares over taped distances between corners.

Corners run clockwise seen from above; the first is the origin, the second lies on the u axis. Distances alone do
not tell a room from its mirror image: the order of the corners does. All lengths here are millimetres.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from firstcourse.errors import InputValueError
from firstcourse.survey.shapes import XY, Reading, UnfixedError, candidate_shapes, is_room, proposals, skew

_STEPS = 60
_SAME_MM = 1e-9
# Two fits whose corners all lie this near are one room.
_ALIKE_MM = 10.0
# A shape counts as likely up to this many times the best sum of squares, plus what chance may add.
_MUCH_WORSE = 1.5
_CHANCE = 12.0
# How far from right angles a plainly square room may be for each corner, and by how much more the next must be.
_SQUARE_RAD = 0.1
_PLAIN_RAD = 0.35
Floats = np.ndarray[Any, np.dtype[np.float64]]


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
        settled_by: The distance that differs most between the two shapes; empty where there is one shape only.
    """

    corners_mm: Mapping[str, XY]
    uncertainty_mm: Mapping[str, float]
    residuals: tuple[Residual, ...]
    freedom: int
    suspects: tuple[Residual, ...]
    ambiguous: bool
    settled_by: str


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
    at, other = _best_fit(
        [_fit(shape, corners, index, readings, free, weights) for shape in candidate_shapes(corners, readings)],
        corners,
    )
    design, distances = _design(at, index, readings, free)
    scaled = design * weights[:, None]
    if np.linalg.matrix_rank(scaled, tol=1e-6 * float(np.max(weights))) < len(free):
        raise UnfixedError(corners[-1], proposals(corners, readings, corners[-1]))
    covariance = np.linalg.inv(scaled.T @ scaled)
    leverage = np.einsum("ij,jk,ik->i", scaled, covariance, scaled)
    residuals = tuple(
        _residual(reading, float(distance), max(0.0, 1 - float(taken)))
        for reading, distance, taken in zip(readings, distances, leverage, strict=True)
    )
    return Adjustment(
        corners_mm={name: (float(at[i, 0]), float(at[i, 1])) for name, i in index.items()},
        uncertainty_mm=_ellipses(corners, free, covariance),
        residuals=residuals,
        freedom=len(readings) - len(free),
        suspects=_suspects(residuals, limit),
        ambiguous=other is not None,
        settled_by="" if other is None else _telling(at, other, corners, readings),
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
        step = np.linalg.lstsq(design * weights[:, None], (taped - distances) * weights, rcond=None)[0]
        at.reshape(-1)[free] += step
        if np.max(np.abs(step), initial=0.0) < _SAME_MM:
            break
    misfit = (taped - _design(at, index, readings, free)[1]) * weights
    return float(misfit @ misfit), at


def _best_fit(fits: Sequence[tuple[float, Floats]], corners: Sequence[str]) -> tuple[Floats, Floats | None]:
    """Of the rooms that fit about equally well the one nearest to square, and another if that is as likely."""
    rooms = [(misfit, at) for misfit, at in fits if is_room([(float(u), float(v)) for u, v in at])]
    if not rooms:
        raise InputValueError(
            "no room with corners in this order, clockwise seen from above, has these readings; "
            "check the order of the corners and each reading"
        )
    best = min(misfit for misfit, _ in rooms)
    likely: list[tuple[float, float, Floats]] = []
    for misfit, at in sorted(rooms, key=lambda room: room[0]):
        alike = any(float(np.max(np.abs(at - other))) < _ALIKE_MM for _, _, other in likely)
        if misfit <= _MUCH_WORSE * best + _CHANCE and not alike:
            points = {name: (float(u), float(v)) for name, (u, v) in zip(corners, at, strict=True)}
            likely.append((skew(points, corners), misfit, at))
    likely.sort(key=lambda room: (round(room[0], 6), room[1]))
    if len(likely) == 1:
        return likely[0][2], None
    # Squareness decides only where one shape is plainly square and the next plainly is not.
    square = likely[0][0] < _SQUARE_RAD * len(corners) and likely[1][0] > likely[0][0] + _PLAIN_RAD
    return likely[0][2], None if square else likely[1][2]


def _telling(at: Floats, other: Floats, corners: Sequence[str], readings: Sequence[Reading]) -> str:
    taken = {frozenset((reading.one, reading.other)) for reading in readings}
    differences = [
        (abs(float(np.hypot(*(at[j] - at[i]))) - float(np.hypot(*(other[j] - other[i])))), f"{one}-{two}")
        for i, one in enumerate(corners)
        for j, two in enumerate(corners[i + 1 :], start=i + 1)
        if frozenset((one, two)) not in taken
    ]
    return max(differences, key=lambda difference: (round(difference[0], 3), difference[1]))[1]


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
    full = np.zeros((len(readings), at.size))
    distances = np.zeros(len(readings))
    for row, reading in enumerate(readings):
        i, j = index[reading.one], index[reading.other]
        delta = at[j] - at[i]
        distances[row] = math.hypot(delta[0], delta[1])
        unit = delta / max(float(distances[row]), 1e-9)
        full[row, 2 * i : 2 * i + 2] = -unit
        full[row, 2 * j : 2 * j + 2] = unit
    return full[:, free], distances


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

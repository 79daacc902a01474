"""Least squares over taped distances between corners.

Corners run clockwise seen from above; the first is the origin, the second lies on the u axis. Distances alone do
not tell a room from its mirror image: the order of the corners does. All lengths here are millimetres.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from firstcourse.errors import InputValueError

_STEPS = 60
_BEAM = 64
_SAME_MM = 1e-9
XY = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One taped distance between two corners.

    Attributes:
        length_mm: As taped [mm].
        sigma_mm: Standard error of the reading [mm].
    """

    one: str
    other: str
    length_mm: float
    sigma_mm: float

    @property
    def name(self) -> str:
        """The reading as the setter named it, such as `A-C`."""
        return f"{self.one}-{self.other}"


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
    """

    corners_mm: Mapping[str, XY]
    uncertainty_mm: Mapping[str, float]
    residuals: tuple[Residual, ...]
    freedom: int
    suspects: tuple[Residual, ...]
    ambiguous: bool


class UnfixedError(InputValueError):
    """The readings do not fix the room; `missing` names distances that would."""

    def __init__(self, corner: str, missing: tuple[str, ...]) -> None:
        self.corner, self.missing = corner, missing
        super().__init__(
            f"the readings do not fix corner {corner}: sides alone leave a room free to lean. "
            f"Tape the diagonal {' or '.join(missing)}"
        )


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
    start, ambiguous = _shape(corners, readings)
    at = np.array([start[name] for name in corners], dtype=float)
    index = {name: number for number, name in enumerate(corners)}
    free = [column for column in range(2 * len(corners)) if column not in (0, 1, 3)]
    weights = np.array([1 / reading.sigma_mm for reading in readings])
    taped = np.array([reading.length_mm for reading in readings])
    for _ in range(_STEPS):
        design, distances = _design(at, index, readings, free)
        step = np.linalg.lstsq(design * weights[:, None], (taped - distances) * weights, rcond=None)[0]
        at.reshape(-1)[free] += step
        if np.max(np.abs(step), initial=0.0) < _SAME_MM:
            break
    design, distances = _design(at, index, readings, free)
    scaled = design * weights[:, None]
    if np.linalg.matrix_rank(scaled, tol=1e-6 * float(np.max(weights))) < len(free):
        raise UnfixedError(corners[-1], _proposals(corners, readings, corners[-1]))
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
        ambiguous=ambiguous,
    )


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
    at: "np.ndarray[tuple[int, int], np.dtype[np.float64]]",
    index: Mapping[str, int],
    readings: Sequence[Reading],
    free: Sequence[int],
) -> "tuple[np.ndarray[tuple[int, int], np.dtype[np.float64]], np.ndarray[tuple[int], np.dtype[np.float64]]]":
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


def _ellipses(
    corners: Sequence[str], free: Sequence[int], covariance: "np.ndarray[tuple[int, int], np.dtype[np.float64]]"
) -> dict[str, float]:
    position = {column: row for row, column in enumerate(free)}
    scale_95 = math.sqrt(5.991)  # chi-square, two degrees of freedom, 95 %
    result = {}
    for number, name in enumerate(corners):
        rows = [position[c] for c in (2 * number, 2 * number + 1) if c in position]
        part = covariance[np.ix_(rows, rows)]
        largest = float(np.max(np.linalg.eigvalsh(part))) if rows else 0.0
        result[name] = scale_95 * math.sqrt(max(0.0, largest))
    return result


def _shape(corners: Sequence[str], readings: Sequence[Reading]) -> tuple[dict[str, XY], bool]:
    """First coordinates by triangulation; of the shapes that fit, the simple clockwise one nearest to square."""
    taped: dict[str, dict[str, float]] = {name: {} for name in corners}
    for reading in readings:
        taped[reading.one][reading.other] = reading.length_mm
        taped[reading.other][reading.one] = reading.length_mm
    first, second = corners[0], corners[1]
    if second not in taped[first]:
        raise UnfixedError(second, (f"{first}-{second}",))
    shapes: list[tuple[float, dict[str, XY]]] = [(0.0, {first: (0.0, 0.0), second: (taped[first][second], 0.0)})]
    while len(shapes[0][1]) < len(corners):
        known = shapes[0][1]
        open_ = [name for name in corners if name not in known]
        ties = {name: sorted(n for n in taped[name] if n in known) for name in open_}
        name = max(open_, key=lambda candidate: (len(ties[candidate]), -corners.index(candidate)))
        if len(ties[name]) < 2:
            raise UnfixedError(name, _proposals(corners, readings, name))
        grown = [
            (misfit + _misfit(point, at, taped[name]), {**at, name: point})
            for misfit, at in shapes
            for point in _meet(at, taped[name], _widest(known, ties[name]))
        ]
        if not grown:
            raise InputValueError(
                f"no point lies as far from {' and '.join(ties[name])} as taped for corner {name}; "
                "measure those again"
            )
        shapes = sorted(grown, key=lambda shape: (shape[0], _skew(shape[1], corners)))[:_BEAM]
    fitting = [(misfit, at) for misfit, at in shapes if _is_room([at[name] for name in corners])]
    if not fitting:
        raise InputValueError(
            "no room with corners in this order, clockwise seen from above, has these readings; "
            "check the order of the corners and each reading"
        )
    best = min(misfit for misfit, _ in fitting)
    slack = 3 * max(reading.sigma_mm for reading in readings) * len(readings)
    close = sorted(
        ((_skew(at, corners), misfit, at) for misfit, at in fitting if misfit <= best + slack),
        key=lambda shape: (round(shape[0], 6), shape[1]),
    )
    # A second shape that is as square as the first leaves the setter to decide.
    ambiguous = len(close) > 1 and close[1][0] < close[0][0] + 0.05
    return close[0][2], ambiguous


def _widest(known: Mapping[str, XY], ties: Sequence[str]) -> tuple[str, str]:
    pairs = [(a, b) for i, a in enumerate(ties) for b in ties[i + 1 :]]
    return max(pairs, key=lambda pair: (math.dist(known[pair[0]], known[pair[1]]), pair))


def _meet(at: Mapping[str, XY], taped: Mapping[str, float], pair: tuple[str, str]) -> list[XY]:
    p, q = at[pair[0]], at[pair[1]]
    r, s = taped[pair[0]], taped[pair[1]]
    base = math.dist(p, q)
    if base == 0:
        return []
    along = (r * r - s * s + base * base) / (2 * base)
    square = r * r - along * along
    # A thin triangle that misreadings leave open by a little still has a foot on the base line.
    if square < -0.05 * r * r:
        return []
    height = math.sqrt(max(0.0, square))
    du, dv = (q[0] - p[0]) / base, (q[1] - p[1]) / base
    foot = (p[0] + du * along, p[1] + dv * along)
    if height == 0:
        return [foot]
    return [(foot[0] + dv * height, foot[1] - du * height), (foot[0] - dv * height, foot[1] + du * height)]


def _misfit(point: XY, at: Mapping[str, XY], taped: Mapping[str, float]) -> float:
    return sum(abs(math.dist(point, at[name]) - length) for name, length in taped.items() if name in at)


def _skew(at: Mapping[str, XY], corners: Sequence[str]) -> float:
    """How far the known corners' angles are from multiples of a right angle, summed [rad]."""
    total = 0.0
    count = len(corners)
    for index in range(count):
        a, b, c = corners[index - 1], corners[index], corners[(index + 1) % count]
        if a in at and b in at and c in at:
            turn = _direction(at[b], at[c]) - _direction(at[a], at[b])
            total += abs(turn - round(turn / (math.pi / 2)) * (math.pi / 2))
    return total


def _direction(a: XY, b: XY) -> float:
    return math.atan2(b[1] - a[1], b[0] - a[0])


def _is_room(points: Sequence[XY]) -> bool:
    area2 = sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*points, points[0]]))
    if area2 >= 0:
        return False
    count = len(points)
    for i in range(count):
        for j in range(i + 2, count):
            if (j + 1) % count != i and _cross(points[i], points[i + 1], points[j], points[(j + 1) % count]):
                return False
    return True


def _cross(a: XY, b: XY, c: XY, d: XY) -> bool:
    def side(p: XY, q: XY, r: XY) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0


def _proposals(corners: Sequence[str], readings: Sequence[Reading], name: str) -> tuple[str, ...]:
    taken = {frozenset((reading.one, reading.other)) for reading in readings}
    others = [other for other in corners if other != name and frozenset((other, name)) not in taken]
    near = sorted(others, key=lambda other: (abs(corners.index(other) - corners.index(name)), other))
    if near:
        return tuple(f"{other}-{name}" for other in near[:2])
    return tuple(f"{reading.name}" for reading in readings[:1])

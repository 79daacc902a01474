"""Shapes that a room's readings allow: where each corner can lie, found from those already placed.

A corner tied to two placed ones can lie on either side of the line between them, so that several shapes fit. All
lengths here are millimetres.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from firstcourse.errors import InputValueError

_BEAM = 64
_TRIED = 12
_STARTS = 6
_MANY_CORNERS = 16
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


class UnfixedError(InputValueError):
    """The readings do not fix the room; `missing` names distances that would."""

    def __init__(self, corner: str, missing: tuple[str, ...]) -> None:
        self.corner, self.missing = corner, missing
        super().__init__(
            f"the readings do not fix corner {corner}: sides alone leave a room free to lean. "
            f"Tape the diagonal {' or '.join(missing)}"
        )


def candidate_shapes(corners: Sequence[str], readings: Sequence[Reading]) -> list[dict[str, XY]]:
    """Approximate shapes to adjust: those that fit best, and of the near fits those nearest to square.

    The first corner lies at the origin and the second on the u axis in each.

    Raises:
        UnfixedError: A corner hangs on too few readings.
        InputValueError: Two readings do not meet, or no corner can be worked out from others.
    """
    taped: dict[str, dict[str, float]] = {name: {} for name in corners}
    for reading in readings:
        taped[reading.one][reading.other] = reading.length_mm
        taped[reading.other][reading.one] = reading.length_mm
    shapes: list[tuple[float, dict[str, XY]]] = []
    stuck: tuple[str, ...] = ()
    # A thin first triangle magnifies small errors, so that the right shape may be lost from one start; in a large
    # room with its many readings one start is enough.
    starts = _STARTS if len(corners) <= _MANY_CORNERS else 1
    for reading in readings:
        found, hanging = _chain(corners, taped, reading.one, reading.other)
        shapes += found
        stuck = stuck or hanging
        starts -= bool(found)
        if not starts:
            break
    if not shapes:
        raise _unfixed(corners, readings, stuck[0])
    turned = [(misfit, _turned(at, corners)) for misfit, at in shapes]
    slack = min(misfit for misfit, _ in turned) + 4 * max(r.sigma_mm for r in readings) * len(readings)
    rooms = [(misfit, at) for misfit, at in turned if is_room([at[name] for name in corners])]
    by_fit = sorted(rooms, key=lambda shape: shape[0])[:_TRIED]
    near = [shape for shape in rooms if shape[0] <= slack]
    by_square = sorted(near, key=lambda shape: skew(shape[1], corners))[:_TRIED]
    return [at for _, at in by_fit] + [at for _, at in by_square if all(at is not other for _, other in by_fit)]


def _chain(
    corners: Sequence[str], taped: Mapping[str, Mapping[str, float]], one: str, other: str
) -> tuple[list[tuple[float, dict[str, XY]]], tuple[str, ...]]:
    """Shapes worked out corner by corner from one reading, each with its misfit; or the corners left hanging."""
    shapes: list[tuple[float, dict[str, XY]]] = [(0.0, {one: (0.0, 0.0), other: (taped[one][other], 0.0)})]
    while len(shapes[0][1]) < len(corners):
        known = shapes[0][1]
        open_ = [name for name in corners if name not in known]
        ties = {name: sorted(n for n in taped[name] if n in known) for name in open_}
        name = max(open_, key=lambda candidate: (len(ties[candidate]), -corners.index(candidate)))
        if len(ties[name]) < 2:
            return [], tuple(open_)
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
        shapes = sorted(grown, key=lambda shape: (shape[0], skew(shape[1], corners)))[:_BEAM]
    return shapes, ()


def _turned(at: Mapping[str, XY], corners: Sequence[str]) -> dict[str, XY]:
    """The shape moved and turned to the first corner at the origin and the second on the u axis."""
    origin, along = at[corners[0]], at[corners[1]]
    length = math.dist(origin, along) or 1.0
    c, s = (along[0] - origin[0]) / length, (along[1] - origin[1]) / length
    return {
        name: ((u - origin[0]) * c + (v - origin[1]) * s, (v - origin[1]) * c - (u - origin[0]) * s)
        for name, (u, v) in at.items()
    }


def _unfixed(corners: Sequence[str], readings: Sequence[Reading], name: str) -> InputValueError:
    """Tell a room that can still lean from one whose readings fix it only all together."""
    # Corners in general position have as many independent readings as any room with these readings can have.
    at = [(math.cos(1.7 * k * k + 1), math.sin(2.3 * k * k + 2)) for k in range(len(corners))]
    rows = np.zeros((len(readings), 2 * len(corners)))
    for row, reading in enumerate(readings):
        i, j = corners.index(reading.one), corners.index(reading.other)
        delta = (at[j][0] - at[i][0], at[j][1] - at[i][1])
        rows[row, [2 * i, 2 * i + 1]] = -delta[0], -delta[1]
        rows[row, [2 * j, 2 * j + 1]] = delta
    missing = proposals(corners, readings, name)
    if int(np.linalg.matrix_rank(rows)) == 2 * len(corners) - 3:
        return InputValueError(
            f"corner {name} cannot be worked out from two others, only from all readings together; "
            f"tape {' or '.join(missing)} as well"
        )
    return UnfixedError(name, missing)


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


def skew(at: Mapping[str, XY], corners: Sequence[str]) -> float:
    """How far the placed corners are from going straight on or turning by a right angle, summed [rad]."""
    total = 0.0
    count = len(corners)
    for index in range(count):
        a, b, c = corners[index - 1], corners[index], corners[(index + 1) % count]
        if a in at and b in at and c in at:
            turn = math.remainder(_direction(at[b], at[c]) - _direction(at[a], at[b]), 2 * math.pi)
            total += min(abs(turn), abs(abs(turn) - math.pi / 2))
    return total


def _direction(a: XY, b: XY) -> float:
    return math.atan2(b[1] - a[1], b[0] - a[0])


def is_room(points: Sequence[XY]) -> bool:
    """Whether the corners run clockwise round one area without crossing."""
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


def proposals(corners: Sequence[str], readings: Sequence[Reading], name: str) -> tuple[str, ...]:
    """Distances from a corner that are not taped yet, the nearest across the room first."""
    taken = {frozenset((reading.one, reading.other)) for reading in readings}
    others = [other for other in corners if other != name and frozenset((other, name)) not in taken]
    near = sorted(others, key=lambda other: (abs(corners.index(other) - corners.index(name)), other))
    if near:
        return tuple(f"{other}-{name}" for other in near[:2])
    return tuple(f"{reading.name}" for reading in readings[:1])

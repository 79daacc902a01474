"""Shapes that a room's readings allow: where each corner can lie, found from those already placed.

A corner tied to two placed ones can lie on either side of the line between them, so that several shapes fit. What
tells them apart: walls do not cross, and no wall stands across a distance that was taped. All lengths here are
millimetres.
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from firstcourse.errors import InputValueError
from firstcourse.survey.sight import GRAZE_MM, XY, Floats, Ints, in_sight

_BEAM, _BEAM_MANY = 1024, 192
"""Shapes kept at each corner: all there can be of a room with 13 corners, the likeliest of a larger one."""
_TRIED = 12
_STARTS = 3
_MANY_CORNERS = 13
_OPEN_SHARE = 0.05
"""A thin triangle that misreadings leave open by this share of its side squared still has a foot on its base."""
_SLACK_SIGMAS = 6.0
_PAIRS_AT_ONCE = 256
Side = tuple[int, int]


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


class UnplacedError(InputValueError):
    """No chain of triangles reaches some corners; `corners` names them."""

    def __init__(self, corners: tuple[str, ...]) -> None:
        self.corners = corners
        super().__init__(f"the readings do not fix corner {corners[0]}")


def candidate_shapes(corners: Sequence[str], readings: Sequence[Reading]) -> list[dict[str, XY]]:
    """Approximate shapes to adjust: those that fit best, and of the near fits those nearest to square.

    The first corner lies at the origin and the second on the u axis in each.

    Raises:
        UnplacedError: A corner hangs on too few readings.
        InputValueError: Two readings do not meet: one of them is wrong.
    """
    taped: dict[str, dict[str, float]] = {name: {} for name in corners}
    for reading in readings:
        taped[reading.one][reading.other] = reading.length_mm
        taped[reading.other][reading.one] = reading.length_mm
    sigma = max(reading.sigma_mm for reading in readings)
    shapes: list[_Shape] = []
    unplaced: list[UnplacedError] = []
    apart: list[InputValueError] = []
    # A thin first triangle magnifies small errors, so that the right shape may be lost from one start; in a large
    # room with its many readings one start is enough.
    starts = _STARTS if len(corners) <= _MANY_CORNERS else 1
    for reading in readings:
        try:
            found = _Chain(corners, taped, sigma).grow(reading.one, reading.other)
        except UnplacedError as error:
            unplaced.append(error)
            continue
        except InputValueError as error:
            apart.append(error)
            continue
        shapes += found
        starts -= bool(found)
        if not starts:
            break
    if not shapes:
        if apart:
            raise apart[0]
        raise min(unplaced, key=lambda error: len(error.corners))
    # Walls may seem to cross only because a thin triangle put a corner a little off: the adjustment tells.
    slack = 4 * sigma * len(readings)
    by_fit = sorted(shapes, key=lambda shape: (shape.misfit // slack, shape.crossed, shape.misfit))[:_TRIED]
    near = [shape for shape in shapes if shape.misfit <= min(other.misfit for other in by_fit) + slack]
    least = min(shape.crossed for shape in near)
    by_square = sorted((s for s in near if s.crossed <= least + 1), key=lambda shape: shape.skew)[:_TRIED]
    chosen = [*by_fit, *(shape for shape in by_square if all(shape is not other for other in by_fit))]
    return [_turned(shape.at, corners) for shape in chosen]


def num_hidden(at: Mapping[str, XY], corners: Sequence[str], readings: Sequence[Reading]) -> int:
    """How many readings run through walls of a shape."""
    index = {name: number for number, name in enumerate(corners)}
    seen = in_sight([at[name] for name in corners], [(index[r.one], index[r.other]) for r in readings])
    return int(np.count_nonzero(~seen))


class _Shape(NamedTuple):
    """One shape: its corners, how far it misses the readings [mm], and how little it looks like a room.

    Attributes:
        at: The corners in order [mm], of shape (corners, 2).
        misfit: The sum of what each reading is missed by [mm].
        crossed: How often its walls cross, or stand across a distance that was taped.
        skew: How far its corners are from right angles, summed [rad].
    """

    at: Floats
    misfit: float
    crossed: int
    skew: float


class _Chain:
    """Shapes grown corner by corner from one reading, all of them at once.

    `at` has the shape (shapes, corners, 2); corners that are not placed yet hold no number.
    """

    def __init__(self, corners: Sequence[str], taped: Mapping[str, Mapping[str, float]], sigma_mm: float) -> None:
        self.corners, self.taped = corners, taped
        self.index = {name: number for number, name in enumerate(corners)}
        self.slack = _SLACK_SIGMAS * sigma_mm
        self.beam = _BEAM if len(corners) <= _MANY_CORNERS else _BEAM_MANY
        self.placed: list[str] = []
        self.at = np.full((1, len(corners), 2), np.nan)
        self.misfit = np.zeros(1)
        self.crossed = np.zeros(1, dtype=int)

    def grow(self, one: str, other: str) -> list[_Shape]:
        """All shapes that begin with a reading and run clockwise.

        Raises:
            UnplacedError: Some corners are not tied to two placed ones.
            InputValueError: Two readings do not meet.
        """
        self.at[0, self.index[one]] = 0.0, 0.0
        self.at[0, self.index[other]] = self.taped[one][other], 0.0
        self.placed = [one, other]
        while len(self.placed) < len(self.corners):
            open_ = [name for name in self.corners if name not in self.placed]
            ties = {name: sorted(n for n in self.taped[name] if n in self.placed) for name in open_}
            name = max(open_, key=lambda corner: (self._widest(corner, ties[corner])[0], -self.index[corner]))
            if len(ties[name]) < 2:
                raise UnplacedError(tuple(open_))
            if not self._place(name, ties[name]):
                raise InputValueError(
                    f"no point lies as far from {' and '.join(ties[name])} as taped for corner {name}; "
                    "measure those again"
                )
        following = np.roll(self.at, -1, axis=1)
        area2 = np.sum(self.at[..., 0] * following[..., 1] - following[..., 0] * self.at[..., 1], axis=1)
        skews = self._skew()
        return [
            _Shape(self.at[k], float(self.misfit[k]), int(self.crossed[k]), float(skews[k]))
            for k in np.flatnonzero(area2 < 0)
        ]

    def _place(self, name: str, ties: Sequence[str]) -> bool:
        _, one, other = self._widest(name, ties)
        p, q = self.at[:, self.index[one]], self.at[:, self.index[other]]
        r, s = self.taped[name][one], self.taped[name][other]
        base = np.hypot(*(q - p).T)
        with np.errstate(divide="ignore", invalid="ignore"):
            along = (r * r - s * s + base * base) / (2 * base)
            square = r * r - along * along
            unit = (q - p) / base[:, None]
        height = np.sqrt(np.maximum(0.0, square))
        foot = p + unit * along[:, None]
        side = np.stack([unit[:, 1], -unit[:, 0]], axis=1) * height[:, None]
        points = np.concatenate([foot + side, foot - side])
        meet = (base > 0) & (square >= -_OPEN_SHARE * r * r)
        keep = np.concatenate([meet, meet & (height > 0)])
        again = np.concatenate([np.arange(len(p)), np.arange(len(p))])[keep]
        self.at, self.misfit, self.crossed = self.at[again], self.misfit[again], self.crossed[again]
        self.at[:, self.index[name]] = points[keep]
        for tie in ties:
            distance = np.hypot(*(self.at[:, self.index[name]] - self.at[:, self.index[tie]]).T)
            self.misfit = self.misfit + np.abs(distance - self.taped[name][tie])
        self.placed.append(name)
        self._refine(name, ties)
        self._count_crossed(name)
        self._keep_likeliest()
        return len(self.at) > 0

    def _widest(self, name: str, ties: Sequence[str]) -> tuple[float, str, str]:
        """The two ties that meet at the angle nearest to a right one, with its sine; less than 0 without two."""
        best = (-1.0, "", "")
        for i, one in enumerate(ties):
            for other in ties[i + 1 :]:
                r, s = self.taped[name][one], self.taped[name][other]
                base = math.dist(self.at[0, self.index[one]], self.at[0, self.index[other]])
                cosine = (r * r + s * s - base * base) / (2 * r * s)
                best = max(best, (round(math.sqrt(max(0.0, 1 - cosine * cosine)), 6), one, other))
        return best

    def _refine(self, name: str, ties: Sequence[str]) -> None:
        """Move a corner that is tied to more than two others to where it fits all of them best."""
        if len(ties) < 3:
            return
        to = self.at[:, [self.index[tie] for tie in ties]]
        lengths = np.array([self.taped[name][tie] for tie in ties])
        for _ in range(3):
            delta = self.at[:, None, self.index[name]] - to
            distances = np.maximum(np.hypot(delta[..., 0], delta[..., 1]), 1e-9)
            unit = delta / distances[..., None]
            normal = unit.transpose(0, 2, 1) @ unit + 1e-6 * np.eye(2)
            wanted = (unit.transpose(0, 2, 1) @ (lengths - distances)[..., None])[..., 0]
            self.at[:, self.index[name]] += np.linalg.solve(normal, wanted[..., None])[..., 0]

    def _count_crossed(self, name: str) -> None:
        """Count walls that cross at the new corner, and taped distances that run through one."""
        count, new = len(self.corners), self.index[name]
        placed = {self.index[other] for other in self.placed}
        walls = [(i, (i + 1) % count) for i in placed if (i + 1) % count in placed]
        own = [wall for wall in walls if new in wall]
        lines = [
            (self.index[a], self.index[b])
            for a in self.placed
            for b in self.taped[a]
            if b in self.placed and self.index[a] < self.index[b]
        ]
        lines = [line for line in lines if (line[1] - line[0]) % count not in (1, count - 1)]
        met = [(wall, other) for wall in own for other in walls if not {*wall} & {*other}]
        seen = [
            (line, wall) for line in lines for wall in (walls if new in line else own) if not {*wall} & {*line}
        ]
        self.crossed = self.crossed + self._num_crossed(met, 0.0) + self._num_crossed(seen, GRAZE_MM)

    def _num_crossed(self, pairs: Sequence[tuple[Side, Side]], graze_mm: float) -> Ints:
        """How many lines cross their walls, in each shape, and not just at a corner that they pass near.

        Args:
            pairs: A line and a wall, each as its two corners.
            graze_mm: A line that passes an end of the wall this near does not cross it.
        """
        found: Ints = np.zeros(len(self.at), np.int64)
        # A few at a time: all of a large room at once would take much memory.
        for first in range(0, len(pairs), _PAIRS_AT_ONCE):
            corners = np.array(pairs[first : first + _PAIRS_AT_ONCE], np.int64).reshape(-1, 4)
            p, q, a, b = (self.at[:, column] for column in corners.T)
            length = np.maximum(np.hypot(q[..., 0] - p[..., 0], q[..., 1] - p[..., 1]), 1e-9)
            to_a, to_b = _turns(p, q, a) / length, _turns(p, q, b) / length
            away = np.minimum(np.abs(to_a), np.abs(to_b)) > graze_mm
            across = away & (to_a * to_b < 0) & (_turns(a, b, p) * _turns(a, b, q) < 0)
            found += across.sum(axis=1)
        return found

    def _keep_likeliest(self) -> None:
        if len(self.at) <= self.beam:
            return
        # Misfits that the tape's precision explains are alike; then decides what can be seen, then what is square.
        order = np.lexsort((self._skew(), self.crossed, self.misfit // (self.slack * len(self.placed))))
        keep = order[: self.beam]
        self.at, self.misfit, self.crossed = self.at[keep], self.misfit[keep], self.crossed[keep]

    def _skew(self) -> Floats:
        count, placed = len(self.corners), {self.index[name] for name in self.placed}
        total = np.zeros(len(self.at))
        for i in range(count):
            before, after = (i - 1) % count, (i + 1) % count
            if {before, i, after} <= placed:
                into, out = self.at[:, i] - self.at[:, before], self.at[:, after] - self.at[:, i]
                turn = np.arctan2(out[:, 1], out[:, 0]) - np.arctan2(into[:, 1], into[:, 0])
                turn = np.abs((turn + np.pi) % (2 * np.pi) - np.pi)
                total += np.minimum(turn, np.abs(turn - np.pi / 2))
        return total


def _turns(a: Floats, b: Floats, c: Floats) -> Floats:
    along, to = b - a, c - a
    return np.asarray(along[..., 0] * to[..., 1] - along[..., 1] * to[..., 0])


def _turned(at: Floats, corners: Sequence[str]) -> dict[str, XY]:
    """The shape moved and turned to the first corner at the origin and the second on the u axis."""
    moved = at - at[0]
    along = moved[1] / (float(np.hypot(*moved[1])) or 1.0)
    turned = moved @ np.array([[along[0], -along[1]], [along[1], along[0]]])
    return {name: (float(u), float(v)) for name, (u, v) in zip(corners, turned, strict=True)}


def skew(at: Mapping[str, XY], corners: Sequence[str]) -> float:
    """How far the corners are from going straight on or turning by a right angle, summed [rad]."""
    total = 0.0
    count = len(corners)
    for index in range(count):
        a, b, c = at[corners[index - 1]], at[corners[index]], at[corners[(index + 1) % count]]
        turn = math.remainder(_direction(b, c) - _direction(a, b), 2 * math.pi)
        total += min(abs(turn), abs(abs(turn) - math.pi / 2))
    return total


def _direction(a: XY, b: XY) -> float:
    return math.atan2(b[1] - a[1], b[0] - a[0])

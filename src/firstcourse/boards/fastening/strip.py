"""One row of fasteners along a straight strip: a member's face, or the ground along a board's edge."""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

import shapely

from firstcourse.boards.fastening.ground import FastenerLimits
from firstcourse.geometry import Spot
from firstcourse.units import ceil_to, floor_to

_SLACK = 1e-6
_QUARTER = 8


@dataclass(slots=True)
class FastenerStrip:
    """A strip to fill.

    Attributes:
        legal: Where fasteners may sit, in the strip's axes.
        lines: Places across the strip, the one wanted most first; all on tape marks where any is.
        low: Where the strip begins along `t`.
        high: Where it ends.
        limits: Rules to keep.
        end_most: How far from its ends the first and the last may be; the spacing where None.
    """

    legal: shapely.Geometry
    lines: Sequence[int]
    low: float
    high: float
    limits: FastenerLimits
    end_most: int | None = None
    _spans: dict[int, list[tuple[int, int]]] = field(default_factory=dict)

    def fill(self, taken: Iterable[float]) -> tuple[list[Spot], bool]:
        """Spots to add so that neighbours are near enough, evenly spread.

        Args:
            taken: Places along `t` of fasteners that the strip already has.

        Returns:
            The spots, and whether the spacing is kept from the strip's one end to its other.
        """
        limits, found = self.limits, list[Spot]()
        known = sorted(taken)
        row = known
        first, last = self._end(1), self._end(-1)
        if first is None or last is None:
            return [], not self._gaps(row)
        if last[0] - first[0] < limits.apart:
            middle = self.nearest((first[0] + last[0]) / 2, first[0] - 1, last[0] + 1)
            found += [middle] if middle is not None and not row else []
            return found, not self._gaps(sorted([*row, *(t for t, _ in found)]))
        most = limits.spacing if self.end_most is None else self.end_most
        if not row or row[0] - self.low > most:
            found.append(first)
        if not row or self.high - row[-1] > most:
            found.append(last)
        row = sorted([*row, *(t for t, _ in found)])
        for a, b in pairwise(row):
            found += self._between(a, b)
        return self._closer(known, found)

    def _between(self, a: float, b: float) -> list[Spot]:
        step, apart = self.limits.graduation, self.limits.apart
        marks, most = math.ceil((b - a) / step - _SLACK), self.limits.spacing // step
        parts = -(-marks // most)
        found: list[Spot] = []
        for part in range(1, parts):
            t = math.floor(a) + step * (marks * part // parts)
            before = found[-1][0] if found else a
            spot = self._at(t) if before + apart <= t <= b - apart else None
            spot = spot or self.nearest(t, before + apart, b - apart)
            if spot is not None:
                found.append(spot)
        return found

    def _closer(self, taken: list[float], found: list[Spot]) -> tuple[list[Spot], bool]:
        """Dodging may have drawn two neighbours too far apart: put one more between them where one can sit."""
        apart = self.limits.apart
        while True:
            row = sorted([*taken, *(t for t, _ in found)])
            gaps = self._gaps(row)
            more = [
                spot
                for a, b in gaps
                if (spot := self.nearest((a + b) / 2, a + apart, b - apart)) is not None
                and all(abs(spot[0] - t) >= apart for t in row)
            ]
            if not more:
                return found, not gaps
            found += more

    def _gaps(self, row: Sequence[float]) -> list[tuple[float, float]]:
        """Neighbours, the strip's ends among them, that are too far apart."""
        ends = (self.low, *row, self.high)
        return [(a, b) for a, b in pairwise(ends) if b - a > self.limits.spacing + _SLACK + 1]

    def _end(self, way: int) -> Spot | None:
        """The legal spot nearest the strip's beginning (`way` 1) or end (-1); on the wanted line if near."""
        best: Spot | None = None
        for line in self.lines:
            spans = self._on(line)
            if not spans:
                continue
            t = spans[0][0] if way > 0 else spans[-1][1]
            away = t - self.low if way > 0 else self.high - t
            if best is None or way * t < way * best[0]:
                best = (t, line)
            if away <= self.limits.corner + self.limits.graduation:
                return t, line
        return best

    def _at(self, t: int) -> Spot | None:
        """The spot at `t` on the line wanted most of those that have one."""
        for line in self.lines:
            if any(a <= t <= b for a, b in self._on(line)):
                return t, line
        return None

    def nearest(self, t: float, low: float, high: float) -> Spot | None:
        """The legal spot nearest to `t` from `low` to `high`, on a tape mark."""
        step, best, least = self.limits.graduation, None, math.inf
        for line in self.lines:
            for a, b in self._on(line):
                one, other = max(a, ceil_to(math.ceil(low), step)), min(b, floor_to(math.floor(high), step))
                if one > other:
                    continue
                at = min(max(floor_to(math.floor(t), step), one), other)
                if abs(at - t) < least - _SLACK:
                    best, least = (at, line), abs(at - t)
        return best

    def _on(self, line: int) -> list[tuple[int, int]]:
        """The legal stretches of one line, ends on tape marks, ascending."""
        if line not in self._spans:
            step, spans = self.limits.graduation, []
            cut = self.legal.intersection(shapely.LineString([(self.low - 1, line), (self.high + 1, line)]))
            for part in shapely.get_parts(cut):
                if part.is_empty:
                    continue
                ts = shapely.get_coordinates(part)[:, 0]
                a, b = ceil_to(math.ceil(min(ts)), step), floor_to(math.floor(max(ts)), step)
                if a <= b:
                    spans.append((a, b))
            self._spans[line] = sorted(spans)
        return self._spans[line]


def kept_off(legal: shapely.Geometry, spots: Iterable[tuple[float, float]], apart: int) -> shapely.Geometry:
    """Where fasteners may sit that stand far enough from some others."""
    if legal.is_empty:
        return legal
    left, lower, right, upper = legal.bounds
    near = [(t, c) for t, c in spots if left - apart < t < right + apart and lower - apart < c < upper + apart]
    if not near:
        return legal
    # The polygons stand round their circles, so that no place outside them is nearer.
    reach = apart / math.cos(math.pi / (4 * _QUARTER))
    return legal.difference(shapely.MultiPoint(near).buffer(reach, quad_segs=_QUARTER))


def lines_across(low: float, high: float, wanted: float, step: int) -> list[int]:
    """Tape marks from `low` to `high`, nearest to `wanted` first; the middle where no mark lies there [ticks]."""
    marks = range(ceil_to(math.ceil(low), step), floor_to(math.floor(high), step) + 1, step)
    return sorted(marks, key=lambda mark: (abs(mark - wanted), mark)) or [round((low + high) / 2)]

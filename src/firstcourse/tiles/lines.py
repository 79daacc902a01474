"""Joint lines of a pattern, and which of them divide a field so that no part is longer than a limit."""

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import Self

import shapely
from shapely import LineString, MultiPolygon, Polygon

from firstcourse.tiles.model import XY, RepeatCell

# Offsets closer than this are one line; floating point parts them [mm].
_SAME = 1e-3
# Steps that share no measure coarser than this have no lines that recur in the field [mm].
_LEAST_PERIOD = 1.0
_MOST_LINES = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class Lines:
    """Parallel lines at even steps: points where `normal · point = at + k * step`.

    Attributes:
        normal: Unit vector square to the lines.
        at: Offset of one of them [mm].
        step: Distance between neighbours; 0 where the pattern has none this way [mm].
        straight: Grout joints run through along each line; else a line is a joint in some courses only.
    """

    normal: XY
    at: float = 0.0
    step: float = 0.0
    straight: bool = False

    @classmethod
    def none(cls, normal: XY) -> Self:
        """A way across in which the pattern has no joint lines."""
        return cls(normal=normal)

    @property
    def way(self) -> str:
        """The lines' direction in words."""
        if abs(self.normal[0]) < _SAME:
            return "level"
        return "upright" if abs(self.normal[1]) < _SAME else "slanted"

    def nearest(self, at: float) -> float:
        """The line nearest to an offset [mm]."""
        return self.at + round((at - self.at) / self.step) * self.step

    def extent(self, area: Polygon | MultiPolygon) -> float:
        """How far an area reaches square to the lines [mm]."""
        low, high = self.reach(area)
        return high - low

    def line(self, at: float, area: Polygon | MultiPolygon) -> LineString:
        """The line at an offset, long enough to cross an area [mm]."""
        u0, v0, u1, v1 = area.bounds
        along = (self.normal[1], -self.normal[0])
        middle = along[0] * (u0 + u1) / 2 + along[1] * (v0 + v1) / 2
        half = math.hypot(u1 - u0, v1 - v0)
        foot = (self.normal[0] * at, self.normal[1] * at)
        ends = (middle - half, middle + half)
        return LineString([(foot[0] + along[0] * t, foot[1] + along[1] * t) for t in ends])

    def reach(self, area: Polygon | MultiPolygon) -> tuple[float, float]:
        """Least and greatest offset of an area [mm]."""
        points = shapely.get_coordinates(area)
        offsets = points[:, 0] * self.normal[0] + points[:, 1] * self.normal[1]
        return float(offsets.min()), float(offsets.max())


def joint_lines(cell: RepeatCell, shift: XY) -> tuple[Lines, ...]:
    """The joint lines of a pattern where it lies.

    For each direction that edges of the repeat run in: the lines along which no piece lies are grout joints that
    run through; where there are none, the lines along edges, which are joints in some courses.

    Args:
        cell: The repeat.
        shift: Where its origin lies [mm].
    """
    found: list[Lines] = []
    for normal in _normals(cell):
        period = _common(_dot(cell.step_a, normal), _dot(cell.step_b, normal))
        if period is None:
            continue
        origin = _dot(shift, normal)
        spans = [_span(piece.ring, normal) for piece in cell.pieces]
        gaps = _gaps(spans, period)
        if gaps:
            found += [Lines(normal=normal, at=origin + gap, step=period, straight=True) for gap in gaps]
        else:
            # A joint's middle lies half its width before the lower edge of a piece.
            edges = sorted({round((low - cell.joint / 2) % period, 3) for low, _ in spans})
            found += [Lines(normal=normal, at=origin + edge, step=period) for edge in edges]
    return tuple(found)


def positions(
    family: Lines, area: Polygon | MultiPolygon, limit: float, forced: tuple[float, ...] = ()
) -> tuple[tuple[float, ...], bool]:
    """Where soft joints divide an area this way, beside those already placed.

    As few as keep every part within the limit, then as even as the joint lines allow.

    Args:
        family: The lines to choose from.
        area: The area [mm].
        limit: Longest part allowed [mm].
        forced: Offsets of soft joints that are there already [mm].

    Returns:
        Their offsets [mm], and whether tiles are cut along them, because no grout joint runs through there.
    """
    low, high = family.reach(area)
    stops = [low, *sorted(at for at in forced if low < at < high), high]
    found: list[float] = []
    cut = False
    for start, end in pairwise(stops):
        if end - start <= limit:
            continue
        chosen = _on_lines(family, start, end, limit) if family.step else None
        if chosen is None:
            parts = math.ceil((end - start) / limit)
            chosen = [start + (end - start) * k / parts for k in range(1, parts)]
            cut = True
        found += chosen
    return tuple(found), cut or bool(found and not family.straight)


def _on_lines(family: Lines, start: float, end: float, limit: float) -> list[float] | None:
    """Offsets of the fewest lines with no part over the limit, the most even of those; None where none do."""
    for count in range(math.ceil((end - start) / limit) - 1, _MOST_LINES):
        even = (end - start) / (count + 1)
        # Every solution with this few lines has each within `count` steps of its even place.
        best: dict[float, tuple[float, list[float]]] = {start: (0.0, [])}
        for number in range(1, count + 1):
            near = family.nearest(start + number * even)
            places = [near + k * family.step for k in range(-count - 2, count + 3)]
            step: dict[float, tuple[float, list[float]]] = {}
            for place in (p for p in places if start < p < end):
                options = [
                    (cost + (place - last) ** 2, [*path, place])
                    for last, (cost, path) in best.items()
                    if last < place <= last + limit
                ]
                if options:
                    step[place] = min(options)
            best = step
        finished = [(cost + (end - last) ** 2, path) for last, (cost, path) in best.items() if end - last <= limit]
        if finished:
            return min(finished)[1]
    return None


def _normals(cell: RepeatCell) -> list[XY]:
    """Unit normals of the pieces' edges, opposite ones once, level joints first."""
    found: dict[tuple[float, float], XY] = {}
    for piece in cell.pieces:
        for a, b in zip(piece.ring, (*piece.ring[1:], piece.ring[0]), strict=True):
            length = math.dist(a, b)
            if length < _SAME:
                continue
            normal = (-(b[1] - a[1]) / length, (b[0] - a[0]) / length)
            if normal[1] < -1e-9 or (abs(normal[1]) <= 1e-9 and normal[0] < 0):
                normal = (-normal[0], -normal[1])
            found.setdefault((round(normal[0], 6) + 0.0, round(normal[1], 6) + 0.0), normal)
    return sorted(found.values(), key=lambda normal: (-round(normal[1], 6), round(normal[0], 6)))


def _dot(a: XY, b: XY) -> float:
    return a[0] * b[0] + a[1] * b[1]


def _common(a: float, b: float) -> float | None:
    """Greatest length that measures both steps, or None where there is none of any use."""
    a, b = abs(a), abs(b)
    while b > _SAME:
        a, b = b, a % b
        if a - b < _SAME:
            b = 0.0
    return a if a >= _LEAST_PERIOD else None


def _span(ring: tuple[XY, ...], normal: XY) -> tuple[float, float]:
    offsets = [_dot(point, normal) for point in ring]
    return min(offsets), max(offsets)


def _gaps(spans: list[tuple[float, float]], period: float) -> list[float]:
    """Middles of what no piece covers in one period."""
    pieces: list[tuple[float, float]] = []
    for low, high in spans:
        if high - low >= period - _SAME:
            return []
        start = low % period
        pieces.append((start, start + high - low))
    pieces.sort()
    gaps = []
    reached = pieces[0][1]
    for low, high in [*pieces[1:], (pieces[0][0] + period, pieces[0][1] + period)]:
        if low - reached > _SAME:
            gaps.append((reached + low) / 2)
        reached = max(reached, high)
    return gaps

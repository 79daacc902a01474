"""Room for the texts of a drawing: none stands on another, on a fastener or past the page.

The page is a grid of small cells. Cells that texts and fasteners take are closed; lines cost something to stand
on. A text goes where it costs least near the place it belongs to; where there is no room it stands aside in the
open and a thin line leads to its place.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry.base import BaseGeometry

from firstcourse.drawings.model import XY, Box, Drawing, Line, Text

_CELL_MM = 0.5
_CLEAR_MM = 0.4
"""A text keeps this far inside the outline of what it stands in [mm]."""
_CLOSED = 10_000
_COST = {"hatch": 1, "framing": 2, "panel": 2, "chip": 1, "extent": 2, "dimension": 6, "leader": 8}
_DENSE_COST = 5
"""What a fastener costs where texts may cover some of them."""
_USUAL_COST = 4
"""What a cell costs that a line of a layer runs through."""
_FAR_COST = 0.6
"""What a millimetre away from the wished place costs."""
_LEADER_FROM_MM = 2.2
"""A text farther from its place than this gets a line to it [mm]."""
_SHARE = 0.1
_APART = 0.35
"""Before and behind a text so much of its type size stays free of others: what touches reads as one."""


class Placer:
    """Places texts on one drawing.

    Args:
        drawing: With all that is not text; texts that stand already are kept clear of.
        page: What may be written on: left, lower, right, upper [mm on paper].
        dense: Fasteners lie too close together for a text between them: a text may cover some, at a cost.
    """

    def __init__(self, drawing: Drawing, page: Box, *, dense: bool = False) -> None:
        self.drawing, self.page = drawing, page
        self._fastener_cost = _DENSE_COST if dense else _CLOSED
        self.columns = max(1, math.floor((page[2] - page[0]) / _CELL_MM))
        self.rows = max(1, math.floor((page[3] - page[1]) / _CELL_MM))
        self._cost: NDArray[np.float64] = np.zeros((self.rows, self.columns))
        self._draw_lines()
        for circle in drawing.circles:
            turns = np.linspace(0, 2 * math.pi, max(8, math.ceil(circle.radius * 2 * math.pi / _CELL_MM)))
            xs, ys = (
                circle.centre[0] + circle.radius * np.cos(turns),
                circle.centre[1] + circle.radius * np.sin(turns),
            )
            self._charge(xs, ys, self._fastener_cost if circle.layer == "fastener" else _USUAL_COST)
        for text in drawing.texts:
            self._close(text)

    def put(
        self,
        text: Text,
        *,
        within: BaseGeometry | None = None,
        upright_too: bool = False,
        reach: float = 12.0,
        aside: bool = False,
    ) -> Text | None:
        """Add a text and give it as it stands; nothing where there is no room.

        Args:
            text: At the place it would best stand.
            within: What it should stand in.
            upright_too: Whether it may be turned by a quarter where it does not fit level.
            reach: How far from its place it may stand where it is in nothing [mm].
            aside: Whether it may stand anywhere else, with a line to its place.
        """
        ways = (text, replace(text, upright=not text.upright)) if upright_too else (text,)
        for way in ways:
            found = self._in_shape(way, within) if within is not None else self._near(way, reach)
            if found is not None:
                return self._add(found)
        if not aside:
            return None
        found = self._near(text, math.hypot(self.columns, self.rows) * _CELL_MM)
        if found is None:
            return None
        self._lead(found, text.at)
        return self._add(found)

    def put_small_too(self, text: Text, small: float, within: BaseGeometry) -> Text | None:
        """Add a text within a shape, rather in small type than beside it.

        Args:
            text: In the type it would best have.
            small: The least type [mm].
            within: What it names.
        """
        for size in (text.size, small):
            stands = self.put(replace(text, size=size), within=within, upright_too=True)
            if stands is not None:
                return stands
        return self.put(replace(text, size=small), within=within, aside=True)

    def fix(self, text: Text) -> None:
        """Add a text at the place it has."""
        self._add(text)

    def _add(self, text: Text) -> Text:
        self.drawing.texts.append(text)
        self._close(text)
        return text

    def _in_shape(self, text: Text, shape: BaseGeometry) -> Text | None:
        inner = shape.buffer(-_CLEAR_MM)
        if inner.is_empty:
            return None
        left, lower, right, upper = inner.bounds
        window = self._window((left, lower, right, upper))
        across, up = _cells(text)
        if window is None or window[2] - window[0] < across or window[3] - window[1] < up:
            return None
        x0, y0, x1, y1 = window
        xs = self.page[0] + (np.arange(x0, x1) + 0.5) * _CELL_MM
        ys = self.page[1] + (np.arange(y0, y1) + 0.5) * _CELL_MM
        grid_x, grid_y = np.meshgrid(xs, ys)
        shapely.prepare(inner)
        outside = ~shapely.contains_xy(inner, grid_x, grid_y)
        return self._best(text, window, np.where(outside, float(_CLOSED), 0.0))

    def _near(self, text: Text, reach: float) -> Text | None:
        left, lower, right, upper = text.box
        window = self._window((left - reach, lower - reach, right + reach, upper + reach))
        return None if window is None else self._best(text, window, None)

    def _best(
        self, text: Text, window: tuple[int, int, int, int], extra: NDArray[np.float64] | None
    ) -> Text | None:
        """The place in a window of cells that costs least; of places that cost the same the lowest, leftmost."""
        x0, y0, x1, y1 = window
        across, up = _cells(text)
        if x1 - x0 < across or y1 - y0 < up:
            return None
        cost = self._cost[y0:y1, x0:x1]
        if extra is not None:
            cost = cost + extra
        sums = np.zeros((cost.shape[0] + 1, cost.shape[1] + 1))
        sums[1:, 1:] = cost.cumsum(axis=0).cumsum(axis=1)
        covered = sums[up:, across:] - sums[:-up, across:] - sums[up:, :-across] + sums[:-up, :-across]
        left, lower, right, upper = text.box
        wished = ((left - self.page[0]) / _CELL_MM, (lower - self.page[1]) / _CELL_MM)
        # A box is a little smaller than its cells; it stands in their middle.
        slack = ((across * _CELL_MM - (right - left)) / 2, (up * _CELL_MM - (upper - lower)) / 2)
        dx = (np.arange(x0, x0 + covered.shape[1]) + slack[0] / _CELL_MM - wished[0]) * _CELL_MM
        dy = (np.arange(y0, y0 + covered.shape[0]) + slack[1] / _CELL_MM - wished[1]) * _CELL_MM
        total = covered * _SHARE + _FAR_COST * np.hypot(dx[None, :], dy[:, None])
        total[covered >= _CLOSED] = np.inf
        row, column = np.unravel_index(int(np.argmin(np.round(total, 6))), total.shape)
        if not math.isfinite(total[row, column]):
            return None
        moved = (text.at[0] + float(dx[column]), text.at[1] + float(dy[row]))
        return replace(text, at=moved)

    def _lead(self, text: Text, to: XY) -> None:
        left, lower, right, upper = text.box
        near = (min(max(to[0], left), right), min(max(to[1], lower), upper))
        if math.dist(near, to) > _LEADER_FROM_MM:
            self.drawing.lines.append(Line("leader", near, to))
            self._charge_lines([(near, to)], _COST["leader"])

    def _window(self, box: Box) -> tuple[int, int, int, int] | None:
        """Cells that a box reaches into, as far as they lie on the page."""
        x0 = max(0, math.floor((box[0] - self.page[0]) / _CELL_MM))
        y0 = max(0, math.floor((box[1] - self.page[1]) / _CELL_MM))
        x1 = min(self.columns, math.ceil((box[2] - self.page[0]) / _CELL_MM))
        y1 = min(self.rows, math.ceil((box[3] - self.page[1]) / _CELL_MM))
        return (x0, y0, x1, y1) if x0 < x1 and y0 < y1 else None

    def _close(self, text: Text) -> None:
        left, lower, right, upper = text.box
        free = _APART * text.size
        across, up = (0.0, free) if text.upright else (free, 0.0)
        window = self._window((left - across, lower - up, right + across, upper + up))
        if window is not None:
            x0, y0, x1, y1 = window
            self._cost[y0:y1, x0:x1] = _CLOSED

    def _draw_lines(self) -> None:
        by_cost: dict[float, list[tuple[XY, XY]]] = {}
        for line in self.drawing.lines:
            by_cost.setdefault(self._cost_of(line.layer), []).append((line.a, line.b))
        for poly in self.drawing.polys:
            ends = zip(poly.points, (*poly.points[1:], poly.points[0]), strict=True)
            by_cost.setdefault(self._cost_of(poly.layer), []).extend(ends)
        for cost, lines in by_cost.items():
            self._charge_lines(lines, cost)

    def _cost_of(self, layer: str) -> float:
        return self._fastener_cost if layer == "fastener" else _COST.get(layer, _USUAL_COST)

    def _charge_lines(self, lines: Sequence[tuple[XY, XY]], cost: float) -> None:
        """Charge every cell that a line runs through; all lines at once, as a drawing has thousands."""
        starts, ends = (np.array(side, dtype=float) for side in zip(*lines, strict=True))
        parts = [max(1, math.ceil(math.dist(a, b) / (_CELL_MM * 0.8))) for a, b in lines]
        whose = np.repeat(np.arange(len(lines)), [count + 1 for count in parts])
        first = np.cumsum([0, *(count + 1 for count in parts[:-1])])
        steps = (ends - starts) / np.array(parts, dtype=float)[:, None]
        spots = (np.arange(len(whose)) - first[whose])[:, None] * steps[whose] + starts[whose]
        # The last of each is its end itself, whatever the steps come to.
        spots[first + parts] = ends
        self._charge(spots[:, 0], spots[:, 1], cost)

    def _charge(self, xs: NDArray[np.float64], ys: NDArray[np.float64], cost: float) -> None:
        columns = np.floor((xs - self.page[0]) / _CELL_MM).astype(int)
        rows = np.floor((ys - self.page[1]) / _CELL_MM).astype(int)
        on_page = (columns >= 0) & (columns < self.columns) & (rows >= 0) & (rows < self.rows)
        spots = (rows[on_page], columns[on_page])
        self._cost[spots] = np.maximum(self._cost[spots], cost)


def _cells(text: Text) -> tuple[int, int]:
    """Cells across and up that a text takes, its rounding upwards."""
    left, lower, right, upper = text.box
    return math.ceil((right - left) / _CELL_MM), math.ceil((upper - lower) / _CELL_MM)


def meeting(boxes: Sequence[Box]) -> list[tuple[int, int]]:
    """The numbers of boxes that meet, two and two."""
    found = []
    ordered = sorted(range(len(boxes)), key=lambda index: boxes[index])
    for place, one in enumerate(ordered):
        for other in ordered[place + 1 :]:
            if boxes[other][0] >= boxes[one][2]:
                break
            if boxes[one][1] < boxes[other][3] and boxes[other][1] < boxes[one][3]:
                found.append((one, other))
    return found


def placed_apart(boxes: Iterable[Box]) -> bool:
    """Whether no two boxes meet."""
    return not meeting(tuple(boxes))

"""The part of an area under one course as trapezoids side by side: boards are read off without clipping.

A course is cut by hundreds of possible seams before one is taken. Each cut would be a clipping of polygons; on
trapezoids it is a walk from left to right.
"""

from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from functools import cached_property
from itertools import pairwise
from math import inf
from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

from firstcourse.units import TICKS_PER_MM

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
Box = tuple[int, int, int, int]
Span = tuple[int, int]

_TOUCH = 1e-6
"""Trapezoids that share less than this along v [ticks] only touch."""


class Trapezoid(NamedTuple):
    """Between two places along u, lower and upper edge at either [ticks]."""

    left: float
    right: float
    lower_left: float
    lower_right: float
    upper_left: float
    upper_right: float

    def at(self, u: float) -> tuple[float, float]:
        """Lower and upper edge at a place along u."""
        if u <= self.left:
            return self.lower_left, self.upper_left
        if u >= self.right:
            return self.lower_right, self.upper_right
        share = (u - self.left) / (self.right - self.left)
        return (
            self.lower_left + share * (self.lower_right - self.lower_left),
            self.upper_left + share * (self.upper_right - self.upper_left),
        )

    @property
    def area2(self) -> float:
        """Twice the area [ticks²]."""
        mean2 = self.upper_left - self.lower_left + self.upper_right - self.lower_right
        return mean2 * (self.right - self.left)

    def between(self, u: Floats) -> tuple[Floats, Floats]:
        """Lower and upper edge at many places along u, none outside the trapezoid."""
        share = (u - self.left) / (self.right - self.left)
        return (
            self.lower_left + share * (self.lower_right - self.lower_left),
            self.upper_left + share * (self.upper_right - self.upper_left),
        )


class _Part(NamedTuple):
    """A connected part of neighbouring slabs: its ends along u, and what its whole trapezoids reach and cover.

    Attributes:
        cut: Trapezoids of the first and the last slab, of which less than the whole may count.
    """

    left: float
    right: float
    lower: float
    upper: float
    area2: float
    cut: tuple[Trapezoid, ...]


class Strip:
    """An area as slabs of trapezoids.

    Attributes:
        slabs: From left to right; each holds the trapezoids between two neighbouring corners, lowest first.
    """

    def __init__(self, parts: Iterable[shapely.Polygon]) -> None:
        edges = []
        for part in parts:
            for ring in (part.exterior, *part.interiors):
                for (au, av), (bu, bv) in pairwise(shapely.get_coordinates(ring).tolist()):
                    if au != bu:
                        edges.append((au, av, bu, bv) if au < bu else (bu, bv, au, av))
        places = sorted({u for edge in edges for u in (edge[0], edge[2])})
        self._places = places
        self.slabs: list[list[Trapezoid]] = []
        for left, right in pairwise(places):
            middle = (left + right) / 2
            over = sorted(
                (_on(edge, middle), _on(edge, left), _on(edge, right))
                for edge in edges
                if edge[0] <= left and edge[2] >= right
            )
            self.slabs.append(
                [
                    Trapezoid(left, right, below[1], below[2], above[1], above[2])
                    for below, above in zip(over[::2], over[1::2], strict=True)
                ]
            )
        self._known_parts: dict[Span, tuple[_Part, ...]] = {}
        self._meeting: list[list[list[int]]] = [[[] for _ in slab] for slab in self.slabs[:1]]
        self._meeting += [
            [[number for number, other in enumerate(before) if _meet(other, shape)] for shape in slab]
            for before, slab in pairwise(self.slabs)
        ]

    @cached_property
    def is_single(self) -> bool:
        """Whether the area is one part wherever it is cut upright."""
        return (
            bool(self.slabs)
            and all(len(slab) == 1 for slab in self.slabs)
            and all(meeting == [[0]] for meeting in self._meeting[1:])
        )

    def reaches(self, starts: Floats, ends: Floats) -> tuple[Floats, Floats]:
        """Lower and upper edge of the part between each two places, where there is only one [ticks].

        Args:
            starts: Left ends within the area.
            ends: Right ends within the area, of the same shape and each greater than its start.
        """
        lower, upper = np.full(starts.shape, np.inf), np.full(starts.shape, -np.inf)
        for (shape,) in self.slabs:
            left, right = np.maximum(starts, shape.left), np.minimum(ends, shape.right)
            within = right > left
            for u in (left, right):
                low, high = shape.between(u)
                lower = np.where(within & (low < lower), low, lower)
                upper = np.where(within & (high > upper), high, upper)
        return lower, upper

    def sizes(self, starts: Ints, ends: Ints, least_area2: float) -> tuple[Ints, Ints]:
        """Width and height of what `boxes` tells of many pairs of places, where the area is single [ticks].

        Args:
            starts: Left ends.
            ends: Right ends, of the same shape and each greater than its start.
            least_area2: Parts with less than half of this area have no size [ticks²].
        """
        first = np.maximum(starts, round(self._places[0]))
        last = np.minimum(ends, round(self._places[-1]))
        lower, upper = self.reaches(starts.astype(np.float64), ends.astype(np.float64))
        area2 = np.zeros(starts.shape)
        for (shape,) in self.slabs:
            left, right = np.maximum(starts, shape.left), np.minimum(ends, shape.right)
            middle = (left + right) / 2
            (low, high) = shape.between(middle)
            area2 += np.where(right > left, 2 * (high - low) * (right - left), 0)
        there = (upper > lower) & (area2 >= least_area2)
        high = np.rint(np.where(there, upper, 0)) - np.rint(np.where(there, lower, 0))
        return np.where(there, last - first, 0), high.astype(np.int64)

    def boxes(self, start: int, end: int, least_area2: float) -> tuple[Box, ...]:
        """The bounding boxes of the connected parts between two places along u, from the left.

        Args:
            start: Left end [ticks].
            end: Right end [ticks].
            least_area2: Parts with less than half of this area are left out [ticks²].
        """
        if self.is_single:
            return self._only_box(start, end, least_area2)
        first = max(0, bisect_right(self._places, start) - 1)
        last = min(bisect_left(self._places, end), len(self.slabs)) - 1
        found = []
        for part in self._parts(first, last) if first <= last else ():
            lower, upper, area2 = part.lower, part.upper, part.area2
            for shape in part.cut:
                left, right = max(shape.left, start), min(shape.right, end)
                (low_left, high_left), (low_right, high_right) = shape.at(left), shape.at(right)
                lower, upper = min(lower, low_left, low_right), max(upper, high_left, high_right)
                area2 += (high_left - low_left + high_right - low_right) * (right - left)
            if area2 >= least_area2:
                found.append(
                    (round(max(part.left, start)), round(lower), round(min(part.right, end)), round(upper))
                )
        return tuple(found)

    def many_boxes(self, starts: Ints, ends: Ints, least_area2: float) -> tuple[Ints, Ints]:
        """What `boxes` gives for many pairs of places, by the number of the pair.

        Args:
            starts: Left ends [ticks].
            ends: Right ends, of the same shape.
            least_area2: Parts with less than half of this area are left out [ticks²].

        Returns:
            For each box the number of its pair, ascending, and the boxes, of shape (boxes, 4) [ticks].
        """
        from firstcourse.boards.strip_kernels import boxes_between

        places, shape_first, shapes, meet_first, meets = self._arrays
        room = len(starts) * len(shapes)
        pair, boxes = np.zeros(room, np.int64), np.zeros((room, 4), np.int64)
        count = boxes_between(
            places, shape_first, shapes, meet_first, meets, starts, ends, least_area2, pair, boxes
        )
        return pair[:count], boxes[:count]

    @cached_property
    def _arrays(self) -> tuple[Floats, Ints, Floats, Ints, Ints]:
        """The slabs as `strip_kernels` has them."""
        firsts = np.cumsum([0, *(len(slab) for slab in self.slabs)])
        # The first slab has none before it to meet.
        meeting = [
            [first + number for number in numbers]
            for first, slab in zip((0, *firsts[:-2].tolist()), self._meeting, strict=True)
            for numbers in slab
        ]
        return (
            np.array(self._places, np.float64),
            np.array(firsts, np.int64),
            np.array([shape for slab in self.slabs for shape in slab], np.float64).reshape(-1, 6),
            np.cumsum([0, *(len(numbers) for numbers in meeting)], dtype=np.int64),
            np.array([number for numbers in meeting for number in numbers], np.int64),
        )

    def _parts(self, first: int, last: int) -> "tuple[_Part, ...]":
        """The connected parts of some neighbouring slabs."""
        key = (first, last)
        if key not in self._known_parts:
            self._known_parts[key] = self._connected(first, last)
        return self._known_parts[key]

    def _connected(self, first: int, last: int) -> "tuple[_Part, ...]":
        # Slab and number of each trapezoid of a part; None where it was joined to another.
        parts: list[list[tuple[int, int]] | None] = []
        before: list[int] = []
        for index in range(first, last + 1):
            here: list[int] = []
            for number in range(len(self.slabs[index])):
                part = [(index, number)]
                for touched in {before[other] for other in self._meeting[index][number]} if before else ():
                    part += parts[touched] or []
                    parts[touched] = None
                    before = [len(parts) if its == touched else its for its in before]
                    here = [len(parts) if its == touched else its for its in here]
                here.append(len(parts))
                parts.append(part)
            before = here
        found = []
        for members in parts:
            if members is None:
                continue
            shapes = [self.slabs[index][number] for index, number in members]
            inner = [self.slabs[index][number] for index, number in members if first < index < last]
            found.append(
                _Part(
                    min(shape.left for shape in shapes),
                    max(shape.right for shape in shapes),
                    min((min(shape.lower_left, shape.lower_right) for shape in inner), default=inf),
                    max((max(shape.upper_left, shape.upper_right) for shape in inner), default=-inf),
                    sum(shape.area2 for shape in inner),
                    tuple(self.slabs[index][number] for index, number in members if index in (first, last)),
                )
            )
        return tuple(found)

    def _only_box(self, start: int, end: int, least_area2: float) -> tuple[Box, ...]:
        first, last = max(start, self._places[0]), min(end, self._places[-1])
        lower, upper, area2 = inf, -inf, 0.0
        for index in range(max(0, bisect_right(self._places, start) - 1), len(self.slabs)):
            shape = self.slabs[index][0]
            if shape.left >= end:
                break
            left, right = max(shape.left, start), min(shape.right, end)
            (low_left, high_left), (low_right, high_right) = shape.at(left), shape.at(right)
            lower, upper = min(lower, low_left, low_right), max(upper, high_left, high_right)
            area2 += (high_left - low_left + high_right - low_right) * (right - left)
        if upper <= lower or area2 < least_area2:
            return ()
        return ((round(first), round(lower), round(last), round(upper)),)

    def upright(self, u: float) -> tuple[Span, ...]:
        """The stretches along v that a line at `u` covers, lowest first; those of 1 mm or less are left out."""
        index = bisect_right(self._places, u) - 1
        if not 0 <= index < len(self.slabs):
            return ()
        ends = [shape.at(u) for shape in self.slabs[index]]
        return tuple((round(lower), round(upper)) for lower, upper in ends if upper - lower > TICKS_PER_MM)


def warm() -> None:
    """Compile what is not yet on disk, by asking for the boards of a small strip."""
    Strip([shapely.box(0, 0, 2, 2)]).many_boxes(np.array([0]), np.array([2]), 1.0)


def _on(edge: tuple[float, float, float, float], u: float) -> float:
    au, av, bu, bv = edge
    if av == bv or u == au:
        return av
    return bv if u == bu else av + (bv - av) * (u - au) / (bu - au)


def _meet(one: Trapezoid, other: Trapezoid) -> bool:
    """Whether a trapezoid and one right of it share more than a point."""
    return min(one.upper_right, other.upper_left) - max(one.lower_right, other.lower_left) > _TOUCH

"""The ground that seams are laid over: where a surface carries boards, and where edges may fall."""

from collections.abc import Hashable, Iterable
from functools import cached_property

import shapely
from shapely import box as shapely_box

from firstcourse.boards.courses import Span
from firstcourse.boards.field import BoardField
from firstcourse.boards.strips import Box, Strip
from firstcourse.geometry import LEAST_AREA2, Ring, from_shapely, rectangle
from firstcourse.units import TICKS_PER_MM

Area = tuple[Ring, tuple[Ring, ...]]


class CourseGround:
    """What one course covers, whatever sheets it is laid with; outlines once worked out are kept."""

    def __init__(self, field: BoardField, span: Span) -> None:
        self.span = span
        self._narrow = field.limits.least_piece
        self._field = field
        # Where the region is one rectangle all over the course, nothing has to be clipped.
        self._sides = field.sides_between(*span)
        self._areas: dict[Span, tuple[Area, ...]] = {}
        self._boxes: dict[Span, tuple[Box, ...]] = {}
        self._runs: dict[int, tuple[Span, ...]] = {}

    @cached_property
    def strip(self) -> shapely.Geometry:
        """What the course covers."""
        lower, upper = self.span
        if self._sides is not None:
            return shapely_box(self._sides[0], lower, self._sides[1], upper)
        left, _, right, _ = self._field.box
        return self._field.region.intersection(shapely_box(left, lower, right, upper))

    @cached_property
    def ends(self) -> Span:
        """Left and right end of the course [ticks]; equal where nothing is to be covered."""
        if self._sides is not None:
            return self._sides
        if self.strip.is_empty:
            return 0, 0
        left, _, right, _ = self.strip.bounds
        return round(left), round(right)

    @cached_property
    def area(self) -> float:
        """What the course covers [ticks²]."""
        if self._sides is not None:
            return float((self._sides[1] - self._sides[0]) * (self.span[1] - self.span[0]))
        return float(self.strip.area)

    @cached_property
    def filled(self) -> tuple[shapely.Polygon, ...]:
        """What the course covers, its parts without the holes that no board is narrower than."""
        parts = [part for part in shapely.get_parts(self.strip) if part.geom_type == "Polygon"]
        return tuple(_without_holes(part, self._narrow) if part.interiors else part for part in parts)

    @cached_property
    def is_box(self) -> bool:
        """Whether every board of the course, holes left out, is a rectangle as high as the course."""
        if self._sides is not None:
            return True
        left, right = self.ends
        area = (right - left) * (self.span[1] - self.span[0])
        return bool(area > 0 and len(self.filled) == 1 and self.filled[0].area == area)

    @cached_property
    def _is_whole(self) -> bool:
        """Whether the course covers one rectangle without holes."""
        if self._sides is not None:
            return True
        return self.is_box and not any(part.interiors for part in shapely.get_parts(self.strip))

    @cached_property
    def likeness(self) -> Hashable:
        """Equal for courses of one field that may be broken alike, at the same cost."""
        field, (lower, upper) = self._field, self.span
        if not self.is_box or not field.borne_throughout:
            return self.span
        return self.ends, upper - lower, field.limbs_barred(self.span)

    @cached_property
    def shapes(self) -> Strip:
        """What the course covers, as trapezoids; holes that no board is narrower than are left out.

        A board with such a hole reaches as far as without it.
        """
        return Strip(self.filled)

    @cached_property
    def unbroken(self) -> tuple[Span, ...]:
        """Stretches along u that lie on one board each, unless a seam parts them [ticks]."""
        lower, upper = self.span
        left, right = self.ends
        if self.is_box:
            return ((left, right),)
        levels = (lower + TICKS_PER_MM, (lower + upper) / 2, upper - TICKS_PER_MM)
        return tuple(
            run for level in levels for run in stretches(self.strip, ((left, level), (right, level)), axis=0)
        )

    def upright(self, u: float) -> tuple[Span, ...]:
        """The stretches along v that a line at `u` covers, lowest first; those of 1 mm or less are left out."""
        if self._sides is None:
            return self.shapes.upright(u)
        (left, right), (lower, upper) = self._sides, self.span
        return (self.span,) if left <= u < right and upper - lower > TICKS_PER_MM else ()

    def longer(self, start: int, end: int, most: int) -> bool:
        """Whether a board between two edges is plainly longer than `most`, told without its outline [ticks]."""
        return end - start > most and any(min(b, end) - max(a, start) > most for a, b in self.unbroken)

    def areas(self, start: int, end: int) -> tuple[Area, ...]:
        """The boards between two edges: every connected part of the region there."""
        if start >= end:
            # A tapering course may end before a seam that its neighbours have.
            return ()
        key = (start, end)
        if key not in self._areas:
            if self._sides is not None:
                self._areas[key] = tuple((rectangle(*box), ()) for box in self.boxes(start, end))
            else:
                self._areas[key] = tuple(from_shapely(self._part(start, end)))
        return self._areas[key]

    def boxes(self, start: int, end: int) -> tuple[Box, ...]:
        """The bounding boxes of the boards between two edges."""
        if self.is_box:
            left, right = self.ends
            first, last = max(start, left), min(end, right)
            whole = last > first and 2 * (last - first) * (self.span[1] - self.span[0]) >= LEAST_AREA2
            return ((first, self.span[0], last, self.span[1]),) if whole else ()
        key = (start, end)
        if key not in self._boxes:
            self._boxes[key] = self.shapes.boxes(start, end, LEAST_AREA2)
        return self._boxes[key]

    def runs(self, edge: int, gap: int) -> tuple[Span, ...]:
        """The stretches along v of a seam whose gap begins at `edge`, lowest first."""
        if edge not in self._runs:
            lower, upper = self.span
            middle = edge + gap / 2
            if self._is_whole and self.ends[0] < middle < self.ends[1]:
                self._runs[edge] = (self.span,) if upper - lower > TICKS_PER_MM else ()
            else:
                self._runs[edge] = stretches(self.strip, ((middle, lower), (middle, upper)), axis=1)
        return self._runs[edge]

    def _part(self, start: int, end: int) -> shapely.Geometry:
        # Clipping by a rectangle would be faster, but fails on some outlines that touch the rectangle.
        return self.strip.intersection(shapely_box(start, self.span[0], end, self.span[1]))


def _without_holes(part: shapely.Polygon, narrow: int) -> shapely.Polygon:
    wide = [ring for ring in part.interiors if ring.bounds[2] - ring.bounds[0] > narrow]
    return shapely.Polygon(part.exterior, wide)


def stretches(shape: shapely.Geometry, line: Iterable[tuple[float, float]], axis: int) -> tuple[Span, ...]:
    """The parts of an axis-parallel line within a shape, as ordinates along `axis`, ascending [ticks]."""
    cut = shapely.intersection(shape, shapely.LineString(list(line)))
    found = []
    for part in shapely.get_parts(cut):
        ends = [round(point[axis]) for point in shapely.get_coordinates(part)]
        if ends and max(ends) - min(ends) > TICKS_PER_MM:
            found.append((min(ends), max(ends)))
    return tuple(sorted(found))

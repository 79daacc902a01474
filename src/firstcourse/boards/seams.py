"""Seams along each course: where they may run, and the cheapest set that staggers against the course below."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from math import ceil

import numpy as np

from firstcourse.boards.courses import Span, bearing_edge
from firstcourse.boards.field import BoardField
from firstcourse.boards.limbs import Barred, is_barred
from firstcourse.boards.seam_ground import Area, CourseGround
from firstcourse.geometry import LEAST_AREA2
from firstcourse.units import TICKS_PER_MM, ceil_to, floor_to

_MANY_EDGES = 30
"""From so many places on, costs of boards of several parts come from compiled code, which has to be loaded."""
_MOST_PATTERNS, _KEPT_PER_SEAM, _KEPT_LAYERS = 48, 4, 16
SLIVER, UNSTAGGERED, PIECE = 200, 100_000, 10
"""Weights of one piece below the least size, one unstaggered seam, one piece."""
ADDED, NEAR_PANEL, LIMB = 100, 50_000, 70_000
"""Weights of one member to add behind a seam, one seam near a panel joint, one that leaves a narrow limb."""


@dataclass(frozen=True, slots=True)
class Pattern:
    """One course's seams: left edges of the gaps [ticks], and what they cost."""

    seams: tuple[int, ...]
    cost: int


class Course:
    """One course of a field: its candidate seams and the boards between any two of them."""

    def __init__(
        self, field: BoardField, span: Span, length: int, height: int, *, ground: CourseGround | None = None
    ) -> None:
        self.field, self.span, self.length, self.height = field, span, length, height
        self.ground = ground or CourseGround(field, span)

    @property
    def ends(self) -> Span:
        """Left and right end of the course [ticks]; equal where nothing is to be covered."""
        return self.ground.ends

    @cached_property
    def candidates(self) -> tuple[int, ...]:
        """Left edges of gaps where a seam may run, ascending."""
        field = self.field
        left, right = self.ends
        edges = {edge for edge in self._on_members() if self.carried(edge)}
        if field.carriers is None or field.loose:
            edges.update(self._free(left, right))
        least = field.limits.graduation * 2
        return tuple(
            sorted(
                edge
                for edge in edges
                if left + least <= edge <= right - field.limits.gap - least
                and (field.loose >= 2 or not self.barred(edge))
                and not self.leaves_limb(edge)
            )
        )

    @cached_property
    def _limbs(self) -> tuple[Barred, ...]:
        return self.field.limbs_barred(self.span)

    @cached_property
    def _limbs_left(self) -> tuple[Barred, ...]:
        return replace(self.field, loose=0).limbs_barred(self.span)

    def leaves_limb(self, edge: int) -> bool:
        """Whether a seam there would leave a limb too narrow or unfastened, or run at an opening's corner."""
        if is_barred(edge, self._limbs):
            return True
        least = min(self.field.limits.short_seam, self.span[1] - self.span[0])
        middle = edge + self.field.limits.gap / 2
        return self.field.loose < 3 and any(high - low < least for low, high in self.ground.upright(middle))

    def _on_members(self) -> Iterable[int]:
        origin = self.field.grid.origin[0]
        for start, _, end, _ in self.field.carriers or ():
            if (edge := bearing_edge(start, end, self.field, origin)) is not None:
                yield edge

    def barred(self, edge: int) -> bool:
        """Whether a seam there stands too near a panel joint."""
        gap = self.field.limits.gap
        return any(edge + gap > start and edge < end for start, end in self.field.barred)

    def carried(self, edge: int) -> bool:
        """Whether a seam there bears on members over all its height, both boards enough."""
        field = self.field
        if field.carriers is None:
            return True
        bearing, gap, step = field.limits.bearing, field.limits.gap, field.limits.graduation
        spans = sorted(
            (lower, upper)
            for start, lower, end, upper in field.carriers + field.cross
            if edge - start >= bearing and end - edge - gap >= bearing
        )
        return all(covered(run, spans, step) for run in self.ground.upright(edge + gap / 2))

    def runs(self, edge: int) -> tuple[Span, ...]:
        """The stretches along v of a seam there, lowest first."""
        return self.ground.runs(edge, self.field.limits.gap)

    def _free(self, left: int, right: int) -> Iterable[int]:
        """Whole boards from either end, each also shortened in steps, so that courses can stagger."""
        origin, step, gap = self.field.grid.origin[0], self.field.limits.graduation, self.field.limits.gap
        length = self.length // step * step
        shift = max(step, ceil_to(self.field.limits.stagger // 2, step))
        for cut in range(0, length, shift):
            for at in range(left + length - cut, right, length + gap):
                yield floor_to(at - origin, step) + origin
            for at in range(right - length - gap + cut, left, -(length + gap)):
                yield ceil_to(at - origin, step) + origin
        for start, end in self._limbs:
            yield floor_to(start - origin, step) + origin
            yield ceil_to(end - origin, step) + origin
        for start, end in self.field.barred:
            yield floor_to(start - gap - origin, step) + origin
            yield ceil_to(end - origin, step) + origin

    def areas(self, start: int, end: int) -> tuple[Area, ...]:
        """The boards between two edges."""
        return self.ground.areas(start, end)

    @property
    def least_cost(self) -> int:
        """What no pattern of the course goes below: as many boards as its area and its length ask for."""
        left, right = self.ends
        if left == right:
            return 0
        gap, step = self.field.limits.gap, self.field.limits.graduation
        across = gap * (self.span[1] - self.span[0])
        # A hair is taken off: floating point areas are not exact, and specks of area are no boards.
        area = self.ground.area * (1 - 1e-6) - LEAST_AREA2
        by_area = ceil((area + across) / (self.length * self.height + across))
        longest = max((b - a for a, b in self.ground.unbroken), default=0)
        by_length = ceil((longest - step + gap) / (max(self.length, self.height) + step + gap))
        return int(PIECE * max(1, by_area, by_length))

    def cost(self, start: int, end: int) -> int | None:
        """What the boards between two edges cost; None where one does not fit a sheet."""
        if self.ground.longer(start, end, max(self.length, self.height) + self.field.limits.graduation):
            return None
        step, least = self.field.limits.graduation, self.field.limits.least_piece
        total = 0
        for left, lower, right, upper in self.ground.boxes(start, end):
            width, height = ceil_to(right - left, step), ceil_to(upper - lower, step)
            if not fits(width, height, self.length, self.height):
                return None
            total += PIECE
            if min(width, height) < least and min(width, height) > TICKS_PER_MM:
                total += SLIVER
        return total

    @cached_property
    def patterns(self) -> tuple[Pattern, ...]:
        """The cheapest seam sets of the course, best first."""
        left, right = self.ends
        if left == right:
            return (Pattern((), 0),)
        gap = self.field.limits.gap
        # Cheapest completions from the left; each state keeps its few best sets of seams, as (cost, seams).
        best: dict[int, list[tuple[int, tuple[int, ...]]]] = {left: [(0, ())]}
        costs = self._costs((*self.candidates, right))
        for edge in (*self.candidates, right):
            found: list[tuple[int, tuple[int, ...]]] = []
            extra = self._seam_cost(edge) if edge != right else 0
            seam = () if edge == right else (edge,)
            for start, patterns in best.items():
                if start >= edge or (cost := costs[start, edge]) is None:
                    continue
                cost += extra
                found += [(before + cost, seams + seam) for before, seams in patterns]
            found.sort()
            if edge == right:
                return tuple(Pattern(seams, cost) for cost, seams in found[:_MOST_PATTERNS])
            if found:
                best[edge + gap] = found[:_KEPT_PER_SEAM]
        return ()

    def _costs(self, edges: Sequence[int]) -> Mapping[Span, int | None]:
        """What `cost` says of any two places where a board may begin and end; asked one by one if need be."""
        if self.ground.is_box:
            return _Asked(self._box_cost())
        if not self.ground.shapes.is_single:
            return self._many_costs(edges) if len(edges) >= _MANY_EDGES else _Asked(self.cost)
        gap, step, least = self.field.limits.gap, self.field.limits.graduation, self.field.limits.least_piece
        ends = np.array(edges, np.int64)
        starts = np.array([self.ends[0], *(edge + gap for edge in edges[:-1])], np.int64)
        first, last = np.nonzero(ends[None, :] > starts[:, None])
        begins, stops = starts[first], ends[last]
        widths, heights = self.ground.shapes.sizes(begins, stops, LEAST_AREA2)
        there = heights > 0
        widths, heights = -(-widths // step) * step, -(-heights // step) * step
        long, short = self.length, self.height
        fit = ((widths <= long) & (heights <= short)) | ((widths <= short) & (heights <= long)) | ~there
        narrow = np.minimum(widths, heights)
        costs = np.where(there, PIECE + np.where((narrow < least) & (narrow > TICKS_PER_MM), SLIVER, 0), 0)
        listed = zip(begins.tolist(), stops.tolist(), costs.tolist(), fit.tolist(), strict=True)
        return {(start, end): cost if fits else None for start, end, cost, fits in listed}

    def _many_costs(self, edges: Sequence[int]) -> Mapping[Span, int | None]:
        """`cost` of any two places at once, where boards may be of several parts."""
        gap, step, least = self.field.limits.gap, self.field.limits.graduation, self.field.limits.least_piece
        ends = np.array(edges, np.int64)
        starts = np.array([self.ends[0], *(edge + gap for edge in edges[:-1])], np.int64)
        first, last = np.nonzero(ends[None, :] > starts[:, None])
        begins, stops = starts[first], ends[last]
        pair, boxes = self.ground.shapes.many_boxes(begins, stops, LEAST_AREA2)
        widths, heights = (-(-(boxes[:, far] - boxes[:, near]) // step) * step for near, far in ((0, 2), (1, 3)))
        long, short = self.length, self.height
        fit = ((widths <= long) & (heights <= short)) | ((widths <= short) & (heights <= long))
        narrow = np.minimum(widths, heights)
        each = PIECE + np.where((narrow < least) & (narrow > TICKS_PER_MM), SLIVER, 0)
        costs = np.bincount(pair, weights=each, minlength=len(begins)).astype(np.int64)
        unfit = np.bincount(pair[~fit], minlength=len(begins)) > 0
        listed = zip(begins.tolist(), stops.tolist(), costs.tolist(), unfit.tolist(), strict=True)
        return {(start, end): None if no_fit else cost for start, end, cost, no_fit in listed}

    def _box_cost(self) -> Callable[[int, int], int | None]:
        """`cost` where every board is a rectangle as high as the course: its length alone decides."""
        (left, right), (lower, upper) = self.ground.ends, self.span
        step, least = self.field.limits.graduation, self.field.limits.least_piece
        high = upper - lower
        tall = ceil_to(high, step)
        ways = ((self.length, self.height), (self.height, self.length))
        longest = max((long for long, short in ways if tall <= short), default=0)
        low = TICKS_PER_MM < tall < least

        def cost(start: int, end: int) -> int | None:
            along = (end if end < right else right) - (start if start > left else left)
            if along <= 0 or 2 * along * high < LEAST_AREA2:
                return 0
            wide = -(-along // step) * step
            if wide > longest:
                return None
            small = low if tall <= wide else TICKS_PER_MM < wide < least
            return PIECE + SLIVER if small else PIECE

        return cost

    def _seam_cost(self, edge: int) -> int:
        cost = 0
        if self.field.loose:
            cost += (0 if self.carried(edge) else ADDED) + (NEAR_PANEL if self.barred(edge) else 0)
        if self.field.loose == 3 and is_barred(edge, self._limbs_left):
            cost += LIMB
        return cost


class _Asked(dict[Span, int | None]):
    """Costs asked for when they are wanted."""

    def __init__(self, cost: Callable[[int, int], int | None]) -> None:
        super().__init__()
        self._cost = cost

    def __missing__(self, key: Span) -> int | None:
        return self._cost(*key)


def covered(run: Span, spans: list[Span], slack: int) -> bool:
    """Whether ascending spans cover a stretch but for `slack` at either end [ticks]."""
    at = run[0] + slack
    for lower, upper in spans:
        if lower <= at:
            at = max(at, upper)
    return at >= run[1] - slack


def fits(width: int, height: int, length: int, other: int) -> bool:
    """Whether a blank fits a sheet either way round [ticks]."""
    return (width <= length and height <= other) or (width <= other and height <= length)


def stagger_cost(field: BoardField, below: Pattern, above: Pattern) -> int:
    """What seams of neighbouring courses cost that stand closer than the stagger; in line costs most."""
    if not below.seams or not above.seams:
        return 0
    stagger, cost = field.limits.stagger, 0
    for seam in above.seams:
        nearest = min([abs(seam - other) for other in below.seams])
        if nearest < stagger:
            cost += UNSTAGGERED * (50 if nearest <= field.limits.gap else 1)
    return cost


def cheapest(field: BoardField, courses: list[Course]) -> tuple[int, tuple[Pattern, ...]] | None:
    """The seams of all courses that cost least together, and that cost; None where a course cannot be laid."""
    layer: list[tuple[int, tuple[Pattern, ...]]] = [(0, ())]
    for course in courses:
        patterns = course.patterns
        if not patterns:
            return None
        grown: list[tuple[int, tuple[Pattern, ...]]] = []
        for pattern in patterns:
            best: tuple[int, tuple[Pattern, ...]] | None = None
            # The cheapest below come first, so that most need not be compared.
            for cost, chosen in layer:
                if best is not None and cost + pattern.cost >= best[0]:
                    break
                full = cost + pattern.cost + (stagger_cost(field, chosen[-1], pattern) if chosen else 0)
                if best is None or full < best[0]:
                    best = (full, (*chosen, pattern))
            if best is not None:
                grown.append(best)
        grown.sort(key=lambda item: item[0])
        layer = grown[:_KEPT_LAYERS]
    return layer[0]

"""A surface's courses with their seams still open: what is free before seams and cuts are chosen together."""

from collections.abc import Hashable, Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations_with_replacement

import numpy as np

from firstcourse.boards.courses import Span, placed, spans_beside
from firstcourse.boards.field import BoardField, field_of
from firstcourse.boards.layout import Choice
from firstcourse.boards.members import row_added, row_near_panel
from firstcourse.boards.seam_ground import CourseGround
from firstcourse.boards.seams import Course
from firstcourse.geometry import LEAST_AREA2
from firstcourse.plan import Stock, Surface
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, Tape, ceil_to, floor_to

MOST_STACKS = 10
"""Stacks kept for each way courses run and each side of the sheets they are made for."""
GRID_MM, MOST_GRID = 200, 12
"""Where any place carries a seam, one is tried this often, and so many times at most, besides at whole boards and
half ones from either end."""
_PARTS = (1, 2, 3, 4)
"""Courses are tried as high as a sheet's side and these parts of it, and two thirds."""

Size = tuple[int, int]
Boards = tuple[int, int, tuple[Size, ...]]
"""The boards between two edges of a course, by their numbers: (from, to, blanks)."""


@dataclass(frozen=True)
class OpenCourse:
    """One course whose seams are still to be chosen.

    Attributes:
        edges: Left edges of gaps, ascending [ticks]: the course's left end less a gap, each place where a seam may
            run, the right end.
        boards: The boards between any two edges where they are legal.
    """

    edges: tuple[int, ...]
    boards: tuple[Boards, ...]


@dataclass(frozen=True)
class OpenStack:
    """Courses of one surface, lowest first (leftmost where they run along v).

    Attributes:
        along_v: Courses run along v; spans and edges are then read with u and v changed.
        length: Side of the sheets along the course.
        height: Side across it.
    """

    along_v: bool
    length: int
    height: int
    spans: tuple[Span, ...]
    courses: tuple[OpenCourse, ...]

    def choice(self, stock: str, seams: tuple[tuple[int, ...], ...]) -> Choice:
        """The layout with these edge numbers, ends included, chosen in each course."""
        return Choice(
            stock=stock,
            along_v=self.along_v,
            length=self.length,
            height=self.height,
            spans=self.spans,
            seams=tuple(
                tuple(course.edges[number] for number in row[1:-1])
                for course, row in zip(self.courses, seams, strict=True)
            ),
            cost=0,
        )


def open_stacks(surface: Surface, stock: tuple[Stock, ...], rules: RuleSet, tape: Tape) -> tuple[OpenStack, ...]:
    """Every stack of courses worth weighing with its open seams; none where no layout keeps every rule.

    Of all stacks those are kept that have the fewest joints without members and the fewest courses in which a
    board below the least size cannot be helped.

    Args:
        surface: What is to be boarded, with its framing.
        stock: Sheets of one thickness and family that its boards may be cut from.
        rules: Rules in force.
        tape: Tape whose graduation edges lie on.
    """
    found: list[tuple[int, OpenStack]] = []
    sides = sorted({side for sheet in stock for side in sheet.size}, reverse=True)
    for along_v in (False, True):
        field = field_of(surface, rules, tape.graduation, along_v=along_v)
        if field.region.is_empty or not sides:
            return ()
        made: dict[Hashable, tuple[OpenCourse, bool] | None] = {}
        grounds: dict[Span, CourseGround] = {}
        added: dict[int, bool] = {}
        seen: set[tuple[Span, ...]] = set()
        plain = _is_plain(field)
        for spans in _stacked(field, sides, both_ways=not plain):
            tops = [upper for _, upper in spans[:-1]]
            if spans in seen or any(row_near_panel(field, top) for top in tops):
                continue
            seen.add(spans)
            courses = []
            for span in spans:
                if span not in grounds:
                    grounds[span] = CourseGround(field, span)
                like = grounds[span].likeness
                if like not in made:
                    made[like] = _open_course(field, grounds[span], stock, sides, along_v=along_v)
                courses.append(made[like])
            if None in courses:
                continue
            for top in tops:
                if top not in added:
                    added[top] = row_added(field, top)
            faults = sum(added[top] for top in tops)
            faults += sum(course is not None and course[1] for course in courses)
            stack = OpenStack(
                along_v=along_v,
                length=sides[0],
                height=max(upper - lower for lower, upper in spans),
                spans=spans,
                courses=tuple(course[0] for course in courses if course is not None),
            )
            found.append((faults, stack))
    least = min((faults for faults, _ in found), default=0)
    return tuple(stack for faults, stack in found if faults == least)


def _stacked(field: BoardField, sides: list[int], *, both_ways: bool) -> Iterator[tuple[Span, ...]]:
    """The stacks of courses that are tried, in order; where boards are up those that run on from their edges."""
    if field.up:
        step = field.limits.graduation
        for height in dict.fromkeys(side // part // step * step for part in _PARTS for side in sides):
            if height >= field.limits.least_piece:
                yield from spans_beside(field, height)
        return
    for heights in _height_sets(field, sides, both_ways=both_ways):
        spans = placed(field, list(heights), max(heights))
        if spans is not None:
            yield spans


def _is_plain(field: BoardField) -> bool:
    """Whether the surface is a rectangle without openings."""
    left, lower, right, upper = field.box
    return bool(field.region.area == (right - left) * (upper - lower))


def _height_sets(field: BoardField, sides: list[int], *, both_ways: bool) -> list[tuple[int, ...]]:
    """Heights that fill the surface, the greatest first or also last; few courses and few heights first."""
    _, lower, _, upper = field.box
    total, gap, step = upper - lower, field.limits.gap, field.limits.graduation
    least = min(field.limits.least_piece, total)
    sides = [side // step * step for side in sides]
    kept: list[tuple[int, ...]] = []
    for most in sides:
        bases = sorted(
            {side // part // step * step for side in sides for part in _PARTS}
            | {side * 2 // 3 // step * step for side in sides},
            reverse=True,
        )
        bases = [base for base in bases if least <= base <= most]
        fewest = -(-(total + gap) // (most + gap))
        found: set[tuple[int, ...]] = set()
        for number in (fewest, fewest + 1):
            net = total - gap * (number - 1)
            for full in range(number):
                found.add((*[most] * full, *_even(net - full * most, number - full, step)))
            # Sets of many courses are left to the even ones: there are too many others.
            if number <= 4:
                for some in combinations_with_replacement(bases, number - 1):
                    found.add(tuple(sorted((*some, net - sum(some)), reverse=True)))
        legal = [heights for heights in found if all(least <= height <= most for height in heights)]
        legal.sort(key=lambda heights: (len(heights), len(set(heights)), heights))
        for heights in legal[:MOST_STACKS]:
            kept += [heights, heights[::-1]] if both_ways else [heights]
    return list(dict.fromkeys(kept))


def _even(total: int, number: int, step: int) -> list[int]:
    """`total` in `number` parts as alike as graduations let them be, the last taking the rest."""
    part = -(-total // number // step) * step
    return [*[part] * (number - 1), total - part * (number - 1)]


def _open_course(
    field: BoardField, ground: CourseGround, stock: tuple[Stock, ...], sides: list[int], *, along_v: bool
) -> tuple[OpenCourse, bool] | None:
    """A course with its open seams, and whether a board below the least size cannot be helped."""
    course = Course(field, ground.span, sides[0], sides[-1], ground=ground)
    left, right = course.ends
    gap = field.limits.gap
    if left == right:
        return OpenCourse((0, 1), ((0, 1, ()),)), False
    inner = set(course.candidates)
    if field.carriers is None:
        inner |= {
            edge
            for edge in _grid(field, left, right, sides)
            if not course.barred(edge) and not course.leaves_limb(edge)
        }
    edges = (left - gap, *sorted(inner), right)
    boards, slivers = _legal(course, edges, stock, along_v=along_v)
    if _reaches(boards, len(edges) - 1):
        return OpenCourse(edges, tuple(boards)), False
    every = sorted([*boards, *slivers])
    return (OpenCourse(edges, tuple(every)), True) if _reaches(every, len(edges) - 1) else None


def _legal(
    course: Course, edges: tuple[int, ...], stock: tuple[Stock, ...], *, along_v: bool
) -> tuple[list[Boards], list[Boards]]:
    """What lies between any two edges and fits a sheet: without boards below the least size, and with them.

    Blanks are as they lie on the surface, so turned where courses run along v.
    """
    ground, gap, step = course.ground, course.field.limits.gap, course.field.limits.graduation
    least, most = course.field.limits.least_piece, course.length + step
    if ground.is_box:
        return _legal_boxes(course, edges, stock, along_v=along_v)
    boards: list[Boards] = []
    slivers: list[Boards] = []
    if ground.shapes.is_single:
        at = np.array(edges)
        first, last = np.nonzero((at[None, :] - at[:, None] > gap) & (at[None, :] - at[:, None] - gap <= most))
        starts, ends = at[first] + gap, at[last]
        lower, upper = ground.shapes.reaches(starts.astype(np.float64), ends.astype(np.float64))
        # Where an outline only touches the course there is no part, and no board.
        there = upper > lower
        high = np.where(there, np.rint(upper) - np.rint(np.where(there, lower, 0)), 0).astype(np.int64)
        heights, widths = -(-high // step) * step, -(-(ends - starts) // step) * step
        fit = ~there
        for sheet in stock:
            for long, short in (sheet.size, sheet.size[::-1]):
                fit |= (widths <= long) & (heights <= short)
        narrow = np.minimum(heights, widths)
        small = there & (narrow < least) & (narrow > TICKS_PER_MM)
        if along_v:
            widths, heights = heights, widths
        for which, listed in ((fit & ~small, boards), (fit & small, slivers)):
            found = (part[which].tolist() for part in (first, last, widths, heights))
            listed += [(i, j, ((w, h),) if w and h else ()) for i, j, w, h in zip(*found, strict=True)]
        return boards, slivers
    at = np.array(edges)
    # Two seams side by side would be one wide gap with no board between.
    first, last = np.nonzero(at[None, :] - at[:, None] > gap)
    starts, ends = at[first] + gap, at[last]
    near = np.ones(len(starts), np.bool_)
    for left, right in ground.unbroken:
        near &= np.minimum(right, ends) - np.maximum(left, starts) <= most
    first, last, starts, ends = first[near], last[near], starts[near], ends[near]
    pair, boxes = ground.shapes.many_boxes(starts, ends, LEAST_AREA2)
    widths, heights = (-(-(boxes[:, far] - boxes[:, near]) // step) * step for near, far in ((0, 2), (1, 3)))
    fit = np.zeros(len(pair), np.bool_)
    for sheet in stock:
        for long, wide in (sheet.size, sheet.size[::-1]):
            fit |= (widths <= long) & (heights <= wide)
    narrow = np.minimum(widths, heights)
    unfit = np.bincount(pair[~fit], minlength=len(starts)) > 0
    small = np.bincount(pair[(narrow > TICKS_PER_MM) & (narrow < least)], minlength=len(starts)) > 0
    if along_v:
        widths, heights = heights, widths
    sizes = list(zip(widths.tolist(), heights.tolist(), strict=True))
    begins = np.searchsorted(pair, np.arange(len(starts) + 1)).tolist()
    for number, (i, j, no_fit, has_small) in enumerate(
        zip(first.tolist(), last.tolist(), unfit.tolist(), small.tolist(), strict=True)
    ):
        if not no_fit:
            blanks = tuple(sizes[begins[number] : begins[number + 1]])
            (slivers if has_small else boards).append((i, j, blanks))
    return boards, slivers


def _legal_boxes(
    course: Course, edges: tuple[int, ...], stock: tuple[Stock, ...], *, along_v: bool
) -> tuple[list[Boards], list[Boards]]:
    """`_legal` where every board is a rectangle as high as the course."""
    limits, (lower, upper) = course.field.limits, course.span
    tall = ceil_to(upper - lower, limits.graduation)
    both_ways = [way for sheet in stock for way in (sheet.size, sheet.size[::-1])]
    widest = max((long for long, short in both_ways if tall <= short), default=0)
    longest = max((long for long, _ in both_ways), default=0)
    pairs, widths = _spaced(edges, limits.gap, limits.graduation, longest)
    blanks: dict[int, tuple[Size, ...]] = {
        wide: ((tall, wide) if along_v else (wide, tall),) for wide in widths if wide <= widest
    }
    small = {wide for wide in blanks if TICKS_PER_MM < min(wide, tall) < limits.least_piece}
    if not small and len(blanks) == len(widths):
        return [(i, j, blanks[wide]) for i, j, wide in pairs], []
    boards = [(i, j, blanks[wide]) for i, j, wide in pairs if wide in blanks and wide not in small]
    return boards, [(i, j, blanks[wide]) for i, j, wide in pairs if wide in small]


@lru_cache(maxsize=64)
def _spaced(
    edges: tuple[int, ...], gap: int, step: int, longest: int
) -> tuple[list[tuple[int, int, int]], list[int]]:
    """Any two edges by their numbers with the width of a board between them, rounded up; and all these widths.

    None is over `longest`. Courses of one surface mostly have the same edges, whatever their heights.
    """
    found = []
    for i, edge in enumerate(edges):
        start = edge + gap
        for j in range(i + 1, len(edges)):
            wide = -(-(edges[j] - start) // step) * step
            if wide > longest:
                break
            if wide > 0:
                found.append((i, j, wide))
    return found, sorted({wide for *_, wide in found})


def _grid(field: BoardField, left: int, right: int, sides: Iterable[int]) -> Iterable[int]:
    """Places on a grid, at whole boards and at parts of them from either end."""
    gap, step, origin = field.limits.gap, field.limits.graduation, field.grid.origin[0]
    least = min(field.limits.least_piece, right - left)
    every = max(GRID_MM * TICKS_PER_MM, (right - left) // MOST_GRID)
    found = set(range(left + every, right, every))
    for side in sides:
        for part in (1, 2):
            found |= {left + side // part, right - side // part - gap}
    return {
        edge
        for at in found
        if left + least <= (edge := floor_to(at - origin, step) + origin) <= right - gap - least
    }


def _reaches(boards: list[Boards], last: int) -> bool:
    """Whether boards lead from the first edge to the last; they are listed by their first edge."""
    reached = [False] * (last + 1)
    reached[0] = True
    for i, j, _ in boards:
        if reached[i]:
            reached[j] = True
    return reached[last]

"""Seams of a finished layout moved by a little, so that one board becomes larger or smaller."""

from collections.abc import Iterator
from itertools import pairwise

from firstcourse.boards.courses import Span
from firstcourse.boards.field import BoardField, field_of
from firstcourse.boards.layout import Choice, cells
from firstcourse.boards.limbs import is_barred
from firstcourse.boards.members import row_added, row_near_panel
from firstcourse.boards.seams import Course
from firstcourse.plan import Surface
from firstcourse.rules import RuleSet
from firstcourse.units import ceil_to


def shifted(
    surface: Surface, choice: Choice, number: int, axis: int, by: int, rules: RuleSet, graduation: int
) -> Iterator[Choice]:
    """The ways to make one board longer or shorter by moving the seams at its ends.

    A seam moves alone, or with all seams on its side of the board, so that boards next to it stay as they are.
    None moves to where it is carried worse, or stands nearer to panel joints or corners than asked; staggers are
    for the caller to weigh.

    Args:
        surface: The surface, with its framing.
        choice: Its courses and seams.
        number: The board's place among the layout's boards.
        axis: 0 where it becomes longer along u, 1 along v.
        by: How much longer, negative where shorter [ticks], whole graduations.
        rules: Rules in force.
        graduation: Tape graduation [ticks].
    """
    field = field_of(surface, rules, graduation, along_v=choice.along_v)
    courses = [Course(field, span, choice.length, choice.height) for span in choice.spans]
    course, cell = _place(courses, choice, number)
    half = ceil_to(by // 2, graduation)
    if axis == (1 if choice.along_v else 0):
        for row in _rows(choice.seams[course], cell, by, half):
            moved = [pair for pair in zip(choice.seams[course], row, strict=True) if pair[0] != pair[1]]
            if not any(_worse(courses[course], then, now) for then, now in moved) and all(
                edge - before > field.limits.gap for before, edge in pairwise(row)
            ):
                yield choice.model_copy(
                    update={"seams": (*choice.seams[:course], row, *choice.seams[course + 1 :])}
                )
        return
    tops = tuple(upper for _, upper in choice.spans[:-1])
    for row in _rows(tops, course, by, half):
        spans = _spans(choice.spans, row, field.limits.gap)
        if all(lower < upper for lower, upper in spans) and not any(
            _worse_row(field, then, now) for then, now in zip(tops, row, strict=True) if then != now
        ):
            yield choice.model_copy(update={"spans": spans})


def _place(courses: list[Course], choice: Choice, number: int) -> tuple[int, int]:
    """The course and the cell of a board."""
    before = 0
    for course, (made, seams) in enumerate(zip(courses, choice.seams, strict=True)):
        for cell, (start, end) in enumerate(cells(made, seams)):
            before += len(made.areas(start, end))
            if number < before:
                return course, cell
    raise IndexError(number)


def _rows(edges: tuple[int, ...], cell: int, by: int, half: int) -> Iterator[tuple[int, ...]]:
    """The edges with those at the ends of a cell moved apart by `by`: one, the other or both."""
    last = len(edges)

    def moved(low: int, high: int, lows: range, highs: range) -> tuple[int, ...]:
        return tuple(edge - low * (number in lows) + high * (number in highs) for number, edge in enumerate(edges))

    has_low, has_high = cell > 0, cell < last
    one_low, one_high = range(cell - 1, cell), range(cell, cell + 1)
    all_low, all_high = range(cell), range(cell, last)
    found = []
    if has_high:
        found += [moved(0, by, range(0), one_high), moved(0, by, range(0), all_high)]
    if has_low:
        found += [moved(by, 0, one_low, range(0)), moved(by, 0, all_low, range(0))]
    if has_low and has_high and half not in (0, by):
        found += [moved(half, by - half, one_low, one_high), moved(half, by - half, all_low, all_high)]
    yield from dict.fromkeys(found)


def _worse(course: Course, then: int, now: int) -> bool:
    """Whether a seam breaks a rule that it kept before."""
    left, right = course.ends
    least, gap = 2 * course.field.limits.graduation, course.field.limits.gap
    if not left + least <= now <= right - gap - least:
        return True
    return (
        (course.carried(then) and not course.carried(now))
        or (course.barred(now) and not course.barred(then))
        or (course.leaves_limb(now) and not course.leaves_limb(then))
    )


def _worse_row(field: BoardField, then: int, now: int) -> bool:
    return (
        (row_added(field, now) and not row_added(field, then))
        or (row_near_panel(field, now) and not row_near_panel(field, then))
        or (is_barred(now, field.row_limbs_barred) and not is_barred(then, field.row_limbs_barred))
    )


def _spans(spans: tuple[Span, ...], tops: tuple[int, ...], gap: int) -> tuple[Span, ...]:
    starts = (spans[0][0], *(top + gap for top in tops))
    return tuple(zip(starts, (*tops, spans[-1][1]), strict=True))

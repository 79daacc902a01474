"""The layouts worth weighing for one surface: every sheet type, both directions, several stacks of courses."""

from collections.abc import Hashable
from dataclasses import replace

from firstcourse.boards.courses import Span, course_spans
from firstcourse.boards.field import BoardField, field_of
from firstcourse.boards.layout import Choice
from firstcourse.boards.members import row_added, row_near_panel
from firstcourse.boards.seam_ground import CourseGround
from firstcourse.boards.seams import ADDED, NEAR_PANEL, UNSTAGGERED, Course, cheapest
from firstcourse.plan import Stock, Surface
from firstcourse.rules import RuleSet
from firstcourse.units import Tape

_STACKS = 3


def layout_alternatives(
    surface: Surface, stock: tuple[Stock, ...], rules: RuleSet, tape: Tape
) -> tuple[Choice, ...]:
    """The layouts worth weighing, the cheapest by the layout's own measure first.

    Args:
        surface: What is to be boarded, with its framing.
        stock: Sheets that can be bought; the surface's `board_stock` narrows them.
        rules: Rules in force.
        tape: Tape whose graduation edges lie on.

    Returns:
        Choices with seams that keep the rules as far as the surface lets them, but for those that a count of their
        boards shows to be dearer than another of the same sheet and direction; empty where there is no sheet that
        may be used or nothing to cover.
    """
    usable = tuple(s for s in stock if not surface.board_stock or s.id in surface.board_stock)
    plain = [field_of(surface, rules, tape.graduation, along_v=along_v) for along_v in (False, True)]
    if not usable or plain[0].region.is_empty:
        return ()
    found: list[Choice] = []
    grounds: tuple[dict[Span, CourseGround], ...] = ({}, {})
    for loose in (0, 1, 2, 3):
        for along_v, field in zip((False, True), plain, strict=True):
            found += _choices(replace(field, loose=loose), usable, grounds[along_v], along_v=along_v)
        # A relaxed rule is weighed only while no layout keeps them all.
        if any(choice.cost < UNSTAGGERED for choice in found):
            break
    return tuple(sorted(found, key=lambda choice: choice.cost))


def best_choice(alternatives: tuple[Choice, ...], stock: tuple[Stock, ...]) -> Choice:
    """The cheapest of some alternatives by the layout's own measure, then of the smallest sheet."""
    sizes = {sheet.id: sheet.size for sheet in stock}
    return min(
        alternatives,
        key=lambda choice: (choice.cost, sizes[choice.stock][0] * sizes[choice.stock][1], choice.along_v),
    )


def _choices(
    field: BoardField, stock: tuple[Stock, ...], grounds: dict[Span, CourseGround], *, along_v: bool
) -> list[Choice]:
    found: list[Choice] = []
    for sheet in stock:
        cheapest_found: int | None = None
        for length, height in sorted({sheet.size, sheet.size[::-1]}, reverse=True):
            made: dict[Hashable, Course] = {}
            for spans in course_spans(field, height)[:_STACKS]:
                courses = []
                for span in spans:
                    if span not in grounds:
                        grounds[span] = CourseGround(field, span)
                    ground = grounds[span]
                    # Courses that are alike share one course, and with it the work done for it.
                    like = span if field.loose else ground.likeness
                    courses.append(made.setdefault(like, Course(field, span, length, height, ground=ground)))
                joints = _joint_cost(field, spans)
                least = joints + sum(course.least_cost for course in courses)
                if cheapest_found is not None and least > cheapest_found:
                    continue
                best = cheapest(field, courses)
                if best is None:
                    continue
                cost, patterns = best
                cheapest_found = min(cost + joints, cost + joints if cheapest_found is None else cheapest_found)
                found.append(
                    Choice(
                        stock=sheet.id,
                        along_v=along_v,
                        length=length,
                        height=height,
                        spans=spans,
                        seams=tuple(pattern.seams for pattern in patterns),
                        cost=cost + joints,
                    )
                )
    return found


def _joint_cost(field: BoardField, spans: tuple[tuple[int, int], ...]) -> int:
    tops = [upper for _, upper in spans[:-1]]
    return sum(
        (ADDED if row_added(field, top) else 0) + (NEAR_PANEL if row_near_panel(field, top) else 0) for top in tops
    )

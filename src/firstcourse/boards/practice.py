"""Plain practice for comparison: full sheets from the lower left, every second course begun with half a sheet."""

from firstcourse.boards.courses import Span, bearing_edge, spans_beside
from firstcourse.boards.field import BoardField, field_of
from firstcourse.boards.layout import Choice, SurfaceLayout, build_layout, only_up
from firstcourse.plan import Stock, Surface
from firstcourse.rules import RuleSet
from firstcourse.units import Tape, floor_to


def practice_layout(
    surface: Surface, stock: tuple[Stock, ...], rules: RuleSet, tape: Tape, *, mark: str = ""
) -> SurfaceLayout:
    """Lay one surface as a setter does without a plan, with the first sheet that it may use.

    Sheets lie with the long side along u, whole ones from the lower left; where a seam needs a member it moves
    back to the last one within the sheet; every second course begins with half a sheet.

    Args:
        surface: What is to be boarded, with its framing.
        stock: Sheets that can be bought.
        rules: Rules in force.
        tape: Tape whose graduation edges lie on.
        mark: Letter and number of the surface on drawings, such as `W2`.
    """
    usable = [sheet for sheet in stock if not surface.board_stock or sheet.id in surface.board_stock]
    field = field_of(surface, rules, tape.graduation, along_v=False)
    if not usable or field.region.is_empty:
        return only_up(surface, rules, tape)
    sheet = usable[0]
    step, gap = field.limits.graduation, field.limits.gap
    length, height = floor_to(max(sheet.size), step), floor_to(min(sheet.size), step)
    left, lower, right, upper = field.box
    spans: list[Span] = []
    at = lower
    while at < upper and not field.up:
        top = _end(field, at, height, upper)
        spans.append((at, top))
        at = top + gap
    if field.up:
        spans = list(spans_beside(field, height)[0])
    seams = tuple(
        _course_seams(field, left, right, length, length // 2 if index % 2 else length)
        for index in range(len(spans))
    )
    choice = Choice(
        stock=sheet.id, along_v=False, length=length, height=height, spans=tuple(spans), seams=seams, cost=0
    )
    return build_layout(surface, choice, stock, rules, tape, mark=mark)


def _end(field: BoardField, at: int, whole: int, end: int) -> int:
    """Where a whole board ends; earlier where it would leave a crack too narrow for any board beyond the gap."""
    limits = field.limits
    if end <= at + whole:
        return end
    if at + whole + limits.gap + 2 * limits.graduation <= end:
        return at + whole
    least = max(limits.least_piece, 2 * limits.graduation)
    return max(floor_to(end - limits.gap - least - at, limits.graduation) + at, at + limits.graduation)


def _course_seams(field: BoardField, left: int, right: int, length: int, first: int) -> tuple[int, ...]:
    gap, origin, step = field.limits.gap, field.grid.origin[0], field.limits.graduation
    members = sorted(
        edge
        for start, _, end, _ in field.carriers or ()
        if (edge := bearing_edge(start, end, field, origin)) is not None
    )
    seams: list[int] = []
    at, reach = left, first
    while right - at > reach:
        edge = floor_to(_end(field, at, reach, right) - origin, step) + origin
        edge = max((member for member in members if at < member <= edge), default=edge)
        seams.append(edge)
        at, reach = edge + gap, length
    return tuple(seams)

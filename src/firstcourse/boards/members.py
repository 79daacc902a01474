"""Members to add where a board edge has none behind it."""

from firstcourse.boards.courses import Span
from firstcourse.boards.field import BoardField
from firstcourse.boards.seam_ground import stretches
from firstcourse.boards.seams import covered
from firstcourse.plan import Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM


def row_runs(field: BoardField, top: int) -> tuple[Span, ...]:
    """The stretches along u of the joint whose lower edge is at `top` [ticks]."""
    left, _, right, _ = field.box
    if (ends := field.sides_between(top, top + field.limits.gap)) is not None:
        return (ends,) if ends[1] - ends[0] > TICKS_PER_MM else ()
    middle = top + field.limits.gap / 2
    return stretches(field.region, ((left, middle), (right, middle)), axis=0)


def row_added(field: BoardField, top: int) -> bool:
    """Whether the joint above `top` runs along the framing without members behind all of it."""
    if field.row_carriers is None:
        return False
    bearing, gap, step = field.limits.bearing, field.limits.gap, field.limits.graduation
    spans = sorted(
        (left, right)
        for left, lower, right, upper in field.row_carriers + field.cross
        if top - lower >= bearing and upper - top - gap >= bearing
    )
    return not all(covered(run, spans, step) for run in row_runs(field, top))


def row_near_panel(field: BoardField, top: int) -> bool:
    """Whether the joint above `top` stands too near a panel joint."""
    return any(top + field.limits.gap > start and top < end for start, end in field.row_barred)


def seam_member(edge: int, run: Span, field: BoardField, surface: Surface, rules: RuleSet) -> tuple[Span, Span]:
    """The faces of a member centred behind a seam: its sides across it, its ends along it [ticks]."""
    width = rules.ticks("framing.stud_width" if surface.kind is SurfaceKind.WALL else "framing.joist_width")
    start = edge + field.limits.gap // 2 - width // 2
    return (start, start + width), run

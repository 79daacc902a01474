"""Members to add where a board edge has none behind it."""

from firstcourse.boards.courses import Span
from firstcourse.boards.field import Field, runs_along
from firstcourse.boards.seams import covered, stretches
from firstcourse.geometry import axis_of, bounds, rectangle, sides
from firstcourse.geometry.polygon import Ring
from firstcourse.plan import SupportKind, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM


def row_runs(field: Field, top: int) -> tuple[Span, ...]:
    """The stretches along u of the joint whose lower edge is at `top` [ticks]."""
    left, _, right, _ = field.box
    if (ends := field.sides_between(top, top + field.limits.gap)) is not None:
        return (ends,) if ends[1] - ends[0] > TICKS_PER_MM else ()
    middle = top + field.limits.gap / 2
    return stretches(field.region, ((left, middle), (right, middle)), axis=0)


def row_added(field: Field, top: int) -> bool:
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


def row_near_panel(field: Field, top: int) -> bool:
    """Whether the joint above `top` stands too near a panel joint."""
    return any(top + field.limits.gap > start and top < end for start, end in field.row_barred)


def seam_member(edge: int, run: Span, field: Field, surface: Surface, rules: RuleSet) -> tuple[Span, Span]:
    """The faces of a member centred behind a seam: its sides across it, its ends along it [ticks]."""
    width = rules.ticks("framing.stud_width" if surface.kind is SurfaceKind.WALL else "framing.joist_width")
    start = edge + field.limits.gap // 2 - width // 2
    return (start, start + width), run


def edge_members(surface: Surface, rules: RuleSet) -> tuple[list[Ring], SupportKind]:
    """Members to add along sides of the outline that run with the framing and have none within reach.

    Returns:
        Their faces, and the kind of member added on this surface.
    """
    wall = surface.kind is SurfaceKind.WALL
    kind = SupportKind.STUD if wall else SupportKind.BLOCKING
    if not surface.framing_axis or any(s.kind is SupportKind.PANEL for s in surface.supports):
        return [], kind
    width = rules.ticks("framing.stud_width" if wall else "framing.joist_width")
    reach, slack = rules.ticks("boards.edge.reach"), rules.ticks("framing.plate_depth")
    boxes = [bounds(s.outline) for s in surface.supports if runs_along(s, surface)]
    upright = surface.framing_axis == "v"
    found = []
    for a, b in sides(surface.outline):
        if axis_of(a, b) != surface.framing_axis:
            continue
        at = a[0] if upright else a[1]
        low, high = sorted((a[1], b[1]) if upright else (a[0], b[0]))
        # Counter-clockwise: the inside lies left of the way from a to b.
        inwards = (-1 if b[1] > a[1] else 1) if upright else (1 if b[0] > a[0] else -1)
        near, far = sorted((at, at + inwards * reach))
        spans = sorted(
            (lower, upper) if upright else (left, right)
            for left, lower, right, upper in boxes
            if (left if upright else lower) < far and (right if upright else upper) > near
        )
        if covered((low, high), spans, slack):
            continue
        one, other = sorted((at, at + inwards * width))
        found.append(rectangle(one, low, other, high) if upright else rectangle(low, one, high, other))
    return found, kind

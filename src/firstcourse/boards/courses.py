"""Heights of the courses: where the joints between them may run."""

from itertools import pairwise

from firstcourse.boards.field import BoardField
from firstcourse.boards.limbs import is_barred

Span = tuple[int, int]
"""Lower and upper edge of one course [ticks]."""


def course_spans(field: BoardField, height: int) -> list[tuple[Span, ...]]:
    """The ways to stack courses of at most `height`, fewest courses first.

    Full courses from below with the rest on top, the rest below, the last two evened, all alike; each only where
    the joints may run, and each once.
    """
    _, lower, _, upper = field.box
    total, gap, step = upper - lower, field.limits.gap, field.limits.graduation
    height = height // step * step
    if height < step or total <= 0:
        return []
    if field.up:
        return spans_beside(field, height)
    count = -(-(total + gap) // (height + gap))
    ways: list[list[int]] = []
    for number in (count, count + 1):
        full = [height] * (number - 1)
        rest = total - sum(full) - gap * (number - 1)
        if rest > 0:
            ways += [[*full, rest], [rest, *full]]
        free = total - gap * (number - 1)
        alike = -(-free // number // step) * step
        if alike * (number - 1) < free:
            ways.append([alike] * (number - 1) + [free - alike * (number - 1)])
        if number > 1:
            two = free - height * (number - 2)
            half = -(-(two // 2) // step) * step
            if 0 < half <= height and 0 < two - half <= height:
                ways += [
                    [height] * (number - 2) + [half, two - half],
                    [half, two - half] + [height] * (number - 2),
                ]
    found: list[tuple[Span, ...]] = []
    for heights in ways:
        spans = placed(field, heights, height)
        if spans is not None and spans not in found:
            found.append(spans)
    return sorted(found, key=lambda spans: (len(spans), _slivers(field, spans)))


def _slivers(field: BoardField, spans: tuple[Span, ...]) -> int:
    return sum(upper - lower < field.limits.least_piece for lower, upper in spans)


def placed(field: BoardField, heights: list[int], most: int) -> tuple[Span, ...] | None:
    """Stack courses of about these heights, each joint moved down to the nearest place where it may run."""
    _, lower, _, upper = field.box
    gap, step = field.limits.gap, field.limits.graduation
    spans: list[Span] = []
    at = lower
    for height in heights[:-1]:
        top = _joint_at_or_below(field, at + min(height, most), at + step)
        if top is None:
            return None
        spans.append((at, top))
        at = top + gap
    while upper - at > most:
        top = _joint_at_or_below(field, at + most, at + step)
        if top is None:
            return None
        spans.append((at, top))
        at = top + gap
    if at >= upper:
        return None
    spans.append((at, upper))
    return tuple(spans)


def _joint_at_or_below(field: BoardField, top: int, least: int) -> int | None:
    """The highest upper edge at or below `top` from which a joint of one gap may run."""
    gap, step, origin = field.limits.gap, field.limits.graduation, field.grid.origin[1]
    top = (top - origin) // step * step + origin
    if field.row_carriers is not None and not field.loose:
        edges = [
            edge
            for box in field.row_carriers
            if (edge := bearing_edge(box[1], box[3], field, origin)) is not None
            and least <= edge <= top
            and not is_barred(edge, field.row_limbs_barred)
        ]
        return max(edges, default=None)
    moved = True
    while moved:
        moved = False
        for start, end in field.row_barred if field.loose < 2 else ():
            if top + gap > start and top < end:
                top = (start - gap - origin) // step * step + origin
                moved = True
        for start, end in field.row_limbs_barred:
            if start < top < end:
                top = (start - origin) // step * step + origin
                moved = True
    return top if top >= least else None


def bearing_edge(start: int, end: int, field: BoardField, origin: int) -> int | None:
    """Where the near board ends so that both boards bear on a member; None if they cannot."""
    gap, step, bearing = field.limits.gap, field.limits.graduation, field.limits.bearing
    edge = ((start + end - gap) // 2 - origin + step // 2) // step * step + origin
    return edge if edge - start >= bearing and end - edge - gap >= bearing else None


def spans_beside(field: BoardField, height: int) -> list[tuple[Span, ...]]:
    """The ways to stack courses where boards are up: a joint runs on from each lower and upper edge of theirs.

    So none is notched round a board that is there. Between such joints: full courses from below with the rest on
    top, the rest below, all alike.

    Args:
        field: The surface, with what is up.
        height: The most that a course is high, in whole graduations.
    """
    _, lower, _, upper = field.box
    gap, step, origin = field.limits.gap, field.limits.graduation, field.grid.origin[1]
    least = 2 * step
    tops: list[int] = []
    for _, bottom, _, top in field.up:
        tops.append((bottom - gap - origin) // step * step + origin)
        tops.append(-(-(top + gap - origin) // step) * step + origin - gap)
    kept = [lower - gap]
    for top in sorted({top for top in tops if lower + least <= top <= upper - gap - least}):
        if top - kept[-1] >= gap + least:
            kept.append(top)
    parts = [(below + gap, top) for below, top in pairwise([*kept, upper])]
    found: list[tuple[Span, ...]] = []
    for way in (_from_below, _from_above, _alike):
        spans = tuple(span for low, high in parts for span in way(low, high, height, gap, step))
        if all(low < high for low, high in spans) and spans not in found:
            found.append(spans)
    return found


def _from_below(low: int, high: int, height: int, gap: int, step: int) -> list[Span]:
    spans = []
    while high - low > height:
        # Too little left for a course asks for a lower one here.
        top = min(low + height, high - gap - 2 * step)
        spans.append((low, top))
        low = top + gap
    return [*spans, (low, high)]


def _from_above(low: int, high: int, height: int, gap: int, step: int) -> list[Span]:
    if (high - low) % step:
        # Turned about, its joints would lie between tape marks.
        return _from_below(low, high, height, gap, step)
    return [(low + high - b, low + high - a) for a, b in reversed(_from_below(low, high, height, gap, step))]


def _alike(low: int, high: int, height: int, gap: int, step: int) -> list[Span]:
    number = -(-(high - low + gap) // (height + gap))
    each = -(-(high - low - gap * (number - 1)) // number // step) * step
    return _from_below(low, high, min(height, each), gap, step)


def joints(spans: tuple[Span, ...]) -> list[Span]:
    """The gaps between courses, each as lower and upper edge."""
    return [(below[1], above[0]) for below, above in pairwise(spans)]

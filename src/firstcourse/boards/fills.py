"""Ground that no board covers: strips too narrow for one, where they lie and with what they are filled."""

import shapely
from shapely import Polygon

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds, circle_ring, from_shapely, to_shapely
from firstcourse.plan import Fill, Surface, opening_ring
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, Tape
from firstcourse.values import Ref, least, length

_SPECK = 100 * TICKS_PER_MM**2
"""Less bare ground than this is no strip: the sealant or mortar beside it takes it in [ticks²]."""
_HAIR = 4


def filled_ground(surface: Surface, rules: RuleSet, tape: Tape) -> tuple[tuple[Fill, ...], tuple[Finding, ...]]:
    """The strips of a boarded surface that are filled, with a finding for each.

    Args:
        surface: A surface with its boards.
        rules: Rules in force.
        tape: Tape of the job.

    Returns:
        Strips that lie farther from any board than a gap may be wide, each out to what bounds it.
    """
    if not surface.boards:
        return (), ()
    ground = _ground(surface)
    boards = shapely.union_all([Polygon(board.outline, board.holes) for board in surface.boards])
    reach = widest_gap(rules, tape)
    far = ground.difference(boards.buffer(reach, join_style="mitre"))
    gap = rules.ticks("boards.gap.between")
    beside = ground.difference(boards.buffer(gap, join_style="mitre"))
    fills: list[Fill] = []
    for part in shapely.get_parts(far):
        if not isinstance(part, Polygon) or part.area <= _SPECK:
            continue
        whole = part.buffer(reach, join_style="mitre").intersection(beside)
        for outline, _ in from_shapely(whole):
            if Polygon(outline).intersection(part).area > _SPECK:
                with_board = not _narrower(outline, rules.ticks("boards.fill.width"))
                fills.append(
                    Fill(
                        id=f"{surface.id}/fill/{len(fills) + 1}",
                        outline=outline,
                        filled_with="board" if with_board else "mortar",
                    )
                )
    return tuple(fills), tuple(_finding(surface, fill, rules) for fill in fills)


def widest_gap(rules: RuleSet, tape: Tape) -> int:
    """How far ground in a gap may lie from a board: the widest gap, and what is left to a tape mark."""
    gaps = [rules.ticks(f"boards.gap.{name}") for name in ("between", "perimeter", "foot", "opening")]
    return max(gaps) + 2 * tape.graduation


def _ground(surface: Surface) -> shapely.Geometry:
    open_parts = [
        to_shapely(circle_ring(opening.centre, -(-opening.diameter // 2), excess=1))
        if opening.centre is not None and opening.diameter is not None
        else to_shapely(opening_ring(opening))
        for opening in surface.openings
    ]
    return to_shapely(surface.outline).difference(shapely.union_all(open_parts))


def _narrower(outline: tuple[tuple[int, int], ...], width: int) -> bool:
    return bool(Polygon(outline).buffer(-width / 2, join_style="mitre").is_empty)


def _size(fill: Fill) -> tuple[int, int]:
    """Width where a strip is widest, to the tick, and the length that gives it its area [ticks]."""
    shape = Polygon(fill.outline)
    low, high = 0, round(2 * shape.area / shape.length) + 1
    while not _narrower(fill.outline, high):
        low, high = high, 2 * high
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if _narrower(fill.outline, middle) else (middle, high)
    return high, round(shape.area / high)


def _finding(surface: Surface, fill: Fill, rules: RuleSet) -> Finding:
    width, long = _size(fill)
    left, lower, _, _ = bounds(fill.outline)
    entry = rules.entry("boards.limb.min")
    mortar = fill.filled_with == "mortar"
    return entry.found(
        "BRD-303",
        Severity.NOTE if mortar else Severity.FIX,
        fill.id,
        measured=length(width),
        limit=least(length(rules.ticks(entry.id))),
        remedies=("mortar",) if mortar else ("board",),
        long=length(long),
        left=length(left),
        lower=length(lower),
        beside=(beside := _beside(surface, fill)),
        neighbours=len(beside),
    )


def _beside(surface: Surface, fill: Fill) -> tuple[Ref, ...]:
    """The openings that a strip lies at."""
    shape = Polygon(fill.outline)
    return tuple(
        Ref(ref=f"{surface.id}/opening/{opening.id}")
        for opening in surface.openings
        if Polygon(opening_ring(opening)).distance(shape) <= _HAIR
    )

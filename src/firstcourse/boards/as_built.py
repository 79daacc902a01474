"""Boards among which some are up already: seams, members and findings from where they stand, not from courses."""

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from shapely import LineString, Point, Polygon, STRtree
from shapely.geometry.base import BaseGeometry

from firstcourse.boards.edges import Run, edge_members, open_edges
from firstcourse.boards.faults import ends_too_close, members_asked_for, narrow_boards, near_panel_joint
from firstcourse.boards.field import SEALED, BoardLimits, limits_of
from firstcourse.boards.seams import covered
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import Ring, axis_near, axis_of, bounds, rectangle, sides
from firstcourse.plan import (
    Board,
    Seam,
    Segment,
    SideKind,
    Support,
    SupportKind,
    Surface,
    SurfaceKind,
    opening_ring,
)
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import least, length, most

_SLACK = 2
"""Rounding of a side that runs along no axis [ticks]."""


class Laid(NamedTuple):
    """What follows from where boards stand."""

    seams: tuple[Seam, ...]
    added_supports: tuple[Support, ...]
    findings: tuple[Finding, ...]


class _Gap(NamedTuple):
    """A gap between two boards that face each other [ticks].

    Attributes:
        at: Its near edge across.
        width: How wide it is.
        low: Where it begins along.
        high: Where it ends.
        one: Number of the board before it.
        other: Number of the board beyond it; of gaps that are joined these are of the last.
    """

    at: int
    width: int
    low: int
    high: int
    one: int
    other: int


def laid_as_built(surface: Surface, boards: Sequence[Board], rules: RuleSet, graduation: int) -> Laid:
    """The seams between boards, the members they ask for, and what they cannot keep.

    Args:
        surface: Their surface, with its framing.
        boards: All of them, those that are up among them.
        rules: Rules in force.
        graduation: Tape graduation [ticks].
    """
    limits = limits_of(rules, graduation)
    # Each list by the axis that its seams run along.
    widest = widest_joint(rules, graduation)
    lines = [list(_joined(_facing(boards, axis, limits, widest), widest, across=False)) for axis in (0, 1)]
    through = [list(_joined(gaps, limits.gap + graduation, across=True)) for gaps in lines]
    # Where four boards meet, the joints between courses run through and the others end at them.
    rows = 0 if len(lines[0]) - len(through[0]) >= len(lines[1]) - len(through[1]) else 1
    lines[rows] = through[rows]
    seams = tuple(Seam(line=_line(gap, axis), width=gap.width) for axis in (rows, 1 - rows) for gap in lines[axis])
    added, hanging = _added(surface, boards, lines, limits, rules)
    up = [board for board in boards if board.fixed]
    findings = (
        *members_asked_for(surface, added, hanging, rules),
        *_without_member(surface, up, rules),
        *_gaps_as_built(surface, boards, limits, rules),
        *_close_joints(surface, lines, limits, rules),
        *_near_panel_joints(surface, lines, limits, rules),
        *narrow_boards(surface, [board for board in boards if not board.fixed], rules),
    )
    return Laid(seams, added, findings)


def _facing(boards: Sequence[Board], axis: int, limits: BoardLimits, widest: int) -> Iterator[_Gap]:
    """The gaps along an axis between edges that face each other no farther apart than a seam is wide.

    Between boards that are up it is as wide as they stand, as long as it is a joint and no strip to be filled.
    """
    if not boards:
        return
    usual = limits.gap + limits.graduation
    shapes = [Polygon(board.outline, board.holes) for board in boards]
    edges = [list(_edges_along(board, axis)) for board in boards]
    near = STRtree(shapes).query(shapes, predicate="dwithin", distance=max(usual, widest))
    for one, other in sorted(zip(*near.tolist(), strict=True)):
        if one == other:
            continue
        far_most = widest + 1 if boards[one].fixed and boards[other].fixed else usual
        for at, low, high, before in edges[one]:
            for far, start, end, other_before in edges[other]:
                facing = before and not other_before and 0 < far - at < far_most
                if facing and min(high, end) - max(low, start) > TICKS_PER_MM:
                    yield _Gap(at, far - at, max(low, start), min(high, end), one, other)


def _edges_along(board: Board, axis: int) -> Iterator[tuple[int, int, int, bool]]:
    """Edges along an axis: where, from and to, and whether the board lies before them, on the lesser side."""
    for a, b in sides(board.outline):
        if a[1 - axis] == b[1 - axis]:
            low, high = sorted((a[axis], b[axis]))
            # The board lies on the left of the way along each edge.
            yield a[1 - axis], low, high, (b[axis] > a[axis]) == (axis == 1)


def _joined(gaps: Iterable[_Gap], most: int, *, across: bool) -> Iterator[_Gap]:
    """Gaps in one line with no more than so much between them as one.

    Where no board runs on from one to the next, a seam across them parts them; joined they are `across` it.
    """
    held: _Gap | None = None
    for gap in sorted(set(gaps)):
        in_line = held is not None and held[:2] == gap[:2] and gap.low - held.high <= most
        if held is not None and in_line and (across or held.one == gap.one or held.other == gap.other):
            held = gap._replace(low=held.low, high=max(held.high, gap.high))
            continue
        if held is not None:
            yield held
        held = gap
    if held is not None:
        yield held


def _line(gap: _Gap, axis: int) -> Segment:
    at = gap.at + gap.width // 2
    return ((gap.low, at), (gap.high, at)) if axis == 0 else ((at, gap.low), (at, gap.high))


def _added(
    surface: Surface, boards: Sequence[Board], lines: Sequence[Sequence[_Gap]], limits: BoardLimits, rules: RuleSet
) -> tuple[tuple[Support, ...], list[Run]]:
    """Members to add behind seams and edges, also of boards that are up; and what hangs all the same."""
    carried = any(support.kind is SupportKind.PANEL for support in surface.supports)
    if not surface.framing_axis or carried:
        return (), []
    axis = 1 if surface.framing_axis == "v" else 0
    width = rules.ticks("framing.stud_width" if surface.kind is SurfaceKind.WALL else "framing.joist_width")
    kind = SupportKind.STUD if surface.kind is SurfaceKind.WALL else SupportKind.BLOCKING
    rings: list[Ring] = []
    for gap in lines[axis]:
        if not _borne(gap, surface, axis, limits):
            start = gap.at + gap.width // 2 - width // 2
            box = (start, gap.low, start + width, gap.high)
            rings.append(rectangle(*box) if axis else rectangle(box[1], box[0], box[3], box[2]))
    new, up = ([board for board in boards if board.fixed is fixed] for fixed in (False, True))
    hanging: list[Run] = []
    for some in (new, up):
        behind = [Support(outline=ring, kind=kind, added=True) for ring in rings]
        more, left = edge_members(surface, some, [*surface.supports, *behind], rules)
        rings += more
        hanging += left if some is new else []
    return (
        tuple(
            Support(id=f"added {number}", outline=ring, kind=kind, added=True)
            for number, ring in enumerate(dict.fromkeys(rings), 1)
        ),
        hanging,
    )


def _borne(gap: _Gap, surface: Surface, axis: int, limits: BoardLimits) -> bool:
    """Whether members that are there bear both boards along a gap."""
    spans = []
    for support in surface.supports:
        box = bounds(support.outline)
        if _is_box(support.outline) and (
            gap.at - box[1 - axis] >= limits.bearing and box[3 - axis] - gap.at - gap.width >= limits.bearing
        ):
            spans.append((box[axis], box[axis + 2]))
    return covered((gap.low, gap.high), sorted(spans), limits.graduation)


def _is_box(ring: Ring) -> bool:
    left, lower, right, upper = bounds(ring)
    return len(ring) == 4 and all(u in (left, right) and v in (lower, upper) for u, v in ring)


def _without_member(surface: Surface, up: Sequence[Board], rules: RuleSet) -> Iterator[Finding]:
    """Edges of boards that are up under which, as the framing was found, too little wood lies."""
    entry = rules.entry("boards.bearing.min")
    for board in up:
        for run in open_edges(surface, [board], rules):
            (left, lower), (right, upper) = map(min, zip(*run, strict=True)), map(max, zip(*run, strict=True))
            yield entry.found(
                "BRD-103",
                Severity.FIX,
                board.id,
                limit=least(length(rules.ticks(entry.id))),
                remedies=("block",),
                left=length(left),
                lower=length(lower),
                right=length(right),
                upper=length(upper),
            )


def widest_joint(rules: RuleSet, graduation: int) -> int:
    """What is wider between boards as they stand is a strip to be filled, not a joint [ticks]."""
    gaps = [rules.ticks(f"boards.gap.{name}") for name in ("between", "perimeter", "foot", "opening")]
    return max(gaps) + 2 * graduation


def _gaps_as_built(
    surface: Surface, boards: Sequence[Board], limits: BoardLimits, rules: RuleSet
) -> Iterator[Finding]:
    """Boards that are up and stand otherwise apart than asked, or too near to what bounds them."""
    between, widest = rules.ticks("boards.gap.between"), widest_joint(rules, limits.graduation)
    gaps: dict[tuple[int, int], list[int]] = {}
    up = [board for board in boards if board.fixed]
    for axis in (0, 1):
        for gap in _facing(up, axis, limits, widest):
            gaps.setdefault((gap.one, gap.other), []).append(gap.width)
    entry = rules.entry("boards.gap.between")
    for (one, other), widths in sorted(gaps.items()):
        for wide in sorted({width for width in widths if not between <= width < limits.gap + limits.graduation}):
            yield entry.found(
                "BRD-104",
                Severity.FIX,
                up[one].id,
                up[other].id,
                measured=length(wide),
                limit=least(length(between)) if wide < between else most(length(limits.gap)),
                remedies=("open",) if wide < between else ("fill",),
            )
    for board in up:
        shape = Polygon(board.outline, board.holes)
        near: dict[str, int] = {}
        for rule, ring in _bounds_of(surface):
            apart = int(ring.distance(shape))
            if apart < rules.ticks(rule) - _SLACK:
                near[rule] = min(apart, near.get(rule, apart))
        for rule, apart in sorted(near.items()):
            yield rules.entry(rule).found(
                "BRD-105",
                Severity.FIX,
                board.id,
                measured=length(apart),
                limit=least(length(rules.ticks(rule))),
                remedies=("trim",),
            )


def _bounds_of(surface: Surface) -> Iterator[tuple[str, BaseGeometry]]:
    """What boards keep a gap from, with the rule that says how wide at the least."""
    for (a, b), side in zip(sides(surface.outline), surface.sides, strict=True):
        if side.kind is SideKind.PERIMETER:
            yield "boards.gap.perimeter.least" if axis_near(a, b) else "boards.gap.perimeter", LineString([a, b])
        elif side.kind is SideKind.FOOT:
            yield "boards.gap.foot", LineString([a, b])
    for opening in surface.openings:
        rule = "boards.gap.foot" if opening.kind in SEALED else "boards.gap.opening"
        if opening.centre is not None and opening.diameter is not None:
            yield rule, Point(opening.centre).buffer(opening.diameter / 2, quad_segs=32)
        else:
            yield rule, Polygon(opening_ring(opening))


def _close_joints(
    surface: Surface, lines: Sequence[Sequence[_Gap]], limits: BoardLimits, rules: RuleSet
) -> Iterator[Finding]:
    """End joints on both sides of a joint that stand closer than asked, each place once."""
    told: set[tuple[int, int, int]] = set()
    for axis in (0, 1):
        for joint in lines[axis]:
            level, reach = joint.at + joint.width // 2, joint.width + limits.graduation
            ends = [gap for gap in lines[1 - axis] if joint.low - reach <= _middle(gap) <= joint.high + reach]
            below = [_middle(gap) for gap in ends if gap.low < level and abs(gap.high - level) <= reach]
            for gap in ends:
                place = (axis, level, _middle(gap))
                if gap.high <= level or abs(gap.low - level) > reach or place in told:
                    continue
                apart = min((abs(_middle(gap) - at) for at in below), default=limits.stagger)
                if apart < limits.stagger:
                    told.add(place)
                    yield ends_too_close(surface, apart, limits, rules)


def _middle(gap: _Gap) -> int:
    return gap.at + gap.width // 2


def _near_panel_joints(
    surface: Surface, lines: Sequence[Sequence[_Gap]], limits: BoardLimits, rules: RuleSet
) -> Iterator[Finding]:
    """Seams that run beside a joint of the panel below, closer than asked."""
    told: set[tuple[int, int]] = set()
    for joint in surface.panel_joints:
        axis = {"u": 0, "v": 1}.get(axis_of(*joint))
        if axis is None:
            continue
        low, high = sorted(point[axis] for point in joint)
        for gap in lines[axis]:
            apart = abs(_middle(gap) - joint[0][1 - axis]) - (gap.width + 1) // 2
            if apart < limits.panel_offset and gap.low < high and gap.high > low and (axis, gap.at) not in told:
                told.add((axis, gap.at))
                edge = _middle(gap) - gap.width // 2
                yield near_panel_joint(surface, edge, limits, rules, upright=axis == 1)

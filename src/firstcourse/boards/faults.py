"""What a layout cannot keep, and what it asks for: members to add, seams out of place, narrow boards and limbs."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from shapely import Polygon

from firstcourse.boards.courses import Span
from firstcourse.boards.edges import Run
from firstcourse.boards.field import BoardLimits
from firstcourse.boards.limbs import narrow_parts
from firstcourse.boards.members import row_near_panel
from firstcourse.boards.seams import Course
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import area2, bounds
from firstcourse.plan import Board, Seam, Segment, Support, Surface
from firstcourse.rules import RuleSet
from firstcourse.values import Word, least, length

Row = tuple[Course, tuple[int, ...]]
"""A course with the left edges of the gaps in it [ticks]."""


def members_asked_for(
    surface: Surface, added: Sequence[Support], hanging: Sequence[Run], rules: RuleSet
) -> Iterator[Finding]:
    """One finding for all members to add, and one for each edge that none can be put behind.

    Args:
        surface: That the boards lie on.
        added: Members that its boards need beside those it has.
        hanging: Edges that bear too little all the same.
        rules: Rules in force.
    """
    if added:
        yield _added(surface, added, rules)
    for run in hanging:
        yield _hanging(surface, run, rules)


def seams_out_of_place(
    surface: Surface, rows: Sequence[Row], seams: Sequence[Seam], rules: RuleSet, *, along_v: bool
) -> Iterator[Finding]:
    """End joints too close to each other, and seams too close to a panel joint.

    Args:
        surface: That the boards lie on.
        rows: Courses with their gaps, from the lowest.
        seams: The seams as they are; where a course tapers to nothing there is none.
        rules: Rules in force.
        along_v: Courses run along v; they are then read with u and v changed.
    """
    lines = {((a[1], a[0]), (b[1], b[0])) if along_v else (a, b) for a, b in (seam.line for seam in seams)}
    yield from _stagger(surface, rows, lines, rules)
    yield from _near_panel_joints(surface, rows, lines, rules, along_v=along_v)


def narrow_boards(surface: Surface, boards: Sequence[Board], rules: RuleSet) -> Iterator[Finding]:
    """Boards narrower than the least piece, and limbs of boards narrower than a limb may be.

    Args:
        surface: That the boards lie on.
        boards: Its boards.
        rules: Rules in force.
    """
    yield from _small(surface, boards, rules)
    yield from _limbs(boards, rules)


def _added(surface: Surface, added: Sequence[Support], rules: RuleSet) -> Finding:
    """One finding for all members that a surface's boards need beside those it has."""
    upright: list[tuple[int, int, int]] = []
    level: list[tuple[int, int, int]] = []
    for support in added:
        left, lower, right, upper = bounds(support.outline)
        if upper - lower >= right - left:
            upright.append(((left + right) // 2, lower, upper))
        else:
            level.append(((lower + upper) // 2, left, right))
    return rules.entry("boards.bearing.min").found(
        "BRD-101",
        Severity.FIX,
        surface.id,
        remedies=("add",),
        count=len(added),
        kind=Word(word=added[0].kind.value),
        uprights=len(upright),
        levels=len(level),
        upright_at=tuple(length(at) for at, _, _ in upright),
        upright_from=tuple(length(start) for _, start, _ in upright),
        upright_to=tuple(length(end) for _, _, end in upright),
        level_at=tuple(length(at) for at, _, _ in level),
        level_from=tuple(length(start) for _, start, _ in level),
        level_to=tuple(length(end) for _, _, end in level),
    )


def _hanging(surface: Surface, run: Run, rules: RuleSet) -> Finding:
    entry = rules.entry("boards.bearing.min")
    (left, lower), (right, upper) = map(min, zip(*run, strict=True)), map(max, zip(*run, strict=True))
    return entry.found(
        "BRD-102",
        Severity.FIX,
        surface.id,
        limit=least(length(rules.ticks(entry.id))),
        remedies=("pack_out",),
        left=length(left),
        lower=length(lower),
        right=length(right),
        upper=length(upper),
    )


def _stagger(surface: Surface, rows: Sequence[Row], lines: set[Segment], rules: RuleSet) -> Iterator[Finding]:
    def runs(course: Course, edge: int) -> list[Span]:
        at = edge + course.field.limits.gap // 2
        return [run for run in course.runs(edge) if ((at, run[0]), (at, run[1])) in lines]

    for (below, lower_seams), (above, upper_seams) in pairwise(rows):
        limits = below.field.limits
        ends = [edge for edge in lower_seams if any(run[1] >= below.span[1] for run in runs(below, edge))]
        starts = [edge for edge in upper_seams if any(run[0] <= above.span[0] for run in runs(above, edge))]
        for edge in starts:
            nearest = min((abs(edge - other) for other in ends), default=limits.stagger)
            if nearest < limits.stagger:
                yield ends_too_close(surface, nearest, limits, rules)


def ends_too_close(surface: Surface, apart: int, limits: BoardLimits, rules: RuleSet) -> Finding:
    """End joints on both sides of a joint that stand so far apart [ticks]."""
    return rules.entry("boards.stagger.end_joints").found(
        "BRD-202" if apart <= limits.gap else "BRD-201",
        Severity.FIX,
        surface.id,
        measured=length(apart),
        limit=least(length(limits.stagger)),
        remedies=("other_size",),
    )


def _near_panel_joints(
    surface: Surface, rows: Sequence[Row], lines: set[Segment], rules: RuleSet, *, along_v: bool
) -> Iterator[Finding]:
    places = [(edge, True) for course, edges in rows for edge in edges if course.barred(edge)]
    places += [
        (below.span[1], False) for (below, _), _ in pairwise(rows) if row_near_panel(below.field, below.span[1])
    ]
    for edge, across in dict.fromkeys(places):
        limits = rows[0][0].field.limits
        axis, at = 0 if across else 1, edge + limits.gap // 2
        if any(a[axis] == b[axis] == at for a, b in lines):
            yield near_panel_joint(surface, edge, limits, rules, upright=across != along_v)


def near_panel_joint(
    surface: Surface, edge: int, limits: BoardLimits, rules: RuleSet, *, upright: bool
) -> Finding:
    """A seam whose gap begins at `edge` [ticks], too near to a joint of the panel below."""
    return rules.entry("boards.offset.panel_joints").found(
        "BRD-203",
        Severity.FIX,
        surface.id,
        measured=length(edge),
        limit=least(length(limits.panel_offset)),
        remedies=("shift_joint",),
        upright=upright,
    )


def _small(surface: Surface, boards: Sequence[Board], rules: RuleSet) -> Iterator[Finding]:
    entry, lowest = rules.entry("boards.piece.min"), rules.ticks("boards.piece.min")
    if surface.part_of:
        # A return is as narrow as its window is set back: no other seam widens its boards.
        left, lower, right, upper = bounds(surface.outline)
        lowest = min(lowest, (right - left) // 2, (upper - lower) // 2)
    for board in boards:
        left, lower, right, upper = bounds(board.outline)
        narrow = min(right - left, upper - lower)
        if narrow < lowest:
            yield entry.found(
                "BRD-204",
                Severity.NOTE,
                board.id,
                measured=length(narrow),
                limit=least(length(lowest)),
                remedies=("both_edges",),
            )


def _limbs(boards: Sequence[Board], rules: RuleSet) -> Iterator[Finding]:
    entry, limb = rules.entry("boards.limb.min"), rules.ticks("boards.limb.min")
    for board in boards:
        left, lower, right, upper = bounds(board.outline)
        plain = not board.holes and abs(area2(board.outline)) == 2 * (right - left) * (upper - lower)
        if plain or min(right - left, upper - lower) < limb:
            continue
        for part in narrow_parts(Polygon(board.outline, board.holes), limb):
            u0, v0, u1, v1 = (round(side) for side in part.bounds)
            yield entry.found(
                "BRD-205",
                Severity.FIX,
                board.id,
                limit=least(length(limb)),
                remedies=("cut_off",),
                wide=length(u1 - u0),
                high=length(v1 - v0),
            )

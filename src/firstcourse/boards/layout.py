"""From a choice of courses and seams to boards, seams, pieces and what the setter must be told."""

from collections.abc import Mapping
from itertools import pairwise

import shapely
from shapely import Polygon
from shapely import box as shapely_box
from shapely.ops import unary_union

from firstcourse.boards.as_built import laid_as_built
from firstcourse.boards.courses import Span
from firstcourse.boards.edges import Run, edge_members
from firstcourse.boards.faults import members_asked_for, narrow_boards, seams_out_of_place
from firstcourse.boards.field import BoardField, field_of, transposed
from firstcourse.boards.members import row_added, row_runs, seam_member
from firstcourse.boards.seams import Course
from firstcourse.boards.strips import Box
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import area2, bounds, moved
from firstcourse.plan import (
    Board,
    Frozen,
    Piece,
    Ring,
    Seam,
    Segment,
    Stock,
    Support,
    SupportKind,
    Surface,
    SurfaceKind,
)
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, Tape, ceil_to
from firstcourse.values import Ref, measure
from firstcourse.workings import Working

_LETTER = {SurfaceKind.FLOOR: "F", SurfaceKind.WALL: "W", SurfaceKind.CEILING: "C", SurfaceKind.COUNTER: "T"}


class Choice(Frozen):
    """Courses and seams of one surface [ticks].

    Attributes:
        stock: Id of the sheet.
        along_v: Courses run along v (standing strips); spans and seams are then read with u and v changed.
        length: Side of the sheet along the course.
        height: Side of the sheet across it.
        spans: Lower and upper edge of each course.
        seams: Left edges of the gaps in each course.
        cost: The layout's own measure; less is better.
    """

    stock: str
    along_v: bool
    length: int
    height: int
    spans: tuple[Span, ...]
    seams: tuple[tuple[int, ...], ...]
    cost: int


class SurfaceLayout(Frozen):
    """One surface boarded.

    Attributes:
        added_supports: Members to add before boarding.
        choice: The courses and seams it was built from; None where there are none.
        settled: It stays as it was planned before: nothing else is weighed.
    """

    surface_id: str
    boards: tuple[Board, ...] = ()
    seams: tuple[Seam, ...] = ()
    pieces: tuple[Piece, ...] = ()
    added_supports: tuple[Support, ...] = ()
    findings: tuple[Finding, ...] = ()
    choice: Choice | None = None
    settled: bool = False

    @property
    def faults(self) -> int:
        """Rules that it relaxes and members it asks for; one finding tells of all members together."""
        return len(self.findings) + max(0, len(self.added_supports) - 1)


def no_layout(surface: Surface) -> SurfaceLayout:
    """A layout without boards, with the reason: nothing to cover within the gaps, or no sheet that can be used.

    Args:
        surface: What was to be boarded. A slab is tiled as it is unless the job boards it.
    """
    if surface.slab == "tiled":
        found = Finding(
            code="BRD-302",
            severity=Severity.NOTE,
            at=(surface.id,),
            remedies=("read_heights", "carry_joints", "enter_framing"),
        )
    else:
        found = Finding(code="BRD-301", severity=Severity.STOP, at=(surface.id,), remedies=("check",))
    return SurfaceLayout(surface_id=surface.id, findings=(found,))


def only_up(surface: Surface, rules: RuleSet, tape: Tape) -> SurfaceLayout:
    """A layout without boards to be set: those that are up alone, or none with the reason.

    Args:
        surface: With the boards that are up.
        rules: Rules in force.
        tape: Tape of the job.
    """
    up = tuple(board for board in surface.boards if board.fixed)
    if not up:
        return no_layout(surface)
    laid = laid_as_built(surface, up, rules, tape.graduation)
    return SurfaceLayout(surface_id=surface.id, boards=up, **laid._asdict())


def build_layout(
    surface: Surface, choice: Choice, stock: tuple[Stock, ...], rules: RuleSet, tape: Tape, *, mark: str = ""
) -> SurfaceLayout:
    """Lay the boards of a choice.

    Args:
        surface: What is to be boarded, with its framing.
        choice: Courses and seams.
        stock: Sheets that can be bought; holds the choice's sheet.
        rules: Rules in force.
        tape: Tape whose graduation edges lie on.
        mark: Letter and number of the surface on drawings, such as `W2`; its kind's letter where empty.

    Raises:
        KeyError: The choice names a sheet that is not in `stock`.
    """
    sheet = {item.id: item for item in stock}[choice.stock]
    field = field_of(surface, rules, tape.graduation, along_v=choice.along_v)
    courses = [Course(field, span, choice.length, choice.height) for span in choice.spans]
    prefix = mark or _LETTER[surface.kind]
    boards, pieces = _boards(surface, courses, choice, sheet, tape, prefix)
    up = tuple(board for board in surface.boards if board.fixed)
    if up:
        # Pieces are found by the places of their boards, so what is up comes last.
        laid = laid_as_built(surface, (*boards, *up), rules, tape.graduation)
        return SurfaceLayout(
            surface_id=surface.id, boards=(*boards, *up), pieces=pieces, choice=choice, **laid._asdict()
        )
    seams = _seams(field, courses, choice, boards)
    added, hanging = _added(surface, boards, field, courses, choice, rules)
    rows = list(zip(courses, choice.seams, strict=True))
    findings = (
        *members_asked_for(surface, added, hanging, rules),
        *seams_out_of_place(surface, rows, seams, rules, along_v=choice.along_v),
        *narrow_boards(surface, boards, rules),
    )
    return SurfaceLayout(
        surface_id=surface.id,
        boards=boards,
        seams=seams,
        pieces=pieces,
        added_supports=added,
        findings=findings,
        choice=choice,
    )


def _boards(
    surface: Surface, courses: list[Course], choice: Choice, sheet: Stock, tape: Tape, prefix: str
) -> tuple[tuple[Board, ...], tuple[Piece, ...]]:
    boards: list[Board] = []
    pieces: list[Piece] = []
    # What is up keeps its number.
    taken = max((int(board.id.rpartition("#")[2]) for board in surface.boards if board.fixed), default=0)
    for course, seams in zip(courses, choice.seams, strict=True):
        for start, end in cells(course, seams):
            for outer, holes in course.areas(start, end):
                number = taken + len(boards) + 1
                outline = transposed(outer) if choice.along_v else outer
                inner = tuple(transposed(hole) for hole in holes) if choice.along_v else holes
                name = f"{prefix}-{number}" if prefix[-1].isdigit() else f"{prefix}{number}"
                board = Board(
                    id=f"{surface.id}#{number}", piece=f"P{name}", outline=outline, holes=inner, mark=name
                )
                boards.append(board)
                pieces.append(cut_as(board, sheet.id, tape))
    return tuple(boards), tuple(pieces)


def cut_as(board: Board, stock: str, tape: Tape) -> Piece:
    """What a board is cut as.

    Args:
        board: The board.
        stock: Id of the sheet.
        tape: Tape whose graduation its blank is of.
    """
    left, lower, right, upper = bounds(board.outline)
    return Piece(
        id=board.piece,
        board=board.id,
        stock=stock,
        blank=(ceil_to(right - left, tape.graduation), ceil_to(upper - lower, tape.graduation)),
        outline=moved(board.outline, -left, -lower),
        holes=tuple(moved(hole, -left, -lower) for hole in board.holes),
    )


def cells(course: Course, seams: tuple[int, ...]) -> list[Span]:
    """Left and right edge of every cell between the seams of a course [ticks]."""
    left, right = course.ends
    if left == right:
        return []
    gap = course.field.limits.gap
    return list(zip((left, *(seam + gap for seam in seams)), (*seams, right), strict=True))


def _seams(
    field: BoardField, courses: list[Course], choice: Choice, boards: tuple[Board, ...]
) -> tuple[Seam, ...]:
    """The middle lines of the gaps between boards; where a course tapers to nothing there is no seam."""
    gap = field.limits.gap
    half = gap // 2
    lines = [
        ((start, below[1] + half), (end, below[1] + half))
        for below, _ in pairwise(choice.spans)
        for start, end in row_runs(field, below[1])
    ]
    lines += [
        ((edge + half, start), (edge + half, end))
        for course, seams in zip(courses, choice.seams, strict=True)
        for edge in seams
        for start, end in course.runs(edge)
    ]
    if choice.along_v:
        lines = [((a[1], a[0]), (b[1], b[0])) for a, b in lines]
    plain: list[Box] = []
    others = []
    for board in boards:
        left, lower, right, upper = box = bounds(board.outline)
        if not board.holes and abs(area2(board.outline)) == 2 * (right - left) * (upper - lower):
            plain.append(box)
        else:
            others.append(Polygon(board.outline, board.holes))
    covered = unary_union(others)
    shapely.prepare(covered)
    return tuple(Seam(line=line, width=gap) for line in lines if _joins(line, gap, plain, covered))


def _joins(line: Segment, gap: int, plain: list[Box], covered: shapely.Geometry) -> bool:
    """Whether boards lie beside at least half of the gap, both sides counted together.

    Args:
        line: Middle line of the gap.
        gap: Its width.
        plain: The boards that are rectangles.
        covered: All others together.
    """
    (au, av), (bu, bv) = line
    half = gap // 2
    beside: list[Box]
    if av == bv:
        beside = [(au, av + way, bu, av + way + gap) for way in (half, -half - gap)]
    else:
        beside = [(au + way, av, au + way + gap, bv) for way in (half, -half - gap)]
    touched: float = sum(_shared(side, box) for side in beside for box in plain)
    if not covered.is_empty:
        touched += sum(shapely_box(*side).intersection(covered).area for side in beside)
    left, lower, right, upper = beside[0]
    return touched > 0.55 * ((right - left) * (upper - lower))


def _shared(one: Box, other: Box) -> int:
    """The area that two boxes share [ticks²]."""
    wide = min(one[2], other[2]) - max(one[0], other[0])
    high = min(one[3], other[3]) - max(one[1], other[1])
    return wide * high if wide > 0 and high > 0 else 0


def _added(
    surface: Surface,
    boards: tuple[Board, ...],
    field: BoardField,
    courses: list[Course],
    choice: Choice,
    rules: RuleSet,
) -> tuple[tuple[Support, ...], list[Run]]:
    """Members to add behind seams and other edges, and the edges that none can be put behind."""
    boxes = [
        seam_member(edge, run, field, surface, rules)
        for course, seams in zip(courses, choice.seams, strict=True)
        for edge in seams
        if not course.carried(edge)
        for run in course.runs(edge)
    ]
    flat = [
        seam_member(below[1], run, field, surface, rules)
        for below, _ in pairwise(choice.spans)
        if row_added(field, below[1])
        for run in row_runs(field, below[1])
    ]
    # Both lists hold (across, along) pairs in the field's axes: seams run along its v, joints along its u.
    rings: list[Ring] = [((a, c), (b, c), (b, d), (a, d)) for (a, b), (c, d) in boxes]
    rings += [((c, a), (d, a), (d, b), (c, b)) for (a, b), (c, d) in flat]
    if choice.along_v:
        rings = [transposed(ring) for ring in rings]
    kind = SupportKind.STUD if surface.kind is SurfaceKind.WALL else SupportKind.BLOCKING
    behind = [Support(id="", outline=ring, kind=kind, added=True) for ring in dict.fromkeys(rings)]
    more, hanging = edge_members(surface, boards, [*surface.supports, *behind], rules)
    behind += [Support(id="", outline=ring, kind=kind, added=True) for ring in more]
    return (
        tuple(support.model_copy(update={"id": f"added {number}"}) for number, support in enumerate(behind, 1)),
        hanging,
    )


def area_working(surface: Surface, stock_of: Mapping[str, str]) -> Working:
    """How much of a surface its boards cover, holes taken off.

    Args:
        surface: With its boards.
        stock_of: By piece, the sheet it is cut from.
    """
    double = sum(
        abs(area2(board.outline)) - sum(abs(area2(hole)) for hole in board.holes) for board in surface.boards
    )
    sheets = dict.fromkeys(stock_of[board.piece] for board in surface.boards)
    return Working(
        formula="boards-area",
        at=(surface.id,),
        inputs={"boards": len(surface.boards), "sheets": tuple(Ref(ref=f"stock/{name}") for name in sheets)},
        result=measure(double / 2 / (TICKS_PER_MM * 1000) ** 2, "m2"),
    )

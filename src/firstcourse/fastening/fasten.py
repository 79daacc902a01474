"""Every fastener of a surface's boards, with what the setter must be told and how the numbers came about."""

import pydantic

from firstcourse.fastening.barred import barred_finding, barred_members
from firstcourse.fastening.ground import Limits, ground_of, limits_of
from firstcourse.fastening.members import along_members
from firstcourse.fastening.panel import over_panel
from firstcourse.findings import Finding, Severity
from firstcourse.geometry.polygon import Point
from firstcourse.plan import Board, Support, SupportKind, Surface, SurfaceKind
from firstcourse.plan.model import Frozen
from firstcourse.rules import RuleSet
from firstcourse.units import Tape, format_length
from firstcourse.workings import Working


class Fastened(Frozen):
    """One surface's boards with their fasteners.

    Attributes:
        boards: All boards, in the order given; boards already up keep the fasteners they have.
        counts: Fasteners to drive, by `floor` or `wall` (ceilings and counters count as walls).
        workings: By key, the numbers that papers explain.
    """

    boards: tuple[Board, ...]
    findings: tuple[Finding, ...] = ()
    counts: dict[str, int] = pydantic.Field(default_factory=dict)
    workings: dict[str, Working] = pydantic.Field(default_factory=dict)


def fasten(surface: Surface, rules: RuleSet, tape: Tape) -> Fastened:
    """Place the fasteners of every board of a surface.

    Args:
        surface: A boarded surface with its supports, panel screws and no-fastener zones; boards that are bonded
            to a slab get none.
        rules: Rules in force.
        tape: Tape whose graduation the places lie on.

    Returns:
        The boards with fasteners; a finding names each place where a rule cannot be kept.

    References:
        Rules fastening.spacing.wall, fastening.spacing.floor, fastening.edge.min, fastening.edge.max_floor,
        fastening.corner.min, fastening.panel_screw_clear.
    """
    limits = limits_of(surface, rules, tape.graduation)
    boards: list[Board] = []
    findings: list[Finding] = []
    for board in surface.boards:
        if board.fixed or surface.slab == "bonded":
            boards.append(board)
            continue
        points, told = _of_board(board, surface, limits, rules, tape)
        placed = tuple(sorted(set(points), key=lambda point: (point[1], point[0])))
        boards.append(board.model_copy(update={"fasteners": placed}))
        findings += told
    if surface.slab == "fastened" and surface.boards:
        findings.append(_into_concrete(surface, rules))
    kind = "floor" if surface.kind is SurfaceKind.FLOOR else "wall"
    count = sum(len(board.fasteners) for board in boards if not board.fixed)
    return Fastened(
        boards=tuple(boards),
        findings=tuple(findings),
        counts={kind: count},
        workings={f"fasteners {surface.id}": _working(surface, boards, count, limits, rules, tape)},
    )


def _of_board(
    board: Board, surface: Surface, limits: Limits, rules: RuleSet, tape: Tape
) -> tuple[list[Point], list[Finding]]:
    points, findings = _placed(board, surface, limits, rules, tape, corners=True)
    if points:
        return points, findings
    points, findings = _placed(board, surface, limits, rules, tape, corners=False)
    if points:
        return points, [*findings, _small(board, surface, limits, rules, tape)]
    return [], [_none(board, surface, limits, rules)]


def _placed(
    board: Board,
    surface: Surface,
    limits: Limits,
    rules: RuleSet,
    tape: Tape,
    *,
    corners: bool,
) -> tuple[list[Point], list[Finding]]:
    ground = ground_of(board, surface, limits, corners=corners)
    if any(support.kind is SupportKind.PANEL for support in surface.supports):
        points, kept = over_panel(board, ground, limits, dodges=bool(surface.panel_screws))
        return points, [] if kept else [_far(board, surface, "", limits, rules, tape)]
    rows, points, loose = along_members(board, ground, surface, limits, rules)
    findings = []
    for row in rows:
        if row.tight:
            findings.append(_tight(board, surface, row.support, limits, rules, tape))
        elif row.far:
            findings.append(_far(board, surface, row.support.id, limits, rules, tape))
    if points and (barred := barred_members(board, surface, limits)):
        findings.append(barred_finding(_where(board, surface), barred))
    if loose and points:
        findings.append(_loose(board, surface, limits, rules, tape))
    return points, findings


def _into_concrete(surface: Surface, rules: RuleSet) -> Finding:
    return Finding(
        code="FST-106",
        severity=Severity.FIX,
        where=surface.title or surface.id,
        message="Backer screws do not hold in concrete, and these boards lie on a slab.",
        source="common practice",
        remedy="Take fasteners made for concrete, and drill for them clear of heating pipes, cables and tendons, "
        "with extraction for the silica in the dust; through a membrane that keeps water or damp off none goes.",
    )


def _where(board: Board, surface: Surface) -> str:
    return f"{surface.title or surface.id}, board {board.mark or board.id}"


def _tight(
    board: Board, surface: Surface, support: Support, limits: Limits, rules: RuleSet, tape: Tape
) -> Finding:
    return Finding(
        code="FST-101",
        severity=Severity.FIX,
        where=_where(board, surface),
        message=f"The board bears too little on {support.id or support.kind} to take a fastener off its edge.",
        limit=format_length(limits.edge, tape),
        rule="fastening.edge.min",
        source=rules.entry("fastening.edge.min").source,
        remedy="Add blocking beside the member so that the board's edge has wood behind it.",
    )


def _far(board: Board, surface: Surface, member: str, limits: Limits, rules: RuleSet, tape: Tape) -> Finding:
    along = f" along {member}" if member else ""
    return Finding(
        code="FST-102",
        severity=Severity.FIX,
        where=_where(board, surface),
        message=f"Fasteners cannot be set close enough together{along}.",
        limit=format_length(limits.spacing, tape),
        rule=limits.spacing_rule,
        source=rules.entry(limits.spacing_rule).source,
        remedy="Add blocking beside the place that cannot be fastened, or move the seam.",
    )


def _loose(board: Board, surface: Surface, limits: Limits, rules: RuleSet, tape: Tape) -> Finding:
    return Finding(
        code="FST-105",
        severity=Severity.FIX,
        where=_where(board, surface),
        message="Part of an edge lies farther from any fastener than asked.",
        limit=format_length(limits.edge_reach, tape),
        rule="fastening.edge.reach",
        source=rules.entry("fastening.edge.reach").source,
        remedy="Bed this edge in mortar on the member, or add blocking that a fastener reaches.",
    )


def _small(board: Board, surface: Surface, limits: Limits, rules: RuleSet, tape: Tape) -> Finding:
    return Finding(
        code="FST-103",
        severity=Severity.FIX,
        where=_where(board, surface),
        message="The board is too small to keep fasteners off its corners; they keep off its edges only.",
        limit=format_length(limits.corner, tape),
        rule="fastening.corner.min",
        source=rules.entry("fastening.corner.min").source,
        remedy="Drill pilot holes before driving, or join this board with its neighbour.",
    )


def _none(board: Board, surface: Surface, limits: Limits, rules: RuleSet) -> Finding:
    return Finding(
        code="FST-104",
        severity=Severity.FIX,
        where=_where(board, surface),
        message="The board has no place for a fastener: too narrow, in a zone, or no member behind it.",
        rule=limits.spacing_rule,
        source=rules.entry(limits.spacing_rule).source,
        remedy="Add blocking behind the board, or join it with its neighbour.",
    )


def _working(
    surface: Surface, boards: list[Board], count: int, limits: Limits, rules: RuleSet, tape: Tape
) -> Working:
    spacing = rules.entry(limits.spacing_rule)
    loose = [board for board in boards if not board.fixed]
    return Working(
        title=f"Fasteners of {surface.title or surface.id}",
        formula="sum of the fasteners of the boards",
        values={
            "boards": str(len(loose)),
            "spacing at most": format_length(limits.spacing, tape),
            "from edges at least": format_length(limits.edge, tape),
            "from corners at least": format_length(limits.corner, tape),
            **{board.mark or board.id: str(len(board.fasteners)) for board in loose},
        },
        result=str(count),
        unit="fasteners",
        source=spacing.cited,
    )

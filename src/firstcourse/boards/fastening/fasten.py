"""Every fastener of a surface's boards, with what the setter must be told and how the numbers came about."""

import pydantic

from firstcourse.boards.fastening.barred import barred_finding, barred_members
from firstcourse.boards.fastening.ground import FastenerLimits, ground_of, limits_of
from firstcourse.boards.fastening.members import along_members
from firstcourse.boards.fastening.panel import over_panel
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import Point
from firstcourse.plan import Board, Frozen, Support, SupportKind, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.units import Tape
from firstcourse.values import Name, Ref, least, length, most
from firstcourse.workings import Working


class Fastened(Frozen):
    """One surface's boards with their fasteners.

    Attributes:
        boards: All boards, in the order given; boards already up keep the fasteners they have.
        counts: Fasteners to drive, by `floor` or `wall` (ceilings and counters count as walls).
        working: How many that is; None where nothing is boarded.
    """

    boards: tuple[Board, ...]
    findings: tuple[Finding, ...] = ()
    counts: dict[str, int] = pydantic.Field(default_factory=dict)
    working: Working | None = None


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
        points, told = _of_board(board, surface, limits, rules)
        placed = tuple(sorted(set(points), key=lambda point: (point[1], point[0])))
        boards.append(board.model_copy(update={"fasteners": placed}))
        findings += told
    if surface.slab == "fastened" and surface.boards:
        findings.append(_into_concrete(surface))
    kind = "floor" if surface.kind is SurfaceKind.FLOOR else "wall"
    count = sum(len(board.fasteners) for board in boards if not board.fixed)
    return Fastened(
        boards=tuple(boards),
        findings=tuple(findings),
        counts={kind: count},
        working=_working(surface, boards, limits, rules) if boards else None,
    )


def _of_board(
    board: Board, surface: Surface, limits: FastenerLimits, rules: RuleSet
) -> tuple[list[Point], list[Finding]]:
    points, findings = _placed(board, surface, limits, rules, corners=True)
    if points:
        return points, findings
    points, findings = _placed(board, surface, limits, rules, corners=False)
    if points:
        return points, [*findings, _small(board, limits, rules)]
    return [], [_none(board, limits, rules)]


def _placed(
    board: Board,
    surface: Surface,
    limits: FastenerLimits,
    rules: RuleSet,
    *,
    corners: bool,
) -> tuple[list[Point], list[Finding]]:
    ground = ground_of(board, surface, limits, corners=corners)
    if any(support.kind is SupportKind.PANEL for support in surface.supports):
        points, kept = over_panel(board, ground, limits, dodges=bool(surface.panel_screws))
        return points, [] if kept else [_far(board, "", limits, rules)]
    rows, points, loose = along_members(board, ground, surface, limits, rules)
    findings = []
    for row in rows:
        if row.tight:
            findings.append(_tight(board, row.support, limits, rules))
        elif row.far:
            findings.append(_far(board, row.support.id, limits, rules))
    if points and (barred := barred_members(board, surface, limits)):
        findings.append(barred_finding(board, barred))
    if loose and points:
        findings.append(_loose(board, limits, rules))
    return points, findings


def _into_concrete(surface: Surface) -> Finding:
    return Finding(
        code="FST-106", severity=Severity.FIX, at=(surface.id,), remedies=("concrete_fasteners", "no_holes")
    )


def _tight(board: Board, support: Support, limits: FastenerLimits, rules: RuleSet) -> Finding:
    return rules.entry("fastening.edge.min").found(
        "FST-101",
        Severity.FIX,
        board.id,
        limit=least(length(limits.edge)),
        remedies=("blocking",),
        member=Name(name=support.id or support.kind.value),
    )


def _far(board: Board, member: str, limits: FastenerLimits, rules: RuleSet) -> Finding:
    return rules.entry(limits.spacing_rule).found(
        "FST-102",
        Severity.FIX,
        board.id,
        limit=most(length(limits.spacing)),
        remedies=("blocking_or_seam",),
        named=bool(member),
        member=Name(name=member),
    )


def _loose(board: Board, limits: FastenerLimits, rules: RuleSet) -> Finding:
    return rules.entry("fastening.edge.reach").found(
        "FST-105", Severity.FIX, board.id, limit=most(length(limits.edge_reach)), remedies=("bed_or_blocking",)
    )


def _small(board: Board, limits: FastenerLimits, rules: RuleSet) -> Finding:
    return rules.entry("fastening.corner.min").found(
        "FST-103", Severity.FIX, board.id, limit=least(length(limits.corner)), remedies=("pilot_holes",)
    )


def _none(board: Board, limits: FastenerLimits, rules: RuleSet) -> Finding:
    return rules.entry(limits.spacing_rule).found("FST-104", Severity.FIX, board.id, remedies=("blocking",))


def _working(surface: Surface, boards: list[Board], limits: FastenerLimits, rules: RuleSet) -> Working:
    loose = [board for board in boards if not board.fixed]
    each = tuple(len(board.fasteners) for board in loose)
    return Working(
        formula="boards-fasteners",
        at=(surface.id,),
        inputs={
            "boards": len(loose),
            "spacing": most(length(limits.spacing)),
            "edge": least(length(limits.edge)),
            "corner": least(length(limits.corner)),
            "of": tuple(Ref(ref=board.id) for board in loose),
            "each": each,
        },
        result=sum(each),
        rule=rules.entry(limits.spacing_rule).id,
    )

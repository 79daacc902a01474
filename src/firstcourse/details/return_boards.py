"""Boards on the returns of windows set back in a wall: four small surfaces, cut from the sheets of the wall."""

from collections.abc import Iterator, Sequence
from typing import Literal

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds, rectangle
from firstcourse.plan import (
    Opening,
    Ring,
    Side,
    SideKind,
    Stock,
    Support,
    SupportKind,
    Surface,
    SurfaceKind,
)
from firstcourse.rules import RuleSet
from firstcourse.values import least, length

_FRAMING = "framing of the opening"
"""Id of the members behind a strip."""


def with_return_boards(wall: Surface, stock: Sequence[Stock], rules: RuleSet) -> Surface:
    """A surface whose windows say how thick the boards on their returns are, where they take any.

    Args:
        wall: A surface to board, as surveyed.
        stock: Sheets that it may be boarded with.
        rules: Rules in force.
    """
    if not stock or all(window.depth is None for window in wall.openings):
        return wall
    openings = [
        window.model_copy(update={"return_board": board_thickness(stock)})
        if window.depth is not None and not too_narrow(window.depth, rules)
        else window
        for window in wall.openings
    ]
    return wall.model_copy(update={"openings": tuple(openings)})


def return_boards(
    wall: Surface, stock: tuple[Stock, ...], rules: RuleSet
) -> Iterator[tuple[Surface, tuple[Stock, ...]]]:
    """The surfaces that sill, head and sides of every window with boarded returns take, with their sheets.

    Sides run from framing to framing; sill and head lie between them. The front edges of all are flush with the
    face of the wall's boards, so that the framing begins a board's thickness behind them.

    Args:
        wall: A surface to board whose windows say how thick their boards are.
        stock: Sheets that it may be boarded with.
        rules: Rules in force.
    """
    for window in wall.openings:
        if window.return_board is not None:
            yield from ((surface, stock) for surface in _boards(wall, window, window.return_board, rules))


def board_thickness(stock: Sequence[Stock]) -> int:
    """Thickness that a surface's layers count with: of several boards the thickest [ticks]."""
    return max(item.thickness for item in stock)


def board_width(depth: int, rules: RuleSet) -> int:
    """Width of the boards on returns of a depth, the gap at the window's frame taken off [ticks]."""
    return depth - rules.ticks("boards.gap.perimeter")


def too_narrow(depth: int, rules: RuleSet) -> bool:
    """Whether returns of a depth are narrower than a limb of board may be."""
    return board_width(depth, rules) < rules.ticks("boards.limb.min")


def returns_findings(wall: Surface, stock: Sequence[Stock], rules: RuleSet) -> Iterator[Finding]:
    """What the boards of each window's returns ask of its framing, or that they are too narrow to be planned.

    It is asked of windows in walls that are not tiled too.
    """
    if stock:
        yield from (
            _returns_finding(wall, window, stock, rules) for window in wall.openings if window.depth is not None
        )


def _returns_finding(wall: Surface, window: Opening, stock: Sequence[Stock], rules: RuleSet) -> Finding:
    assert window.outline is not None and window.depth is not None
    left, low, right, top = bounds(window.outline)
    board, ref = board_thickness(stock), f"{wall.id}/opening/{window.id}"
    if too_narrow(window.depth, rules):
        entry = rules.entry("boards.limb.min")
        return entry.found(
            "TIL-131",
            Severity.FIX,
            ref,
            measured=length(board_width(window.depth, rules)),
            limit=least(length(rules.ticks(entry.id))),
            remedies=("mortar_or_foam",),
            boarded=False,
        )
    return Finding(
        code="TIL-131",
        severity=Severity.NOTE,
        at=(ref,),
        remedies=("check_framing",),
        values={"boarded": True, "wide": length(right - left + 2 * board), "high": length(top - low + 2 * board)},
    )


def _boards(wall: Surface, window: Opening, board: int, rules: RuleSet) -> Iterator[Surface]:
    assert window.outline is not None and window.depth is not None
    left, low, right, top = bounds(window.outline)
    deep, under, over = window.depth, low - board, top + board
    flat, upright = rectangle(left, 0, right, deep), rectangle(0, under, deep, over)
    base, there = f"{wall.id}/{window.id}", f"{wall.id}/opening/{window.id}"
    front, frame, framing = wall.id, f"{there}/frame", f"{there}/framing"
    left_board, right_board = f"{base}/left board", f"{base}/right board"
    # What each strip meets at its lower side, its right one, its upper one and its left one.
    strips = (
        ("sill", flat, (front, right_board, frame, left_board)),
        ("head", flat, (frame, right_board, front, left_board)),
        ("left", upright, (framing, frame, framing, front)),
        ("right", upright, (framing, front, framing, frame)),
    )
    for name, outline, met in strips:
        framing_axis: Literal["u", "v"] = "u" if name in ("sill", "head") else "v"
        yield Surface(
            id=f"{base}/{name} board",
            room=wall.room,
            kind=SurfaceKind.COUNTER if framing_axis == "u" else SurfaceKind.WALL,
            outline=outline,
            sides=tuple(
                Side(kind=SideKind.FREE if one == front else SideKind.PERIMETER, meets=one) for one in met
            ),
            supports=_framing(name, outline, deep, board, rules),
            framing_axis=framing_axis,
            board_stock=wall.board_stock,
            part_of=wall.id,
        )


def _framing(name: str, outline: Ring, deep: int, board: int, rules: RuleSet) -> tuple[Support, ...]:
    """The framing behind a strip, flush with the wall's studs: a board's thickness behind its front edge.

    It is given as two members, front and back, where it is deep enough for a row of fasteners along each edge.
    """
    left, low, right, high = bounds(outline)
    parts = [(board, deep)]
    if deep - board >= 2 * rules.ticks("fastening.apart.min"):
        middle = (board + deep) // 2
        parts = [(board, middle), (middle, deep)]
    found = []
    for place, (near, far) in zip(("front", "back"), parts, strict=False):
        face = {
            "sill": rectangle(left, near, right, far),
            "head": rectangle(left, deep - far, right, deep - near),
            "left": rectangle(near, low, far, high),
            "right": rectangle(deep - far, low, deep - near, high),
        }[name]
        kind = SupportKind.STUD if name in ("left", "right") else SupportKind.BLOCKING
        found.append(Support(id=f"{_FRAMING}, {place}", outline=face, kind=kind))
    return tuple(found)

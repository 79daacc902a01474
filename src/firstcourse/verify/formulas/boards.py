"""What surfaces take: the area of their boards, and the fasteners that hold them."""

from collections.abc import Iterator, Mapping

from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.formulas.proving import (
    CODE,
    Prove,
    holds,
    just,
    key_of,
    limited,
    only,
    ref,
    rests_on,
    several,
    surface_of,
)
from firstcourse.verify.shopping_fields import Given, Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_AREA, _FASTENERS, _PRACTICE = "boards-area", "boards-fasteners", "boards-practice"
_BROKEN = frozenset(("BRD-101", "BRD-201", "BRD-202", "BRD-203", "BRD-204", "BRD-205", "BRD-301"))
_TICKS_PER_M = 1000 * TICKS_PER_MM


def _area(plan: Document, working: Working) -> Iterator[Objection]:
    surface = surface_of(plan, working)
    stock_of = {piece.id: piece.stock for piece in plan.pieces}
    sheets = dict.fromkeys(stock_of[board.piece] for board in surface.boards if board.piece in stock_of)
    yield from only(working, "boards", "sheets")
    yield from just(working, "boards", len(surface.boards))
    yield from just(working, "sheets", [ref(f"stock/{name}") for name in sheets])
    yield from holds(working, "result", sum(board.shape.area for board in surface.boards) / _TICKS_PER_M**2, "m2")
    yield from rests_on(working)
    yield from limited(working)


def _fasteners(plan: Document, working: Working) -> Iterator[Objection]:
    surface = surface_of(plan, working)
    loose = [board for board in surface.boards if not board.fixed]
    rule = f"fastening.spacing.{'floor' if surface.kind == 'floor' else 'wall'}"
    yield from only(working, "boards", "spacing", "edge", "corner", "of", "each")
    yield from just(working, "boards", len(loose))
    for name, asked, sense in (
        ("spacing", rule, "most"),
        ("edge", "fastening.edge.min", "least"),
        ("corner", "fastening.corner.min", "least"),
    ):
        ticks = plan.rules.ticks(asked)
        yield from just(working, name, {"value": ticks / TICKS_PER_MM, "unit": "mm", "sense": sense})
    yield from just(working, "of", [ref(board.id) for board in loose])
    yield from just(working, "each", [len(board.fasteners) for board in loose])
    yield from just(working, "result", sum(len(board.fasteners) for board in loose))
    yield from rests_on(working, rule)
    yield from limited(working)


def _practice(plan: Document, working: Working) -> Iterator[Objection]:
    """No plan holds the layout of plain practice: only what is said of it is held to be of one piece."""
    faults, numbers = several(working.inputs.get("faults")), several(working.inputs.get("numbers"))
    codes = [str(one.get("word")) if isinstance(one, Mapping) else "" for one in faults]
    yield from only(working, "keeps", "faults", "numbers")
    yield from rests_on(working)
    yield from limited(working)
    yield from just(working, "keeps", not faults)
    if not set(codes) <= _BROKEN or codes != sorted(set(codes)) or len(codes) != len(numbers):
        yield Objection(CODE, working.key, f"names faults of a layout that are none: {codes}")
    if not all(_count(number) > 0 for number in numbers) or _count(working.found) < len(faults[:1]):
        yield Objection(CODE, working.key, "counts what is no number, or finds faults where nothing is bought")


def _count(value: Given) -> int:
    return value if isinstance(value, int) and not isinstance(value, bool) else -1


def expected(plan: Document) -> Iterator[str]:
    """Area and fasteners of every surface that is boarded, and what practice buys of every stock that is cut."""
    yield from (
        key_of(formula, surface.id)
        for surface in plan.surfaces
        if surface.boards
        for formula in (_AREA, _FASTENERS)
    )
    yield from (key_of(_PRACTICE, f"stock/{count.stock}") for count in plan.counts)


FORMULAS: dict[str, Prove] = {_AREA: _area, _FASTENERS: _fasteners, _PRACTICE: _practice}

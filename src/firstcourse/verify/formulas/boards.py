"""What surfaces take: the area of their boards, and the fasteners that hold them."""

from collections.abc import Iterator

from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.formulas.proving import (
    Prove,
    holds,
    just,
    key_of,
    limited,
    only,
    ref,
    rests_on,
    surface_of,
)
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_AREA, _FASTENERS = "boards-area", "boards-fasteners"
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


def expected(plan: Document) -> Iterator[str]:
    """Both of every surface that is boarded."""
    yield from (key_of(formula, surface.id) for surface in plan.surfaces if surface.boards for formula in FORMULAS)


FORMULAS: dict[str, Prove] = {_AREA: _area, _FASTENERS: _fasteners}

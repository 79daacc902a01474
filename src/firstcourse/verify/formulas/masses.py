"""What sheets and boards weigh, from their sizes and densities."""

import math
from collections.abc import Iterator

from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.formulas.proving import Prove, key_of
from firstcourse.verify.formulas.wanted import Wanted, length, measure
from firstcourse.verify.shopping_fields import SheetStock, Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_SHEET, _BOARDS = "quantities-sheet_mass", "quantities-boards_mass"
_TICKS_PER_M = 1000 * TICKS_PER_MM


def carried(plan: Document) -> dict[str, float]:
    """Mass of one whole sheet of every stock that sheets of the plan are of [kg]."""
    used = {sheet.stock for sheet in plan.sheets}
    return {name: _sheet_kg(item, plan) for name, item in plan.shopping.sheet_stock.items() if name in used}


def expected(plan: Document) -> Iterator[str]:
    """One of each stock that is cut, and one of all boards."""
    kg = carried(plan)
    yield from (key_of(_SHEET, f"stock/{name}") for name in kg)
    if kg:
        yield key_of(_BOARDS, "job")


def _sheet(plan: Document, working: Working) -> Iterator[Objection]:
    item = plan.shopping.sheet_stock[working.at[0].partition("/")[2]]
    entered = item.density is not None
    yield from Wanted(
        formula=_SHEET,
        at=working.at,
        inputs={
            "size": [length(side) for side in item.size],
            "thickness": length(item.thickness),
            "density": measure(_density(item, plan), "kg/m3"),
            "entered": entered,
        },
        result=measure(_sheet_kg(item, plan), "kg"),
        rule="" if entered else _rule(item, plan),
    ).objections(working)


def _boards(plan: Document, working: Working) -> Iterator[Objection]:
    stock_of = {piece.id: piece.stock for piece in plan.pieces}
    sheets = plan.shopping.sheet_stock
    shares = []
    for board in (board for surface in plan.surfaces for board in surface.boards if not board.fixed):
        sheet = sheets.get(stock_of.get(board.piece, ""))
        if sheet is not None:
            shares.append(board.shape.area / (sheet.size[0] * sheet.size[1]) * _sheet_kg(sheet, plan))
    yield from Wanted(formula=_BOARDS, at=working.at, result=measure(math.fsum(shares), "kg")).objections(working)


def _sheet_kg(item: SheetStock, plan: Document) -> float:
    return item.size[0] * item.size[1] * item.thickness / _TICKS_PER_M**3 * _density(item, plan)


def _density(item: SheetStock, plan: Document) -> float:
    """As the sheet has it; else as the book has it for its family, or for fibre cement."""
    return plan.rules.number(_rule(item, plan)) if item.density is None else item.density


def _rule(item: SheetStock, plan: Document) -> str:
    own = f"mass.board.{item.kind.lower().replace(' ', '_').replace('-', '_')}"
    return own if plan.rules.has(own) else "boards.density"


FORMULAS: dict[str, Prove] = {_SHEET: _sheet, _BOARDS: _boards}

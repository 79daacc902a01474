"""How layouts and their cutting are weighed: cost, boards, seams, thin strips, cuts, what is kept, sizes."""

from collections.abc import Sequence
from fractions import Fraction
from math import ceil, dist, gcd
from typing import NamedTuple

from firstcourse.boards import SurfaceLayout
from firstcourse.cutting import CuttingPlan, KeptSize, StockSize, thin_strips
from firstcourse.plan import Stock
from firstcourse.rules import RuleSet


class Value(NamedTuple):
    """Less is better, the first that differs decides: a setter's own order.

    A strip too thin to snap takes longer than another cut, so it weighs more; less than a board to set or a seam.

    Attributes:
        cost: Of the sheets bought.
        boards: Pieces to cut, carry, set and fasten.
        seams: Length of the seams to tape [ticks], or in steps of it.
        thin: Cuts that take off less than can be snapped.
        cuts: Over all sheets.
        kept: Value of the offcuts worth keeping, in steps, negated.
        smallest: Shorter side of the smallest piece, negated [ticks], or in steps of it.
        heaviest: Area × thickness of the heaviest piece [ticks³]; 0 where more than one person lifts it.
    """

    cost: int
    boards: int
    seams: int
    thin: int
    cuts: int
    kept: int
    smallest: int
    heaviest: int


class Rough(NamedTuple):
    """What decides first in `Value`, where the cutting is known about."""

    cost: int
    boards: int
    seams: int
    cuts: int


def rough_value(cost: int, cuts: int, layouts: Sequence[SurfaceLayout], rules: RuleSet) -> Rough:
    """Weigh layouts that are cut at about this cost with about so many cuts."""
    return Rough(cost, sum(len(layout.pieces) for layout in layouts), _seams(layouts, rules), cuts)


def value_of(
    cutting: CuttingPlan, layouts: Sequence[SurfaceLayout], stock: Sequence[Stock], rules: RuleSet
) -> Value:
    """Weigh layouts and their cutting; the weights are rules `choice.*`."""
    least, step = rules.ticks("choice.offcut.least_side"), rules.number("choice.offcut.step")
    kept = sum(
        int(part.size[0] * part.size[1] / (sheet.w * sheet.h) / step)
        for sheet in cutting.sheets
        if sheet.kept is None
        for part in sheet.parts
        if part.keep and part.blank is None and min(part.size) >= least
    )
    blanks = [(piece.blank, piece.stock) for layout in layouts for piece in layout.pieces]
    thickness = {item.id: item.thickness for item in stock}
    return Value(
        cost=cutting.cost,
        boards=len(blanks),
        seams=_seams(layouts, rules),
        thin=sum(thin_strips(sheet, rules.ticks("boards.cut.least")) for sheet in cutting.sheets),
        cuts=sum(len(sheet.cuts) for sheet in cutting.sheets),
        kept=-kept,
        smallest=-_in_steps(min((min(size) for size, _ in blanks), default=0), rules.ticks("choice.piece.step")),
        heaviest=max((size[0] * size[1] * thickness[name] for size, name in blanks), default=0)
        if rules.flag("choice.piece.lone_worker")
        else 0,
    )


def _seams(layouts: Sequence[SurfaceLayout], rules: RuleSet) -> int:
    """Length of all seams, in steps."""
    length = sum(round(dist(*seam.line)) for layout in layouts for seam in layout.seams)
    return _in_steps(length, rules.ticks("choice.seam.step"))


def _in_steps(length: int, step: int) -> int:
    """Whole steps; every tick counts where there are none."""
    return length // step if step else length


def least_cost(areas: Sequence[tuple[int, Sequence[StockSize]]], kept: Sequence[KeptSize]) -> int:
    """A cost that no cutting goes below: each area from the sheet of best value, offcuts taken off, whole sheets.

    Args:
        areas: Area to be cut, with the sheets it may be cut from.
        kept: Offcuts at hand, which cost nothing.
    """
    found = Fraction(0)
    best = Fraction(0)
    sizes: dict[str, StockSize] = {}
    for area, sheets in areas:
        rates = [Fraction(sheet.cost, sheet.w * sheet.h) for sheet in sheets]
        if area and rates:
            found += area * min(rates)
            best = max(best, min(rates))
            sizes |= {sheet.id: sheet for sheet in sheets}
    found -= best * sum(piece.w * piece.h for piece in kept)
    step = gcd(*(sheet.cost for sheet in sizes.values())) or 1
    return max(0, ceil(found / step) * step)

"""Values of the cutting optimiser: whole numbers only, rectangles, and no knowledge of what they are for.

All lengths are whole numbers in one unit of the caller's choice, costs whole numbers in another. Cuts are
edge to edge and take no material away.
"""

from dataclasses import dataclass
from typing import Literal

from firstcourse.errors import InputValueError


class CannotCutError(InputValueError):
    """A blank fits none of the sheets it is allowed on; `blank` is its id."""

    def __init__(self, blank: str) -> None:
        self.blank = blank
        super().__init__(f"blank '{blank}' fits none of the sheets it is allowed on")


def _positive(**values: int) -> None:
    for name, value in values.items():
        if value <= 0:
            raise InputValueError(f"'{name}' must be > 0: {value}")


@dataclass(frozen=True, slots=True)
class Blank:
    """A rectangle to be cut once.

    Attributes:
        allowed: Ids of the stocks it may be cut from.
        may_turn: Whether it may lie turned by a quarter.
    """

    id: str
    w: int
    h: int
    allowed: tuple[str, ...]
    may_turn: bool = True

    def __post_init__(self) -> None:
        _positive(w=self.w, h=self.h)


@dataclass(frozen=True, slots=True)
class StockSize:
    """A sheet that can be bought in any number.

    Attributes:
        may_turn: Whether blanks may lie turned on it.
        least_cut: A cut that takes off a strip narrower than this is hard to make, and avoided before others are.
    """

    id: str
    w: int
    h: int
    cost: int
    may_turn: bool = True
    least_cut: int = 0

    def __post_init__(self) -> None:
        _positive(w=self.w, h=self.h, cost=self.cost)


@dataclass(frozen=True, slots=True)
class KeptSize:
    """A single rectangle of a stock already at hand; it costs nothing."""

    id: str
    stock: str
    w: int
    h: int

    def __post_init__(self) -> None:
        _positive(w=self.w, h=self.h)


@dataclass(frozen=True, slots=True)
class CutLine:
    """One edge-to-edge cut of a part.

    Part names are the path of cuts to them: empty for the whole sheet, then one letter per cut, `a` for the
    left or lower part and `b` for the right or upper one.

    Attributes:
        along: Axis the line runs along: `x` is a horizontal line, `y` a vertical one.
        at: Distance from the part's lower side (`x`) or left side (`y`).
    """

    of: str
    along: Literal["x", "y"]
    at: int
    gives: tuple[str, str]


@dataclass(frozen=True, slots=True)
class CutPart:
    """A rectangle left when all cuts of a sheet are made.

    Attributes:
        at: Lower left corner on the sheet.
        size: As it lies on the sheet.
        blank: Id of the blank it is, or None for what is left over.
        turned: The blank's width runs up the sheet.
        keep: The largest rectangle left over from its sheet.
    """

    name: str
    at: tuple[int, int]
    size: tuple[int, int]
    blank: str | None = None
    turned: bool = False
    keep: bool = False


@dataclass(frozen=True, slots=True)
class CutSheet:
    """One sheet with its cuts in working order; `kept` names the kept rectangle it is, if not bought."""

    stock: str
    kept: str | None
    w: int
    h: int
    cuts: tuple[CutLine, ...]
    parts: tuple[CutPart, ...]


@dataclass(frozen=True, slots=True)
class Bound:
    """A value no plan can go below, and the argument.

    Arguments are `none`, `area`, `dual_functions` (dual feasible functions) and `pattern_prices`.
    """

    value: int
    proof: str


@dataclass(frozen=True, slots=True)
class StockCount:
    """Sheets bought of one stock beside the fewest that any plan buys of it."""

    used: int
    bound: Bound

    @property
    def proven(self) -> bool:
        """Whether no plan buys fewer of this stock."""
        return self.used == self.bound.value


@dataclass(frozen=True, slots=True)
class CuttingPlan:
    """How all blanks are cut.

    Attributes:
        counts: By stock id, in the order the stocks were given.
        cost: Of all sheets bought.
        cost_bound: The least that any plan costs.
    """

    sheets: tuple[CutSheet, ...]
    counts: dict[str, StockCount]
    cost: int
    cost_bound: Bound

    @property
    def proven(self) -> bool:
        """Whether no plan costs less."""
        return self.cost == self.cost_bound.value

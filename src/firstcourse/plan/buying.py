"""What to buy: the exact need of each thing, and how many packs of it."""

from typing import Literal

from firstcourse.plan.base import Frozen, Ticks

Unit = Literal["sheet", "fastener", "tile", "chip", "spacer", "piece", "kg", "mm", "m2", "m3", "l", "ml"]
"""What a need is counted or measured in, whatever the tape."""
PackKind = Literal[
    "sheet", "box", "piece", "pack", "bag", "roll", "coil", "length", "cartridge", "pail", "running", "off_roll"
]
"""How things are sold; `running` and `off_roll` by the metre or foot, the latter off a roll of one width."""


class Pack(Frozen):
    """How something is sold.

    Attributes:
        kind: What one is.
        size: How much one holds, or makes, in `unit`.
        unit: That of the need.
        sheets: Mounted sheets in a box of mosaic.
        width: Of the roll that something is cut off.
    """

    kind: PackKind
    size: float
    unit: Unit
    sheets: int | None = None
    width: Ticks | None = None


class Quantity(Frozen):
    """Something to buy: the exact need, and whole packs of it.

    Attributes:
        item: A reference such as `stock/wall board` or `tile_stock/floor tile`; a code, such as `grout`; or a code
            with its kind or diameter [mm], such as `added/blocking`, `collars/pipe` or `backer_rod/9.525`.
        exact: The need, in `unit`, with nothing added.
        buy: Whole packs.
        working: Key of its working.
    """

    item: str
    exact: float
    unit: Unit
    buy: int
    pack: Pack
    working: str = ""

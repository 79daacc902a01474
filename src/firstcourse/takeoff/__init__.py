"""What to buy for boards and tile, counted from what is drawn."""

from firstcourse.takeoff.count import Quantities, count
from firstcourse.takeoff.items import (
    BOND_BREAKER,
    EDGE_TRIM,
    FASTENERS,
    GROUT,
    JOINT_SEALANT,
    LARGE_TILE_MORTAR,
    MORTAR,
    SEALANT,
    SPACERS,
    TAPE,
    TILE_MORTAR,
    added_of,
    rod_of,
    sheets_of,
    tiles_of,
)
from firstcourse.takeoff.membranes import bed_mortar, membranes
from firstcourse.takeoff.sheet_fills import Share, SheetFill
from firstcourse.takeoff.tiles import count_tiles
from firstcourse.takeoff.why import Reason, StockWhy, beside_practice, why_sheets

__all__ = [
    "BOND_BREAKER",
    "EDGE_TRIM",
    "FASTENERS",
    "GROUT",
    "JOINT_SEALANT",
    "LARGE_TILE_MORTAR",
    "MORTAR",
    "SEALANT",
    "SPACERS",
    "TAPE",
    "TILE_MORTAR",
    "Quantities",
    "Reason",
    "Share",
    "SheetFill",
    "StockWhy",
    "added_of",
    "bed_mortar",
    "beside_practice",
    "count",
    "count_tiles",
    "membranes",
    "rod_of",
    "sheets_of",
    "tiles_of",
    "why_sheets",
]

"""What to buy for boards and tile, counted from what is drawn."""

from firstcourse.quantities.count import Quantities, count
from firstcourse.quantities.items import (
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
from firstcourse.quantities.tiles import count_tiles

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
    "added_of",
    "count",
    "count_tiles",
    "rod_of",
    "sheets_of",
    "tiles_of",
]

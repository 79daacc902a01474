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
from firstcourse.takeoff.tiles import count_tiles

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

"""Niches, windows, benches and kerbs as surfaces of their own, and the feet of walls."""

from firstcourse.details.floor_heights import room_floor
from firstcourse.details.footings import SHOWER_FLOOR, Floors
from firstcourse.details.return_boards import return_boards, returns_findings, with_return_boards
from firstcourse.details.shelves import FallLimits, drop_of_shelf, least_drop
from firstcourse.details.tile_linings import Linings, linings_of

__all__ = [
    "SHOWER_FLOOR",
    "FallLimits",
    "Floors",
    "Linings",
    "drop_of_shelf",
    "least_drop",
    "linings_of",
    "return_boards",
    "returns_findings",
    "room_floor",
    "with_return_boards",
]

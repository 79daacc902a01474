"""Rows of drawn tiles along one axis: which tiles begin alike, and where."""

from collections.abc import Iterable
from dataclasses import dataclass

from firstcourse.geometry import bounds
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.structure import Tile

ONE_PENCIL = TICKS_PER_MM // 20
"""Edges nearer to each other are one line [ticks]."""


@dataclass(frozen=True, slots=True)
class Row:
    """Tiles that begin alike: where they would uncut, and where the first of them does [ticks]."""

    laid: int
    at: int
    tiles: tuple[Tile, ...]


def rows(tiles: Iterable[Tile], axis: int) -> list[Row]:
    """Rows from below, or columns from the left."""
    begins = sorted(((bounds(tile.laid or tile.outline)[axis], index, tile) for index, tile in enumerate(tiles)))
    found: list[list[Tile]] = []
    lows: list[int] = []
    for low, _, tile in begins:
        if not lows or low - lows[-1] > ONE_PENCIL:
            lows.append(low)
            found.append([])
        found[-1].append(tile)
    return [
        Row(low, min(bounds(tile.outline)[axis] for tile in row), tuple(row))
        for low, row in zip(lows, found, strict=True)
    ]

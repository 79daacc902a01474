"""Rows of tiles along one axis of a surface: courses of a wall, rows and columns of a floor."""

from collections.abc import Iterable
from dataclasses import dataclass

from firstcourse.geometry import bounds
from firstcourse.plan import SAME, Tile


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """Tiles whose lower or left edges lie alike.

    Attributes:
        number: Counted from 1, from the lower or left end.
        laid: Their lower or left edge where none of them is cut [ticks].
        at: Where the first of them begins [ticks].
        end: Where the last of them ends [ticks].
    """

    number: int
    laid: int
    at: int
    end: int
    tiles: tuple[Tile, ...]

    def is_cut(self, axis: int) -> bool:
        """Whether every tile of it is cut along an axis."""
        return all(_is_cut(tile, axis) for tile in self.tiles)


def rows_of(tiles: Iterable[Tile], axis: int) -> tuple[Row, ...]:
    """Rows along an axis: 0 for columns from left to right, 1 for courses from below."""
    groups: list[tuple[int, list[Tile]]] = []
    for tile in sorted(tiles, key=lambda tile: bounds(tile.laid or tile.outline)[axis]):
        low = bounds(tile.laid or tile.outline)[axis]
        if groups and low - groups[-1][0] <= SAME:
            groups[-1][1].append(tile)
        else:
            groups.append((low, [tile]))
    return tuple(
        Row(
            number=number,
            laid=low,
            at=min(bounds(tile.outline)[axis] for tile in row),
            end=max(bounds(tile.outline)[axis + 2] for tile in row),
            tiles=tuple(row),
        )
        for number, (low, row) in enumerate(groups, start=1)
    )


def _is_cut(tile: Tile, axis: int) -> bool:
    if tile.whole:
        return False
    laid, left = bounds(tile.laid or tile.outline), bounds(tile.outline)
    return left[axis] > laid[axis] + SAME or left[axis + 2] < laid[axis + 2] - SAME

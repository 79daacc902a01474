"""The lines of the cut lists: which cut tiles are cut to fit where they go, and the marks that name them.

Nobody cuts beforehand what differs by a sixteenth of an inch from its neighbour: straight cuts along one place
are one line, as wide as the wall leaves them. Pieces with a notch, a hole or a cut that slants are lines by their
shape.
"""

import math
from collections.abc import Iterator, Mapping, Sequence

from firstcourse.geometry import Ring, area2, sides
from firstcourse.plan import CutPlaces, Surface, Tile, TileStock, cut_to_fit, size_as_laid
from firstcourse.rules import RuleSet

_LETTERS = "abcdefghijkmnpqrstuvwxyz"
"""Marks of cut tiles; without l and o, which read as figures."""
_ALIKE_TICKS = 1016
"""Cut pieces whose sides differ by less than this are one line of the cut list [ticks]: a sixteenth of an inch."""
_ALIKE_TICKS2 = 640 * 640 * 400


def with_marks(surface: Surface, stock: Mapping[str, TileStock], rules: RuleSet) -> Surface:
    """A tiled surface whose cut tiles are told apart: cut to fit or drawn, each with its mark.

    Args:
        surface: With its tiles and soft joints.
        stock: The tiles of the job, by id.
        rules: For the slant from which a cut is drawn.
    """
    slant = rules.ticks("tiling.cut.taper_drawn")
    places = CutPlaces(surface)
    lines: dict[tuple[object, ...], list[Tile]] = {}
    for tile in surface.tiles:
        if not tile.whole:
            fits = cut_to_fit(tile, slant)
            # Chips of mosaic are cut on their sheets, along whatever they meet.
            place = places.place(tile) if fits and stock[tile.stock].sheet is None else ""
            key = (place,) if fits else _shape(tile.outline)
            lines.setdefault((fits, tile.stock, *key), []).append(tile)
    order = {tile.id: index for index, tile in enumerate(surface.tiles)}
    alike = [
        (bool(fits), part)
        for (fits, *_), tiles in lines.items()
        for part in (_of_a_size(tiles, slant) if fits else (tiles,))
    ]
    alike.sort(key=lambda line: min(order[tile.id] for tile in line[1]))
    told = {
        tile.id: {"fit": fits, "mark": _letters(number)}
        for number, (fits, tiles) in enumerate(alike)
        for tile in tiles
    }
    tiles = (tile if tile.whole else tile.model_copy(update=told[tile.id]) for tile in surface.tiles)
    return surface.model_copy(update={"tiles": tuple(tiles)})


def _of_a_size(tiles: Sequence[Tile], gap: int) -> Iterator[list[Tile]]:
    """Tiles of one place by size: neighbours in size that differ by no more than a gap stay together [ticks]."""
    for some in _runs(tiles, 0, gap):
        yield from _runs(some, 1, gap)


def _runs(tiles: Sequence[Tile], axis: int, gap: int) -> Iterator[list[Tile]]:
    run: list[Tile] = []
    for tile in sorted(tiles, key=lambda one: size_as_laid(one)[axis]):
        if run and size_as_laid(tile)[axis] - size_as_laid(run[-1])[axis] > gap:
            yield run
            run = []
        run.append(tile)
    yield run


def _shape(ring: Ring) -> tuple[int, ...]:
    """Area, and lengths of the sides in sixteenths of an inch or so, the longest first: alike for pieces alike."""
    lengths = (round(math.dist(a, b) / _ALIKE_TICKS) for a, b in sides(ring))
    return abs(area2(ring)) // _ALIKE_TICKS2, *sorted(lengths, reverse=True)


def _letters(number: int) -> str:
    """a, b, ... z, aa, ab, ..."""
    text = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, len(_LETTERS))
        text = _LETTERS[rest] + text
    return text

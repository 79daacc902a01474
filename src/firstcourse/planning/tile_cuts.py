"""Which whole tile each cut piece comes from, and the marks that the cut lists name them by."""

import math
from collections.abc import Mapping, Sequence

from firstcourse.bedding import small_text
from firstcourse.geometry.polygon import Ring, area2, as_ring, clockwise, counter_clockwise
from firstcourse.plan import Tile, TileStock
from firstcourse.rules import RuleSet
from firstcourse.tiling.model import XY, LaidTile
from firstcourse.tiling.sharing import share
from firstcourse.units import Tape, ticks_from_mm, to_mm
from firstcourse.workings import Working

_LETTERS = "abcdefghijkmnpqrstuvwxyz"
"""Marks of cut tiles; without l and o, which read as figures."""
_ALIKE_TICKS = 1016
"""Cut pieces whose sides differ by less than this are one line of the cut list [ticks]: a sixteenth of an inch."""
_ALIKE_TICKS2 = 640 * 640 * 400


def cut_from(
    laid: Mapping[str, Sequence[LaidTile]], stock: Sequence[TileStock], rules: RuleSet, tape: Tape
) -> tuple[dict[str, tuple[Tile, ...]], dict[str, Working]]:
    """Every surface's tiles with the whole tile each cut comes from; all surfaces of the job share tiles.

    Args:
        laid: The tiles of each surface, by its id.
        stock: The tiles of the job.
        rules: For the saw's cut.
        tape: Tape of the job.
    """
    kerf_mm = to_mm(rules.ticks("tiling.kerf"))
    places: dict[tuple[str, int], tuple[str, Ring]] = {}
    workings: dict[str, Working] = {}
    for item in stock:
        cut = [
            (name, index, tile)
            for name, tiles in laid.items()
            for index, tile in enumerate(tiles)
            if tile.tile == item.id and not tile.whole
        ]
        shared = share(
            [tile for _, _, tile in cut],
            (to_mm(item.size[0]), to_mm(item.size[1])),
            kerf=kerf_mm,
            hexagon=item.shape == "hexagon",
            directional=item.directional,
        )
        for (surface_id, index, _), place in zip(cut, shared.places, strict=True):
            places[surface_id, index] = (f"{item.id} {place.source}", counter_clockwise(_ticks(place.outline)))
        workings[f"cut tiles {item.id}"] = Working(
            title=f"Whole tiles of {item.id} that are cut",
            formula="each cut piece from the first tile it fits in, largest first, a saw's cut between pieces",
            values={
                "cut pieces": str(len(cut)),
                "saw's cut": small_text(rules.ticks("tiling.kerf"), tape),
                "fewest that any cutting needs": str(shared.lower_bound),
            },
            result=str(shared.sources),
            unit="tiles",
            source=rules.entry("tiling.kerf").source,
        )
    return {name: _placed(name, tiles, places) for name, tiles in laid.items()}, workings


def _placed(
    surface_id: str, laid: Sequence[LaidTile], places: Mapping[tuple[str, int], tuple[str, Ring]]
) -> tuple[Tile, ...]:
    marks: dict[tuple[object, ...], str] = {}
    tiles = []
    for index, tile in enumerate(laid):
        source, cut = places.get((surface_id, index), ("", ()))
        outline = counter_clockwise(_ticks(list(tile.shape.exterior.coords)[:-1]))
        mark = ""
        if not tile.whole:
            alike = (tile.tile, abs(area2(outline)) // _ALIKE_TICKS2, *_sides(outline))
            mark = marks.setdefault(alike, _letters(len(marks)))
        tiles.append(
            Tile(
                id=f"{surface_id}/tile {index + 1}",
                outline=outline,
                holes=tuple(clockwise(_ticks(list(hole.coords)[:-1])) for hole in tile.shape.interiors),
                whole=tile.whole,
                from_=source,
                stock=tile.tile,
                laid=() if tile.whole else counter_clockwise(_ticks(tile.laid)),
                cut=cut,
                mark=mark,
            )
        )
    return tuple(tiles)


def _sides(ring: Ring) -> tuple[int, ...]:
    """Lengths of an outline's sides in sixteenths of an inch or so, the longest first: alike for pieces alike."""
    lengths = (math.hypot(b[0] - a[0], b[1] - a[1]) for a, b in zip(ring, ring[1:] + ring[:1], strict=True))
    return tuple(sorted((round(length / _ALIKE_TICKS) for length in lengths), reverse=True))


def _letters(number: int) -> str:
    """a, b, ... z, aa, ab, ..."""
    text = ""
    number += 1
    while number:
        number, rest = divmod(number - 1, len(_LETTERS))
        text = _LETTERS[rest] + text
    return text


def _ticks(points: Sequence[XY]) -> Ring:
    return as_ring((ticks_from_mm(x), ticks_from_mm(y)) for x, y in points)

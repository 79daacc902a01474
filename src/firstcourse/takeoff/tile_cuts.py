"""How much is sawn, and what kinds of cuts they are."""

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from firstcourse.geometry import sides
from firstcourse.plan import Point, Ring, Segment, Tile, TileStock
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import Word, length
from firstcourse.workings import Working

STRAIGHT, SLANTED, NOTCH, HOLE = "straight", "slanted", "notch", "hole"
# A sawn edge at less than this slope to the tile's side is straight [run over rise].
_STRAIGHT = 0.002
# A sawn edge lies on the tile's uncut edge within this, as rounding leaves it [ticks].
_ON_EDGE = 4.0
_LEAST_LENGTH = TICKS_PER_MM


def cuts_working(item: TileStock, tiles: Sequence[Tile]) -> Working:
    """Cut tiles of one kind and the length sawn, by kind of cut."""
    lengths, numbers = cuts_by_kind(tiles)
    return Working(
        formula="quantities-cuts",
        at=(f"tile_stock/{item.id}",),
        inputs={
            "tiles": len(tiles),
            "kinds": tuple(Word(word=kind) for kind in lengths),
            "lengths": tuple(map(length, lengths.values())),
            "in": tuple(numbers[kind] for kind in lengths),
        },
        result=length(sum(lengths.values())),
    )


def cuts_by_kind(tiles: Iterable[Tile]) -> tuple[dict[str, int], Counter[str]]:
    """Length sawn by kind of cut [ticks], and in how many tiles it is.

    The kinds are `straight`, `slanted`, `notch` and `hole`, in that order. A notch is cut from an inner
    corner outwards; a hole lies within the tile. Where two pieces of one tile lie side by side, the cut between
    them is counted for both.
    """
    found: Counter[str] = Counter()
    numbers: Counter[str] = Counter()
    for tile in tiles:
        cuts = list(_cuts(tile))
        for kind, sawn in cuts:
            found[kind] += round(sawn)
        numbers.update(sorted({kind for kind, _ in cuts}))
    return {kind: found[kind] for kind in (STRAIGHT, SLANTED, NOTCH, HOLE) if found[kind]}, numbers


def _cuts(tile: Tile) -> Iterator[tuple[str, float]]:
    uncut = list(sides(tile.laid))
    inner = _inner_corners(tile.outline)
    count = len(tile.outline)
    for index, (a, b) in enumerate(sides(tile.outline)):
        along = math.dist(a, b)
        if along < _LEAST_LENGTH or any(_off(a, side) <= _ON_EDGE >= _off(b, side) for side in uncut):
            continue
        if index in inner or (index + 1) % count in inner:
            yield NOTCH, along
        else:
            way = (b[0] - a[0], b[1] - a[1])
            yield STRAIGHT if any(_along(way, (d[0] - c[0], d[1] - c[1])) for c, d in uncut) else SLANTED, along
    for hole in tile.holes:
        yield HOLE, math.fsum(math.dist(a, b) for a, b in sides(hole))


def _off(point: Point, side: Segment) -> float:
    """Distance of a point from the line through a side [ticks]."""
    (au, av), (bu, bv) = side
    cross = (bu - au) * (point[1] - av) - (bv - av) * (point[0] - au)
    return abs(cross) / math.dist(*side)


def _along(one: tuple[int, int], other: tuple[int, int]) -> bool:
    cross = one[0] * other[1] - one[1] * other[0]
    return abs(cross) <= _STRAIGHT * math.hypot(*one) * math.hypot(*other)


def _inner_corners(ring: Ring) -> frozenset[int]:
    """Indices of corners that turn inwards, of a counter-clockwise ring."""
    found = []
    for index, (u, v) in enumerate(ring):
        (au, av), (bu, bv) = ring[index - 1], ring[(index + 1) % len(ring)]
        cross = (u - au) * (bv - v) - (v - av) * (bu - u)
        if cross < -_STRAIGHT * math.hypot(u - au, v - av) * math.hypot(bu - u, bv - v):
            found.append(index)
    return frozenset(found)

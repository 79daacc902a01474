"""How much is sawn of each tile, and what kinds of cuts they are, from the outlines of the cut tiles."""

import math
from collections import Counter
from collections.abc import Iterator

from firstcourse.geometry import Point, Ring
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.formulas.proving import Prove, key_of
from firstcourse.verify.formulas.wanted import Wanted, length, once, word
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document, Tile
from firstcourse.verify.verdict import Objection

_FORMULA = "quantities-cuts"
_KINDS = ("straight", "slanted", "notch", "hole")
_TRUE = 0.002
"""Sine of the angle within which an edge runs along a side, and a corner does not turn."""
_UNCUT = 4.0
"""Rounding may move an uncut edge this far off its side [ticks]."""
_SHORTEST = TICKS_PER_MM
Edge = tuple[Point, Point]


@once
def _cut(plan: Document) -> dict[str, list[Tile]]:
    """Cut tiles still to be set, by stock."""
    found: dict[str, list[Tile]] = {}
    for surface in plan.surfaces:
        for tile in surface.tiles:
            if not tile.whole and not tile.fixed and tile.stock in plan.tile_stock:
                found.setdefault(tile.stock, []).append(tile)
    return found


def expected(plan: Document) -> Iterator[str]:
    """One for each tile that is cut."""
    yield from (key_of(_FORMULA, f"tile_stock/{stock}") for stock in _cut(plan))


def _cuts(plan: Document, working: Working) -> Iterator[Objection]:
    tiles = _cut(plan)[working.at[0].partition("/")[2]]
    sawn: Counter[str] = Counter()
    number: Counter[str] = Counter()
    for tile in tiles:
        rows = [(kind, round(along)) for kind, along in _sawn(tile)]
        for kind, along in rows:
            sawn[kind] += along
        number.update({kind for kind, _ in rows})
    kinds = [kind for kind in _KINDS if sawn[kind]]
    yield from Wanted(
        formula=_FORMULA,
        at=working.at,
        inputs={
            "tiles": len(tiles),
            "kinds": [word(kind) for kind in kinds],
            "lengths": [length(sawn[kind]) for kind in kinds],
            "in": [number[kind] for kind in kinds],
        },
        result=length(sawn.total()),
    ).objections(working)


def _sawn(tile: Tile) -> Iterator[tuple[str, float]]:
    """Sawn edges with their kinds; what ends in a corner that turns inwards is of a notch."""
    factory = list(_edges(tile.laid))
    edges = list(_edges(tile.outline))
    turns = [_sine(before, after) < -_TRUE for before, after in zip(edges, edges[1:] + edges[:1], strict=True)]
    for number, edge in enumerate(edges):
        along = math.dist(*edge)
        if along < _SHORTEST or any(_on(edge, side) for side in factory):
            continue
        if turns[number] or turns[number - 1]:
            yield "notch", along
        else:
            yield "straight" if any(abs(_sine(edge, side)) <= _TRUE for side in factory) else "slanted", along
    for hole in tile.holes:
        yield "hole", math.fsum(math.dist(*edge) for edge in _edges(hole))


def _edges(ring: Ring) -> Iterator[Edge]:
    yield from zip(ring, (*ring[1:], *ring[:1]), strict=True)


def _sine(one: Edge, other: Edge) -> float:
    """Sine of the angle from one edge's way to another's."""
    (au, av), (bu, bv) = one
    (cu, cv), (du, dv) = other
    return ((bu - au) * (dv - cv) - (bv - av) * (du - cu)) / (math.dist(*one) * math.dist(*other))


def _on(edge: Edge, side: Edge) -> bool:
    """Whether both ends lie on the line through a side."""
    (au, av), (bu, bv) = side
    return all(abs((bu - au) * (v - av) - (bv - av) * (u - au)) <= _UNCUT * math.dist(*side) for u, v in edge)


FORMULAS: dict[str, Prove] = {_FORMULA: _cuts}

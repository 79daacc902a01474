"""The lines of the cut lists: to fit where only straight cuts are, drawn elsewhere, and alike under one mark."""

import math
from collections.abc import Iterator

from shapely import LineString, Polygon

from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM
from firstcourse.verify.structure import Document, Tile
from firstcourse.verify.verdict import Objection

_ALIKE = TICKS_PER_INCH // 16
"""Pieces drawn as one differ by no more than this [ticks]."""
_ROUNDING = 4.0
_HALF = complex(1, 1) / abs(complex(1, 1))
"""Turns by 45 degrees."""
_NOISE = TICKS_PER_MM**2


def check_cut_lines(plan: Document) -> Iterator[Objection]:
    """Object to cut tiles that are listed as what they are not, and to unlike ones under one mark."""
    for surface in plan.surfaces:
        marked: dict[str, Tile] = {}
        for tile in surface.tiles:
            if tile.whole:
                if tile.fit or tile.mark:
                    yield Objection("VER-714", tile.id, "is whole and yet listed among the cuts")
                continue
            if not tile.mark:
                yield Objection("VER-714", tile.id, "is cut and has no mark on the cut list")
                continue
            aslant = _aslant(tile)
            limit = plan.rules.ticks("tiling.cut.taper_drawn")
            if tile.laid and abs(aslant - limit) > _ROUNDING and tile.fit != (aslant <= limit):
                how = "to fit" if tile.fit else "as drawn"
                yield Objection("VER-714", tile.id, f"is listed as cut {how}, which it is not")
            first = marked.setdefault(tile.mark, tile)
            if first.fit != tile.fit or first.stock != tile.stock:
                yield Objection("VER-714", tile.id, f"bears the mark of {first.id}, which is cut otherwise")
            elif not tile.fit and not _alike(first, tile):
                yield Objection("VER-714", tile.id, f"bears the mark of {first.id}, which has another shape")


def _aslant(tile: Tile) -> float:
    """How far the worst cut leaves the tile's directions over its length; infinite at a notch or hole [ticks]."""
    hull = LineString([*tile.outline, tile.outline[0]]).convex_hull
    if tile.holes or hull.area - Polygon(tile.outline).area > _NOISE:
        return math.inf
    own = [complex(bx - ax, by - ay) for (ax, ay), (bx, by) in _sides(tile.laid)]
    border = LineString([*tile.laid, tile.laid[0]]) if tile.laid else None
    worst = 0.0
    for (ax, ay), (bx, by) in _sides(tile.outline):
        edge = complex(bx - ax, by - ay)
        middle = LineString([(ax, ay), (bx, by)]).centroid
        if border is None or border.distance(middle) <= _ROUNDING or not edge:
            continue
        # The quotient's smaller part is how far it turns from a side or from what is square to it; turned by half
        # a right angle, how far from a cut at 45 degrees.
        ways = [_unit(edge / side) * half for side in own for half in (1, _HALF)]
        turns = [abs(edge) * min(abs(way.real), abs(way.imag)) for way in ways]
        worst = max(worst, min(turns))
    return worst


def _alike(one: Tile, other: Tile) -> bool:
    """Whether the sides of two pieces, the longest first, are as long but for what nobody sets a saw to."""
    lengths = [sorted(math.dist(a, b) for a, b in _sides(tile.outline)) for tile in (one, other)]
    return len(lengths[0]) == len(lengths[1]) and all(
        abs(a - b) <= _ALIKE + _ROUNDING for a, b in zip(*lengths, strict=True)
    )


def _unit(way: complex) -> complex:
    return way / abs(way)


def _sides(ring: tuple[tuple[int, int], ...]) -> list[tuple[tuple[int, int], tuple[int, int]]]:
    return list(zip(ring, ring[1:] + ring[:1], strict=True))

"""Which cut tiles come from one whole tile, and where each lies in it.

Every edge that is uncut where a piece lies stays an uncut edge of the tile it comes from, so that no sawn edge
faces a neighbour. Pieces of one tile are parted by straight saw cuts from edge to edge. Works in mm.
"""

import math
from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, product
from typing import Any

import numpy as np
import shapely
from shapely import Polygon

from firstcourse.errors import InputValueError
from firstcourse.tiles.model import XY, LaidTile
from firstcourse.tiles.shared_cuts import CutPlace, Sharing

# Rounding of laid outlines; far below what a saw can do [mm].
_NOISE = 0.004
# An edge must lie along the tile's edge for this long to count as a factory edge [mm].
_LEAST_EDGE = 0.5
Box = tuple[float, float, float, float]
Motion = tuple[float, float, float, float]
"""Cosine and sine of a turn, and the shift after it."""


def share(
    tiles: Sequence[LaidTile], size: XY, *, kerf: float, hexagon: bool = False, directional: bool = False
) -> Sharing:
    """Find for every cut tile a whole tile to cut it from.

    The largest pieces come first; each goes to the first tile it fits in, parts of one tile at an opening to the
    same tile where they can.

    Args:
        tiles: The cut tiles of one kind, wherever they lie.
        size: Width and height of the tile; of a hexagon across flats and across corners [mm].
        kerf: Width that the saw takes between two pieces [mm].
        hexagon: The tile is a regular hexagon, across flats level.
        directional: The tile has a grain, so that pieces may not be turned.

    Raises:
        InputValueError: A tile's outline uncut is not that of this tile.
    """
    blank = _Blank(size, kerf, hexagon, directional)
    pieces = [_piece(tile, blank) for tile in tiles]
    saw = _Saw(blank, len(pieces))
    home_of: dict[tuple[XY, ...], int] = {}
    places: dict[int, CutPlace] = {}
    for index in sorted(range(len(pieces)), key=lambda index: (-pieces[index].area, index)):
        piece = pieces[index]
        number, placed = saw.cut(piece, home_of.get(piece.laid))
        home_of.setdefault(piece.laid, number)
        places[index] = CutPlace(
            source=number + 1, outline=_moved(piece.ring, placed.motion), turned=placed.turned
        )
    return Sharing(
        places=tuple(places[index] for index in range(len(pieces))),
        sources=saw.sources,
        lower_bound=fewest([piece.with_kerf / blank.with_kerf for piece in pieces]),
    )


def fewest(shares: Sequence[float]) -> int:
    """Fewest whole tiles that pieces with these shares of a tile's area can come from.

    References:
        Martello and Toth, lower bound L2 for bin packing (1990), on areas: it holds for any way of cutting.

    Example:
        >>> fewest([0.6, 0.6, 0.3]), fewest([0.5, 0.5, 0.2]), fewest([])
        (2, 2, 0)
    """
    ranked = sorted(shares)
    sums = [0.0]
    for value in ranked:
        sums.append(sums[-1] + value)
    total = len(ranked)
    half = bisect_left(ranked, 0.5 + 1e-9)
    best = math.ceil(sums[-1] - 1e-9)
    for least in {0.0, *(value for value in ranked if value <= 0.5)}:
        # Pieces over 1 - least share a tile with nothing counted here; those over a half never with each other.
        alone = bisect_left(ranked, 1 - least + 1e-9)
        start = bisect_left(ranked, least)
        filled = sums[half] - sums[start] - ((alone - half) - (sums[alone] - sums[half]))
        best = max(best, total - half + max(0, math.ceil(filled - 1e-9)))
    return best


@dataclass(frozen=True, slots=True)
class _Piece:
    """A cut tile in the axes of its own tile, as it is laid.

    Pieces a kerf apart do not overlap when each is grown by half of it, which is what `with_kerf` measures.
    """

    laid: tuple[XY, ...]
    ring: tuple[XY, ...]
    hull: tuple[XY, ...]
    area: float
    with_kerf: float
    factory: tuple[bool, bool, bool, bool]


@dataclass(frozen=True, slots=True)
class _Placed:
    """A piece somewhere in a tile: how it is moved there from where it is laid, and its hull there."""

    piece: _Piece
    motion: Motion
    hull: tuple[XY, ...]
    bounds: Box
    turned: int

    def shifted(self, x: float, y: float) -> "_Placed":
        """The same, moved on."""
        cos, sin, dx, dy = self.motion
        left, lower, right, upper = self.bounds
        return _Placed(
            self.piece,
            (cos, sin, dx + x, dy + y),
            tuple((u + x, v + y) for u, v in self.hull),
            (left + x, lower + y, right + x, upper + y),
            self.turned,
        )


class _Saw:
    """Whole tiles, and what has been cut from each so far."""

    def __init__(self, blank: "_Blank", most: int) -> None:
        self.blank, self.sources = blank, 0
        self._left = np.zeros(most)
        self._bounds = np.zeros((most, 4))
        self._hulls = np.empty(most, dtype=object)
        self._of = np.zeros(most, dtype=np.int64)
        self._placed: list[list[_Placed]] = []
        self._count = 0

    def cut(self, piece: _Piece, sibling: int | None) -> tuple[int, _Placed]:
        """Cut a piece from the sibling's tile if it fits there, else from the first tile that it fits in."""
        found = None if sibling is None else self._from(piece, sibling)
        if found is None:
            found = self._first(piece)
        if found is None:
            self._left[self.sources] = self.blank.area
            self._placed.append([])
            self.sources += 1
            found = self.sources - 1, next(self.blank.places(piece))
        number, placed = found
        self._placed[number].append(placed)
        self._left[number] -= piece.area
        self._bounds[self._count], self._hulls[self._count] = placed.bounds, Polygon(placed.hull)
        self._of[self._count] = number
        self._count += 1
        return number, placed

    def _first(self, piece: _Piece) -> tuple[int, _Placed] | None:
        room = self._left[: self.sources] >= piece.area - _NOISE
        if not room.any():
            return None
        of = self._of[: self._count]
        near = np.flatnonzero(room[of])
        best: tuple[int, _Placed] | None = None
        for placed in self.blank.places(piece):
            free = room.copy()
            free[of[near[self._touched(placed, near)]]] = False
            if best is not None:
                free[best[0] :] = False
            for number in np.flatnonzero(free).tolist():
                if self.blank.parts(placed, self._placed[number]):
                    best = number, placed
                    break
        if best is None and self.blank.slides(piece):
            found = (self._from(piece, number) for number in np.flatnonzero(room).tolist())
            best = next((place for place in found if place is not None), None)
        return best

    def _touched(self, placed: _Placed, near: "np.ndarray[Any, Any]") -> "np.ndarray[Any, Any]":
        """Which of the pieces lie nearer than a kerf to a place."""
        left, lower, right, upper = placed.bounds
        bounds, kerf = self._bounds[near], self.blank.kerf - _NOISE
        close = (bounds[:, 0] - right < kerf) & (left - bounds[:, 2] < kerf)
        close &= (bounds[:, 1] - upper < kerf) & (lower - bounds[:, 3] < kerf)
        at = np.flatnonzero(close)
        if at.size:
            close[at] = shapely.distance(self._hulls[near[at]], Polygon(placed.hull)) < kerf
        touched: np.ndarray[Any, Any] = close
        return touched

    def _from(self, piece: _Piece, number: int) -> tuple[int, _Placed] | None:
        others = self._placed[number]
        for placed in self.blank.places(piece, others):
            if self.blank.apart(placed, others) and self.blank.parts(placed, others):
                return number, placed
        return None


class _Blank:
    """The whole tile that pieces are cut from, and how they may lie in it."""

    def __init__(self, size: XY, kerf: float, hexagon: bool, directional: bool) -> None:
        self.width, self.height = size
        self.kerf, self.hexagon = kerf, hexagon
        turns = range(0, 360, 60) if hexagon else range(0, 360, 90)
        self.turns = (0,) if directional else tuple(turns)
        w, h = size
        self.ring: tuple[XY, ...] = (
            ((w / 2, 0), (w, h / 4), (w, h * 3 / 4), (w / 2, h), (0, h * 3 / 4), (0, h / 4))
            if hexagon
            else ((0, 0), (w, 0), (w, h), (0, h))
        )
        self.area = float(Polygon(self.ring).area)
        self.with_kerf = _grown(Polygon(self.ring), kerf)
        self.reach = Polygon(self.ring).buffer(_NOISE, join_style="mitre")

    def home(self, laid: Sequence[XY]) -> Motion:
        """The motion that carries a tile as laid onto the blank.

        Raises:
            InputValueError: The outline is not that of this tile.
        """
        length = math.dist(laid[0], laid[1])
        for first, corner in enumerate(self.ring):
            after = self.ring[(first + 1) % len(self.ring)]
            if len(laid) == len(self.ring) and abs(math.dist(corner, after) - length) <= 10 * _NOISE:
                break
        else:
            raise InputValueError(f"an outline with a side of {length:.2f} mm is not that of this tile")
        turn = math.atan2(after[1] - corner[1], after[0] - corner[0]) - math.atan2(
            laid[1][1] - laid[0][1], laid[1][0] - laid[0][0]
        )
        return _turned(turn, laid[0], corner)

    def places(self, piece: _Piece, others: Sequence[_Placed] = ()) -> Iterator[_Placed]:
        """Every place in a tile that a piece may be cut from, be it alone; with others, also close to them."""
        for turn in self.turns:
            yield from self._hexagonal(piece, turn) if self.hexagon else self._square(piece, turn, others)

    def slides(self, piece: _Piece) -> bool:
        """Whether a piece keeps no factory edge across one of its ways, so that it may lie close to others."""
        left, lower, right, upper = piece.factory
        return not self.hexagon and not ((left or right) and (lower or upper))

    def apart(self, placed: _Placed, others: Sequence[_Placed]) -> bool:
        """Whether a piece lies a kerf off all others."""
        hull, kerf = Polygon(placed.hull), self.kerf - _NOISE
        return all(hull.distance(Polygon(other.hull)) >= kerf for other in others)

    def parts(self, placed: _Placed, others: Sequence[_Placed]) -> bool:
        """Whether straight cuts from edge to edge part all pieces; two that lie apart can always be parted."""
        if len(others) < 2:
            return True
        return _separable([placed.hull, *(other.hull for other in others)], self.kerf - _NOISE)

    def _hexagonal(self, piece: _Piece, turn: int) -> Iterator[_Placed]:
        centre = (self.width / 2, self.height / 2)
        placed = _placed(piece, _turned(math.radians(turn), centre, centre), turn)
        if self.reach.covers(Polygon(placed.hull)):
            yield placed

    def _square(self, piece: _Piece, turn: int, placed: Sequence[_Placed]) -> Iterator[_Placed]:
        """Places that keep factory edges on the tile's edges; across its other sides a piece may slide."""
        start = _placed(piece, _turned(math.radians(turn), (0.0, 0.0), (0.0, 0.0)), turn)
        left, lower, right, upper = start.bounds
        across, up = right - left, upper - lower
        if across > self.width + 2 * _NOISE or up > self.height + 2 * _NOISE:
            return
        # Turning by a quarter to the left carries left to lower, lower to right, right to upper, upper to left.
        quarter = turn // 90
        kept = [piece.factory[(index - quarter) % 4] for index in range(4)]
        others = [other.bounds for other in placed]
        spans = [(b[0], b[2]) for b in others], [(b[1], b[3]) for b in others]
        for x, y in product(
            self._offsets(across, self.width, kept[0], kept[2], spans[0]),
            self._offsets(up, self.height, kept[1], kept[3], spans[1]),
        ):
            yield start.shifted(x - left, y - lower)

    def _offsets(
        self, extent: float, whole: float, near: bool, far: bool, others: Sequence[tuple[float, float]]
    ) -> list[float]:
        """Where the near side of a piece may lie along one axis of the tile."""
        if extent > whole:
            # By no more than rounding, which both ends share.
            return [(whole - extent) / 2]
        if near:
            # With both edges of the factory the piece is as wide as the tile.
            return [0.0] if not far or extent >= whole - 4 * _NOISE else []
        if far:
            return [whole - extent]
        found = [0.0, whole - extent]
        found += [high + self.kerf for _, high in others] + [low - self.kerf - extent for low, _ in others]
        return [at for at in found if -_NOISE <= at <= whole - extent + _NOISE]


def _piece(tile: LaidTile, blank: _Blank) -> _Piece:
    ring = _moved(tile.shape.exterior.coords[:-1], blank.home(tile.laid))
    shape = Polygon(ring)
    hull = shape.convex_hull
    return _Piece(
        tile.laid,
        ring,
        tuple((x, y) for x, y in hull.exterior.coords[:-1]),
        float(hull.area),
        _grown(shape, blank.kerf),
        _factory(ring, blank.width, blank.height),
    )


def _grown(shape: Polygon, kerf: float) -> float:
    """Area of a shape grown by half a kerf on all sides, corners rounded, never overstated."""
    hull = shape.convex_hull
    if hull.area - shape.area > _NOISE:
        return float(shape.area)
    return float(shape.area + shape.length * kerf / 2 + math.pi * kerf**2 / 4)


def _factory(ring: tuple[XY, ...], width: float, height: float) -> tuple[bool, bool, bool, bool]:
    """Which edges of the tile the piece keeps where it is laid: left, lower, right, upper."""
    kept = [0.0, 0.0, 0.0, 0.0]
    for (x0, y0), (x1, y1) in pairwise((*ring, ring[0])):
        if abs(x0 - x1) <= _NOISE:
            kept[0] += abs(y1 - y0) * (abs(x0) <= 2 * _NOISE)
            kept[2] += abs(y1 - y0) * (abs(x0 - width) <= 2 * _NOISE)
        elif abs(y0 - y1) <= _NOISE:
            kept[1] += abs(x1 - x0) * (abs(y0) <= 2 * _NOISE)
            kept[3] += abs(x1 - x0) * (abs(y0 - height) <= 2 * _NOISE)
    left, lower, right, upper = (length >= _LEAST_EDGE for length in kept)
    return left, lower, right, upper


def _turned(angle: float, about: XY, then: XY) -> Motion:
    """Turn by an angle [radians] about a point, which goes to another."""
    cos, sin = _exact(math.cos(angle)), _exact(math.sin(angle))
    x, y = about
    return cos, sin, then[0] - cos * x + sin * y, then[1] - sin * x - cos * y


def _moved(ring: Sequence[XY], motion: Motion) -> tuple[XY, ...]:
    cos, sin, dx, dy = motion
    return tuple((cos * x - sin * y + dx, sin * x + cos * y + dy) for x, y in ring)


def _exact(value: float) -> float:
    """A sine or cosine of a quarter turn without floating point's dust."""
    whole = round(value)
    return float(whole) if abs(value - whole) < 1e-12 else value


def _placed(piece: _Piece, motion: Motion, turn: int) -> _Placed:
    hull = _moved(piece.hull, motion)
    xs, ys = [x for x, _ in hull], [y for _, y in hull]
    return _Placed(piece, motion, hull, (min(xs), min(ys), max(xs), max(ys)), turn)


def _separable(hulls: Sequence[tuple[XY, ...]], kerf: float) -> bool:
    if len(hulls) < 2:
        return True
    for ring in hulls:
        for a, b in pairwise((*ring, ring[0])):
            length = math.dist(a, b)
            if length <= _NOISE:
                continue
            normal = (-(b[1] - a[1]) / length, (b[0] - a[0]) / length)
            spans = sorted(
                (min(offsets), max(offsets), index)
                for index, other in enumerate(hulls)
                for offsets in [[normal[0] * x + normal[1] * y for x, y in other]]
            )
            reached = spans[0][1]
            for count, (low, high, _) in enumerate(spans[1:], 1):
                if low - reached >= kerf:
                    near = [hulls[index] for _, _, index in spans[:count]]
                    far = [hulls[index] for _, _, index in spans[count:]]
                    if _separable(near, kerf) and _separable(far, kerf):
                        return True
                reached = max(reached, high)
    return False

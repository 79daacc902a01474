"""The hand that a start is searched in: of a room and its mirror images always the same one.

A room and its mirror image are one room to a setter. Searched each as it stands, they would part wherever two
starts are as good as each other but for rounding, or where a grid of starts begins at one corner and not at the
other. So the room is first seen in that mirror in which its corners, listed, come first; the repeat is seen in it
too, and told in the one way that does not depend on how its pattern was built. Lengths are millimetres.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import product
from typing import Any

import numpy as np
import shapely

from firstcourse.tiles.lay import Array, origins
from firstcourse.tiles.model import XY, CellPiece, Edge, RepeatCell, TileArea
from firstcourse.units import TICKS_PER_MM

_PLACES = 7
"""Decimals that coordinates are compared by: a tick has seven [mm]."""
_CLOSE = 1e-6
_MOST_DOUBLED = 8
"""So often the reach is doubled in which a pattern is looked for at a given height."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hand:
    """A repeat and an area as they are searched, the area's lower left corner at (0, 0).

    Attributes:
        cell: The repeat.
        field: The area with its edges.
        level: Height of a course that the start must keep [mm].
        flip: For each axis -1 where it is mirrored, else 1.
        corner: Where (0, 0) lies in the room, seen in the mirror [mm].
        origin: Where the searched repeat's origin lies in the given one, seen in the mirror [mm].
    """

    cell: RepeatCell
    field: TileArea
    level: float | None
    flip: tuple[int, int]
    corner: XY
    origin: XY

    def in_room(self, shift: XY) -> XY:
        """Where the given repeat's origin lies when the searched one's is shifted [mm]."""
        return _xy((np.array(shift) + self.corner - self.origin) * self.flip)


def at_corner(cell: RepeatCell, field: TileArea, shift: XY, level: float | None = None) -> XY:
    """Of all shifts that make one pattern, the one at the area's lower left [mm].

    It is a whole tick where the pattern's steps are. Others keep what they are: rounded, a corner that the search
    has brought just to an edge would lie beyond it.

    Args:
        cell: The repeat.
        field: The area with its edges.
        shift: One of them [mm].
        level: The height that it is to have, where that is given [mm].
    """
    reach = math.hypot(*cell.step_a) + math.hypot(*cell.step_b)
    left, lower, _, _ = field.area.bounds
    upper = lower + reach
    if level is not None:
        lower = upper = level
    places = np.empty((0, 2))
    # Columns that are shifted against each other come back to a height only after some of them.
    for _ in range(_MOST_DOUBLED):
        box = (left - _CLOSE, lower - _CLOSE, left + reach, upper + _CLOSE)
        places = origins(cell, ((0.0, 0.0),), shift, box)
        if len(places):
            break
        reach *= 2
    else:
        return shift
    first = places[np.lexsort((places[:, 0], np.round(places[:, 1], 6)))[0]]
    ticks = np.round(first * TICKS_PER_MM) / TICKS_PER_MM
    return _xy(np.where(np.abs(first - ticks) < _CLOSE, ticks, first) + 0.0)


def one_hand(cell: RepeatCell, field: TileArea, level: float | None = None) -> Hand:
    """The room and its repeat in the mirror that is the same for all of their mirror images.

    Args:
        cell: The repeat.
        field: The area with its edges; not empty.
        level: Height of a course that the start must keep; then up stays up [mm].
    """
    flips = product((1, -1), (1,) if level is not None else (1, -1))
    _, hand = min((_seen(cell, field, level, flip) for flip in flips), key=lambda found: found[0])
    return hand


def _seen(cell: RepeatCell, field: TileArea, level: float | None, flip: tuple[int, int]) -> tuple[Any, Hand]:
    """What a mirror shows, and how that is listed."""
    mirrored, corner, listed = _mirrored_field(field, flip)
    settled, origin = _settled(cell, flip)
    pieces = [(piece.tile, piece.ring) for piece in settled.pieces]
    hand = Hand(
        cell=settled,
        field=mirrored,
        level=None if level is None else level + origin[1] - corner[1],
        flip=flip,
        corner=corner,
        origin=origin,
    )
    return (listed, settled.step_a, settled.step_b, pieces), hand


def _mirrored_field(field: TileArea, flip: tuple[int, int]) -> tuple[TileArea, XY, Any]:
    left, lower, right, upper = field.area.bounds
    corner = (left if flip[0] > 0 else -right, lower if flip[1] > 0 else -upper)

    def seen(points: Any) -> Array:
        return np.asarray(np.round(np.asarray(points) * flip - corner, _PLACES) + 0.0)

    area: Any = shapely.normalize(shapely.transform(field.area, seen))
    edges = []
    for edge in field.edges:
        a, b = (_xy(point) for point in seen((edge.a, edge.b)))
        # The area stays to the left of the way from one end to the other.
        ends = (a, b) if flip[0] == flip[1] else (b, a)
        edges.append(Edge(a=ends[0], b=ends[1], weight=edge.weight, side=edge.side, free=edge.free))
    edges.sort(key=lambda edge: (edge.a, edge.b, edge.weight, edge.free))
    wanted = sorted((axis, _xy(seen((place, place)))[0 if axis == "v" else 1]) for axis, place in field.wanted)
    listed = (
        shapely.get_coordinates(area).tolist(),
        [(edge.a, edge.b, edge.weight, edge.free) for edge in edges],
        wanted,
    )
    mirrored = TileArea(area=area, edges=tuple(edges), wanted=tuple(wanted), uncertainty=field.uncertainty)
    return mirrored, corner, listed


def _settled(cell: RepeatCell, flip: tuple[int, int]) -> tuple[RepeatCell, XY]:
    """The repeat in a mirror, told by its tiles alone, and where its origin then lies.

    Its steps are the shortest that carry it over the plane; it begins with the piece from which all pieces, listed
    by how far on they lie, come first.
    """
    basis = _shortest_steps(np.array((cell.step_a, cell.step_b)) * flip)
    turn = np.linalg.inv(basis)
    shapes, starts = [], []
    for piece in cell.pieces:
        ring = [_xy(point) for point in np.array(piece.ring) * flip][:: 1 if flip[0] == flip[1] else -1]
        first = min(range(len(ring)), key=lambda index: (round(ring[index][1], 6), round(ring[index][0], 6)))
        start = ring[first]
        outline = [(_even(x - start[0]), _even(y - start[1])) for x, y in ring[first:] + ring[:first]]
        shapes.append((piece.tile, outline))
        starts.append(start)

    def listed(origin: XY) -> list[tuple[str, list[XY], XY]]:
        parts = np.round((np.array(starts) - origin) @ turn, 9) % 1.0 + 0.0
        return sorted((*shape, _xy(part)) for shape, part in zip(shapes, parts, strict=True))

    pieces, origin = min((listed(start), start) for start in starts)
    return (
        RepeatCell(
            step_a=_xy(basis[0]),
            step_b=_xy(basis[1]),
            pieces=tuple(
                CellPiece(
                    tile=tile, ring=tuple(_xy(np.array(point) + np.array(part) @ basis) for point in outline)
                )
                for tile, outline, part in pieces
            ),
            joint=cell.joint,
        ),
        origin,
    )


def _shortest_steps(steps: Array) -> Array:
    """The two shortest steps of a pattern that do not run one way, whichever steps it is given by."""
    short, long = steps
    # Gauss's reduction of a lattice in the plane: each step in turn made as short as the other makes it.
    while True:
        if short @ short > long @ long:
            short, long = long, short
        times = round(float(short @ long / (short @ short)))
        if times == 0 or (long - times * short) @ (long - times * short) >= long @ long - _CLOSE:
            break
        long = long - times * short
    near = [i * short + j * long for i, j in product((-1, 0, 1), repeat=2)]
    upward = [move for move in near if move[1] > _CLOSE or (abs(move[1]) <= _CLOSE and move[0] > _CLOSE)]
    upward.sort(key=lambda move: (round(math.hypot(*move), 6), round(math.atan2(max(move[1], 0.0), move[0]), 6)))
    first = upward[0]
    second = next(move for move in upward if abs(first[0] * move[1] - first[1] * move[0]) > _CLOSE)
    return np.array([[_even(x), _even(y)] for x, y in (first, second)])


def _even(value: float) -> float:
    return round(value, 9) + 0.0


def _xy(point: Iterable[float]) -> XY:
    x, y = point
    return float(x), float(y)

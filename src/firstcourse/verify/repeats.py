"""What repeats in a tiled area, by its steps and its tile, and how it lies from a start. Lengths are ticks."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from shapely import LineString, Polygon

from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.structure import Surface, TiledArea, TileStock

_OF_ONE = ("stacked", "running", "diagonal", "hexagon")
"""Patterns of one tile, whose repeat is that tile with its joints."""
_FINEST_SHARE = 1 / 24
"""Rows that lie closer across an axis than this share of a tile cannot be told apart."""
EXACT = 0.05
"""Widths that are computed apart from each other in floating point agree to this [ticks]."""
_MOVED = 3.0
"""The same where the start, or the ground that tile is laid on, is rounded to ticks afterwards [ticks]."""
_WHOLE = 1e-3
_LEVEL_SHARE = 0.25
"""An edge out of level or plumb by less than this share of a tile is taken for level or upright."""
_SQUARE = 0.9
_CUT = 0.005 * TICKS_PER_MM
_SPECK = 1.0 * TICKS_PER_MM**2
_BEND = 0.002 * TICKS_PER_MM

type Ring = tuple[tuple[float, float], ...]


@dataclass(frozen=True)
class Laid:
    """A tile, or what is left of it, as a start lays it."""

    laid: Ring
    shape: Polygon
    whole: bool

    @cached_property
    def outline(self) -> Ring:
        """Its border."""
        return tuple((u, v) for u, v, *_ in self.shape.exterior.coords[:-1])

    @property
    def holes(self) -> tuple[Ring, ...]:
        """What is left out of it."""
        return tuple(tuple((u, v) for u, v, *_ in ring.coords[:-1]) for ring in self.shape.interiors)


@dataclass(frozen=True, slots=True)
class Repeat:
    """The steps of a pattern of one tile, that tile's outline from the pattern's origin, and its joint."""

    steps: tuple[tuple[float, float], tuple[float, float]]
    ring: Ring
    joint: float

    def extent(self, axis: int) -> float:
        """Width of the tile along an axis."""
        along = [point[axis] for point in self.ring]
        return max(along) - min(along)

    @property
    def widest(self) -> float:
        """The wider of its extents."""
        return max(self.extent(0), self.extent(1))

    def spacing(self, axis: int) -> float | None:
        """Distance of its rows across an axis; None where they lie too close to be told apart."""
        small, large = sorted(abs(step[axis]) for step in self.steps)
        while small > 1e-3 * TICKS_PER_MM:
            small, large = abs(large - round(large / small) * small), small
        return large if large > self.extent(axis) * _FINEST_SHARE else None

    @property
    def rows(self) -> tuple[float, float] | None:
        """Its spacing both ways; None where it has none one way."""
        along, up = self.spacing(0), self.spacing(1)
        return None if along is None or up is None else (along, up)

    def level_to(self, edge: LineString) -> int | None:
        """The axis that an edge lies square to, but for a taper small beside a tile; None where it lies askew."""
        if self.rows is None:
            return None
        (a, b), (c, d) = edge.coords
        for axis, (rise, run) in enumerate(((abs(c - a), abs(d - b)), (abs(d - b), abs(c - a)))):
            if run > _SQUARE * edge.length and rise <= _LEVEL_SHARE * self.extent(axis):
                return axis
        return None

    def origins(self, box: tuple[float, ...], start: tuple[float, float]) -> np.ndarray:
        """Where the tile lies so that it reaches into a box, shape (tiles, 2)."""
        steps, outline = np.array(self.steps), np.array(self.ring)
        low = np.array(box[:2]) - outline.max(axis=0) - start
        high = np.array(box[2:]) - outline.min(axis=0) - start
        ends = np.array([(u, v) for u in (low[0], high[0]) for v in (low[1], high[1])]) @ np.linalg.inv(steps)
        first, last = np.floor(ends.min(axis=0)), np.ceil(ends.max(axis=0))
        number = [np.arange(a, b + 1) for a, b in zip(first, last, strict=True)]
        moves = np.stack(np.meshgrid(*number, indexing="ij"), axis=-1).reshape(-1, 2) @ steps
        within = ((moves > low) & (moves < high)).all(axis=1)
        return np.asarray(moves[within] + start)

    def lay(self, ground: shapely.Geometry, start: tuple[float, float]) -> Iterator[Laid]:
        """Every tile of the pattern on a ground, and what is left of those that are cut."""
        ring = np.array(self.ring)
        rings = self.origins(ground.bounds, start)[:, None, :] + ring[None]
        tiles = shapely.polygons(rings)
        least = min(math.dist(a, b) for a, b in zip(self.ring, (*self.ring[1:], self.ring[0]), strict=True))
        shapely.prepare(ground)
        wider = ground.buffer(_CUT, join_style="mitre")
        for outline, tile in zip(rings.tolist(), tiles.tolist(), strict=True):
            laid = tuple((u, v) for u, v in outline)
            if ground.covers(tile):
                yield Laid(laid, tile, True)
            elif ground.intersects(tile):
                kept = tile.intersection(ground)
                if tile.area - kept.area < _CUT * least and wider.covers(tile):
                    yield Laid(laid, tile, True)
                    continue
                for part in shapely.get_parts(kept):
                    shape = part.simplify(_BEND)
                    if isinstance(shape, Polygon) and shape.area >= _SPECK:
                        yield Laid(laid, shapely.orient_polygons(shape), False)


def repeat_of(area: TiledArea, stock: Mapping[str, TileStock]) -> Repeat | None:
    """The repeat of an area; None of a pattern of several tiles, or where its tile is not known.

    Args:
        area: With its pattern, steps and angle.
        stock: The tiles by name.
    """
    if area.pattern not in _OF_ONE or len(area.steps) != 2 or len(area.tiles) != 1 or area.tiles[0] not in stock:
        return None
    turn = area.angle + (45 if area.pattern == "diagonal" else 0)
    ring = _turned(_outline(stock[area.tiles[0]]), turn)
    a, b = ((_in_ticks(step[0]), _in_ticks(step[1])) for step in area.steps)
    return Repeat((a, b), ring, area.joint)


def _in_ticks(step: float) -> float:
    """A part of a step: one of whole ticks as such, as what its printing rounds adds up over hundreds of rows."""
    found = step * TICKS_PER_MM
    return float(round(found)) if abs(found - round(found)) < _WHOLE else found


def _outline(tile: TileStock) -> Ring:
    width, height = tile.size
    if tile.shape != "hexagon":
        return ((0, 0), (width, 0), (width, height), (0, height))
    # A hexagon is laid as a regular one, as wide across flats as measured.
    side = width / math.sqrt(3)
    return (
        (width / 2, 0),
        (width, side / 2),
        (width, side * 3 / 2),
        (width / 2, side * 2),
        (0, side * 3 / 2),
        (0, side / 2),
    )


def _turned(ring: Ring, degrees: float) -> Ring:
    """A ring turned to the left, its origin at its lower left, or at its lowest corner where it lies askew."""
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    turned = [(u * cos - v * sin, u * sin + v * cos) for u, v in ring]
    if degrees % 90:
        left, low = min(turned, key=lambda point: (round(point[1], 3), point[0]))
    else:
        left, low = min(u for u, _ in turned), min(v for _, v in turned)
    return tuple((u - left, v - low) for u, v in turned)


def how_near(surface: Surface, repeat: Repeat) -> float:
    """How exactly the plan tells where the tiles of a surface lie on its ground [ticks].

    Starts are whole ticks where the steps of the pattern are; ground is rounded beside joints below and folds.
    """
    whole = all(abs(part - round(part)) < _WHOLE for step in repeat.steps for part in step)
    across = any(joint.place != "edge" and joint.why != "field" for joint in surface.soft_joints)
    return EXACT if whole and not across and surface.fall is None else _MOVED

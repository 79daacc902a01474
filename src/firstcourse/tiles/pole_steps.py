"""Which rows of tile are marked on a story pole: each, one for a sheet of mosaic, or every so-manyth."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from firstcourse.plan import Surface, TileStock
from firstcourse.rules import RuleSet
from firstcourse.tiles.tile_rows import Row
from firstcourse.units import TICKS_PER_MM

_STEADY = ("stacked", "running", "hexagon")
"""Patterns whose rows follow each other at one step."""
_WHOLE = 0.1
"""A row that lies this share of a step or more off stands between two others, as every second one of hexagons."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PoleStep:
    """Every how manyth row is marked, how far rows lie apart [ticks], and where they are counted from [ticks]."""

    every: int
    step: float
    origin: int

    def marked(self, rows: Sequence[Row]) -> tuple[Row, ...]:
        """The first row, and all that begin a sheet or a new count."""
        if self.every == 1 or not rows:
            return tuple(rows)
        counts = [(row.laid - self.origin) / self.step for row in rows]
        # A course of a running bond may lie half a tile off all along.
        off = 0.0 if any(abs(at - round(at)) < _WHOLE for at in counts) else counts[0] % 1
        return (rows[0], *(row for row, at in zip(rows[1:], counts[1:], strict=True) if self._begins(at - off)))

    def _begins(self, at: float) -> bool:
        return abs(at - round(at)) < _WHOLE and round(at) % self.every == 0


def pole_step(surface: Surface, axis: int, stock: Mapping[str, TileStock], rules: RuleSet) -> PoleStep:
    """Which rows of a surface are marked along an axis.

    Args:
        surface: With its tiles.
        axis: 0 along it, 1 up.
        stock: Tiles by id.
        rules: What counts as mosaic, and how near its marks may stand.
    """
    area = surface.tiled[0]
    tile = stock.get(area.tiles[0]) if len(area.tiles) == 1 and len(surface.tiled) == 1 else None
    one_by_one = PoleStep(every=1, step=1.0, origin=0)
    if tile is None or area.pattern not in _STEADY or area.angle:
        return one_by_one
    step = abs(area.step_b[1] if axis else area.step_a[0]) * TICKS_PER_MM
    origin = area.starts[0].origin[axis]
    if tile.sheet is not None:
        return PoleStep(every=tile.sheet[axis], step=step, origin=origin)
    if max(tile.size) > rules.ticks("tile.trowel.mosaic_side"):
        return one_by_one
    return PoleStep(every=math.ceil(rules.ticks("tiling.pole.least_step") / step - 1e-6), step=step, origin=origin)

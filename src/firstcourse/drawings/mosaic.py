"""Sheets of mosaic on a surface: chips are laid by the sheet, so the sheets are what a drawing must show."""

import math
from collections.abc import Iterator, Mapping

import shapely
from shapely import Polygon

from firstcourse.geometry import Ring
from firstcourse.plan import Plan, Surface, TiledArea, TileStock
from firstcourse.units import TICKS_PER_MM

_ON_SHEETS = ("stacked", "running", "diagonal", "hexagon")
"""Patterns in which a mounted sheet lies as it comes; in others chips are set one by one."""
# Joins chips over their joint in spite of the rounding of their corners [mm].
_CLOSE_MM = 0.05


def mosaics(plan: Plan) -> dict[str, TileStock]:
    """The tiles of a plan that come mounted on sheets, by id."""
    return {stock.id: stock for stock in plan.tile_stock if stock.sheet is not None}


def sheet_rings(surface: Surface, stocks: Mapping[str, TileStock]) -> Iterator[tuple[tuple[float, float], ...]]:
    """Outlines of the mosaic sheets on a surface, whole sheets from the start on, cut where the tile ends [mm].

    Args:
        surface: With its tiles.
        stocks: Those that come on sheets, by id.
    """
    for area in surface.tiled:
        stock = stocks.get(area.tiles[0]) if len(area.tiles) == 1 else None
        if stock is None or stock.sheet is None or area.pattern not in _ON_SHEETS:
            continue
        ground = shapely.union_all([Polygon(_mm(one.outline), [_mm(h) for h in one.holes]) for one in area.area])
        found: dict[tuple[int, int], list[Polygon]] = {}
        for tile in surface.tiles:
            if tile.stock == stock.id:
                shape = Polygon(_mm(tile.laid or tile.outline))
                found.setdefault(_sheet(area, stock.sheet, shape), []).append(shape)
        reach = area.joint / TICKS_PER_MM / 2 + _CLOSE_MM
        for _, chips in sorted(found.items()):
            whole = shapely.union_all([chip.buffer(reach, join_style="mitre") for chip in chips])
            for part in shapely.get_parts(whole.intersection(ground)):
                if isinstance(part, Polygon) and not part.is_empty:
                    yield tuple((x, y) for x, y in part.exterior.coords[:-1])


def _sheet(area: TiledArea, size: tuple[int, int], shape: Polygon) -> tuple[int, int]:
    """Which sheet a chip belongs to: sheets across, then sheets up, counted from the start."""
    a, b = area.step_a, area.step_b
    length = math.hypot(*a)
    along = (a[0] / length, a[1] / length)
    row = abs(a[0] * b[1] - a[1] * b[0]) / length
    origin = area.starts[0].origin
    dx, dy = shape.centroid.x - origin[0] / TICKS_PER_MM, shape.centroid.y - origin[1] / TICKS_PER_MM
    across, up = dx * along[0] + dy * along[1], dy * along[0] - dx * along[1]
    return math.floor(across / length / size[0]), math.floor(up / row / size[1])


def _mm(ring: Ring) -> list[tuple[float, float]]:
    return [(x / TICKS_PER_MM, y / TICKS_PER_MM) for x, y in ring]

"""The tiled areas of a job, each with its tiles, its bed and what its joints hold."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from shapely import LineString, Polygon, STRtree

from firstcourse.layers import longest_side
from firstcourse.plan import Area, Surface, Tile, TiledArea, TileStock
from firstcourse.rules import RuleSet
from firstcourse.tiles import SettingBed, setting_bed
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import Ref, Value

_TICKS_PER_M = TICKS_PER_MM * 1000


@dataclass(frozen=True)
class TiledPart:
    """One tiled area with the tiles that lie in it, those already set left out.

    Attributes:
        surface: The surface it is part of.
        area: The area.
        tiles: Tiles to set.
        stock: Kinds of tile in it, the largest first.
        bed: The mortar under its tile, by the longest.
    """

    surface: Surface
    area: TiledArea
    tiles: tuple[Tile, ...]
    stock: tuple[TileStock, ...]
    bed: SettingBed

    @cached_property
    def field_m2(self) -> float:
        """The area, joints included [m²]."""
        return math.fsum(_shape(part).area for part in self.area.area) / _TICKS_PER_M**2

    @cached_property
    def tile_m2(self) -> float:
        """Faces of its tiles [m²]."""
        return math.fsum(float(Polygon(t.outline, t.holes).area) for t in self.tiles) / _TICKS_PER_M**2

    @cached_property
    def soft_m2(self) -> float:
        """Soft joints that cross the area [m²]."""
        shapes = [_shape(part) for part in self.area.area]
        return math.fsum(
            float(LineString(joint.line).intersection(shape).length) * joint.width / _TICKS_PER_M**2
            for joint in self.surface.soft_joints
            for shape in shapes
        )

    @property
    def grout_litres(self) -> float:
        """Grout by what the tiles leave open, as deep as the thickest tile [litres]."""
        return max(self.field_m2 - self.tile_m2 - self.soft_m2, 0.0) * self.depth_mm

    @property
    def depth_mm(self) -> float:
        """Depth of its joints: the thickness of its thickest tile [mm]."""
        return max(item.thickness for item in self.stock) / TICKS_PER_MM

    @property
    def formula_litres(self) -> float:
        """Grout by the handbook formula, on the tiles' own faces [litres]."""
        item = self.stock[0]
        width, height = (side / TICKS_PER_MM for side in item.size)
        if item.shape == "hexagon":
            # Half the rim over the area is what (A + B) / (A x B) is for a rectangle.
            width = height = self.stock[0].size[0] / TICKS_PER_MM
        return self.field_m2 * handbook_grout(width, height, self.area.joint / TICKS_PER_MM, self.depth_mm)


def handbook_grout(first: float, second: float, joint: float, depth: float) -> float:
    """Grout of a square metre of rectangles by the handbook formula [litres/m²].

    Args:
        first: One side of the tile [mm].
        second: The other side [mm].
        joint: Width of the joint [mm].
        depth: Depth of the joint [mm].

    References:
        (A + B) / (A x B) x joint x depth; it counts every crossing of joints twice, so it is a little high.

    Example:
        >>> round(handbook_grout(300, 300, 4, 10) * 1.6, 4)
        0.4267
    """
    return (first + second) / (first * second) * joint * depth


def places(parts: Sequence[TiledPart]) -> dict[str, Value]:
    """Where each part is, and its largest tile, by reference."""
    return {
        "surface": tuple(Ref(ref=part.surface.id) for part in parts),
        "tile": tuple(Ref(ref=f"tile_stock/{part.stock[0].id}") for part in parts),
    }


def to_set(surfaces: Sequence[Surface]) -> Iterator[Tile]:
    """The tiles of all surfaces but those that are set already."""
    return (tile for surface in surfaces for tile in surface.tiles if not tile.fixed)


def tiled_parts(
    surfaces: Sequence[Surface], tile_stock: Sequence[TileStock], rules: RuleSet, *, wet: bool
) -> Iterator[TiledPart]:
    """Every tiled area with the tiles still to be set in it.

    Args:
        surfaces: Surfaces with their tiles and tiled areas.
        tile_stock: Tiles that were chosen.
        rules: Rules in force.
        wet: Whether the rooms get wet.

    Raises:
        KeyError: An area names a tile that is not given.
    """
    by_id = {item.id: item for item in tile_stock}
    for surface in surfaces:
        loose = [tile for tile in surface.tiles if not tile.fixed]
        shapes = [(index, _shape(part)) for index, area in enumerate(surface.tiled) for part in area.area]
        owner: dict[int, int] = {}
        if len(surface.tiled) > 1 and loose:
            tree = STRtree([Polygon(tile.outline, tile.holes).representative_point() for tile in loose])
            for index, shape in shapes:
                for found in tree.query(shape, predicate="intersects").tolist():
                    owner.setdefault(found, index)
        for index, area in enumerate(surface.tiled):
            stock = sorted((by_id[name] for name in area.tiles), key=lambda item: -item.size[0] * item.size[1])
            yield TiledPart(
                surface=surface,
                area=area,
                tiles=tuple(tile for number, tile in enumerate(loose) if owner.get(number, 0) == index),
                stock=tuple(stock),
                bed=setting_bed(
                    max(stock, key=lambda item: longest_side((item,))),
                    rules,
                    kind=surface.kind,
                    wet=wet,
                    surface=surface.id,
                    entered=None if area.trowel else area.mortar,
                ),
            )


def _shape(area: Area) -> Polygon:
    return Polygon(area.outline, area.holes)

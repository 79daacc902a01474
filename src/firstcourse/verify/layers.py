"""One thickness for each layer: what the rules or the job give, wherever the plan uses it."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.structure import Document, Surface, TiledArea, TileStock
from firstcourse.verify.verdict import Objection

NAMES = {
    "board_mortar": "mortar under the boards",
    "board": "board",
    "heating": "mortar round the heating",
    "mortar_bed": "mortar bed",
    "mortar": "mortar under the tile",
    "tile": "tile",
}
"""Layers as they are printed, from below."""
_CODE = "VER-768"


@dataclass(frozen=True, slots=True)
class Mortar:
    """Mortar that the notches leave and mortar on the tile's back [ticks], by the class of the notch."""

    size: str
    combed: int
    buttered: int


def mortar_under(stock: tuple[TileStock, ...], rules: RuleSet) -> Mortar:
    """The mortar under tiles that share a bed, by the longest side of any."""
    return _combed(max(max(item.size) for item in stock), rules)


def built(surface: Surface, plan: Document) -> int:
    """A surface's tile with the mortar under it [ticks]; without a tile, the mortar under mosaic."""
    for area in surface.tiled:
        stock = _stock(area, plan)
        if area.role == "field" and stock:
            return max(item.thickness for item in stock) + _mortar(area, stock, plan.rules)
    return _combed(0, plan.rules).combed


def cover(surface: Surface, plan: Document) -> tuple[int, int]:
    """A shower floor's tile and the mortar under it [ticks]; where no tile is chosen, the mortar under mosaic."""
    layers = dict(surface.layers)
    return layers.get("tile", 0), layers.get("mortar", 0) or _combed(0, plan.rules).combed


def _combed(longest: int, rules: RuleSet) -> Mortar:
    if longest <= rules.ticks("tile.trowel.mosaic_side"):
        size = "mosaic"
    elif longest <= rules.ticks("tile.trowel.small_side"):
        size = "small"
    else:
        size = "medium" if longest < rules.ticks("tile.back_butter.side") else "large"
    notch = f"tile.trowel.{size}"
    width, depth, land = (rules.ticks(f"{notch}.{part}") for part in ("width", "depth", "land"))
    shape = rules.text(f"{notch}.shape")
    section = width * depth / (2 if shape == "V" else 1)
    if shape == "U":
        section = width * (depth - width / 2) + math.pi * width**2 / 8
    combed = section * math.sin(math.radians(rules.number("tile.trowel.angle"))) / (width + land)
    buttered = longest >= rules.ticks("tile.back_butter.wet_side")
    return Mortar(size, round(combed), rules.ticks("tile.back_butter.thickness") if buttered else 0)


def check_layers(plan: Document) -> Iterator[Objection]:
    """Object to a layer that is not as thick as its material and trowel make it, or has two values."""
    for surface in plan.surfaces:
        for area in surface.tiled:
            yield from _trowelled(surface, area, plan)
        yield from _layers(surface, plan)
        yield from _weighed(surface, plan)


def _stock(area: TiledArea, plan: Document) -> tuple[TileStock, ...]:
    known = tuple(plan.tile_stock[name] for name in area.tiles if name in plan.tile_stock)
    return known if all(item.thickness for item in known) else ()


def _mortar(area: TiledArea, stock: tuple[TileStock, ...], rules: RuleSet) -> int:
    if area.mortar is not None:
        return area.mortar
    found = mortar_under(stock, rules)
    return found.combed + found.buttered


def _trowelled(surface: Surface, area: TiledArea, plan: Document) -> Iterator[Objection]:
    stock = _stock(area, plan)
    if not stock or (area.mortar is None and not surface.layers):
        return
    found = mortar_under(stock, plan.rules)
    if area.mortar is None:
        yield Objection(_CODE, surface.id, "does not say how thick the mortar under its tile is")
    elif area.trowel and (area.trowel != found.size or area.mortar != found.combed + found.buttered):
        yield Objection(_CODE, surface.id, "has another mortar under its tile than its trowel leaves")


def _layers(surface: Surface, plan: Document) -> Iterator[Objection]:
    kinds = [kind for kind, _ in surface.layers]
    order = list(NAMES)
    if kinds != sorted(set(kinds), key=order.index):
        yield Objection(_CODE, surface.id, "names a layer twice, or not from below")
        return
    if any(_stock(area, plan) for area in surface.tiled) and "tile" not in kinds:
        yield Objection(_CODE, surface.id, "is tiled and leaves the tile out of its layers")
        return
    given = dict(surface.layers)
    for kind, thickness in _derived(surface, plan):
        if given.get(kind) != thickness:
            yield Objection(_CODE, surface.id, f"has another thickness of the {NAMES[kind]} than is laid")


def _derived(surface: Surface, plan: Document) -> Iterator[tuple[str, int]]:
    stock_of = {piece.id: piece.stock for piece in plan.pieces}
    sheets = plan.shopping.sheet_stock
    for board in surface.boards:
        sheet = sheets.get(stock_of.get(board.piece, ""))
        if sheet is not None:
            yield "board", sheet.thickness
    if surface.boards and surface.kind == "floor":
        rules = plan.rules
        width, depth, land = (
            rules.ticks(f"bedding.trowel.{part}") for part in ("notch_width", "notch_depth", "land")
        )
        slope = math.sin(math.radians(rules.number("bedding.trowel.angle")))
        yield "board_mortar", round(width * depth * slope / (width + land))
    for area in surface.tiled:
        stock = _stock(area, plan)
        if area.role == "field" and stock:
            yield "tile", max(item.thickness for item in stock)
            yield "mortar", _mortar(area, stock, plan.rules)


def _weighed(surface: Surface, plan: Document) -> Iterator[Objection]:
    """A frame is judged with the one thickness of each layer on it."""
    given = dict(surface.layers)
    for frame in plan.frames:
        for row in frame.layers if frame.surface == surface.id else ():
            if row.of in given and abs(row.thickness * TICKS_PER_MM - given[row.of]) > 0.5:
                yield Objection(_CODE, frame.surface, f"weighs the {NAMES[row.of]} by another thickness")

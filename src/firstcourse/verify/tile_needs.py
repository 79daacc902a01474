"""What tile takes, counted again: tiles, mortar, grout, sealant with rod or tape behind it, trim and spacers."""

import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from shapely import LineString

from firstcourse.geometry import sides
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, Tape, counted, one_or_more
from firstcourse.verify.layers import mortar_under
from firstcourse.verify.needs import Need, by_mass
from firstcourse.verify.printed import metric_or, ticks_per_running
from firstcourse.verify.structure import Document, Surface, Tile, TiledArea, TileStock

_TICKS_PER_M = 1000 * TICKS_PER_MM
_TICKS3_PER_ML = (10.0 * TICKS_PER_MM) ** 3
_STRAIGHT = ("stacked", "diagonal")
_DUST = 1e-9
_SQ_FT = 0.09290304
"""Square metres in a square foot."""


@dataclass(frozen=True, slots=True)
class _Part:
    """One tiled area with its tiles still to be set: areas [m²], mortar and depth of joints [ticks]."""

    surface: Surface
    area: TiledArea
    tiles: tuple[Tile, ...]
    stock: tuple[TileStock, ...]
    combed: int
    buttered: int
    large: bool

    @property
    def field(self) -> float:
        return float(self.area.shape.area) / _TICKS_PER_M**2

    @property
    def faces(self) -> float:
        return math.fsum(tile.shape.area for tile in self.tiles) / _TICKS_PER_M**2

    @property
    def soft(self) -> float:
        return math.fsum(
            LineString(joint.line).intersection(self.area.shape).length * joint.width / _TICKS_PER_M**2
            for joint in self.surface.soft_joints
        )

    @property
    def thickest(self) -> int:
        return max(item.thickness for item in self.stock)

    @property
    def open_depth(self) -> int:
        """From the face of the tile down to what the mortar lies on."""
        return self.combed + self.buttered + self.thickest


def tile_needs(plan: Document) -> Iterator[Need]:
    """Everything that tile takes; nothing where none of the tiles is known with its thickness."""
    yield from _tiles(plan)
    parts = [part for surface in plan.surfaces for part in _parts(surface, plan)]
    if not parts:
        return
    yield from _mortar(parts, plan)
    yield _grout(parts, plan)
    yield from _sealant(parts, plan)
    yield from _trim(plan)
    yield from _spacers(parts, plan.rules)


def shown_edges(surface: Surface) -> list[int]:
    """Edges of tile that show: where it stops in the open, and rims of niches and windows set back [ticks]."""
    if not surface.tiled:
        return []
    lines = enumerate(zip(sides(surface.outline), surface.sides, strict=True))
    free = [line for index, (line, kind) in lines if kind == "free" and index not in surface.hidden]
    rims = [
        line
        for opening in surface.openings
        if (opening.kind == "niche" or opening.depth) and opening.outline is not None
        for line in sides(opening.outline)
    ]
    return [round(math.dist(*line)) for line in (*free, *rims)]


def _tiles(plan: Document) -> Iterator[Need]:
    loose = [tile for surface in plan.surfaces for tile in surface.tiles if not tile.fixed]
    for stock, item in plan.tile_stock.items():
        own = [tile for tile in loose if tile.stock == stock]
        whole = sum(tile.whole for tile in own)
        cut = len({tile.source for tile in own if not tile.whole})
        exact = whole + cut
        broken = math.ceil(exact * plan.rules.number("tile.breakage") - _DUST)
        spare = math.ceil(exact * plan.rules.number("tile.spares"))
        pack = item.per_sheet * (item.per_box or 1)
        unit = "chips" if item.mounted else "tiles"
        plain = f"sheets of {item.per_sheet} chips" if item.mounted else "pieces"
        buy = math.ceil((exact + broken + spare) / pack)
        yield Need(
            item=f"tile_stock/{stock}",
            exact=exact,
            places=0,
            unit=unit,
            share=plan.rules.number("tile.breakage"),
            sheets=item.per_box if item.mounted else None,
            pack=pack,
            kind="box" if item.per_box else "sheet" if item.mounted else "piece",
            pack_name=f"box of {item.per_box} {plain}" if item.per_box else one_or_more(1, plain),
            buy=buy,
            shown={
                "set whole": whole,
                "set cut": len(own) - whole,
                "whole tiles cut": cut,
                "left over beyond that": buy * pack - exact - broken - spare,
                **({"pieces on a sheet": item.per_sheet} if item.mounted else {}),
            },
            said={"kept for repairs": f"{plan.rules.number('tile.spares'):.0%} = {counted(spare, unit)}"},
        )


def _parts(surface: Surface, plan: Document) -> Iterator[_Part]:
    loose = [tile for tile in surface.tiles if not tile.fixed]
    owner: dict[int, int] = {}
    if len(surface.tiled) > 1:
        spots = [tile.shape.representative_point() for tile in loose]
        for number, area in enumerate(surface.tiled):
            for index, spot in enumerate(spots):
                if area.shape.intersects(spot):
                    owner.setdefault(index, number)
    for number, area in enumerate(surface.tiled):
        known = [plan.tile_stock[name] for name in area.tiles if name in plan.tile_stock]
        stock = sorted(known, key=lambda item: -item.size[0] * item.size[1])
        if not stock or not all(item.thickness for item in stock):
            continue
        own = tuple(tile for index, tile in enumerate(loose) if owner.get(index, 0) == number)
        yield _Part(surface, area, own, tuple(stock), *_bed(area, tuple(stock), plan.rules))


def _bed(area: TiledArea, stock: tuple[TileStock, ...], rules: RuleSet) -> tuple[int, int, bool]:
    """Mortar that the notches leave, mortar on the back [ticks], and whether the tile counts as large."""
    found = mortar_under(stock, rules)
    if area.mortar is not None and not area.trowel:
        return area.mortar, 0, found.size == "large"
    return found.combed, found.buttered, found.size == "large"


def _mortar(parts: list[_Part], plan: Document) -> Iterator[Need]:
    rules = plan.rules
    density, water = rules.number("bedding.mortar.density"), rules.number("bedding.mortar.water_share")
    for large, item in ((False, "tile_mortar"), (True, "large_tile_mortar")):
        own = [part for part in parts if part.large == large]
        combed = math.fsum(part.field * part.combed for part in own) / _TICKS_PER_M
        buttered = math.fsum(part.faces * part.buttered for part in own) / _TICKS_PER_M
        if not own:
            continue
        yield by_mass(
            item,
            (combed + buttered) * density * (1 - water),
            rules.kilograms("bedding.mortar.bag"),
            rules.number("bedding.mortar.waste"),
            plan.tape,
            {
                "combed": combed * 1000,
                "back-butter": buttered * 1000,
                "density": density,
                "water share": water,
                **_fields(own, plan.tape),
            },
        )


def _grout(parts: list[_Part], plan: Document) -> Need:
    rules = plan.rules
    litres = math.fsum(
        max(part.field - part.faces - part.soft, 0.0) * part.thickest / TICKS_PER_MM for part in parts
    )
    density = rules.number("tile.grout.density")
    return by_mass(
        "grout",
        litres * density,
        rules.kilograms("tile.grout.bag"),
        rules.number("tile.grout.waste"),
        plan.tape,
        {
            "volume": litres,
            "density": density,
            **_fields(parts, plan.tape),
        },
    )


def _fields(parts: list[_Part], tape: Tape) -> dict[str, float]:
    """The area that each part is said to have, where it is named alone."""
    square = 1.0 if tape is Tape.MM else _SQ_FT
    return {f"{part.surface.id}, {part.stock[0].id}": part.field / square for part in parts if _alone(part, parts)}


def _alone(part: _Part, parts: list[_Part]) -> bool:
    """Whether the working names this part alone by its surface and tile."""
    return sum(o.surface.id == part.surface.id and o.stock[0].id == part.stock[0].id for o in parts) == 1


def _sealant(parts: list[_Part], plan: Document) -> Iterator[Need]:
    rules, tape = plan.rules, plan.tape
    deep: dict[str, int] = {}
    for part in parts:
        deep[part.surface.id] = max(deep.get(part.surface.id, 0), part.open_depth)
    volume, rods = 0.0, Counter[int]()
    for surface in plan.surfaces:
        for joint in surface.soft_joints if surface.id in deep else ():
            length = round(LineString(joint.line).length)
            depth, rod = _section(joint.width, deep[surface.id], rules)
            volume += length * joint.width * depth / _TICKS3_PER_ML
            rods[rod] += length
    if not rods:
        return
    cartridge = rules.number("tile.sealant.cartridge")
    yield Need(
        item="joint_sealant",
        exact=volume,
        places=1,
        unit="ml",
        share=rules.number("tile.sealant.waste"),
        pack=cartridge,
        kind="cartridge",
        pack_name=f"cartridge of {cartridge:g} ml",
    )
    unit, running = metric_or(tape, "m", "ft"), ticks_per_running(tape)
    coil = rules.ticks("tile.rod.coil") / running
    for rod, length in sorted(rods.items()):
        yield Need(
            item=f"backer_rod/{rod / TICKS_PER_MM:.10g}" if rod else "bond_breaker",
            exact=length / running,
            places=3,
            unit=unit,
            share=rules.number("tile.rod.waste"),
            pack=coil,
            kind="coil",
            pack_name=f"coil of {coil:g} {unit}",
        )


def _section(width: int, available: int, rules: RuleSet) -> tuple[int, int]:
    """Depth of sealant, and the rod behind it; no rod where there is no room for it [ticks]."""
    most = rules.ticks("tile.sealant.square_to")
    depth = min(width if width <= most else min(width // 2, most), available)
    step = rules.ticks("tile.sealant.rod_step")
    rod = -(-math.ceil(width * rules.number("tile.sealant.rod_over")) // step) * step
    rod = max(rod, rules.ticks("tile.sealant.rod_least"))
    if rod > width * rules.number("tile.sealant.rod_most") or depth + rod > available:
        return depth, 0
    return depth, rod


def _trim(plan: Document) -> Iterator[Need]:
    edges = [length for surface in plan.surfaces for length in shown_edges(surface)]
    if not edges:
        return
    stock = plan.rules.ticks("tile.trim.stock")
    unit, running = metric_or(plan.tape, "m", "ft"), ticks_per_running(plan.tape)
    yield Need(
        item="edge_trim",
        exact=sum(edges) / running,
        places=3,
        unit=unit,
        kind="length",
        pack=stock / running,
        pack_name=f"length of {stock / running:g} {unit}",
        buy=_lengths(edges, stock),
        shown={"edges": len(edges)},
    )


def _lengths(edges: list[int], stock: int) -> int:
    """Stock lengths that edges are cut from, longest first, each from the first that has room."""
    whole, left = sum(edge // stock for edge in edges), list[int]()
    for edge in sorted((edge % stock for edge in edges if edge % stock), reverse=True):
        index = next((index for index, room in enumerate(left) if room >= edge), None)
        if index is None:
            left.append(stock - edge)
        else:
            left[index] -= edge
    return whole + len(left)


def _spacers(parts: list[_Part], rules: RuleSet) -> Iterator[Need]:
    loose = [part for part in parts if not any(item.mounted for item in part.stock)]
    by_surface: Counter[str] = Counter()
    for part in loose:
        by_surface[part.surface.id] += (1 if part.area.pattern in _STRAIGHT else 2) * len(part.tiles)
    if not by_surface.total():
        return
    pack = rules.number("tile.spacer.pack")
    yield Need(
        item="spacers",
        exact=by_surface.total() * rules.number("tile.spacer.per_crossing"),
        places=3,
        unit="spacers",
        pack=pack,
        kind="pack",
        pack_name=f"pack of {pack:g}",
        shown=dict(by_surface),
    )

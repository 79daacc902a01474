"""What tile takes, counted again: tiles, mortar, grout, sealant with rod or tape behind it, trim and spacers."""

import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from shapely import LineString

from firstcourse.geometry import sides
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.formulas.proving import ref
from firstcourse.verify.formulas.wanted import Listed, by_mass, length, measure, word
from firstcourse.verify.layers import mortar_under
from firstcourse.verify.shopping_fields import Given
from firstcourse.verify.structure import Document, Surface, Tile, TiledArea, TileStock

_TICKS_PER_M = 1000 * TICKS_PER_MM
_TICKS3_PER_ML = (10.0 * TICKS_PER_MM) ** 3
_STRAIGHT = ("stacked", "diagonal")
_DUST = 1e-9


@dataclass(frozen=True, slots=True)
class _Part:
    """One tiled area with its tiles still to be set: areas [m²], mortar and depth of joints [ticks]."""

    surface: Surface
    area: TiledArea
    tiles: tuple[Tile, ...]
    stock: tuple[TileStock, ...]
    combed: int
    buttered: int
    size: str

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
    def deep_mm(self) -> float:
        """Depth of its grouted joints [mm]."""
        return self.thickest / TICKS_PER_MM

    @property
    def open_depth(self) -> int:
        """From the face of the tile down to what the mortar lies on."""
        return self.combed + self.buttered + self.thickest


def tile_lines(plan: Document) -> Iterator[Listed]:
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


def _tiles(plan: Document) -> Iterator[Listed]:
    loose = [tile for surface in plan.surfaces for tile in surface.tiles if not tile.fixed]
    for stock, item in plan.tile_stock.items():
        own = [tile for tile in loose if tile.stock == stock]
        if own:
            yield _of_one_stock(stock, item, own, plan.rules)


def _of_one_stock(stock: str, item: TileStock, own: list[Tile], rules: RuleSet) -> Listed:
    whole = sum(tile.whole for tile in own)
    cut = len({tile.source for tile in own if not tile.whole})
    exact = whole + cut
    breakage, spares = rules.number("tile.breakage"), rules.number("tile.spares")
    broken, spare = math.ceil(exact * breakage - _DUST), math.ceil(exact * spares)
    pack = item.per_sheet * (item.per_box or 1)
    buy = math.ceil((exact + broken + spare) / pack)
    unit = "chip" if item.mounted else "tile"
    sheets = item.per_box if item.mounted else None
    return Listed(
        item=f"tile_stock/{stock}",
        exact=float(exact),
        unit=unit,
        kind="box" if item.per_box else "sheet" if item.mounted else "piece",
        size=float(pack),
        sheets=sheets,
        share=breakage,
        buy=buy,
        formula="quantities-tiles",
        inputs={
            "whole": whole,
            "cut": len(own) - whole,
            "from_whole": cut,
            "on_sheet": item.per_sheet,
            "sheets": sheets or 0,
            **_by_thumb(own, item, rules),
        },
        beyond={
            "spares": measure(100 * spares, "%"),
            "kept": measure(float(spare), unit),
            "left": measure(float(buy * pack - exact - broken - spare), unit),
        },
    )


def _by_thumb(own: list[Tile], item: TileStock, rules: RuleSet) -> dict[str, Given]:
    """What the area alone would have bought, with the usual percent for waste."""
    width, height = item.size
    face = round(math.sqrt(3) / 2 * width**2) if item.shape == "hexagon" else width * height
    area = math.fsum(tile.shape.area for tile in own)
    percent = {way: rules.number(f"tile.waste.{way}") for way in ("straight", "diagonal")}
    return {f"{way}_share": measure(more, "%") for way, more in percent.items()} | {
        f"by_thumb_{way}": math.ceil(area / face * (1 + more / 100)) for way, more in percent.items()
    }


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


def _bed(area: TiledArea, stock: tuple[TileStock, ...], rules: RuleSet) -> tuple[int, int, str]:
    """Mortar that the notches leave, mortar on the back [ticks], and what the tile counts as for the trowel."""
    found = mortar_under(stock, rules)
    if area.mortar is not None and not area.trowel:
        return area.mortar, 0, found.size
    return found.combed, found.buttered, found.size


def _mortar(parts: list[_Part], plan: Document) -> Iterator[Listed]:
    rules = plan.rules
    density, water = rules.number("bedding.mortar.density"), rules.number("bedding.mortar.water_share")
    for large, item in ((False, "tile_mortar"), (True, "large_tile_mortar")):
        own = [part for part in parts if (part.size == "large") == large]
        if not own:
            continue
        combed = math.fsum(part.field * part.combed for part in own) / _TICKS_PER_M
        buttered = math.fsum(part.faces * part.buttered for part in own) / _TICKS_PER_M
        yield by_mass(
            item,
            (combed + buttered) * density * (1 - water),
            bag_kg=rules.kilograms("bedding.mortar.bag"),
            share=rules.number("bedding.mortar.waste"),
            formula="quantities-tile_mortar",
            inputs={
                "large": large,
                **_places(own),
                "area": [measure(part.field, "m2") for part in own],
                "thick": [length(part.combed) for part in own],
                "backed": [part.buttered > 0 for part in own],
                "faces": [measure(part.faces, "m2") for part in own],
                "back": [length(part.buttered) for part in own],
                "notch_wide": [length(rules.ticks(f"tile.trowel.{part.size}.width")) for part in own],
                "notch_deep": [length(rules.ticks(f"tile.trowel.{part.size}.depth")) for part in own],
                "notch": [word(rules.text(f"tile.trowel.{part.size}.shape")) for part in own],
                "combed": measure(combed * 1000, "l"),
                "buttered": measure(buttered * 1000, "l"),
                "density": measure(density, "kg/m3"),
                "water": measure(water),
            },
            rule="bedding.mortar.density",
        )


def _grout(parts: list[_Part], plan: Document) -> Listed:
    rules = plan.rules
    litres = math.fsum(max(part.field - part.faces - part.soft, 0.0) * part.deep_mm for part in parts)
    density = rules.number("tile.grout.density")
    return by_mass(
        "grout",
        litres * density,
        bag_kg=rules.kilograms("tile.grout.bag"),
        share=rules.number("tile.grout.waste"),
        formula="quantities-grout",
        inputs={
            **_places(parts),
            "area": [measure(part.field, "m2") for part in parts],
            "faces": [measure(part.faces, "m2") for part in parts],
            "soft": [measure(part.soft, "m2") for part in parts],
            "deep": [measure(part.deep_mm, "mm") for part in parts],
            "volume": measure(litres, "l"),
            "density": measure(density, "kg/l"),
            "handbook": measure(math.fsum(map(_by_handbook, parts)) * density, "kg"),
        },
        rule="tile.grout.density",
    )


def _by_handbook(part: _Part) -> float:
    """Grout by the area and the largest tile's sides alone: half its rim over its face [litres]."""
    item = part.stock[0]
    width, height = (side / TICKS_PER_MM for side in item.size)
    if item.shape == "hexagon":
        height = width
    return part.field * (1 / width + 1 / height) * part.area.joint / TICKS_PER_MM * part.deep_mm


def _places(parts: list[_Part]) -> dict[str, Given]:
    return {
        "surface": [ref(part.surface.id) for part in parts],
        "tile": [ref(f"tile_stock/{part.stock[0].id}") for part in parts],
    }


def _sealant(parts: list[_Part], plan: Document) -> Iterator[Listed]:
    rules = plan.rules
    deep: dict[str, int] = {}
    for part in parts:
        deep[part.surface.id] = max(deep.get(part.surface.id, 0), part.open_depth)
    lengths: Counter[tuple[int, int, int]] = Counter()
    for surface in plan.surfaces:
        for joint in surface.soft_joints if surface.id in deep else ():
            depth, rod = _section(joint.width, deep[surface.id], rules)
            lengths[joint.width, depth, rod] += round(LineString(joint.line).length)
    if not lengths:
        return
    rows = sorted(lengths.items())
    yield Listed(
        item="joint_sealant",
        exact=math.fsum(along * wide * depth for (wide, depth, _), along in rows) / _TICKS3_PER_ML,
        unit="ml",
        kind="cartridge",
        size=rules.number("tile.sealant.cartridge"),
        share=rules.number("tile.sealant.waste"),
        formula="quantities-joint_sealant",
        inputs={
            "wide": [length(wide) for (wide, _, _), _ in rows],
            "deep": [length(depth) for (_, depth, _), _ in rows],
            "rod": [length(rod) for (_, _, rod), _ in rows],
            "on_rod": [rod > 0 for (_, _, rod), _ in rows],
            "along": [length(along) for _, along in rows],
            "square_to": length(rules.ticks("tile.sealant.square_to")),
        },
        rule="tile.sealant.square_to",
    )
    for rod in sorted({rod for _, _, rod in lengths}):
        yield _behind(rod, sum(along for (_, _, behind), along in rows if behind == rod), rules)


def _behind(rod: int, along: int, rules: RuleSet) -> Listed:
    """Backer rod of one diameter, or tape where none has room [ticks]."""
    inputs = {"rod": length(rod), "over": measure(rules.number("tile.sealant.rod_over"))}
    return Listed(
        item=f"backer_rod/{rod / TICKS_PER_MM:.10g}" if rod else "bond_breaker",
        exact=along / TICKS_PER_MM,
        unit="mm",
        kind="coil",
        size=rules.ticks("tile.rod.coil") / TICKS_PER_MM,
        share=rules.number("tile.rod.waste"),
        formula="quantities-backer_rod" if rod else "quantities-bond_breaker",
        inputs=inputs if rod else {},
        rule="tile.sealant.rod_over",
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


def _trim(plan: Document) -> Iterator[Listed]:
    edges = [(surface.id, edge) for surface in plan.surfaces for edge in shown_edges(surface)]
    if not edges:
        return
    stock = plan.rules.ticks("tile.trim.stock")
    yield Listed(
        item="edge_trim",
        exact=sum(edge for _, edge in edges) / TICKS_PER_MM,
        unit="mm",
        kind="length",
        size=stock / TICKS_PER_MM,
        buy=_lengths([edge for _, edge in edges], stock),
        formula="quantities-edge_trim",
        inputs={
            "surface": [ref(surface) for surface, _ in edges],
            "edge": [length(edge) for _, edge in edges],
            "edges": len(edges),
            "stock": length(stock),
        },
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


def _spacers(parts: list[_Part], rules: RuleSet) -> Iterator[Listed]:
    loose = [part for part in parts if not any(item.mounted for item in part.stock)]
    by_surface: Counter[str] = Counter()
    for part in loose:
        by_surface[part.surface.id] += (1 if part.area.pattern in _STRAIGHT else 2) * len(part.tiles)
    if not by_surface.total():
        return
    each = rules.number("tile.spacer.per_crossing")
    yield Listed(
        item="spacers",
        exact=by_surface.total() * each,
        unit="spacer",
        kind="pack",
        size=rules.number("tile.spacer.pack"),
        formula="quantities-spacers",
        inputs={
            "surface": [ref(surface) for surface in by_surface],
            "crossings": list(by_surface.values()),
            "each": measure(each),
        },
        rule="tile.spacer.per_crossing",
    )

"""What tiling needs: tiles, mortar, grout, sealant, trim and spacers, counted from what is drawn."""

import math
from collections.abc import Iterator, Sequence

from shapely import Polygon

from firstcourse.layers import dry_mass
from firstcourse.plan import Pack, Surface, Tile, TileStock
from firstcourse.rules import RuleSet
from firstcourse.takeoff.count import Quantities
from firstcourse.takeoff.items import LARGE_TILE_MORTAR, TILE_MORTAR, tiles_of
from firstcourse.takeoff.lines import Line, by_mass, line
from firstcourse.takeoff.tile_cuts import cuts_working
from firstcourse.takeoff.tile_edges import spacers, trim, trim_finding
from firstcourse.takeoff.tile_joints import grout, sealant
from firstcourse.takeoff.tiled_parts import TiledPart, places, tiled_parts, to_set
from firstcourse.tiles import shown_edges
from firstcourse.units import TICKS_PER_MM, Tape
from firstcourse.values import Value, Word, length, measure
from firstcourse.workings import Working, by_id

_TICKS_PER_M = TICKS_PER_MM * 1000


def count_tiles(
    surfaces: tuple[Surface, ...],
    tile_stock: tuple[TileStock, ...],
    rules: RuleSet,
    tape: Tape,
    *,
    wet: bool = True,
) -> Quantities:
    """Count everything that the tiling of a job needs.

    Args:
        surfaces: Surfaces with their tiles, tiled areas and soft joints.
        tile_stock: Tiles that were chosen.
        rules: Rules in force.
        tape: Tape of the job; heights of trim are rounded to its marks.
        wet: Whether the rooms get wet, which decides contact and back-buttering.

    Raises:
        KeyError: A tile or an area names a tile that is not given.
    """
    parts = tuple(tiled_parts(surfaces, tile_stock, rules, wet=wet))
    lines = [
        *_tiles(surfaces, tile_stock, rules),
        *_mortar(parts, rules),
        *grout(parts, rules),
        *sealant(parts, surfaces, rules),
        *trim(surfaces, rules),
        *spacers(parts, rules),
    ]
    loose = list(to_set(surfaces))
    cut = ((item, [tile for tile in loose if tile.stock == item.id and not tile.whole]) for item in tile_stock)
    cuts = (cuts_working(item, own) for item, own in cut if own)
    return Quantities(
        quantities=tuple(quantity for quantity, _ in lines),
        workings=by_id((*(working for _, working in lines), *cuts)),
        findings=tuple(trim_finding(surface, parts, tape) for surface in surfaces if shown_edges(surface)),
    )


def _tiles(surfaces: Sequence[Surface], tile_stock: Sequence[TileStock], rules: RuleSet) -> Iterator[Line]:
    loose = list(to_set(surfaces))
    for item in tile_stock:
        own = [tile for tile in loose if tile.stock == item.id]
        if own:
            yield _of_one_stock(item, own, rules)


def _of_one_stock(item: TileStock, own: Sequence[Tile], rules: RuleSet) -> Line:
    whole = sum(tile.whole for tile in own)
    from_whole = len({tile.from_ for tile in own if not tile.whole})
    exact = whole + from_whole
    breakage, spares = rules.number("tile.breakage"), rules.number("tile.spares")
    spare, broken = math.ceil(exact * spares), math.ceil(exact * breakage - 1e-9)
    on_sheet = item.sheet[0] * item.sheet[1] if item.sheet else 1
    pack = Pack(
        kind="box" if item.per_box else "sheet" if item.sheet else "piece",
        size=on_sheet * (item.per_box or 1),
        unit="chip" if item.sheet else "tile",
        sheets=item.per_box if item.sheet else None,
    )
    buy = math.ceil((exact + broken + spare) / pack.size)
    left = round(buy * pack.size) - exact - broken - spare
    return line(
        tiles_of(item.id),
        measure(exact, pack.unit),
        pack,
        Working(
            formula="quantities-tiles",
            at=(tiles_of(item.id),),
            inputs={
                "whole": whole,
                "cut": len(own) - whole,
                "from_whole": from_whole,
                "on_sheet": on_sheet,
                "sheets": pack.sheets or 0,
                **_thumb(own, item, rules),
            },
            result=measure(exact, pack.unit),
        ),
        share=breakage,
        buy=buy,
        beyond={
            "spares": measure(100 * spares, "%"),
            "kept": measure(spare, pack.unit),
            "left": measure(left, pack.unit),
        },
    )


def _thumb(own: Sequence[Tile], item: TileStock, rules: RuleSet) -> dict[str, Value]:
    """What a rule of thumb would have bought, for comparison."""
    face = item.size[0] * item.size[1]
    if item.shape == "hexagon":
        face = round(item.size[0] ** 2 * math.sqrt(3) / 2)
    area = math.fsum(float(Polygon(tile.outline, tile.holes).area) for tile in own)
    found: dict[str, Value] = {}
    for way in ("straight", "diagonal"):
        share = rules.number(f"tile.waste.{way}")
        found[f"{way}_share"] = measure(share, "%")
        found[f"by_thumb_{way}"] = math.ceil(area / face * (1 + share / 100))
    return found


def _mortar(parts: Sequence[TiledPart], rules: RuleSet) -> Iterator[Line]:
    density, water = rules.number("bedding.mortar.density"), rules.number("bedding.mortar.water_share")
    for large, item in ((False, TILE_MORTAR), (True, LARGE_TILE_MORTAR)):
        own = [part for part in parts if part.bed.large_mortar == large]
        if not own:
            continue
        combed = math.fsum(part.field_m2 * part.bed.combed for part in own) / _TICKS_PER_M
        buttered = math.fsum(part.tile_m2 * part.bed.back_buttered for part in own) / _TICKS_PER_M
        mass = dry_mass(combed + buttered, mixed_density=density, water_share=water)
        yield by_mass(
            item,
            mass,
            rules.kilograms("bedding.mortar.bag"),
            rules.number("bedding.mortar.waste"),
            Working(
                formula="quantities-tile_mortar",
                at=(item,),
                inputs={
                    "large": large,
                    **places(own),
                    "area": tuple(measure(part.field_m2, "m2") for part in own),
                    "thick": tuple(length(part.bed.combed) for part in own),
                    "backed": tuple(part.bed.back_buttered > 0 for part in own),
                    "faces": tuple(measure(part.tile_m2, "m2") for part in own),
                    "back": tuple(length(part.bed.back_buttered) for part in own),
                    **_notches(own),
                    "combed": measure(combed * 1000, "l"),
                    "buttered": measure(buttered * 1000, "l"),
                    "density": measure(density, "kg/m3"),
                    "water": measure(water),
                },
                result=measure(mass, "kg"),
                rule="bedding.mortar.density",
            ),
        )


def _notches(parts: Sequence[TiledPart]) -> dict[str, Value]:
    notches = [part.bed.notch for part in parts]
    return {
        "notch_wide": tuple(length(wide) for wide, _, _ in notches),
        "notch_deep": tuple(length(deep) for _, deep, _ in notches),
        "notch": tuple(Word(word=shape) for _, _, shape in notches),
    }

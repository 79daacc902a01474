"""What tiling needs: tiles, mortar, grout, sealant, trim and spacers, counted from what is drawn."""

import math
from collections.abc import Iterator, Sequence

from shapely import Polygon

from firstcourse.bedding import dry_mass, mass_text, small_text
from firstcourse.plan import Quantity, Surface, Tile, TileStock
from firstcourse.quantities.count import Quantities
from firstcourse.quantities.items import LARGE_TILE_MORTAR, TILE_MORTAR, tiles_of
from firstcourse.quantities.lines import by_mass, line, square_text
from firstcourse.quantities.tile_cuts import cuts_working
from firstcourse.quantities.tile_edges import spacers, trim, trim_finding
from firstcourse.quantities.tile_joints import grout, sealant
from firstcourse.quantities.tiled_parts import TiledPart, tiled_parts, to_set
from firstcourse.rules import RuleSet
from firstcourse.tiling.setting import shown_edges
from firstcourse.units import TICKS_PER_MM, Tape, counted, one_or_more
from firstcourse.workings import Working

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
        tape: Tape of the job; running lengths and masses are in its units.
        wet: Whether the rooms get wet, which decides contact and back-buttering.

    Raises:
        KeyError: A tile or an area names a tile that is not given.
    """
    parts = tuple(tiled_parts(surfaces, tile_stock, rules, wet=wet))
    lines = [
        *_tiles(surfaces, tile_stock, rules),
        *_mortar(parts, rules, tape),
        *grout(parts, rules, tape),
        *sealant(parts, surfaces, rules, tape),
        *trim(surfaces, rules, tape),
        *spacers(parts, rules),
    ]
    workings = {quantity.working: working for quantity, working in lines}
    for item in tile_stock:
        cut = [tile for tile in to_set(surfaces) if tile.stock == item.id and not tile.whole]
        if cut:
            workings[f"cuts {item.id}"] = cuts_working(item, cut, tape)
    return Quantities(
        quantities=tuple(quantity for quantity, _ in lines),
        workings=workings,
        findings=tuple(trim_finding(surface, parts, tape) for surface in surfaces if shown_edges(surface)),
    )


def _tiles(
    surfaces: Sequence[Surface], tile_stock: Sequence[TileStock], rules: RuleSet
) -> Iterator[tuple[Quantity, Working]]:
    loose = list(to_set(surfaces))
    for item in tile_stock:
        own = [tile for tile in loose if tile.stock == item.id]
        if not own:
            continue
        whole = sum(tile.whole for tile in own)
        sources = {tile.from_ for tile in own if not tile.whole}
        exact = whole + len(sources)
        spare = math.ceil(exact * rules.number("tile.spares"))
        per_sheet = item.sheet[0] * item.sheet[1] if item.sheet else 1
        per_pack = per_sheet * (item.per_box or 1)
        unit = "chips" if item.sheet else "tiles"
        plain = f"sheets of {per_sheet} chips" if item.sheet else "pieces"
        name = f"box of {item.per_box} {plain}" if item.per_box else one_or_more(1, plain)
        quantity, working = line(
            tiles_of(item.id),
            exact,
            unit,
            kind="box" if item.per_box else "sheet" if item.sheet else "piece",
            sheets=item.per_box if item.sheet else None,
            share=rules.number("tile.breakage"),
            pack=per_pack,
            pack_name=name,
            spare="breakage in handling and cutting",
            base=Working(
                title=f"Tiles of {item.id}",
                formula="tiles set whole + whole tiles that cut ones come from",
                values={
                    "set whole": str(whole),
                    "set cut": str(len(own) - whole),
                    "whole tiles cut": str(len(sources)),
                    **({"pieces on a sheet": str(per_sheet)} if item.sheet else {}),
                },
                result=str(exact),
                unit=unit,
                source="drawings",
                argument=(
                    "All boxes of one tile come from one lot; write its number down when they arrive.",
                    _thumb(own, item, rules),
                ),
            ),
        )
        broken = math.ceil(exact * rules.number("tile.breakage") - 1e-9)
        buy = math.ceil((exact + broken + spare) / per_pack)
        yield (
            quantity.model_copy(update={"buy": buy}),
            working.model_copy(
                update={
                    "values": {
                        **working.values,
                        "kept for repairs": f"{rules.number('tile.spares'):.0%} = {counted(spare, unit)}",
                        "packs to buy": str(buy),
                        "left over beyond that": counted(buy * per_pack - exact - broken - spare, unit),
                    }
                }
            ),
        )


def _thumb(own: Sequence[Tile], item: TileStock, rules: RuleSet) -> str:
    """What a rule of thumb would have bought, for comparison."""
    face = item.size[0] * item.size[1]
    if item.shape == "hexagon":
        face = round(item.size[0] ** 2 * math.sqrt(3) / 2)
    area = math.fsum(float(Polygon(tile.outline, tile.holes).area) for tile in own)
    straight, diagonal = (rules.number(f"tile.waste.{way}") for way in ("straight", "diagonal"))
    by_thumb = [math.ceil(area / face * (1 + share / 100)) for share in (straight, diagonal)]
    return (
        f"By a rule of thumb on the area it would be {by_thumb[0]} with {straight:g} % for a straight layout, "
        f"{by_thumb[1]} with {diagonal:g} % for a diagonal one."
    )


def _bed_text(part: TiledPart, tape: Tape) -> str:
    bed = part.bed
    back = (
        f" + {square_text(part.tile_m2, tape)} x {small_text(bed.back_buttered, tape)}"
        if bed.back_buttered
        else ""
    )
    width, depth, shape = bed.notch
    trowel = f"{small_text(width, tape)} x {small_text(depth, tape)} {shape} notch"
    return f"{square_text(part.field_m2, tape)} x {small_text(bed.combed, tape)}{back}; {trowel}"


def _mortar(parts: Sequence[TiledPart], rules: RuleSet, tape: Tape) -> Iterator[tuple[Quantity, Working]]:
    density, water = rules.number("bedding.mortar.density"), rules.number("bedding.mortar.water_share")
    bag_kg = rules.kilograms("bedding.mortar.bag")
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
            bag_kg,
            rules.number("bedding.mortar.waste"),
            tape,
            Working(
                title="Dry mortar for large and heavy tile" if large else "Dry mortar under tile",
                formula="(area x combed + tile faces x back-butter) x density x (1 - water share)",
                values={
                    **{f"{part.surface.id}, {part.stock[0].id}": _bed_text(part, tape) for part in own},
                    "combed": f"{combed * 1000:.2f} litres",
                    "back-butter": f"{buttered * 1000:.2f} litres",
                    "density": f"{density:g} kg/m3",
                    "water share": f"{water:g}",
                },
                result=mass_text(mass, tape).split()[0],
                unit=mass_text(mass, tape).split()[1],
                source=f"ridge geometry; density and water share: {rules.entry('bedding.mortar.density').source}",
                argument=(
                    "The ground's own unevenness is not in it; filling is counted where levels were taken.",
                ),
            ),
        )

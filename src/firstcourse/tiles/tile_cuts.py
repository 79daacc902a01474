"""Which whole tile each cut piece comes from."""

from collections.abc import Mapping, Sequence

from firstcourse.geometry import Point, Ring, as_ring, as_rings_alike, clockwise, counter_clockwise
from firstcourse.plan import Tile, TileStock
from firstcourse.rules import RuleSet
from firstcourse.tiles.model import XY, LaidTile
from firstcourse.tiles.sharing import share
from firstcourse.units import ticks_from_mm, to_mm
from firstcourse.values import length
from firstcourse.workings import Working


def cut_from(
    laid: Mapping[str, Sequence[LaidTile]], stock: Sequence[TileStock], rules: RuleSet
) -> tuple[dict[str, tuple[Tile, ...]], tuple[Working, ...]]:
    """Every surface's tiles with the whole tile each cut comes from; all surfaces of the job share tiles.

    Args:
        laid: The tiles of each surface, by its id.
        stock: The tiles of the job.
        rules: For the saw's cut.
    """
    kerf_mm = to_mm(rules.ticks("tiling.kerf"))
    places: dict[tuple[str, int], tuple[str, list[Point]]] = {}
    workings: list[Working] = []
    for item in stock:
        cut = [
            (name, index, tile)
            for name, tiles in laid.items()
            for index, tile in enumerate(tiles)
            if tile.tile == item.id and not tile.whole
        ]
        shared = share(
            [tile for _, _, tile in cut],
            (to_mm(item.size[0]), to_mm(item.size[1])),
            kerf=kerf_mm,
            hexagon=item.shape == "hexagon",
            directional=item.directional,
        )
        for (surface_id, index, _), place in zip(cut, shared.places, strict=True):
            places[surface_id, index] = (f"{item.id} {place.source}", _ticks(place.outline))
        workings.append(
            Working(
                formula="tiles-cut",
                at=(f"tile_stock/{item.id}",),
                inputs={
                    "pieces": len(cut),
                    "kerf": length(rules.ticks("tiling.kerf")),
                    "fewest": shared.lower_bound,
                },
                result=shared.sources,
                rule="tiling.kerf",
            )
        )
    return {name: _placed(name, tiles, places) for name, tiles in laid.items()}, tuple(workings)


def as_laid(laid: Mapping[str, Sequence[LaidTile]]) -> dict[str, tuple[Tile, ...]]:
    """Every surface's tiles where they lie, without what each is cut from."""
    return {name: _placed(name, tiles, {}) for name, tiles in laid.items()}


def _placed(
    surface_id: str, laid: Sequence[LaidTile], places: Mapping[tuple[str, int], tuple[str, list[Point]]]
) -> tuple[Tile, ...]:
    tiles = []
    for index, tile in enumerate(laid):
        source, cut = places.get((surface_id, index), ("", []))
        outline = _ticks(list(tile.shape.exterior.coords)[:-1])
        # A piece has the same corners where it lies and where it is cut, however each is rounded.
        rings = [counter_clockwise(ring) for ring in as_rings_alike(*([outline, cut] if cut else [outline]))]
        tiles.append(
            Tile(
                id=f"{surface_id}/tile {index + 1}",
                outline=rings[0],
                holes=tuple(clockwise(_ring(list(hole.coords)[:-1])) for hole in tile.shape.interiors),
                whole=tile.whole,
                from_=source,
                stock=tile.tile,
                laid=() if tile.whole else counter_clockwise(_ring(tile.laid)),
                cut=rings[1] if cut else (),
            )
        )
    return tuple(tiles)


def _ticks(points: Sequence[XY]) -> list[Point]:
    return [(ticks_from_mm(x), ticks_from_mm(y)) for x, y in points]


def _ring(points: Sequence[XY]) -> Ring:
    return as_ring(_ticks(points))

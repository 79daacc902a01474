"""Tiles inside their surface without overlap, and cut tiles that fit the tile they are cut from."""

from collections.abc import Iterator

from shapely import Polygon, STRtree

from firstcourse.geometry import bounds
from firstcourse.verify.coverage import opening_shape
from firstcourse.verify.structure import Document, Surface, Tile
from firstcourse.verify.verdict import Objection

_NOISE = 200.0


def check_tiles(plan: Document) -> Iterator[Objection]:
    """Object to tiles out of place and to cut tiles that no whole tile yields."""
    for surface in plan.surfaces:
        yield from _placed(surface)
        yield from _cut(surface)


def _shape(tile: Tile) -> Polygon:
    return Polygon(tile.outline, tile.holes)


def _placed(surface: Surface) -> Iterator[Objection]:
    outline = Polygon(surface.outline)
    shapes = [_shape(tile) for tile in surface.tiles]
    for tile, shape in zip(surface.tiles, shapes, strict=True):
        if not shape.is_valid or shape.difference(outline).area > _NOISE:
            yield Objection("VER-701", tile.id, "reaches out of its surface")
        for opening in surface.openings:
            if shape.intersection(opening_shape(opening)).area > _NOISE:
                yield Objection("VER-701", tile.id, f"covers opening {opening.id}")
    tree = STRtree(shapes)
    for index, shape in enumerate(shapes):
        for other in sorted(tree.query(shape, predicate="intersects").tolist()):
            if other > index and shape.intersection(shapes[other]).area > _NOISE:
                yield Objection("VER-702", f"{surface.tiles[index].id} and {surface.tiles[other].id}", "overlap")


def _cut(surface: Surface) -> Iterator[Objection]:
    whole = [tile for tile in surface.tiles if tile.whole]
    if not whole:
        return
    area = max(_shape(tile).area for tile in whole)
    sizes = [_size(tile) for tile in whole]
    most = (max(size[0] for size in sizes), max(size[1] for size in sizes))
    used: dict[str, float] = {}
    for tile in surface.tiles:
        size = _size(tile)
        if not tile.whole and (size[0] > most[0] or size[1] > most[1]):
            yield Objection("VER-703", tile.id, "is larger than a whole tile")
        if not tile.whole and tile.source:
            used[tile.source] = used.get(tile.source, 0.0) + _shape(tile).area
    for source in sorted(used):
        if used[source] > area + _NOISE:
            yield Objection("VER-703", source, "more is cut from this tile than it has")


def _size(tile: Tile) -> tuple[int, int]:
    left, lower, right, upper = bounds(tile.outline)
    low, high = sorted((right - left, upper - lower))
    return low, high

"""Tiles inside their surface with their joints kept, no ground left bare, and cut tiles that their tile yields."""

import math
from collections.abc import Iterator, Sequence

import numpy as np
import shapely
from shapely import LineString, Polygon, STRtree
from shapely.ops import unary_union

from firstcourse.geometry import Ring
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.build_up import met_within
from firstcourse.verify.coverage import opening_shape
from firstcourse.verify.structure import Document, Surface, Tile, TileStock
from firstcourse.verify.thin_pieces import SLACK, bare_ground, is_thin
from firstcourse.verify.verdict import Objection
from firstcourse.verify.wall_feet import is_floor

_NOISE = 200.0
_MARGIN_MM = 75
"""Farthest that tile may stop before a side: the boards, the bed and the tile of the surface that meets it."""


def check_tiles(plan: Document) -> Iterator[Objection]:
    """Object to tiles out of place and to bare ground, surface by surface."""
    for surface in plan.surfaces:
        shapes = [tile.shape for tile in surface.tiles]
        yield from _placed(surface, shapes)
        yield from _joints(surface, shapes)
        yield from _covered(surface, shapes, plan)
        yield from _in_their_area(surface, shapes)
        yield from _goes_round(surface)


def check_tiles_made(plan: Document) -> Iterator[Objection]:
    """Object to linings that are not tiled, and to cut tiles that no whole tile yields."""
    for surface in plan.surfaces:
        yield from _lined(surface, plan)
        for tile in surface.tiles:
            yield from _made(tile, plan)
    yield from _cut_from(plan)


def _placed(surface: Surface, shapes: list[Polygon]) -> Iterator[Objection]:
    room = Polygon(surface.outline).buffer(SLACK, join_style="mitre")
    shapely.prepare(room)
    openings = [(opening.id, opening_shape(opening)) for opening in surface.openings]
    inside = shapely.is_valid(shapes) & shapely.covers(room, shapes)
    for index in np.flatnonzero(~inside).tolist():
        yield Objection("VER-701", surface.tiles[index].id, "reaches out of its surface")
    openings += [(why, Polygon(ring)) for why, ring in surface.not_tiled]
    for name, opening in openings:
        shapely.prepare(opening)
        for index in np.flatnonzero(shapely.intersects(opening, shapes)).tolist():
            if shapes[index].buffer(-SLACK).intersection(opening).area > _NOISE:
                yield Objection("VER-701", surface.tiles[index].id, f"covers {name}, which stays open")


def _joints(surface: Surface, shapes: list[Polygon]) -> Iterator[Objection]:
    if not shapes:
        return
    joint = min((area.joint for area in surface.tiled), default=0)
    tree = STRtree(shapes)
    ones, others = tree.query(shapes, predicate="dwithin", distance=max(joint - SLACK, 0.0))
    for one, other in sorted(zip(ones.tolist(), others.tolist(), strict=True)):
        if one >= other:
            continue
        where = f"{surface.tiles[one].id} and {surface.tiles[other].id}"
        if shapes[one].intersection(shapes[other]).area > _NOISE:
            yield Objection("VER-702", where, "overlap")
        elif joint and not _parted(surface.tiles[one], surface.tiles[other]):
            yield Objection("VER-704", where, "lie nearer to each other than their joint")


def _parted(one: Tile, other: Tile) -> bool:
    """Whether both are what an opening leaves of one tile: its corner parts them as narrowly as it will."""
    return not one.whole and not other.whole and bool(one.laid) and one.laid == other.laid


def _covered(surface: Surface, shapes: list[Polygon], plan: Document) -> Iterator[Objection]:
    if not surface.tiled:
        if surface.tiles:
            yield Objection("VER-705", surface.id, "has tiles but no area that is to be tiled")
        return
    outline = Polygon(surface.outline)
    claimed = unary_union([area.shape for area in surface.tiled])
    if claimed.difference(outline.buffer(SLACK, join_style="mitre")).area > _NOISE:
        yield Objection("VER-705", surface.id, "is to be tiled beyond its outline")
    margin = met_within(surface, plan, _MARGIN_MM)
    open_ = [opening_shape(o) for o in surface.openings] + [Polygon(ring) for _, ring in surface.not_tiled]
    ground = outline.difference(unary_union([shape.buffer(margin) for shape in open_]))
    if ground.difference(claimed.buffer(margin)).area > _NOISE:
        yield Objection("VER-705", surface.id, "is not tiled everywhere")
    for part in bare_ground(surface, shapes):
        if not is_thin(part, surface, plan):
            yield Objection("VER-705", surface.id, f"has bare ground near {_spot(part)}")


def _in_their_area(surface: Surface, shapes: list[Polygon]) -> Iterator[Objection]:
    """Each tile lies in an area that its kind belongs to."""
    if len(surface.tiled) < 2 or not shapes:
        return
    spots = [shape.representative_point() for shape in shapes]
    tree = STRtree(spots)
    allowed: dict[int, set[str]] = {}
    for area in surface.tiled:
        for index in tree.query(area.shape, predicate="intersects").tolist():
            allowed.setdefault(index, set()).update(area.tiles)
    for index, tile in enumerate(surface.tiles):
        if not tile.fixed and tile.stock not in allowed.get(index, set()):
            yield Objection("VER-710", tile.id, f"is of '{tile.stock}', which is not laid there")


def _goes_round(surface: Surface) -> Iterator[Objection]:
    """A border is one ring round a field, without a gap but for openings and soft joints."""
    strips = [area for area in surface.tiled if area.role == "border"]
    if not strips:
        return
    reach = max(area.joint for area in strips) / 2 + SLACK
    across = [opening_shape(opening).buffer(2 * reach) for opening in surface.openings]
    across += [LineString(joint.line).buffer(joint.width / 2 + 2 * reach) for joint in surface.soft_joints]
    whole = unary_union([*(area.shape.buffer(reach, join_style="mitre") for area in strips), *across])
    fields = [area.shape for area in surface.tiled if area.role == "field"]
    rings = [Polygon(part.exterior) for part in shapely.get_parts(whole) if part.interiors]
    if not any(ring.covers(field) for ring in rings for field in fields):
        yield Objection("VER-712", surface.id, "has a border that does not go all the way round")


def _lined(surface: Surface, plan: Document) -> Iterator[Objection]:
    """What lines its niches, and what stands before it, is there and tiled."""
    tiled = {other.id for other in plan.surfaces if other.tiled}
    for name in surface.linings:
        if name not in tiled:
            yield Objection("VER-713", surface.id, f"is to be lined by {name}, which is not tiled")
    for why, _ in surface.not_tiled:
        if is_floor(surface, why):
            continue
        if not any(name.startswith(f"{why}/") for name in tiled):
            yield Objection("VER-713", surface.id, f"stays bare for {why}, which is not there")


def _made(tile: Tile, plan: Document) -> Iterator[Objection]:
    """A whole tile is as large as its stock; a cut one is a part of one, and says of which tile."""
    stock = plan.tile_stock.get(tile.stock)
    if stock is None:
        yield Objection("VER-706", tile.id, f"is of '{tile.stock}', which is not among the tiles")
        return
    uncut = tile.outline if tile.whole else tile.laid
    if not uncut or not _is_whole(uncut, stock):
        yield Objection("VER-706", tile.id, "is not as large as a whole tile where it is uncut")
    elif not tile.whole and not Polygon(uncut).buffer(SLACK, join_style="mitre").covers(Polygon(tile.outline)):
        yield Objection("VER-706", tile.id, "reaches out of the tile it is cut from where it lies")
    if tile.whole and tile.holes:
        yield Objection("VER-706", tile.id, "has a hole and counts as whole")
    if tile.fixed:
        return
    if tile.whole and tile.source:
        yield Objection("VER-706", tile.id, "is whole and yet cut from another")
    if not tile.whole and not (tile.source and tile.cut):
        yield Objection("VER-703", tile.id, "is cut, and no tile is named that it comes from")
    elif not tile.whole:
        turn = _turn(tile.outline, tile.cut)
        if turn is None:
            yield Objection("VER-703", tile.id, "is not what is cut for it")
        elif stock.directional and not _keeps_grain(tile, turn, stock):
            yield Objection("VER-703", tile.id, "is cut across the grain")


def _cut_from(plan: Document) -> Iterator[Objection]:
    siblings: dict[str, list[Tile]] = {}
    for surface in plan.surfaces:
        for tile in surface.tiles:
            if not tile.whole and tile.source and tile.cut and tile.stock in plan.tile_stock:
                siblings.setdefault(tile.source, []).append(tile)
    for source, tiles in sorted(siblings.items()):
        if len({tile.stock for tile in tiles}) > 1:
            yield Objection("VER-703", source, "is of two kinds at once")
            continue
        whole = blank(plan.tile_stock[tiles[0].stock]).buffer(SLACK, join_style="mitre")
        shapes = [Polygon(tile.cut) for tile in tiles]
        for tile, shape in zip(tiles, shapes, strict=True):
            if not whole.covers(shape):
                yield Objection("VER-703", tile.id, f"reaches out of {source} where it is cut")
        for index, shape in enumerate(shapes):
            for other in range(index + 1, len(shapes)):
                if shape.intersection(shapes[other]).area > _NOISE:
                    where = f"{tiles[index].id} and {tiles[other].id}"
                    yield Objection("VER-703", where, f"are cut from the same part of {source}")


def blank(stock: TileStock) -> Polygon:
    """A whole tile, its lower left corner at (0, 0) [ticks]."""
    return Polygon(_ring_of(stock))


def _ring_of(stock: TileStock) -> list[tuple[float, float]]:
    width, height = stock.size
    if stock.shape == "rectangle":
        return [(0, 0), (width, 0), (width, height), (0, height)]
    # Across flats lies level, across corners upright.
    return [
        (width / 2, 0),
        (width, height / 4),
        (width, height * 3 / 4),
        (width / 2, height),
        (0, height * 3 / 4),
        (0, height / 4),
    ]


def _vectors(ring: Sequence[tuple[float, float]]) -> list[complex]:
    ends = [*ring[1:], ring[0]]
    return [complex(b[0] - a[0], b[1] - a[1]) for a, b in zip(ring, ends, strict=True)]


def _is_whole(ring: Ring, stock: TileStock) -> bool:
    edges = _vectors(ring)
    if stock.shape == "rectangle":
        width, height = stock.size
        if len(edges) != 4:
            return False
        longer, shorter = max(width, height), min(width, height)
        first, second = abs(edges[0]), abs(edges[1])
        square = abs((edges[0].conjugate() * edges[1]).real) <= SLACK * (first + second)
        closed = abs(edges[0] + edges[2]) <= SLACK and abs(edges[1] + edges[3]) <= SLACK
        return (
            square and closed and abs(max(first, second) - longer) <= SLACK
            and abs(min(first, second) - shorter) <= SLACK
        )  # fmt: skip
    side = stock.size[0] / math.sqrt(3)
    return len(edges) == 6 and all(
        abs(abs(a) - side) <= SLACK and abs(b / a - complex(0.5, math.sqrt(3) / 2)) <= 4 * SLACK / side
        for a, b in zip(edges, edges[1:] + edges[:1], strict=True)
    )


def _turn(ring: Ring, cut: Ring) -> complex | None:
    """The turn that carries a ring onto the ring it is cut as; None where no turn does, mirrored or not alike."""
    here, there = _vectors(ring), _vectors(cut)
    if len(here) != len(there):
        return None
    longest = max(range(len(here)), key=lambda index: abs(here[index]))
    for shift in range(len(there)):
        moved = there[shift:] + there[:shift]
        if abs(abs(moved[longest]) - abs(here[longest])) > SLACK:
            continue
        turn = moved[longest] / here[longest]
        turn /= abs(turn)
        if all(abs(a * turn - b) <= 2 * SLACK for a, b in zip(here, moved, strict=True)):
            return turn
    return None


def _keeps_grain(tile: Tile, turn: complex, stock: TileStock) -> bool:
    """Whether the tile as laid, turned with the piece, lies in its source the way the grain runs.

    The long side shows the way. Where all sides are alike it is the first, which is the same side in the tile as
    laid and in the tile that pieces are cut from.
    """
    width, height = stock.size
    laid, blank = _vectors(tile.laid), _vectors(_ring_of(stock))
    if stock.shape != "rectangle" or abs(width - height) <= SLACK:
        side, way = laid[0], blank[0]
    else:
        side, way = max(laid, key=abs), max(blank, key=abs)
    axis = side * turn * way.conjugate() / abs(way)
    # The turn is known from the piece's own sides: rounding their ends turns a small piece by more.
    reach = max(1.0, abs(axis) / max(abs(side) for side in _vectors(tile.outline)))
    return abs(axis.imag) <= 4 * SLACK * reach


def _spot(part: shapely.Geometry) -> str:
    centre = shapely.point_on_surface(part)
    return f"{centre.x / TICKS_PER_MM:.0f}, {centre.y / TICKS_PER_MM:.0f} mm"

"""Cut tiles, kind by kind: how many, where they go, and each drawn with its sizes."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import shapely
from shapely import Polygon

from firstcourse.drawings.chains import add_chain
from firstcourse.drawings.model import XY, Drawing, Line, Poly, Text
from firstcourse.drawings.on_paper import LABEL_MM, titled
from firstcourse.drawings.pieces import corners_to_mark
from firstcourse.drawings.placing import Placer
from firstcourse.geometry import Point, Ring, bounds, sides
from firstcourse.plan import CutPlaces, Place, Plan, Surface, Tile, TileStock, size_as_laid
from firstcourse.units import TICKS_PER_MM, format_length
from firstcourse.words import speaker_for

_SCALES = {"inch": (2, 3, 4, 6, 8, 12, 16, 24, 32, 48), "mm": (2, 5, 10, 20, 50)}
_ROUND_SIDE = 9 * TICKS_PER_MM
"""Sides shorter than this in a row stand for a curve [ticks]."""
_ROUND_FROM = 8
"""A hole of this many sides or more stands for a circle."""
_ASIDE_MM = 16.0
"""Room beside and above a piece for the sizes of its holes [mm]."""
_ON_EDGE = TICKS_PER_MM // 4
"""An edge this near to the tile's own is uncut [ticks]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutKind:
    """One line of the cut list: tiles of one shape, or those cut to fit at one place.

    Attributes:
        count: How many there are.
        places: Where they go, with the number there.
        tiles: All of them.
        least: Least width and height of any of them, as they lie [ticks].
        most: Greatest width and height [ticks].
    """

    mark: str
    count: int
    places: tuple[tuple[Place, int], ...]
    tiles: tuple[Tile, ...]
    least: tuple[int, int]
    most: tuple[int, int]

    @property
    def tile(self) -> Tile:
        """One of them."""
        return self.tiles[0]

    @property
    def is_fit(self) -> bool:
        """Cut straight to fit where they go, so that none is drawn."""
        return self.tile.fit

    @property
    def size(self) -> tuple[int, int]:
        """Width and height of the piece as it lies in its tile [ticks]."""
        x0, y0, x1, y1 = bounds(self.tile.cut or self.tile.outline)
        return x1 - x0, y1 - y0


def cut_kinds(surface: Surface, *, without: Mapping[str, TileStock]) -> tuple[CutKind, ...]:
    """The cut tiles of a surface by their marks.

    Args:
        surface: With its tiles.
        without: Tiles that are left out, by id: chips of mosaic are cut on their sheets.
    """
    found: dict[tuple[str, str], list[Tile]] = {}
    for tile in surface.tiles:
        if tile.mark and tile.stock not in without:
            # Marks tell outlines apart; of two alike, one may have a hole.
            found.setdefault((tile.mark, tile.id if tile.holes else ""), []).append(tile)
    places = CutPlaces(surface)
    return tuple(_kind(mark, tiles, places) for (mark, _), tiles in found.items())


def _kind(mark: str, tiles: Sequence[Tile], places: CutPlaces) -> CutKind:
    sizes = [size_as_laid(tile) for tile in tiles]
    return CutKind(
        mark=mark,
        count=len(tiles),
        places=places.counted(tiles),
        tiles=tuple(tiles),
        least=(min(width for width, _ in sizes), min(height for _, height in sizes)),
        most=(max(width for width, _ in sizes), max(height for _, height in sizes)),
    )


def chip_places(surface: Surface, mosaics: Mapping[str, TileStock]) -> tuple[tuple[Place, int], ...]:
    """Where chips of mosaic are cut, and how many there."""
    return CutPlaces(surface).counted(tile for tile in surface.tiles if tile.stock in mosaics and not tile.whole)


def cut_scale(plan: Plan, kinds: Sequence[CutKind], *, room: XY = (26.0, 28.0)) -> int:
    """The largest usual scale at which all of a surface's cut tiles fit.

    Args:
        plan: For the tape of the job.
        kinds: What is drawn beside each other.
        room: Width and height on paper of each, without its figures [mm].
    """
    scales = _SCALES[plan.job.tape.value]
    widest = max((kind.size[0] for kind in kinds), default=0) / TICKS_PER_MM
    highest = max((kind.size[1] for kind in kinds), default=0) / TICKS_PER_MM
    return next((one for one in scales if widest / one <= room[0] and highest / one <= room[1]), scales[-1])


def draw_cut(plan: Plan, kind: CutKind, scale: int) -> Drawing:
    """Draw a cut tile face up, with running figures from its lower left corner.

    Heavy edges are the tile's own, thin ones are cut.

    Args:
        plan: For the tape of the job and the size of the tile.
        kind: What to draw.
        scale: As `cut_scale` gives it.
    """
    ring, holes = _piece(kind.tile)
    per = TICKS_PER_MM * scale
    speaker = speaker_for(plan)
    drawing = titled(speaker, speaker.text("drawings-title", "cut", name=kind.mark), scale)
    drawing.polys.append(Poly("cut", _paper(ring, per), kind.mark))
    drawing.lines += [
        Line("board", (a[0] / per, a[1] / per), (b[0] / per, b[1] / per)) for a, b in _uncut(plan, kind)
    ]
    drawing.polys += [Poly("cut", _paper(hole, per), kind.mark) for hole in holes]
    across, up = {0}, {0}
    labels = []
    for one in (ring, *holes):
        left, lower, right, upper = bounds(one)
        if one in holes and len(one) >= _ROUND_FROM:
            marked = {((left + right) // 2, (lower + upper) // 2)}
            size = format_length(right - left, plan.job.tape, feet=False)
            labels.append(
                Text(
                    ((left + right) / 2 / per, (lower + upper) / 2 / per),
                    f"ø {size}",
                    LABEL_MM,
                )
            )
        else:
            marked = corners_to_mark(one, _ROUND_SIDE)
        across |= {x for x, _ in marked}
        up |= {y for _, y in marked}
    for along, marks in enumerate((across, up)):
        kept: dict[str, int] = {}
        for mark in sorted(marks):
            kept.setdefault(format_length(mark, plan.job.tape, feet=False), mark)
        add_chain(drawing, [(mark / per, figure) for figure, mark in kept.items()], along=along)
    box = drawing.box
    placer = Placer(drawing, (box[0], box[1], box[2] + _ASIDE_MM, box[3] + _ASIDE_MM))
    for label in labels:
        placer.put(label, reach=4.0, aside=True)
    return drawing


def _piece(tile: Tile) -> tuple[Ring, tuple[Ring, ...]]:
    """Outline and holes as the piece lies in the tile it is cut from, its lower left corner at (0, 0)."""
    cut = tile.cut or tile.outline
    left, lower, _, _ = bounds(cut)
    (ax, ay), (bx, by) = tile.outline[:2]
    (cx, cy), (dx, dy) = cut[:2]
    turn = math.atan2(dy - cy, dx - cx) - math.atan2(by - ay, bx - ax)
    cosine, sine = math.cos(turn), math.sin(turn)

    def moved(point: Point) -> Point:
        x, y = point[0] - ax, point[1] - ay
        return round(cosine * x - sine * y) + cx - left, round(sine * x + cosine * y) + cy - lower

    ring = tuple((x - left, y - lower) for x, y in cut)
    return ring, tuple(tuple(moved(point) for point in hole) for hole in tile.holes)


def _paper(ring: Ring, per: float) -> tuple[XY, ...]:
    return tuple((x / per, y / per) for x, y in ring)


def _uncut(plan: Plan, kind: CutKind) -> Iterator[tuple[Point, Point]]:
    """Edges of the piece that lie on edges of its tile."""
    stock = next((one for one in plan.tile_stock if one.id == kind.tile.stock), None)
    cut = kind.tile.cut
    if stock is None or not cut:
        return
    left, lower, _, _ = bounds(cut)
    edge = Polygon(_tile_ring(stock)).exterior
    for a, b in sides(cut):
        if edge.distance(shapely.Point(a)) <= _ON_EDGE and edge.distance(shapely.Point(b)) <= _ON_EDGE:
            middle = shapely.Point((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
            if edge.distance(middle) <= _ON_EDGE:
                yield (a[0] - left, a[1] - lower), (b[0] - left, b[1] - lower)


def _tile_ring(stock: TileStock) -> Ring:
    width, height = stock.size
    if stock.shape == "hexagon":
        low, high = height // 4, height - height // 4
        return (width // 2, 0), (width, low), (width, high), (width // 2, height), (0, high), (0, low)
    return (0, 0), (width, 0), (width, height), (0, height)

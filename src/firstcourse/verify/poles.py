"""Story poles: every mark is a drawn tile, opening or line, and its distance is what the stick must show."""

import math
from collections.abc import Iterator
from itertools import pairwise

from firstcourse.geometry import bounds, sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.mark_fields import Line, Mark
from firstcourse.verify.mark_rows import ONE_PENCIL, rows
from firstcourse.verify.structure import Document, Surface, Tile
from firstcourse.verify.verdict import Objection

_ROUNDED = 2
_NAMES = {"wall": ("level", "plumb")}
_EDGES = (("left", "right"), ("low", "high"))

_STEADY = ("stacked", "running", "hexagon")
_WHOLE = 0.1
"""A row this share of a step off another stands between two of a count."""

type _Shown = tuple[int, bool, str, int]
"""What a pole must show: the place on the surface, whether it is cut, of which tile, every how manyth row."""


def check_poles(plan: Document) -> Iterator[Objection]:
    """Object to marks of poles that are not drawn so, and to marks and poles left out."""
    sticks: dict[str, list[tuple[Surface, int, list[Mark]]]] = {}
    for surface in plan.surfaces:
        poles = [mark for mark in surface.marks if mark.kind == "pole"]
        upright, level = _lines(surface)
        due = upright is not None and level is not None and all(_square(tile) for tile in surface.tiles)
        for axis, run, control in ((1, upright, level), (0, level, upright)):
            mine = [mark for mark in poles if mark.line[0][axis] == mark.line[1][axis]]
            names = {mark.start for mark in mine}
            if len(names) != (1 if due else 0):
                yield Objection("VER-720", surface.id, "has marks of several poles or of none")
            elif run is not None and control is not None and due:
                sticks.setdefault(names.pop(), []).append((surface, axis, mine))
                for found in _shown(surface, axis, (run, control), mine, plan):
                    yield Objection("VER-720", surface.id, found)
        if any(mark.line[0][0] != mark.line[1][0] and mark.line[0][1] != mark.line[1][1] for mark in poles):
            yield Objection("VER-720", surface.id, "has a mark of a pole that slants")
    for number, (name, surfaces) in enumerate(sorted(sticks.items(), key=lambda item: (len(item[0]), item[0])), 1):
        if name != f"pole/{number}":
            yield Objection("VER-720", name, "is no pole of this plan")
        yield from _one_stick(name, surfaces)


def _one_stick(name: str, surfaces: list[tuple[Surface, int, list[Mark]]]) -> Iterator[Objection]:
    """One stick serves all its surfaces: it is held to one line, lies one way, and ends at its lowest mark."""
    held = set()
    for surface, axis, marks in surfaces:
        control = f"{surface.id}/line/{_names(surface)[1 - axis]}"
        held |= {(axis, mark.distance) for mark in marks if mark.to == control}
    if len(held) != 1:
        yield Objection("VER-720", name, "is to be held to its line at more than one mark")
    if min(mark.distance for _, _, marks in surfaces for mark in marks) != 0:
        yield Objection("VER-720", name, "does not end at its lowest mark")


def _shown(
    surface: Surface, axis: int, lines: tuple[Line, Line], marks: list[Mark], plan: Document
) -> Iterator[str]:
    wanted = dict(_wanted(surface, axis, lines, plan))
    seen: set[str] = set()
    box = bounds(surface.outline)
    offs = set()
    for mark in marks:
        key = mark.to
        if key not in wanted:
            # Of a row any tile may stand for it that begins where the row does.
            key = next((name for name in wanted if _same_row(name, mark.to, surface, axis, wanted[name][0])), "")
        at, cut, stock, every = wanted.get(key, (0, False, "", 1))
        if not key or key in seen:
            yield f"has a mark on its pole that stands for nothing: {mark.to}"
            continue
        seen.add(key)
        across = ((box[0], at), (box[2], at)) if axis else ((at, box[1]), (at, box[3]))
        if any(
            abs(p - q) > _ROUNDED
            for a, b in zip(mark.line, across, strict=True)
            for p, q in zip(a, b, strict=True)
        ):
            yield f"has a mark on its pole that is drawn elsewhere: {mark.to}"
        if (mark.cut, mark.stock, mark.every) != (cut, stock, every):
            yield f"has a mark on its pole that tells of other tile: {mark.to}"
        offs.add(mark.line[0][axis] - mark.distance)
    if max(offs, default=0) - min(offs, default=0) > _ROUNDED:
        yield "has a pole whose distances are not those of its tiles"
    if len(seen) != len(wanted):
        yield "has a pole on which a mark is left out"


def _same_row(name: str, other: str, surface: Surface, axis: int, at: int) -> bool:
    """Whether a tile's edge is the one that another tile's edge is wanted for."""
    tile, _, edge = other.rpartition("/")
    if name.rpartition("/")[2] != edge or edge not in _EDGES[axis]:
        return False
    side = axis + 2 * _EDGES[axis].index(edge)
    tiles = {one.id: one for one in surface.tiles}
    return tile in tiles and name.rpartition("/")[0] in tiles and bounds(tiles[tile].outline)[side] == at


def _wanted(surface: Surface, axis: int, lines: tuple[Line, Line], plan: Document) -> Iterator[tuple[str, _Shown]]:
    run, control = lines
    low, high = run[0][axis], run[1][axis]
    own, other = _names(surface)[axis], _names(surface)[1 - axis]
    yield f"{surface.id}/line/{own}/start", (low, False, "", 1)
    yield f"{surface.id}/line/{own}/end", (high, False, "", 1)
    yield f"{surface.id}/line/{other}", (control[0][axis], False, "", 1)
    tiles = list(_tiles(surface, axis, run, plan))
    if axis and _in_courses(surface):
        ends = [shown[0] for _, shown in tiles]
        low, high = min([low, *ends]), max([high, *ends])
    for name, shown in (*tiles, *_openings(surface, axis)):
        if low <= shown[0] <= high:
            yield name, shown


def _tiles(surface: Surface, axis: int, run: Line, plan: Document) -> Iterator[tuple[str, _Shown]]:
    near, far = _EDGES[axis]
    found = rows(_passed(surface, axis, run), axis)
    kinds = {tile.stock for tile in surface.tiles}
    before: int | None = None
    every, marked = _marked(surface, axis, [row.laid for row in found], plan)
    for row, is_marked in zip(found, marked, strict=True):
        if not is_marked or (before is not None and abs(row.at - before) <= ONE_PENCIL):
            continue
        before = row.at
        first = next(tile for tile in row.tiles if bounds(tile.outline)[axis] == row.at)
        stock = " and ".join(sorted({tile.stock for tile in row.tiles})) if len(kinds) > 1 else ""
        yield f"{first.id}/{near}", (row.at, all(_cut(tile, axis) for tile in row.tiles), stock, every)
    tiles = [tile for row in found for tile in row.tiles]
    if tiles:
        last = max(tiles, key=lambda tile: bounds(tile.outline)[axis + 2])
        end = bounds(last.outline)[axis + 2]
        ends = [tile for tile in tiles if bounds(tile.outline)[axis + 2] == end]
        yield f"{last.id}/{far}", (end, not any(tile.whole for tile in ends), "", every)


def _passed(surface: Surface, axis: int, run: Line) -> list[Tile]:
    """Tiles along a run; up a wall in courses all of them."""
    if axis and _in_courses(surface):
        return list(surface.tiles)
    boxes = [(bounds(tile.laid or tile.outline), tile) for tile in surface.tiles]
    at, joint = run[0][1 - axis], surface.tiled[0].joint
    return [tile for box, tile in boxes if box[1 - axis] - joint <= at < box[3 - axis] - ONE_PENCIL]


def _in_courses(surface: Surface) -> bool:
    """Whether the tiles of a wall lie in courses from end to end."""
    spans = sorted((box[1], box[3]) for box in (bounds(tile.laid or tile.outline) for tile in surface.tiles))
    return surface.kind == "wall" and all(
        b[0] <= a[0] + ONE_PENCIL or b[0] >= a[1] - ONE_PENCIL for a, b in pairwise(spans)
    )


def _marked(surface: Surface, axis: int, laid: list[int], plan: Document) -> tuple[int, list[bool]]:
    """Every how manyth row is marked, and of each row whether it is."""
    area = surface.tiled[0]
    stock = plan.tile_stock.get(area.tiles[0]) if len(area.tiles) == 1 and len(surface.tiled) == 1 else None
    if stock is None or area.pattern not in _STEADY or area.angle or len(area.steps) != 2 or not laid:
        return 1, [True] * len(laid)
    step = abs(area.steps[1][1] if axis else area.steps[0][0]) * TICKS_PER_MM
    if stock.sheet is not None:
        every = stock.sheet[axis]
    elif max(stock.size) <= plan.rules.ticks("tile.trowel.mosaic_side"):
        every = math.ceil(plan.rules.ticks("tiling.pole.least_step") / step - 1e-6)
    else:
        every = 1
    turns = [(low - area.origin[axis]) / step for low in laid]
    if not any(_is_whole(turn) for turn in turns):
        turns = [turn - turns[0] % 1 for turn in turns]
    chosen = [every == 1 or (_is_whole(turn) and round(turn) % every == 0) for turn in turns]
    return every, [True, *chosen[1:]]


def _is_whole(turn: float) -> bool:
    return abs(turn - round(turn)) < _WHOLE


def _openings(surface: Surface, axis: int) -> Iterator[tuple[str, _Shown]]:
    for opening in surface.openings:
        base = f"{surface.id}/opening/{opening.id}"
        if opening.outline is None:
            yield f"{base}/centre", (opening.centre[axis], False, "", 1)
            continue
        for edge, side in zip(_EDGES[axis], (axis, axis + 2), strict=True):
            yield f"{base}/{edge}", (bounds(opening.outline)[side], False, "", 1)


def _cut(tile: Tile, axis: int) -> bool:
    if tile.whole:
        return False
    uncut, left = bounds(tile.laid or tile.outline), bounds(tile.outline)
    return left[axis] - uncut[axis] > ONE_PENCIL or uncut[axis + 2] - left[axis + 2] > ONE_PENCIL


def _square(tile: Tile) -> bool:
    """Whether a side of a tile lies along an axis."""
    ring = tile.laid or tile.outline
    return any(min(abs(a[0] - b[0]), abs(a[1] - b[1])) <= ONE_PENCIL for a, b in sides(ring))


def _lines(surface: Surface) -> tuple[Line | None, Line | None]:
    """The upright and the level one of the lines to snap."""
    lines = [mark.line for mark in surface.marks if mark.kind in ("first_course", "plumb", "snap")]
    upright = next((line for line in lines if line[0][0] == line[1][0]), None)
    return upright, next((line for line in lines if line[0][1] == line[1][1]), None)


def _names(surface: Surface) -> tuple[str, str]:
    """What the level and the upright line of a surface are called."""
    return _NAMES.get(surface.kind, ("second", "first"))

"""The repeat of each pattern, with real tiles and real joints.

A pattern is built of modules: a piece and the joint to its right and above. Modules that fill the plane without
gap or overlap give joints of one width everywhere, and that is what every repeat here is checked or built to do.
"""

import math
from collections.abc import Sequence
from fractions import Fraction
from itertools import product
from typing import Protocol

import numpy as np

from firstcourse.errors import InputValueError
from firstcourse.job import Angle, Pattern, TileRepeat
from firstcourse.tiles.model import XY, CellPiece, RepeatCell
from firstcourse.units import TICKS_PER_INCH, TICKS_PER_MM, to_mm

COURSED = ("stacked", "running")
"""Patterns of level courses."""
EVEN_MM = 0.05
"""Joints that differ by less than this are taken as even: a tile's edge cannot be measured more finely [mm]."""

Rect = tuple[str, float, float, float, float]


class TileSize(Protocol):
    """What a pattern must know of a tile; the job's and the plan's tiles both tell it."""

    @property
    def id(self) -> str:
        """The tile's name."""

    @property
    def size(self) -> tuple[int, int]:
        """Measured width and height; of a hexagon across flats and across corners [ticks]."""

    @property
    def shape(self) -> str:
        """`rectangle` or `hexagon`."""


def repeat_cell(
    pattern: Pattern,
    tiles: Sequence[TileSize],
    joint_mm: float,
    *,
    offset: Fraction = Fraction(1, 2),
    angle: Angle = 0,
    repeat: TileRepeat | None = None,
) -> RepeatCell:
    """What repeats in a pattern, and the two steps that carry it over the plane.

    At angle 0 all pieces lie level and upright but for `diagonal`, which is `stacked` turned by 45 degrees; the
    points of a herringbone run along the room at angle 45. A mosaic is laid as its chips: its sheet is bought, not
    drawn. The origin is the lower left corner of the first piece, its lowest corner where the pattern is askew.

    Args:
        pattern: Name of the pattern.
        tiles: The tile, or for a repeat of the user's own all its tiles.
        joint_mm: Width of the joints [mm].
        offset: Running bond: shift of each course over the last, as a share of the module.
        angle: The whole pattern turned to the left [degrees].
        repeat: The user's own repeat, for the pattern of that name.

    Raises:
        InputValueError: No such pattern can be made of the tile with even joints; says what would do.
    """
    if not 0 <= joint_mm < math.inf:
        raise InputValueError(f"a joint must be 0 or more: {joint_mm} mm")
    if pattern == "repeat":
        if repeat is None:
            raise InputValueError("pattern: repeat needs the repeat it is made of")
        return _turned(_own(repeat, tiles, joint_mm), angle)
    if len(tiles) != 1:
        raise InputValueError(f"pattern: {pattern} is made of one tile, not of {len(tiles)}")
    tile = tiles[0]
    if (tile.shape == "hexagon") != (pattern == "hexagon"):
        raise InputValueError(f"tile '{tile.id}' is a {tile.shape}, which pattern: {pattern} cannot be made of")
    if pattern == "stacked":
        return _turned(_courses(tile, joint_mm, Fraction(0)), angle)
    if pattern == "diagonal":
        return _turned(_courses(tile, joint_mm, Fraction(0)), angle + 45)
    if pattern == "running":
        return _turned(_courses(tile, joint_mm, offset), angle)
    if pattern == "herringbone":
        return _turned(_herringbone(tile, joint_mm, 1), angle)
    if pattern == "double_herringbone":
        return _turned(_herringbone(tile, joint_mm, 2), angle)
    if pattern == "basket_weave":
        return _turned(_basket(tile, joint_mm), angle)
    return _turned(_hexagon(tile, joint_mm), angle)


def _size(tile: TileSize) -> XY:
    return to_mm(tile.size[0]), to_mm(tile.size[1])


def _cell(step_a: XY, step_b: XY, rects: Sequence[Rect], joint: float) -> RepeatCell:
    pieces = tuple(
        CellPiece(tile=tile, ring=((x, y), (x + width, y), (x + width, y + height), (x, y + height)))
        for tile, x, y, width, height in rects
    )
    return RepeatCell(step_a=step_a, step_b=step_b, pieces=pieces, joint=joint)


def _courses(tile: TileSize, joint: float, offset: Fraction) -> RepeatCell:
    """Level courses, each shifted over the last by a share of the module.

    One piece is enough whatever the share: after as many courses as its denominator says they stand above each
    other again, two for 1/2, three for 1/3, five for 2/5.
    """
    width, height = _size(tile)
    shift = float((width + joint) * offset)
    return _cell((width + joint, 0.0), (shift, height + joint), [(tile.id, 0.0, 0.0, width, height)], joint)


def _herringbone(tile: TileSize, joint: float, num: int) -> RepeatCell:
    """Blocks of `num` pieces side by side, level ones and upright ones by turns.

    With modules of length A and blocks of height B, level blocks that each stand B further right and B higher make
    a stair, whose right edge is the left edge of a stair of upright blocks. The next stair of level blocks is the
    first one moved by (A, -A). This fills the plane for every A and B, so joints are even for every tile; where A
    is not a multiple of B the corners of the blocks do not meet, as with a tile twice as long as wide.
    """
    width, height = _size(tile)
    long, short = max(width, height), min(width, height)
    if long <= num * short + EVEN_MM:
        name = "herringbone" if num == 1 else "double herringbone"
        least = "longer than wide" if num == 1 else "more than twice as long as wide"
        raise InputValueError(
            f"a {name} needs a tile {least}; '{tile.id}' is {both_tapes(long)} x {both_tapes(short)}"
        )
    return _blocks(tile.id, long, short, joint, num)


def _blocks(tile: str, long: float, short: float, joint: float, num: int) -> RepeatCell:
    along, module = long + joint, short + joint
    across = num * module
    level = [(tile, 0.0, index * module, long, short) for index in range(num)]
    upright = [(tile, along + index * module, across - along, short, long) for index in range(num)]
    return _cell((across, across), (along, -along), [*level, *upright], joint)


def _basket(tile: TileSize, joint: float) -> RepeatCell:
    """Square blocks of level and of upright pieces by turns, like a chessboard."""
    width, height = _size(tile)
    long, short = max(width, height), min(width, height)
    num = round((long + joint) / (short + joint))
    if num < 2:
        raise InputValueError(
            f"a basket weave needs a tile at least twice as long as wide; '{tile.id}' is {both_tapes(long)} x "
            f"{both_tapes(short)}"
        )
    if abs(long + joint - num * (short + joint)) > EVEN_MM:
        fits = (long - num * short) / (num - 1)
        made = num * short + (num - 1) * joint
        instead = f"a joint of {fits:.3g} mm would do" if fits > EVEN_MM else "no joint would do"
        raise InputValueError(
            f"a basket weave needs a tile as long as {num} pieces with their joints between: '{tile.id}' is "
            f"{both_tapes(long)} long, {num} pieces with joints of {joint:.3g} mm make "
            f"{both_tapes(made)}; {instead}"
        )
    return _blocks(tile.id, long, short, joint, num)


def _hexagon(tile: TileSize, joint: float) -> RepeatCell:
    """Regular hexagons, points up and down, as wide across flats as measured."""
    flats = to_mm(tile.size[0])
    side = flats / math.sqrt(3)
    step = flats + joint
    ring = (
        (flats / 2, 0.0),
        (flats, side / 2),
        (flats, side * 3 / 2),
        (flats / 2, side * 2),
        (0.0, side * 3 / 2),
        (0.0, side / 2),
    )
    return RepeatCell(
        step_a=(step, 0.0),
        step_b=(step / 2, step * math.sqrt(3) / 2),
        pieces=(CellPiece(tile=tile.id, ring=ring),),
        joint=joint,
    )


def _own(repeat: TileRepeat, tiles: Sequence[TileSize], joint: float) -> RepeatCell:
    by_id = {tile.id: tile for tile in tiles}
    rects: list[Rect] = []
    for piece in repeat.pieces:
        tile = by_id.get(piece.tile)
        if tile is None:
            raise InputValueError(f"repeat '{repeat.id}' names tile '{piece.tile}', which is not given")
        if tile.shape != "rectangle":
            raise InputValueError(
                f"repeat '{repeat.id}': '{tile.id}' is a {tile.shape}; a repeat takes rectangles"
            )
        width, height = _size(tile)[::-1] if piece.turned else _size(tile)
        rects.append((tile.id, to_mm(piece.at[0]), to_mm(piece.at[1]), width, height))
    first = rects[0]
    rects = [(tile, x - first[1], y - first[2], width, height) for tile, x, y, width, height in rects]
    cell = _cell((to_mm(repeat.across), 0.0), (to_mm(repeat.shift), to_mm(repeat.up)), rects, joint)
    _refuse_uneven(repeat.id, cell, rects)
    return cell


def _refuse_uneven(name: str, cell: RepeatCell, rects: Sequence[Rect]) -> None:
    """Refuse a repeat whose modules overlap, or leave a part of the plane bare."""
    joint = cell.joint
    low = np.array([(x, y) for _tile, x, y, _width, _height in rects])
    size = np.array([(width + joint, height + joint) for _tile, _x, _y, width, height in rects])
    reach = _reach(cell, float(np.ptp(np.vstack((low, low + size)), axis=0).max()))
    for i, j in product(range(-reach, reach + 1), repeat=2):
        moved = low + i * np.array(cell.step_a) + j * np.array(cell.step_b)
        # Overlap of every module of the repeat with every module of the neighbour, axis by axis.
        over = np.minimum(low[:, None] + size[:, None], moved[None] + size[None])
        over -= np.maximum(low[:, None], moved[None])
        clash = (over > EVEN_MM).all(axis=2)
        if i == j == 0:
            np.fill_diagonal(clash, False)
        if clash.any():
            first, second = (int(index) + 1 for index in np.argwhere(clash)[0])
            raise InputValueError(
                f"repeat '{name}': pieces {first} and {second} come closer than the joint of {both_tapes(joint)} "
                "that is laid here"
            )
    filled = float(size.prod(axis=1).sum())
    whole = abs(_cross(cell.step_a, cell.step_b))
    # Each module may fall short by EVEN_MM on each side of it before the joints count as uneven.
    if filled < whole - 2 * EVEN_MM * float(size.sum()):
        raise InputValueError(
            f"repeat '{name}': its pieces with joints of {both_tapes(joint)} fill {100 * filled / whole:.1f} % "
            "of it; every gap must be one joint wide"
        )


def both_tapes(length_mm: float) -> str:
    """A length [mm] for either tape: a pattern does not know which the job is measured with."""
    return f"{length_mm:.5g} mm ({length_mm * TICKS_PER_MM / TICKS_PER_INCH:.4g} in)"


def _reach(cell: RepeatCell, extent: float) -> int:
    """How many steps away a copy of the repeat can still touch it."""
    a, b = cell.step_a, cell.step_b
    least = abs(_cross(a, b)) / max(math.hypot(*a), math.hypot(*b))
    return math.ceil(extent / least) + 1


def _cross(a: XY, b: XY) -> float:
    return a[0] * b[1] - a[1] * b[0]


def _turned(cell: RepeatCell, degrees: int) -> RepeatCell:
    """The repeat turned to the left about its origin, and its origin set anew on the first piece."""
    quarters, rest = divmod(degrees, 90)
    cos, sin = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))[quarters % 4]
    if rest:
        half = math.sqrt(0.5)
        cos, sin = (cos - sin) * half, (sin + cos) * half

    def turn(point: XY) -> XY:
        return point[0] * cos - point[1] * sin, point[0] * sin + point[1] * cos

    rings = [[turn(point) for point in piece.ring] for piece in cell.pieces]
    if rest:
        left, lower = min(rings[0], key=lambda point: (round(point[1], 6), point[0]))
    else:
        left, lower = min(x for x, _ in rings[0]), min(y for _, y in rings[0])
    pieces = tuple(
        CellPiece(tile=piece.tile, ring=tuple((x - left, y - lower) for x, y in ring))
        for piece, ring in zip(cell.pieces, rings, strict=True)
    )
    return RepeatCell(step_a=turn(cell.step_a), step_b=turn(cell.step_b), pieces=pieces, joint=cell.joint)

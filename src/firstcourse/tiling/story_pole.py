"""Story poles: courses, openings and ends as marks on a batten, one for each wall and run.

A pole stands on one end of the line that was snapped for its run; every mark has its distance from that end and
from the other line, which is the control: a foot may be out of level, a level line is not.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from firstcourse.geometry import bounds
from firstcourse.plan import Segment, SideKind, Surface, SurfaceKind, Tile
from firstcourse.units import TICKS_PER_MM

Kind = Literal["end", "tile", "opening", "control"]
_SAME = TICKS_PER_MM // 20
"""Edges closer together than this are one mark: no pencil parts them [ticks]."""
_ORDER: tuple[Kind, ...] = ("control", "tile", "opening", "end")
"""Order of marks at one place, but for the foot, which comes first."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PoleMark:
    """One mark.

    Attributes:
        at: Distance from the pole's foot [ticks].
        name: What is marked.
        kind: What sort of mark it is.
    """

    at: int
    name: str
    kind: Kind


@dataclass(frozen=True, slots=True, kw_only=True)
class StoryPole:
    """The marks of one run.

    Attributes:
        title: Wall or floor, and which way the pole lies.
        along: Axis of the surface it lies along.
        foot: What its foot stands on.
        control: Distance of the control line from its foot [ticks]; None where no line is square to the run.
        marks: From the foot up.
    """

    title: str
    along: Literal["u", "v"]
    foot: str
    control: int | None
    marks: tuple[PoleMark, ...]

    @property
    def length(self) -> int:
        """From its foot to its last mark [ticks]."""
        return max((mark.at for mark in self.marks), default=0)


def story_poles(surface: Surface) -> tuple[StoryPole, ...]:
    """The poles of a tiled surface: up and along a wall, along both lines of a floor.

    Args:
        surface: With its tiles, its lines to snap and its openings.

    Returns:
        None for a surface without tile, and for a floor whose pattern runs askew: there the lines are enough.
    """
    lines = [line.line for area in surface.tiled for line in area.lines]
    upright = next((line for line in lines if line[0][0] == line[1][0]), None)
    level = next((line for line in lines if line[0][1] == line[1][1]), None)
    if not surface.tiles or (surface.kind is not SurfaceKind.WALL and (upright is None or level is None)):
        return ()
    ways = ((1, upright, level), (0, level, upright))
    return tuple(_pole(surface, axis, run, control) for axis, run, control in ways)


def _pole(surface: Surface, axis: int, run: Segment | None, control: Segment | None) -> StoryPole:
    box = bounds(surface.outline)
    foot, end = (run[0][axis], run[1][axis]) if run is not None else (box[axis], box[axis + 2])
    foot_mark = PoleMark(at=0, name=_foot(surface, axis), kind="end")
    marks = [foot_mark]
    marks += [
        PoleMark(at=at - foot, name=name, kind=kind)
        for at, name, kind in (*_tiles(surface, axis, run), *_openings(surface, axis))
        if foot <= at <= end
    ]
    if control is not None:
        name = ("level line", "plumb line") if surface.kind is SurfaceKind.WALL else ("second line", "first line")
        marks.append(PoleMark(at=control[0][axis] - foot, name=name[1 - axis], kind="control"))
    marks.append(PoleMark(at=end - foot, name=_end(surface, axis), kind="end"))
    if surface.kind is SurfaceKind.WALL:
        way = "up" if axis else "along"
    else:
        way = "along the first line" if axis else "along the second line"
    return StoryPole(
        title=f"{surface.title or surface.id}, {way}",
        along="v" if axis else "u",
        foot=foot_mark.name,
        control=None if control is None else control[0][axis] - foot,
        marks=tuple(sorted(marks, key=lambda mark: (mark.at, mark is not foot_mark, _ORDER.index(mark.kind)))),
    )


def _tiles(surface: Surface, axis: int, run: Segment | None) -> list[tuple[int, str, Kind]]:
    """Lower or left edges of the tiles along a run, and the far edge of the last."""
    rows: dict[int, list[Tile]] = {}
    for tile in sorted(_along(surface, axis, run), key=lambda tile: bounds(tile.laid or tile.outline)[axis]):
        low = bounds(tile.laid or tile.outline)[axis]
        near = next((place for place in reversed(rows) if low - place <= _SAME), low)
        rows.setdefault(near, []).append(tile)
    if not rows:
        return []
    kinds = {tile.stock for tile in surface.tiles}
    step = "course" if axis == 1 and surface.kind is SurfaceKind.WALL else "tile"
    found: list[tuple[int, str, Kind]] = []
    for number, tiles in enumerate(rows.values(), start=1):
        at = min(bounds(tile.outline)[axis] for tile in tiles)
        words = [f"{step} {number}"]
        if len(kinds) > 1:
            words.append(" and ".join(sorted({tile.stock for tile in tiles})))
        if all(_is_cut(tile, axis) for tile in tiles):
            words.append("cut")
        found.append((at, ", ".join(words), "tile"))
    last = max(bounds(tile.outline)[axis + 2] for tiles in rows.values() for tile in tiles)
    return [*found, (last, f"end of {step} {len(rows)}", "tile")]


def _along(surface: Surface, axis: int, run: Segment | None) -> Sequence[Tile]:
    """Tiles that a run passes; up a wall all of them, since its courses run on beside a niche."""
    if run is None or (axis == 1 and surface.kind is SurfaceKind.WALL):
        return surface.tiles
    at, joint = run[0][1 - axis], surface.tiled[0].joint
    found = []
    for tile in surface.tiles:
        box = bounds(tile.laid or tile.outline)
        if box[1 - axis] - joint <= at < box[3 - axis] - _SAME:
            found.append(tile)
    return found


def _is_cut(tile: Tile, axis: int) -> bool:
    if tile.whole:
        return False
    laid, left = bounds(tile.laid or tile.outline), bounds(tile.outline)
    return left[axis] > laid[axis] + _SAME or left[axis + 2] < laid[axis + 2] - _SAME


def _openings(surface: Surface, axis: int) -> list[tuple[int, str, Kind]]:
    ends = ("lower edge", "upper edge") if axis else ("left edge", "right edge")
    found: list[tuple[int, str, Kind]] = []
    for opening in surface.openings:
        if opening.outline is not None:
            box = bounds(opening.outline)
            found += [(box[axis], f"{opening.id}, {ends[0]}", "opening")]
            found += [(box[axis + 2], f"{opening.id}, {ends[1]}", "opening")]
        elif opening.centre is not None:
            found.append((opening.centre[axis], f"{opening.id}, centre", "opening"))
    return found


def _foot(surface: Surface, axis: int) -> str:
    if surface.kind is not SurfaceKind.WALL:
        return "lower end of the first line" if axis else "left end of the second line"
    if axis:
        return next((side.label for side in surface.sides if side.kind is SideKind.FOOT and side.label), "foot")
    return "left end"


def _end(surface: Surface, axis: int) -> str:
    if surface.kind is not SurfaceKind.WALL:
        return "upper end of the first line" if axis else "right end of the second line"
    return "top of the boards" if axis else "right end"

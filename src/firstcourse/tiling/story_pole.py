"""Story poles: courses, openings and ends as marks on a batten, one for each wall and run.

A pole stands on one end of the line that was snapped for its run; every mark has its distance from that end and
from the other line, which is the control: a foot may be out of level, a level line is not. Walls whose courses lie
alike share one pole.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Literal

from firstcourse.geometry import bounds
from firstcourse.geometry.polygon import sides
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
        surfaces: Ids of the surfaces it serves; several where their courses lie alike.
        places: What they are called, in the same order.
        way: Which way the pole lies.
        along: Axis of the surface it lies along.
        foot: What its foot stands on.
        control: Distance of the control line from its foot [ticks]; None where no line is square to the run.
        marks: From the foot up.
    """

    surfaces: tuple[str, ...]
    places: tuple[str, ...]
    way: str
    along: Literal["u", "v"]
    foot: str
    control: int | None
    marks: tuple[PoleMark, ...]

    @property
    def title(self) -> str:
        """The surfaces it serves, and which way it lies."""
        return f"{_listed(self.places)}, {self.way}"

    @property
    def length(self) -> int:
        """From its foot to its last mark [ticks]."""
        return max((mark.at for mark in self.marks), default=0)


def story_poles(surface: Surface) -> tuple[StoryPole, ...]:
    """The poles of a tiled surface: up and along a wall, along both lines of a floor.

    Args:
        surface: With its tiles, its lines to snap and its openings.

    Returns:
        None for a surface without tile or without lines to snap, as within a niche, and where the pattern runs
        askew: there the lines are enough.
    """
    lines = [line.line for area in surface.tiled for line in area.lines]
    upright = next((line for line in lines if line[0][0] == line[1][0]), None)
    level = next((line for line in lines if line[0][1] == line[1][1]), None)
    if not lines or not all(_has_level_side(tile) for tile in surface.tiles):
        return ()
    if not surface.tiles or ((upright is None or level is None) and not _has_courses(surface)):
        return ()
    ways = ((1, upright, level), (0, level, upright))
    return tuple(_pole(surface, axis, run, control) for axis, run, control in ways)


def shared(poles: Iterable[StoryPole]) -> tuple[StoryPole, ...]:
    """Poles of which no two have the same courses: surfaces whose tiles lie alike are served by one.

    Marks that only one of its surfaces has, such as of an opening, bear its name. The control line, the foot and
    every edge of a tile are the same for all surfaces of a pole.

    Args:
        poles: In order; a shared pole stands where the first of its poles stood.
    """
    found: dict[tuple[object, ...], list[StoryPole]] = {}
    for pole in poles:
        tiles = tuple((mark.at, mark.name) for mark in pole.marks if mark.kind == "tile")
        found.setdefault((pole.along, pole.way, pole.foot, pole.control, tiles), []).append(pole)
    return tuple(_joined(alike) for alike in found.values())


def _joined(poles: Sequence[StoryPole]) -> StoryPole:
    first = poles[0]
    marks: dict[PoleMark, list[str]] = {}
    for pole in poles:
        for mark in pole.marks:
            marks.setdefault(mark, []).append(pole.places[0])
    named = [
        mark if len(places) == len(poles) else replace(mark, name=f"{_short(_listed(places))}: {mark.name}")
        for mark, places in marks.items()
    ]
    foot = first.marks[0]
    return replace(
        first,
        surfaces=tuple(pole.surfaces[0] for pole in poles),
        places=tuple(pole.places[0] for pole in poles),
        marks=_in_order(named, foot),
    )


def _listed(places: Sequence[str]) -> str:
    """Several walls of one room as one phrase."""
    room, wall, _ = places[0].partition("wall ")
    if len(places) > 1 and wall and all(place.startswith(room + wall) for place in places):
        names = [place.removeprefix(room + wall) for place in places]
        return f"{room}walls {', '.join(names[:-1])} and {names[-1]}"
    return " and ".join(places)


def _short(place: str) -> str:
    """A place without its room."""
    return place.rpartition(": ")[2]


def _in_order(marks: Iterable[PoleMark], foot: PoleMark) -> tuple[PoleMark, ...]:
    return tuple(sorted(marks, key=lambda mark: (mark.at, mark != foot, _ORDER.index(mark.kind))))


def _has_level_side(tile: Tile) -> bool:
    """Whether a side lies level or upright, so that a mark can stand for it."""
    return any(min(abs(b[0] - a[0]), abs(b[1] - a[1])) <= _SAME for a, b in sides(tile.laid or tile.outline))


def _has_courses(surface: Surface) -> bool:
    """Whether every course of a wall begins where the one below it ends."""
    if surface.kind is not SurfaceKind.WALL:
        return False
    boxes = sorted((box[1], box[3]) for box in (bounds(tile.laid or tile.outline) for tile in surface.tiles))
    return all(upper[0] <= lower[0] + _SAME or upper[0] >= lower[1] - _SAME for lower, upper in pairwise(boxes))


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
        surfaces=(surface.id,),
        places=(surface.title or surface.id,),
        way=way,
        along="v" if axis else "u",
        foot=foot_mark.name,
        control=None if control is None else control[0][axis] - foot,
        marks=_in_order(marks, foot_mark),
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
    step = "course" if axis == 1 and _has_courses(surface) else "tile"
    found: list[tuple[int, str, Kind]] = []
    for tiles in rows.values():
        at = min(bounds(tile.outline)[axis] for tile in tiles)
        if found and abs(at - found[-1][0]) <= _SAME:
            continue
        words = [f"{step} {len(found) + 1}"]
        if len(kinds) > 1:
            words.append(" and ".join(sorted({tile.stock for tile in tiles})))
        if all(_is_cut(tile, axis) for tile in tiles):
            words.append("cut")
        found.append((at, ", ".join(words), "tile"))
    last = max(bounds(tile.outline)[axis + 2] for tiles in rows.values() for tile in tiles)
    return [*found, (last, f"end of {step} {len(found)}", "tile")]


def _along(surface: Surface, axis: int, run: Segment | None) -> Sequence[Tile]:
    """Tiles that a run passes; up a wall with courses all of them, since they run on beside a niche."""
    if run is None or (axis == 1 and _has_courses(surface)):
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
        return "first line, lower end" if axis else "second line, left end"
    if axis:
        return next((side.label for side in surface.sides if side.kind is SideKind.FOOT and side.label), "foot")
    return "left end"


def _end(surface: Surface, axis: int) -> str:
    if surface.kind is not SurfaceKind.WALL:
        return "first line, upper end" if axis else "second line, right end"
    return "top of the boards" if axis else "right end"

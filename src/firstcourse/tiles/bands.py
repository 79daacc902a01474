"""Feature bands: a wall's courses opened at a course joint to take another tile."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any, Literal

import numpy as np
import shapely
from shapely import MultiPolygon, Polygon
from shapely.affinity import translate
from shapely.ops import unary_union

from firstcourse.errors import InputValueError
from firstcourse.tiles.model import XY, Edge, RepeatCell, TileArea
from firstcourse.tiles.patterns import both_tapes

Role = Literal["field", "band", "border"]
_GRID_MM = 1e-7
"""Parts that meet after a move are joined on this grid, finer than a tick [mm]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Laying:
    """One pattern over one area.

    Attributes:
        cell: The repeat.
        shift: Where its origin lies [mm].
        area: Where it goes [mm].
        pattern: Its pattern's name.
        angle: How far it lies turned to the left [degrees].
        role: What it is of the whole.
    """

    cell: RepeatCell
    shift: XY
    area: Polygon | MultiPolygon
    pattern: str = "stacked"
    angle: int = 0
    role: Role = "field"


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """A level strip of another tile.

    Attributes:
        cell: Its repeat.
        bottom: Wanted height of its lower edge [mm].
        height: From its lower edge to its upper one [mm].
        pattern: Its pattern's name.
    """

    cell: RepeatCell
    bottom: float
    height: float
    pattern: str = "stacked"

    @property
    def rise(self) -> float:
        """How much higher the courses above lie for it: its height and the joint over it [mm]."""
        return self.height + self.cell.joint


def with_bands(main: Laying, bands: Sequence[Band]) -> tuple[Laying, ...]:
    """Part an area of level courses by its bands, from the foot up.

    Each band begins at the course joint nearest to the height wanted; the courses above start anew on top of it,
    their upright joints where they were.

    Args:
        main: Level courses over the whole area.
        bands: In any order; one that would begin within the last is moved on top of it.

    Raises:
        InputValueError: A band lies where nothing is tiled.
    """
    parts: list[Laying] = []
    joint, (start_u, base) = main.cell.joint, main.shift
    pitch = main.cell.step_b[1]
    left, lower, right, upper = main.area.bounds
    floor = lower
    for band in sorted(bands, key=lambda item: item.bottom):
        at = max(base + round((band.bottom - base) / pitch) * pitch, floor)
        top = at + band.height
        below = replace(main, shift=(start_u, base))
        own = Laying(cell=band.cell, shift=(start_u, at), area=main.area, pattern=band.pattern, role="band")
        for laying, foot, head in ((below, floor, at - joint), (own, at, top)):
            part = main.area.intersection(shapely.box(left, foot, right, head)) if head > foot else Polygon()
            if laying is own and (part.area == 0 or band.bottom + band.height <= lower):
                raise InputValueError(
                    f"the band wanted at {both_tapes(band.bottom)} lies where nothing is tiled (it would begin at "
                    f"{both_tapes(at)}; the tiling reaches from {both_tapes(lower)} to {both_tapes(upper)}); "
                    "move the band or leave it out"
                )
            if part.area > 0:
                parts.append(replace(laying, area=part))
        floor = base = top + joint
    rest = main.area.intersection(shapely.box(left, floor, right, upper)) if upper > floor else Polygon()
    if rest.area > 0:
        parts.append(replace(main, shift=(start_u, base), area=rest))
    return tuple(parts)


def without_bands(field: TileArea, bands: Sequence[Band]) -> TileArea:
    """The field with its bands taken out and closed up, so that its courses run on unbroken.

    A cut at the head of a wall is as wide there as it comes out above the bands, which begin at course joints
    wherever the courses lie; so the start that is best for this field is best for the one with bands.

    Args:
        field: The area with its edges.
        bands: In any order.
    """
    slabs: list[tuple[float, float]] = []
    for band in sorted(bands, key=lambda item: item.bottom):
        bottom = max(band.bottom, slabs[-1][0] + slabs[-1][1]) if slabs else band.bottom
        slabs.append((bottom, band.rise))
    for bottom, rise in reversed(slabs):
        field = _closed_up(field, bottom, rise)
    return field


def course_level(main: XY, bands: Sequence[Band], height: float) -> float:
    """Lower edge of a course at about a height, in the courses above the bands below it [mm].

    Args:
        main: Where the courses at the foot start [mm].
        bands: The bands as laid out.
        height: The height [mm].
    """
    return main[1] + sum(band.rise for band in bands if band.bottom + band.height / 2 < height)


def _closed_up(field: TileArea, bottom: float, rise: float) -> TileArea:
    left, lower, right, upper = field.area.bounds

    def at(height: float) -> float:
        return height if height <= bottom else max(height - rise, bottom)

    below = _areas(field.area.intersection(shapely.box(left, lower, right, max(bottom, lower))))
    above = _areas(field.area.intersection(shapely.box(left, min(bottom + rise, upper), right, upper)))
    moved = [replace(edge, a=(edge.a[0], at(edge.a[1])), b=(edge.b[0], at(edge.b[1]))) for edge in field.edges]
    return replace(
        field,
        area=_areas(shapely.set_precision(unary_union([below, translate(above, 0, -rise)]), _GRID_MM)),
        edges=tuple(edge for edge in moved if _is_long(edge)),
        wanted=tuple(
            (axis, at(place) if axis == "u" else place)
            for axis, place in field.wanted
            if axis != "u" or not bottom < place < bottom + rise
        ),
    )


def _is_long(edge: Edge) -> bool:
    return bool(np.hypot(edge.a[0] - edge.b[0], edge.a[1] - edge.b[1]) > _GRID_MM)


def _areas(shape: Any) -> MultiPolygon:
    return MultiPolygon([part for part in shapely.get_parts(shape) if isinstance(part, Polygon)])

"""Points of a falling floor whose heights are set: as high as its planes, where they say, and none left out."""

import math
from collections.abc import Iterator
from itertools import pairwise

import shapely
from shapely import Polygon

from firstcourse.geometry import Point, Ring, sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fall_fields import Fall, Level
from firstcourse.verify.fall_geometry import NEAR, Fold, drain_line
from firstcourse.verify.structure import Surface
from firstcourse.verify.verdict import Objection

_CODE = "VER-756"


def check_levels(surface: Surface, fall: Fall, folds: list[Fold], spacing: int) -> Iterator[Objection]:
    """Object to points that lie elsewhere than is said, and to corners and valleys without them.

    Args:
        surface: The floor.
        fall: How it falls.
        folds: Its folds.
        spacing: How far apart points along a valley may lie [ticks].
    """
    valleys = [fold for fold in folds if fold.valley]
    for level in (*fall.levels, *fall.valley_levels):
        if not _lies_at(fall, level.at, level.height):
            yield Objection(_CODE, surface.id, f"does not lie as high at {spot_text(level.at)} as its levels say")
    for level in fall.levels:
        in_valley = level.between or level.along is not None
        if in_valley or (level.kind, level.sides) != _on_perimeter(level.at, surface.outline):
            yield Objection(
                _CODE, surface.id, f"has a level at {spot_text(level.at)} that is not where it is said"
            )
    for level in fall.valley_levels:
        if not _is_in_valley(level, fall, valleys, spacing):
            yield Objection(_CODE, surface.id, f"has a level at {spot_text(level.at)} that lies in no such valley")
    yield from _round(surface, fall)
    yield from _along(surface, fall, valleys, spacing)


def spot_text(at: Point) -> str:
    """A place on a surface, for an objection."""
    return f"({at[0] / TICKS_PER_MM:.1f}, {at[1] / TICKS_PER_MM:.1f}) mm"


def _lies_at(fall: Fall, at: Point, height: int) -> bool:
    """Whether a plane at the point has that height there."""
    spot = shapely.Point(at)
    near = [plane for plane in fall.planes if Polygon(plane.ring).distance(spot) <= NEAR]
    return any(abs(plane.height(at) - height) <= 2 * NEAR for plane in near)


def _on_perimeter(at: Point, outline: Ring) -> tuple[str, tuple[int, ...]]:
    """What a point of the perimeter is, and the sides that it lies on; of none where it lies within."""
    if at in outline:
        corner = outline.index(at)
        return "corner", ((corner - 1) % len(outline), corner)
    spot = shapely.Point(at)
    away = [shapely.LineString(side).distance(spot) for side in sides(outline)]
    return ("side", (away.index(min(away)),)) if min(away) <= NEAR else ("", ())


def _is_in_valley(level: Level, fall: Fall, valleys: list[Fold], spacing: int) -> bool:
    """Whether a point is the end of a valley, or one of those that part it evenly, as it says of itself."""
    if level.sides:
        return False
    if level.kind != "valley":
        on_drain = drain_line(fall).distance(shapely.Point(level.at)) <= NEAR
        at_end = any(math.dist(level.at, end) <= NEAR for fold in valleys for end in (fold.low, fold.high))
        named = level.between or level.along is not None
        return at_end and not named and level.kind == ("drain" if on_drain else "valley_end")
    points = (*fall.levels, *fall.valley_levels)
    if len(level.between) != 2 or level.along is None or not all(1 <= one <= len(points) for one in level.between):
        return False
    low, high = (points[one - 1].at for one in level.between)
    return any(
        max(math.dist(low, start), math.dist(high, end)) <= TICKS_PER_MM
        and _parts_evenly(level.at, level.along, start, end, spacing)
        for fold in valleys
        # A valley without fall has no lower end.
        for start, end in ((fold.low, fold.high), (fold.high, fold.low))
    )


def _parts_evenly(at: Point, along: int, start: Point, end: Point, spacing: int) -> bool:
    length = math.dist(start, end)
    there = tuple(a + (b - a) * along / length for a, b in zip(start, end, strict=True))
    parts = {math.ceil((length + slack) / spacing) for slack in (-NEAR, NEAR)}
    even = any(abs(along - round(along * part / length) * length / part) <= NEAR for part in parts)
    return 0 < along < length and math.dist(at, there) <= NEAR and even


def _round(surface: Surface, fall: Fall) -> Iterator[Objection]:
    """Every corner, and every point where planes meet on the perimeter, has a level."""
    rim = Polygon(surface.outline).exterior
    asked = list(surface.outline)
    asked += [at for plane in fall.planes for at in plane.ring if rim.distance(shapely.Point(at)) <= NEAR]
    if any(min((math.dist(at, level.at) for level in fall.levels), default=math.inf) > 2 * NEAR for at in asked):
        yield Objection(_CODE, surface.id, "has a corner on its perimeter without a level")


def _along(surface: Surface, fall: Fall, valleys: list[Fold], spacing: int) -> Iterator[Objection]:
    """No part of a valley is farther from a point than may be."""
    spots = [shapely.Point(level.at) for level in (*fall.levels, *fall.valley_levels)]
    for line in (shapely.LineString([fold.low, fold.high]) for fold in valleys):
        along = sorted(line.project(spot) for spot in spots if line.distance(spot) <= 2 * NEAR)
        steps = [after - before for before, after in pairwise(along)]
        if not along or along[0] > 2 * NEAR or line.length - along[-1] > 2 * NEAR:
            yield Objection(_CODE, surface.id, "has a valley with an end that has no level")
        elif max(steps, default=0.0) > spacing + 4 * NEAR:
            yield Objection(_CODE, surface.id, "has a valley whose levels lie too far apart to check it")

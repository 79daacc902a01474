"""Floors that fall: planes that cover the floor and meet, water that finds the drain, and rules that are kept.

Everything is worked out again from the planes' rings and heights; slopes and totals that are said are believed
in nothing.
"""

import math
from collections.abc import Iterator
from itertools import combinations

import shapely
from shapely import Polygon
from shapely.ops import unary_union

from firstcourse.geometry import Point
from firstcourse.verify.fall_fields import Fall, Plane
from firstcourse.verify.fall_geometry import (
    NEAR,
    SAME,
    TICKS3_PER_LITRE,
    Fold,
    drain_line,
    folds_of,
    open_heights,
    volume,
)
from firstcourse.verify.fall_levels import check_levels, spot_text
from firstcourse.verify.fall_rise import check_rise
from firstcourse.verify.floor_heights import upturn_top
from firstcourse.verify.layers import built, cover
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_SHARE = 1e-4


def check_falls(plan: Document) -> Iterator[Objection]:
    """Object to a floor whose falls are not what the plan says, or break a rule that no finding speaks of."""
    for surface in plan.surfaces:
        fall = surface.fall
        if fall is None:
            drained = not surface.boarded and any(opening.kind == "drain" for opening in surface.openings)
            if drained and not plan.says(surface, code="FAL-101"):
                yield Objection("VER-751", surface.id, "lies on a bed, and nothing says how it falls")
            continue
        flat = list(_flat(surface, fall))
        yield from flat
        covered = list(_covers(surface, fall))
        yield from covered
        if flat or covered or not fall.planes:
            continue
        folds = folds_of(fall)
        yield from _meet(surface, fall)
        yield from _one_point(surface, fall)
        yield from _runs(surface, fall, plan)
        yield from _folds_said(surface, fall, folds)
        yield from check_levels(surface, fall, folds, plan.rules.ticks("fall.check.spacing"))
        yield from _totals(surface, fall, folds)
        yield from check_rise(surface, fall, plan)
        yield from _held(surface, fall, plan)
        yield from _tiles(surface, fall, folds, plan)


def _flat(surface: Surface, fall: Fall) -> Iterator[Objection]:
    for plane in fall.planes:
        for at, height in zip(plane.ring, plane.heights, strict=True):
            if abs(plane.height(at) - height) > NEAR:
                yield Objection("VER-752", surface.id, f"has a plane that is not flat at {spot_text(at)}")


def _covers(surface: Surface, fall: Fall) -> Iterator[Objection]:
    shapes = [Polygon(plane.ring) for plane in fall.planes]
    floor = Polygon(surface.outline)
    slack = NEAR * floor.length
    if not shapes or unary_union(shapes).symmetric_difference(floor).area > slack:
        yield Objection("VER-751", surface.id, "is not covered by its planes")
    elif sum(shape.area for shape in shapes) > floor.area + slack:
        yield Objection("VER-751", surface.id, "has planes that lie over each other")


def _meet(surface: Surface, fall: Fall) -> Iterator[Objection]:
    shapes = [Polygon(plane.ring) for plane in fall.planes]
    for plane in fall.planes:
        for at, height in zip(plane.ring, plane.heights, strict=True):
            for other, shape in zip(fall.planes, shapes, strict=True):
                if shape.distance(shapely.Point(at)) <= NEAR and abs(other.height(at) - height) > 2 * NEAR:
                    yield Objection("VER-753", surface.id, f"has a step between planes at {spot_text(at)}")
                    return


def _one_point(surface: Surface, fall: Fall) -> Iterator[Objection]:
    """Corners of planes, ends of folds and points that are set are one where they meet, with one height."""
    levels = [level for level in (*fall.levels, *fall.valley_levels) if level.kind != "valley"]
    heights = [row for plane in fall.planes for row in zip(plane.ring, plane.heights, strict=True)]
    heights += [(level.at, level.height) for level in levels]
    ends = {end for line in (*fall.valleys, *fall.ridges) for end in line}
    points = sorted({*surface.outline, *fall.drain, *ends, *(at for at, _ in heights)})
    for one, other in combinations(points, 2):
        if max(abs(one[0] - other[0]), abs(one[1] - other[1])) <= NEAR:
            yield Objection("VER-753", surface.id, f"has two points for one at {spot_text(one)}")
    over = dict(heights)
    for at, height in heights:
        if over[at] != height:
            yield Objection("VER-753", surface.id, f"has two heights at {spot_text(at)}")


def _runs(surface: Surface, fall: Fall, plan: Document) -> Iterator[Objection]:
    """Every corner of a plane lies on the drain or has an edge that leads down; the drain is the lowest place."""
    line = drain_line(fall)
    if Polygon(surface.outline).distance(line) > NEAR:
        yield Objection("VER-754", surface.id, "has its drain outside")
        return
    for end in fall.drain:
        nearest = min(fall.planes, key=lambda plane: Polygon(plane.ring).distance(shapely.Point(end)))
        if abs(nearest.height(end)) > 2 * NEAR:
            yield Objection("VER-754", surface.id, "does not lie at height zero at its drain")
    if any(height < -NEAR for plane in fall.planes for height in plane.heights):
        yield Objection("VER-754", surface.id, "lies lower than its drain")
    if plan.says(surface, code="FAL-102"):
        return
    at = stands_at(fall)
    if at is not None:
        yield Objection("VER-754", surface.id, f"lets water stand at {spot_text(at)}, and no finding says so")


def stands_at(fall: Fall) -> Point | None:
    """A place from which the planes lead no water down; None where all of it runs off."""
    line = drain_line(fall)
    for plane in fall.planes:
        for at in plane.ring:
            if line.distance(shapely.Point(at)) > NEAR and not _leads_down(at, fall.planes):
                return at
    return None


def _leads_down(at: Point, planes: tuple[Plane, ...]) -> bool:
    here = shapely.Point(at)
    for plane in planes:
        for (a, ha), (b, hb) in _edges(plane):
            if shapely.LineString([a, b]).distance(here) > NEAR:
                continue
            length = math.dist(a, b)
            for end, height in ((a, ha), (b, hb)):
                away = math.dist(end, at)
                if away > 2 * NEAR and (plane.height(at) - height) / away > SAME and length > 2 * NEAR:
                    return True
    return False


def _edges(plane: Plane) -> Iterator[tuple[tuple[Point, int], tuple[Point, int]]]:
    rows = list(zip(plane.ring, plane.heights, strict=True))
    return zip(rows, rows[1:] + rows[:1], strict=True)


def _folds_said(surface: Surface, fall: Fall, folds: list[Fold]) -> Iterator[Objection]:
    for kind, said in (("valleys", fall.valleys), ("ridges", fall.ridges)):
        found = [(fold.low, fold.high) for fold in folds if fold.valley == (kind == "valleys")]
        missing = [line for line in found if not any(_alike(line, other) for other in said)]
        if missing or len(said) != len(found):
            yield Objection("VER-755", surface.id, f"has {len(found)} {kind}, and not those that are drawn")


def _alike(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    # A fold without fall has no lower end.
    return any(max(math.dist(one[0], other[i]), math.dist(one[1], other[1 - i])) <= 2 * NEAR for i in (0, 1))


def _totals(surface: Surface, fall: Fall, folds: list[Fold]) -> Iterator[Objection]:
    rise = max(height for plane in fall.planes for height in plane.heights)
    slopes = [math.hypot(*plane.gradient) for plane in fall.planes]
    valleys = [fold.along for fold in folds if fold.valley]
    if abs(rise - fall.rise) > 1:
        yield Objection("VER-757", surface.id, "does not rise as much as is said")
    for said, found, words in (
        (fall.least_plane_fall, min(slopes), "least fall of a plane"),
        (fall.greatest_fall, max(slopes), "greatest fall"),
        (fall.least_fall, min(slopes + valleys), "least fall on the way of the water"),
    ):
        if abs(said - found) > SAME:
            yield Objection("VER-757", surface.id, f"has another {words} than is said")
    area, held = volume(fall.planes)
    bed = area * fall.bed + (0.0 if fall.membrane == "liner" else held)
    slope = area * fall.pre_slope + held if fall.membrane == "liner" else 0.0
    for litres, wanted, words in ((fall.bed_litres, bed, "bed"), (fall.pre_slope_litres, slope, "pre-slope")):
        if abs(litres * TICKS3_PER_LITRE - wanted) > _SHARE * wanted:
            yield Objection("VER-758", surface.id, f"takes another volume for its {words} than is said")
    if (fall.pre_slope > 0) != (fall.membrane == "liner"):
        yield Objection("VER-758", surface.id, "has a pre-slope without a liner, or a liner without one")


def _held(surface: Surface, fall: Fall, plan: Document) -> Iterator[Objection]:
    """Kerb or recess, and the flood test."""
    if (fall.kerb is None) == (fall.recess is None):
        yield Objection("VER-760", surface.id, "has neither kerb nor recess, or both")
    if fall.recess is not None:
        least = max(open_heights(surface, fall), default=fall.rise) + fall.bed + fall.pre_slope
        if fall.recess < least + built(surface, plan) - NEAR:
            yield Objection("VER-760", surface.id, "asks for less recess than rise, bed and mortar take")
    test = fall.test
    area, held = volume(fall.planes)
    depth = test.level - fall.rise + fall.membrane_below
    litres = (area * (fall.rise + depth) - held) / TICKS3_PER_LITRE
    if max(abs(test.litres - litres), abs(test.kg - litres)) > _SHARE * litres + 1e-6:
        yield Objection("VER-761", surface.id, "takes another volume of water for its test than is said")
    if test.depth != depth or depth != plan.rules.ticks("water.test.depth"):
        yield Objection("VER-761", surface.id, "is tested with other water at its highest place than is asked")
    if test.hours != plan.rules.number("water.test.hours"):
        yield Objection("VER-761", surface.id, "is tested for another time than is asked")
    tops = (one for one in plan.surfaces if one.part_of == surface.id and one.id.endswith("/top"))
    under_floor = fall.membrane_below - (fall.bed if fall.membrane == "liner" else 0)
    on_kerb = next((built(top, plan) for top in tops), under_floor)
    freeboard = plan.rules.ticks("water.test.below_threshold")
    if test.dam != (fall.kerb is None or test.level > fall.kerb - on_kerb - freeboard):
        yield Objection("VER-761", surface.id, "is tested with a dam beside its kerb, or without either")
    if fall.membrane_below != sum(cover(surface, plan)) + (fall.bed if fall.membrane == "liner" else 0):
        yield Objection("VER-761", surface.id, "has its membrane elsewhere than tile, mortar and bed leave it")
    if fall.upturn_top != upturn_top(fall, plan):
        yield Objection("VER-760", surface.id, "ends its membrane elsewhere than the finished threshold asks")


def _tiles(surface: Surface, fall: Fall, folds: list[Fold], plan: Document) -> Iterator[Objection]:
    """No tile larger than follows the planes lies across a fold, unless a finding speaks of it."""
    if (fall.largest_tile is None) != (not folds):
        yield Objection("VER-762", surface.id, "names a largest tile without folds, or folds without one")
    if fall.largest_tile is not None:
        yield from _largest(surface, fall, folds, plan)
    if fall.largest_tile is None or plan.says(surface, code="FAL-301"):
        return
    lines = [shapely.LineString([fold.low, fold.high]) for fold in folds]
    for tile in surface.tiles:
        stock = plan.tile_stock.get(tile.stock)
        if stock is not None and max(stock.size) > fall.largest_tile + NEAR:
            shape = tile.shape.buffer(-NEAR)
            if any(shape.intersects(line) for line in lines):
                yield Objection("VER-762", tile.id, "lies across a fold and is too large to follow it")
                return


def _largest(surface: Surface, fall: Fall, folds: list[Fold], plan: Document) -> Iterator[Objection]:
    """A flat tile of side s across a fold of turn t leaves the planes by s t / 4, the step allowed."""
    if fall.tile_step is None:
        yield Objection("VER-762", surface.id, "names a largest tile and not the step that it may make")
        return
    sharpest = max((fold.turn for fold in folds), default=0.0)
    largest = 4 * fall.tile_step / sharpest if sharpest else math.inf
    if plan.rules.has("fall.tile.max"):
        largest = min(largest, plan.rules.ticks("fall.tile.max"))
    if fall.largest_tile is None or abs(fall.largest_tile - largest) > 2 + 1e-3 * largest:
        yield Objection("VER-762", surface.id, "takes another largest tile than its folds and the step allow")

"""Floors that fall: planes that cover the floor and meet, water that finds the drain, and rules that are kept.

Everything is worked out again from the planes' rings and heights; slopes and totals that are said are believed
in nothing.
"""

import math
from collections.abc import Iterator
from itertools import combinations, pairwise

import shapely
from shapely import Polygon
from shapely.ops import unary_union

from firstcourse.geometry.polygon import Point, sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fall_fields import Fall, Plane
from firstcourse.verify.floor_heights import upturn_top
from firstcourse.verify.layers import built
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_NEAR = 4.0
"""What rounding a point of two planes can move it by [ticks]."""
_SAME = 1e-5
"""Slopes nearer than this are one slope: heights are rounded to ticks."""
_SHARE = 1e-4
_SPECK = TICKS_PER_MM**2
_TICKS3_PER_LITRE = (100.0 * TICKS_PER_MM) ** 3
_Fold = tuple[Point, Point, bool, float, float]


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
        line = _line(fall)
        folds = [
            fold
            for fold in _folds(fall.planes)
            if max(line.distance(shapely.Point(end)) for end in fold[:2]) > _NEAR
        ]
        yield from _meet(surface, fall)
        yield from _runs(surface, fall, plan)
        yield from _folds_said(surface, fall, folds)
        yield from _levels(surface, fall)
        yield from _valley_levels(surface, fall, folds, plan.rules.ticks("fall.check.spacing"))
        yield from _totals(surface, fall, folds)
        yield from _rules(surface, fall, folds, plan)
        yield from _held(surface, fall, plan)
        yield from _tiles(surface, fall, folds, plan)


def _line(fall: Fall) -> shapely.Geometry:
    return shapely.Point(fall.drain[0]) if len(fall.drain) == 1 else shapely.LineString(fall.drain)


def _flat(surface: Surface, fall: Fall) -> Iterator[Objection]:
    for plane in fall.planes:
        for at, height in zip(plane.ring, plane.heights, strict=True):
            if abs(plane.height(at) - height) > _NEAR:
                yield Objection("VER-752", surface.id, f"has a plane that is not flat at {_spot(at)}")


def _covers(surface: Surface, fall: Fall) -> Iterator[Objection]:
    shapes = [Polygon(plane.ring) for plane in fall.planes]
    floor = Polygon(surface.outline)
    slack = _NEAR * floor.length
    if not shapes or unary_union(shapes).symmetric_difference(floor).area > slack:
        yield Objection("VER-751", surface.id, "is not covered by its planes")
    elif sum(shape.area for shape in shapes) > floor.area + slack:
        yield Objection("VER-751", surface.id, "has planes that lie over each other")


def _meet(surface: Surface, fall: Fall) -> Iterator[Objection]:
    shapes = [Polygon(plane.ring) for plane in fall.planes]
    for plane in fall.planes:
        for at, height in zip(plane.ring, plane.heights, strict=True):
            for other, shape in zip(fall.planes, shapes, strict=True):
                if shape.distance(shapely.Point(at)) <= _NEAR and abs(other.height(at) - height) > 2 * _NEAR:
                    yield Objection("VER-753", surface.id, f"has a step between planes at {_spot(at)}")
                    return


def _runs(surface: Surface, fall: Fall, plan: Document) -> Iterator[Objection]:
    """Every corner of a plane lies on the drain or has an edge that leads down; the drain is the lowest place."""
    line = _line(fall)
    if Polygon(surface.outline).distance(line) > _NEAR:
        yield Objection("VER-754", surface.id, "has its drain outside")
        return
    for end in fall.drain:
        nearest = min(fall.planes, key=lambda plane: Polygon(plane.ring).distance(shapely.Point(end)))
        if abs(nearest.height(end)) > 2 * _NEAR:
            yield Objection("VER-754", surface.id, "does not lie at height zero at its drain")
    if any(height < -_NEAR for plane in fall.planes for height in plane.heights):
        yield Objection("VER-754", surface.id, "lies lower than its drain")
    if plan.says(surface, code="FAL-102"):
        return
    for plane in fall.planes:
        for at in plane.ring:
            if line.distance(shapely.Point(at)) > _NEAR and not _leads_down(at, fall.planes):
                yield Objection("VER-754", surface.id, f"lets water stand at {_spot(at)}, and no finding says so")
                return


def _leads_down(at: Point, planes: tuple[Plane, ...]) -> bool:
    here = shapely.Point(at)
    for plane in planes:
        for (a, ha), (b, hb) in _edges(plane):
            if shapely.LineString([a, b]).distance(here) > _NEAR:
                continue
            length = math.dist(a, b)
            for end, height in ((a, ha), (b, hb)):
                away = math.dist(end, at)
                if away > 2 * _NEAR and (plane.height(at) - height) / away > _SAME and length > 2 * _NEAR:
                    return True
    return False


def _edges(plane: Plane) -> Iterator[tuple[tuple[Point, int], tuple[Point, int]]]:
    rows = list(zip(plane.ring, plane.heights, strict=True))
    return zip(rows, rows[1:] + rows[:1], strict=True)


def _folds(planes: tuple[Plane, ...]) -> Iterator[_Fold]:
    """Lines that planes share and turn at: lower end, higher end, whether a valley, fall along, turn across."""
    for one, other in combinations(planes, 2):
        tilt = (one.gradient[0] - other.gradient[0], one.gradient[1] - other.gradient[1])
        turn = math.hypot(*tilt)
        if turn <= _SAME:
            continue
        inside = Polygon(one.ring).representative_point()
        valley = one.height((inside.x, inside.y)) > other.height((inside.x, inside.y))
        for a, b in sides(one.ring):
            for c, d in sides(other.ring):
                shared = _shared(a, b, c, d)
                if shared is not None:
                    low, high = sorted(shared, key=one.height)
                    along = (one.height(high) - one.height(low)) / math.dist(low, high)
                    yield low, high, valley, along, turn


def _shared(a: Point, b: Point, c: Point, d: Point) -> tuple[Point, Point] | None:
    length = math.dist(a, b)
    u, v = (b[0] - a[0]) / length, (b[1] - a[1]) / length
    if any(abs((p[0] - a[0]) * v - (p[1] - a[1]) * u) > _NEAR for p in (c, d)):
        return None
    places = sorted((p[0] - a[0]) * u + (p[1] - a[1]) * v for p in (c, d))
    start, end = max(0.0, places[0]), min(length, places[1])
    if end - start <= 2 * _NEAR:
        return None
    one = (round(a[0] + u * start), round(a[1] + v * start))
    return one, (round(a[0] + u * end), round(a[1] + v * end))


def _folds_said(surface: Surface, fall: Fall, folds: list[_Fold]) -> Iterator[Objection]:
    for kind, said in (("valleys", fall.valleys), ("ridges", fall.ridges)):
        found = [(low, high) for low, high, valley, _, _ in folds if valley == (kind == "valleys")]
        missing = [line for line in found if not any(_alike(line, other) for other in said)]
        if missing or len(said) != len(found):
            yield Objection("VER-755", surface.id, f"has {len(found)} {kind}, and not those that are drawn")


def _alike(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    # A fold without fall has no lower end.
    return any(max(math.dist(one[0], other[i]), math.dist(one[1], other[1 - i])) <= 2 * _NEAR for i in (0, 1))


def _levels(surface: Surface, fall: Fall) -> Iterator[Objection]:
    rim = Polygon(surface.outline).exterior
    for at, height in fall.levels:
        if rim.distance(shapely.Point(at)) > _NEAR or not _lies_at(fall, at, height):
            yield Objection("VER-756", surface.id, f"does not lie as high at {_spot(at)} as its levels say")
    asked = list(surface.outline)
    asked += [at for plane in fall.planes for at in plane.ring if rim.distance(shapely.Point(at)) <= _NEAR]
    if any(min((math.dist(at, level) for level, _ in fall.levels), default=math.inf) > 2 * _NEAR for at in asked):
        yield Objection("VER-756", surface.id, "has a corner on its perimeter without a level")


def _lies_at(fall: Fall, at: Point, height: int) -> bool:
    """Whether a plane at the point has that height there."""
    spot = shapely.Point(at)
    near = [plane for plane in fall.planes if Polygon(plane.ring).distance(spot) <= _NEAR]
    return any(abs(plane.height(at) - height) <= 2 * _NEAR for plane in near)


def _valley_levels(surface: Surface, fall: Fall, folds: list[_Fold], spacing: int) -> Iterator[Objection]:
    """Points lie on valleys as high as is said, and no part of a valley is farther from one than may be."""
    lines = [shapely.LineString([low, high]) for low, high, valley, _, _ in folds if valley]
    for at, height in fall.valley_levels:
        spot = shapely.Point(at)
        if min((line.distance(spot) for line in lines), default=math.inf) > _NEAR:
            yield Objection("VER-756", surface.id, f"has a level at {_spot(at)} that lies in no valley")
        elif not _lies_at(fall, at, height):
            yield Objection("VER-756", surface.id, f"does not lie as high at {_spot(at)} as its levels say")
    spots = [shapely.Point(at) for at, _ in (*fall.levels, *fall.valley_levels)]
    for line in lines:
        along = sorted(line.project(spot) for spot in spots if line.distance(spot) <= 2 * _NEAR)
        steps = [after - before for before, after in pairwise(along)]
        if not along or along[0] > 2 * _NEAR or line.length - along[-1] > 2 * _NEAR:
            yield Objection("VER-756", surface.id, "has a valley with an end that has no level")
        elif max(steps, default=0.0) > spacing + 4 * _NEAR:
            yield Objection("VER-756", surface.id, "has a valley whose levels lie too far apart to check it")


def _totals(surface: Surface, fall: Fall, folds: list[_Fold]) -> Iterator[Objection]:
    rise = max(height for plane in fall.planes for height in plane.heights)
    slopes = [math.hypot(*plane.gradient) for plane in fall.planes]
    valleys = [along for _, _, valley, along, _ in folds if valley]
    if abs(rise - fall.rise) > _NEAR:
        yield Objection("VER-757", surface.id, "does not rise as much as is said")
    for said, found, words in (
        (fall.least_plane_fall, min(slopes), "least fall of a plane"),
        (fall.greatest_fall, max(slopes), "greatest fall"),
        (fall.least_fall, min(slopes + valleys), "least fall on the way of the water"),
    ):
        if abs(said - found) > _SAME:
            yield Objection("VER-757", surface.id, f"has another {words} than is said")
    area, held = _volume(fall.planes)
    bed = area * fall.bed + (0.0 if fall.membrane == "liner" else held)
    slope = area * fall.pre_slope + held if fall.membrane == "liner" else 0.0
    for litres, volume, words in ((fall.bed_litres, bed, "bed"), (fall.pre_slope_litres, slope, "pre-slope")):
        if abs(litres * _TICKS3_PER_LITRE - volume) > _SHARE * volume:
            yield Objection("VER-758", surface.id, f"takes another volume for its {words} than is said")
    if (fall.pre_slope > 0) != (fall.membrane == "liner"):
        yield Objection("VER-758", surface.id, "has a pre-slope without a liner, or a liner without one")


def _volume(planes: tuple[Plane, ...]) -> tuple[float, float]:
    """Area of the planes, and the volume between them and the drain's level [ticks², ticks³]."""
    area = held = 0.0
    for plane in planes:
        shape = Polygon(plane.ring)
        area += shape.area
        held += shape.area * plane.height((shape.centroid.x, shape.centroid.y))
    return area, held


def _rules(surface: Surface, fall: Fall, folds: list[_Fold], plan: Document) -> Iterator[Objection]:
    rules = plan.rules
    valleys = [along for _, _, valley, along, _ in folds if valley]
    slopes = [math.hypot(*plane.gradient) for plane in fall.planes]
    told_steep = plan.says(surface, rule="fall.max")
    if rules.has("fall.max") and max(slopes) > rules.number("fall.max") + _SAME and not told_steep:
        yield Objection("VER-759", surface.id, "falls more steeply than allowed, and no finding says so")
    if min(slopes) < rules.number("fall.min") - _SAME:
        yield Objection("VER-759", surface.id, "has a plane that falls less than the least fall")
    told = told_steep or plan.says(surface, rule="fall.min")
    if min(slopes + valleys) < rules.number("fall.min") - _SAME and not told:
        yield Objection("VER-759", surface.id, "has a valley below the least fall, and no finding says so")
    if fall.kerb is None:
        return
    for name, low in (("shower.kerb.min", True), ("shower.kerb.max", False)):
        if rules.has(name) and not plan.says(surface, rule=name):
            limit = rules.ticks(name)
            if fall.kerb < limit if low else fall.kerb > limit:
                yield Objection("VER-759", surface.id, "has a kerb out of its limits, and no finding says so")
    if fall.kerb <= fall.rise and not plan.says(surface, code="FAL-202"):
        yield Objection("VER-759", surface.id, "rises as high as its kerb, and no finding says so")


def _held(surface: Surface, fall: Fall, plan: Document) -> Iterator[Objection]:
    """Kerb or recess, and the flood test."""
    if (fall.kerb is None) == (fall.recess is None):
        yield Objection("VER-760", surface.id, "has neither kerb nor recess, or both")
    if fall.recess is not None:
        free = [line for line, kind in zip(sides(surface.outline), surface.sides, strict=True) if kind == "free"]
        heights = [
            height
            for at, height in fall.levels
            if any(shapely.LineString(line).distance(shapely.Point(at)) <= _NEAR for line in free)
        ]
        least = max(heights, default=fall.rise) + fall.bed + fall.pre_slope + built(surface, plan)
        if fall.recess < least - _NEAR:
            yield Objection("VER-760", surface.id, "asks for less recess than rise, bed and mortar take")
    test = fall.test
    area, held = _volume(fall.planes)
    depth = test.level - fall.rise + fall.membrane_below
    litres = (area * (fall.rise + depth) - held) / _TICKS3_PER_LITRE
    if max(abs(test.litres - litres), abs(test.kg - litres)) > _SHARE * litres + 1e-6:
        yield Objection("VER-761", surface.id, "takes another volume of water for its test than is said")
    if test.depth != depth or depth < plan.rules.ticks("water.test.depth"):
        yield Objection("VER-761", surface.id, "is tested with too little water at its highest place")
    if test.hours < plan.rules.number("water.test.hours"):
        yield Objection("VER-761", surface.id, "is tested for too short")
    tops = (one for one in plan.surfaces if one.part_of == surface.id and one.id.endswith("/top"))
    under_floor = fall.membrane_below - (fall.bed if fall.membrane == "liner" else 0)
    on_kerb = next((built(top, plan) for top in tops), under_floor)
    freeboard = plan.rules.ticks("water.test.below_threshold")
    if test.dam != (fall.kerb is None or test.level > fall.kerb - on_kerb - freeboard):
        yield Objection("VER-761", surface.id, "is tested with a dam beside its kerb, or without either")
    below = built(surface, plan) + (fall.bed if fall.membrane == "liner" else 0)
    if fall.membrane_below < below or (surface.tiled and fall.membrane_below != below):
        yield Objection("VER-761", surface.id, "has its membrane elsewhere than tile, mortar and bed leave it")
    if fall.upturn_top != upturn_top(fall, plan):
        yield Objection("VER-760", surface.id, "ends its membrane elsewhere than the finished threshold asks")


def _tiles(surface: Surface, fall: Fall, folds: list[_Fold], plan: Document) -> Iterator[Objection]:
    """No tile larger than follows the planes lies across a fold, unless a finding speaks of it."""
    if (fall.largest_tile is None) != (not folds):
        yield Objection("VER-762", surface.id, "names a largest tile without folds, or folds without one")
    if fall.largest_tile is not None:
        yield from _largest(surface, fall, folds, plan)
    if fall.largest_tile is None or plan.says(surface, code="FAL-301"):
        return
    lines = [shapely.LineString([low, high]) for low, high, *_ in folds]
    for tile in surface.tiles:
        stock = plan.tile_stock.get(tile.stock)
        if stock is not None and max(stock.size) > fall.largest_tile + _NEAR:
            shape = tile.shape.buffer(-_NEAR)
            if any(shape.intersects(line) for line in lines):
                yield Objection("VER-762", tile.id, "lies across a fold and is too large to follow it")
                return


def _largest(surface: Surface, fall: Fall, folds: list[_Fold], plan: Document) -> Iterator[Objection]:
    """A flat tile of side s across a fold of turn t leaves the planes by s t / 4, the step allowed."""
    if fall.tile_step is None:
        yield Objection("VER-762", surface.id, "names a largest tile and not the step that it may make")
        return
    sharpest = max((turn for *_, turn in folds), default=0.0)
    largest = 4 * fall.tile_step / sharpest if sharpest else math.inf
    if plan.rules.has("fall.tile.max"):
        largest = min(largest, plan.rules.ticks("fall.tile.max"))
    if fall.largest_tile is None or abs(fall.largest_tile - largest) > 2 + 1e-3 * largest:
        yield Objection("VER-762", surface.id, "takes another largest tile than its folds and the step allow")


def _spot(at: Point) -> str:
    return f"({at[0] / TICKS_PER_MM:.1f}, {at[1] / TICKS_PER_MM:.1f}) mm"

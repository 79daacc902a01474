"""What must be told of shower floors: kerb, recess, open sides, shelves, tile across folds, and doorways there."""

import math
from collections.abc import Iterator

from shapely import LineString, Polygon

from firstcourse.geometry.polygon import Point
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fall_fields import Fall
from firstcourse.verify.fall_geometry import open_heights
from firstcourse.verify.fall_given import drop_of, shelves_of, shower_of, step_between_tiles, tile_of
from firstcourse.verify.fields import Node
from firstcourse.verify.floor_heights import kerb_drop
from firstcourse.verify.formulas.derived import Number, name
from firstcourse.verify.formulas.parts import Part, ends_of, length_mm
from firstcourse.verify.formulas.survey import drawn_corners
from firstcourse.verify.judged.asked import FIX, STOP, Asked
from firstcourse.verify.structure import Document, Surface

CODES = frozenset(f"FAL-{number}" for number in (201, 202, 203, 204, 205, 213, 221, 301))
_EVEN = 1e-6
_ROUNDED = 0.0035
"""Heights are rounded to ticks, twice at most [mm]."""
_BESIDE = 4.0
"""Corners are rounded to ticks, so that a line along a side may run beside it by a little [ticks]."""


def shower_asked(plan: Document) -> Iterator[Asked]:
    """What must be told of every shower floor of which it is known how it falls."""
    for surface in plan.surfaces:
        shower = shower_of(surface, plan)
        if shower is None or surface.fall is None:
            continue
        if surface.fall.kerb is None:
            yield from _without_kerb(plan, surface, surface.fall, shower)
        else:
            yield from _kerb(plan, surface, surface.fall, surface.fall.kerb, shower)
        yield from _shelves(plan, surface, shower)
        yield from _tile(plan, surface, surface.fall, shower)


def _kerb(plan: Document, surface: Surface, fall: Fall, kerb: int, shower: Node) -> Iterator[Asked]:
    rules, at = plan.rules, (surface.id,)
    for rule, low in (("shower.kerb.min", True), ("shower.kerb.max", False)):
        if rules.has(rule) and (kerb < rules.ticks(rule) if low else kerb > rules.ticks(rule)):
            yield Asked(
                code="FAL-201",
                severity=STOP,
                at=at,
                measured=_long(kerb),
                limit=_long(rules.ticks(rule)),
                sense="least" if low else "most",
                rule=rule,
                remedies=("raise" if low else "lower",),
                values={"low": low},
            )
    if kerb <= fall.rise:
        above = max(fall.rise + plan.tape.graduation, rules.ticks("water.test.depth"))
        yield Asked(
            code="FAL-202",
            severity=STOP,
            at=at,
            measured=_long(kerb),
            remedies=("raise_or_nearer",),
            values={"rise": _long(fall.rise), "above": _long(above)},
        )
    given, rule = shower.part("kerb"), "shower.entry.min"
    if "entry" in given.value and rules.has(rule) and given.length("entry") < rules.ticks(rule):
        yield Asked(
            code="FAL-213",
            severity=STOP,
            at=at,
            measured=_long(given.length("entry")),
            limit=_long(rules.ticks(rule)),
            sense="least",
            rule=rule,
            remedies=("widen",),
        )


def _without_kerb(plan: Document, surface: Surface, fall: Fall, shower: Node) -> Iterator[Asked]:
    there = shower.distance("recess") if "recess" in shower.value else 0
    open_side = open_heights(surface, fall)
    if there < (fall.recess or 0):
        rise = max(open_side, default=max((level.height for level in fall.levels), default=0))
        yield Asked(
            code="FAL-203",
            severity=STOP,
            at=(surface.id,),
            measured=_long(there),
            limit=_long(fall.recess or 0),
            sense="least",
            remedies=("deepen",),
            values={"deeper": _long((fall.recess or 0) - there), "rise": _long(rise)},
        )
    if open_side and max(open_side) - min(open_side) > plan.tape.graduation:
        yield _not_level(surface.id, min(open_side), max(open_side), doorway=False)


def _not_level(ref: str, low: float, high: float, *, doorway: bool) -> Asked:
    return Asked(
        code="FAL-204",
        severity=FIX,
        at=(ref,),
        measured=_long(high - low),
        remedies=("turn_or_level",),
        values={"doorway": doorway, "low": _long(low), "high": _long(high)},
        slack=_ROUNDED if doorway else 0.0,
    )


def _shelves(plan: Document, surface: Surface, shower: Node) -> Iterator[Asked]:
    rules = plan.rules
    steepest = rules.number("fall.shelf.max") if rules.has("fall.shelf.max") else None
    for ref, shelf in shelves_of(surface, shower).items():
        drop, depth = drop_of(shelf), shelf.length("depth")
        if drop is None:
            continue
        steep = steepest is not None and drop > steepest * (1 + _EVEN)
        if not steep and drop >= rules.number("fall.shelf.min") * (1 - _EVEN):
            continue
        rule = f"fall.shelf.{'max' if steep else 'min'}"
        drops = [_long(kerb_drop(depth, plan))]
        drops += [] if steepest is None else [_long(depth * steepest)]
        yield Asked(
            code="FAL-221",
            severity=FIX,
            at=(ref,),
            measured=Number(drop),
            limit=Number(rules.number(rule)),
            sense="most" if steep else "least",
            rule=rule,
            remedies=("drop",),
            values={"steep": steep, "drops": drops, "depth": _long(depth)},
            slack=_ROUNDED / 2,
        )


def _tile(plan: Document, surface: Surface, fall: Fall, shower: Node) -> Iterator[Asked]:
    tile, largest = tile_of(shower, plan), fall.largest_tile
    if tile is None or largest is None or max(tile.size("size")) <= largest:
        return
    by_rule = plan.rules.has("fall.tile.max") and plan.rules.ticks("fall.tile.max") == largest
    yield Asked(
        code="FAL-301",
        severity=FIX,
        at=(surface.id,),
        measured=_long(max(tile.size("size"))),
        limit=_long(largest),
        sense="most",
        rule="fall.tile.max" if by_rule else step_between_tiles(shower, plan)[1],
        remedies=("cut_or_choose",),
        values={"tile": name(tile.text("id"))},
    )


def doorway_asked(plan: Document, part: Part) -> Iterator[Asked]:
    """Whether the water stays in at the doorways of a floor that is all shower, and whether it is level there."""
    fall = part.surface.fall
    if fall is None or fall.drain_height is None:
        return
    for door in part.given.nodes("doorways", ()):
        low, high = along_doorway(plan, part, fall, fall.drain_height, door)
        ref, beyond = f"{part.room.text('name')}/floor/door/{door.text('id')}", door.distance("other_floor")
        over, half = high - beyond, plan.tape.graduation // 2
        if fall.kerb is None and over > half - _BESIDE:
            yield Asked(
                code="FAL-205",
                severity=STOP,
                at=(ref,),
                measured=_long(high),
                limit=_long(beyond),
                sense="most",
                remedies=("deeper_or_kerb",),
                values={"lower": _long(over)},
                slack=_ROUNDED,
                may=over <= half + _BESIDE,
            )
        if "wall" in door.value and high - low > plan.tape.graduation - _BESIDE:
            asked = _not_level(ref, low, high, doorway=True)
            yield asked if high - low > plan.tape.graduation + _BESIDE else asked.perhaps()


def along_doorway(plan: Document, part: Part, fall: Fall, drain: int, door: Node) -> tuple[float, float]:
    """Lowest and highest place of a falling floor at a doorway; of all its edge where that is not placed [ticks].

    Args:
        plan: The plan.
        part: The floor.
        fall: How it falls.
        drain: Height of its drain over the room's panels [ticks].
        door: What the job says of the doorway.
    """
    if "wall" not in door.value:
        heights = [float(drain + level.height) for level in fall.levels]
        return min(heights), max(heights)
    start, end = _side(plan, part, door.text("wall"))
    left = door.distance("left") if "left" in door.value else 0
    right = left + door.length("width") if "width" in door.value else round(math.dist(start, end))
    heights = list(_heights(fall, _at(start, end, left, 0), _at(start, end, right, 0)))
    return drain + min(heights), drain + max(heights)


def rims(plan: Document, part: Part) -> Iterator[tuple[str, str, float]]:
    """Flanges and drains of a floor that is all shower: reference, kind, and how far over the floor there [mm]."""
    fall, base = part.surface.fall, f"{part.room.text('name')}/floor"
    if fall is None or fall.drain_height is None:
        return
    flanges = []
    for opening in part.given.nodes("openings", ()):
        kind = opening.text("kind")
        if kind not in ("flange", "drain") or not {"left", "out"} <= opening.value.keys():
            continue
        half = [opening.length(key) // 2 if key in opening.value else 0 for key in ("width", "depth")]
        ends = _side(plan, part, opening.text("side", ""))
        at = _at(*ends, opening.distance("left") + half[0], opening.distance("out") + half[1])
        high = fall.drain_height + next(_heights(fall, at, (at[0] + 8, at[1])), 0.0)
        flanges += [high] if kind == "flange" else []
        if "top" in opening.value:
            above = length_mm(opening, "top") - high / TICKS_PER_MM
            yield f"{base}/opening/{opening.text('id')}", kind, above
    if "flange_top" in part.given.value:
        # One that is not placed stands near a wall, where the floor is highest.
        high = flanges[0] if len(flanges) == 1 else float(fall.drain_height + fall.rise)
        yield f"{base}/flange", "flange", length_mm(part.given, "flange_top") - high / TICKS_PER_MM


def _side(plan: Document, part: Part, wall: str) -> tuple[Point, Point]:
    """Ends of a side of the room, the left one first; of the first where none is named [ticks]."""
    corners = drawn_corners(plan, part.room.text("name"))
    names = list(corners)
    left, right = ends_of(wall, part.given.where) if wall else (names[0], names[1])
    return corners[left], corners[right]


def _at(start: Point, end: Point, along: int, out: int) -> Point:
    """A place along a side from its left end, and out from it into the room [ticks]."""
    long = math.dist(start, end)
    du, dv = (end[0] - start[0]) / long, (end[1] - start[1]) / long
    return round(start[0] + along * du + out * dv), round(start[1] + along * dv - out * du)


def _heights(fall: Fall, a: Point, b: Point) -> Iterator[float]:
    """Heights over the drain where a line enters and leaves each plane [ticks]."""
    line = LineString([a, b])
    for plane in fall.planes:
        cut = line.intersection(Polygon(plane.ring).buffer(_BESIDE, join_style="mitre"))
        for piece in getattr(cut, "geoms", (cut,)):
            yield from (plane.height(at) for at in piece.coords)


def _long(length: float) -> Number:
    return Number(length / TICKS_PER_MM, "mm")

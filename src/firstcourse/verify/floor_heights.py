"""Heights over the panels: of drains and floors beside showers, and of kerbs that stand between both."""

import math
from collections.abc import Iterator

import shapely

from firstcourse.geometry import bounds, sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.areas import area_of
from firstcourse.verify.fall_fields import Fall
from firstcourse.verify.fall_geometry import open_heights
from firstcourse.verify.layers import built
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_NEAR = 3
"""Corners and heights are whole ticks, each rounded by half of one."""


def check_floor_heights(plan: Document) -> Iterator[Objection]:
    """Object to a drain or floor that lies elsewhere than its layers come to, and to kerbs that miss them."""
    floors = {surface.room: surface for surface in plan.surfaces if surface.id == f"{surface.room}/floor"}
    for surface in plan.surfaces:
        if surface.fall is not None:
            yield from _drain(surface, surface.fall, plan)
            yield from _room_floor(surface.fall, floors.get(surface.room), surface, plan)
            yield from _threshold(surface, surface.fall, plan)
            yield from _kerbs(surface, surface.fall, plan)


def height_over_drain(fall: Fall, at: tuple[float, float]) -> float:
    """Height of a falling floor at a point, by the plane that lies there or nearest to it [ticks]."""
    spot = shapely.Point(at)
    return min(fall.planes, key=lambda plane: area_of(plane.ring).distance(spot)).height(at)


def upturn_top(fall: Fall, plan: Document) -> int:
    """Where a floor's membrane ends on the walls, over the drain: by the highest line of the threshold [ticks]."""
    threshold = max(fall.rise, fall.threshold or 0)
    if fall.kerb is not None:
        threshold = fall.kerb + (0 if fall.kerb_width is None else kerb_drop(fall.kerb_width, plan))
    return threshold + plan.rules.ticks("water.upturn.above_threshold")


def _drain(surface: Surface, fall: Fall, plan: Document) -> Iterator[Objection]:
    if fall.drain_height is None:
        yield Objection("VER-764", surface.id, "does not say how high its drain lies over the panels")
        return
    entry = open_heights(surface, fall)
    if entry and fall.room_floor is not None:
        right = abs(fall.drain_height + max(entry) - fall.room_floor) <= _NEAR
    else:
        least = fall.bed + fall.pre_slope + built(surface, plan)
        right = abs(fall.drain_height - least) <= _NEAR if surface.tiled else fall.drain_height >= least - _NEAR
    if not right:
        yield Objection("VER-764", surface.id, "has its drain at another height than bed, mortar and tile come to")


def _room_floor(fall: Fall, floor: Surface | None, surface: Surface, plan: Document) -> Iterator[Objection]:
    """The room's finished floor is as high as the layers that were judged, and as what is laid there."""
    if (fall.room_floor is None) != (floor is None):
        yield Objection("VER-764", surface.id, "names no height of the floor beside it, or one without a floor")
        return
    if floor is None or fall.room_floor is None:
        return
    if fall.room_floor != sum(thickness for _, thickness in floor.layers):
        yield Objection("VER-764", surface.id, "says another height of the room's floor than its layers come to")


def _threshold(surface: Surface, fall: Fall, plan: Document) -> Iterator[Objection]:
    """A floor that is all shower ends at the lowest of the floors beyond its doorways."""
    if fall.drain_height is None or (fall.room_floor is not None and fall.threshold is None):
        return
    beyond = [
        door.number("other_floor")
        for room in plan.job.nodes("rooms", ())
        if room.text("name") == surface.room
        for door in room.part("floor").nodes("doorways", ())
    ]
    asked = min(beyond) * TICKS_PER_MM - fall.drain_height if beyond and fall.kerb is None else None
    if (asked is None) != (fall.threshold is None) or abs((asked or 0) - (fall.threshold or 0)) > 1:
        yield Objection("VER-764", surface.id, "names another threshold than the floors beyond its doorways make")


def _kerbs(surface: Surface, fall: Fall, plan: Document) -> Iterator[Objection]:
    """Faces of a kerb reach from the floors before and behind it to the underside of the tile on its top."""
    if fall.kerb is None or fall.kerb_width is None:
        return
    faces = {one.id: one for one in plan.surfaces if one.part_of == surface.id}
    kerb = f"{surface.id}/kerb"
    runs = [line for line, met in zip(sides(surface.outline), surface.met, strict=True) if met == kerb]
    for number, run in enumerate(runs, start=1):
        name = kerb if len(runs) == 1 else f"{kerb} {number}"
        top = faces.get(f"{name}/top")
        if top is None:
            continue
        under = fall.kerb - built(top, plan)
        inner, outer = faces.get(f"{name}/inner"), faces.get(f"{name}/outer")
        if inner is not None and not _stands(inner, run, under, fall):
            yield Objection("VER-765", inner.id, "does not reach from the shower floor to the tile of its top")
        if outer is None or fall.drain_height is None or fall.room_floor is None:
            continue
        asked = under + fall.drain_height + kerb_drop(fall.kerb_width, plan) - fall.room_floor
        _, low, _, high = bounds(outer.outline)
        if abs(high - low - asked) > _NEAR or len(outer.outline) != 4:
            yield Objection("VER-765", outer.id, "does not reach from the room's floor to the tile of its top")


def kerb_drop(width: int, plan: Document) -> int:
    """How much higher the outer edge of a kerb's top lies, up to the next half mark of the tape [ticks]."""
    half = plan.tape.graduation // 2
    return math.ceil(round(width * plan.rules.number("fall.shelf.min")) / half) * half


def _stands(face: Surface, run: tuple[tuple[int, int], tuple[int, int]], under: int, fall: Fall) -> bool:
    """Whether a kerb's inner face, which begins at the run's end, stands on the falling floor all along."""
    (a, b), length = run, math.dist(*run)
    top = bounds(face.outline)[3]
    for (one, other), met in zip(sides(face.outline), face.met, strict=True):
        for u, v in (one, other) if met == face.part_of else ():
            share = min(max(u / length, 0.0), 1.0)
            at = (b[0] + (a[0] - b[0]) * share, b[1] + (a[1] - b[1]) * share)
            if abs(under - (top - v) - height_over_drain(fall, at)) > 2 * _NEAR:
                return False
    return True

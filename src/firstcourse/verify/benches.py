"""Benches on their floors: front and free ends begin on the finished floor that lies under each."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

import shapely

from firstcourse.geometry import Point, Ring, sides
from firstcourse.verify.areas import area_of
from firstcourse.verify.floor_heights import height_over_drain
from firstcourse.verify.layers import built
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

NEAR = 16
"""Heights are printed to a thousandth of an inch, and places rounded to ticks [ticks]."""
_LOOKS = 8
"""Places along each piece of a foot that are looked at."""
_FACES = ("top", "front", "left end", "right end")
_OWN_HEIGHT = "own_height"
"""What a foot stands on for which the job gives a height."""

type Spot = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Floors:
    """A room's floor and its shower's; heights over the panels [ticks]."""

    ref: str
    room: float | None
    shower: Surface | None

    def may_lie(self, at: Spot, height: float, ref: str = "") -> bool:
        """Whether a finished floor, or the kerb's top, lies at that height there: any, or the one referred to."""
        return any(abs(height - found) <= NEAR for met, found in self._parts(at) if ref in (met, ""))

    def heights(self, at: Spot) -> Iterator[float]:
        """Every height that the place may have; beside a kerb or step it has two."""
        yield from (height for _, height in self._parts(at))

    def _parts(self, at: Spot) -> Iterator[tuple[str, float]]:
        """What may lie at a place, and how high."""
        if self.shower is None or self.shower.fall is None or self.shower.fall.drain_height is None:
            if self.room is not None:
                yield self.ref, self.room
            return
        fall, outline, spot = self.shower.fall, area_of(self.shower.outline), shapely.Point(at)
        drain = float(self.shower.fall.drain_height)
        away = outline.distance(spot)
        if away <= NEAR:
            yield self.shower.id, drain + height_over_drain(fall, at)
        if fall.kerb is not None and fall.kerb_width is not None and away <= fall.kerb_width * math.sqrt(2) + NEAR:
            yield f"{self.shower.id}/kerb", drain + fall.kerb
        if self.room is not None and (away > 0 or outline.exterior.distance(spot) <= NEAR):
            yield self.ref, self.room


def check_benches(plan: Document) -> Iterator[Objection]:
    """Object to a face of a bench that floats over the floor under it, or begins within it."""
    by_id = {surface.id: surface for surface in plan.surfaces}
    where: dict[str, tuple[Surface, Ring]] = {}
    for surface in plan.surfaces:
        for why, ring in surface.not_tiled:
            if surface.kind == "floor":
                where[why] = surface, ring
    for base, (floor, ring) in where.items():
        faces = {name: by_id[f"{base}/{name}"] for name in _FACES if f"{base}/{name}" in by_id}
        yield from _bench(
            faces, ring, floors_of(floor.room, by_id, plan), wall_line(_behind(faces), floor.room, by_id), plan
        )


def floors_of(room: str, by_id: Mapping[str, Surface], plan: Document) -> Floors:
    """The floors of a room as the plan has them."""
    shower = by_id.get(f"{room}/floor/shower")
    floor = by_id.get(f"{room}/floor")
    height = None
    if shower is not None and shower.fall is not None and shower.fall.room_floor is not None:
        height = float(shower.fall.room_floor)
    elif floor is not None and "tile" in dict(floor.layers):
        height = float(sum(thickness for _, thickness in floor.layers))
    return Floors(f"{room}/floor", height, shower)


def wall_line(wall: str, room: str, by_id: Mapping[str, Surface]) -> tuple[Point, Point] | None:
    """A wall on the drawing of its room's floor, from its left end to its right; None where no floor meets it."""
    for surface in (by_id.get(f"{room}/floor"), by_id.get(f"{room}/floor/shower")):
        for (a, b), met in () if surface is None else zip(sides(surface.outline), surface.met, strict=True):
            if met == wall:
                # A floor is drawn counter-clockwise, walls are read clockwise.
                return b, a
    return None


def _behind(faces: Mapping[str, Surface]) -> str:
    """The wall that a bench stands against, as the back of its top names it."""
    top = faces.get("top")
    return "" if top is None or len(top.met) < 4 else top.met[2]


def _bench(
    faces: Mapping[str, Surface],
    ring: Ring,
    floors: Floors,
    wall: tuple[Point, Point] | None,
    plan: Document,
) -> Iterator[Objection]:
    front = faces.get("front")
    if front is None or wall is None:
        return
    (a, b), length = wall, math.dist(*wall)
    along = ((b[0] - a[0]) / length, (b[1] - a[1]) / length)
    out = (along[1], -along[0])

    def at(left: float, away: float) -> Spot:
        return a[0] + along[0] * left + out[0] * away, a[1] + along[1] * left + out[1] * away

    lefts = [(u - a[0]) * along[0] + (v - a[1]) * along[1] for u, v in ring]
    deep = max((u - a[0]) * out[0] + (v - a[1]) * out[1] for u, v in ring)
    begins = min(lefts) + (built(front, plan) if "left end" in faces else 0)
    depth = deep - built(front, plan)
    for name, face in faces.items():
        if name == "top":
            continue
        if not _steps_named(face):
            yield Objection("VER-766", face.id, "names another floor at a step than stands there")
        for u, height, met in _looked_at(face):
            if name == "front":
                spot = at(begins + u, deep)
            else:
                spot = at(min(lefts), u) if name == "left end" else at(max(lefts), depth - u)
            found = list(floors.heights(spot))
            # Tile may begin above the floor where the job says so, never within it.
            own = met == _OWN_HEIGHT
            stands = height >= min(found, default=height) - NEAR if own else floors.may_lie(spot, height, met)
            if found and not stands:
                yield Objection("VER-766", face.id, "does not begin on the finished floor under it that it names")
                break


def _steps_named(face: Surface) -> bool:
    """Whether the upright pieces of a foot are named by what steps up or down there: a kerb, else the floor."""
    pieces = [
        (met, abs(v - u) <= NEAR)
        for ((u, _), (v, _)), met, kind in zip(sides(face.outline), face.met, face.sides, strict=True)
        if kind == "foot"
    ]
    kerb, room = f"{face.room}/floor/shower/kerb", f"{face.room}/floor"
    return all(
        met == (kerb if kerb in (before[0], after[0]) else room)
        for before, (met, upright), after in zip(pieces, pieces[1:], pieces[2:], strict=False)
        if upright
    )


def _looked_at(face: Surface) -> Iterator[tuple[float, float, str]]:
    """Places along the foot of a face: how far along, how high, and on what it stands."""
    for ((u, low), (v, high)), met, kind in zip(sides(face.outline), face.met, face.sides, strict=True):
        if kind == "foot" and abs(v - u) > NEAR:
            for step in range(_LOOKS + 1):
                share = step / _LOOKS
                yield u + (v - u) * share, low + (high - low) * share, met

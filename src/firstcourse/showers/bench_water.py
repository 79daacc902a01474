"""The membrane over built benches, laid out flat: top, front and free ends, joined to walls and floor."""

import math
from collections.abc import Iterator, Mapping, Sequence

from firstcourse.details import SHOWER_FLOOR
from firstcourse.geometry import area2, bounds, rectangle, sides
from firstcourse.plan import Fall, Side, SideKind, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.showers.developed import Developed, Kind, square_metres, strips_of
from firstcourse.units import to_mm
from firstcourse.values import length


def bench_membranes(
    tiled: Sequence[Surface],
    walls: Mapping[str, Kind],
    rooms: Mapping[str, Kind],
    falls: Mapping[str, Fall],
    rules: RuleSet,
) -> Iterator[Developed]:
    """The membrane of every bench that stands against a waterproof wall, or in a shower floor.

    Args:
        tiled: Surfaces of the job, those of its benches among them.
        walls: Kind of membrane of each waterproof wall, by its id.
        rooms: Kind that walls of a room take, by the room's name, where it has a shower floor.
        falls: How each shower floor falls, by its id.
        rules: Rules in force.
    """
    faces: dict[str, list[Surface]] = {}
    for surface in tiled:
        if not surface.boarded and surface.fall is None and not surface.part_of:
            faces.setdefault(surface.id.rpartition("/")[0], []).append(surface)
    for bench, found in faces.items():
        kind = _kind(bench, found, tiled, walls, rooms)
        if kind is not None:
            fall = falls.get(f"{found[0].room}/floor/shower")
            yield from (_face(surface, kind, fall, rules) for surface in found)


def _kind(
    bench: str,
    faces: Sequence[Surface],
    tiled: Sequence[Surface],
    walls: Mapping[str, Kind],
    rooms: Mapping[str, Kind],
) -> Kind | None:
    for face in faces:
        for side in face.sides:
            if side.meets in walls:
                return walls[side.meets]
    if any(zone.why == bench for surface in tiled if surface.fall is not None for zone in surface.not_tiled):
        return rooms[faces[0].room]
    return None


def _four(surface: Surface) -> tuple[Side, ...]:
    """The sides of a face, the pieces of a foot that follows the floor as one."""
    return (surface.sides[0], *surface.sides[-3:])


def _begins(surface: Surface, fall: Fall | None) -> int:
    """Height over the panels at which the membrane of an upright face begins [ticks].

    On a shower floor that is the floor's own membrane, below its finished height; elsewhere the panels.
    """
    feet = list(zip(sides(surface.outline), surface.sides, strict=True))[:-3]
    if fall is None or any(side.meets != f"{surface.room}/{SHOWER_FLOOR}" for _, side in feet):
        return 0
    return min(high for line, _ in feet for _, high in line) - fall.membrane_below


def _face(surface: Surface, kind: Kind, fall: Fall | None, rules: RuleSet) -> Developed:
    """One face; what stands upright is covered from the floor up, though its tile may begin higher.

    Bands run along walls, floor and every edge, once where two faces meet. Of its corners those where all planes
    meet inwards take an inside piece, the others an outside one, as where an edge runs into a wall.
    """
    left, lower, right, upper = bounds(surface.outline)
    ring = rectangle(left, _begins(surface, fall) if surface.kind is SurfaceKind.WALL else lower, right, upper)
    lines = list(zip(sides(ring), _four(surface), strict=True))
    own = [side.shown for _, side in lines]
    met = [side.kind is not SideKind.FREE for _, side in lines]
    corners = [met[i - 1] and met[i] for i in range(len(lines)) if own[i - 1] and own[i]]
    across, up = to_mm(right - left), to_mm(upper - bounds(ring)[1])
    strips, laps = strips_of(across, up, kind, rules)
    return Developed(
        surface=surface.id,
        kind=kind,
        area=square_metres(area2(ring) / 2),
        laps=laps,
        strips=strips,
        band=math.fsum(
            to_mm(round(math.dist(a, b))) for ((a, b), _), mine in zip(lines, own, strict=True) if mine
        ),
        inside=sum(corners),
        outside=len(corners) - sum(corners),
        of="bench",
        parts={"across": length(right - left), "high": length(upper - bounds(ring)[1])},
    )

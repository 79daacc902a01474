"""What the job gives of each floor, wall and ceiling, beside the surface that the plan makes of it."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

import shapely
from shapely import Polygon

from firstcourse.geometry import bounds
from firstcourse.units import TICKS_PER_MM, to_mm
from firstcourse.verify.fields import FieldError, Node, ticks
from firstcourse.verify.structure import Document, Surface

_TICKS_PER_M = 1000 * TICKS_PER_MM
_UNJUDGED = "SUI-902"


@dataclass(frozen=True, slots=True)
class Part:
    """One floor, wall or ceiling.

    Attributes:
        surface: As planned.
        room: What the job says of its room.
        given: What the job says of it.
        edge_mm: Longest edge of its tile; None where it has no tile or that is not given.
        is_tiled: Whether a tile is given for it.
        is_stone: Its tile is natural stone.
    """

    surface: Surface
    room: Node
    given: Node
    edge_mm: float | None
    is_tiled: bool
    is_stone: bool

    @property
    def ref(self) -> str:
        """Reference to it."""
        return self.surface.id

    @property
    def wall(self) -> str:
        """A wall by its corners, such as `A-B`."""
        return self.given.text("wall")

    @property
    def whole(self) -> tuple[int, int, int, int]:
        """About all of it, boarded or not [ticks]."""
        return bounds(self.surface.extent or self.surface.outline)


def parts(plan: Document) -> Iterator[Part]:
    """Every floor, wall and ceiling that was judged; those that the rule book cannot judge are told instead."""
    surfaces = {surface.id: surface for surface in plan.surfaces}
    unjudged = {said.place for said in plan.findings if said.code == _UNJUDGED}
    for room in plan.job.nodes("rooms", ()):
        name = room.text("name")
        given = [(f"{name}/{kind}", room.part(kind)) for kind in ("floor", "ceiling") if kind in room.value]
        given += [(f"{name}/wall/{wall.text('wall')}", wall) for wall in room.nodes("walls", ())]
        for ref, part in given:
            surface = surfaces.get(ref)
            if surface is not None and ref not in unjudged:
                yield Part(surface, room, part, *tile_given(plan, part))


def length_mm(node: Node, key: str) -> float:
    """A length that was given, below nothing or not [mm].

    Raises:
        FieldError: It is missing or no length.
    """
    return to_mm(ticks(node.raw(key), f"{node.where}.{key}"))


def ends_of(pair: str, where: str) -> tuple[str, str]:
    """The corners of a wall or a distance, such as `A-C`.

    Raises:
        FieldError: It does not name two.
    """
    one, dash, other = pair.partition("-")
    if not dash or "-" in other:
        raise FieldError(where, f"'{pair}' does not name two corners")
    return one, other


def part_of(plan: Document, ref: str) -> Part | None:
    """What the job gives of one surface."""
    return next((part for part in parts(plan) if part.ref == ref), None)


def boarded_m2(surface: Surface) -> float:
    """Area of a surface, openings left out, a round one by the square about it; lined windows as given [m²]."""
    holes = []
    for opening in surface.openings:
        if opening.outline is None:
            (u, v), half = opening.centre, -(-opening.diameter // 2)
            holes.append(shapely.box(u - half, v - half, u + half, v + half))
        else:
            holes.append(Polygon(opening.outline))
    return float(Polygon(surface.outline).difference(shapely.unary_union(holes)).area) / _TICKS_PER_M**2


def tile_given(plan: Document, part: Node) -> tuple[float | None, bool, bool]:
    """Longest edge of a part's tile [mm], whether it has one, and whether it is stone: its tiling's first."""
    entered, tiling = part.part("tile"), part.part("tiling")
    named = {tiling.raw("tile", None)} | {
        piece.raw("tile", None)
        for repeat in plan.job.nodes("repeats", ())
        if repeat.raw("id", None) == tiling.raw("repeat", "")
        for piece in repeat.nodes("pieces", ())
    }
    chosen = [tile for tile in plan.job.nodes("tiles", ()) if tile.raw("id", None) in named]
    if chosen:
        stone = any(tile.raw("kind", "") == "stone" for tile in chosen)
        return max(map(_longest, chosen)), True, stone
    edge = length_mm(entered, "edge") if "edge" in entered.value else None
    return edge, bool(entered.value), entered.raw("kind", "") == "stone"


def _longest(tile: Node) -> float:
    across, up = (size / TICKS_PER_MM for size in tile.size("size"))
    if tile.text("shape", "rectangle") != "hexagon":
        return max(across, up)
    # A hexagon is laid as a regular one, in whole ticks.
    return max(across, round(across * TICKS_PER_MM * 2 / math.sqrt(3)) / TICKS_PER_MM)

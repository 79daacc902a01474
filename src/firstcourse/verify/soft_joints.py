"""Soft joints counted again: none missing along what tile meets, and no field longer than the spacing allows."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

import shapely
from shapely import LineString, MultiLineString, Polygon
from shapely.affinity import rotate
from shapely.ops import unary_union

from firstcourse.geometry import sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.build_up import met_within
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection
from firstcourse.verify.wall_feet import is_floor

_FRAMES_DEG = (0, 45)
"""Soft joints run along a pattern, which lies level or turned by half a right angle [degrees]."""
_NEAR_MM = 90
"""A side with tile within this is met by it: boards, bed and tile of the next surface may lie between [mm]."""
_LEAST_SHARE = 0.8
"""Share of a side's tiled length that a soft joint must run along; its ends stop at other joints."""
_SHORT_MM = 150
_CORNER_MM = 3
"""Two sides of a niche's linings whose lengths differ by less meet in one corner."""
_LEAST_CORNER_MM = 40
_ALONG = 0.99
_SPACING = {"slab": "slab", "sun": "moist", "heat": "moist", "moist": "moist", "exterior": "exterior"}
"""Rule of spacing by what the tile is exposed to; plainly inside the rule of floors or walls alone."""


def check_soft_joints(plan: Document) -> Iterator[Objection]:
    """Object to tile that nothing lets move."""
    rooms = [surface.id.split("/")[0] for surface in plan.surfaces if surface.tiles]
    for surface in plan.surfaces:
        if surface.tiles:
            yield from _fields(surface, plan)
            yield from _widths(surface, plan)
            yield from _edges(surface, plan, shared=rooms.count(surface.id.split("/")[0]) > 1)
            yield from _linings(surface, plan)


def _fields(surface: Surface, plan: Document) -> Iterator[Objection]:
    limit = asked_of(surface, plan).spacing
    tiles = unary_union([area.shape for area in surface.tiled])
    bands = [
        LineString(joint.line).buffer(joint.width / 2 + TICKS_PER_MM, cap_style="square")
        for joint in surface.soft_joints
    ]
    for part in shapely.get_parts(tiles.difference(unary_union(bands))):
        extents = []
        for turn in _FRAMES_DEG:
            left, lower, right, upper = rotate(part, -turn, origin=(0, 0)).bounds
            extents.append(max(right - left, upper - lower))
        if min(extents) > limit + TICKS_PER_MM:
            yield Objection(
                "VER-707", surface.id, f"runs {min(extents) / TICKS_PER_MM:.0f} mm without a joint free to move"
            )


@dataclass(frozen=True, slots=True)
class Asked:
    """What the rules ask of the soft joints of a surface.

    Attributes:
        spacing: Farthest apart [ticks].
        edge: Least width at the edge of the tile [ticks].
        width: Least width across its field [ticks].
        by_heat: Outside, where what the tile takes of heat and cold may ask for more.
        rule: What sets the spacing.
        rules: All of them, in the order in which they are told.
    """

    spacing: int
    edge: int
    width: int
    by_heat: bool
    rule: str
    rules: tuple[str, ...]


def asked_of(surface: Surface, plan: Document) -> Asked:
    """What the rules ask of a surface's soft joints, by its kind, its tile and what it is exposed to."""
    rules, place = plan.rules, "floor" if _is_level(surface) else "wall"
    spacings = [f"tile.movement.spacing_{place}"]
    if (there := _SPACING.get(surface.tile_exposure)) is not None:
        spacings.append(f"tile.movement.spacing_{f'moist_{place}' if there == 'moist' else there}")
    spacing = min((rule for rule in spacings if rules.has(rule)), key=rules.ticks)
    limit, by_heat = rules.ticks(spacing), surface.tile_exposure == "exterior"
    if by_heat:
        near = "tile.movement.spacing_exterior_close"
        close = rules.has(near) and limit <= rules.ticks(near)
        width = edge = f"tile.movement.width_exterior_{'close' if close else 'far'}"
    else:
        mosaic = _is_level(surface) and _is_mosaic(surface, plan)
        width = f"tile.movement.width_{'mosaic' if mosaic else place}"
        edge = f"tile.movement.width_{'perimeter' if _is_level(surface) else 'plane'}"
    joint = max((area.joint for area in surface.tiled), default=0)
    asked = ("tile.movement.change_of_plane", "tile.movement.required", spacing, width, edge)
    return Asked(
        spacing=limit,
        edge=max(joint, rules.ticks(edge)),
        width=max(joint, rules.ticks(width)),
        by_heat=by_heat,
        rule=spacing,
        rules=tuple(dict.fromkeys(asked)),
    )


def _widths(surface: Surface, plan: Document) -> Iterator[Objection]:
    """No soft joint is narrower than its place asks."""
    asked = asked_of(surface, plan)
    for joint in surface.soft_joints:
        if joint.width < (asked.edge if joint.place == "edge" else asked.width):
            yield Objection(
                "VER-709", surface.id, f"has a joint free to move of {joint.width / TICKS_PER_MM:.1f} mm only"
            )


def _is_mosaic(surface: Surface, plan: Document) -> bool:
    """Whether all tile of a surface counts as mosaic."""
    names = {name for area in surface.tiled for name in area.tiles if name in plan.tile_stock}
    sizes = [max(plan.tile_stock[name].size) for name in names]
    return bool(sizes) and max(sizes) <= plan.rules.ticks("tile.trowel.mosaic_side")


def _is_level(surface: Surface) -> bool:
    return surface.kind == "floor"


def _edges(surface: Surface, plan: Document, *, shared: bool) -> Iterator[Objection]:
    near = met_within(surface, plan, _NEAR_MM)
    tiles = unary_union([area.shape for area in surface.tiled]).buffer(near)
    joints = MultiLineString([joint.line for joint in surface.soft_joints]).buffer(near)
    for (a, b), kind in zip(sides(surface.outline), surface.sides, strict=True):
        # Between two tiled surfaces the bead is listed with one of them.
        if kind == "free" or (kind == "perimeter" and shared):
            continue
        met = LineString([a, b]).intersection(tiles).difference(_standing(surface, near))
        if met.length < _SHORT_MM * TICKS_PER_MM:
            continue
        if met.intersection(joints).length < _LEAST_SHARE * met.length:
            length = math.hypot(b[0] - a[0], b[1] - a[1]) / TICKS_PER_MM
            yield Objection("VER-708", surface.id, f"has no joint free to move along its {length:.0f} mm side")


def _linings(surface: Surface, plan: Document) -> Iterator[Objection]:
    """Every change of plane within niches, and of a bench, has its joint on one of the two surfaces there."""
    if surface.boarded or surface.kind == "floor":
        return
    host = next((other for other in plan.surfaces if other.id == surface.part_of), None)
    if host is not None and host.kind != "wall":
        return
    around = [other for other in plan.surfaces if other.part_of == surface.part_of] if host else [surface]
    if around[0] is not surface:
        return
    joined = [length for other in around for length in _meetings(other, plan, joined=True)]
    for other in around:
        for length in _meetings(other, plan, joined=False):
            near = [one for one in joined if abs(length - one) <= _CORNER_MM * TICKS_PER_MM]
            # A joint serves the two sides that meet there, and no others of that length.
            if near and host is not None:
                joined.remove(min(near, key=lambda one: abs(one - length)))
            else:
                told = f"has no joint free to move along its {length / TICKS_PER_MM:.0f} mm side"
                yield Objection("VER-708", other.id, told)


def _meetings(surface: Surface, plan: Document, *, joined: bool) -> Iterator[float]:
    """Lengths of the sides where a surface meets another, with a joint along them or without [ticks]."""
    near = met_within(surface, plan, _NEAR_MM / 3)
    lines = [LineString(joint.line) for joint in surface.soft_joints]
    for (a, b), kind in zip(sides(surface.outline), surface.sides, strict=True):
        length = math.dist(a, b)
        if kind != "perimeter" or length < _LEAST_CORNER_MM * TICKS_PER_MM:
            continue
        side = LineString([a, b]).buffer(near)
        along = sum(
            line.length
            for line in lines
            if side.covers(line) and abs(_cosine(line, (b[0] - a[0], b[1] - a[1]))) > _ALONG
        )
        if (along >= length / 2) == joined:
            yield length


def _cosine(line: LineString, way: tuple[int, int]) -> float:
    (x0, y0), (x1, y1) = line.coords[0], line.coords[-1]
    return float(((x1 - x0) * way[0] + (y1 - y0) * way[1]) / (line.length * math.hypot(*way)))


def _standing(surface: Surface, near: float) -> shapely.Geometry:
    """Where something stands against a side, tile meets that; the bead over a floor lies along the side itself."""
    rings = [Polygon(opening.outline) for opening in surface.openings if opening.outline is not None]
    rings += [Polygon(ring) for why, ring in surface.not_tiled if not is_floor(surface, why)]
    return unary_union(rings).buffer(near)

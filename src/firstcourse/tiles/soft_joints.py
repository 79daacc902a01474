"""Joints left free to move: at edges and changes of plane, in doorways, over joints below, and in the field."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import shapely
from shapely import LineString, MultiPolygon, Polygon, STRtree
from shapely.ops import unary_union

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import sides
from firstcourse.plan import OpeningKind, Segment, SideKind, SoftJoint, SoftWhy, Surface, Zone
from firstcourse.rules import RuleEntry
from firstcourse.tiles.field import STANDING
from firstcourse.tiles.lines import Lines, positions
from firstcourse.tiles.model import XY, LaidTile
from firstcourse.tiles.movement import Spacing
from firstcourse.units import TICKS_PER_MM, ticks_from_mm
from firstcourse.values import Ref, Word, length, most
from firstcourse.workings import Working

DOORWAY: SoftWhy = "doorway"
"""What lies at a joint that may move to the nearest grout joint."""
# A bead shorter than this is a smear where two beads meet, not a joint of its own [mm].
_LEAST_LENGTH = 3.0
# A joint runs along grout joints where it lies no deeper than this in any tile [mm].
_INSIDE = 0.1
# Longer than any room [mm].
_REACH = 1e5
# Two directions within this cosine of square to each other run across each other; a field is parted squarely.
_ACROSS = 0.01


@dataclass(frozen=True, slots=True, kw_only=True)
class SoftJoints:
    """The soft joints of one surface.

    Attributes:
        joints: Edges first, then doorways and joints over joints below, then the field.
        findings: Where a joint has to run through tiles.
        working: How many there are, and how far apart.
    """

    joints: tuple[SoftJoint, ...]
    working: Working
    findings: tuple[Finding, ...] = ()


def soft_joints(
    surface: Surface,
    area: Polygon | MultiPolygon,
    families: tuple[Lines, ...],
    spacing: Spacing,
    *,
    edge: int,
    joint: int,
    before: Sequence[int] = (),
    over: tuple[tuple[Segment, SoftWhy], ...] = (),
    on_neighbour: frozenset[int] = frozenset(),
) -> SoftJoints:
    """Place the soft joints of one surface.

    Args:
        surface: Its outline, sides and openings.
        area: Where its tile lies, edge joints taken off [mm].
        families: The pattern's joint lines, straight ones and those that only every other course keeps.
        spacing: Spacing and width in the field.
        edge: Width of the joint along the edges [ticks].
        joint: Width of the grout joints [ticks].
        before: Along each side, thickness of what stands before it there, such as the tile of the wall that meets
            this one; none where not given [ticks].
        over: Doorways through which the tile runs on, and joints in the backing or structure to be carried up
            [ticks], each with what it is.
        on_neighbour: Sides whose joint is listed on the surface beyond them.
    """
    joints = [
        *_edges(surface, area, edge, before or [0] * len(surface.sides), on_neighbour),
        *_rims(surface, area, edge),
        *_over_floors(surface, area, edge),
    ]
    findings: list[Finding] = list(_too_wide(surface, max(edge, spacing.width), spacing))
    field_joints: list[SoftJoint] = []
    forced: list[tuple[XY, float]] = []
    given: list[LineString] = []
    # A doorway's joint comes first: it moves to a grout joint, those over others stay.
    for line, why in sorted(over, key=lambda one: one[1] != DOORWAY):
        placed, normal, at, cut = _across(line, families, joint, snap=why == DOORWAY)
        ends = [(normal[0] * at + normal[1] * far, normal[1] * at - normal[0] * far) for far in (-_REACH, _REACH)]
        if placed.intersection(area).length >= LineString(ends).intersection(area).length - _LEAST_LENGTH:
            # One that ends in mid-floor, as by a slip in its length, parts no field.
            forced.append((normal, at))
        given.append(placed)
        field_joints += _laid(placed, area, spacing.width, why)
        if cut:
            findings.append(_cut_finding(surface, why, spacing.below_rule))
    there = unary_union(given).buffer(spacing.width / TICKS_PER_MM, cap_style="flat")
    ways = _two_ways(families)
    counts: list[int] = []
    for family in ways:
        found, cut = positions(family, area, spacing.limit / TICKS_PER_MM, _same_way(family, forced))
        laid = [
            tuple(_laid(family.line(at, area).difference(there), area, spacing.width, "field")) for at in found
        ]
        counts.append(sum(bool(parts) for parts in laid))
        field_joints += [part for parts in laid for part in parts]
        if found and cut:
            findings.append(_cut_finding(surface, "field", spacing.rule))
    working = Working(
        formula="tiles-soft_joints",
        at=(surface.id,),
        inputs={
            "spacing": length(spacing.limit),
            "edge": length(edge),
            "width": length(spacing.width),
            "ways": tuple(Word(word=family.way) for family in ways),
            "across": tuple(counts),
            "extents": tuple(length(ticks_from_mm(family.extent(area))) for family in ways),
            "rules": tuple(
                dict.fromkeys(
                    Ref(ref=f"rule/{rule.id}")
                    for rule in (
                        spacing.edge_rule,
                        spacing.below_rule,
                        spacing.rule,
                        spacing.width_rule,
                        spacing.edge_width_rule,
                    )
                )
            ),
        },
        result=len(joints) + len(field_joints),
        rule=spacing.rule.id,
    )
    return SoftJoints(joints=(*joints, *field_joints), findings=tuple(dict.fromkeys(findings)), working=working)


def with_cuts(joints: Sequence[SoftJoint], tiles: Sequence[LaidTile]) -> tuple[SoftJoint, ...]:
    """Soft joints, those across the field with a word on whether tiles as laid, uncut, lie across them."""
    if all(joint.place == "edge" for joint in joints):
        return tuple(joints)
    tree = STRtree([Polygon(tile.laid).buffer(-_INSIDE) for tile in tiles])

    def lies_across(joint: SoftJoint) -> bool:
        line = LineString([_mm(point) for point in joint.line])
        return joint.place == "field" and len(tree.query(line, predicate="intersects")) > 0

    return tuple(joint.model_copy(update={"cut": lies_across(joint)}) for joint in joints)


def _edges(
    surface: Surface, area: Polygon | MultiPolygon, edge: int, before: Sequence[int], on_neighbour: frozenset[int]
) -> Iterator[SoftJoint]:
    """A joint along each side that meets something, on the middle of the gap that is left there."""
    reach = area.buffer(1.6 * edge / TICKS_PER_MM, join_style="mitre")
    ring = _inner_ring(surface, [depth + edge / 2 for depth in before])
    for index, side in enumerate(surface.sides):
        if side.kind is SideKind.FREE or index in on_neighbour:
            continue
        a, b = ring[index], ring[(index + 1) % len(ring)]
        for part in _parts(LineString([a, b]).intersection(reach)):
            yield _joint(part, edge, "plane", at=f"{surface.id}/side/{index}")


def _inner_ring(surface: Surface, depths: Sequence[float]) -> list[XY]:
    """The outline with each side that meets something moved in by its depth [mm]."""
    moved = []
    for (a, b), side, inwards in zip(sides(surface.outline), surface.sides, depths, strict=True):
        depth = 0.0 if side.kind is SideKind.FREE else inwards
        length = math.dist(a, b)
        normal = (-(b[1] - a[1]) / length, (b[0] - a[0]) / length)
        moved.append((normal, normal[0] * a[0] + normal[1] * a[1] + depth))
    ring = []
    for index, (normal, at) in enumerate(moved):
        before, at_before = moved[index - 1]
        cross = before[0] * normal[1] - before[1] * normal[0]
        if abs(cross) < 1e-6:
            corner = surface.outline[index]
            off = at - (normal[0] * corner[0] + normal[1] * corner[1])
            point = (corner[0] + normal[0] * off, corner[1] + normal[1] * off)
        else:
            point = (
                (at_before * normal[1] - at * before[1]) / cross,
                (before[0] * at - normal[0] * at_before) / cross,
            )
        ring.append((point[0] / TICKS_PER_MM, point[1] / TICKS_PER_MM))
    return ring


def _rims(surface: Surface, area: Polygon | MultiPolygon, edge: int) -> Iterator[SoftJoint]:
    """A joint where tile meets a tub, tray or column within the surface; a cabinet's plinth covers an open gap."""
    half = edge / 2 / TICKS_PER_MM
    inside = Polygon([_mm(point) for point in surface.outline])
    reach = area.buffer(3.2 * half, join_style="mitre").intersection(inside)
    for opening in surface.openings:
        if opening.kind not in STANDING or opening.kind is OpeningKind.CABINET or opening.outline is None:
            continue
        ring = Polygon([_mm(point) for point in opening.outline]).buffer(half, join_style="mitre").exterior
        for part in _parts(_split_at_corners(ring).intersection(reach)):
            yield _joint(part, edge, "restrained", at=f"{surface.id}/opening/{opening.id}")


def _over_floors(surface: Surface, area: Polygon | MultiPolygon, edge: int) -> Iterator[SoftJoint]:
    """A joint where a wall's tile stands over a finished floor or kerb above the foot of its boards."""
    half = edge / 2 / TICKS_PER_MM
    inside = Polygon([_mm(point) for point in surface.outline])
    reach = area.buffer(3.2 * half, join_style="mitre").intersection(inside)
    floors = [zone for zone in surface.not_tiled if is_floor(surface, zone)]
    under = unary_union([Polygon([_mm(point) for point in zone.outline]) for zone in floors])
    for zone in floors:
        shape = Polygon([_mm(point) for point in zone.outline])
        rim = shape.buffer(half, join_style="mitre").exterior
        for part in _parts(_split_at_corners(rim).intersection(reach).difference(under)):
            yield _joint(part, edge, "plane", at=zone.why)


def is_floor(surface: Surface, zone: Zone) -> bool:
    """Whether what stands before a wall is a floor of its room, or the kerb upon it."""
    return zone.why == f"{surface.room}/floor" or zone.why.startswith(f"{surface.room}/floor/")


def _split_at_corners(ring: shapely.LinearRing) -> shapely.MultiLineString:
    points = list(ring.coords)
    return shapely.MultiLineString([LineString([a, b]) for a, b in pairwise(points)])


def _across(
    line: Segment, families: Iterable[Lines], joint: int, *, snap: bool
) -> tuple[LineString, XY, float, bool]:
    """A joint along a given line: the line [mm], its normal and offset, and whether tiles are cut along it.

    A doorway's joint moves to the nearest straight grout line within one course; a joint over another stays.
    """
    a, b = _mm(line[0]), _mm(line[1])
    length = math.dist(a, b)
    normal = (-(b[1] - a[1]) / length, (b[0] - a[0]) / length)
    at = normal[0] * a[0] + normal[1] * a[1]
    for family in families:
        turn = family.normal[0] * normal[0] + family.normal[1] * normal[1]
        if not family.straight or abs(turn) < 1 - 1e-9:
            continue
        there = math.copysign(1.0, turn) * family.nearest(math.copysign(1.0, turn) * at)
        if abs(there - at) <= (family.step if snap else joint / 2 / TICKS_PER_MM):
            off = there - at
            moved = [(p[0] + normal[0] * off, p[1] + normal[1] * off) for p in (a, b)]
            return LineString(moved), normal, there, False
    return LineString([a, b]), normal, at, True


def _two_ways(families: tuple[Lines, ...]) -> tuple[Lines, ...]:
    """Two ways across the field: the pattern's straight joints first, then what runs square across them.

    Of patterns without straight joints, such as hexagons, level and upright lines go before slanted ones.
    """
    ranked = sorted(families, key=lambda family: (not family.straight, family.way == "slanted"))
    first = ranked[0] if ranked else Lines.none((0.0, 1.0))
    across = (-first.normal[1], first.normal[0])
    for family in ranked[1:]:
        if abs(family.normal[0] * first.normal[0] + family.normal[1] * first.normal[1]) <= _ACROSS:
            return first, family
    return first, Lines.none(across)


def _same_way(family: Lines, forced: Iterable[tuple[XY, float]]) -> tuple[float, ...]:
    found = []
    for normal, at in forced:
        turn = family.normal[0] * normal[0] + family.normal[1] * normal[1]
        if abs(turn) > 1 - 1e-6:
            found.append(math.copysign(1.0, turn) * at)
    return tuple(found)


def _laid(line: shapely.Geometry, area: Polygon | MultiPolygon, width: int, why: SoftWhy) -> Iterator[SoftJoint]:
    for part in _parts(line.intersection(area)):
        yield _joint(part, width, why)


def _parts(shape: shapely.Geometry) -> list[LineString]:
    found = [part for part in shapely.get_parts(shape) if isinstance(part, LineString)]
    merged = [line for line in found if line.length >= _LEAST_LENGTH]
    return sorted(merged, key=lambda line: tuple(line.coords))


def _joint(line: LineString, width: int, why: SoftWhy, *, at: str = "") -> SoftJoint:
    points = tuple((ticks_from_mm(u), ticks_from_mm(v)) for u, v in line.coords)
    return SoftJoint(line=points, width=width, why=why, at=at, place="edge" if at else "field")


def _cut_finding(surface: Surface, why: SoftWhy, rule: RuleEntry) -> Finding:
    return rule.found("TIL-110", Severity.NOTE, surface.id, remedies=("cut_clean",), why=Word(word=why))


def _too_wide(surface: Surface, width: int, spacing: Spacing) -> Iterator[Finding]:
    if width > spacing.widest:
        yield spacing.widest_rule.found(
            "TIL-111",
            Severity.FIX,
            surface.id,
            measured=length(width),
            limit=most(length(spacing.widest)),
            remedies=("closer",),
        )


def _mm(point: tuple[int, int]) -> XY:
    return point[0] / TICKS_PER_MM, point[1] / TICKS_PER_MM

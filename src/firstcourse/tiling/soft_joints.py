"""Joints left free to move: at edges and changes of plane, in doorways, over joints below, and in the field."""

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Literal

import shapely
from shapely import LineString, MultiPolygon, Polygon
from shapely.ops import unary_union

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import sides
from firstcourse.plan import OpeningKind, Segment, SideKind, SoftJoint, Surface, Zone
from firstcourse.rules import RuleEntry
from firstcourse.tiling.field import STANDING
from firstcourse.tiling.lines import Lines, positions
from firstcourse.tiling.model import XY
from firstcourse.tiling.movement import Spacing
from firstcourse.tiling.words import fine_text
from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_MM, Tape, format_length, ticks_from_mm
from firstcourse.values import Name, length, most
from firstcourse.workings import Working

DOORWAY = "doorway"
"""What lies at a joint that may move to the nearest grout joint."""
# A bead shorter than this is a smear where two beads meet, not a joint of its own [mm].
_LEAST_LENGTH = 3.0
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
        workings: `soft joints SURFACE`.
    """

    joints: tuple[SoftJoint, ...]
    findings: tuple[Finding, ...] = ()
    workings: dict[str, Working] = field(default_factory=dict)


def soft_joints(
    surface: Surface,
    area: Polygon | MultiPolygon,
    families: tuple[Lines, ...],
    spacing: Spacing,
    *,
    edge: int,
    joint: int,
    tape: Tape = Tape.INCH,
    before: Sequence[int] = (),
    doorways: tuple[Segment, ...] = (),
    over: tuple[tuple[Segment, str], ...] = (),
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
        tape: Tape of the job.
        before: Along each side, thickness of what stands before it there, such as the tile of the wall that meets
            this one; none where not given [ticks].
        doorways: Lines across doorways through which the tile runs on [ticks].
        over: Joints in the backing or structure to be carried up, and what they are [ticks].
        on_neighbour: Sides whose joint is listed on the surface beyond them.
    """
    joints = [
        *_edges(surface, area, edge, before or [0] * len(surface.sides), on_neighbour),
        *_rims(surface, area, edge),
        *_over_floors(surface, area, edge),
    ]
    fixed = [(line, DOORWAY) for line in doorways] + list(over)
    findings: list[Finding] = list(_too_wide(surface, max(edge, spacing.width), spacing))
    field_joints: list[SoftJoint] = []
    forced: list[tuple[XY, float]] = []
    given: list[LineString] = []
    for line, why in fixed:
        placed, normal, at, cut = _across(line, families, joint, snap=why == DOORWAY)
        ends = [(normal[0] * at + normal[1] * far, normal[1] * at - normal[0] * far) for far in (-_REACH, _REACH)]
        if placed.intersection(area).length >= LineString(ends).intersection(area).length - _LEAST_LENGTH:
            # One that ends in mid-floor, as by a slip in its length, parts no field.
            forced.append((normal, at))
        given.append(placed)
        field_joints += _laid(placed, area, spacing.width, _worded(why, cut, spacing.width, joint, tape))
        if cut:
            findings.append(_cut_finding(surface, why, spacing.below_rule))
    counts: dict[str, str] = {}
    for family in _two_ways(families):
        found, cut = positions(family, area, spacing.limit / TICKS_PER_MM, _same_way(family, forced))
        counts[f"joints {family.way}"] = str(len(found))
        counts[f"extent {family.way}"] = format_length(ticks_from_mm(family.extent(area)), tape)
        for at in found:
            why = f"field, at most {_far(spacing.limit, tape)} apart"
            there = unary_union(given).buffer(spacing.width / TICKS_PER_MM, cap_style="flat")
            line_mm = family.line(at, area).difference(there)
            field_joints += _laid(line_mm, area, spacing.width, _worded(why, cut, spacing.width, joint, tape))
        if found and cut:
            findings.append(_cut_finding(surface, "field", spacing.rule))
    number = len(joints) + len(field_joints)
    working = Working(
        title=f"Soft joints of {surface.id}",
        formula="edges and changes of plane + doorways + joints below + field, parts no longer than the spacing",
        values={
            "spacing": _far(spacing.limit, tape),
            "width at edges": fine_text(edge, tape),
            "width in the field": fine_text(spacing.width, tape),
            **counts,
        },
        result=str(number),
        unit="joints",
        source="; ".join(
            dict.fromkeys(
                rule.cited
                for rule in (
                    spacing.edge_rule,
                    spacing.below_rule,
                    spacing.rule,
                    spacing.width_rule,
                    spacing.edge_width_rule,
                )
            )
        ),
    )
    return SoftJoints(
        joints=(*joints, *field_joints),
        findings=tuple(dict.fromkeys(findings)),
        workings={f"soft joints {surface.id}": working},
    )


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
        what = side.label or ("floor" if side.kind is SideKind.FOOT else "edge")
        for part in _parts(LineString([a, b]).intersection(reach)):
            yield _joint(part, edge, place="edge", why=f"{what}: change of plane or material")


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
            yield _joint(
                part, edge, place="edge", why=f"{opening.kind.value} {opening.id}: meets what restrains it"
            )


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
            yield _joint(
                part, edge, place="edge", why=f"{zone.why.rpartition('/')[2]}: change of plane or material"
            )


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


def _laid(line: shapely.Geometry, area: Polygon | MultiPolygon, width: int, why: str) -> Iterator[SoftJoint]:
    for part in _parts(line.intersection(area)):
        yield _joint(part, width, why)


def _parts(shape: shapely.Geometry) -> list[LineString]:
    found = [part for part in shapely.get_parts(shape) if isinstance(part, LineString)]
    merged = [line for line in found if line.length >= _LEAST_LENGTH]
    return sorted(merged, key=lambda line: tuple(line.coords))


def _joint(line: LineString, width: int, why: str, place: Literal["edge", "field"] = "field") -> SoftJoint:
    points = tuple((ticks_from_mm(u), ticks_from_mm(v)) for u, v in line.coords)
    return SoftJoint(line=points, width=width, why=why, place=place)


def _worded(why: str, cut: bool, width: int, joint: int, tape: Tape) -> str:
    if cut:
        return f"{why}; no straight grout joint there, tiles are cut along it"
    if width > joint:
        return f"{why}; on a grout joint, tiles beside it trimmed to leave {fine_text(width, tape)}"
    return f"{why}; on a grout joint"


def _cut_finding(surface: Surface, why: str, rule: RuleEntry) -> Finding:
    return rule.found("TIL-110", Severity.NOTE, surface.id, remedies=("cut_clean",), why=Name(name=why))


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


def _far(ticks: int, tape: Tape) -> str:
    return f"{ticks / TICKS_PER_MM / 1000:g} m" if tape is Tape.MM else f"{ticks / TICKS_PER_FOOT:g} ft"


def _mm(point: tuple[int, int]) -> XY:
    return point[0] / TICKS_PER_MM, point[1] / TICKS_PER_MM

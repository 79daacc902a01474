"""Why each soft joint is there, derived from where it lies: along what it meets, or across the field."""

import math
from collections.abc import Iterator

import numpy as np
import shapely
from shapely import LineString, Polygon, STRtree

from firstcourse.geometry import sides
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.build_up import met_within
from firstcourse.verify.start_reasons import tilings
from firstcourse.verify.structure import Document, SoftJoint, Surface
from firstcourse.verify.verdict import Objection
from firstcourse.verify.wall_feet import is_floor

_CODE = "VER-722"
_RESTRAINS = ("tub", "tray", "column")
_ALONG = 0.999
_NEAR_MM = 90
"""Farthest from a side that its joint may lie: boards, bed and tile of what meets it come between [mm]."""
_ON = 3.0
"""A joint's middle lies half its width off what it is along, to this [ticks]."""
_SAME_LINE = TICKS_PER_MM
_INSIDE = 64.0
"""A joint is along a grout joint when it lies no deeper than this in any tile [ticks]."""


def check_soft_reasons(plan: Document) -> Iterator[Objection]:
    """Object to a soft joint whose reason is not what it lies at."""
    asked = tilings(plan)
    for surface in plan.surfaces:
        near = met_within(surface, plan, _NEAR_MM)
        edges = [joint for joint in surface.soft_joints if joint.place == "edge"]
        for joint in edges:
            if joint.cut or not _meets(surface, joint, near):
                told = f"{joint.why} {joint.at}".strip()
                yield Objection(_CODE, surface.id, f"has a joint free to move for '{told}', which it is not along")
        given = asked[surface.id].nodes("soft_joints", ()) if surface.id in asked else []
        overs = {joint.text("over").replace(" ", "_") for joint in given}
        across = [joint for joint in surface.soft_joints if joint.place != "edge"]
        for joint, deep in zip(across, _deep_in_tile(surface, across), strict=True):
            if joint.at or joint.why not in {"field", *overs}:
                yield Objection(_CODE, surface.id, f"has a joint across its field that is told to be {joint.why}")
            elif joint.cut != deep:
                told = "on a grout joint" if deep else "through tiles"
                yield Objection(_CODE, surface.id, f"has a joint across its field that is told to run {told}")


def lines_across(surface: Surface, turn: float) -> tuple[int, int]:
    """How many lines of joints part the field: of those that lie level once turned back, and of those upright.

    Args:
        surface: The surface.
        turn: By how much its pattern lies turned [degrees].
    """
    cos, sin = math.cos(math.radians(turn)), math.sin(math.radians(turn))
    found: tuple[list[float], list[float]] = ([], [])
    for joint in surface.soft_joints:
        if joint.why == "field":
            (a, b), (c, d) = ((u * cos + v * sin, v * cos - u * sin) for u, v in (joint.line[0], joint.line[-1]))
            level = abs(c - a) >= abs(d - b)
            found[0 if level else 1].append((b + d) / 2 if level else (a + c) / 2)
    return _apart(found[0]), _apart(found[1])


def _apart(offsets: list[float]) -> int:
    """How many of these lie apart from the others."""
    ranked = np.sort(offsets)
    return int(len(ranked) > 0) + int((np.diff(ranked) > _SAME_LINE).sum())


def _meets(surface: Surface, joint: SoftJoint, near: float) -> bool:
    """Whether a joint at an edge runs along what it is said to meet."""
    line = LineString([joint.line[0], joint.line[-1]])
    kind, _, name = joint.at.removeprefix(f"{surface.id}/").partition("/")
    if joint.why == "restrained":
        rings = [o.outline for o in surface.openings if o.id == name and o.kind in _RESTRAINS and o.outline]
        return kind == "opening" and any(_along(line, ring, joint.width) for ring in rings)
    if joint.why != "plane":
        return False
    if kind == "side":
        index = int(name) if name.isdecimal() else len(surface.sides)
        if index >= len(surface.sides) or surface.sides[index] == "free":
            return False
        a, b = list(sides(surface.outline))[index]
        side = LineString([a, b])
        return _parallel(line, side) and side.distance(line.interpolate(0.5, normalized=True)) <= near
    rings = [ring for why, ring in surface.not_tiled if why == joint.at and is_floor(surface, why)]
    return any(_along(line, ring, joint.width) for ring in rings)


def _along(line: LineString, ring: tuple[tuple[int, int], ...], width: int) -> bool:
    """Whether a line runs beside a ring, half a joint off it, round its corners without being rounded."""
    beside = Polygon(ring).buffer(width / 2, join_style="mitre").exterior
    return all(beside.distance(line.interpolate(share, normalized=True)) <= _ON for share in (0.2, 0.5, 0.8))


def _parallel(line: LineString, side: LineString) -> bool:
    (a, b), (c, d) = line.coords[0], line.coords[-1]
    (e, f), (g, h) = side.coords
    along = (c - a) * (g - e) + (d - b) * (h - f)
    return bool(abs(along) > _ALONG * line.length * side.length)


def _deep_in_tile(surface: Surface, across: list[SoftJoint]) -> list[bool]:
    """Of each joint across the field: whether it runs through tiles as they are laid, uncut."""
    if not across:
        return []
    laid = [Polygon(tile.laid or tile.outline).buffer(-_INSIDE) for tile in surface.tiles]
    tree = STRtree(laid)
    lines = [LineString(joint.line) for joint in across]
    return [len(tree.query(line, predicate="intersects")) > 0 for line in shapely.get_parts(lines)]

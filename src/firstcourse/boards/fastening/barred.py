"""Members behind a board that no fastener may reach, since a zone where nothing is driven covers them."""

import shapely
from shapely import Polygon
from shapely.ops import unary_union

from firstcourse.boards.fastening.ground import FastenerLimits
from firstcourse.boards.field import runs_along
from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds
from firstcourse.plan import Board, Support, SupportKind, Surface
from firstcourse.units import TICKS_PER_MM
from firstcourse.values import Name

_MEMBERS = (SupportKind.STUD, SupportKind.JOIST)


def barred_members(board: Board, surface: Surface, limits: FastenerLimits) -> list[Support]:
    """Members along the framing that lie behind a board, longer than the spacing, and wholly within zones.

    Args:
        board: A placed board.
        surface: Its surface, with members and zones.
        limits: For the spacing and how far off edges fasteners keep.
    """
    zones = unary_union([Polygon(zone.outline) for zone in surface.no_fastener_zones])
    if zones.is_empty or not surface.framing_axis:
        return []
    room = Polygon(board.outline, board.holes).buffer(-limits.edge, join_style="mitre")
    along = 1 if surface.framing_axis == "v" else 0
    found = []
    for support in surface.supports:
        if support.kind not in _MEMBERS or not runs_along(support, surface):
            continue
        part = room.intersection(Polygon(support.outline))
        if part.is_empty or part.area < TICKS_PER_MM**2:
            continue
        ends = shapely.bounds(part).tolist()
        if ends[2 + along] - ends[along] > limits.spacing and part.difference(zones).area < TICKS_PER_MM**2:
            found.append(support)
    return sorted(found, key=lambda support: bounds(support.outline))


def barred_finding(board: Board, members: list[Support]) -> Finding:
    """That a board is held by nothing at some members, and what holds it instead."""
    return Finding(
        code="FST-107",
        severity=Severity.FIX,
        at=(board.id,),
        remedies=("member_each_side",),
        values={"members": tuple(Name(name=support.id) for support in members)},
    )

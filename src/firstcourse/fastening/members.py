"""Fasteners along members: studs, joists, plates and blocking that a board crosses or ends on."""

from dataclasses import dataclass

import shapely
from shapely import Polygon

from firstcourse.fastening.ground import Ground, Limits
from firstcourse.fastening.strip import Frame, Strip, lines_across
from firstcourse.geometry import bounds, sides
from firstcourse.geometry.polygon import Point
from firstcourse.plan import Board, Support, SupportKind

_NEAR = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """What came of one board on one member.

    Attributes:
        points: Fasteners added.
        tight: The board lies on the member over more than the spacing, yet no fastener fits.
        far: Neighbours stay farther apart than the spacing.
    """

    support: Support
    points: tuple[Point, ...]
    tight: bool
    far: bool


def along_members(board: Board, ground: Ground, supports: tuple[Support, ...], limits: Limits) -> list[Row]:
    """Fasteners of one board on every member, those the framing runs along first.

    Args:
        board: A placed board.
        ground: Its areas.
        supports: Members in order of work; a later one makes use of fasteners it shares with an earlier one.
        limits: Rules to keep.
    """
    rows: list[Row] = []
    placed: list[Point] = []
    box = shapely.box(*bounds(board.outline))
    for support in supports:
        if support.kind is SupportKind.PANEL or not box.intersects(Polygon(support.outline)):
            continue
        row = _on_member(board, ground, support, limits, placed)
        placed += row.points
        rows.append(row)
    return rows


def _on_member(board: Board, ground: Ground, support: Support, limits: Limits, placed: list[Point]) -> Row:
    left, lower, _, _ = bounds(board.outline)
    a, b = max(sides(support.outline), key=lambda s: (s[1][0] - s[0][0]) ** 2 + (s[1][1] - s[0][1]) ** 2)
    frame = Frame.along((left, lower), min(a, b), max(a, b))
    face = frame.local(Polygon(support.outline))
    room, legal = frame.local(ground.room), frame.local(ground.legal)
    centre = (face.bounds[1] + face.bounds[3]) / 2
    points: list[Point] = []
    tight = far = False
    for part in _areas(room.intersection(face)):
        low, across, high, up = part.bounds
        long = high - low > limits.spacing
        if up - across < limits.graduation:
            tight |= long
            continue
        # A board that ends on the member takes the middle of its own share of it.
        wanted = centre if across <= centre <= up else (across + up) / 2
        strip = Strip(
            legal=legal.intersection(part),
            lines=lines_across(across, up, wanted, limits.graduation),
            low=low,
            high=high,
            limits=limits,
        )
        near = part.buffer(_NEAR)
        local = [frame.local_spot(point) for point in (*placed, *points)]
        spots, kept = strip.fill(t for t, c in local if near.intersects(shapely.Point(t, c)))
        points += [frame.placed(spot) for spot in spots]
        far |= long and not kept
    return Row(support=support, points=tuple(points), tight=tight, far=far)


def _areas(shape: shapely.Geometry) -> list[Polygon]:
    """The parts of a shape that have area, in order along the member."""
    parts = [part for part in shapely.get_parts(shape) if isinstance(part, Polygon) and not part.is_empty]
    return sorted(parts, key=lambda part: part.bounds)

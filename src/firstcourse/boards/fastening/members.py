"""Fasteners along members: studs, joists, plates and blocking that a board crosses or ends on."""

from collections.abc import Sequence
from dataclasses import dataclass

import shapely
from shapely import Polygon

from firstcourse.boards.edges import edge_rules, edges_along
from firstcourse.boards.fastening.ground import FastenerGround, FastenerLimits
from firstcourse.boards.fastening.hold import held_edges
from firstcourse.boards.fastening.strip import FastenerStrip, kept_off, lines_across
from firstcourse.boards.field import runs_along
from firstcourse.geometry import LineAxes, Point, bounds, sides
from firstcourse.plan import Board, Support, SupportKind, Surface
from firstcourse.rules import RuleSet

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


def along_members(
    board: Board, ground: FastenerGround, surface: Surface, limits: FastenerLimits, rules: RuleSet
) -> tuple[list[Row], list[Point], list[tuple[Point, Point]]]:
    """Fasteners of one board on every member, those under its edges first.

    Args:
        board: A placed board.
        ground: Its areas.
        surface: Its surface, with members.
        limits: Rules to keep.
        rules: Rules in force.

    Returns:
        What came of each member, all fasteners, and the edges that lie too far from any.
    """
    box = shapely.box(*bounds(board.outline))
    edges = list(edges_along(board, surface, edge_rules(surface, rules)))
    todo: list[tuple[tuple[bool, bool, int], _Member]] = []
    for number, support in enumerate(surface.supports):
        if support.kind is SupportKind.PANEL or not box.intersects(Polygon(support.outline)):
            continue
        member = _Member.of(board, ground, support, edges, limits)
        along = runs_along(support, surface)
        todo.append(((not along, along and not member.carries, number), member))
    placed: list[Point] = []
    rows: list[Row] = []
    for _, member in sorted(todo, key=lambda item: item[0]):
        row = _on_member(member, limits, placed)
        placed += row.points
        rows.append(row)
    faces = [Polygon(support.outline) for support in surface.supports]
    loose = held_edges(edges, ground, faces, placed, limits) if surface.framing_axis else []
    return rows, placed, loose


@dataclass(frozen=True, slots=True, kw_only=True)
class _Member:
    """A member behind a board, in its own axes.

    Attributes:
        parts: Where the board may be fastened to it, and the lines of the board's edges that each part carries,
            with 1 where the board lies to their left and -1 where it lies to their right.
        legal: Where fasteners of the board may sit.
        centre: Its middle line.
    """

    support: Support
    frame: LineAxes
    parts: tuple[tuple[Polygon, tuple[tuple[float, int], ...]], ...]
    legal: shapely.Geometry
    centre: float

    @classmethod
    def of(
        cls,
        board: Board,
        ground: FastenerGround,
        support: Support,
        edges: Sequence[tuple[Point, Point]],
        limits: FastenerLimits,
    ) -> "_Member":
        """How one board lies on one member.

        Args:
            board: A placed board.
            ground: Its areas.
            support: The member.
            edges: The board's edges that run with the framing, the board on their left.
            limits: Rules to keep.
        """
        left, lower, _, _ = bounds(board.outline)
        a, b = max(sides(support.outline), key=lambda s: (s[1][0] - s[0][0]) ** 2 + (s[1][1] - s[0][1]) ** 2)
        frame = LineAxes.along((left, lower), min(a, b), max(a, b))
        face = frame.local(Polygon(support.outline))
        parts = []
        for part in _areas(frame.local(ground.room).intersection(face)):
            lines = tuple(line for edge in edges if (line := _carried(edge, frame, part, limits)) is not None)
            parts.append((part, lines))
        return cls(
            support=support,
            frame=frame,
            parts=tuple(parts),
            legal=frame.local(ground.legal),
            centre=(face.bounds[1] + face.bounds[3]) / 2,
        )

    @property
    def carries(self) -> bool:
        """Whether any edge of the board lies on it."""
        return any(lines for _, lines in self.parts)


def _carried(
    edge: tuple[Point, Point], frame: LineAxes, part: Polygon, limits: FastenerLimits
) -> tuple[float, int] | None:
    """Where along the member's width an edge lies that a part of it carries, and on which side the board is."""
    (t, c), (other_t, other_c) = frame.local_spot(edge[0]), frame.local_spot(edge[1])
    if abs(other_c - c) > abs(other_t - t):
        return None
    way = 1 if other_t > t else -1
    low, across, high, up = part.bounds
    if min(max(t, other_t), high) - max(min(t, other_t), low) <= limits.graduation:
        return None
    middle = (c + other_c) / 2
    near, far = sorted(((across - middle) * way, (up - middle) * way))
    return (middle, way) if far >= limits.edge and -limits.graduation <= near <= limits.line_reach else None


def _on_member(member: _Member, limits: FastenerLimits, placed: list[Point]) -> Row:
    frame, points = member.frame, list[Point]()
    tight = far = False
    for part, lines in member.parts:
        low, across, high, up = part.bounds
        long = high - low > limits.spacing
        if up - across < limits.graduation:
            tight |= long
            continue
        local = [frame.local_spot(point) for point in (*placed, *points)]
        # A fastener in a member beside this one holds the board as well as one here, but for its edges.
        near = part.buffer(_NEAR if lines else limits.apart)
        strip = FastenerStrip(
            legal=kept_off(member.legal.intersection(part), local, limits.apart),
            lines=_lines(member, part, lines, limits),
            low=low,
            high=high,
            limits=limits,
            end_most=limits.spacing // 2 if lines else None,
        )
        spots, kept = strip.fill(t for t, c in local if near.intersects(shapely.Point(t, c)))
        points += [frame.placed(spot) for spot in spots]
        far |= long and not kept
    return Row(support=member.support, points=tuple(points), tight=tight, far=far)


def _lines(
    member: _Member, part: Polygon, edges: tuple[tuple[float, int], ...], limits: FastenerLimits
) -> list[int]:
    """Tape marks across a part of a member, the one wanted most first."""
    _, across, _, up = part.bounds
    # A board that ends on the member takes the middle of its own share of it.
    wanted = member.centre if across <= member.centre <= up else (across + up) / 2
    for at, way in edges:
        if (wanted - at) * way > limits.line_reach:
            # Screws stand within reach of the edge that they hold.
            one, other = sorted((at + way * limits.edge, at + way * limits.line_reach))
            wanted = (max(across, one) + min(up, other)) / 2
    return lines_across(across, up, wanted, limits.graduation)


def _areas(shape: shapely.Geometry) -> list[Polygon]:
    """The parts of a shape that have area, in order along the member."""
    parts = [part for part in shapely.get_parts(shape) if isinstance(part, Polygon) and not part.is_empty]
    return sorted(parts, key=lambda part: part.bounds)

"""Boards that are up: each as the job gives it, none missing, none more, and cut from nothing."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import permutations

from shapely import LineString, Polygon
from shapely.geometry.base import BaseGeometry

from firstcourse.geometry import Ring, axis_near, clockwise, counter_clockwise, rectangle, sides
from firstcourse.units import TICKS_PER_MM, ceil_to
from firstcourse.verify.coverage import board_hole, widest_joint
from firstcourse.verify.fields import Node, point
from firstcourse.verify.structure import Board, Document, Said, Surface
from firstcourse.verify.told import at_least, at_most, mm, said, told_of, untrue
from firstcourse.verify.verdict import Objection

_CODE = "VER-011"
_SPECK = TICKS_PER_MM**2
_ROUNDED = 2
"""Rounding of a side that runs along no axis [ticks]."""


def check_standing(plan: Document) -> Iterator[Objection]:
    """Object to boards that are up and do not stand as given, and to others said to be up."""
    given = {}
    for part in plan.job.part("done").nodes("surfaces", ()):
        out = [Polygon(_box(node)) for node in part.nodes("taken_out", ())]
        for node in part.nodes("boards", ()):
            ring = _outline(node)
            opened = any(hole.intersection(Polygon(ring)).area > _SPECK for hole in out)
            if node.flag("up", True) and not opened:
                name = f"{part.text('surface')}#{node.count('board')}"
                given[name] = part.text("surface"), ring, _holes(node), node.text("mark"), node.text("stock")
    found: dict[str, tuple[str, Board]] = {
        board.id: (surface.id, board) for surface in plan.surfaces for board in surface.boards if board.fixed
    }
    for name in given.keys() - found.keys():
        yield Objection(_CODE, name, "is up, and the plan leaves it out")
    stock = {piece.id: piece.stock for piece in plan.pieces}
    for name, (surface, board) in found.items():
        if name not in given:
            yield Objection(_CODE, name, "is said to be up, and the job does not say so")
        elif (surface, board.outline, board.holes, board.mark, stock.get(board.piece)) != given[name]:
            yield Objection(_CODE, name, "does not stand, or is not marked or cut, as the job gives it")
        elif board.fasteners or board.factory_edges:
            yield Objection(_CODE, name, "is up, and is fastened again or has edges of a sheet that is not cut")


def check_gaps_as_built(plan: Document) -> Iterator[Objection]:
    """Object where boards that are up stand otherwise apart, or nearer to things, than is asked or told."""
    for surface in plan.surfaces:
        up = [board for board in surface.boards if board.fixed]
        told = [one for code in ("BRD-104", "BRD-105") for one in told_of(surface, code, plan.findings)]
        wanted = [*_apart(up, plan), *_beside(up, surface, plan)]
        yield from untrue("VER-312", told, wanted)


def _apart(up: Sequence[Board], plan: Document) -> Iterator[Said]:
    """What is to be told of two boards whose joint is not as wide as asked: each width once."""
    rules, step = plan.rules, plan.tape.graduation
    between, widest = rules.ticks("boards.gap.between"), widest_joint(rules, step)
    usual = ceil_to(between, step)
    for one, other in permutations(up, 2):
        if one.shape.distance(other.shape) > widest:
            continue
        widths = {
            far - near
            for axis in (0, 1)
            for near, low, high in _ends(one, axis, after=False)
            for far, start, end in _ends(other, axis, after=True)
            if 0 < far - near <= widest and min(high, end) - max(low, start) > TICKS_PER_MM
        }
        for wide in widths:
            if not between <= wide < usual + step:
                narrow = wide < between
                yield replace(
                    said(
                        "BRD-104",
                        "fix",
                        one.id,
                        "open" if narrow else "fill",
                        rule="boards.gap.between",
                        measured=mm(wide),
                        limit=at_least(between) if narrow else at_most(usual),
                    ),
                    at=(one.id, other.id),
                )


def _ends(board: Board, axis: int, *, after: bool) -> Iterator[tuple[int, int, int]]:
    """Edges along an axis with the board on their lesser side, or after them: where, from and to [ticks]."""
    for a, b in sides(board.outline):
        # The board lies on the left of the way from a to b.
        forward = (b[axis] > a[axis]) == (axis == 0)
        if a[1 - axis] == b[1 - axis] and forward == after:
            low, high = sorted((a[axis], b[axis]))
            yield a[1 - axis], low, high


def _beside(up: Sequence[Board], surface: Surface, plan: Document) -> Iterator[Said]:
    """What is to be told of boards nearer to sides and openings than asked: the least distance by rule."""
    bounds: list[tuple[str, BaseGeometry]] = []
    for (a, b), kind in zip(sides(surface.outline), surface.sides, strict=True):
        rule = {"perimeter": "boards.gap.perimeter", "foot": "boards.gap.foot"}.get(kind, "")
        if rule:
            least = ".least" if kind == "perimeter" and axis_near(a, b) else ""
            bounds.append((rule + least, LineString([a, b])))
    for opening in surface.openings:
        sealed = opening.kind in ("tub", "tray")
        bounds.append(("boards.gap.foot" if sealed else "boards.gap.opening", board_hole(opening)))
    for board in up:
        near: dict[str, int] = {}
        for rule, shape in bounds:
            apart = int(shape.distance(board.shape))
            if apart < plan.rules.ticks(rule) - _ROUNDED:
                near[rule] = min(apart, near.get(rule, apart))
        for rule, apart in near.items():
            limit = at_least(plan.rules.ticks(rule))
            yield said("BRD-105", "fix", board.id, "trim", rule=rule, measured=mm(apart), limit=limit)


def _box(node: Node) -> Ring:
    left, bottom = node.distance("left"), node.distance("bottom")
    return rectangle(left, bottom, left + node.length("width"), bottom + node.length("height"))


def _outline(node: Node) -> Ring:
    if node.raw("points", None) is None:
        return _box(node)
    return counter_clockwise(tuple(point(value, where) for value, where in node.rows("points")))


def _holes(node: Node) -> tuple[Ring, ...]:
    rings = []
    for value, where in node.rows("holes", ()):
        ring = Node({"ring": value}, where)
        rings.append(clockwise(tuple(point(each, place) for each, place in ring.rows("ring"))))
    return tuple(rings)

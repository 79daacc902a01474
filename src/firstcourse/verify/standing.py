"""Boards that are up: each as the job gives it, none missing, none more, and cut from nothing."""

from collections.abc import Iterator

from shapely import Polygon

from firstcourse.geometry import Ring, clockwise, counter_clockwise, rectangle
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fields import Node, point
from firstcourse.verify.structure import Board, Document
from firstcourse.verify.verdict import Objection

_CODE = "VER-011"
_SPECK = TICKS_PER_MM**2


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

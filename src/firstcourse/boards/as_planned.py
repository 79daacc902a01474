"""Boards of an earlier plan that are not up yet, laid again where they were: what stays is disturbed least."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

import shapely
from shapely import Polygon, STRtree

from firstcourse.boards.as_built import laid_as_built
from firstcourse.boards.field import board_region, limits_of
from firstcourse.boards.layout import SurfaceLayout, build_layout, cut_as
from firstcourse.boards.seams import fits
from firstcourse.boards.space import best_choice, layout_alternatives
from firstcourse.boards.strips import Box
from firstcourse.geometry import bounds, from_shapely
from firstcourse.plan import Board, Piece, Stock, Surface
from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM, Tape, ceil_to

_SPECK = 25 * TICKS_PER_MM**2
"""Ground left bare between boards that is no more than rounding, and junctions of joints [ticks²]."""

MOST_TRIED = 8
"""Layouts of what is left that are built, to take the one that changes least."""


class Planned(NamedTuple):
    """A board of an earlier plan, and the sheet it was to be of."""

    board: Board
    stock: str


def least_disturbed(
    surface: Surface, planned: Sequence[Planned], stock: tuple[Stock, ...], rules: RuleSet, tape: Tape
) -> SurfaceLayout | None:
    """The boards planned before, round those that are up, or as many of them as break no rule where they were.

    All of them; else without those at which a member is wanting, that are too narrow, or that no longer fit; else
    without the boards beside these either. What they leave is laid anew. Of these the one that breaks the fewest
    rules, the first of several.

    Args:
        surface: With the boards that are up.
        planned: Those of an earlier plan that are not.
        stock: Sheets that it may be boarded with.
        rules: Rules in force.
        tape: Tape whose graduation edges lie on.

    Returns:
        A layout that stays as it is; None where nothing was planned, or none of it can stay.
    """
    region, _ = board_region(surface, rules, tape.graduation)
    up = tuple(board for board in surface.boards if board.fixed)
    sizes = {item.id: item.size for item in stock}
    there: list[Planned] = []
    for one, cell in _cells(planned, up, rules, tape):
        laid = _within(one.board, cell, region)
        if laid is not None and one.stock in sizes and _fits(laid, sizes[one.stock], tape):
            there.append(Planned(laid, one.stock))
    best: SurfaceLayout | None = None
    for tried in range(4):
        gone = [one for one in planned if all(one.board.id != other.board.id for other in there)]
        found = _laid(surface, there, gone, stock, rules, tape) if there else None
        bare = None if found is None else _bare(found, region, rules, tape)
        if bare is not None and not bare.is_empty:
            # A strip that no board fits in asks for a wider board beside it.
            reach = limits_of(rules, tape.graduation).gap + 2 * tape.graduation
            there = [one for one in there if Polygon(one.board.outline).distance(bare) > reach]
            continue
        if found is not None and (best is None or found.faults < best.faults):
            best = found
        if found is not None and not found.faults:
            break
        bad = _at_fault(found, there, tape) if found is not None and not tried else []
        bad = bad or _beside(gone, there, rules, tape)
        if not bad:
            break
        there = [one for one in there if one not in bad]
    return best


def _bare(layout: SurfaceLayout, region: shapely.Geometry, rules: RuleSet, tape: Tape) -> shapely.Geometry:
    """Ground that boards can cover and none of a layout does, but for the gaps beside them."""
    reach = limits_of(rules, tape.graduation).gap + tape.graduation
    grown = shapely.union_all(
        [Polygon(board.outline).buffer(reach, join_style="mitre") for board in layout.boards if not board.fixed]
    )
    return shapely.union_all([part for part in shapely.get_parts(region.difference(grown)) if part.area > _SPECK])


def _fits(board: Board, size: tuple[int, int], tape: Tape) -> bool:
    left, lower, right, upper = bounds(board.outline)
    wide, high = (ceil_to(side, tape.graduation) for side in (right - left, upper - lower))
    return fits(wide, high, *size)


def _moved(gone: Sequence[Planned], layout: SurfaceLayout) -> float:
    """By how much ground the boards that come nearest to some planned before differ from these [ticks²]."""
    new = [Polygon(board.outline, board.holes) for board in layout.boards if not board.fixed]
    return sum(
        min((Polygon(one.board.outline).symmetric_difference(shape).area for shape in new), default=0.0)
        for one in gone
    )


def _laid(
    surface: Surface,
    there: Sequence[Planned],
    gone: Sequence[Planned],
    stock: tuple[Stock, ...],
    rules: RuleSet,
    tape: Tape,
) -> SurfaceLayout | None:
    """Boards where they were planned, and what is left of the ground laid anew; None where that cannot be."""
    up = tuple(board for board in surface.boards if board.fixed)
    held = tuple(one.board.model_copy(update={"fixed": True}) for one in there)
    around = surface.model_copy(update={"boards": (*up, *held)})
    region, _ = board_region(around, rules, tape.graduation)
    new: tuple[Board, ...] = ()
    pieces: tuple[Piece, ...] = ()
    if region.area > _SPECK:
        choices = layout_alternatives(around, stock, rules, tape)
        if not choices:
            return None
        listed = [best_choice(choices, stock), *choices[:MOST_TRIED]]
        tries = [build_layout(around, choice, stock, rules, tape) for choice in listed]
        made = min(tries, key=lambda tried: (tried.faults, len(tried.boards), _moved(gone, tried)))
        new, pieces = tuple(board for board in made.boards if not board.fixed), made.pieces
    if not _apart((*up, *held), rules):
        return None
    boards = (*(one.board for one in there), *new)
    seams, added, findings = laid_as_built(surface, (*boards, *up), rules, tape.graduation)
    return SurfaceLayout(
        surface_id=surface.id,
        boards=(*boards, *up),
        seams=seams,
        pieces=(*(cut_as(one.board, one.stock, tape) for one in there), *pieces),
        added_supports=added,
        findings=findings,
        settled=True,
    )


def _at_fault(layout: SurfaceLayout, there: Sequence[Planned], tape: Tape) -> list[Planned]:
    """Boards at which a member is to be added, or of which something is told."""
    members = shapely.union_all([Polygon(support.outline) for support in layout.added_supports])
    told = {at for finding in layout.findings for at in finding.at}
    return [
        one
        for one in there
        if one.board.id in told
        or (not members.is_empty and Polygon(one.board.outline).distance(members) <= tape.graduation)
    ]


def _beside(gone: Sequence[Planned], there: Sequence[Planned], rules: RuleSet, tape: Tape) -> list[Planned]:
    """Boards next to some that cannot stay."""
    most = limits_of(rules, tape.graduation).gap + 2 * tape.graduation
    ground = shapely.union_all([Polygon(one.board.outline) for one in gone])
    if ground.is_empty:
        return []
    return [one for one in there if Polygon(one.board.outline).distance(ground) <= most]


def _apart(boards: Sequence[Board], rules: RuleSet) -> bool:
    """Whether no two boards stand closer than the gap between boards."""
    shapes = [Polygon(board.outline, board.holes) for board in boards]
    near = STRtree(shapes).query(shapes, predicate="dwithin", distance=rules.ticks("boards.gap.between") - 1)
    return all(one == other for one, other in zip(*near.tolist(), strict=True))


def _cells(
    planned: Sequence[Planned], up: Sequence[Board], rules: RuleSet, tape: Tape
) -> Iterator[tuple[Planned, Box]]:
    """Each board with its box, sides that face no board moved out by the widest gap."""
    most = rules.ticks("boards.gap.perimeter.most") + tape.graduation
    near = limits_of(rules, tape.graduation).gap + tape.graduation
    boxes = [bounds(board.outline) for board in (*(one.board for one in planned), *up)]
    for number, one in enumerate(planned):
        left, lower, right, upper = boxes[number]
        others = [other for index, other in enumerate(boxes) if index != number]
        beside = [other for other in others if other[1] < upper and other[3] > lower]
        over = [other for other in others if other[0] < right and other[2] > left]
        yield (
            one,
            (
                left - most * (not any(0 < left - other[2] < near for other in beside)),
                lower - most * (not any(0 < lower - other[3] < near for other in over)),
                right + most * (not any(0 < other[0] - right < near for other in beside)),
                upper + most * (not any(0 < other[1] - upper < near for other in over)),
            ),
        )


def _within(board: Board, cell: Box, region: shapely.Geometry) -> Board | None:
    """The board as it lies on the ground there is."""
    parts = from_shapely(region.intersection(shapely.box(*cell)))
    shape = Polygon(board.outline, board.holes)
    mine = [part for part in parts if Polygon(*part).intersection(shape).area > Polygon(*part).area / 2]
    if len(mine) != 1:
        return None
    outline, holes = mine[0]
    if Polygon(outline, holes).symmetric_difference(shape).area <= _SPECK:
        return board
    return board.model_copy(update={"outline": outline, "holes": holes})

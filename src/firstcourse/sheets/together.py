"""Seams and cuts of one room chosen together: open courses to the optimiser, its choice back to layouts."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import NamedTuple

from firstcourse.boards import OpenStack, Planned, SurfaceLayout, build_layout, open_stacks
from firstcourse.cutting import CutSheet, KeptSize, StockSize
from firstcourse.job import Job
from firstcourse.plan import Piece, Stock, Surface
from firstcourse.rules import RuleSet


class Surfaced(NamedTuple):
    """A surface with its mark and the sheets it may be boarded with.

    Attributes:
        surface: With the boards that are up already.
        up: These with the sheets they are of.
        planned: Boards of an earlier plan that are not up.
    """

    surface: Surface
    mark: str
    stock: tuple[Stock, ...]
    up: tuple[Planned, ...] = ()
    planned: tuple[Planned, ...] = ()


class Laid(NamedTuple):
    """Surfaces boarded, with the sheets their pieces are cut from where those are known."""

    layouts: tuple[SurfaceLayout, ...]
    sheets: tuple[CutSheet, ...]


class Way(NamedTuple):
    """One thing a surface may become: a finished layout, or a stack with open seams cut from some sheets."""

    layout: SurfaceLayout | None
    stack: OpenStack | None
    stock: tuple[str, ...]


def ways(item: Surfaced, finished: Sequence[SurfaceLayout], job: Job, rules: RuleSet) -> list[Way]:
    """The finished layouts, then every stack of courses for each thickness and family of sheet.

    A surface that stays as it was planned has none of these.
    """
    alike: dict[tuple[int, str], list[Stock]] = {}
    for sheet in item.stock:
        alike.setdefault((sheet.thickness, sheet.kind), []).append(sheet)
    family = {sheet.id: tuple(s.id for s in sheets) for sheets in alike.values() for sheet in sheets}
    found = [
        Way(layout, None, family[layout.pieces[0].stock] if layout.pieces else tuple(family))
        for layout in finished
    ]
    if any(layout.settled for layout in finished):
        return found
    for sheets in alike.values():
        names = tuple(sheet.id for sheet in sheets)
        found += [Way(None, stack, names) for stack in open_stacks(item.surface, tuple(sheets), rules, job.tape)]
    return found


def chosen_together(
    surfaces: Sequence[Surfaced],
    open_ways: Sequence[Sequence[Way]],
    stock: Sequence[StockSize],
    kept: Sequence[KeptSize],
    job: Job,
    rules: RuleSet,
    *,
    effort: int,
    bound: int,
) -> Laid:
    """Layouts of all surfaces with the cheapest sheets found for all their pieces.

    Args:
        surfaces: Those that may share sheets.
        open_ways: For each surface what it may become, at least one finished layout first.
        stock: Sheets that can be bought.
        kept: Offcuts at hand.
        job: For its tape.
        rules: Rules in force.
        effort: Level 1 to 3.
        bound: The least that any layout costs.

    Returns:
        The layouts and their sheets; none are known where an outline does not give the blanks foreseen.
    """
    from firstcourse.cutting import Arrangement, ChoiceField, Course, choose

    courses: dict[object, Course] = {}

    def course(edges: tuple[int, ...], boards: tuple[tuple[int, int, tuple[tuple[int, int], ...]], ...]) -> Course:
        return courses.setdefault((edges, boards), Course(edges, boards))

    stagger = rules.ticks("boards.stagger.end_joints")
    fields = []
    for item, listed in zip(surfaces, open_ways, strict=True):
        arrangements = []
        for way in listed:
            if way.layout is not None:
                blanks = tuple(piece.blank for piece in way.layout.pieces)
                arrangements.append(Arrangement((course((0, 1), ((0, 1, blanks),)),), 0, way.stock))
            elif way.stack is not None:
                made = tuple(course(c.edges, c.boards) for c in way.stack.courses)
                arrangements.append(Arrangement(made, stagger, way.stock))
        spans = [(way.stack.along_v, way.stack.spans) for way in listed if way.stack is not None]
        fields.append(ChoiceField(item.surface.id, tuple(arrangements), f"{item.surface.kind} {spans}"))
    choice = choose(fields, stock, kept, effort=effort, bound=bound)
    layouts = []
    names: dict[str, str] | None = {}
    for item, listed, field, pick in zip(surfaces, open_ways, fields, choice.picks, strict=True):
        way = listed[pick.arrangement]
        if way.stack is None:
            layout = way.layout
            assert layout is not None
        else:
            largest = max((s for s in item.stock if s.id in way.stock), key=lambda s: s.size[0] * s.size[1])
            plan = way.stack.choice(largest.id, pick.breaks)
            layout = build_layout(item.surface, plan, item.stock, rules, job.tape, mark=item.mark)
        layouts.append(layout)
        cells = [
            (f"{field.id}#{c}.{number}", {(i, j): sizes for i, j, sizes in made.intervals}[pair])
            for c, (made, breaks) in enumerate(
                zip(field.arrangements[pick.arrangement].courses, pick.breaks, strict=True)
            )
            for number, pair in enumerate(pairwise(breaks))
        ]
        ours = _names(cells, layout.pieces)
        names = None if names is None or ours is None else names | ours
    return Laid(tuple(layouts), _renamed(choice.sheets, names) if names is not None else ())


def _names(
    cells: Sequence[tuple[str, tuple[tuple[int, int], ...]]], pieces: Sequence[Piece]
) -> dict[str, str] | None:
    """The piece each blank became, cell by cell; None where the sizes are not those foreseen."""
    names: dict[str, str] = {}
    at = 0
    for cell, sizes in cells:
        here = sorted(pieces[at : at + len(sizes)], key=lambda piece: piece.blank)
        at += len(sizes)
        order = sorted(range(len(sizes)), key=lambda number: sizes[number])
        if [piece.blank for piece in here] != [sizes[number] for number in order]:
            return None
        names |= {f"{cell}.{number}": piece.id for number, piece in zip(order, here, strict=True)}
    return names if at == len(pieces) else None


def _renamed(sheets: Sequence[CutSheet], names: dict[str, str]) -> tuple[CutSheet, ...]:
    return tuple(
        replace(
            sheet,
            parts=tuple(
                replace(part, blank=names[part.blank]) if part.blank is not None else part for part in sheet.parts
            ),
        )
        for sheet in sheets
    )

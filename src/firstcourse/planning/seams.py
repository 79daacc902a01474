"""Choose each surface's courses and seams by what all surfaces together cost to cut."""

from collections.abc import Mapping
from typing import NamedTuple

from firstcourse.boards import (
    Choice,
    SurfaceLayout,
    best_choice,
    build_layout,
    layout_alternatives,
    no_layout,
    practice_layout,
)
from firstcourse.job import Job
from firstcourse.plan import Stock, Surface
from firstcourse.planning.sheets import cut_pieces
from firstcourse.rules import RuleSet

_ALTERNATIVES = (1, 4, 8, 16)
"""Layouts weighed for each surface, by effort."""
_ROUNDS = 2


class Surfaced(NamedTuple):
    """A surface with its mark and the sheets it may be boarded with."""

    surface: Surface
    mark: str
    stock: tuple[Stock, ...]


def choose_layouts(
    surfaces: tuple[Surfaced, ...], stock: tuple[Stock, ...], job: Job, rules: RuleSet, *, effort: int
) -> tuple[SurfaceLayout, ...]:
    """The layouts that are cut at least cost, starting from each surface's own best.

    Plain practice is weighed as well. A layout that relaxes a rule, or asks for more members than the surface's
    own best, is not weighed. Rooms are taken one by one, so that the work grows with their number and no faster;
    all rooms share sheets when they are cut. The work is counted, so the choice is the same everywhere.
    """
    rooms: dict[str, list[Surfaced]] = {}
    for item in surfaces:
        rooms.setdefault(item.surface.room, []).append(item)
    found = {
        layout.surface_id: layout
        for members in rooms.values()
        for layout in _room_layouts(members, stock, job, rules, effort)
    }
    return tuple(found[item.surface.id] for item in surfaces)


def _room_layouts(
    surfaces: list[Surfaced], stock: tuple[Stock, ...], job: Job, rules: RuleSet, effort: int
) -> list[SurfaceLayout]:
    choices = [layout_alternatives(item.surface, item.stock, rules, job.tape) for item in surfaces]
    chosen = [_own(item, listed, job, rules) for item, listed in zip(surfaces, choices, strict=True)]
    if effort == 0 or not stock:
        return chosen
    options = [
        _options(item, listed[: _ALTERNATIVES[effort]], own, job, rules)
        for item, listed, own in zip(surfaces, choices, chosen, strict=True)
    ]
    best = _value(surfaces, chosen, stock, job)
    for _ in range(_ROUNDS):
        before = best
        for index, layouts in enumerate(options):
            for layout in layouts:
                tried = [*chosen[:index], layout, *chosen[index + 1 :]]
                value = _value(surfaces, tried, stock, job)
                if value < best:
                    best, chosen = value, tried
        if best == before:
            break
    return chosen


def _own(item: Surfaced, choices: tuple[Choice, ...], job: Job, rules: RuleSet) -> SurfaceLayout:
    if not choices:
        return no_layout(item.surface)
    choice = best_choice(choices, item.stock)
    return build_layout(item.surface, choice, item.stock, rules, job.tape, mark=item.mark)


def _options(
    item: Surfaced, choices: tuple[Choice, ...], own: SurfaceLayout, job: Job, rules: RuleSet
) -> list[SurfaceLayout]:
    layouts = [
        build_layout(item.surface, choice, item.stock, rules, job.tape, mark=item.mark) for choice in choices
    ]
    layouts.append(practice_layout(item.surface, item.stock, rules, job.tape, mark=item.mark))
    return [layout for layout in layouts if len(layout.findings) <= len(own.findings)]


def _value(
    surfaces: list[Surfaced], layouts: list[SurfaceLayout], stock: tuple[Stock, ...], job: Job
) -> tuple[int, int, int]:
    allowed: Mapping[str, tuple[Stock, ...]] = {
        piece.id: item.stock for item, layout in zip(surfaces, layouts, strict=True) for piece in layout.pieces
    }
    pieces = [piece for layout in layouts for piece in layout.pieces]
    cutting = cut_pieces(pieces, allowed, stock, job, effort=0)
    return cutting.cost, sum(len(sheet.cuts) for sheet in cutting.sheets), len(pieces)

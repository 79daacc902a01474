"""Choose each surface's courses and seams by what all surfaces together cost to cut."""

from collections.abc import Mapping
from typing import NamedTuple

from firstcourse.boards import (
    SurfaceLayout,
    build_layout,
    constructive_layout,
    layout_alternatives,
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
    own best, is not weighed. One surface is changed at a time, in order, until nothing gains; the work is counted,
    so the choice is the same everywhere.
    """
    chosen = [constructive_layout(item.surface, item.stock, rules, job.tape, mark=item.mark) for item in surfaces]
    if effort == 0 or not stock:
        return tuple(chosen)
    options = [_options(item, layout, job, rules, effort) for item, layout in zip(surfaces, chosen, strict=True)]
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
    return tuple(chosen)


def _options(item: Surfaced, own: SurfaceLayout, job: Job, rules: RuleSet, effort: int) -> list[SurfaceLayout]:
    choices = layout_alternatives(item.surface, item.stock, rules, job.tape)[: _ALTERNATIVES[effort]]
    layouts = [
        build_layout(item.surface, choice, item.stock, rules, job.tape, mark=item.mark) for choice in choices
    ]
    layouts.append(practice_layout(item.surface, item.stock, rules, job.tape, mark=item.mark))
    return [layout for layout in layouts if len(layout.findings) <= len(own.findings)]


def _value(
    surfaces: tuple[Surfaced, ...], layouts: list[SurfaceLayout], stock: tuple[Stock, ...], job: Job
) -> tuple[int, int, int]:
    allowed: Mapping[str, tuple[Stock, ...]] = {
        piece.id: item.stock for item, layout in zip(surfaces, layouts, strict=True) for piece in layout.pieces
    }
    pieces = [piece for layout in layouts for piece in layout.pieces]
    cutting = cut_pieces(pieces, allowed, stock, job, effort=0)
    return cutting.cost, sum(len(sheet.cuts) for sheet in cutting.sheets), len(pieces)

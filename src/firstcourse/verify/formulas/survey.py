"""Rooms as taped: their drawn corners, how far each was moved to be drawn square, and how many readings check."""

import math
from collections.abc import Iterator
from itertools import pairwise

from firstcourse.geometry import area2, bounds
from firstcourse.geometry.polygon import Point
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.formulas.proving import (
    CODE,
    Prove,
    column,
    holds,
    just,
    key_of,
    limited,
    only,
    refs,
    rests_on,
    several,
    unit_of,
)
from firstcourse.verify.shopping_fields import Given, Working, number_of
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_AREA, _CHECKS, _SQUARE = "survey-area", "survey-checks", "survey-square"
_TICKS_PER_M = 1000 * TICKS_PER_MM
_ROUNDED = 3
"""Two corners of a wall and its length are rounded to whole ticks."""

_NOWHERE = 10**9
"""Where a corner lies whose place is no length."""


def _area(plan: Document, working: Working) -> Iterator[Objection]:
    yield from _alone(working, "corner", "u", "v")
    corners = _corners(working)
    ring = tuple(corners.values())
    yield from holds(working, "result", abs(area2(ring)) / 2 / _TICKS_PER_M**2, "m2")
    room = working.at[0]
    for surface in plan.surfaces:
        if surface.id == f"{room}/floor" and set(surface.outline) != set(ring):
            yield Objection(CODE, working.key, "has other corners than the floor")


def _square(plan: Document, working: Working) -> Iterator[Objection]:
    yield from _alone(working, "corner", "u", "v", "moved")
    adjusted = _corners(working)
    area = plan.workings.get(key_of(_AREA, *working.at))
    drawn = {} if area is None else _corners(area)
    if list(adjusted) != list(drawn):
        yield Objection(CODE, working.key, "moves other corners than the room has")
        return
    right = {name: [0, 0] for name in adjusted}
    for axis in (0, 1):
        for run in _runs({name: at[axis] for name, at in drawn.items()}):
            for name in run:
                right[name][axis] = round(sum(adjusted[one][axis] for one in run) / len(run))
    for name, at in drawn.items():
        off = max(abs(here - there) for here, there in zip(at, adjusted[name], strict=True))
        if off >= plan.tape.graduation or tuple(right[name]) != at:
            yield Objection(CODE, working.key, f"draws corner {name} elsewhere than its sides lie")
    moved = [math.dist(at, adjusted[name]) / TICKS_PER_MM for name, at in drawn.items()]
    yield from column(working, "moved", moved, "mm")
    yield from holds(working, "result", max(moved), "mm")
    yield from _walls(plan, working, adjusted)


def _walls(plan: Document, working: Working, adjusted: dict[str, Point]) -> Iterator[Objection]:
    """Walls are as long as the readings put their corners apart."""
    room = working.at[0]
    for surface in plan.surfaces:
        if surface.id != f"{room}/wall/{'-'.join(surface.corners)}" or not surface.extent:
            continue
        one, other = (adjusted.get(f"{room}/corner/{name}") for name in surface.corners)
        left, _, right, _ = bounds(surface.extent)
        if one is None or other is None or abs(math.dist(one, other) - (right - left)) > _ROUNDED:
            yield Objection(CODE, working.key, f"has corners that are not as far apart as {surface.id} is long")


def _runs(places: dict[str, int]) -> Iterator[list[str]]:
    """Corners that follow each other round the room and are drawn on one line."""
    names = list(places)
    breaks = [
        place for place, (one, other) in enumerate(pairwise([*names, names[0]]), 1) if places[one] != places[other]
    ]
    if not breaks:
        yield names
        return
    turned = names[breaks[-1] :] + names[: breaks[-1]]
    run = [turned[0]]
    for one, other in pairwise(turned):
        if places[one] != places[other]:
            yield run
            run = []
        run.append(other)
    yield run


def _checks(plan: Document, working: Working) -> Iterator[Objection]:
    yield from _alone(working, "readings", "corners", "needed", "taped_to", "changed", "by")
    area = plan.workings.get(key_of(_AREA, *working.at))
    corners = 0 if area is None else len(_corners(area))
    yield from just(working, "corners", corners)
    yield from just(working, "needed", 2 * corners - 3)
    yield from just(working, "result", int(working.number("readings") or 0) - (2 * corners - 3))


def _alone(working: Working, *names: str) -> Iterator[Objection]:
    yield from only(working, *names)
    yield from rests_on(working)
    yield from limited(working)


def _corners(working: Working) -> dict[str, Point]:
    """Corners by reference with their places [ticks]."""
    across, up = ([_ticks(one) for one in several(working.inputs.get(axis))] for axis in ("u", "v"))
    return dict(zip(refs(working, "corner"), zip(across, up, strict=False), strict=False))


def _ticks(given: Given) -> int:
    found = number_of(given)
    return _NOWHERE if found is None or unit_of(given) != "mm" else round(found * TICKS_PER_MM)


def expected(plan: Document) -> Iterator[str]:
    """Three for each room that is worked out at all."""
    for room in dict.fromkeys(one.at[0] for one in plan.workings.values() if one.formula in FORMULAS):
        yield from (key_of(formula, room) for formula in FORMULAS)


FORMULAS: dict[str, Prove] = {_AREA: _area, _CHECKS: _checks, _SQUARE: _square}

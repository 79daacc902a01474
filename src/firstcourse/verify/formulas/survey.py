"""Rooms as taped: their drawn corners, how far each was moved to be drawn square, and how many readings check."""

import math
from collections.abc import Iterator, Mapping
from itertools import pairwise

from firstcourse.geometry import Point, area2, bounds
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas.parts import ends_of, length_mm
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

_READ = ("sides", "diagonals")
_SEEN_MM = 0.005
"""Corners are whole ticks here; readings were adjusted finer than that."""
_HALF = 1 / 2 + 1e-6

_NOWHERE = 10**9
"""Where a corner lies whose place is no length."""


def _area(plan: Document, working: Working) -> Iterator[Objection]:
    yield from _alone(working, "corner", "u", "v")
    corners = _corners(working)
    asked = [f"{working.at[0]}/corner/{name}" for name, _ in _rooms(plan)[working.at[0]].rows("corners")]
    if list(corners) != asked:
        yield Objection(CODE, working.key, "has other corners than the job gives")
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
    right = {name: [0.0, 0.0] for name in adjusted}
    for axis in (0, 1):
        for run in _runs({name: at[axis] for name, at in drawn.items()}):
            for name in run:
                right[name][axis] = sum(adjusted[one][axis] for one in run) / len(run)
    for name, at in drawn.items():
        off = max(abs(here - there) for here, there in zip(at, adjusted[name], strict=True))
        # A mean of corners may lie halfway between two ticks, and is rounded either way.
        beside = max(abs(here - there) for here, there in zip(at, right[name], strict=True))
        if off >= plan.tape.graduation or beside > _HALF:
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
    given = _rooms(plan)[working.at[0]]
    read, corners = taped(given), len(given.rows("corners"))
    yield from just(working, "readings", len(read))
    yield from just(working, "corners", corners)
    yield from just(working, "needed", 2 * corners - 3)
    yield from just(working, "taped_to", {"word": given.text("taped_to", "untold")})
    yield from just(working, "result", len(read) - (2 * corners - 3))
    square = plan.workings.get(key_of(_SQUARE, *working.at))
    adjusted = {} if square is None else _by_name(square)
    if not read or not {end for pair in read for end in ends_of(pair, given.where)} <= adjusted.keys():
        yield Objection(CODE, working.key, "reads corners that the room does not have")
        return
    off = {pair: _apart(adjusted, pair) - long for pair, long in read.items()}
    yield from holds(working, "by", max(map(abs, off.values())), "mm", _SEEN_MM)
    changed = working.inputs.get("changed")
    name = changed.get("name") if isinstance(changed, Mapping) else None
    if name not in off or abs(off[name]) < max(map(abs, off.values())) - _SEEN_MM:
        yield Objection(CODE, working.key, f"says that {name} is changed the most, and another is more")
    yield from _settled(working, adjusted, off)


def _settled(working: Working, adjusted: Mapping[str, Point], off: Mapping[str, float]) -> Iterator[Objection]:
    """Corners lie where the sum of the squares of all changes is least: what pulls at each is nothing together."""
    pull = {name: [0.0, 0.0, 0.0] for name in adjusted}
    for pair, change in off.items():
        one, other = ends_of(pair, working.key)
        for axis in (0, 1):
            share = (adjusted[other][axis] - adjusted[one][axis]) / TICKS_PER_MM / max(_apart(adjusted, pair), 1.0)
            pull[one][axis] -= change * share
            pull[other][axis] += change * share
        pull[one][2] += 1
        pull[other][2] += 1
    for name, (across, up, readings) in pull.items():
        if math.hypot(across, up) > _SEEN_MM * readings:
            yield Objection(CODE, working.key, f"has corner {name} where the readings do not put it")


def taped(given: Node) -> dict[str, float]:
    """Every distance that was taped, by its corners [mm]."""
    return {pair: length_mm(part, pair) for kind in _READ for part in [given.part(kind)] for pair in part.value}


def _apart(adjusted: Mapping[str, Point], pair: str) -> float:
    """Between two corners [mm]."""
    one, other = ends_of(pair, pair)
    return math.dist(adjusted[one], adjusted[other]) / TICKS_PER_MM


def _rooms(plan: Document) -> dict[str, Node]:
    """What the job says of each room, by its name."""
    return {room.text("name"): room for room in plan.job.nodes("rooms", ()) if "corners" in room.value}


def _alone(working: Working, *names: str) -> Iterator[Objection]:
    yield from only(working, *names)
    if len({len(several(working.inputs.get(name))) for name in ("corner", "u", "v") if name in names}) > 1:
        yield Objection(CODE, working.key, "has not just one place for each corner")
    yield from rests_on(working)
    yield from limited(working)


def _corners(working: Working) -> dict[str, Point]:
    """Corners by reference with their places [ticks]."""
    across, up = ([_ticks(one) for one in several(working.inputs.get(axis))] for axis in ("u", "v"))
    return dict(zip(refs(working, "corner"), zip(across, up, strict=False), strict=False))


def adjusted_corners(plan: Document, room: str) -> dict[str, Point]:
    """Corners of a room by name, where its readings put them [ticks]."""
    square = plan.workings.get(key_of(_SQUARE, room))
    return {} if square is None else _by_name(square)


def drawn_corners(plan: Document, room: str) -> dict[str, Point]:
    """Corners of a room by name, as they are drawn on its plan [ticks]."""
    area = plan.workings.get(key_of(_AREA, room))
    return {} if area is None else _by_name(area)


def _by_name(working: Working) -> dict[str, Point]:
    return {name.rpartition("/")[2]: at for name, at in _corners(working).items()}


def _ticks(given: Given) -> int:
    found = number_of(given)
    return _NOWHERE if found is None or unit_of(given) != "mm" else round(found * TICKS_PER_MM)


def expected(plan: Document) -> Iterator[str]:
    """Three for each room."""
    for room in _rooms(plan):
        yield from (key_of(formula, room) for formula in FORMULAS)


FORMULAS: dict[str, Prove] = {_AREA: _area, _CHECKS: _checks, _SQUARE: _square}

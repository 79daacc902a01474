"""Steps at doorways: the difference of the two floors beside each, what takes it up, and the gap under a door."""

from collections.abc import Iterator
from typing import Any

from firstcourse.rules import RuleSet
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas.proving import CODE, Prove, holds, just, key_of, only
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_STEP = "height-doorway_step"
_LAYERS_MM = 0.01
"""Layers of the floor are rounded to whole ticks one by one, the height that was judged is not."""


def _step(plan: Document, working: Working) -> Iterator[Objection]:
    given = doorways_given(plan).get(working.at[0])
    if given is None:
        yield Objection(CODE, working.key, "is at no doorway that the job gives")
        return
    beyond = given.number("other_floor")
    yield from holds(working, "other_floor", beyond, "mm")
    high = working.number("this_floor") or 0.0
    floor = next((one for one in plan.surfaces if one.id == working.at[0].partition("/door/")[0]), None)
    if floor is not None and floor.layers and floor.fall is None:
        layers = sum(thickness for _, thickness in floor.layers) / TICKS_PER_MM
        if abs(layers - high) > _LAYERS_MM:
            yield Objection(
                CODE, working.key, f"says the floor is {high:.3f} mm high, its layers are {layers:.3f} mm"
            )
    rise = high - beyond
    yield from holds(working, "result", rise, "mm", _LAYERS_MM)
    wanted = taken_up(plan.rules, abs(rise), plan.tape.graduation / TICKS_PER_MM)
    under = ("under_door",) if "door_underside" in given.value else ()
    yield from only(working, "this_floor", "other_floor", *wanted, *under)
    yield from just(working, "profile", {"word": wanted.pop("profile")})
    for name, (number, unit) in wanted.items():
        yield from holds(working, name, number, unit, _LAYERS_MM)
    if under:
        yield from holds(working, "under_door", given.number("door_underside") - high, "mm")


def taken_up(rules: RuleSet, step: float, graduation: float) -> dict[str, Any]:
    """The profile that a step asks for, how long it is and its slope."""
    square, bevel = (rules.ticks(f"transition.{kind}.max") / TICKS_PER_MM for kind in ("vertical", "bevel"))
    # What no tape shows is level.
    if step <= square or 2 * step < graduation:
        return {"profile": "straight_edge_trim"}
    low = step <= bevel
    slope = rules.number("transition.bevel.slope" if low else "transition.ramp.slope")
    profile = "bevelled_reducer" if low else "ramped_threshold"
    return {"profile": profile, "long": (step * slope, "mm"), "slope": (slope, "")}


def doorways_given(plan: Document) -> dict[str, Node]:
    """Doorways of floors whose finish is known, by reference."""
    falls = {surface.room for surface in plan.surfaces if surface.fall and surface.fall.drain_height is not None}
    return {
        f"{name}/floor/door/{door.text('id')}": door
        for room in plan.job.nodes("rooms", ())
        for name, floor in ((room.text("name"), room.part("floor")),)
        for door in floor.nodes("doorways", ())
        if {"tile", "tiling"} & floor.value.keys() or name in falls
    }


def expected(plan: Document) -> Iterator[str]:
    """A step for each doorway of a floor whose finish is known, unless the practice has no rule to judge it by."""
    unjudged = {said.place for said in plan.findings if said.code == "SUI-902"}
    for ref in doorways_given(plan):
        if ref.partition("/door/")[0] not in unjudged:
            yield key_of(_STEP, ref)


def step_key(ref: str) -> str:
    """Key of the working of a doorway's step."""
    return key_of(_STEP, ref)


FORMULAS: dict[str, Prove] = {_STEP: _step}

"""How a shower floor's rise, bed, levels and drops came about."""

import math
from collections.abc import Sequence

from firstcourse.details import FallLimits
from firstcourse.plan import Fall, Surface
from firstcourse.showers.fall_planes import FallingFloor
from firstcourse.showers.falls import RiseChoice
from firstcourse.showers.shower_heights import Cover, open_levels
from firstcourse.units import to_mm
from firstcourse.values import Ref, Value, Word, length, measure
from firstcourse.workings import Working

_MM3_PER_LITRE = 1e6
_MM2_PER_M2 = 1e6


def rise_working(
    floor_id: str, floor: FallingFloor, fall: Fall, choice: RiseChoice, limits: FallLimits
) -> Working:
    """The rise that the limits of the falls leave.

    Args:
        floor_id: Reference to the shower floor.
        floor: As it is built.
        fall: As the plan holds it.
        choice: What the limits ask of it.
        limits: Falls allowed.
    """
    per = floor.rise / choice.rise
    inputs: dict[str, Value] = {
        "least": measure(limits.least),
        "rise_planes": measure(choice.least_rise_planes * per, "mm"),
        "rise_valleys": Word(word="no_limit")
        if math.isinf(choice.least_rise_flow)
        else measure(choice.least_rise_flow * per, "mm"),
        "least_plane": measure(fall.least_plane_fall),
        "least_flow": measure(fall.least_fall),
        "steepest": measure(fall.greatest_fall),
    }
    rules = ["fall.min"]
    if limits.greatest is not None:
        rules.append("fall.max")
        inputs["greatest"] = measure(limits.greatest)
        inputs["rise_allowed"] = measure(choice.greatest_rise * per, "mm")
    inputs["rules"] = tuple(Ref(ref=f"rule/{rule}") for rule in rules)
    return Working(
        formula="showers-rise", at=(floor_id,), inputs=inputs, result=length(fall.rise), rule="fall.min"
    )


def bed_working(floor_id: str, floor: FallingFloor, fall: Fall) -> Working:
    """The volume of a bed, and of the slope under a liner."""
    inputs: dict[str, Value] = {
        "membrane": Word(word=fall.membrane),
        "area": measure((floor.volume(1.0) - floor.volume(0.0)) / _MM2_PER_M2, "m2"),
        "falls": measure(floor.volume(0.0) / _MM3_PER_LITRE, "l"),
        "bed": length(fall.bed),
    }
    if fall.membrane == "liner":
        inputs["slope"] = length(fall.pre_slope)
        inputs["slope_volume"] = measure(fall.pre_slope_litres, "l")
    return Working(formula="showers-bed", at=(floor_id,), inputs=inputs, result=measure(fall.bed_litres, "l"))


def tile_working(floor_id: str, floor: FallingFloor, step: int, largest: int, rules: Sequence[str]) -> Working:
    """The largest tile that follows the planes uncut.

    Args:
        floor_id: Reference to the shower floor.
        floor: Its planes.
        step: Step allowed between tiles [ticks].
        largest: What it comes to, a rule's limit counted in [ticks].
        rules: The rule that the step follows from; before it the one that limits the tile, where it does.
    """
    inputs: dict[str, Value] = {
        "step": length(step),
        "turn": measure(max(fold.turn for fold in floor.folds)),
        "by_rule": len(rules) > 1,
    }
    return Working(
        formula="showers-largest_tile", at=(floor_id,), inputs=inputs, result=length(largest), rule=rules[0]
    )


def heights_working(surface: Surface, fall: Fall, cover: Cover) -> Working:
    """How the height of the drain over the panels comes about."""
    assert fall.drain_height is not None
    entry = open_levels(surface, fall.levels)
    room: dict[str, Value] = {} if fall.room_floor is None else {"room_floor": length(fall.room_floor)}
    by_entry = bool(entry and fall.room_floor is not None)
    rows: dict[str, Value] = {"entry": length(max(entry))} if by_entry else {}
    rows = rows or _on_bed(fall.bed + fall.pre_slope, cover)
    return Working(
        formula="showers-drain_by_entry" if by_entry else "showers-drain_on_bed",
        at=(surface.id,),
        inputs={**room, **rows},
        result=length(fall.drain_height),
    )


def recess_working(floor_id: str, entry: int, under: int, cover: Cover, needed: int) -> Working:
    """How far the ground of the bed lies below the room's finished floor.

    Args:
        floor_id: Reference to the shower floor.
        entry: Rise at the side that is open to the room [ticks].
        under: Bed and slope under it at the drain [ticks].
        cover: Tile and mortar on the bed.
        needed: What they come to, up to the tape's next mark [ticks].
    """
    return Working(
        formula="showers-recess",
        at=(floor_id,),
        inputs={"entry": length(entry), **_on_bed(under, cover)},
        result=length(needed),
    )


def drop_working(ref: str, depth: int, limits: FallLimits, least: int) -> Working:
    """How much a shelf, bench or kerb's top drops over its depth.

    Args:
        ref: Reference to it.
        depth: How deep it is [ticks].
        limits: Falls allowed.
        least: The least drop, up to half marks of the tape [ticks].
    """
    inputs: dict[str, Value] = {"depth": length(depth), "least": measure(limits.least)}
    if limits.greatest is not None:
        inputs["greatest"] = measure(limits.greatest)
        inputs["most"] = measure(to_mm(depth) * limits.greatest, "mm")
    return Working(formula="showers-drop", at=(ref,), inputs=inputs, result=length(least), rule="fall.shelf.min")


def _on_bed(under: int, cover: Cover) -> dict[str, Value]:
    return {"under": length(under), "mortar": length(cover.mortar), "tile": length(cover.tile)}

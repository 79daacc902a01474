"""Where the finished floor meets another: the step and what takes it up, and how much to cut off the door."""

from dataclasses import dataclass
from typing import Literal

from firstcourse.findings import Finding, Severity
from firstcourse.layers import Layer, total_height_in
from firstcourse.rules import RuleSet
from firstcourse.units import Tape, inches, to_inches
from firstcourse.values import Value, Word, least, length_in, measure, most
from firstcourse.workings import Working

Profile = Literal["straight_edge_trim", "bevelled_reducer", "ramped_threshold"]
"""What takes up a step between two floors."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Doorway:
    """Where the finished floor meets another.

    Attributes:
        ref: Reference to it, such as `bath/floor/door/door to hall`.
        other_floor_in: Height of the other finished floor over this room's structure [in].
        door_underside_in: Height of the door's underside over this room's structure [in]; None without a door.
    """

    ref: str
    other_floor_in: float
    door_underside_in: float | None = None


def judge_doorway(
    rules: RuleSet, layers: tuple[Layer, ...], doorway: Doorway, tape: Tape
) -> tuple[tuple[Finding, ...], Working]:
    """The step at a doorway, the profile it asks for, and the gap under its door.

    Returns:
        Findings, empty where nothing is to be done; and the working of the step.
    """
    height = total_height_in(layers)
    rise = round(height - doorway.other_floor_in, 6)
    profile, asked, findings = _step(rules, doorway, rise, tape)
    inputs: dict[str, Value] = {
        "this_floor": length_in(height),
        "other_floor": length_in(doorway.other_floor_in),
        "profile": Word(word=profile),
        **asked,
    }
    if doorway.door_underside_in is not None:
        gap = doorway.door_underside_in - height
        inputs["under_door"] = length_in(gap)
        findings += _door(rules, doorway, gap)
    return tuple(findings), Working(
        formula="height-doorway_step", at=(doorway.ref,), inputs=inputs, result=length_in(rise)
    )


def _step(
    rules: RuleSet, doorway: Doorway, rise: float, tape: Tape
) -> tuple[Profile, dict[str, Value], list[Finding]]:
    step = abs(rise)
    square, bevelled = (
        to_inches(rules.ticks(rule)) for rule in ("transition.vertical.max", "transition.bevel.max")
    )
    # What no tape shows is level.
    if step <= square or 2 * inches(step) < tape.graduation:
        return "straight_edge_trim", {}, []
    bevel = step <= bevelled
    slope = rules.number("transition.bevel.slope" if bevel else "transition.ramp.slope")
    asked: dict[str, Value] = {"long": length_in(step * slope), "slope": measure(slope)}
    found = rules.entry("transition.vertical.max" if bevel else "transition.bevel.max").found(
        "SUI-601" if bevel else "SUI-602",
        Severity.NOTE if bevel else Severity.FIX,
        doorway.ref,
        measured=length_in(step),
        limit=most(length_in(square if bevel else bevelled)),
        remedies=("profile",),
        up=rise > 0,
        over=length_in(step - bevelled),
        **asked,
    )
    return "bevelled_reducer" if bevel else "ramped_threshold", asked, [found]


def _door(rules: RuleSet, doorway: Doorway, gap: float) -> list[Finding]:
    entry = rules.entry("door.clearance.min")
    clearance = to_inches(rules.ticks(entry.id))
    if gap >= clearance:
        return []
    return [
        entry.found(
            "SUI-603",
            Severity.FIX,
            doorway.ref,
            measured=length_in(gap),
            limit=least(length_in(clearance)),
            remedies=("cut",),
            drags=gap > 0,
            off=length_in(clearance - gap),
        )
    ]

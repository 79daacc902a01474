"""Where the finished floor meets another: the step and what takes it up, and how much to cut off the door."""

from dataclasses import dataclass

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.suitability.buildup import (
    Layer,
    height_figures,
    height_text,
    on_tape,
    on_tape_up,
    total_height_in,
)
from firstcourse.units import Tape, inches, to_inches
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class Doorway:
    """Where the finished floor meets another.

    Attributes:
        name: Such as `door to hall`.
        other_floor_in: Height of the other finished floor over this room's structure [in].
        door_underside_in: Height of the door's underside over this room's structure [in]; None without a door.
    """

    name: str
    other_floor_in: float
    door_underside_in: float | None = None


def judge_doorway(
    rules: RuleSet, layers: tuple[Layer, ...], doorway: Doorway, tape: Tape
) -> tuple[tuple[Finding, ...], Working]:
    """The step at a doorway, the profile it asks for, and the gap under its door.

    Returns:
        Findings, empty where nothing is to be done; and the working of the step.
    """
    findings = []
    height = total_height_in(layers)
    rise = round(height - doorway.other_floor_in, 6)
    profile, found = _step(rules, doorway, rise, tape)
    findings += found
    values = {
        "this floor": f"{height_text(height, tape)} over the structure",
        "other floor": f"{height_text(doorway.other_floor_in, tape)} over the structure",
        "profile": profile,
    }
    if doorway.door_underside_in is not None:
        gap = doorway.door_underside_in - height
        values["gap under the door"] = height_text(gap, tape)
        findings += _door(rules, doorway, gap, tape)
    figures, unit = height_figures(rise, tape, "+")
    working = Working(
        title=f"{doorway.name}: step between the floors",
        formula="sum of the layers - height of the other floor",
        values=values,
        result=figures,
        unit=unit,
        source="layers and heights as entered",
    )
    return tuple(findings), working


def _step(rules: RuleSet, doorway: Doorway, rise: float, tape: Tape) -> tuple[str, list[Finding]]:
    step = abs(rise)
    square, bevelled = (
        to_inches(rules.ticks(rule)) for rule in ("transition.vertical.max", "transition.bevel.max")
    )
    # What no tape shows is level.
    if step <= square or 2 * inches(step) < tape.graduation:
        return "none, or a straight edge trim", []
    bevel = step <= bevelled
    slope = rules.number("transition.bevel.slope" if bevel else "transition.ramp.slope")
    length = on_tape_up(step * slope, tape)
    profile = (
        f"bevelled reducer at least {length} long (1 in {slope:g})"
        if bevel
        else f"ramped threshold at least {length} long (1 in {slope:g})"
    )
    entry = rules.entry("transition.vertical.max" if bevel else "transition.bevel.max")
    return profile, [
        entry.finding(
            code="SUI-601" if bevel else "SUI-602",
            severity=Severity.NOTE if bevel else Severity.FIX,
            where=doorway.name,
            message=f"From the other floor into this room one steps {'up' if rise > 0 else 'down'} here.",
            measured=on_tape(step, tape),
            limit=f"at most {on_tape(square if bevel else bevelled, tape)}",
            remedy=f"Take a {profile}" + ("." if bevel else f", or layers {_less(rise, bevelled, tape)}."),
        )
    ]


def _less(rise: float, most: float, tape: Tape) -> str:
    return f"{on_tape_up(abs(rise) - most, tape)} {'thinner' if rise > 0 else 'thicker'} in all"


def _door(rules: RuleSet, doorway: Doorway, gap: float, tape: Tape) -> list[Finding]:
    entry = rules.entry("door.clearance.min")
    clearance = to_inches(rules.ticks(entry.id))
    if gap >= clearance:
        return []
    return [
        entry.finding(
            code="SUI-603",
            severity=Severity.FIX,
            where=doorway.name,
            message="The door will " + ("drag on" if gap > 0 else "not open over") + " the finished floor.",
            measured=on_tape(gap, tape),
            limit=f"at least {on_tape(clearance, tape)}",
            remedy=f"Cut {on_tape_up(clearance - gap, tape)} off the door before laying.",
        )
    ]

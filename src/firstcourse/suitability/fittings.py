"""Fittings that must end level with the finished surface: flanges, drains, valves, edge trim."""

from dataclasses import dataclass

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.suitability.buildup import BOND_COAT, TILE, Layer, on_tape, on_tape_up, total_height_in
from firstcourse.units import Tape, to_inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitting:
    """A flange or drain: the top of its rim over the structure [in]."""

    name: str
    top_in: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ValveWindow:
    """How far from the studs' faces the finished wall may end, by the valve's sheet.

    Attributes:
        least_in, most_in: The window [in].
        furring_in: Furring that the wall is to get there so that it stands plumb [in].
    """

    name: str
    least_in: float
    most_in: float
    furring_in: float = 0.0


def judge_flange(
    rules: RuleSet, layers: tuple[Layer, ...], where: str, flange: Fitting, tape: Tape
) -> tuple[Finding, ...]:
    """Whether a closet flange will stand on the finished floor."""
    entry = rules.entry("flange.above.max")
    most = to_inches(rules.ticks(entry.id))
    above = round(flange.top_in - total_height_in(layers), 6)
    if 0 <= above <= most:
        return ()
    return (
        entry.finding(
            code="SUI-604",
            severity=Severity.FIX,
            where=where,
            message=f"{_first(flange.name)} ends {'too far above' if above > 0 else 'below'} the finished floor.",
            measured=f"{on_tape(abs(above), tape)} {'above' if above > 0 else 'below'}",
            limit=f"0 to {on_tape(most, tape)} above",
            remedy=f"Have a plumber lower it by {on_tape_up(above - most, tape)} or more."
            if above > 0
            else _raised(rules, on_tape_up(-above, tape), on_tape(most - above, tape)),
        ),
    )


def _raised(rules: RuleSet, least: str, most: str) -> str:
    """How a flange or the end of a soil pipe gets higher; rings and wax are US fittings."""
    if rules.practice == "us":
        return f"Add extension rings of {least} to {most} in all; two wax rings are no ring."
    return f"Have a plumber bring it up by {least} to {most}."


def judge_drain(
    rules: RuleSet, layers: tuple[Layer, ...], where: str, drain: Fitting, tape: Tape
) -> tuple[Finding, ...]:
    """Whether a drain's grate will lie level with the tile or a little below it."""
    entry = rules.entry("drain.below.max")
    most = to_inches(rules.ticks(entry.id))
    below = round(total_height_in(layers) - drain.top_in, 6)
    if 0 <= below <= most:
        return ()
    return (
        entry.finding(
            code="SUI-607",
            severity=Severity.FIX,
            where=where,
            message=f"{_first(drain.name)} ends {'too far below' if below > 0 else 'above'} the finished floor"
            + ("." if below > 0 else ": water stands round it."),
            measured=f"{on_tape(abs(below), tape)} {'below' if below > 0 else 'above'}",
            limit=f"0 to {on_tape(most, tape)} below",
            remedy=f"Raise its rim by {on_tape_up(below - most, tape)} to {on_tape(below, tape)} "
            "with an extension."
            if below > 0
            else f"Lower its rim by {on_tape_up(-below, tape)}.",
        ),
    )


def judge_valve(layers: tuple[Layer, ...], where: str, valve: ValveWindow, tape: Tape) -> tuple[Finding, ...]:
    """Whether the wall's layers, and the furring it is to get, end within a valve's depth window."""
    bare = total_height_in(layers)
    height = bare + valve.furring_in
    furred = f", {on_tape(valve.furring_in, tape)} of furring with it" if valve.furring_in else ""
    window = f"{on_tape(valve.least_in, tape)} to {on_tape(valve.most_in, tape)} from the studs' faces"
    if valve.least_in <= height <= valve.most_in:
        if valve.least_in <= bare <= valve.most_in:
            return ()
        # Whoever leaves the furring out leaves the window.
        return (
            Finding(
                code="SUI-608",
                severity=Severity.NOTE,
                where=where,
                message=f"The depth window of {valve.name} is met only with the wall furred plumb.",
                measured=f"{on_tape(height, tape)}{furred}",
                limit=window,
                source="the valve's sheet, as entered",
                remedy="Fur the wall as its own finding says, or have the valve moved.",
            ),
        )
    beyond = height > valve.most_in
    move = height - valve.most_in if beyond else valve.least_in - height
    return (
        Finding(
            code="SUI-605",
            severity=Severity.FIX,
            where=where,
            message=f"The finished wall ends {'beyond' if beyond else 'short of'} the window of {valve.name}.",
            measured=f"{on_tape(height, tape)}{furred}",
            limit=window,
            source="the valve's sheet, as entered",
            remedy=f"Have it moved {'out' if beyond else 'back'} by {on_tape_up(move, tape)} or more "
            "before boarding.",
        ),
    )


def judge_trim(
    rules: RuleSet, layers: tuple[Layer, ...], where: str, trim_in: float, tape: Tape
) -> tuple[Finding, ...]:
    """Whether an edge trim's height suits tile and bond coat [in]."""
    entry = rules.entry("trim.height.tolerance")
    give = to_inches(rules.ticks(entry.id))
    wanted = sum(layer.thickness_in for layer in layers if layer.name in (TILE, BOND_COAT))
    if abs(trim_in - wanted) <= give + 1e-9:
        return ()
    return (
        entry.finding(
            code="SUI-606",
            severity=Severity.FIX,
            where=where,
            message=f"The edge trim ends {'above' if trim_in > wanted else 'below'} the tile.",
            measured=on_tape(trim_in, tape),
            limit=f"{on_tape(wanted, tape)} (tile and bond coat), {on_tape(give, tape)} either way",
            remedy=f"Take trim of {on_tape(wanted, tape)}.",
        ),
    )


def _first(name: str) -> str:
    return name[0].upper() + name[1:]

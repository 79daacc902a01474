"""Fittings that must end level with the finished surface: flanges, drains, valves, edge trim."""

from dataclasses import dataclass

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.suitability.buildup import BOND_COAT, TILE, Layer, total_height_in
from firstcourse.suitability.checks import sourced
from firstcourse.units import Tape, ceil_to, format_length, inches, to_inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitting:
    """A flange or drain: the top of its rim over the structure [in]."""

    name: str
    top_in: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ValveWindow:
    """How far from the studs' faces the finished wall may end, by the valve's sheet [in]."""

    name: str
    least_in: float
    most_in: float


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
        Finding(
            code="SUI-604",
            severity=Severity.FIX,
            where=where,
            message=f"{flange.name} ends {'too far above' if above > 0 else 'below'} the finished floor.",
            measured=_shown(above, tape),
            limit=f"0 to {_shown(most, tape)} above",
            rule=entry.id,
            source=sourced(entry),
            remedy=f"Have a plumber lower it by {_up(above - most, tape)} or more."
            if above > 0
            else f"Add an extension ring of {_up(-above, tape)}; two wax rings are no ring.",
        ),
    )


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
        Finding(
            code="SUI-607",
            severity=Severity.FIX,
            where=where,
            message=f"{drain.name} ends {'too far below' if below > 0 else 'above'} the finished floor"
            + ("." if below > 0 else ": water stands round it."),
            measured=f"{_shown(abs(below), tape)} {'below' if below > 0 else 'above'}",
            limit=f"0 to {_shown(most, tape)} below",
            rule=entry.id,
            source=sourced(entry),
            remedy=f"Raise its rim by {_up(below - most, tape)} to {_shown(below, tape)} with an extension."
            if below > 0
            else f"Lower its rim by {_up(-below, tape)}.",
        ),
    )


def judge_valve(layers: tuple[Layer, ...], where: str, valve: ValveWindow, tape: Tape) -> tuple[Finding, ...]:
    """Whether the wall's layers end within a valve's depth window."""
    height = total_height_in(layers)
    if valve.least_in <= height <= valve.most_in:
        return ()
    move = height - valve.most_in if height > valve.most_in else valve.least_in - height
    return (
        Finding(
            code="SUI-605",
            severity=Severity.FIX,
            where=where,
            message=f"The finished wall ends {'beyond' if height > valve.most_in else 'short of'} "
            f"the depth window of {valve.name}.",
            measured=_shown(height, tape),
            limit=f"{_shown(valve.least_in, tape)} to {_shown(valve.most_in, tape)} from the studs' faces",
            source="the valve's sheet, as entered",
            remedy=f"Have it moved {'out' if height > valve.most_in else 'back'} by {_up(move, tape)} or more "
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
        Finding(
            code="SUI-606",
            severity=Severity.FIX,
            where=where,
            message=f"The edge trim ends {'above' if trim_in > wanted else 'below'} the tile.",
            measured=_shown(trim_in, tape),
            limit=f"{_shown(wanted, tape)} (tile and bond coat), {_shown(give, tape)} either way",
            rule=entry.id,
            source=sourced(entry),
            remedy=f"Take trim of {_shown(wanted, tape)}.",
        ),
    )


def _shown(length_in: float, tape: Tape) -> str:
    return format_length(inches(length_in), tape)


def _up(length_in: float, tape: Tape) -> str:
    return format_length(ceil_to(inches(length_in), tape.graduation), tape)

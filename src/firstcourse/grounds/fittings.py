"""Fittings that must end level with the finished surface: flanges, drains, valves, edge trim."""

from dataclasses import dataclass

from firstcourse.findings import Finding, Severity
from firstcourse.layers import BOND_COAT, TILE, Layer, total_height_in
from firstcourse.rules import RuleSet
from firstcourse.units import to_inches
from firstcourse.values import Value, just, length_in, most


@dataclass(frozen=True, slots=True, kw_only=True)
class Fitting:
    """A flange or drain by its reference: the top of its rim over the structure [in]."""

    ref: str
    top_in: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ValveWindow:
    """How far from the studs' faces the finished wall may end, by the valve's sheet.

    Attributes:
        ref: Reference to the valve.
        least_in, most_in: The window [in].
        furring_in: Furring that the wall is to get there so that it stands plumb [in].
    """

    ref: str
    least_in: float
    most_in: float
    furring_in: float = 0.0


def judge_flange(rules: RuleSet, layers: tuple[Layer, ...], ref: str, flange: Fitting) -> tuple[Finding, ...]:
    """Whether a closet flange will stand on the finished floor; `ref` is the floor's."""
    entry = rules.entry("flange.above.max")
    allowed = to_inches(rules.ticks(entry.id))
    above = round(flange.top_in - total_height_in(layers), 6)
    if 0 <= above <= allowed:
        return ()
    # Rings and wax are US fittings.
    raised = "rings" if rules.practice == "us" else "bring_up"
    return (
        entry.found(
            "SUI-604",
            Severity.FIX,
            ref,
            flange.ref,
            measured=length_in(abs(above)),
            limit=most(length_in(allowed)),
            remedies=("lower" if above > 0 else raised,),
            above=above > 0,
            by=length_in(above - allowed if above > 0 else -above),
            at_most=length_in(abs(allowed - above)),
        ),
    )


def judge_drain(rules: RuleSet, layers: tuple[Layer, ...], ref: str, drain: Fitting) -> tuple[Finding, ...]:
    """Whether a drain's grate will lie level with the tile or a little below it; `ref` is the floor's."""
    entry = rules.entry("drain.below.max")
    allowed = to_inches(rules.ticks(entry.id))
    below = round(total_height_in(layers) - drain.top_in, 6)
    if 0 <= below <= allowed:
        return ()
    return (
        entry.found(
            "SUI-607",
            Severity.FIX,
            ref,
            drain.ref,
            measured=length_in(abs(below)),
            limit=most(length_in(allowed)),
            remedies=("raise" if below > 0 else "lower",),
            below=below > 0,
            by=length_in(max(below - allowed, 0.0)),
        ),
    )


def judge_valve(layers: tuple[Layer, ...], ref: str, valve: ValveWindow) -> tuple[Finding, ...]:
    """Whether a wall's layers, and the furring it is to get, end within a valve's depth window."""
    bare = total_height_in(layers)
    height = bare + valve.furring_in
    fits = valve.least_in <= height <= valve.most_in
    if fits and valve.least_in <= bare <= valve.most_in:
        return ()
    beyond = height > valve.most_in
    values: dict[str, Value] = {
        "from": length_in(valve.least_in),
        "to": length_in(valve.most_in),
        "furred": valve.furring_in > 0,
        "furring": length_in(valve.furring_in),
    }
    if not fits:
        move = height - valve.most_in if beyond else valve.least_in - height
        values |= {"beyond": beyond, "by": length_in(move)}
    return (
        Finding(
            # Whoever leaves the furring out leaves the window.
            code="SUI-608" if fits else "SUI-605",
            severity=Severity.NOTE if fits else Severity.FIX,
            at=(ref, valve.ref),
            measured=length_in(height),
            remedies=("fur" if fits else "move",),
            values=values,
        ),
    )


def judge_trim(rules: RuleSet, layers: tuple[Layer, ...], ref: str, trim_in: float) -> tuple[Finding, ...]:
    """Whether an edge trim's height suits tile and bond coat [in]."""
    entry = rules.entry("trim.height.tolerance")
    give = to_inches(rules.ticks(entry.id))
    wanted = sum(layer.thickness_in for layer in layers if layer.name in (TILE, BOND_COAT))
    if abs(trim_in - wanted) <= give + 1e-9:
        return ()
    return (
        entry.found(
            "SUI-606",
            Severity.FIX,
            ref,
            measured=length_in(trim_in),
            limit=just(length_in(wanted)),
            remedies=("trim",),
            above=trim_in > wanted,
            give=length_in(give),
        ),
    )

"""The ceiling of a steam room: whether what condenses on it runs off to a wall, and whether it keeps steam in."""

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.units import Tape, to_mm
from firstcourse.values import Value, Word, least, measure, most

_FALL = "ceiling.steam.fall.min"
_LEAST_SHOWN = 0.0005
"""A fall that no level shows: what is less is level."""


def judge_steam_ceiling(
    rules: RuleSet, ref: str, fall: float | None, run_mm: float, tape: Tape
) -> tuple[Finding, ...]:
    """Whether a steam room's ceiling falls enough.

    Args:
        rules: Rules in force.
        ref: Reference to the ceiling.
        fall: Its steepest fall, rise over run; None where its heights are not known.
        run_mm: Shortest way over it from wall to wall [mm].
        tape: Tape of the job; heights read to half its graduation.
    """
    entry = rules.entry(_FALL)
    asked = rules.number(_FALL)
    if fall is not None and fall >= asked - to_mm(tape.graduation) / run_mm:
        return ()
    return (
        entry.found(
            "SUI-610",
            Severity.NOTE if fall is None else Severity.FIX,
            ref,
            measured=None if fall is None else measure(fall),
            limit=least(measure(asked)),
            remedies=("heights", "frame") if fall is None else ("frame",),
            known=fall is not None,
            level=fall is not None and fall < _LEAST_SHOWN,
            down=measure(asked * run_mm, "mm"),
            run=measure(run_mm, "mm"),
        ),
    )


def judge_steam_closed(rules: RuleSet, ref: str, zone: str) -> tuple[Finding, ...]:
    """Whether a steam room's ceiling is said to be in steam; `zone` is empty where nothing is said of it."""
    if zone == "steam":
        return ()
    entry = rules.entry("exposure.steam.perm_max")
    told: dict[str, Value] = {"zone": Word(word=zone)} if zone else {}
    return (
        entry.found(
            "SUI-611",
            Severity.NOTE,
            ref,
            measured=None,
            limit=most(measure(rules.number(entry.id), "perm")),
            remedies=("exposure",),
            told=bool(zone),
            **told,
        ),
    )

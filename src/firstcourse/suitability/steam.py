"""The ceiling of a steam room: whether what condenses on it runs off to a wall, and whether it keeps steam in."""

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.units import Tape, ceil_to, format_length, ticks_from_mm, to_mm

_FALL = "ceiling.steam.fall.min"
_IN_PER_FT, _MM_PER_M = 12, 1000


def judge_steam_ceiling(
    rules: RuleSet, where: str, fall: float | None, run_mm: float, tape: Tape
) -> tuple[Finding, ...]:
    """Whether a steam room's ceiling falls enough.

    Args:
        rules: Rules in force.
        where: The ceiling in words.
        fall: Its steepest fall, rise over run; None where its heights are not known.
        run_mm: Shortest way over it from wall to wall [mm].
        tape: Tape of the job; heights read to half its graduation.
    """
    entry = rules.entry(_FALL)
    least = rules.number(_FALL)
    if fall is not None and fall >= least - to_mm(tape.graduation) / run_mm:
        return ()
    down = ceil_to(ticks_from_mm(least * run_mm), tape.graduation)
    run = format_length(ticks_from_mm(run_mm), tape)
    frame = (
        f"Frame it to fall {format_length(down, tape)} over the {run} from wall to wall, or half of that from its "
        "middle to both sides, before it is boarded; away from the door and from seats."
    )
    return (
        entry.finding(
            code="SUI-610",
            severity=Severity.NOTE if fall is None else Severity.FIX,
            where=where,
            message=f"This steam room's ceiling {'may be' if fall is None else 'is'} too level: what condenses "
            "there must run to a wall, or it drips on who sits below.",
            measured="" if fall is None else _fall_text(fall, tape),
            limit=f"at least {_fall_text(least, tape)}",
            remedy=frame if fall is not None else f"Give its height at each corner. {frame}",
        ),
    )


def judge_steam_closed(rules: RuleSet, where: str, zone: str) -> tuple[Finding, ...]:
    """Whether a steam room's ceiling is said to be in steam; `zone` is empty where nothing is said of it."""
    if zone == "steam":
        return ()
    entry = rules.entry("exposure.steam.perm_max")
    return (
        entry.finding(
            code="SUI-611",
            severity=Severity.NOTE,
            where=where,
            message="Walls of this room are in steam, which rises; nothing says that the ceiling keeps it in.",
            measured=f"zone: {zone.replace('_', ' ')}" if zone else "no exposure given",
            limit=f"a membrane of at most {rules.number(entry.id):g} perm on its face",
            remedy="Give the ceiling an exposure with zone: steam, membrane: yes and membrane_kind: low_perm, or "
            "have whoever closes it do the same.",
        ),
    )


def _fall_text(fall: float, tape: Tape) -> str:
    said = f"{_IN_PER_FT * fall:.2f}".rstrip("0").rstrip(".") if tape is Tape.INCH else f"{_MM_PER_M * fall:.0f}"
    return "level" if said == "0" else f"{said} {'in per ft' if tape is Tape.INCH else 'mm per m'}"

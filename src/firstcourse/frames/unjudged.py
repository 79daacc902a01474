"""What is said of a frame that cannot be judged: what is missing, and what it takes to judge it."""

from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleSet
from firstcourse.values import Name, Value, Word, measure

FRAMES_NEED = "floor.load.live"
"""A practice without this rule has none to judge frames by."""


def frame_unjudged(ref: str, rules: RuleSet, *, missing: str = FRAMES_NEED, floor: bool = True) -> Finding:
    """What is said of a frame for which a practice has no rules: that nothing here tells, and whom to ask.

    Args:
        ref: Reference to the surface.
        rules: The rule book in force.
        missing: The rule it has no value of.
        floor: Whether it is a floor, which live load bends.

    Returns:
        A note where the practice has no such rules at all: the work need not wait for a table of this book. A stop
        where it judges frames and lacks this one rule.
    """
    partly = rules.has(FRAMES_NEED)
    asked, bends = rules.find("frame.ask"), rules.find("frame.ask.deflection")
    usual = rules.find("frame.deflection.usual") if floor else None
    values: dict[str, Value] = {
        "partly": partly,
        "missing": Name(name=missing),
        "practice": Word(word=rules.practice),
        "day": Name(name=rules.on.isoformat()),
        "floor": floor,
        "named": asked is not None,
        "bends": bends is not None,
        "borrowed": bends is not None and bool(bends.taken_from),
    }
    if asked is not None:
        values["who"] = Name(name=str(asked.value))
    if bends is not None:
        values["divisor"] = measure(rules.number(bends.id))
        if bends.taken_from:
            values["lender"] = Word(word=bends.taken_from)
    if usual is not None:
        values["usual"] = measure(rules.number(usual.id))
    return Finding(
        code="SUI-901",
        severity=Severity.STOP if partly else Severity.NOTE,
        at=(ref,),
        rule="" if usual is None else usual.id,
        remedies=("carries",) if usual is None else ("carries", "usual"),
        values=values,
    )

"""The rules a plan rests on, and a word on those borrowed from another practice and on those the job changed."""

from collections.abc import Sequence

from firstcourse.findings import Finding, Severity
from firstcourse.plan import RuleNote
from firstcourse.rules import RuleSet
from firstcourse.values import Name


def rule_notes(rules: RuleSet) -> tuple[RuleNote, ...]:
    """The rules that were asked for so far, each once, by id: what a plan made with them rests on."""
    entries = [rules.entries[rule_id] for rule_id in sorted(rules.asked)]
    return tuple(
        RuleNote(
            id=entry.id,
            value=str(entry.value),
            unit=entry.unit,
            basis=entry.basis,
            source=entry.cited,
            taken_from=entry.taken_from,
            read=entry.read,
            converted=entry.converted,
            override=entry.reason,
        )
        for entry in entries
    )


def borrowed_values(notes: Sequence[RuleNote], practice: str) -> tuple[Finding, ...]:
    """Tell of values that are those of another practice, for want of the job's own; none where all are its own."""
    borrowed = [note for note in notes if note.taken_from]
    if not borrowed:
        return ()
    return (
        Finding(
            code="RUL-101",
            severity=Severity.NOTE,
            at=("rules",),
            remedies=("check",),
            values={
                "borrowed": len(borrowed),
                "asked": len(notes),
                "source": Name(name=borrowed[0].taken_from.upper()),
                "own": Name(name=practice.upper()),
                "practice": Name(name=practice),
            },
        ),
    )


def changes_not_asked(rules: RuleSet, notes: Sequence[RuleNote]) -> tuple[Finding, ...]:
    """Tell of rules that the job changes and nothing in its plan asked for: the change does nothing."""
    asked = {note.id for note in notes}
    return tuple(
        Finding(
            code="RUL-102",
            severity=Severity.NOTE,
            at=("rules", f"rule/{entry.id}"),
            rule=entry.id,
            remedies=("take_out",),
        )
        for entry in rules.entries.values()
        if entry.reason and entry.id not in asked
    )

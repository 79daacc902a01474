"""The rules a plan rests on, and a word on those borrowed from another practice and on those the job changed."""

from collections.abc import Sequence

from firstcourse.findings import Finding, Severity
from firstcourse.plan import RuleNote
from firstcourse.rules import RuleSet


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
    source, own = borrowed[0].taken_from.upper(), practice.upper()
    are = "is" if len(borrowed) == 1 else "are"
    return (
        Finding(
            code="RUL-101",
            severity=Severity.NOTE,
            where="rule book",
            message=f"{len(borrowed)} of the {len(notes)} values behind this plan {are} of {source} practice: "
            f"the rule book has none of {own} practice for them.",
            measured=f"{len(borrowed)} of {len(notes)}",
            remedy="Check them against the standards and makers' sheets that govern here. `firstcourse rules "
            f"--practice {practice}` marks them, and a plan lists them under Rules and sources; a job sets "
            "its own under `rules`, with its reason.",
        ),
    )


def changes_not_asked(rules: RuleSet, notes: Sequence[RuleNote]) -> tuple[Finding, ...]:
    """Tell of rules that the job changes and nothing in its plan asked for: the change does nothing."""
    asked = {note.id for note in notes}
    return tuple(
        Finding(
            code="RUL-102",
            severity=Severity.NOTE,
            where="rule book",
            message=f"The job changes rule {entry.id}, and nothing in this plan asks for it.",
            rule=entry.id,
            source=entry.cited,
            remedy="Take the change out, or see whether another rule is meant.",
        )
        for entry in rules.entries.values()
        if entry.reason and entry.id not in asked
    )

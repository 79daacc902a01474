"""What must be said of rules: how many are borrowed from another practice, and changes that do nothing."""

from collections.abc import Iterator

from firstcourse.verify.structure import Document, Said
from firstcourse.verify.told import name, said


def rule_findings(plan: Document) -> Iterator[Said]:
    """All that must be said of the rules that the plan rests on, and of those that the job changes for nothing."""
    notes = plan.shopping.rule_notes
    borrowed = [note.taken_from for note in notes if note.taken_from]
    if borrowed:
        practice = plan.job.text("practice", "us")
        yield said(
            "RUL-101",
            "note",
            "rules",
            "check",
            borrowed=len(borrowed),
            asked=len(notes),
            source=name(borrowed[0].upper()),
            own=name(practice.upper()),
            practice=name(practice),
        )
    asked = {note.id for note in notes}
    for entry in map(plan.rules.entry, plan.rules.ids()):
        if entry.reason and entry.id not in asked:
            yield said("RUL-102", "note", ("rules", f"rule/{entry.id}"), "take_out", rule=entry.id)

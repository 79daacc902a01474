"""Rules of a plan held against the book, and against what the job sets otherwise."""

from collections import Counter
from collections.abc import Iterator

from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_NOT_ASKED = "RUL-102"


def check_rule_notes(plan: Document) -> Iterator[Objection]:
    """Object to a rule that is printed otherwise than it stands in the book or as the job sets it.

    A rule that a finding names is one that the plan rests on, but where it says that nothing asked for it.
    """
    seen = Counter(note.id for note in plan.shopping.rule_notes)
    for note in plan.shopping.rule_notes:
        entry = plan.rules.entries.get(note.id)
        if entry is None or seen[note.id] > 1:
            yield Objection("VER-904", note.id, "is no rule of this plan, or stands twice")
        elif (note.value, note.unit, note.basis, note.source) != (
            str(entry.value), entry.unit, entry.basis, entry.cited,
        ):  # fmt: skip
            yield Objection("VER-904", note.id, f"is printed as {note.value} {note.unit}, and is not that")
        elif (note.read, note.converted) != (entry.read, entry.converted):
            yield Objection("VER-904", note.id, f"was read as {note.read or 'nothing'}, and was not")
        elif note.override != entry.reason:
            yield Objection("VER-904", note.id, "is changed by the job for another reason, or not at all")
        elif note.taken_from != entry.taken_from:
            yield Objection("VER-904", note.id, f"is of {entry.taken_from or 'no other'} practice, said otherwise")
    for rule in sorted(
        {said.rule for said in plan.findings if said.rule and said.code != _NOT_ASKED} - seen.keys()
    ):
        yield Objection("VER-904", rule, "is named by a finding, and is not among the rules of this plan")

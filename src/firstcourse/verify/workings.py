"""Workings held against what the plan shows: printed sums and limits; and printed rules against the book."""

import re
from collections import Counter
from collections.abc import Iterator

from firstcourse.verify.arithmetic import outcome, wrong_sums
from firstcourse.verify.printed import first_number
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_LIMIT = re.compile(
    r"at (?P<way>least|most) (?P<limit>[^:]*\d[^:]*): (?P<verdict>holds|DOES NOT HOLD|advised, not kept)"
)
_STEPPED = ("psi", "psf", "lb/in")
"""Units of results that one of their working's steps comes to."""
_NOT_ASKED = "RUL-102"


def check_workings(plan: Document) -> Iterator[Objection]:
    """Object to a sum that does not come out, and to a limit that is said to hold otherwise than it does."""
    for name, working in plan.workings.items():
        yield from _sums(name, working)
        yield from _limits(name, working)


def check_rule_notes(plan: Document) -> Iterator[Objection]:
    """Object to a rule that is printed otherwise than it stands in the book or as the job sets it.

    How many are borrowed from another practice must be told, and rightly. A rule that a finding names is one that
    the plan rests on; so is one that the job changes, or the plan says that nothing asked for it.
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
    for rule in sorted(entry.id for entry in plan.rules.entries.values() if entry.reason):
        if (rule in seen) == any(said.code == _NOT_ASKED and said.rule == rule for said in plan.findings):
            yield Objection(
                "VER-904", rule, "is changed by the job: the plan must rest on it, or say that it does not"
            )
    notes = plan.shopping.rule_notes
    borrowed = sum(bool(note.taken_from) for note in notes)
    told = [
        (said.values.get("borrowed"), said.values.get("asked")) for said in plan.findings if said.code == "RUL-101"
    ]
    if told != ([(borrowed, len(notes))] if borrowed else []):
        yield Objection("VER-904", "rules", f"{borrowed} are of another practice, told as {told or 'none'}")


def _sums(name: str, working: Working) -> Iterator[Objection]:
    for text in (*working.steps, *working.values.values()):
        for wrong in wrong_sums(text):
            yield Objection("VER-901", name, f"does not come out: {wrong}")
    said = first_number(working.result)
    ratio = working.result.startswith(("L/", "H/"))
    if not working.steps or said is None or not (ratio or working.unit in _STEPPED):
        return
    ends = [(found.low + found.high) / 2 for step in working.steps if (found := outcome(step)) is not None]
    loads = sum(
        (found.low + found.high) / 2
        for step in working.steps
        if step.startswith("w_") and (found := outcome(step)) is not None
    )
    if ends and not any(abs(said - end) <= 0.006 * abs(end) + (1.0 if ratio else 0.51) for end in (*ends, loads)):
        yield Objection("VER-901", name, f"gives {working.result}, which no step comes to")


def _limits(name: str, working: Working) -> Iterator[Objection]:
    found = _LIMIT.fullmatch(working.values.get("limit", ""))
    value = first_number(working.result)
    limit = None if found is None else first_number(found["limit"])
    if found is None or value is None or limit is None:
        return
    keeps = value >= limit if found["way"] == "least" else value <= limit
    # Printed alike they may still differ in what is not printed.
    if value != limit and keeps != (found["verdict"] == "holds"):
        yield Objection("VER-901", name, f"gives {working.result} against {found['limit']}, said otherwise")

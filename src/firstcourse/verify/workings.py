"""Workings held against what the plan shows: printed sums, limits, areas, masses, prices, membranes and bounds."""

import re
from collections import Counter
from collections.abc import Iterator

from firstcourse.units import KG_PER_LB, TICKS_PER_INCH, TICKS_PER_MM, Tape
from firstcourse.verify.arithmetic import outcome, wrong_sums
from firstcourse.verify.printed import first_number, prints
from firstcourse.verify.shopping_fields import SheetStock, Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_TICKS_PER_M = 1000 * TICKS_PER_MM
_SQ_FT = 0.09290304
_LITRES_PER_CUBIC_FOOT = 28.316846592
_LIMIT = re.compile(
    r"at (?P<way>least|most) (?P<limit>[^:]*\d[^:]*): (?P<verdict>holds|DOES NOT HOLD|advised, not kept)"
)
_STEPPED = ("psi", "psf", "lb/in")
"""Units of results that one of their working's steps comes to."""
_CODE = "VER-903"
_NOT_ASKED = "RUL-102"


def check_workings(plan: Document) -> Iterator[Objection]:
    """Object to a sum that does not come out, and to a number that is not what the plan shows."""
    for name, working in plan.workings.items():
        yield from _sums(name, working)
        yield from _limits(name, working)
    for found in (
        _masses,
        _beds,
        _twice,
    ):
        yield from found(plan)


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


def _is(name: str, said: str, value: float, what: str) -> Iterator[Objection]:
    if not prints(said, value):
        yield Objection(_CODE, name, f"says {said or 'nothing'} for {what}, which is {value:.6g}")


def _per_area(working: Working) -> float:
    """Square metres in the unit of a working."""
    return _SQ_FT if working.unit == "sq ft" else 1.0


def _whole(text: str) -> int:
    return int(text) if text.isdecimal() and len(text) < 10 else -1


def sheet_masses(plan: Document) -> dict[str, float]:
    """Mass of one whole sheet of every stock [kg]."""
    return {
        stock: item.size[0] * item.size[1] * item.thickness / _TICKS_PER_M**3 * _density(item, plan)
        for stock, item in plan.shopping.sheet_stock.items()
    }


def _masses(plan: Document) -> Iterator[Objection]:
    unit, per = ("kg", 1.0) if plan.tape is Tape.MM else ("lb", KG_PER_LB)
    kg = sheet_masses(plan)
    for stock, item in plan.shopping.sheet_stock.items():
        density = _density(item, plan)
        name = f"mass {stock}"
        if (working := plan.workings.get(name)) is not None:
            yield from _is(name, working.result, kg[stock] / per, f"one sheet's {unit}")
            yield from _is(name, working.values.get("density", ""), density, "density")
            small = TICKS_PER_MM if plan.tape is Tape.MM else TICKS_PER_INCH
            yield from _is(name, working.values.get("thickness", ""), item.thickness / small, "thickness")
    if (working := plan.workings.get("mass boards")) is not None:
        stock_of = {piece.id: piece.stock for piece in plan.pieces}
        total = 0.0
        for board in (b for surface in plan.surfaces for b in surface.boards if not b.fixed):
            stock = stock_of.get(board.piece, "")
            if stock in kg:
                size = plan.stock[stock]
                total += board.shape.area / (size[0] * size[1]) * kg[stock]
        yield from _is("mass boards", working.result, total / per, f"all boards' {unit}")


def _density(item: SheetStock, plan: Document) -> float:
    """As the sheet has it; else as the book has it for its family, or for fibre cement."""
    if item.density is not None:
        return item.density
    own = f"mass.board.{item.kind.lower().replace(' ', '_').replace('-', '_')}"
    return plan.rules.number(own if plan.rules.has(own) else "boards.density")


def _beds(plan: Document) -> Iterator[Objection]:
    per = 1.0 if plan.tape is Tape.MM else _LITRES_PER_CUBIC_FOOT
    listed = plan.workings.get("quantity bed_mortar")
    for surface in plan.surfaces:
        fall = surface.fall
        if fall is None:
            continue
        if listed is not None:
            said = listed.values.get(f"{surface.id}: bed", "")
            yield from _is("quantity bed_mortar", said, fall.bed_litres / per, "the bed")


def _twice(plan: Document) -> Iterator[Objection]:
    """What boards are bedded in is worked out once and listed once: both print the same numbers."""
    for kind, listed in (("mortar", "bedding_mortar"), ("tape", "seam_tape"), ("sealant", "sealant")):
        one, other = plan.workings.get(f"bedding {kind}"), plan.workings.get(f"quantity {listed}")
        if one is None or other is None:
            continue
        if one.result != other.result or any(other.values.get(key) != text for key, text in one.values.items()):
            yield Objection(_CODE, f"bedding {kind}", f"differs from what is listed as {listed}")

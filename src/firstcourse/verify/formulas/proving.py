"""What proves a working: its inputs and result held against values derived from the rest of the plan."""

from collections.abc import Callable, Iterator, Mapping

from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

Prove = Callable[[Document, Working], Iterator[Objection]]
"""Objects to what is wrong in one working."""
Expected = Callable[[Document], Iterator[str]]
"""Gives the key of every working that a plan must hold of some formulas."""

CODE = "VER-903"
NEAR = 1e-6
"""Computed numbers are kept to nine figures, and what they are computed from as well."""


def key_of(formula: str, *at: str) -> str:
    """Key of a working in the plan: its formula and what it is about."""
    return f"{formula}@{'+'.join(at)}"


def holds(working: Working, name: str, wanted: float, unit: str, near: float = NEAR) -> Iterator[Objection]:
    """Object unless an input, or `result`, is a number, in its unit, within `near` of it by proportion."""
    given = working.found if name == "result" else working.inputs.get(name)
    found = working.comes_to if name == "result" else working.number(name)
    said = given.get("unit", "") if isinstance(given, Mapping) else ""
    if found is None or said != unit or abs(found - wanted) > near * max(1.0, abs(wanted)):
        yield Objection(CODE, working.key, f"says {name} is {found} {said}, which comes to {wanted:.6g} {unit}")


def just(working: Working, name: str, wanted: object) -> Iterator[Objection]:
    """Object unless an input, or `result`, is exactly so in the plan's JSON: a word, a count, several."""
    found = working.found if name == "result" else working.inputs.get(name)
    if found != wanted:
        yield Objection(CODE, working.key, f"says {name} is {found}, not {wanted}")


def only(working: Working, *names: str) -> Iterator[Objection]:
    """Object to inputs beside these, and to any of these that is missing."""
    if set(working.inputs) != set(names):
        odd = sorted(set(working.inputs) ^ set(names))
        yield Objection(CODE, working.key, f"has inputs too many or too few: {', '.join(odd)}")

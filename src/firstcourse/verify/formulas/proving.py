"""What proves a working: its inputs and result held against values derived from the rest of the plan."""

from collections.abc import Callable, Iterator, Mapping, Sequence

from firstcourse.units import to_mm
from firstcourse.verify.shopping_fields import Given, Working, number_of
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

Prove = Callable[[Document, Working], Iterator[Objection]]
"""Objects to what is wrong in one working."""
Expected = Callable[[Document], Iterator[str]]
"""Gives the key of every working that a plan must hold of some formulas."""

CODE = "VER-903"
_EXACT = 1e-9
NEAR = 1e-6
"""Computed numbers are kept to nine figures, and what they are computed from as well."""


def key_of(formula: str, *at: str) -> str:
    """Key of a working in the plan: its formula and what it is about."""
    return f"{formula}@{'+'.join(at)}"


def ref(of: str) -> dict[str, str]:
    """A reference as it stands in the plan's JSON."""
    return {"ref": of}


def surface_of(plan: Document, working: Working) -> Surface:
    """The surface that a working is about alone; its key was asked for, so there is one.

    Raises:
        StopIteration: No surface has that id.
    """
    return next(surface for surface in plan.surfaces if surface.id == "+".join(working.at))


def holds(working: Working, name: str, wanted: float, unit: str, near: float = NEAR) -> Iterator[Objection]:
    """Object unless an input, or `result`, is a number, in its unit, within `near` of it by proportion."""
    given = working.found if name == "result" else working.inputs.get(name)
    found, said = number_of(given), unit_of(given)
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


def column(
    working: Working, name: str, wanted: Sequence[float], unit: str, near: float = NEAR
) -> Iterator[Objection]:
    """Object unless an input is just these numbers in their unit, each within `near` of its own by proportion."""
    given = several(working.inputs.get(name))
    found = [number_of(one) if unit_of(one) == unit else None for one in given]
    if len(found) != len(wanted) or any(
        one is None or abs(one - right) > near * max(1.0, abs(right))
        for one, right in zip(found, wanted, strict=True)
    ):
        yield Objection(CODE, working.key, f"says {name} are others than what they come to")


def rests_on(working: Working, rule: str = "") -> Iterator[Objection]:
    """Object unless a working rests on this rule; on none where none is named."""
    if working.rule != rule:
        yield Objection(CODE, working.key, f"rests on {working.rule or 'no rule'}, not on {rule or 'none'}")


def limited(
    working: Working, sense: str = "", wanted: float = 0.0, unit: str = "", near: float = NEAR
) -> Iterator[Objection]:
    """Object unless the result has this limit; none where no sense is named."""
    given = working.limit if isinstance(working.limit, Mapping) else {}
    found = number_of(given)
    if given.get("sense", "") != sense or (
        sense and (found is None or unit_of(given) != unit or abs(found - wanted) > near * max(1.0, abs(wanted)))
    ):
        yield Objection(
            CODE, working.key, f"is held to {dict(given)}, not to {sense or 'no limit'} {wanted:g} {unit}"
        )


def several(given: Given) -> list[Given]:
    """The values of a column, or a value by itself; none where there is none."""
    return given if isinstance(given, list) else [] if given is None else [given]


def unit_of(given: Given) -> object:
    """A value's unit."""
    return given.get("unit", "") if isinstance(given, Mapping) else ""


def refs(working: Working, name: str) -> list[str]:
    """An input's references."""
    found = [one.get("ref") for one in several(working.inputs.get(name)) if isinstance(one, Mapping)]
    return [one for one in found if isinstance(one, str)]


def long(working: Working, name: str, ticks: int) -> Iterator[Objection]:
    """Object unless an input, or `result`, is just that length [ticks]."""
    yield from holds(working, name, to_mm(ticks), "mm", _EXACT)

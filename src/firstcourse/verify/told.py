"""Findings held against what they should say, value by value and reference by reference."""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from firstcourse.units import ticks_from_mm, to_mm
from firstcourse.verify.structure import Said, Surface
from firstcourse.verify.verdict import Objection

_LONGEST_MM = 1e6


def mm(ticks: int) -> dict[str, Any]:
    """A length as a finding keeps it [ticks]."""
    return {"value": to_mm(ticks), "unit": "mm"}


def at_least(ticks: int) -> dict[str, Any]:
    """At least so long [ticks]."""
    return mm(ticks) | {"sense": "least"}


def at_most(ticks: int) -> dict[str, Any]:
    """At most so long [ticks]."""
    return mm(ticks) | {"sense": "most"}


def ticks_of(value: Any) -> int | None:
    """The length that a finding's value is, None where it is none [ticks]."""
    found = value.get("value") if isinstance(value, Mapping) else None
    if isinstance(found, bool) or not isinstance(found, int | float) or not abs(found) < _LONGEST_MM:
        return None
    return ticks_from_mm(found)


def said(
    code: str,
    severity: str,
    at: str,
    *remedies: str,
    rule: str = "",
    measured: Any = None,
    limit: Any = None,
    **values: Any,
) -> Said:
    """What a finding should be, in the words of `Said`."""
    return Said(code, severity, rule, measured, limit, (at,), values, remedies)


def told_of(surface: Surface, code: str, findings: Iterable[Said]) -> list[Said]:
    """Findings with a code on a surface, on its boards, or on what is filled between them."""
    names = {surface.id, *(board.id for board in surface.boards), *(fill.id for fill in surface.fills)}
    return [one for one in findings if one.code == code and one.place in names]


def untrue(
    objection: str, told: Iterable[Said], wanted: Iterable[Said], may: Iterable[Said] = ()
) -> Iterator[Objection]:
    """Object to what should be told and is not told just so, and to what is told beyond it.

    Args:
        objection: Code of the objections.
        told: Findings of one kind.
        wanted: All that there should be, each once for every time it is told.
        may: What may be told besides, and need not be.
    """
    left, besides = list(wanted), list(may)
    for one in told:
        if one in left:
            left.remove(one)
        elif one in besides:
            besides.remove(one)
        else:
            yield Objection(objection, one.place, f"{one.code} is told, and is not so")
    for one in left:
        yield Objection(objection, one.place, f"{one.code} is not told, or not as it is")

"""Findings held against what they should say, value by value and reference by reference."""

import math
from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from firstcourse.units import ticks_from_mm, to_mm
from firstcourse.verify.structure import Said, Surface
from firstcourse.verify.verdict import Objection

_LONGEST_MM = 1e6
_KEPT = 1e-8
"""Computed numbers are kept to nine figures."""


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
    at: str | tuple[str, ...],
    *remedies: str,
    rule: str = "",
    measured: Any = None,
    limit: Any = None,
    **values: Any,
) -> Said:
    """What a finding should be, in the words of `Said`."""
    return Said(code, severity, rule, measured, limit, (at,) if isinstance(at, str) else at, values, remedies)


def given(value: float, unit: str = "", sense: str = "") -> dict[str, Any]:
    """A number as a finding keeps it, or what it is held against."""
    return {"value": float(value), "unit": unit} | ({"sense": sense} if sense else {})


def name(text: str) -> dict[str, str]:
    """What the job calls a thing, as a finding keeps it."""
    return {"name": text}


def ref(to: str) -> dict[str, str]:
    """A reference, as a finding keeps it."""
    return {"ref": to}


def word(code: str) -> dict[str, str]:
    """A word of the trade, as a finding keeps it."""
    return {"word": code}


def same(one: Said, other: Said) -> bool:
    """Whether a finding says what another does, numbers as near as nine figures keep them."""
    return one == other or (
        (one.code, one.severity, one.rule, one.at, one.remedies)
        == (other.code, other.severity, other.rule, other.at, other.remedies)
        and _alike(one.measured, other.measured)
        and _alike(one.limit, other.limit)
        and _alike(one.values, other.values)
    )


def _alike(one: Any, other: Any) -> bool:
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        return one.keys() == other.keys() and all(_alike(one[key], other[key]) for key in one)
    if isinstance(one, list) and isinstance(other, list):
        return len(one) == len(other) and all(map(_alike, one, other))
    if isinstance(one, float) and isinstance(other, int | float) and not isinstance(other, bool):
        return math.isclose(one, other, rel_tol=_KEPT, abs_tol=_KEPT)
    return type(one) is type(other) and bool(one == other)


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
        for asked in (left, besides):
            found = next((number for number, other in enumerate(asked) if same(one, other)), None)
            if found is not None:
                del asked[found]
                break
        else:
            yield Objection(objection, one.place, f"{one.code} is told, and is not so")
    for one in left:
        yield Objection(objection, one.place, f"{one.code} is not told, or not as it is")

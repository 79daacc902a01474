"""Findings and workings as a reader meets them, and those that say the same put together."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace

from firstcourse.findings import Severity


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidFinding:
    """A finding in words.

    Attributes:
        code: Room prefix and number.
        where: The place.
        message: What is wrong, in one sentence.
        measured: What was found, with unit; empty when nothing was measured.
        limit: What is allowed; empty when there is no limit.
        rule: Rule id in the rule book; empty when no rule speaks.
        source: Where the rule comes from.
        remedy: What to do.
    """

    code: str
    severity: Severity
    where: str
    message: str
    measured: str = ""
    limit: str = ""
    rule: str = ""
    source: str = ""
    remedy: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidWorking:
    """A working in words, its attributes as `Working` names them."""

    title: str
    formula: str
    result: str
    unit: str
    values: dict[str, str] = field(default_factory=dict)
    source: str = ""
    argument: tuple[str, ...] = ()
    steps: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidQuantity:
    """Something to buy in words.

    Attributes:
        item: What it is.
        exact: The need, in the reader's unit.
        unit: That unit, as it goes with the need.
        pack: How it is sold.
    """

    item: str
    exact: float
    unit: str
    pack: str


_PLACE = re.compile(r"(?P<room>[^:,]+)(?P<sign>: |, )(?P<rest>.+)")


def alike_together(findings: Iterable[SaidFinding]) -> tuple[SaidFinding, ...]:
    """SaidFindings as people read them: the worst first, and those that say the same of several places as one.

    Args:
        findings: In words, in any order.

    Returns:
        Places stand after each other, and so does what was measured there where it differs.
    """
    groups: dict[tuple[str, ...], list[SaidFinding]] = {}
    for finding in findings:
        place = _PLACE.fullmatch(finding.where)
        # What lies in no room, such as sheets, stands together as the places of one room do.
        room = f"{place['room']}{place['sign']}" if place else ""
        groups.setdefault((*_said(finding), room), []).append(finding)
    rooms: dict[tuple[str, ...], list[SaidFinding]] = {}
    for one in map(_together, groups.values()):
        place = _PLACE.fullmatch(one.where)
        within = place["sign"] + place["rest"] if place else ""
        rooms.setdefault((*_said(one), one.measured, within), []).append(one)
    order = list(Severity)
    told = [_in_rooms(alike) for alike in rooms.values()]
    return tuple(sorted(told, key=lambda finding: order.index(finding.severity)))


def _said(finding: SaidFinding) -> tuple[str, ...]:
    return (
        finding.code,
        finding.severity,
        finding.message,
        finding.limit,
        finding.rule,
        finding.source,
        finding.remedy,
    )


def _in_rooms(alike: Sequence[SaidFinding]) -> SaidFinding:
    """Rooms in which the same was found at the same place, named before it."""
    first = alike[0]
    if len(alike) == 1:
        return first
    places = [_PLACE.fullmatch(finding.where) for finding in alike]
    rooms = [place["room"] if place else finding.where for place, finding in zip(places, alike, strict=True)]
    within = places[0]["sign"] + places[0]["rest"] if places[0] else ""
    return replace(first, where="; ".join(dict.fromkeys(rooms)) + within)


def _together(group: Sequence[SaidFinding]) -> SaidFinding:
    first = group[0]
    places = [_PLACE.fullmatch(finding.where) for finding in group]
    rests = [place["rest"] if place else finding.where for place, finding in zip(places, group, strict=True)]
    if len(set(rests)) == 1:
        return replace(first, measured="; ".join(dict.fromkeys(f.measured for f in group)))
    start = f"{places[0]['room']}{places[0]['sign']}" if places[0] else ""
    told = (
        first.measured
        if len({finding.measured for finding in group}) == 1
        else "; ".join(f"{rest} {finding.measured}" for rest, finding in zip(rests, group, strict=True))
    )
    ending, ends = "", {rest.partition(", ")[2] for rest in rests}
    if len(ends) == 1 and all(", " in rest for rest in rests):
        rests = [rest.partition(", ")[0] for rest in rests]
        ending = f", {ends.pop()}"
    where = start + "; ".join(dict.fromkeys(rests)) + ending
    return replace(first, where=where, measured=told)

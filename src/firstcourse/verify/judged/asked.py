"""Findings of a judgement as they must stand in the plan, and what objects to any that stands otherwise."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from firstcourse.verify.formulas.derived import Number, Wanted, agrees
from firstcourse.verify.structure import Said
from firstcourse.verify.verdict import Objection

CODE = "VER-920"
NOTE, FIX, STOP = "note", "fix", "stop"


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One finding that must be told.

    Attributes:
        code: Its code.
        severity: How much it holds up the work.
        at: What it is about, the place first.
        measured: What was found; None where nothing is measured.
        limit: What is allowed, and in which `sense`.
        rule: That it rests on.
        remedies: What to do, by code.
        values: What else it tells, by name.
        slack: By how much its numbers may differ from these, beside what nine figures leave: what was rounded.
        may: It may be told or not, as what it is about lies just at its limit.
    """

    code: str
    severity: str
    at: tuple[str, ...]
    measured: Number | None = None
    limit: Number | None = None
    sense: str = ""
    rule: str = ""
    remedies: tuple[str, ...] = ()
    values: Mapping[str, Wanted] = field(default_factory=dict)
    slack: float = 0.0
    may: bool = False

    def perhaps(self) -> "Asked":
        """The same, which need not be told."""
        return replace(self, may=True)

    def is_told(self, said: Said) -> bool:
        """Whether a finding of the plan says just this."""
        same = (said.code, said.severity, said.at, said.rule, said.remedies)
        return (
            same == (self.code, self.severity, self.at, self.rule, self.remedies)
            and self._agrees(said.measured, self.measured)
            and self._limits(said.limit)
            and said.values.keys() == self.values.keys()
            and all(self._agrees(said.values[name], wanted) for name, wanted in self.values.items())
        )

    def _agrees(self, given: Any, wanted: Wanted) -> bool:
        return given is None if wanted is None else agrees(given, wanted, self.slack)

    def _limits(self, given: Mapping[str, Any] | None) -> bool:
        if self.limit is None or given is None:
            return self.limit is None and given is None
        bare = {name: value for name, value in given.items() if name != "sense"}
        return given.get("sense") == self.sense and self._agrees(bare, self.limit)


def untold(findings: Iterable[Said], codes: Collection[str], asked: Iterable[Asked]) -> Iterator[Objection]:
    """Object to what must be told and is not told just so, and to what is told beyond it.

    Args:
        findings: All of the plan.
        codes: Those that `asked` speaks of.
        asked: Every finding of these codes that there must be; one that is asked for twice is told once.
    """
    left: list[Asked] = []
    for one in asked:
        if one not in left:
            left.append(one)
    for said in findings:
        if said.code not in codes:
            continue
        found = next((one for one in left if one.is_told(said)), None)
        if found is None:
            yield Objection(CODE, said.place, f"{said.code} is told, and is not so")
        else:
            left.remove(found)
    for one in left:
        if not one.may:
            yield Objection(CODE, one.at[0], f"{one.code} is not told, or not as it is")

"""Ask the rule book for a value by id; every answer carries its source.

A practice (`us`, `uk`, `au`) is a set of values for the same ids; `any` serves them all. The value in force is the
newest one dated on or before the day asked for. No value on the date is an error, never a default.
"""

import datetime
import hashlib
import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cache, lru_cache

from firstcourse.errors import InputValueError, RuleNotFoundError
from firstcourse.findings import Finding, Severity
from firstcourse.rules.changes import Override, changed_value
from firstcourse.rules.reading import DatedValue, Rule, Source, read_book
from firstcourse.units import KG_PER_LB, inches, mm
from firstcourse.values import Limit, Measure, Value

PRACTICES = ("us", "uk", "au")
_HABITS_FROM = "us"
_PROPERTIES = ("kg/m3", "kg/l", "psf/in", "psi", "per K")
"""Units of what a material is, whoever lays it."""


def _feet(value: float) -> int:
    return inches(12 * value)


_LENGTH_UNITS: dict[str, Callable[[float], int]] = {"in": inches, "mm": mm, "ft": _feet}
_MASS_UNITS = {"lb": KG_PER_LB, "kg": 1.0}


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleEntry:
    """One rule's value in force, with all that proves it.

    Attributes:
        unit: `in`, `mm`, `lb`, …; empty for text.
        basis: `standard`, `code`, `handbook`, `textbook`, `common_practice`, `board_maker` or `house_assumption`.
        title: Title of the source, or the basis in words where there is none.
        read: `first_hand`, `quoted` or `memory`; empty where there is no source to read.
        quoted_in: Where a source that was read as quoted was seen, in words.
        converted: The value as its source has it, where it is rounded into another unit; else empty.
        reason: The job's reason where it overrides the book; else empty.
        taken_from: The practice that a value to be checked comes from, where the book has none of the practice
            asked for; empty where the value is its own, the job's, a material's property or an assumption.
    """

    id: str
    description: str
    value: float | str | bool
    unit: str
    basis: str
    title: str
    locator: str
    read: str
    since: datetime.date
    reason: str = ""
    taken_from: str = ""
    quoted_in: str = ""
    converted: str = ""

    @property
    def source(self) -> str:
        """The source as printed: how it was read stands with it, for nothing is shown as surer than it is."""
        return f"{self.title}{self._how()}"

    @property
    def cited(self) -> str:
        """The source and the place in it, as printed."""
        return f"{self.title}{f', {self.locator}' if self.locator else ''}{self._how()}"

    @property
    def changed(self) -> str:
        """A value that the job sets, with its unit and reason, as printed; empty where the book's stands."""
        value = f"{self.value:.6g}" if isinstance(self.value, float) else str(self.value)
        return f"{self.id} {f'{value} {self.unit}'.strip()} ({self.reason})" if self.reason else ""

    def _how(self) -> str:
        if self.reason:
            return f"; changed for this job: {self.reason}"
        how = {"quoted": f"as quoted in {self.quoted_in}", "memory": "from memory, not seen"}.get(self.read, "")
        told = [how] if how else []
        if self.converted:
            told.append(f"converted from {self.converted}")
        return f" ({'; '.join(told)})" if told else ""

    def found(
        self,
        code: str,
        severity: Severity,
        *at: str,
        measured: Measure | None = None,
        limit: Limit | None = None,
        remedies: tuple[str, ...] = (),
        **values: Value,
    ) -> Finding:
        """A finding that rests on this rule.

        Args:
            code: Its words stand under it in the message files.
            severity: How much it holds up the work.
            at: What it is about, by reference, the place first.
            measured: What was found.
            limit: What is allowed.
            remedies: What to do, by code.
            values: What else its words need.
        """
        return Finding(
            code=code,
            severity=severity,
            at=at,
            measured=measured,
            limit=limit,
            rule=self.id,
            remedies=remedies,
            values=values,
        )


@dataclass(frozen=True, slots=True)
class RuleSet:
    """All rules in force for one practice on one day.

    Attributes:
        asked: Ids of the rules that were asked for, kept by the set itself: what a plan rests on.
    """

    on: datetime.date
    practice: str
    entries: Mapping[str, RuleEntry]
    asked: set[str] = field(default_factory=set, compare=False, repr=False)

    def apart(self) -> "RuleSet":
        """The same rules with a record of their own, to tell what one step asks for."""
        return replace(self, asked=set())

    def noted(self) -> tuple[RuleEntry, ...]:
        """The rules asked for, sorted by id."""
        return tuple(self.entries[rule_id] for rule_id in sorted(self.asked))

    def still(self, noted: Iterable[RuleEntry]) -> bool:
        """Whether rules noted before are what they were."""
        return all(self.entries.get(entry.id) == entry for entry in noted)

    @property
    def ids_digest(self) -> str:
        """SHA-256 over which rules there are, for what `has` and `ids` tell is not asked for."""
        return _ids_digest(tuple(sorted(self.entries)))

    def has(self, rule_id: str) -> bool:
        """Whether the rule has a value on the date for this practice."""
        return rule_id in self.entries

    def find(self, rule_id: str) -> RuleEntry | None:
        """The value in force with its source, or None where there is none."""
        return self.entry(rule_id) if rule_id in self.entries else None

    def entry(self, rule_id: str) -> RuleEntry:
        """The value in force with its source.

        Raises:
            RuleNotFoundError: The rule has no value on the date for this practice.
        """
        try:
            found = self.entries[rule_id]
        except KeyError:
            raise RuleNotFoundError(rule_id, self.on, self.practice) from None
        self.asked.add(rule_id)
        return found

    def number(self, rule_id: str) -> float:
        """The value as a number, in the rule's own unit."""
        value = self.entry(rule_id).value
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise InputValueError(f"rule '{rule_id}' is not a number: {value!r}")
        return float(value)

    def ticks(self, rule_id: str) -> int:
        """The value as a length [ticks]."""
        entry = self.entry(rule_id)
        if entry.unit not in _LENGTH_UNITS:
            raise InputValueError(f"rule '{rule_id}' is not a length but in '{entry.unit}'")
        return _LENGTH_UNITS[entry.unit](self.number(rule_id))

    def kilograms(self, rule_id: str) -> float:
        """The value as a mass [kg]."""
        entry = self.entry(rule_id)
        if entry.unit not in _MASS_UNITS:
            raise InputValueError(f"rule '{rule_id}' is not a mass but in '{entry.unit}'")
        return self.number(rule_id) * _MASS_UNITS[entry.unit]

    def text(self, rule_id: str) -> str:
        """The value as text."""
        return str(self.entry(rule_id).value)

    def flag(self, rule_id: str) -> bool:
        """The value as yes or no."""
        value = self.entry(rule_id).value
        if not isinstance(value, bool):
            raise InputValueError(f"rule '{rule_id}' is not a yes or no: {value!r}")
        return value

    def ids(self, prefix: str = "") -> tuple[str, ...]:
        """The ids of the rules in force that begin with `prefix`, sorted; to know them is not to ask for them."""
        return tuple(sorted(rule_id for rule_id in self.entries if rule_id.startswith(prefix)))

    def under(self, prefix: str) -> Iterator[RuleEntry]:
        """The rules whose id begins with `prefix`, sorted by id; each counts as asked for as it is looked at."""
        return (self.entry(rule_id) for rule_id in self.ids(prefix))

    def changes(self) -> tuple[str, ...]:
        """The rules that the job sets otherwise than the book, each as `rule value (reason)`."""
        return tuple(entry.changed for entry in self.entries.values() if entry.reason)

    def sources(self) -> dict[str, str]:
        """By the id of each rule in force: its source and the place in it, as printed."""
        return {rule_id: entry.cited for rule_id, entry in self.entries.items()}

    def digest(self) -> str:
        """SHA-256 over every value in force and its source."""
        rows = [
            [entry.id, entry.value, entry.unit, entry.basis, entry.source, entry.locator, entry.reason]
            for entry in (self.entries[rule_id] for rule_id in self.ids())
        ]
        return hashlib.sha256(json.dumps(rows, ensure_ascii=False).encode()).hexdigest()


def load_rules(on: datetime.date, practice: str = "us", overrides: tuple[Override, ...] = ()) -> RuleSet:
    """The rules in force on a day for a practice, with the job's overrides.

    Raises:
        InputValueError: Unknown practice, or an override of a rule that does not exist or with a wrong value.
    """
    if practice not in PRACTICES:
        raise InputValueError(f"practice '{practice}' is not one of {', '.join(PRACTICES)}")
    entries = dict(_entries(on, practice))
    for override in overrides:
        entries[override.rule] = _overridden(entries, override)
    return RuleSet(on, practice, entries)


@lru_cache(maxsize=16)
def _ids_digest(ids: tuple[str, ...]) -> str:
    return hashlib.sha256("\n".join(ids).encode()).hexdigest()


@lru_cache(maxsize=16)
def _entries(on: datetime.date, practice: str) -> Mapping[str, RuleEntry]:
    rules, sources = _book()
    found = ((rule.id, _in_force(rule, sources, on, practice)) for rule in rules)
    return {name: entry for name, entry in found if entry is not None}


@cache
def _book() -> tuple[tuple[Rule, ...], Mapping[str, Source]]:
    return read_book()


def _in_force(rule: Rule, sources: Mapping[str, Source], on: datetime.date, practice: str) -> RuleEntry | None:
    dated = [v for v in rule.values if v.practice in (practice, "any") and v.since <= on]
    if not dated:
        return None
    newest = max(dated, key=lambda dated_value: (dated_value.practice != "any", dated_value.since))
    if newest.value is None:
        return None
    source = sources.get(newest.source)
    return RuleEntry(
        id=rule.id,
        description=rule.description,
        value=newest.value,
        unit=newest.unit or rule.unit,
        basis=newest.basis,
        title=source.title if source else newest.basis.replace("_", " "),
        locator=newest.locator,
        read=newest.read or (source.read if source else ""),
        since=newest.since,
        taken_from=(taken_from := _taken_from(newest, newest.unit or rule.unit, source, practice)),
        quoted_in=source.quoted_in if source and newest.read in ("", "quoted") else "",
        converted=_converted(rule, newest, taken_from, on),
    )


def _converted(rule: Rule, value: DatedValue, taken_from: str, on: datetime.date) -> str:
    """A length borrowed from another practice and rounded into millimetres, as that practice has it."""
    if not taken_from or value.unit in ("", rule.unit) or rule.unit not in _LENGTH_UNITS:
        return ""
    theirs = [v for v in rule.values if v.practice in (taken_from, "any") and v.since <= on and not v.unit]
    if not theirs:
        return ""
    newest = max(theirs, key=lambda dated: (dated.practice != "any", dated.since))
    return f"{newest.value} {rule.unit}"


def _taken_from(value: DatedValue, unit: str, source: Source | None, practice: str) -> str:
    """The practice a value is borrowed from; trade habits that serve all practices were learnt in US practice."""
    if value.taken_from or unit in _PROPERTIES:
        return value.taken_from
    if source is not None:
        return "" if source.practice in (practice, "any") else source.practice
    habit = value.basis == "common_practice" and value.practice == "any" and practice != _HABITS_FROM
    figures = not isinstance(value.value, str) or any(letter.isdigit() for letter in value.value)
    return _HABITS_FROM if habit and figures else ""


def _overridden(entries: Mapping[str, RuleEntry], override: Override) -> RuleEntry:
    if override.rule not in entries:
        raise InputValueError(
            f"the job overrides rule '{override.rule}', which does not exist; see `firstcourse rules`"
        )
    if not override.reason.strip():
        raise InputValueError(f"the job overrides rule '{override.rule}' without a reason")
    entry = entries[override.rule]
    rule = next(rule for rule in _book()[0] if rule.id == override.rule)
    value = changed_value(override, entry.value, entry.unit, rule.words, zero=rule.zero)
    return replace(entry, value=value, reason=override.reason, taken_from="", converted="")

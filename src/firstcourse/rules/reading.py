"""Read the rule book's data files strictly: what is unknown, doubled or without a source is refused."""

import datetime
from collections.abc import Hashable, Iterable, Mapping
from dataclasses import dataclass
from importlib import resources
from typing import Any

import yaml

from firstcourse.errors import InputValueError

BASES = frozenset(
    {"standard", "code", "handbook", "textbook", "common_practice", "board_maker", "house_assumption"}
)
SOURCED = BASES - {"common_practice", "house_assumption"}
UNITS = frozenset(
    {
        "",
        "in",
        "mm",
        "ft",
        "deg",
        "lb",
        "kg",
        "psi",
        "psf",
        "kg/m3",
        "kg/m2",
        "psf/in",
        "lbf-in/ft",
        "lbf-in2/ft",
        "mil",
        "l",
        "percent",
        "perm",
        "year",
        "lb/1000ft2/24h",
        "ml",
        "share",
        "ratio",
        "count",
        "s",
        "h",
        "kg/l",
        "m2",
        "F",
        "per K",
    }
)
_PRACTICES = ("us", "uk", "au", "any")
READ = ("first_hand", "quoted", "memory")
"""How a source was read: its own text, as others quote or tell it, or not for this book at all."""
_RULE_KEYS = {"id", "description", "unit", "values", "words", "zero"}
_VALUE_KEYS = {"practice", "since", "value", "basis", "source", "locator", "unit", "taken_from", "read"}
_SOURCE_KEYS = {"id", "title", "practice", "read", "quoted_in", "note"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """A document a value came from.

    Attributes:
        practice: Whose trade it speaks for; `any` where it tells of materials or measuring, the same everywhere.
        read: One of `READ`.
        quoted_in: Where it was seen quoted or told, in words; empty where its own text was seen or none at all.
    """

    id: str
    title: str
    practice: str
    read: str
    note: str
    quoted_in: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class DatedValue:
    """A value from a day on; None ends the rule.

    Attributes:
        unit: Empty where it is the rule's own.
        taken_from: Whose habit it is, where that is another practice than the value is for; else empty.
        read: One of `READ` where it is known otherwise than its source, or has none; else empty.
    """

    practice: str
    since: datetime.date
    value: float | str | bool | None
    basis: str
    source: str
    locator: str
    unit: str = ""
    taken_from: str = ""
    read: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """One rule with all its dated values.

    Attributes:
        words: Of a rule whose value is a list of words, those that may stand in it; else empty.
        zero: Whether a job may set it to 0 where its unit does not say so, as it switches off a weight.
    """

    id: str
    description: str
    unit: str
    values: tuple[DatedValue, ...]
    words: frozenset[str] = frozenset()
    zero: bool = False


class _StrictLoader(yaml.CSafeLoader):
    """Refuses doubled keys, which YAML would let the last one win."""

    def construct_mapping(self, node: yaml.MappingNode, deep: bool = False) -> dict[Hashable, Any]:
        keys = [key.value for key, _value in node.value]
        if len(keys) != len(set(keys)):
            raise InputValueError(f"doubled key in {node.start_mark}")
        return super().construct_mapping(node, deep)


def read_book() -> tuple[tuple[Rule, ...], Mapping[str, Source]]:
    """All rules and sources that come with the package."""
    folder = resources.files("firstcourse.rules") / "data"
    sources: dict[str, Source] = {}
    rules: list[Rule] = []
    for file in sorted(folder.iterdir(), key=lambda file: file.name):
        if file.name == "sources.yaml":
            sources = read_sources(file.read_text(encoding="utf-8"), file.name)
        elif file.name.endswith(".yaml"):
            rules += read_rules(file.read_text(encoding="utf-8"), file.name)
    check_book(rules, sources)
    return tuple(rules), sources


def check_book(rules: Iterable[Rule], sources: Mapping[str, Source]) -> None:
    """Refuse doubled ids and sources that no record stands for.

    Raises:
        InputValueError: Naming the rule.
    """
    seen: set[str] = set()
    for rule in rules:
        if rule.id in seen:
            raise InputValueError(f"rule '{rule.id}' stands twice in the book")
        seen.add(rule.id)
        for value in rule.values:
            if value.source and value.source not in sources:
                raise InputValueError(f"rule '{rule.id}' names source '{value.source}', which has no record")
            if rule.words and (strange := sorted(set(str(value.value).split()) - rule.words)):
                raise InputValueError(f"rule '{rule.id}' says '{strange[0]}', which is none of its words")


def read_sources(text: str, name: str) -> dict[str, Source]:
    """Read the record of sources.

    Raises:
        InputValueError: Naming the file and what is wrong in it.
    """
    sources: dict[str, Source] = {}
    for row in _rows(text, name):
        _keys(row, _SOURCE_KEYS, _SOURCE_KEYS - {"note", "quoted_in"}, name)
        if row["practice"] not in _PRACTICES:
            raise InputValueError(
                f"{name}: source '{row['id']}': practice '{row['practice']}' is not us, uk, au or any"
            )
        if row["read"] not in READ:
            raise InputValueError(f"{name}: source '{row['id']}': read is '{row['read']}', not {', '.join(READ)}")
        if (row["read"] == "quoted") != bool(row.get("quoted_in")):
            raise InputValueError(f"{name}: source '{row['id']}': 'quoted_in' goes with what was read so")
        if row["id"] in sources:
            raise InputValueError(f"{name}: source '{row['id']}' stands twice")
        sources[row["id"]] = Source(
            id=row["id"],
            title=row["title"],
            practice=row["practice"],
            read=row["read"],
            note=row.get("note", ""),
            quoted_in=row.get("quoted_in", ""),
        )
    return sources


def read_rules(text: str, name: str) -> list[Rule]:
    """Read one file of rules.

    Raises:
        InputValueError: Naming the file, the rule and what is wrong in it.
    """
    rules = []
    for row in _rows(text, name):
        _keys(row, _RULE_KEYS, _RULE_KEYS - {"words", "zero"}, name)
        where = f"{name}: rule '{row['id']}'"
        if row["unit"] not in UNITS:
            raise InputValueError(f"{where}: unit '{row['unit']}' is not registered")
        if not isinstance(row.get("zero", False), bool):
            raise InputValueError(f"{where}: zero is '{row['zero']}', not true or false")
        if not isinstance(row["values"], list) or not row["values"]:
            raise InputValueError(f"{where}: needs a list of values")
        values = tuple(_value(value, where) for value in row["values"])
        rules.append(
            Rule(
                id=row["id"],
                description=row["description"],
                unit=row["unit"],
                values=values,
                words=frozenset(str(row.get("words", "")).split()),
                zero=row.get("zero", False),
            )
        )
    return rules


def _value(row: Any, where: str) -> DatedValue:
    if not isinstance(row, dict):
        raise InputValueError(f"{where}: a value must be a mapping")
    _keys(row, _VALUE_KEYS, {"practice", "since", "value", "basis"}, where)
    if row["basis"] not in BASES:
        raise InputValueError(f"{where}: basis '{row['basis']}' is not one of {', '.join(sorted(BASES))}")
    if (row["basis"] in SOURCED) != bool(row.get("source")):
        raise InputValueError(f"{where}: basis '{row['basis']}' and source '{row.get('source', '')}' do not fit")
    if row["practice"] not in _PRACTICES:
        raise InputValueError(f"{where}: practice '{row['practice']}' is not us, uk, au or any")
    if not isinstance(row["since"], datetime.date):
        raise InputValueError(f"{where}: since '{row['since']}' is not a date")
    if row.get("taken_from", "") not in ("", *_PRACTICES):
        raise InputValueError(f"{where}: taken_from '{row['taken_from']}' is not us, uk, au or any")
    if row.get("unit", "") not in UNITS:
        raise InputValueError(f"{where}: unit '{row['unit']}' is not registered")
    if row.get("read", "") not in ("", *READ):
        raise InputValueError(f"{where}: read is '{row['read']}', not {', '.join(READ)}")
    return DatedValue(
        practice=row["practice"],
        since=row["since"],
        value=row["value"],
        basis=row["basis"],
        source=row.get("source", ""),
        locator=row.get("locator", ""),
        unit=row.get("unit", ""),
        taken_from=row.get("taken_from", ""),
        read=row.get("read", ""),
    )


def _rows(text: str, name: str) -> list[dict[str, Any]]:
    try:
        rows = yaml.load(text, _StrictLoader)
    except yaml.YAMLError as error:
        raise InputValueError(f"{name}: {error}") from None
    if not isinstance(rows, list) or not all(isinstance(row, dict) for row in rows):
        raise InputValueError(f"{name}: must be a list of records")
    return rows


def _keys(row: Mapping[str, Any], known: set[str], needed: set[str], where: str) -> None:
    if unknown := sorted(set(row) - known):
        raise InputValueError(f"{where}: '{unknown[0]}' is not a key here")
    if missing := sorted(key for key in needed if key not in row):
        raise InputValueError(f"{where}: '{missing[0]}' is missing")

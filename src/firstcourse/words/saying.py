"""Says findings and workings from the message files, with their values put in as the reader's tape shows them."""

import re
from collections.abc import Callable, Mapping
from dataclasses import replace
from itertools import repeat
from typing import Any

from babel import Locale
from fluent.runtime.types import FluentType, fluent_number

from firstcourse.findings import Finding
from firstcourse.plan import Quantity, Side
from firstcourse.tongues import ENGLISH
from firstcourse.units import Tape
from firstcourse.values import Limit, Measure, Name, Ref, Single, Statement, Value, Word
from firstcourse.words.buying import need, packed, said_quantity
from firstcourse.words.edges import said_edge
from firstcourse.words.figures import (
    beside,
    bulk,
    cut,
    fine,
    in_figures,
    inch_pound,
    less,
    number_text,
    on_tape,
    plain,
    run,
    slope,
    small_area,
    spaced,
    span,
    thick,
)
from firstcourse.words.messages import Messages
from firstcourse.words.places import Labels, parts, place, places, thing
from firstcourse.words.said import SaidFinding, SaidQuantity, SaidWorking
from firstcourse.workings import Working


class _Given(FluentType):
    """A value within a message: as it is said by default, and itself for what the message asks of it."""

    def __init__(self, value: Value, say: Callable[[Value], str]) -> None:
        self.value, self.say = value, say

    def format(self, locale: Locale) -> str:
        return self.say(self.value)


class Saying:
    """Sentences for one reader.

    Args:
        tongue: Whose sentences, such as `en`.
        practice: Whose trade words.
        tape: Whose units.
        labels: What references are called that have more than their ids.
        sources: By rule id, the source as printed.

    A message may ask of a value, beside what is usual for it: `TAPE`, `UP` and `DOWN` (a length on the tape's
    marks: the nearest, the next not less, the next not more; `feet: "no"` for inches alone), `FINE` (a small
    length, finer than the tape where it needs be), `CUT` (never more than it is), `SPACED($x, $limit)` (how far
    members stand apart, on its own side of a limit), `BESIDE($x, $limit)` (the same of a small length), `THICK` (a
    panel's thickness as sold), `RUN` (a running length), `FALL` (a fall as the trade says it), `AREA` (as small as
    a shower's), `FIGURES` (decimals with the unit; `decimals: 2`, `sign: "yes"`, `up: "yes"` never less), `PLAIN`
    (as it was read), `NUMBER_OF` (the figures alone), `INCH_POUND` (the figures in inches and pounds, whatever the
    reader's units, for formulas that are worked in these; `decimals: 2`, `figures: 4`, `millions: "yes"`),
    `PERCENT` (a share), `SPAN` (how far members span), `BULK` (a volume of mortar), `LESS($x, $y)` (what is left
    of it as both are printed), `SOURCE` (of a rule by its reference or id, of several once each), `RULE`
    (a text of the rule book), `NEED`
    (how much is to be bought, in the unit it is bought by; `decimals: 3` at most), `PACK($holds, $kind, $sheets)`
    (how it is sold), `NAME` (of a stock, by its reference), `PLACE` (a
    reference with its room), `SURFACES` (several, a room that all lie in named once; many are counted),
    `THING` (without), `WORD` (a word by its code), `CAPITAL` (its first letter large), `LIST` (several, with
    `and`; `last: "or"`; `between: "; "` puts that between all), and `EACH("message", $x, $y)` (the message
    once for each, its parameters `one`, `two` and so on to `six`, what is not several the same in each;
    `last: "and"` before the last, or `between: "; "`).

    What to do that several findings have in common stands as attribute of `sui-remedies` and its like.
    """

    def __init__(self, tongue: str, practice: str, tape: Tape, labels: Labels, sources: Mapping[str, str]) -> None:
        self._tape, self._sources = tape, sources
        self._labels = labels
        functions: dict[str, Callable[..., Any]] = {
            "TAPE": self._tape_reading,
            "UP": lambda given, **how: self._tape_reading(given, way="up", **how),
            "DOWN": lambda given, **how: self._tape_reading(given, way="down", **how),
            "FINE": lambda given: self._each(given, lambda one: fine(one, tape)),
            "CUT": lambda given: self._each(given, lambda one: cut(one, tape)),
            "RUN": lambda given: self._each(given, lambda one: run(one, tape)),
            "FALL": lambda given: self._each(given, lambda one: slope(one, tape)),
            "AREA": lambda given: self._each(given, lambda one: small_area(one, tape)),
            "SPACED": lambda given, limit=None: self._each(
                given, lambda one: spaced(one, tape, None if limit is None else limit.value)
            ),
            "BESIDE": lambda given, limit: self._each(given, lambda one: beside(one, limit.value, tape)),
            "THICK": lambda given: self._each(given, lambda one: thick(one, tape)),
            "PLAIN": lambda given: self._each(given, lambda one: plain(one, tape)),
            "LESS": lambda given, other: self._each(given, lambda one: less(one, other.value, tape)),
            "CAPITAL": lambda text: str(text)[:1].upper() + str(text)[1:],
            "BULK": lambda given: self._each(given, lambda one: bulk(one, tape)),
            "NEED": self._need,
            "PACK": self._pack,
            "NAME": lambda given: self._each(given, lambda ref: ref.ref.partition("/")[2]),
            "FIGURES": self._figures,
            "NUMBER_OF": self._number,
            "PLACE": lambda given: self._each(given, lambda ref: self.place(ref.ref)),
            "SURFACES": self._surfaces,
            "THING": lambda given: self._each(given, lambda ref: self.thing(ref.ref)),
            "WORD": self._word,
            "LIST": self._list,
            "INCH_POUND": self._inch_pound,
            "PERCENT": lambda given: self._each(given, lambda one: f"{one.value:.0%}"),
            "SPAN": lambda given: self._each(given, lambda one: span(one, tape)),
            "SOURCE": self._source,
            "EACH": self._every,
            "RULE": lambda given: self._each(given, lambda one: self.rule_text(one.name)),
        }
        self._messages = Messages(tongue, practice, functions)
        self._book = _texts_of_rules(practice) if tongue != ENGLISH else {}

    def finding(self, finding: Finding) -> SaidFinding:
        """A finding in words: its message, and one sentence for each remedy.

        Raises:
            MissingWordsError: Its code has no words.
        """
        given = self._given(finding.values, at=finding.at)
        for key, value in (("measured", finding.measured), ("limit", finding.limit)):
            if value is not None:
                given[key] = self._one(value)
        return SaidFinding(
            code=finding.code,
            severity=finding.severity,
            where=self._messages.say(finding.code, "where", **given)
            if self._messages.has(finding.code, "where")
            else self.place(finding.at[0]),
            message=self._messages.say(finding.code, **given),
            measured=self._figure(finding.code, "measured", finding.measured, given),
            limit=self._figure(finding.code, "limit", finding.limit, given),
            rule=finding.rule,
            source=self._sources.get(finding.rule, ""),
            remedy=" ".join(self._remedy(finding.code, remedy, given) for remedy in finding.remedies),
        )

    def working(self, working: Working) -> SaidWorking:
        """A working in words.

        Of its message, the text is the title, or `.title`; `.formula` and `.source` are printed as they stand;
        `.name-x` is what input `x` is called, its own name where there is none; `.value-x` how it is shown;
        `.unsaid-x` keeps it out of the list, and `.named` all that have no name; `.value-limit` how the limit is
        shown. `.columns` names inputs of one length that are listed row by row: `.row-name` and `.row-value` are
        said for each row, with its value of every column and its number from 1 as `row`; rows of one name stand
        together. `.step-1` and so on are lines with the values put in; `.argument-1` and so on are sentences. What
        says `-` is left out, and a sentence that says nothing. What is called so with `-with-y` behind is said
        instead where input `y` is given.

        Raises:
            MissingWordsError: Its formula has no words.
        """
        told, given = self._told(working.formula, working.inputs), self._of(working)

        def say(attribute: str) -> str:
            return self._messages.say(working.formula, told.get(attribute, ""), **given)

        def each(kind: str) -> tuple[str, ...]:
            lines = (line for name in told if name.startswith(f"{kind}-") for line in say(name).split("\n"))
            return tuple(line for line in lines if line not in ("", NOTHING))

        values = self._listed(working.formula, told, working.inputs, given)
        if working.limit is not None:
            values["limit"] = say("value-limit") if "value-limit" in told else self._text(working.limit)
        number, unit = self._result(working, told, given)
        return SaidWorking(
            title=say("title"),
            formula=say("formula") if "formula" in told else "",
            values=values,
            result=number,
            unit=unit,
            source=say("source") if "source" in told else self._sources.get(working.rule, ""),
            argument=each("argument"),
            steps=each("step"),
        )

    def part(self, working: Working, attribute: str) -> str | None:
        """One attribute of a working's message; None where it has none such."""
        if not self._messages.has(working.formula, attribute):
            return None
        return self._messages.say(working.formula, attribute, **self._of(working))

    def rows(self, message: str, values: Mapping[str, Value], **more: str) -> dict[str, str]:
        """Values as a message names and shows them, see `working`; `more` is what its words may ask for beside."""
        given = {key: self._one(value) for key, value in values.items()} | more
        return self._listed(message, self._told(message, values), values, given)

    def value(self, value: Value) -> str:
        """A value as it is shown by default."""
        return self._text(value)

    def _of(self, working: Working) -> dict[str, Any]:
        """What the words of a working may ask for."""
        given = self._given(working.inputs, at=working.at) | {"rule": working.rule}
        given["result"] = self._one(working.result)
        if working.limit is not None:
            given["limit"] = self._one(working.limit)
        return given

    def _told(self, message: str, values: Mapping[str, Value]) -> dict[str, str]:
        """Attributes of a message by their names; of `x-with-y` those whose `y` is given, as `x`, the first."""
        found: dict[str, str] = {}
        for attribute in self._messages.attributes(message):
            name, _, needed = attribute.partition("-with-")
            if not needed or needed in values:
                found.setdefault(name, attribute)
        return found

    def _listed(
        self, message: str, told: Mapping[str, str], inputs: Mapping[str, Value], given: Mapping[str, Any]
    ) -> dict[str, str]:
        """Inputs by the names that they are listed under."""

        def say(attribute: str, values: Mapping[str, Any] = given) -> str:
            return self._messages.say(message, told[attribute], **values)

        columns = [column for column in say("columns").split() if column in inputs] if "columns" in told else []
        listed: dict[str, list[str]] = {}
        for key, value in inputs.items():
            if key in columns[:1]:
                each = zip(*(_several(inputs[column]) for column in columns), strict=True)
                for row, values in enumerate(each, start=1):
                    put_in = {**given, **dict(zip(columns, map(self._one, values), strict=True)), "row": row}
                    if (text := say("row-value", put_in)) != NOTHING:
                        listed.setdefault(say("row-name", put_in), []).append(text)
            elif (
                key not in columns
                and f"unsaid-{key}" not in told
                and ("named" not in told or f"name-{key}" in told)
            ):
                name = say(f"name-{key}") if f"name-{key}" in told else self._name(key)
                text = say(f"value-{key}") if f"value-{key}" in told else self._text(value)
                if text != NOTHING:
                    listed[name] = [text or self._term("none")]
        return {name: ", ".join(texts) for name, texts in listed.items()}

    def _name(self, key: str) -> str:
        """What an input is called in every formula; a letter of the formula stays."""
        return self._messages.say(f"name-{key}") if self._messages.has(f"name-{key}") else key

    def statement(self, said: Statement) -> str:
        """A statement in words.

        Raises:
            MissingWordsError: Its code has no words.
        """
        return self._messages.say(said.code, **{key: self._one(value) for key, value in said.values.items()})

    def quantity(self, quantity: Quantity) -> SaidQuantity:
        """Something to buy: its item, its need in the reader's unit, its pack.

        Raises:
            MissingWordsError: Its item, its unit or its pack has no words.
        """
        found = said_quantity(quantity, self._say_pack, self._term, self._tape)
        return replace(found, unit=self.unit_name(found.unit))

    def _say_pack(self, message: str, /, **values: Any) -> str:
        """A message with how much a pack holds, its unit as the tongue writes it."""
        if isinstance(size := values.get("size"), str):
            values["size"] = self.unit(size)
        return self._messages.say(message, **values)

    def lines(self, said: Statement) -> tuple[str, ...]:
        """Every attribute of a statement's message, in order, but those that say `-`.

        Raises:
            MissingWordsError: Its code has no words.
        """
        given = {key: self._one(value) for key, value in said.values.items()}
        each = (self._messages.say(said.code, name, **given) for name in self._messages.attributes(said.code))
        return tuple(line for line in each if line != NOTHING)

    def place(self, ref: str) -> str:
        """A reference with the room it lies in."""
        return place(ref, self._labels, self._kind)

    def thing(self, ref: str) -> str:
        """What a reference names, without where it is."""
        return thing(ref, self._labels, self._kind)

    def text(self, message: str, attribute: str, given: Mapping[str, str | float | Value]) -> str:
        """A label or a sentence of a paper."""
        return self._messages.say(message, attribute, **self._plain(given))

    def labels(self, message: str, given: Mapping[str, str | float | Value]) -> dict[str, str]:
        """Every attribute of a message by its name."""
        put_in = self._plain(given)
        return {name: self._messages.say(message, name, **put_in) for name in self._messages.attributes(message)}

    def edge(self, side: Side) -> str:
        """What a side of a surface is called."""
        return said_edge(side, self._messages.say)

    def within(self, ref: str) -> str:
        """A reference as one calls it who stands in its room."""
        return ", ".join(parts(ref, self._labels, self._kind)[1:])

    def rule_text(self, text: str) -> str:
        """A text of the rule book; what the job says in its place stays."""
        return self._messages.say("rule-texts", self._book[text]) if text in self._book else text

    def unit(self, text: str) -> str:
        """A number with its unit, the unit as the tongue writes it."""
        number, _, unit = text.partition(" ")
        if text == "level" or number == "under":
            return self._messages.say(f"unit-{number}", length=unit)
        return f"{number} {self.unit_name(unit)}" if unit and number[-1:].isdigit() else text

    def unit_name(self, unit: str) -> str:
        """A unit as the tongue writes it."""
        code = f"unit-{re.sub(r'\W+', '_', unit)}"
        return self._messages.say(code) if self._messages.has(code) else unit

    def word(self, code: str) -> str:
        """A word by its code; what has none is a name, its underscores being spaces."""
        return self._term(code) if self._messages.has(f"word-{code}") else code.replace("_", " ")

    def _plain(self, given: Mapping[str, str | float | Value]) -> dict[str, Any]:
        """Texts as they are, numbers without marks between thousands, values as message files take them."""
        return {key: self._put_in(value) for key, value in given.items()}

    def _put_in(self, value: str | float | Value) -> Any:
        if isinstance(value, int | float) and not isinstance(value, bool):
            return fluent_number(value, useGrouping=False)
        return value if isinstance(value, str) else self._one(value)

    def _result(self, working: Working, told: Mapping[str, str], given: Mapping[str, Any]) -> tuple[str, str]:
        if "result" in told:
            number, _, unit = self._messages.say(working.formula, "result", **given).partition(" ")
            return number, unit
        if isinstance(working.result, Measure):
            number, _, unit = self._text(working.result).partition(" ")
            return number, unit
        return (
            (self._term(working.result.word), "")
            if isinstance(working.result, Word)
            else (str(working.result), "")
        )

    def _remedy(self, code: str, remedy: str, given: Mapping[str, Any]) -> str:
        shared = f"{code.partition('-')[0].lower()}-remedies"
        return self._messages.say(code if self._messages.has(code, remedy) else shared, remedy, **given)

    def _figure(self, code: str, key: str, value: Measure | None, given: Mapping[str, Any]) -> str:
        if self._messages.has(code, key):
            return self._messages.say(code, key, **given)
        return "" if value is None else self._text(value)

    def _given(self, values: Mapping[str, Value], at: tuple[str, ...]) -> dict[str, Any]:
        found = {key: self._one(value) for key, value in values.items()}
        return found | {"at": self._one(Ref(ref=at[0])), "also": self._one(tuple(Ref(ref=ref) for ref in at[1:]))}

    def _one(self, value: Value) -> Any:
        """A value as message files take it: words and names as text, to choose by; counts as numbers."""
        if isinstance(value, bool):
            return "yes" if value else "no"
        if isinstance(value, int):
            return value
        if isinstance(value, Word):
            return value.word
        return _Given(value, self._text)

    def _text(self, value: Value) -> str:
        if isinstance(value, tuple):
            return ", ".join(map(self._text, value))
        if isinstance(value, bool):
            return self._term("yes" if value else "no")
        if isinstance(value, int):
            return str(value)
        if isinstance(value, Ref):
            return self.thing(value.ref)
        if isinstance(value, Word):
            return self._term(value.word)
        if isinstance(value, Name):
            return value.name
        shown = self.unit(on_tape(value, self._tape) if value.unit == "mm" else in_figures(value, self._tape))
        if isinstance(value, Limit):
            return self._messages.say(f"word-limit-{value.sense}", value=shown)
        return shown

    def _term(self, code: str) -> str:
        return self._messages.say(f"word-{code}")

    def _kind(self, step: str) -> str:
        """A step of a reference: a kind of thing by its word, a name as it stands."""
        return self._term(step) if self._messages.has(f"word-{step}") else step

    def _tape_reading(self, given: _Given, way: str = "near", feet: str = "yes", sign: str = "no") -> str:
        def reading(one: Measure) -> str:
            text = on_tape(one, self._tape, way, feet=feet == "yes")  # type: ignore[arg-type]
            return f"+{text}" if sign == "yes" and not text.startswith(("-", "0")) else text

        return self._each(given, reading)

    def _figures(self, given: _Given, decimals: Any = None, sign: str = "no", up: str = "no") -> str:
        count = None if decimals is None else int(decimals)
        return self._each(
            given, lambda one: in_figures(one, self._tape, count, sign=sign == "yes", up=up == "yes")
        )

    def _number(self, given: _Given, decimals: Any = None) -> str:
        count = None if decimals is None else int(decimals)
        if isinstance(given.value, Measure) and given.value.unit:
            return in_figures(given.value, self._tape, count).partition(" ")[0]
        return self._each(given, lambda one: number_text(one.value, count))

    def _inch_pound(
        self, given: _Given, decimals: Any = None, figures: Any = None, millions: str = "no", between: str = ", "
    ) -> str:
        places, count = (None if one is None else int(one) for one in (decimals, figures))
        return str(between).join(
            inch_pound(one, places, count, millions=millions == "yes")
            for one in _several(given.value)
            if isinstance(one, Measure)
        )

    def _source(self, given: _Given | str) -> str:
        of = [Ref(ref=given)] if isinstance(given, str) else _several(given.value)
        rules = (one.ref.removeprefix("rule/") for one in of if isinstance(one, Ref))
        return "; ".join(dict.fromkeys(said for rule in rules if (said := self._sources.get(rule))))

    def _need(self, given: _Given, decimals: Any = 2) -> str:
        return self._each(given, lambda one: need(one, self._say_pack, self._tape, int(decimals)))

    def _pack(self, holds: _Given, kind: Any, sheets: Any = 0) -> str:
        return packed(str(kind), holds.value, self._say_pack, self._tape, sheets=int(sheets))  # type: ignore[arg-type]

    def _word(self, code: Any) -> str:
        if isinstance(code, _Given):
            return self._each(code, self._text)
        return self._term(str(code))

    def _list(self, given: _Given, last: str = "and", between: str = "") -> str:
        return self._joined([self._text(one) for one in _several(given.value)], last, between)

    def _surfaces(self, given: _Given) -> str:
        said = [self.place(one.ref) for one in _several(given.value) if isinstance(one, Ref)]
        if len(said) > _MOST_SURFACES:
            return self._messages.say("word-surfaces", count=len(said))
        return places(said, lambda texts: self._joined(list(texts), "and"))

    def _joined(self, texts: list[str], last: str, between: str = "") -> str:
        if between:
            return str(between).join(texts)
        return f"{', '.join(texts[:-1])} {self._term(last)} {texts[-1]}" if len(texts) > 1 else "".join(texts)

    def _every(self, message: Any, *columns: Any, last: str = "", between: str = ", ") -> str:
        name, _, attribute = str(message).partition(".")
        # What is not several is the same in each row.
        several = [column.value if _is_several(column) else None for column in columns]
        rows = max((len(column) for column in several if column is not None), default=1)
        each = (
            repeat(one, rows) if values is None else map(self._one, values)
            for one, values in zip(columns, several, strict=True)
        )
        said = [
            self._messages.say(name, attribute, **dict(zip(_COUNTED, row, strict=False)))
            for row in zip(*each, strict=True)
        ]
        return self._joined(said, str(last)) if last else str(between).join(said)

    def _each(self, given: _Given, say: Callable[[Any], str]) -> str:
        said = ((one, say(one)) for one in _several(given.value))
        return ", ".join(self.unit(text) if isinstance(one, Measure) else text for one, text in said)


def _texts_of_rules(practice: str) -> dict[str, str]:
    """Which text of the rule book stands under which name."""
    english = Messages(ENGLISH, practice, {})
    return {english.say("rule-texts", name): name for name in english.attributes("rule-texts")}


_COUNTED = ("one", "two", "three", "four", "five", "six")
_MOST_SURFACES = 4
"""More than this are counted, not named."""
NOTHING = "-"
"""What a message says where a line is left out."""


def _is_several(column: Any) -> bool:
    return isinstance(column, _Given) and isinstance(column.value, tuple)


def _several(value: Value) -> tuple[Single, ...]:
    return value if isinstance(value, tuple) else (value,)

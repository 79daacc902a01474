"""Puts what the house says into a reader's words and units, leaving names as they were given."""

import re
from collections.abc import Iterable, Mapping
from typing import Any

from firstcourse.findings import Finding
from firstcourse.plan import Quantity, Side, StructureSheet, Surface
from firstcourse.tongues import ENGLISH
from firstcourse.units import Tape
from firstcourse.values import Statement, Value
from firstcourse.words.measures import in_units, unit_for
from firstcourse.words.places import Labels
from firstcourse.words.said import SaidFinding, SaidQuantity, SaidWorking
from firstcourse.words.saying import Saying
from firstcourse.words.sheets import SaidSheet, said_sheet
from firstcourse.words.terms import terms_of
from firstcourse.workings import Working

_AS_IT_IS = ("svg", "steps", "source", "sources")
"""Keys of what is not touched: pictures, sums whose figures have no unit, and titles of what others published."""
_WHOLE = r"(?<![\w.`/]){}(?![\w`/]|\.\w)"
"""A word by itself: no part of a rule's id, of a surface's id or of a setting's name."""

_NEVER = r"(?!)"
"""Matches nothing."""


class Speaker:
    """Says everything to one reader.

    Args:
        practice: Whose words, such as `us`.
        tape: Which system of units.
        names: What the job itself has named; stays as it is.
        ids: Ids of things, and what is printed for them.
        labels: What references are called that have more than their ids.
        sources: By rule id, the source as printed.
        tongue: Whose sentences.
    """

    def __init__(
        self,
        practice: str,
        tape: Tape,
        *,
        names: Iterable[str] = (),
        ids: Mapping[str, str] | None = None,
        labels: Labels | None = None,
        sources: Mapping[str, str] | None = None,
        tongue: str = ENGLISH,
    ) -> None:
        self.tape, self.tongue = tape, tongue
        self._saying = Saying(tongue, practice, tape, labels or {}, sources or {})
        # Other tongues have their trade words in their own message files, and ours mean other things in them.
        self._terms = terms_of(practice) if tongue == ENGLISH else {}
        self._ids = dict(ids or {})
        longest = sorted(self._terms, key=lambda word: (-len(word), word))
        term = _WHOLE.format(f"(?P<term>{'|'.join(map(re.escape, longest)) or _NEVER})")
        holds_one = re.compile(term, re.IGNORECASE)
        kept = sorted({name for name in names if holds_one.search(name)}, key=lambda name: (-len(name), name))
        name = [rf"(?<!\w)(?P<name>{'|'.join(map(re.escape, kept))})(?!\w)"] if kept else []
        printed = sorted(self._ids, key=lambda one: (-len(one), one))
        by_id = [rf"(?<![\w/])(?P<id>{'|'.join(map(re.escape, printed))})(?![\w/])"] if printed else []
        self._wanted = re.compile("|".join((*name, term)), re.IGNORECASE)
        self._ids = {one: self.words(said) for one, said in self._ids.items()}
        self._wanted = re.compile("|".join((*by_id, *name, term)), re.IGNORECASE)

    def finding(self, finding: Finding) -> SaidFinding:
        """A finding in words."""
        return self._saying.finding(finding)

    def findings(self, findings: Iterable[Finding]) -> tuple[SaidFinding, ...]:
        """Findings in words, in the order given."""
        return tuple(map(self.finding, findings))

    def working(self, working: Working) -> SaidWorking:
        """A working in words."""
        return self._saying.working(working)

    def sheet(self, sheet: StructureSheet, workings: Mapping[str, Working]) -> SaidSheet:
        """A sheet of a judged frame in words.

        Args:
            sheet: As the plan has it.
            workings: By the keys that its lines name.
        """
        return said_sheet(self._saying, sheet, workings)

    def statement(self, said: Statement) -> str:
        """A statement in words."""
        return self._saying.statement(said)

    def quantity(self, quantity: Quantity) -> SaidQuantity:
        """Something to buy, in words and in the reader's units."""
        return self._saying.quantity(quantity)

    def lines(self, said: Statement) -> tuple[str, ...]:
        """Every attribute of a statement's message, in order."""
        return self._saying.lines(said)

    def text(self, message: str, attribute: str = "", /, **given: str | float | Value) -> str:
        """A label or a sentence of a paper, by its message.

        Args:
            message: Its id, such as `papers-page`.
            attribute: Of the message; its own text where not given.
            given: What is put in: texts as they stand, numbers to count by, values as findings have them.
        """
        return self._saying.text(message, attribute, given)

    def labels(self, message: str, /, **given: str | float | Value) -> dict[str, str]:
        """Every attribute of a message by its name: the labels of a page."""
        return self._saying.labels(message, given)

    def told(self, said: Iterable[Statement | Working]) -> list[str]:
        """Statements in words, and of workings the sentences of their argument, in the order given."""
        return [
            sentence
            for one in said
            for sentence in ((self.statement(one),) if isinstance(one, Statement) else self.working(one).argument)
        ]

    def title(self, surface: Surface) -> str:
        """What stands over a surface's drawing: its place, and of a ceiling from where it is seen."""
        where = self.place(surface.id)
        return f"{where}, {self.text('label-seen_from_below')}" if surface.kind == "ceiling" else where

    def edge(self, side: Side) -> str:
        """What a side of a surface is called."""
        return self._saying.edge(side)

    def within(self, ref: str) -> str:
        """A reference as one calls it who stands in its room."""
        return self._saying.within(ref)

    def rule_text(self, text: str) -> str:
        """A text of the rule book; what the job says in its place stays."""
        return self._saying.rule_text(text)

    def unit(self, text: str) -> str:
        """A number with its unit, the unit as the reader's tongue writes it."""
        return self._saying.unit(text)

    def word(self, code: str) -> str:
        """A word by its code; what has none is a name."""
        return self._saying.word(code)

    def place(self, ref: str) -> str:
        """A reference with the room it lies in."""
        return self._saying.place(ref)

    def thing(self, ref: str) -> str:
        """What a reference names, without where it is."""
        return self._saying.thing(ref)

    def words(self, text: str) -> str:
        """A text in the reader's words; its units stay."""
        return self._wanted.sub(self._word, text)

    def say(self, text: str) -> str:
        """A text in the reader's words and units."""
        return self.words(in_units(text, self.tape))

    def amount(self, number: float, unit: str) -> tuple[float, str]:
        """A number in the reader's unit, and that unit."""
        factor, name = unit_for(unit, self.tape)
        return number * factor, self.words(name)

    def result(self, number: str, unit: str) -> tuple[str, str]:
        """A printed number and its unit, in the reader's; a length that the tape reads brings its own."""
        try:
            value = float(number)
        except ValueError:
            return self.say(number), self.words(unit)
        converted, name = self.amount(value, unit)
        if converted == value:
            return number, name
        told = self.say(f"{number} {unit}")
        return (told.removesuffix(name).strip(), name) if told.endswith(name) else (told, "")

    def fields(self, values: Mapping[str, Any]) -> dict[str, Any]:
        """Every text within a paper's values in the reader's words and units; pictures and sums stay."""
        return {key: one if key in _AS_IT_IS else self._all(one) for key, one in values.items()}

    def _all(self, value: Any) -> Any:
        if isinstance(value, str):
            return self.say(value)
        if isinstance(value, dict):
            return self.fields(value)
        if isinstance(value, list | tuple):
            return [self._all(one) for one in value]
        return value

    def _word(self, found: re.Match[str]) -> str:
        whole = found[0]
        groups = found.groupdict()
        if groups.get("id"):
            return self._ids.get(whole, whole)
        if groups.get("name"):
            return whole
        said = self._terms[whole.lower()]
        return said[0].upper() + said[1:] if whole[0].isupper() else said

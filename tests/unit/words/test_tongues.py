"""Every tongue says all that English says: the same messages and attributes, with the same values in them."""

import datetime
from collections.abc import Iterator
from pathlib import Path

import pytest
from fluent.syntax import FluentParser, visitor
from fluent.syntax import ast as ftl

from firstcourse import words
from firstcourse.rules import load_rules
from firstcourse.tongues import ENGLISH, TONGUES
from firstcourse.units import Tape
from firstcourse.words import Speaker

TEXTS = Path(words.__file__).parent / "texts"
WHERE_IT_STANDS = {"CAPITAL"}
"""Functions that one tongue may need where another does not: letters are large where a sentence begins."""


class Used(visitor.Visitor):
    """Parameters, functions and messages that a text names."""

    def __init__(self) -> None:
        self.names: set[str] = set()

    def visit_VariableReference(self, node: ftl.VariableReference) -> None:
        self.names.add(f"${node.id.name}")

    def visit_FunctionReference(self, node: ftl.FunctionReference) -> None:
        if node.id.name not in WHERE_IT_STANDS:
            self.names.add(f"{node.id.name}()")
        self.generic_visit(node)


def used(pattern: ftl.Pattern) -> set[str]:
    found = Used()
    found.visit(pattern)
    return found.names


def columns(pattern: ftl.Pattern | None) -> set[str]:
    assert pattern is not None
    return {name for part in pattern.elements if isinstance(part, ftl.TextElement) for name in part.value.split()}


def texts(folder: Path) -> dict[str, set[str]]:
    """By message or `message.attribute`: the parameters and functions in it."""
    found: dict[str, set[str]] = {}
    for file in sorted(folder.glob("*.ftl")):
        for entry in FluentParser().parse(file.read_text(encoding="utf-8")).body:
            assert not isinstance(entry, ftl.Junk), f"{file.name}: {entry.content}"
            if isinstance(entry, ftl.Message):
                named = [(entry.id.name, entry.value)]
                named += [(f"{entry.id.name}.{one.id.name}", one.value) for one in entry.attributes]
                found |= {name: used(pattern) for name, pattern in named if pattern is not None}
                # Names of inputs that are listed row by row are no words.
                found |= {name: columns(pattern) for name, pattern in named if name.endswith(".columns")}
    return found


def lacks(english: dict[str, set[str]], other: dict[str, set[str]]) -> Iterator[str]:
    """What another tongue does not say, says that English does not, or says without a value of it."""
    for name in sorted(english.keys() - other.keys()):
        yield f"{name} is missing"
    for name in sorted(other.keys() - english.keys()):
        yield f"{name} is not among the English messages"
    for name in sorted(english.keys() & other.keys()):
        if english[name] != other[name]:
            yield f"{name} has {sorted(other[name])}, English has {sorted(english[name])}"


def test_english_is_there() -> None:
    assert TONGUES[0] == ENGLISH
    assert len(texts(TEXTS / ENGLISH)) > 500


@pytest.mark.parametrize("tongue", TONGUES)
def test_a_tongue_says_all_that_english_says(tongue: str) -> None:
    assert not list(lacks(texts(TEXTS / ENGLISH), texts(TEXTS / tongue)))


def test_what_another_tongue_lacks_is_found(tmp_path: Path) -> None:
    for name, text in {
        "xa": "a = { TAPE($x) } to { $y }\n    .b = more\nc = yes\n",
        "xb": "a = { UP($x) }\nd = { CAPITAL($n) }\n",
    }.items():
        (tmp_path / name).mkdir()
        (tmp_path / name / "a.ftl").write_text(text, encoding="utf-8")
    assert list(lacks(texts(tmp_path / "xa"), texts(tmp_path / "xb"))) == [
        "a.b is missing",
        "c is missing",
        "d is not among the English messages",
        "a has ['$x', 'UP()'], English has ['$x', '$y', 'TAPE()']",
    ]


@pytest.mark.parametrize("practice", ["us", "uk", "au"])
def test_texts_of_rules_are_word_for_word_those_of_the_rule_book(practice: str) -> None:
    """What another tongue says of a rule is found by its English text."""
    book = {str(entry.value) for entry in load_rules(datetime.date(2026, 11, 30), practice).entries.values()}
    english = Speaker(practice, Tape.INCH).labels("rule-texts")
    assert {text for name, text in english.items() if name not in ("backer_screw_inch", "backer_screw_mm")} <= book
    assert english["backer_screw_inch" if practice == "us" else "backer_screw_mm"] in book

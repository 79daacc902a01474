"""Whatever a plan can say by code has its words, and no word stands for nothing."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from fluent.syntax import FluentParser
from fluent.syntax import ast as ftl

PACKAGE = Path(__file__).parents[2] / "src" / "firstcourse"
TEXTS = PACKAGE / "words" / "texts"
CODE = re.compile(r"(?!VER-)[A-Z]{3}-\d{3}")


def messages(tongue: str) -> dict[str, ftl.Message]:
    found: dict[str, ftl.Message] = {}
    for file in sorted((TEXTS / tongue).glob("*.ftl")):
        entries = FluentParser().parse(file.read_text(encoding="utf-8")).body
        assert not [entry for entry in entries if isinstance(entry, ftl.Junk)], file.name
        for entry in entries:
            if isinstance(entry, ftl.Message):
                assert entry.id.name not in found, f"{entry.id.name} stands twice"
                assert entry.id.name.partition("-")[0].lower() == file.stem, f"{entry.id.name} in {file.name}"
                found[entry.id.name] = entry
    return found


def built() -> Iterator[tuple[set[str], set[str]]]:
    """Each call that builds a finding: its code or the codes it chooses from, and the remedies it names."""
    for file in sorted(PACKAGE.rglob("*.py")):
        if file.relative_to(PACKAGE).parts[0] in ("verify", "papers", "words", "cli", "app"):
            continue
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if not isinstance(node, ast.Call):
                continue
            name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            if name not in ("found", "Finding"):
                continue
            given = {keyword.arg: keyword.value for keyword in node.keywords}
            value = node.args[0] if name == "found" and node.args else given.get("code")
            codes = {text for text in texts(value) if CODE.fullmatch(text)} if value is not None else set()
            if codes:
                yield codes, texts(given["remedies"]) if "remedies" in given else set()


def texts(node: ast.AST) -> set[str]:
    return {one.value for one in ast.walk(node) if isinstance(one, ast.Constant) and isinstance(one.value, str)}


def codes_in_source() -> set[str]:
    return {
        text
        for file in PACKAGE.rglob("*.py")
        if file.relative_to(PACKAGE).parts[0] not in ("verify", "papers", "words", "cli", "app")
        for text in texts(ast.parse(file.read_text(encoding="utf-8")))
        if CODE.fullmatch(text)
    }


def test_every_finding_has_its_words_and_its_remedies_theirs() -> None:
    known = messages("en")
    calls = list(built())
    assert len(calls) > 80
    for codes, remedies in calls:
        assert codes <= known.keys(), f"{sorted(codes - known.keys())} have no words"
        # What several findings of one subject ask for stands once.
        shared = {f"{code[:3].lower()}-remedies" for code in codes} & known.keys()
        attributes = {attribute.id.name for name in codes | shared for attribute in known[name].attributes}
        assert remedies <= attributes, f"{sorted(codes)} have no words for {sorted(remedies - attributes)}"


def test_no_words_stand_for_a_finding_that_nothing_builds() -> None:
    codes = codes_in_source()
    assert not sorted(name for name in messages("en") if CODE.fullmatch(name) and name not in codes)


def test_no_finding_brings_sentences() -> None:
    """A text given to a finding as a keyword would be words in the plan."""
    for file in sorted(PACKAGE.rglob("*.py")):
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Finding":
                assert not {keyword.arg for keyword in node.keywords} & {"message", "remedy", "source"}, file.name

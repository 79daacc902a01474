"""No sentence and no label stands in what makes papers and drawings: words stand in the message files alone.

A text literal of two words or more is one, and in a page source any letters outside code. What is none stands
below with its reason.
"""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[2] / "src" / "firstcourse"
PLACES = ("papers", "drawings")
TWO_WORDS = re.compile(r"[^\W\d_]{2,}[,;:]?\s+[^\W\d_]{2,}")
MARKUP = re.compile(r"\s*(?:=+ |- )?(?:[A-Z][a-z]+\b(?![.(])|[a-z]+ [a-z]+ [a-z]+\b)")
CODE = re.compile(r"\s*(?:#let|let|if|for|else|set|show|while|return|import|include)\b")
NO_WORDS = {
    "IBM Plex Sans": "name of the face",
    "'IBM Plex Sans', sans-serif": "name of the face",
    '@font-face { font-family: "IBM Plex Sans"; font-weight: \0; src: url(data:font/ttf;base64,\0); }': "the face",
    "niche back": "what a plan calls an edge, asked for and not printed",
    "under its top": "what a plan calls an edge, asked for and not printed",
    "http://www.w3.org/2000/svg": "name of a standard",
    "from \0 import answer_pages; answer_pages()": "code",
    '<span class="n">\\g<0></span>': "markup",
}


def literals(source: str) -> Iterator[tuple[int, str]]:
    """Texts of a module, with their lines; docstrings, and what errors of ours say, are for who reads the code."""
    tree = ast.parse(source)
    skipped: set[ast.AST] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            skipped.add(node.value)
        if isinstance(node, ast.Raise | ast.Assert):
            skipped.update(ast.walk(node))
    for node in ast.walk(tree):
        if node in skipped:
            continue
        if isinstance(node, ast.JoinedStr):
            skipped.update(node.values)
            parts = (part.value if isinstance(part, ast.Constant) else "\0" for part in node.values)
            yield node.lineno, "".join(map(str, parts))
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.lineno, node.value


def modules() -> list[str]:
    found = (file for place in PLACES for file in sorted((PACKAGE / place).rglob("*.py")))
    return [file.relative_to(PACKAGE).as_posix() for file in found]


@pytest.mark.parametrize("name", modules())
def test_no_words_stand_in_a_module(name: str) -> None:
    told = [
        f"line {line}: {text!r}"
        for line, text in literals((PACKAGE / name).read_text(encoding="utf-8"))
        if TWO_WORDS.search(text) and text not in NO_WORDS
    ]
    assert not told


def markup(source: str) -> Iterator[str]:
    """Letters of a page source that are printed as they stand: texts in code, and what stands in brackets."""
    source = re.sub(r"//[^\n]*", "", source)
    source = re.sub(r'regex\("(?:[^"\\]|\\.)*"\)', "0", source)  # what is looked for, not printed
    for text in re.findall(r'"((?:[^"\\]|\\.)*)"', source):
        if TWO_WORDS.search(text):
            yield text
    source = re.sub(r'"(?:[^"\\]|\\.)*"', "0", source)
    # Headings, list items and lines of markup begin with a capital or a sign; code does not.
    yield from (line.strip() for line in source.splitlines() if MARKUP.match(line) and not CODE.match(line))
    for text in re.findall(r"\[([^\[\]#]*)\]", source):
        if re.search(r"[^\W\d_]{2,}", text):
            yield text


@pytest.mark.parametrize("name", [file.name for file in sorted((PACKAGE / "papers").glob("*.typ"))])
def test_no_words_stand_in_a_page_source(name: str) -> None:
    told = [one for one in markup((PACKAGE / "papers" / name).read_text(encoding="utf-8")) if one not in NO_WORDS]
    assert not told


def test_words_are_found_where_they_stand() -> None:
    assert list(markup("#text(size: 9pt)[Name], d.words.name [#d.x]")) == ["Name"]
    assert list(markup("= Cut tickets\n  #box()")) == ["= Cut tickets"]
    assert list(markup('("cut part", d.words.at)')) == ["cut part"]
    assert not list(markup('#set text(font: "0", size: 9.5pt)\n#let a(b) = if b { c } else { d }'))
    module = (
        'def f(x):\n    """Say it so."""\n    assert x, "no x here"\n    return f"cut {x} off here", "two more"\n'
    )
    assert [text for _, text in literals(module) if TWO_WORDS.search(text)] == ["cut \0 off here", "two more"]

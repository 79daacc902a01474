"""No template holds words: each asks for them by name, and each name stands in the messages of every tongue."""

import re
from importlib.resources import files

import pytest
from fluent.syntax import FluentParser
from fluent.syntax import ast as ftl

from firstcourse.tongues import TONGUES

TEMPLATES = sorted(
    (file for file in (files("firstcourse.web") / "templates").iterdir() if file.name.endswith(".html")),
    key=lambda file: file.name,
)
ASKED = re.compile(r'\bt\("(?P<message>web-\w+)"(?:, "(?P<label>\w+)")?')
CODE = re.compile(r"\{\{.*?\}\}|\{%.*?%\}|\{#.*?#\}", re.DOTALL)
SAID = ("alt", "title", "placeholder", "aria-label")
WORD = re.compile(r"[^\W\d_]{2,}")


def words(template: str) -> list[str]:
    """Letters that a template shows as they stand, in its text or in attributes that are read out."""
    bare = CODE.sub("", template)
    told = [value for name, value in re.findall(r'([\w-]+)="([^"]*)"', bare) if name in SAID]
    return [one for part in (*told, re.sub(r"<[^>]*>", "", bare)) for one in WORD.findall(part)]


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda file: file.name)
def test_no_words_stand_in_a_template(template: object) -> None:
    assert words(template.read_text(encoding="utf-8")) == []  # type: ignore[attr-defined]


def test_words_are_found_where_they_stand() -> None:
    assert words('<p class="x">{{ t("web-a") }} Hello</p><img alt="a b wall">') == ["wall", "Hello"]


@pytest.mark.parametrize("tongue", TONGUES)
def test_what_is_asked_for_is_there(tongue: str) -> None:
    text = (files("firstcourse.words") / "texts" / tongue / "web.ftl").read_text(encoding="utf-8")
    known = {
        entry.id.name: {attribute.id.name for attribute in entry.attributes}
        for entry in FluentParser().parse(text).body
        if isinstance(entry, ftl.Message)
    }
    asked = {
        (found["message"], found["label"])
        for template in TEMPLATES
        for found in ASKED.finditer(template.read_text(encoding="utf-8"))
    }
    assert len(asked) > 80
    assert not [one for one in asked if one[0] not in known or (one[1] and one[1] not in known[one[0]])]

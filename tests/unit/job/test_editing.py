"""Fields of a job document set where they stand: nothing else of the text changes."""

import datetime
from pathlib import Path
from typing import Any

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.errors import JobError
from firstcourse.job.editing import edited_text
from firstcourse.job.reading import _tree

TUB = (Path(__file__).parents[3] / "examples" / "tub-bathroom" / "job.yaml").read_text(encoding="utf-8")


def data(text: str) -> Any:
    return _tree(text, "job.yaml")[0]


def fields(value: Any, path: str = "") -> list[str]:
    if isinstance(value, dict):
        inner = [found for key, item in value.items() for found in fields(item, f"{path}.{key}" if path else key)]
    elif isinstance(value, list):
        inner = [found for number, item in enumerate(value, 1) for found in fields(item, f"{path}[{number}]")]
    else:
        inner = []
    return [*([path] if path else []), *inner]


FIELDS = fields(data(TUB))


def changed(value: Any, path: str, new: Any) -> Any:
    """The same change made on values, the slow and plain way."""
    names = path.replace("[", ".").replace("]", "").split(".")
    parts = [int(name) - 1 if name.isdigit() else name for name in names]
    at = value
    for part in parts[:-1]:
        at = at[part]
    at[parts[-1]] = new
    return value


TEXTS = st.text(st.characters(codec="utf-8", max_codepoint=0xFFFF, exclude_categories=("Cs",)), max_size=12)
ODD = (
    "null",
    "~",
    "no",
    "5' 0-1/2\"",
    "a: b",
    "a #b",
    "- x",
    "{",
    "3",
    "one\ntwo",
    "a\u2028b",
    "\x85",
    "\ufeff",
)


@settings(max_examples=150, deadline=None)
@given(
    st.sampled_from(FIELDS),
    TEXTS | st.sampled_from(ODD),
)
def test_a_text_is_read_as_it_was_given_and_all_else_stays(field: str, new: str) -> None:
    assert data(edited_text(TUB, field, new)) == changed(data(TUB), field, new)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from(FIELDS), st.lists(TEXTS, max_size=3), st.dictionaries(st.sampled_from("abc"), TEXTS))
def test_lists_and_groups_are_written_within_brackets(field: str, items: list[str], group: dict[str, str]) -> None:
    assert data(edited_text(TUB, field, items)) == changed(data(TUB), field, items)
    assert data(edited_text(TUB, field, group)) == changed(data(TUB), field, group)


@settings(max_examples=60, deadline=None)
@given(st.sampled_from([path for path in FIELDS if not path.startswith("rooms[1].corners")]))
def test_comments_stay_where_one_line_is_changed(field: str) -> None:
    if isinstance(yaml.safe_load(edited_text(TUB, field, "x")), dict):
        before, after = TUB.splitlines(), edited_text(TUB, field, "x").splitlines()
        if len(before) == len(after):
            assert sum(a != b for a, b in zip(before, after, strict=True)) <= 1
            assert [a.partition("#")[2] for a in before] == [b.partition("#")[2] for b in after]


@pytest.mark.parametrize(
    ("text", "field", "value", "after"),
    [
        ("a: b # why\nc:\nd: e\n", "c", "f", "a: b # why\nc: f\nd: e\n"),
        ("a:\r\n  - b: 1 # one\r\n# two\r\n", "a[2]", {"b": 2}, "a:\r\n  - b: 1 # one\r\n  - {b: 2}\r\n# two\r\n"),
        ("a:\n  - b: 1 # one", "a[1].c", True, "a:\n  - b: 1 # one\n    c: yes"),
        ("a: {}\nb: []\n", "a.c", 2, "a: {c: 2}\nb: []\n"),
        ("a: {}\nb: []\n", "b[1]", datetime.date(2026, 1, 31), "a: {}\nb: [2026-01-31]\n"),
        ("a: |\n  one\n  two\nb: c\n", "a", "d", "a: d\nb: c\n"),
        ('{"é": "ü", "b": {"c": 1}}', "b.d", "x", '{"é": "ü", "b": {"c": 1, "d": "x"}}'),
        ('{"é": "ü", "b": true}', "b", False, '{"é": "ü", "b": false}'),
    ],
)
def test_what_is_typed_around_it_stays(text: str, field: str, value: Any, after: str) -> None:
    assert edited_text(text, field, value) == after


@pytest.mark.parametrize(
    ("field", "said"),
    [
        ("", "'' names no field"),
        ("rooms[0]", "names no field"),
        ("rooms[1]..name", "names no field"),
        ("rooms[7].name", r"job.yaml:\d+:3: rooms\[7\].name: there is no such field; the list here holds 1"),
        ("rooms[1].wals.x", r"there are name, corners, .*walls"),
        ("name.of", "'Tub bathroom' stands here and holds no settings"),
    ],
)
def test_a_field_that_is_not_there_is_refused_with_what_is(field: str, said: str) -> None:
    with pytest.raises(JobError, match=said):
        edited_text(TUB, field, "x")

"""Two who change different fields of one document: both changes stand, whatever the fields and their order."""

from collections.abc import Iterator

import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.app.new_jobs import demo_text
from firstcourse.job import Side, edited_text, merged

BASE = demo_text()
NEW = ("7' 1\"", "1234 mm", "yes", "a: b", "# no comment", "'", "")


def _walked(node: yaml.Node, name: str) -> Iterator[tuple[str, str]]:
    if isinstance(node, yaml.MappingNode):
        for key, value in node.value:
            yield from _walked(value, f"{name}.{key.value}" if name else key.value)
    elif isinstance(node, yaml.SequenceNode):
        for number, value in enumerate(node.value, 1):
            yield from _walked(value, f"{name}[{number}]")
    else:
        yield name, node.value


def said(text: str) -> dict[str, str]:
    """Every single value of a document, by its field as messages name it."""
    return dict(_walked(yaml.compose(text, yaml.CSafeLoader), ""))


# What an item of a list is known by, changed, makes another item of it: that is asked, not merged.
KNOWN_BY = ("id", "name", "wall")
FIELDS = [one for one in said(BASE) if one.rpartition(".")[2] not in KNOWN_BY]


@settings(max_examples=40, deadline=None)
@given(st.lists(st.sampled_from(FIELDS), min_size=2, max_size=6, unique=True), st.data(), st.integers(min_value=1))
def test_changes_of_different_fields_both_stand(chosen: list[str], data: st.DataObject, at: int) -> None:
    cut = at % (len(chosen) - 1) + 1
    values = {one: data.draw(st.sampled_from(NEW)) for one in chosen}
    theirs = mine = BASE
    for one in chosen[:cut]:
        theirs = edited_text(theirs, one, values[one])
    for one in chosen[cut:]:
        mine = edited_text(mine, one, values[one])
    merge = merged(BASE, theirs, mine)
    assert merge.clashes == ()
    assert said(merge.text) == said(BASE) | values


@settings(max_examples=20, deadline=None)
@given(st.sampled_from(FIELDS), st.sampled_from(list(Side)))
def test_one_field_changed_by_both_is_asked_and_then_as_chosen(field: str, side: Side) -> None:
    theirs, mine = edited_text(BASE, field, "theirs"), edited_text(BASE, field, "mine")
    (clash,) = merged(BASE, theirs, mine).clashes
    assert (clash.field, clash.theirs, clash.mine) == (field, "theirs", "mine")
    merge = merged(BASE, theirs, mine, {field: side})
    assert merge.clashes == () and said(merge.text)[field] == side.value

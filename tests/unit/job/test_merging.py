"""Two changes of one document: of different fields both stand, of the same one somebody is asked."""

from firstcourse.job.merging import WHOLE, Side, merged

BASE = """\
name: Bath            # as on the door
rooms:
  - name: bath
    sides: {A-B: 8', B-C: 5'}   # taped twice
    walls:
      - {wall: A-B, height: 8'}
      - {wall: B-C, height: 8'}
"""


def changed(*pairs: tuple[str, str]) -> str:
    text = BASE
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new)
    return text


def test_changes_of_different_lines_merge_with_the_comments_of_both() -> None:
    theirs, mine = changed(("Bath ", "Hall bath ")), changed(("# taped twice", "# taped three times"))
    merge = merged(BASE, theirs, mine)
    assert merge.clashes == () and merge.text == changed(
        ("Bath ", "Hall bath "), ("# taped twice", "# taped three times")
    )


def test_changes_of_different_fields_on_one_line_merge() -> None:
    merge = merged(BASE, changed(("A-B: 8'", "A-B: 8' 1\"")), changed(("B-C: 5'", "B-C: 5' 2\"")))
    assert merge.clashes == () and merge.text == changed(("{A-B: 8', B-C: 5'}", "{A-B: 8' 1\", B-C: 5' 2\"}"))


def test_the_same_field_changed_otherwise_is_asked_and_either_can_be_chosen() -> None:
    theirs, mine = (
        changed(("A-B: 8'", "A-B: 8' 1\"")),
        changed(("A-B: 8'", "A-B: 8' 2\""), ("name: Bath", "name: B")),
    )
    merge = merged(BASE, theirs, mine)
    (clash,) = merge.clashes
    assert (clash.field, clash.before, clash.theirs, clash.mine) == (
        "rooms[1].sides.A-B",
        "8'",
        "8' 1\"",
        "8' 2\"",
    )
    assert merge.text == theirs
    for side, said in ((Side.THEIRS, "8' 1\""), (Side.MINE, "8' 2\"")):
        text = merged(BASE, theirs, mine, {clash.field: side}).text
        assert f"A-B: {said}" in text and "name: B " in text and "# taped twice" in text


def test_the_same_change_by_both_is_no_clash() -> None:
    both = changed(("A-B: 8'", "A-B: 8' 1\""))
    assert merged(BASE, both, both).text == both


def test_an_item_added_by_one_and_another_changed_by_the_other_merge() -> None:
    longer = BASE + "      - {wall: C-D, height: 8'}\n"
    merge = merged(BASE, longer, changed(("{wall: B-C, height: 8'}", "{wall: B-C, height: 7'}")))
    assert merge.clashes == () and "C-D" in merge.text and "{wall: B-C, height: 7'}" in merge.text


def test_an_item_that_another_took_away_is_asked_not_mixed_up() -> None:
    shorter = changed(("      - {wall: A-B, height: 8'}\n", ""))
    merge = merged(BASE, shorter, changed(("{wall: B-C, height: 8'}", "{wall: B-C, height: 7'}")))
    assert [clash.field for clash in merge.clashes] == ["rooms[1].walls"]
    other = changed(("wall: B-C, height: 8'", "wall: C-D, height: 9'"))
    merge = merged(BASE, other, changed(("{wall: B-C, height: 8'}", "{wall: B-C, height: 8', foot: floor}")))
    assert [clash.field for clash in merge.clashes] == ["rooms[1].walls[2]"]


def test_what_one_took_away_goes_though_the_other_changed_the_line_beside_it() -> None:
    mine, theirs = changed(("B-C: 5'", "B-C: 5' 2\"")), changed(("A-B: 8', ", ""))
    merge = merged(BASE, theirs, mine)
    assert merge.clashes == () and "sides: {B-C: 5' 2\"}" in merge.text


def test_the_whole_document_can_be_chosen() -> None:
    assert merged(BASE, BASE + "a: b\n", BASE + "c: d\n", {WHOLE: Side.MINE}).text == BASE + "c: d\n"

"""What the reader takes, and what it says about each mistake, with its place."""

from datetime import date

import pytest

from firstcourse.errors import JobError, RuleNotFoundError
from firstcourse.job import problems_placed, read_job, read_job_text, starter_text
from firstcourse.job.reading import LARGEST_FILE_BYTES, MOST_PROBLEMS
from firstcourse.units import inches, mm

GOOD = """\
name: test
date: 2026-11-25
stock:
  - {id: board, size: [36 in, 60 in], thickness: 1/2 in}
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 96 in, B-C: 60 in, C-D: 96 in, D-A: 60 in}
    diagonals: {A-C: 113 3/16 in}
    height: 96 in
    floor:
      framing: {parallel_to: A-B, spacing: 16 in, first: 14 in}
      openings:
        - {id: drain, kind: drain, left: 40 in, out: 20 in, diameter: 4 in}
    walls:
      - wall: A-B
        framing: {spacing: 16 in, first: 16 in}
        openings:
          - {id: valve, kind: valve, left: 20 in, bottom: 40 in, diameter: 4 in}
"""
STUDS = "{spacing: 16 in, first: 16 in}"
MEMBERS = "{members: [{at: 10 in, width: 2 in}, "
MEMBER_2 = "rooms[1].walls[1].framing.members[2].at"


def problems(text):
    with pytest.raises(JobError) as caught:
        read_job_text(text)
    return caught.value.problems


def changed(old, new):
    assert GOOD.count(old) == 1
    return GOOD.replace(old, new)


def test_lengths_of_both_tapes_read_side_by_side():
    job = read_job_text(changed("A-B: 96 in, B-C: 60 in", "A-B: 8' 0-1/2\", B-C: 1.524 m"))
    assert job.rooms[0].sides == {"A-B": inches(96.5), "B-C": mm(1524), "C-D": inches(96), "D-A": inches(60)}


def test_json_is_read_as_well():
    text = (
        '{"name": "j", "date": "2026-11-25", "rooms": [{"name": "r", "corners": ["A", "B", "C"], "floor": {},'
        ' "sides": {"A-B": "3 m", "B-C": "4 m", "C-A": "5 m"}}]}'
    )
    assert read_job_text(text).rooms[0].side_pairs() == ("A-B", "B-C", "C-A")


def test_typed_text_stays_what_was_typed():
    job = read_job_text(changed("name: bath", "name: 0600"))
    assert job.rooms[0].name == "0600"


def test_starter_reads():
    assert read_job_text(starter_text()).rooms


MISTAKES = [
    # what is changed, into what, what stands at the place reported, its field, and what is said
    ("A-C: 113 3/16 in", "A-C: 113", "113}", "rooms[1].diagonals.A-C", "no unit"),
    ("A-C: 113 3/16 in", "A-C: 5' 13 in", "5' 13", "rooms[1].diagonals.A-C", "12 or more inches"),
    ("A-C: 113 3/16 in", "A-C: nan", "nan", "rooms[1].diagonals.A-C", "not a length"),
    ("A-C: 113 3/16 in", "A-C: 0 in", "0 in}\n    height", "rooms[1].diagonals.A-C", "more than zero"),
    ("A-C: 113 3/16 in", "A-C: -1 m", "-1 m", "rooms[1].diagonals.A-C", "more than zero"),
    ("A-C: 113 3/16 in", "A-C: 101 m", "101 m", "rooms[1].diagonals.A-C", "at most 100 m"),
    ("A-C: 113 3/16 in", "A-X: 113 in", "113 in", "rooms[1].diagonals.A-X", "does not join two corners"),
    ("A-C: 113 3/16 in", "B-A: 97 in", "97 in", "rooms[1].diagonals.B-A", "give it under sides"),
    ("A-C: 113 3/16 in", "A-C: 9 ft, C-A: 8 ft", "8 ft", "rooms[1].diagonals.C-A", "given twice"),
    ("A-C: 113 3/16 in", "A-C: 9 ft, A-C: 8 ft", "A-C: 8 ft", "rooms[1].diagonals.A-C", "stands twice"),
    ("    height: 96 in", "    hight: 96 in", "hight", "rooms[1].hight", "did you mean 'height'"),
    ("    height: 96 in", "    heights: {A: 96 in}", "name: bath", "rooms[1]", "walls need a height"),
    ("    height: 96 in", "    height: &h 9 ft\n    plumb: {A-B: *h}", "&h", "rooms[1].plumb.A-B", "aliases"),
    ("height: 96 in", "height: !x 96 in", "!x", "rooms[1].height", "the tag !x"),
    ("height: 96 in", "height: !!python/name:os.system x", "!!", "rooms[1].height", "the tag"),
    ("[A, B, C, D]", "[A, B, C, A]", "A]", "rooms[1].corners[4]", "stands twice"),
    ("D-A: 60 in}", "D-A: 60 in, A-D: 61 in}", "61 in", "rooms[1].sides.A-D", "write D-A"),
    (", D-A: 60 in}", "}", "{A-B: 96", "rooms[1].sides", "side D-A is not taped"),
    ("D-A: 60 in}", "D to A: 61 in}", "61 in", "rooms[1].sides.D to A", "such as A-B"),
    ("wall: A-B", "wall: B-A", "B-A", "rooms[1].walls[1].wall", "seen from inside it is A-B"),
    ("parallel_to: A-B", "parallel_to: A-C", "A-C, spacing", "rooms[1].floor.framing.parallel_to", "not a side"),
    ("left: 20 in, b", "left: 95 in, b", "{id: valve", "rooms[1].walls[1].openings[1]", "on a wall 8' 0\" long"),
    ("bottom: 40 in", "bottom: 95 in", "{id: valve", "rooms[1].walls[1].openings[1]", "on a wall 8' 0\" high"),
    ("left: 20 in, b", "left: 1 in, b", "{id: valve", "rooms[1].walls[1].openings[1]", "before the left corner"),
    ("bottom: 40 in", "bottom: 1 in", "{id: valve", "rooms[1].walls[1].openings[1]", "below the floor"),
    ("[A, B, C, D]", "[D, C, B, A]", "[D, C", "rooms[1].corners", "in that order; if the sides"),
    ("wall: A-B", "wall: A-X", "A-X", "rooms[1].walls[1].wall", "its walls are A-B, B-C, C-D, D-A"),
    ("first: 16 in", "first: 97 in", "97 in", "rooms[1].walls[1].framing.first", "outside the wall"),
    (STUDS, "{spacing: 16 in}", "{spacing: 16 in}", "rooms[1].walls[1].framing", "go together"),
    (STUDS, "{width: 2 in}", "{width: 2 in}", "rooms[1].walls[1].framing", "either spacing"),
    (STUDS, f"{MEMBERS}{{at: 97 in}}]}}", "97 in", MEMBER_2, "outside the wall"),
    (STUDS, f"{MEMBERS}{{at: 11 in, width: 2 in}}]}}", "11 in", MEMBER_2, "lie over each other"),
    ("kind: drain", "kind: drane", "drane", "rooms[1].floor.openings[1].kind", "drane"),
    ("out: 20 in, d", "out: 20 in, width: 3 in, d", "{id: drain", "rooms[1].floor.openings[1]", "or a diameter"),
    ("name: bath", "name: a/b", "a/b", "rooms[1].name", "letters, digits"),
    ("date: 2026-11-25", "date: 2026-13-25", "2026-13", "date", "2026-13-25"),
    ("date: 2026-11-25\n", "", "name: test", "", "'date' is missing"),
    ("thickness: 1/2 in", "thickness: 1/2 in, price: nan", "nan", "stock[1].price", "nan"),
    ("thickness: 1/2 in", "thickness: 1/2 in, price: -1", "-1}", "stock[1].price", "greater than or equal to 0"),
]


@pytest.mark.parametrize(("old", "new", "mark", "field", "message"), MISTAKES)
def test_mistakes_are_placed(old, new, mark, field, message):
    text = changed(old, new)
    assert text.count(mark) == 1
    before = text[: text.index(mark)]
    place = (before.count("\n") + 1, len(before) - before.rfind("\n"))
    matching = [p for p in problems(text) if message in p.message]
    assert [(p.line, p.column, p.field) for p in matching] == [(*place, field)]


def test_everything_wrong_is_said_at_once_in_the_order_of_the_file():
    text = (
        GOOD.replace("A-C: 113 3/16 in", "A-C: 113").replace("kind: valve", "kind: valv").replace("60 in]", "60]")
    )
    found = problems(text)
    assert [p.line for p in found] == [4, 9, 19]


def test_corners_named_backwards_are_told_once():
    found = problems(changed("[A, B, C, D]", "[D, C, B, A]"))
    assert len(found) == 1 and "if the sides were named so, it is A, B, C, D" in found[0].message


def test_a_missing_height_is_said_once():
    found = problems(changed("    height: 96 in\n", ""))
    assert len(found) == 1 and "height" in found[0].message


def test_names_used_twice():
    text = GOOD + GOOD[GOOD.index("  - name: bath") :]
    assert any("room 'bath' stands twice" in p.message for p in problems(text))


def test_a_room_without_anything_to_board():
    text = GOOD[: GOOD.index("    floor:")]
    assert "nothing in this room" in problems(text)[0].message


def test_offcut_of_unknown_stock():
    text = changed("rooms:", "offcuts: [{id: x, stock: bord, size: [1 ft, 1 ft]}]\nrooms:")
    assert "not one of the job's stocks" in problems(text)[0].message


def test_a_rule_needs_a_reason():
    found = problems(changed("rooms:", "rules: [{rule: boards.gap.between, value: 3 mm}]\nrooms:"))
    assert "'reason' is missing" in found[0].message


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "is empty"),
        ("# only a note\n", "is empty"),
        ("- a\n", "must begin with keys"),
        ("just words", "must begin with keys"),
        ("a: [1", "the bracket that opens in line 1 is not closed"),
        ("a:\n\tb: 1\n", "'b: 1' is set in with a tab; use spaces"),
        ('a: "b\nc: 1\n', "the quote mark that opens in line 1 is never closed"),
        ('a: "b\nc: 1"\nd: {e: 1}\nf 2\n', "look from there on for a quote mark"),
        ("a: b\n  c: d\n", "'c: d' has a colon where none can stand"),
        ("a: %b\n", "'a: %b' cannot be read"),
        ("a: 1\n---\nb: 1\n", "another document"),
        ("a: " + "[" * 100 + "]" * 100, "nested more than 30 deep"),
        ("[" * 100_000, "nesting"),
        ("a: \x00", "control characters"),
        ("? [a]\n: b\n", "a key must be plain text"),
    ],
)
def test_what_is_no_job_at_all(text, message):
    assert any(message in p.message for p in problems(text))


def test_a_file_wrong_throughout_is_cut_short():
    found = problems("a: 1\n" * 5_000)
    assert len(found) == MOST_PROBLEMS + 1 and found[-1].message == "and 4,799 problems more"


def test_too_many_rooms():
    room = "  - {name: r%d, corners: [A, B, C], sides: {A-B: 3 m, B-C: 4 m, C-A: 5 m}, floor: {}}\n"
    text = "name: j\ndate: 2026-11-25\nrooms:\n" + "".join(room % i for i in range(501))
    assert "at most 500" in problems(text)[0].message


@pytest.mark.parametrize(
    ("data", "message"),
    [
        (b"name: \xff\xfe", "not UTF-8"),
        (b"#" * (LARGEST_FILE_BYTES + 1), "too many"),
    ],
)
def test_files_that_are_not_read(tmp_path, data, message):
    path = tmp_path / "job.yaml"
    path.write_bytes(data)
    with pytest.raises(JobError, match=message):
        read_job(path)


def test_files_that_are_not_there(tmp_path):
    for path in (tmp_path / "none.yaml", tmp_path):
        with pytest.raises(JobError, match=path.name):
            read_job(path)


def test_a_rule_that_is_not_in_the_book_is_placed_with_the_nearest():
    wrong = "rules: [{rule: boards.gap.betwen, value: 3 mm, reason: as the maker says}]\nrooms:"
    (found,) = problems(changed("rooms:", wrong))
    assert found.field == "rules[1].rule"
    assert found.line > 0
    assert "did you mean 'boards.gap.between'?" in found.message


def test_a_rule_with_a_value_it_cannot_have_is_placed():
    wrong = "rules: [{rule: boards.gap.between, value: 3, reason: as the maker says}]\nrooms:"
    (found,) = problems(changed("rooms:", wrong))
    assert found.field == "rules[1].value"
    assert "has no unit" in found.message


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("price: 20", "price: 1e308", "price: '1e308': it must be less than"),
        ("price: 20", "price: 0.1725", "parts of a cent"),
        ("offset: 1/3", "offset: 1e-9999999", "is no fraction"),
        ("offset: 1/3", "offset: 99999/100000", "is no fraction"),
        ("joint: 3 mm", "joint: 3 3/4 in", "at most 25 mm"),
        ("joint: 3 mm", "joint: 24 mm", "more than half as wide as the tile"),
        ("size: [300 mm, 500 mm]", "size: [300 mm, 1300 mm]", "more than the sheet it is left over from"),
    ],
)
def test_plausible_slips_are_refused_with_their_place(old: str, new: str, said: str) -> None:
    text = """
name: slips
date: 2026-11-25
tape: mm
stock: [{id: board, size: [800 mm, 1200 mm], thickness: 6 mm, price: 20}]
offcuts: [{id: rack, stock: board, size: [300 mm, 500 mm]}]
tiles: [{id: small, size: [45 mm, 45 mm], thickness: 6 mm, joint: 3 mm}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 2000 mm, B-C: 1500 mm, C-D: 2000 mm, D-A: 1500 mm}
    diagonals: {A-C: 2500 mm}
    floor:
      framing: {parallel_to: A-B, spacing: 400 mm, first: 200 mm}
      tiling: {tile: small, pattern: running, offset: 1/3}
"""
    assert old in text
    read_job_text(text)
    with pytest.raises(JobError) as refused:
        read_job_text(text.replace(old, new))
    (problem,) = refused.value.problems
    assert said in problem.message or said in str(problem)
    assert problem.line > 1


def test_nesting_and_empty_lists_are_refused_with_their_place() -> None:
    deep = "name: x\ndate: 2026-11-25\nrooms: " + "[" * 40 + "]" * 40
    with pytest.raises(JobError, match=r"job.yaml:3:3\d: .*nested more than 30 deep"):
        read_job_text(deep)
    with pytest.raises(JobError, match="rooms: an empty list stands here: it must hold at least 1"):
        read_job_text("name: x\ndate: 2026-11-25\nrooms: []")


def test_a_date_before_the_rules_is_refused_with_its_place() -> None:
    text = "name: x\ndate: 1901-01-01\n"
    with pytest.raises(JobError, match=r"bath.yaml:2:7: date: .*1901-01-01"), problems_placed(text, "bath.yaml"):
        raise RuleNotFoundError("boards.gap.foot", date(1901, 1, 1), "us")


def test_a_door_in_a_side_that_is_not_taped_is_refused_for_the_side() -> None:
    door = "    floor:\n      doorways: [{id: door, wall: D-A, left: 10 in, width: 30 in, other_floor: 0 in}]\n"
    text = changed(", D-A: 60 in}", "}").replace("    floor:\n", door)
    with pytest.raises(JobError, match=r"rooms\[1\]\.sides: side D-A is not taped"):
        read_job_text(text)

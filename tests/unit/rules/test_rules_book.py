"""The rule book: what it answers, and what it refuses, one bad text per mistake."""

import datetime

import pytest

from firstcourse.errors import InputValueError, RuleNotFoundError
from firstcourse.rules import Override, load_rules
from firstcourse.rules.reading import Source, check_book, read_rules, read_sources
from firstcourse.units import inches, mm

DAY = datetime.date(2026, 11, 25)
VALUE = "practice: any, since: 2000-01-01, value: 1, basis: common_practice"
GOOD = "- id: a.b\n  description: d\n  unit: in\n  values:\n    - {" + VALUE + "}\n"


def test_values_come_in_their_unit_with_their_source():
    rules = load_rules(DAY)
    assert rules.ticks("boards.gap.between") == inches(0.125)
    assert rules.number("floor.load.live") == 40
    entry = rules.entry("lumber.dfl.no2.fb")
    assert (entry.value, entry.unit, entry.basis, entry.read) == (900, "psi", "standard", "quoted")
    assert "NDS" in entry.source


def test_every_value_has_an_honest_basis():
    for practice in ("us", "uk", "au"):
        rules = load_rules(DAY, practice)
        for entry in rules.under(""):
            if entry.basis not in ("common_practice", "house_assumption"):
                assert entry.read in ("first_hand", "quoted", "memory"), entry.id
            assert bool(entry.quoted_in) == (entry.read == "quoted"), entry.id


def test_practices_carry_the_same_ids_with_their_own_values():
    assert [load_rules(DAY, practice).number("fall.min") for practice in ("us", "uk", "au")] == pytest.approx(
        [1 / 48, 1 / 80, 1 / 80], abs=1e-6
    )
    assert [load_rules(DAY, practice).number("surface.finished.step") for practice in ("uk", "au")] == [1, 2]


def test_a_practice_may_give_its_value_in_its_own_unit():
    assert load_rules(DAY).entry("tile.joint.min_floor").unit == "in"
    entry = load_rules(DAY, "uk").entry("tile.joint.min_floor")
    assert (entry.value, entry.unit) == (3, "mm")
    assert load_rules(DAY, "uk").ticks("tile.joint.min_floor") == mm(3)


def test_a_practice_without_a_value_is_an_error_not_another_practices_value():
    with pytest.raises(RuleNotFoundError, match="practice 'uk'"):
        load_rules(DAY, "uk").number("floor.load.live")


def test_no_value_before_its_date():
    with pytest.raises(RuleNotFoundError, match="1999-12-31"):
        load_rules(datetime.date(1999, 12, 31)).ticks("boards.gap.between")


def test_override_replaces_the_value_and_keeps_the_reason():
    rules = load_rules(
        DAY, overrides=(Override(rule="boards.gap.between", value="3/16 in", reason="board maker's sheet"),)
    )
    assert rules.ticks("boards.gap.between") == inches(0.1875)
    assert rules.entry("boards.gap.between").reason == "board maker's sheet"
    assert rules.digest() != load_rules(DAY).digest()


@pytest.mark.parametrize(
    ("override", "message"),
    [
        (Override(rule="no.such", value=1, reason="why"), "does not exist"),
        (Override(rule="boards.gap.between", value=1, reason=" "), "without a reason"),
        (Override(rule="boards.gap.between", value="3/16", reason="why"), "no unit"),
        (Override(rule="boards.gap.between", value=-1, reason="why"), "wants a number"),
        (Override(rule="framing.end_studs", value="maybe", reason="why"), "wants yes or no"),
    ],
)
def test_bad_overrides_are_refused(override, message):
    with pytest.raises(InputValueError, match=message):
        load_rules(DAY, overrides=(override,))


def test_unknown_practice_is_refused():
    with pytest.raises(InputValueError, match="us, uk, au"):
        load_rules(DAY, "fr")


def test_wrong_kind_of_answer_is_refused():
    rules = load_rules(DAY)
    with pytest.raises(InputValueError, match="not a number"):
        rules.number("fastening.type")
    with pytest.raises(InputValueError, match="not a length"):
        rules.ticks("boards.density")
    with pytest.raises(InputValueError, match="not a yes or no"):
        rules.flag("boards.density")


def test_digest_is_stable():
    assert load_rules(DAY).digest() == load_rules(DAY).digest()
    assert load_rules(DAY).digest() != load_rules(DAY, "uk").digest()


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (GOOD + "  colour: red\n", "'colour' is not a key"),
        (GOOD + "  unit: mm\n", "doubled key"),
        (GOOD.replace("  unit: in\n", ""), "'unit' is missing"),
        (GOOD.replace("unit: in", "unit: furlong"), "'furlong' is not registered"),
        (GOOD.replace("value: 1,", "value: 1, unit: furlong,"), "'furlong' is not registered"),
        (GOOD.replace(", basis: common_practice", ""), "'basis' is missing"),
        (GOOD.replace("common_practice", "hearsay"), "basis 'hearsay'"),
        (GOOD.replace("common_practice", "code"), "do not fit"),
        (GOOD.replace("common_practice", "common_practice, source: x"), "do not fit"),
        (GOOD.replace("any", "fr"), "practice 'fr'"),
        (GOOD.replace("2000-01-01", "lately"), "not a date"),
        (GOOD.split("    -")[0].replace("values:", "values: []"), "needs a list of values"),
        (GOOD.replace("{" + VALUE + "}", "1"), "must be a mapping"),
        ("a: b", "list of records"),
        ("- {", "bad.yaml"),
    ],
)
def test_bad_rule_files_are_refused(text, message):
    with pytest.raises(InputValueError, match=message):
        read_rules(text, "bad.yaml")


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("- {id: a, title: T, practice: any}", "'read' is missing"),
        ("- {id: a, title: T, read: first_hand}", "'practice' is missing"),
        ("- {id: a, title: T, practice: mars, read: first_hand}", "not us, uk, au or any"),
        ("- {id: a, title: T, practice: us, read: perhaps}", "not first_hand, quoted, memory"),
        ("- {id: a, title: T, practice: us, read: quoted}", "'quoted_in' goes with"),
        (
            "- {id: a, title: T, practice: us, read: memory}\n- {id: a, title: T, practice: us, read: memory}",
            "stands twice",
        ),
    ],
)
def test_bad_source_files_are_refused(text, message):
    with pytest.raises(InputValueError, match=message):
        read_sources(text, "sources.yaml")


def test_doubled_rules_and_sources_without_a_record_are_refused():
    rules = read_rules(GOOD, "good.yaml")
    with pytest.raises(InputValueError, match="stands twice"):
        check_book([*rules, *rules], {})
    named = read_rules(GOOD.replace("common_practice", "code, source: x"), "good.yaml")
    with pytest.raises(InputValueError, match="has no record"):
        check_book(named, {})
    check_book(named, {"x": Source(id="x", title="X", practice="us", read="first_hand", note="")})


@pytest.mark.parametrize("practice", ["uk", "au"])
@pytest.mark.parametrize(
    "rule",
    ["bedding.tape.roll", "water.band.length", "water.band.width", "water.sheet.length", "water.sheet.width"],
)
def test_rolls_of_metric_practices_are_in_whole_millimetres(practice: str, rule: str):
    entry = load_rules(DAY, practice).entry(rule)
    assert entry.unit == "mm" and entry.value == int(str(entry.value))
    assert entry.basis == "house_assumption"


@pytest.mark.parametrize("practice", ["uk", "au"])
def test_the_screw_of_metric_practices_is_named_in_millimetres(practice: str):
    assert load_rules(DAY, practice).text("fastening.type").startswith("32 mm ")


@pytest.mark.parametrize("practice", ["uk", "au"])
def test_a_value_of_another_practice_is_marked_so(practice):
    rules = load_rules(DAY, practice)
    taken = {entry.id for entry in rules.under("") if entry.taken_from}
    assert {"framing.stud_width", "tile.contact.wet", "boards.stagger.end_joints", "water.lap"} <= taken
    assert {rules.entry(rule).taken_from for rule in taken} == {"us"}
    # Its own, a property of a material, a sentence without a figure, an assumption of this book.
    own = {
        "tile.joint.min_floor",
        "mass.tile",
        "exposure.over.painted",
        "boards.piece.min",
        "tile.movement.expansion",
    }
    assert not own & taken


def test_what_is_borrowed_is_borrowed_in_no_other_way():
    assert not [entry.id for entry in load_rules(DAY).under("") if entry.taken_from]
    changed = (Override(rule="framing.stud_width", value="45 mm", reason="as measured on site"),)
    assert load_rules(DAY, "uk", changed).entry("framing.stud_width").taken_from == ""


@pytest.mark.parametrize("practice", ["uk", "au"])
def test_borrowed_lengths_of_boards_and_joints_are_in_round_millimetres(practice):
    rules = load_rules(DAY, practice)
    for rule, length in (
        ("boards.gap.between", 3),
        ("framing.stud_width", 38),
        ("tile.joint.offset_rectified", 3),
    ):
        entry = rules.entry(rule)
        assert (entry.value, entry.unit, entry.taken_from) == (length, "mm", "us")
        # Rounding moves none of them by more than a tenth.
        assert rules.ticks(rule) == pytest.approx(load_rules(DAY).ticks(rule), rel=0.1)


def test_a_habit_is_taken_from_a_practice_that_is_known():
    with pytest.raises(InputValueError, match="taken_from 'mars'"):
        read_rules(GOOD.replace("common_practice", "common_practice, taken_from: mars"), "rules.yaml")

"""Values in sentences: on either tape, in either practice's words, and never with something missing."""

import pytest

from firstcourse.findings import Finding, Severity
from firstcourse.plan import Plan
from firstcourse.units import Tape, inches
from firstcourse.values import Limit, Measure, Name, Ref, Word, just, least, length, length_in, measure, most
from firstcourse.words import Speaker
from firstcourse.words.figures import in_figures, number_text, on_tape
from firstcourse.words.messages import Messages, MissingWordsError
from firstcourse.words.places import place, thing
from firstcourse.workings import Working

DOOR = Finding(
    code="SUI-603",
    severity=Severity.FIX,
    at=("bath/floor/door/door to hall",),
    measured=length_in(0.25),
    limit=least(length_in(0.375)),
    rule="door.clearance.min",
    remedies=("cut",),
    values={"drags": True, "off": length_in(0.13)},
)


@pytest.mark.parametrize(
    ("tape", "measured", "limit", "remedy"),
    [
        (Tape.INCH, '1/4"', 'at least 3/8"', 'Cut 3/16" off the door before laying.'),
        (Tape.MM, "6 mm", "at least 10 mm", "Cut 4 mm off the door before laying."),
    ],
)
def test_a_finding_is_said_as_the_tape_reads(tape: Tape, measured: str, limit: str, remedy: str) -> None:
    said = Speaker("us", tape, sources={"door.clearance.min": "a handbook, 3.2"}).finding(DOOR)
    assert (said.where, said.message) == ("bath: floor, door to hall", "The door will drag on the finished floor.")
    assert (said.measured, said.limit, said.remedy) == (measured, limit, remedy)
    assert (said.code, said.rule, said.source) == ("SUI-603", "door.clearance.min", "a handbook, 3.2")


def test_a_choice_follows_its_value() -> None:
    shut = DOOR.model_copy(update={"values": {**DOOR.values, "drags": False}})
    assert "not open over" in Speaker("us", Tape.INCH).finding(shut).message


def test_what_is_missing_is_never_left_out_in_silence() -> None:
    speaker = Speaker("us", Tape.INCH)
    with pytest.raises(MissingWordsError, match=r"SUI-603\.cut"):
        speaker.finding(DOOR.model_copy(update={"values": {"drags": True}}))
    with pytest.raises(MissingWordsError, match="no message 'SUI-000'"):
        speaker.finding(DOOR.model_copy(update={"code": "SUI-000"}))
    with pytest.raises(MissingWordsError, match="no messages in 'xx'"):
        Messages("xx", "us", {})


def test_a_working_is_said_with_its_inputs_in_order() -> None:
    working = Working(
        formula="height-doorway_step",
        at=("bath/floor/door/hall",),
        inputs={
            "this_floor": length_in(0.75),
            "other_floor": length_in(0.25),
            "profile": Word(word="bevelled_reducer"),
            "long": length_in(1.0),
            "slope": measure(2.0),
        },
        result=length_in(0.5),
    )
    said = Speaker("us", Tape.INCH).working(working)
    assert said.title == "bath: floor, hall: step between the floors"
    assert list(said.values) == ["this floor", "other floor", "profile"]
    assert said.values["profile"] == 'bevelled reducer at least 1" long (1 in 2)'
    assert (said.result, said.unit) == ("+0.500", "in")


def test_columns_are_listed_row_by_row_and_rows_of_one_name_together() -> None:
    working = Working(
        formula="ground-shim",
        at=("bath/wall/A-B",),
        inputs={
            "way": Word(word="up"),
            "left": (length_in(16), length_in(16), length_in(32)),
            "on": (length_in(12), length_in(36), length_in(12)),
            "do": (Word(word="shim"), Word(word="leave"), Word(word="plane_off")),
            "by": (length_in(0.25), length_in(0), length_in(0.125)),
            "passes": True,
            "failing": (),
        },
        result=length_in(0.25),
    )
    assert Speaker("us", Tape.INCH).working(working).values == {
        "stud at 1' 4\"": 'shim 1/4" at 1\' 0" up, leave at 3\' 0" up',
        "stud at 2' 8\"": 'plane off 1/8" at 1\' 0" up',
    }


@pytest.mark.parametrize("tape", list(Tape))
def test_rounding_goes_the_way_that_is_asked(tape: Tape) -> None:
    found = length(inches(3) + 1)
    low, near, high = (on_tape(found, tape, way) for way in ("down", "near", "up"))
    assert near in (low, high) and low != high
    assert in_figures(Measure(value=8.79, unit="psf"), tape) == ("8.79 psf" if tape is Tape.INCH else "0.421 kPa")


def test_a_measure_that_is_no_length_is_not_read_on_a_tape() -> None:
    with pytest.raises(ValueError, match="no length"):
        on_tape(measure(3.0, "kg"), Tape.MM)


def test_halves_are_rounded_up_and_nothing_is_minus_nothing() -> None:
    assert [number_text(value, 1) for value in (0.25, -0.25, -0.01, 12345.65)] == [
        "0.3",
        "-0.3",
        "0.0",
        "12,345.7",
    ]


def test_values_survive_the_plan_s_document() -> None:
    values = {
        "a": length(inches(0.5)),
        "b": just(measure(2.0, "kg")),
        "c": (Ref(ref="bath/floor"), Name(name="oak"), Word(word="stud"), True, 3),
        "d": most(length(640)),
    }
    finding = DOOR.model_copy(update={"values": values})
    again = Finding.model_validate_json(finding.model_dump_json())
    assert again == finding
    assert isinstance(again.values["b"], Limit) and again.values["c"][3] is True
    assert Plan.model_fields["findings"].annotation is not None


def test_names_and_kinds_of_references_are_told_apart() -> None:
    words = {"wall": "wall", "floor": "floor", "shower_floor": "shower floor", "corner": "corner"}

    def word(code: str) -> str:
        return words.get(code, code)

    assert place("bath/wall/A-B/opening/floor", {}, word) == "bath: wall A-B, floor"
    assert place("bath/floor/shower", {}, word) == "bath: shower floor"
    assert thing("bath/corner/C", {}, word) == "corner C"
    labels = {"bath/floor": ("bath", "floor"), "bath/floor#1": ("bath", "floor", "board F1-1")}
    assert place("bath/floor#1", labels, word) == "bath: floor, board F1-1"

"""Round the room with the tape: a walk is data, each reading moves it on, and it ends as a job document."""

import math

import pytest

from firstcourse.app.session import Session
from firstcourse.app.walk import Turn, Walk, begun, path_mm, written
from firstcourse.errors import InputValueError, JobError
from firstcourse.job import starter_text
from firstcourse.rules import RuleSet
from firstcourse.units import Tape

LEGS: list[tuple[Turn, str]] = [(90, "8'"), (90, "5'"), (90, "8'"), (90, "5'")]
READ = {
    "A-B": "8' 0-1/4\"",
    "B-C": "5' 0\"",
    "C-D": "8' 0-1/8\"",
    "D-A": "5' 0-1/8\"",
    "A-C": "9' 5-5/16\"",
    "B-D": "9' 5-1/4\"",
}


@pytest.fixture
def rules() -> RuleSet:
    return Session(starter_text()).rules


def test_a_room_is_taped_as_asked_and_written_into_the_document(rules: RuleSet) -> None:
    walk = begun("bath", Tape.INCH, LEGS)
    asked = []
    while (upcoming := walk.stands(rules).next) is not None:
        asked.append(upcoming.pair)
        # What is kept between two readings is text.
        walk = Walk.model_validate_json(walk.model_dump_json()).taped(upcoming.pair, READ[upcoming.pair])
    assert walk.stands(rules).sure
    assert {*asked} == {*READ}
    session = Session(starter_text())
    done = written(session, walk, index=1)
    assert done.job.rooms == session.job.rooms
    assert "# Stand inside and turn to the right" in done.text


def test_a_second_room_is_put_after_the_first(rules: RuleSet) -> None:
    walk = begun("hall", Tape.INCH, LEGS)
    for pair, text in READ.items():
        walk = walk.taped(pair, text)
    done = written(Session(starter_text()), walk, index=2, besides={"height": "8'", "floor": {}})
    assert [room.name for room in done.job.rooms] == ["bath", "hall"]


def test_a_room_is_put_in_place_of_another(rules: RuleSet) -> None:
    walk = begun("loft", Tape.INCH, LEGS)
    for pair, text in READ.items():
        walk = walk.taped(pair, text)
    before = Session(starter_text())
    done = written(before, walk, index=1, besides={"height": "7' 6\"", "floor": {}}, in_place=True)
    assert [room.name for room in done.job.rooms] == ["loft"]
    assert done.job.rooms[0].walls == ()
    assert done.job.stock == before.job.stock


def test_a_walk_is_drawn_before_it_closes() -> None:
    assert path_mm([(90, "1 m"), (-90, "2 m")]) == [(0, 0), (1000, 0), (pytest.approx(1000), -2000)]
    with pytest.raises(InputValueError):
        path_mm([(90, "-1 m")])


def test_a_reading_that_is_no_length_changes_nothing(rules: RuleSet) -> None:
    walk = begun("bath", Tape.INCH, LEGS)
    for text in ("", "8", "eight feet", "-3 in", "1e9 m", "0 in"):
        with pytest.raises(InputValueError):
            walk.taped("A-B", text)
    with pytest.raises(InputValueError):
        walk.taped("A-Z", "8'")
    assert walk.readings == ()


def test_a_reading_taken_again_is_known_as_sure_where_it_says_the_same(rules: RuleSet) -> None:
    walk = begun("bath", Tape.INCH, LEGS).taped("A-B", "8' 0-1/4\"")
    assert not walk.readings[0].twice
    assert walk.taped("B-A", "8' 0-5/16\"").readings[0].twice
    assert not walk.taped("A-B", "7' 11\"").readings[0].twice


def test_what_is_skipped_is_asked_for_no_more_until_it_is_taken_back(rules: RuleSet) -> None:
    walk = begun("bath", Tape.INCH, LEGS)
    assert walk.skipping("A-B").stands(rules).next is not None
    upcoming = walk.skipping("A-B").stands(rules).next
    assert upcoming is not None and upcoming.pair == "B-C"
    back = walk.skipping("A-B").without("A-B").stands(rules).next
    assert back is not None and back.pair == "A-B"


def test_the_sketch_follows_the_tape_before_the_room_is_fixed(rules: RuleSet) -> None:
    stands = begun("bath", Tape.INCH, LEGS).taped("A-B", "12'").stands(rules)
    at = stands.corners_mm
    assert not stands.fixed
    assert math.dist(at["A"], at["B"]) == pytest.approx(12 * 304.8, rel=0.01)


def test_a_walk_that_does_not_close_is_refused() -> None:
    with pytest.raises(InputValueError, match="more to the right"):
        begun("bath", Tape.INCH, LEGS[:3])
    with pytest.raises(InputValueError):
        begun("bath", Tape.INCH, [(90, "8'")] * 2)


def test_a_wall_between_corners_that_are_gone_is_told(rules: RuleSet) -> None:
    legs: list[tuple[Turn, str]] = [(90, "8'"), (90, "3'"), (-90, "3'"), (90, "3'"), (90, "11'"), (90, "6'")]
    walk = begun("bath", Tape.INCH, legs)
    with pytest.raises(JobError):
        written(Session(starter_text()), walk, index=1)

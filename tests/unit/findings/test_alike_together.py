"""Findings as printed: what is said of several places stands there once, the worst first."""

from firstcourse.findings import Severity
from firstcourse.words import SaidFinding, alike_together


def note(where: str, *, message: str = "lift tiles", measured: str = "", severity: str = "note") -> SaidFinding:
    return SaidFinding(code="TIL-1", severity=Severity(severity), where=where, message=message, measured=measured)


def test_places_of_one_room_stand_after_each_other() -> None:
    (one,) = alike_together([note("bath: wall A-B"), note("bath: wall B-C")])
    assert one.where == "bath: wall A-B; wall B-C"


def test_what_all_places_end_with_stands_once() -> None:
    (one,) = alike_together([note("bath: floor, tile white"), note("bath: wall A-B, tile white")])
    assert one.where == "bath: floor; wall A-B, tile white"


def test_what_was_measured_stands_with_its_place_where_it_differs() -> None:
    (one,) = alike_together([note("bath: wall A-B", measured="3 ft"), note("bath: floor", measured="4 ft")])
    assert one.measured == "wall A-B 3 ft; floor 4 ft"
    (one,) = alike_together([note("bath: wall A-B", measured="3 ft"), note("bath: floor", measured="3 ft")])
    assert one.measured == "3 ft"


def test_one_place_measured_twice_is_named_once() -> None:
    (one,) = alike_together([note("bath, wall A-B", measured="3 ft"), note("bath, wall A-B", measured="4 ft")])
    assert (one.where, one.measured) == ("bath, wall A-B", "3 ft; 4 ft")


def test_other_rooms_and_other_words_stay_apart() -> None:
    found = [note("bath: floor"), note("hall: wall A-B"), note("bath: floor", message="grind"), note("whole job")]
    assert alike_together(found) == tuple(found)


def test_rooms_where_the_same_was_found_at_the_same_place_stand_after_each_other() -> None:
    found = [note(f"bath {n}: wall {w}", measured="3 ft") for n in (1, 2) for w in ("A-B", "B-C")]
    assert [finding.where for finding in alike_together(found)] == ["bath 1; bath 2: wall A-B; wall B-C"]
    whole = [note("bath 1"), note("bath 2")]
    assert [finding.where for finding in alike_together(whole)] == ["bath 1; bath 2"]
    apart = [note("bath 1: floor", measured="3 ft"), note("bath 2: floor", measured="4 ft")]
    assert alike_together(apart) == tuple(apart)


def test_the_worst_comes_first_and_the_rest_keeps_its_order() -> None:
    found = [note("bath: a", message="m"), note("bath: b", severity="stop"), note("bath: c", severity="fix")]
    assert [finding.where for finding in alike_together(found)] == ["bath: b", "bath: c", "bath: a"]

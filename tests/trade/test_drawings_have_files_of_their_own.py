"""Rooms named `wet room`, `wet-room` and `wet.room` wrote their drawings into one file, so that two were lost."""

from firstcourse.papers.papers import file_names


def test_rooms_that_differ_in_signs_alone_have_drawings_of_their_own() -> None:
    ids = [f"{room}/floor" for room in ("wet room", "wet-room", "wet.room")]
    assert file_names(ids) == ("wet-room-floor", "wet-room-floor-2", "wet-room-floor-3")


def test_no_name_with_what_is_put_behind_it_is_another_name() -> None:
    ids = ["bath/floor/tile", "bath/floor", "bath/floor/heights", "bath/floor-2", "bath.floor"]
    names = file_names(ids)
    files = [name + kind for name in names for kind in ("", "-tile", "-heights")]
    assert len(set(files)) == len(files)
    assert file_names(ids) == names

"""A plan is the same, byte for byte, whether its steps are done anew or reused from plans before it."""

import random
from pathlib import Path

import pytest

import firstcourse
from firstcourse.app.processes import Processes
from firstcourse.app.session import Session
from firstcourse.app.store import Memory
from firstcourse.errors import FirstcourseError

TUB = (Path(__file__).parents[2] / "examples" / "tub-bathroom" / "job.yaml").read_text(encoding="utf-8")
RULE = {"rule": "boards.gap.between", "value": "3/16 in", "reason": "the maker asks for it"}
EDITS = (
    ("name", "Another bathroom", "A third"),
    ("site", {"client": "the owner"}, {"address": "Any Street 1"}),
    ("rooms[1].name", "bath", "wet room"),
    ("rooms[1].walls[1].openings[1].bottom", "48 1/2 in", "48 1/4 in"),
    ("rooms[1].walls[1].openings[1].height", "23 in", "400 in"),
    ("rooms[1].walls[2].boards.top", "83 in", "80 1/2 in"),
    ("rooms[1].walls[3].openings[2].bottom", "34 in", "35 in"),
    ("rooms[1].walls[3].studs.species", "dfl", "sp"),
    ("rooms[1].floor.openings[2].left", "47 in", "49 1/2 in"),
    ("rooms[1].floor.spots[2].height", "1/8 in", "5/16 in"),
    ("rooms[1].floor.joists.size", "2x8", "2x12"),
    ("tiles[1].joint", "3/16 in", "1/16 in"),
    ("stock[2].price", 18.5, 12),
    ("rules", [RULE], [{**RULE, "value": "1/4 in"}]),
    ("rules", [RULE], [{**RULE, "reason": "as last time"}]),
    ("offcuts", [], [{"id": "rack 2", "stock": "wall board 3x5", "size": ["30 in", "36 in"]}]),
    ("practice", "uk", "us"),
)
"""Fields of the example with two values each; some cannot be planned, and must be refused alike."""


def planned(session: Session, effort: int) -> str:
    try:
        return session.plan(effort=effort).document
    except FirstcourseError as error:
        return f"refused: {error}"


@pytest.mark.parametrize("seed", range(2))
def test_edits_in_any_order_give_what_a_new_session_gives(seed: int) -> None:
    rng = random.Random(seed)
    session = firstcourse.Session(TUB, store=Memory(rng.choice((10, 1_000))))
    for field, one, other in rng.sample(EDITS, 4):
        try:
            session.edit(field, rng.choice((one, other)))
        except FirstcourseError:
            continue
        assert planned(session, 0) == planned(firstcourse.Session(session.text), 0), field


def test_what_is_set_back_is_planned_as_before() -> None:
    """There and back in one session, so that what is kept for the one is asked for the other."""
    session = firstcourse.Session(TUB)
    first = planned(session, 0)
    for field, value in (("rules", [RULE]), ("practice", "uk"), ("practice", "us"), ("rules", [])):
        session.edit(field, value)
        if field == "practice":
            assert planned(session, 0) == planned(firstcourse.Session(session.text), 0)
    assert planned(session, 0) == first


def test_rooms_shared_out_are_kept_as_those_done_here() -> None:
    room = """
  - name: NAME
    corners: [A, B, C, D]
    sides: {A-B: LONG, B-C: 4 ft, C-D: LONG, D-A: 4 ft}
    diagonals: {A-C: ACROSS, B-D: ACROSS}
    height: 8 ft
    floor: {framing: {parallel_to: D-A, spacing: 16 in, first: 14 in}}"""
    sizes = (("one", "5 ft", "76 7/8 in"), ("two", "6 ft", "86 1/2 in"), ("three", "7 ft", "96 3/4 in"))
    rooms = "".join(
        room.replace("NAME", name).replace("LONG", long).replace("ACROSS", across) for name, long, across in sizes
    )
    text = f"name: Three floors\ndate: 2026-11-25\ntape: inch\nrooms:{rooms}\n"
    shared = firstcourse.Session(text, share=Processes(2, least=2))
    here = firstcourse.Session(text, share=Processes(1))
    for field, value in (("name", "Floors"), ("rooms[2].floor.framing.first", "12 in"), ("tape", "mm")):
        for session in (shared, here):
            session.edit(field, value)
        document = planned(shared, 1)
        assert document.startswith("{") and document == planned(here, 1)
        assert document == planned(firstcourse.Session(shared.text), 1)

"""Many rooms were planned as one heap: sheets of the first floor were cut for the eighth.

A building is planned phase by phase, what one leaves over is offered to the next, and all of it is proved again.
"""

import json

import pytest

from firstcourse.app.building import planned_building
from firstcourse.building import read_building
from firstcourse.errors import JobError
from firstcourse.verify.building import verify_building

TEXT = """
name: Two floors
date: 2026-11-25
stock:
  - {id: wall board, size: [36 in, 60 in], thickness: 0.42 in, for: [wall]}
types:
  - id: type A
    room:
      name: type A
      corners: [A, B, C, D]
      sides: {A-B: 5', B-C: 8', C-D: 5', D-A: 8'}
      diagonals: {A-C: 9' 5-1/4", B-D: 9' 5-1/4"}
      height: 8'
      walls:
        - {wall: A-B, boards: {bottom: 15 in, top: 75 in}, framing: {spacing: 16 in, first: 16 in}}
rooms:
  - {number: 101, floor: 1, type: type A}
  - {number: 201, floor: 2, type: type A, readings: {sides: {A-B: 5' 0-1/16"}}}
phases:
  - {id: first floor, rooms: [101]}
  - {id: second floor, rooms: [201]}
deliveries:
  - {id: all, phases: [first floor, second floor]}
"""


def test_a_phase_is_offered_what_earlier_ones_kept_and_each_claim_is_proved(tmp_path):
    told = []
    made = planned_building(read_building(TEXT), effort=0, heap=False, keep=tmp_path, on_phase=told.append)
    assert told == ["first floor", "second floor"]
    kept = [one.id for one in made.plan.derived.phases[0].rack]
    assert kept and [one.id for one in made.phases["second floor"][0].offcuts] == kept
    assert [one.differs for one in made.plan.derived.alike] == [(), ("sides.A-B",)]

    again = planned_building(read_building(TEXT), effort=0, heap=False, keep=tmp_path, on_phase=told.append)
    assert again.document == made.document
    assert len(told) == 2, "a run that begins again goes on where it was"

    plans = {name: result.document for name, (_, result) in made.phases.items()}
    assert not verify_building(made.document, plans)
    for path, wrong, code in (
        (("phases", 0, "sheets", "wall board"), 1, "VER-966"),
        (("phases", 0, "rack"), [], "VER-967"),
        (("phases", 1, "used"), ["no such"], "VER-967"),
        (("phases", 0, "plan"), "0" * 64, "VER-965"),
        (("alike", 0, "rooms"), ["101", "201"], "VER-964"),
        (("deliveries", 0, "lines", 0, "packs"), 0, "VER-969"),
        (("sheets", "wall board"), 1, "VER-966"),
        (("saved",), {"wall board": 1}, "VER-968"),
    ):
        tree = json.loads(made.document)
        inner = tree["derived"]
        for part in path[:-1]:
            inner = inner[part]
        inner[path[-1]] = wrong
        assert code in {one.code for one in verify_building(json.dumps(tree), plans)}, path


@pytest.mark.parametrize(
    ("old", "new", "line", "said"),
    [
        ("floor: 2, type: type A", "floor: 2, type: type B", 18, "'type B' is not one of the types"),
        ("rooms: [201]", "rooms: [201, 101]", 21, "'101' is in phases already"),
        ("rooms: [201]", "rooms: [202]", 18, "'201' is in none of the phases"),
        ("phases: [first floor, second floor]", "phases: [first floor]", 21, "'second floor' is in none"),
        ("number: 201", "numbr: 201", 18, "did you mean 'number'?"),
    ],
)
def test_what_a_building_cannot_say_is_refused_at_its_line(old, new, line, said):
    assert TEXT.count(old) == 1
    with pytest.raises(JobError) as refused:
        read_building(TEXT.replace(old, new))
    assert any(one.line == line and said in one.message for one in refused.value.problems), str(refused.value)

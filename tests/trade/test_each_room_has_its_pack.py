"""A job of 64 rooms was printed as one pack of 1,501 pages, made in 3 GB, that no setter could carry.

Each room has packs of its own, and every sheet is cut in just one of them.
"""

from collections import Counter

import pytest

from firstcourse.job import read_job_text
from firstcourse.papers import page_process
from firstcourse.papers.by_room import RoomPart, by_room, room_parts, whole_part
from firstcourse.papers.papers import all_papers
from firstcourse.plan import Plan
from firstcourse.steps import plan_job

ROOMS = ("bath", "bath 2", "hall")


def planned(rooms: tuple[str, ...]) -> Plan:
    listed = "".join(
        f"""
  - name: {room}
    corners: [A, B, C, D]
    sides: {{A-B: {1000 + 70 * number} mm, B-C: 1100 mm, C-D: {1000 + 70 * number} mm, D-A: 1100 mm}}
    diagonals: {{B-D: {((1000 + 70 * number) ** 2 + 1100**2) ** 0.5:.0f} mm}}
    height: 2400 mm
    floor: {{framing: {{parallel_to: A-B, spacing: 400 mm, first: 200 mm}}}}
"""
        for number, room in enumerate(rooms)
    )
    text = f"""
name: several
practice: us
date: 2026-11-25
tape: mm
stock: [{{id: board, size: [900 mm, 1500 mm], thickness: 6 mm}}]
rooms:{listed}"""
    return plan_job(read_job_text(text), effort=1).plan


@pytest.fixture(scope="module")
def plan() -> Plan:
    return planned(ROOMS)


@pytest.fixture(scope="module")
def parts(plan: Plan) -> tuple[RoomPart, ...]:
    return room_parts(plan)


def test_every_sheet_is_cut_in_one_pack(plan: Plan, parts: tuple[RoomPart, ...]) -> None:
    assert [part.room for part in parts] == list(ROOMS)
    cut = Counter(sheet.id for part in parts for sheet in part.plan.sheets)
    assert cut == {sheet.id: 1 for sheet in plan.sheets}


def test_boards_from_sheets_of_other_packs_say_where(plan: Plan, parts: tuple[RoomPart, ...]) -> None:
    sheets = {part.piece: sheet.id for sheet in plan.sheets for part in sheet.parts if part.piece}
    pack = {sheet.id: part.room for part in parts for sheet in part.plan.sheets}
    told = {(mark, sheet, room) for part in parts for mark, sheet, room in part.elsewhere}
    expected = {
        (board.mark, sheets[board.piece], pack[sheets[board.piece]])
        for surface in plan.surfaces
        for board in surface.boards
        if pack[sheets[board.piece]] != surface.room
    }
    assert told == expected
    assert expected, "rooms of this job share no sheet: the test shows nothing"


def test_every_finding_and_working_is_in_a_pack(plan: Plan, parts: tuple[RoomPart, ...]) -> None:
    packs = [*(part.plan for part in parts), whole_part(plan)]
    assert {id(finding) for finding in plan.findings} == {id(found) for pack in packs for found in pack.findings}
    assert Counter(list(plan.workings)) == Counter(name for pack in packs for name in pack.workings)


def test_a_room_is_not_taken_for_another_whose_name_begins_alike() -> None:
    places = [
        "bath/floor",
        "bath 2/floor",
        "bath 2: floor, flange",
        "bath, wall A-B",
        "bathhouse/floor",
        "whole job",
    ]
    assert by_room(places, ROOMS) == ["bath", "bath 2", "bath 2", "bath", "", ""]


def test_each_room_has_a_folder_and_one_room_keeps_todays_files(
    plan: Plan, monkeypatch: pytest.MonkeyPatch
) -> None:
    # What a page maker keeps of several rooms' pages is not kept here: none of them is made in this process.
    with monkeypatch.context() as here:
        here.setattr(page_process.PageMaker, "_pdf", lambda *_: pytest.fail("a page was made in this process"))
        names = [paper.name for paper in all_papers(plan)]
    packs = [f"{kind}-pack-{size}.pdf" for kind in ("site", "office") for size in ("letter", "a4")]
    assert [name for name in names if name.endswith(".pdf")] == [
        *packs,
        *(f"rooms/{room}/{name}" for room in ("bath", "bath-2", "hall") for name in packs),
    ]
    assert [paper.name for paper in all_papers(planned(ROOMS[:1])) if paper.name.endswith(".pdf")] == packs

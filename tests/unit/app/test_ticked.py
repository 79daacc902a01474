"""A file of ticks comes from outside: whatever is wrong with it is one message, and it fits one plan alone."""

import json
from pathlib import Path
from typing import Any

import pytest

import firstcourse
from example_plans import EXAMPLES, plan_of
from firstcourse.app.ticked import MOST_BYTES, read_ticked
from firstcourse.cli import run
from firstcourse.errors import InputValueError
from firstcourse.papers.phone_items import ids_of, sections
from firstcourse.papers.phone_pack import plan_digest
from firstcourse.plan import Plan
from firstcourse.units import inches
from printed_numbers import differing, retold

AT = "2026-11-30T21:00:00Z"


def plan() -> Plan:
    return plan_of("tub-bathroom")


def file(**changed: Any) -> dict[str, Any]:
    return {
        "format": "firstcourse-ticked",
        "version": 1,
        "plan": plan_digest(plan()),
        "job": "Tub bathroom",
        "saved": AT,
        "ticks": {"cut/S1/1": AT},
        "measured": {
            "course/hall bath/wall/A-B": {"value": '3-1/8"', "at": AT},
            "other/hall bath": {"value": "pipe in the way", "at": AT},
        },
    } | changed


def sent(**changed: Any) -> bytes:
    return json.dumps(file(**changed)).encode()


def test_what_was_ticked_and_measured_is_read() -> None:
    found = read_ticked(sent(), plan())
    assert list(found.ticks) == ["cut/S1/1"]
    assert found.measured["course/hall bath/wall/A-B"].ticks == inches(3.125)
    assert found.measured["other/hall bath"].ticks is None
    assert found.measured["other/hall bath"].text == "pipe in the way"


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (sent(plan="0" * 64), "another plan"),
        (sent(plan="0"), "plan"),
        (sent(ticks={"cut/S99/1": AT}), "'cut/S99/1'"),
        (sent(measured={"cut/S1/1": {"value": "1", "at": AT}}), "'cut/S1/1'"),
        (sent(measured={"course/hall bath/wall/A-B": {"value": "3", "at": AT}}), "'3' has no unit"),
        (sent(measured={"other/hall bath": {"value": "x" * 201, "at": AT}}), "measured.other/hall bath.value"),
        (sent(ticks={"cut/S1/1": "yesterday"}), "ticks.cut/S1/1"),
        (sent(ticks={"cut/S1/1": "2026-11-30T21:00:00"}), "ticks.cut/S1/1"),
        (sent(version=2), "version"),
        (sent(more=1), "more"),
        (b'{"format": "a", "format": "b"}', "'format' stands twice"),
        (b"[" * 100_000, "no file of ticks"),
        (b"not JSON", "no file of ticks"),
        (b"\xff", "UTF-8"),
        (b" " * (MOST_BYTES + 1), "too many"),
    ],
)
def test_what_is_wrong_is_told_in_one_message(data: bytes, told: str) -> None:
    with pytest.raises(InputValueError) as caught:
        read_ticked(data, plan())
    assert told in str(caught.value)


def test_a_session_reads_it_and_names_the_file(tmp_path: Path) -> None:
    session = firstcourse.open(EXAMPLES / "tub-bathroom" / "job.yaml")
    result = session.plan(effort=0)
    path = tmp_path / "ticked.json"
    path.write_bytes(sent())
    assert list(session.ticked(result.plan, path).ticks) == ["cut/S1/1"]
    path.write_bytes(sent(version=2))
    with pytest.raises(InputValueError, match=r"ticked\.json: version"):
        session.ticked(result.plan, path)
    with pytest.raises(InputValueError, match=r"none\.json: No such file"):
        session.ticked(result.plan, tmp_path / "none.json")


def test_done_takes_what_a_phone_says_and_hands_say_it_better(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job, folder = EXAMPLES / "tub-bathroom" / "job.yaml", tmp_path / "plan"
    folder.mkdir()
    document = firstcourse.open(job).plan(effort=0).document
    (folder / "plan.json").write_text(document, encoding="utf-8")
    read = Plan.model_validate_json(document)
    sheet = next(one for one in read.sheets if one.cuts)
    up = read.surfaces[0].boards[0]
    ticks = {f"cut/{sheet.id}/{number}": AT for number in range(1, len(sheet.cuts) + 1)} | {f"board/{up.id}": AT}
    path = tmp_path / "ticked.json"
    path.write_bytes(sent(ticks=ticks, plan=plan_digest(read)))
    found = read_ticked(path.read_bytes(), read)
    cut = {part.piece for part in sheet.parts if part.piece}
    named = {board.id: board.piece for surface in read.surfaces for board in surface.boards}
    assert found.boards == (up.id,)
    assert {named[board] for board in found.cut(read)} == cut - {up.piece}
    assert found.first_courses == {"hall bath/wall/A-B": inches(3.125)}
    out = tmp_path / "job.yaml"
    words = ["done", str(job), "--plan", str(folder), "--ticked", str(path), "--out", str(out)]
    assert run([*words, "--first-course", "hall bath/wall/A-B=3-1/4 in"]) == 0
    given = firstcourse.open(out).job
    assert given.done is not None
    assert sum(board.up for part in given.done.surfaces for board in part.boards) == 1
    wall = next(wall for wall in given.rooms[0].walls if wall.wall == "A-B")
    assert wall.tiling is not None and wall.tiling.start is not None and wall.tiling.start.up == inches(3.25)
    capsys.readouterr()


@pytest.mark.parametrize("name", ["tub-bathroom", "tiled-shower"])
def test_no_two_things_share_an_id_and_no_number_differs_in_spanish(name: str) -> None:
    told = {}
    for tongue in ("en", "es"):
        made = sections(retold(plan_of(name), tongue=tongue))
        ids = [item.id for section in made for item in section.items]
        ids += [tick for section in made for tick in (section.tiles or {}).values()]
        ids += [entry.id for section in made for entry in section.entries]
        assert len(ids) == len(set(ids)) > 100
        told[tongue] = {
            f"{place} {section.group}": [
                section.title,
                *section.lines,
                *(f"{item.strong} {item.text}" for item in section.items),
                *section.after,
            ]
            for place, section in enumerate(made)
        }
    assert differing(told["en"], told["es"]) == []
    ticked, blanks = ids_of(plan_of(name))
    assert {"cut", "tile", "board", "line", "pole", "water"} <= {name.partition("/")[0] for name in ticked}
    assert {"length", "text"} == set(blanks.values())

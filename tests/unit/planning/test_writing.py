"""A folder is written whole or not at all; what is ours and out of date goes, what is anybody else's stays."""

import hashlib
import json
from pathlib import Path

import pytest

from firstcourse.documents.papers import Paper
from firstcourse.errors import InputValueError
from firstcourse.plan import JobStamp, Plan
from firstcourse.planning import PlanResult, writing
from firstcourse.planning.writing import RECORD, write_files, write_plan

OLD = (Paper("plan.json", b"old plan"), Paper("drawings/floor.svg", b"floor"), Paper("list.xlsx", b"list"))
NEW = (Paper("plan.json", b"new plan"), Paper("list.xlsx", b"new list"))


def contents(folder: Path) -> dict[str, bytes]:
    return {
        file.relative_to(folder).as_posix(): file.read_bytes()
        for file in sorted(folder.rglob("*"))
        if file.is_file() and file.name != RECORD
    }


def test_files_are_written_where_they_are_named(tmp_path: Path) -> None:
    folder = tmp_path / "new" / "plan"
    assert write_files(OLD, folder) == tuple(folder / paper.name for paper in OLD)
    assert contents(folder) == {paper.name: paper.content for paper in OLD}
    assert not list(folder.glob(".plan-*"))


def test_stale_files_of_ours_go_and_empty_folders_with_them(tmp_path: Path) -> None:
    write_files(OLD, tmp_path)
    write_files(NEW, tmp_path)
    assert contents(tmp_path) == {paper.name: paper.content for paper in NEW}
    assert not (tmp_path / "drawings").exists()


def test_files_of_others_stay(tmp_path: Path) -> None:
    (tmp_path / "drawings").mkdir()
    (tmp_path / "drawings" / "sketch.svg").write_bytes(b"mine")
    (tmp_path / "notes.txt").write_bytes(b"mine")
    write_files(OLD, tmp_path)
    write_files(NEW, tmp_path)
    assert contents(tmp_path) == {
        "drawings/sketch.svg": b"mine",
        "notes.txt": b"mine",
        **{paper.name: paper.content for paper in NEW},
    }


def test_a_stale_file_that_somebody_changed_stays(tmp_path: Path) -> None:
    write_files(OLD, tmp_path)
    (tmp_path / "drawings" / "floor.svg").write_bytes(b"floor, with my notes")
    write_files(NEW, tmp_path)
    assert (tmp_path / "drawings" / "floor.svg").read_bytes() == b"floor, with my notes"


def test_a_name_that_differs_in_capitals_only_is_not_taken_for_stale(tmp_path: Path) -> None:
    write_files((Paper("Floor.svg", b"floor"),), tmp_path)
    write_files((Paper("floor.svg", b"floor"),), tmp_path)
    assert (tmp_path / "floor.svg").read_bytes() == b"floor"


@pytest.mark.parametrize(
    "record",
    [
        "",
        "[]",
        "{}",
        "\xff",
        '{"files": 3}',
        '{"files": {"../outside.txt": "DIGEST"}}',
        '{"files": {"OUTSIDE": "DIGEST"}}',
    ],
)
def test_a_spoiled_record_removes_nothing(record: str, tmp_path: Path) -> None:
    outside = tmp_path / "outside.txt"
    outside.write_bytes(b"mine")
    folder = tmp_path / "plan"
    folder.mkdir()
    text = record.replace("DIGEST", hashlib.sha256(b"mine").hexdigest()).replace("OUTSIDE", outside.as_posix())
    (folder / RECORD).write_bytes(text.encode("latin-1"))
    write_files(NEW, folder)
    assert outside.read_bytes() == b"mine"
    assert json.loads((folder / RECORD).read_text())["files"].keys() == {paper.name for paper in NEW}


@pytest.mark.parametrize("taken", ["list.xlsx", RECORD])
def test_a_folder_in_the_way_stops_before_anything_is_touched(taken: str, tmp_path: Path) -> None:
    (tmp_path / "plan.json").write_bytes(b"before")
    (tmp_path / taken).mkdir()
    with pytest.raises(InputValueError, match="is a folder"):
        write_files(NEW, tmp_path)
    assert contents(tmp_path) == {"plan.json": b"before"}


def test_a_file_in_the_way_stops_before_anything_is_touched(tmp_path: Path) -> None:
    (tmp_path / "drawings").write_bytes(b"mine")
    with pytest.raises(InputValueError, match="is a file"):
        write_files(OLD, tmp_path)
    assert contents(tmp_path) == {"drawings": b"mine"}


def test_a_full_disk_leaves_the_older_plan_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write_files(OLD, tmp_path)
    write = Path.write_bytes

    def refuse(file: Path, content: bytes) -> int:
        if content == b"new list":
            raise OSError(28, "No space left on device", str(file))
        return write(file, content)

    monkeypatch.setattr(Path, "write_bytes", refuse)
    with pytest.raises(OSError, match="No space"):
        write_files(NEW, tmp_path)
    assert contents(tmp_path) == {paper.name: paper.content for paper in OLD}
    assert not list(tmp_path.glob(".plan-*"))


def test_a_paper_that_fails_writes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(_plan: Plan) -> tuple[Paper, ...]:
        raise RuntimeError("no paper")

    monkeypatch.setattr(writing, "all_papers", fail)
    result = PlanResult(plan=Plan(job=JobStamp(name="empty", digest="")), document="{}", practice={})
    with pytest.raises(RuntimeError, match="no paper"):
        write_plan(result, tmp_path / "plan")
    assert not (tmp_path / "plan").exists()


def test_the_plan_comes_first_and_unchanged(tmp_path: Path) -> None:
    result = PlanResult(plan=Plan(job=JobStamp(name="empty", digest="")), document='{"é": 1}\n', practice={})
    first, *papers = write_plan(result, tmp_path)
    assert first.name == "plan.json"
    assert first.read_text(encoding="utf-8") == result.document
    assert papers and all(file.stat().st_size for file in papers)

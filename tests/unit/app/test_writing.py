"""A folder is written whole or not at all; what is ours and out of date goes, what is anybody else's stays."""

import hashlib
import json
import os
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from firstcourse.app import folder_swap, papers
from firstcourse.app.files import write_files
from firstcourse.app.folder_swap import RECORD
from firstcourse.app.papers import plan_papers
from firstcourse.errors import InputValueError
from firstcourse.papers.papers import Paper
from firstcourse.plan import JobStamp, Plan
from firstcourse.steps import PlanResult

OLD = (Paper("plan.json", b"old plan"), Paper("drawings/floor.svg", b"floor"), Paper("list.xlsx", b"list"))
NEW = (Paper("plan.json", b"new plan"), Paper("list.xlsx", b"new list"))


def contents(folder: Path) -> dict[str, bytes]:
    return {
        file.relative_to(folder).as_posix(): file.read_bytes()
        for file in sorted(folder.rglob("*"))
        if file.is_file() and file.name != RECORD
    }


def leftovers(folder: Path) -> list[Path]:
    return [*folder.parent.glob(".*.made-*"), *folder.glob(".*.made-*")]


def test_files_are_written_where_they_are_named(tmp_path: Path) -> None:
    folder = tmp_path / "new" / "plan"
    assert write_files(OLD, folder) == tuple(folder / paper.name for paper in OLD)
    assert contents(folder) == {paper.name: paper.content for paper in OLD}
    assert not leftovers(folder)


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
    sync, written = os.fsync, []

    def refuse(opened: int) -> None:
        written.append(opened)
        if len(written) == 2:
            raise OSError(28, "No space left on device")
        sync(opened)

    monkeypatch.setattr(os, "fsync", refuse)
    with pytest.raises(OSError, match="No space") as refused:
        write_files(NEW, tmp_path)
    assert refused.value.filename == str(tmp_path / NEW[1].name)
    assert contents(tmp_path) == {paper.name: paper.content for paper in OLD}
    assert not leftovers(tmp_path)


def test_a_paper_that_fails_writes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(_plan: Plan, *, poles: bool) -> Iterator[Paper]:
        raise RuntimeError("no paper")

    monkeypatch.setattr(papers, "all_papers", fail)
    result = PlanResult(plan=Plan(job=JobStamp(name="empty", digest="")), document="{}", practice={})
    with pytest.raises(RuntimeError, match="no paper"):
        write_files(plan_papers(result), tmp_path / "plan")
    assert not (tmp_path / "plan").exists()


def test_the_plan_comes_first_and_unchanged(tmp_path: Path) -> None:
    result = PlanResult(plan=Plan(job=JobStamp(name="empty", digest="")), document='{"é": 1}\n', practice={})
    first, *written = write_files(plan_papers(result), tmp_path)
    assert first.name == "plan.json"
    assert first.read_text(encoding="utf-8") == result.document
    assert written and all(file.stat().st_size for file in written)


def test_a_record_that_leads_over_a_link_removes_nothing_outside(tmp_path: Path) -> None:
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "list.txt").write_bytes(b"mine")
    folder = tmp_path / "plan"
    write_files(OLD, folder)
    (folder / "there").symlink_to(outside)
    (folder / "link.txt").symlink_to(outside / "list.txt")
    digest = hashlib.sha256(b"mine").hexdigest()
    (folder / RECORD).write_text(json.dumps({"files": {"there/list.txt": digest, "link.txt": digest}}))
    write_files(NEW, folder)
    assert (outside / "list.txt").read_bytes() == b"mine"
    assert (folder / "there").readlink() == outside
    assert (folder / "link.txt").is_symlink()


def test_nothing_is_written_through_a_link(tmp_path: Path) -> None:
    outside = tmp_path / "outside"
    outside.mkdir()
    folder = tmp_path / "plan"
    folder.mkdir()
    (folder / "drawings").symlink_to(outside)
    with pytest.raises(InputValueError, match="is a link"):
        write_files(OLD, folder)
    assert not list(outside.iterdir())
    assert not leftovers(folder)


def test_the_working_folder_keeps_its_place(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    before = tmp_path.stat().st_ino
    write_files(OLD, Path("."))
    write_files(NEW, Path("."))
    assert tmp_path.stat().st_ino == before
    assert contents(tmp_path) == {paper.name: paper.content for paper in NEW}
    assert not leftovers(tmp_path)


def test_a_refusal_leaves_no_new_folders(tmp_path: Path) -> None:
    def papers() -> Iterator[Paper]:
        yield OLD[0]
        raise RuntimeError("no paper")

    with pytest.raises(RuntimeError, match="no paper"):
        write_files(papers(), tmp_path / "jobs" / "plan")
    assert not list(tmp_path.iterdir())


WRITER = """
import importlib.util, sys
from pathlib import Path
# The module by itself: the rest of the house would take a second to load for each kill.
spec = importlib.util.spec_from_file_location("folder_swap", sys.argv[2])
swap = importlib.util.module_from_spec(spec)
spec.loader.exec_module(swap)
number = 0
while True:
    number += 1
    with swap.folder_set(Path(sys.argv[1]), record=True) as files:
        for folder in "abc":
            for name in range(5 + number % 2):
                files.add(f"{folder}/{name}.txt", b"%d" % (number % 2))
    print(number, flush=True)
"""


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="names are exchanged in one step on Linux alone")
def test_killed_at_any_moment_the_folder_holds_one_set_whole(tmp_path: Path) -> None:
    folder = tmp_path / "plan"
    folder.mkdir()
    (folder / "notes.txt").write_bytes(b"mine")
    command = [sys.executable, "-c", WRITER, str(folder), folder_swap.__file__]
    for milliseconds in range(0, 30, 2):
        with subprocess.Popen(command, stdout=subprocess.PIPE) as writer:
            assert writer.stdout is not None
            writer.stdout.readline()
            time.sleep(milliseconds / 1000)
            writer.kill()
        found = contents(folder)
        assert found.pop("notes.txt") == b"mine"
        (content,) = set(found.values())
        assert len(found) == 3 * (5 + int(content))
    write_files(NEW, folder)
    assert not leftovers(folder)
    assert contents(folder) == {"notes.txt": b"mine", **{paper.name: paper.content for paper in NEW}}

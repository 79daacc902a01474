"""Write a verified plan and its papers: all made first, then moved in, and what is out of date taken away."""

import hashlib
import json
import os
import tempfile
from collections.abc import Sequence
from pathlib import Path, PureWindowsPath

from firstcourse.documents.judgement_pack import judgement_pack
from firstcourse.documents.pages import PAGE_SIZES
from firstcourse.documents.papers import Paper, all_papers
from firstcourse.errors import InputValueError
from firstcourse.planning.judging import JobJudgement
from firstcourse.planning.steps import PlanResult

PLAN = "plan.json"
RECORD = ".firstcourse.json"
"""Lists the files we wrote with their SHA-256, so that the next plan knows them from everybody else's."""


def write_plan(result: PlanResult, folder: Path) -> tuple[Path, ...]:
    """Write a plan and all its papers into a folder.

    Args:
        result: A plan that has been verified.
        folder: Made where it is not there.

    Returns:
        The files written, plan.json first.

    Raises:
        InputValueError: A name that we need is taken by a file or a folder.
        OSError: The disk refuses.
    """
    return write_files((Paper(PLAN, result.document.encode()), *all_papers(result.plan)), folder)


def write_judgement(judgement: JobJudgement, folder: Path) -> tuple[Path, ...]:
    """Write a judgement's sheets into a folder, on both paper sizes; files that stand there stay.

    Args:
        judgement: What was judged of a job.
        folder: Made where it is not there.

    Returns:
        The files written.

    Raises:
        OSError: The disk refuses.
    """
    folder.mkdir(parents=True, exist_ok=True)
    files = []
    for paper in PAGE_SIZES:
        pages = judgement_pack(
            paper,
            job=judgement.job,
            date=judgement.date,
            practice=judgement.practice.upper(),
            structures=judgement.structures,
            findings=judgement.findings,
            workings=judgement.workings,
            cautions=judgement.cautions,
        )
        file = folder / f"judgement-{paper}.pdf"
        file.write_bytes(pages)
        files.append(file)
    return tuple(files)


def write_files(papers: Sequence[Paper], folder: Path) -> tuple[Path, ...]:
    """Write files into a folder; until all of them are on the disk, nothing that stands there is touched.

    Files that we wrote there before, that nobody has changed since and that are not written again are removed.
    All others are kept.

    Args:
        papers: Names within the folder, each once, with their content.
        folder: Made where it is not there.

    Returns:
        The files written, in the order given.

    Raises:
        InputValueError: A name that we need is taken by a file or a folder.
        OSError: The disk refuses.
    """
    targets = tuple(folder / paper.name for paper in papers)
    _check_room(folder, targets)
    folder.mkdir(parents=True, exist_ok=True)
    before = _recorded(folder)
    now = {paper.name: hashlib.sha256(paper.content).hexdigest() for paper in papers}
    record = json.dumps({"files": now}, indent=1, ensure_ascii=False) + "\n"
    # Inside the folder, so that a move never crosses from one disk to another.
    with tempfile.TemporaryDirectory(dir=folder, prefix=".plan-") as made_in:
        made = [Path(made_in, str(number)) for number in range(len(papers) + 1)]
        for file, content in zip(made, [*(paper.content for paper in papers), record.encode()], strict=True):
            file.write_bytes(content)
        for file, target in zip(made, (*targets, folder / RECORD), strict=True):
            target.parent.mkdir(parents=True, exist_ok=True)
            os.replace(file, target)
    _remove_stale(folder, before, now)
    return targets


def _check_room(folder: Path, targets: Sequence[Path]) -> None:
    for target in (*targets, folder / RECORD):
        if target.is_dir():
            raise InputValueError(f"{target} is a folder, and a file of that name is to be written; move it away")
        for parent in target.relative_to(folder).parents:
            place = folder / parent
            if place.exists() and not place.is_dir():
                raise InputValueError(f"{place} is a file; name a folder to write into, or move that file away")


def _recorded(folder: Path) -> dict[str, str]:
    """Names and digests of what we wrote before; nothing where the record is missing or spoiled."""
    try:
        files = json.loads((folder / RECORD).read_text(encoding="utf-8"))["files"]
        return {name: str(digest) for name, digest in files.items() if _is_inside(name)}
    except (FileNotFoundError, ValueError, LookupError, TypeError, AttributeError):
        return {}


def _is_inside(name: str) -> bool:
    # Read the way that knows both kinds of slash and drive letters, so that it holds on every system.
    path = PureWindowsPath(name)
    return not path.anchor and ".." not in path.parts


def _remove_stale(folder: Path, before: dict[str, str], now: dict[str, str]) -> None:
    # Where a disk takes `Hall` and `hall` for one name, the old one is the new one.
    written = {name.casefold() for name in now}
    for name, digest in before.items():
        file = folder / name
        if name.casefold() in written or not file.is_file():
            continue
        if hashlib.sha256(file.read_bytes()).hexdigest() != digest:
            continue
        file.unlink()
        _remove_empty(folder, file.parent)


def _remove_empty(folder: Path, place: Path) -> None:
    while place != folder and not any(place.iterdir()):
        place.rmdir()
        place = place.parent

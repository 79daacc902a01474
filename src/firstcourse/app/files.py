"""Where documents come from and where papers go: the port, and the disk behind it."""

import os
import shutil
import tempfile
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

from firstcourse.app.folder_swap import folder_set
from firstcourse.errors import InputValueError
from firstcourse.files import read_file, utf8_text
from firstcourse.job import job_file_text

if TYPE_CHECKING:
    from firstcourse.papers.papers import Paper

LARGEST_PLAN_BYTES = 300_000_000
"""Some 500 rooms; reading takes several times as much memory."""
PLAN = "plan.json"
PRICE = "price.json"
COMPARISON = "compare.json"


class Files(Protocol):
    """What a session asks of the place where jobs and plans are kept."""

    def read_job(self, path: Path) -> str:
        """The text of a job document.

        Raises:
            JobError: It cannot be read.
        """
        ...

    def read_plan(self, path: Path) -> str:
        """The text of a plan.json.

        Raises:
            InputValueError: It cannot be read.
        """
        ...

    def read_beside(self, path: Path, name: str) -> str | None:
        """The text of a document in the folder of a plan, such as its price.json; None where there is none.

        Raises:
            InputValueError: It cannot be read.
        """
        ...

    def write_new(self, path: Path, text: str) -> None:
        """Write a document that is not there yet.

        Raises:
            InputValueError: Something is there already, or nothing may be written there.
        """
        ...

    def write_over(self, path: Path, text: str) -> None:
        """Write a document over what stands there, wholly or not at all.

        Raises:
            OSError: It cannot be written.
        """
        ...

    def check_folder(self, folder: Path) -> None:
        """Refuse a place to write into before long work is done for it.

        Raises:
            InputValueError: It is a file, lies below one, or may not be written.
        """
        ...

    def write_folder(self, papers: Iterable["Paper"], folder: Path, *, record: bool) -> tuple[Path, ...]:
        """Write files into a folder, all or none, as `write_files` does."""
        ...


class Disk:
    """The files of this machine."""

    def read_job(self, path: Path) -> str:
        """The text of a job document, see `Files`."""
        return job_file_text(path)

    def read_plan(self, path: Path) -> str:
        """The text of a plan.json, or of the one in a folder, see `Files`."""
        file = plan_place(path)
        try:
            return utf8_text(read_file(file, most_bytes=LARGEST_PLAN_BYTES, what="a plan"))
        except InputValueError as error:
            raise InputValueError(f"{file}: {error}") from None

    def read_beside(self, path: Path, name: str) -> str | None:
        """The text of a document beside a plan, see `Files`."""
        file = path / name
        if not path.is_dir() or not os.path.lexists(file):
            return None
        try:
            return utf8_text(read_file(file, most_bytes=LARGEST_PLAN_BYTES, what="a price"))
        except InputValueError as error:
            raise InputValueError(f"{file}: {error}") from None

    def write_new(self, path: Path, text: str) -> None:
        """Write a document that is not there yet, see `Files`."""
        if os.path.lexists(path):
            raise InputValueError(f"{path} is there already; name another file, or move that one away")
        self.check_folder(path.parent)
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("x", encoding="utf-8") as file:  # never over a file that came in the meantime
            file.write(text)

    def write_over(self, path: Path, text: str) -> None:
        """Write a document over what stands there, see `Files`."""
        file, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
        try:
            with os.fdopen(file, "w", encoding="utf-8", newline="") as written:
                written.write(text)
            if path.exists():
                shutil.copymode(path, name)
            os.replace(name, path)
        except BaseException:
            os.unlink(name)
            raise

    def check_folder(self, folder: Path) -> None:
        """Refuse a place to write into, see `Files`."""
        there = next((place for place in (folder, *folder.absolute().parents) if place.exists()), None)
        if there is not None and not there.is_dir():
            raise InputValueError(f"{there} is a file; name a folder to write into, or move that file away")
        if there is not None and not os.access(there, os.W_OK | os.X_OK):
            raise InputValueError(f"{there} may not be written by you; name another folder")

    def write_folder(self, papers: Iterable["Paper"], folder: Path, *, record: bool) -> tuple[Path, ...]:
        """Write files into a folder, all or none, see `write_files`."""
        return write_files(papers, folder, record=record)


def plan_place(path: Path) -> Path:
    """The file of a plan that is named by itself or by its folder."""
    return path / PLAN if path.is_dir() else path


def write_files(papers: Iterable["Paper"], folder: Path, *, record: bool = True) -> tuple[Path, ...]:
    """Write files into a folder; until all of them are on the disk, nothing that stands there is touched.

    Each is written as it comes, so that no two need to be in memory at a time.

    Args:
        papers: Names within the folder, each once, with their content.
        folder: Made where it is not there.
        record: Whether these are all we keep there: files that we wrote there before, that nobody has changed
            since and that are not written again are then removed. Otherwise all files that stand there stay.

    Returns:
        The files written, in the order given.

    Raises:
        InputValueError: A name that we need is taken by a file or a folder.
        OSError: The disk refuses.
    """
    with folder_set(folder, record=record) as files:
        for paper in papers:
            files.add(paper.name, paper.content)
    return tuple(folder / name for name in files.names)

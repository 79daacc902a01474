"""Put a set of files into a folder at once: they are made beside it, then the two folders trade names.

Where the system can exchange two names in one step (Linux), a run that is killed at any moment leaves the folder
as it was or as it is to be. The files of others in the folder go along as hard links. Where that cannot be done
(the folder is the working folder of this run or a mount point, its parent may not be written, names cannot be
exchanged or linked there), the files are made inside the folder and moved in one by one.

What a killed run leaves behind lies in a folder whose name begins with `.NAME.made-`; the next run takes it away.
"""

import ctypes
import errno
import hashlib
import json
import os
import secrets
import shutil
import signal
import stat
import sys
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager, suppress
from pathlib import Path, PurePosixPath, PureWindowsPath

from firstcourse.errors import InputValueError

RECORD = ".firstcourse.json"
"""Lists the files we wrote with their SHA-256, so that the next plan knows them from everybody else's."""
MARKER = ".firstcourse-made"
"""Stands in a folder in the making: what is in it is ours or a second name of a file that is safe elsewhere."""
MOST_FILES_OF_OTHERS = 2_000
"""A folder that holds more than these is not swapped: giving each a second name would take too long."""
_AT_WORKING_FOLDER, _EXCHANGE = -100, 2
_NOT_HERE = {errno.ENOSYS, errno.EINVAL, errno.EOPNOTSUPP, errno.EPERM, errno.EACCES, errno.EBUSY, errno.EXDEV}
"""What a system answers that cannot exchange names, or not of these two."""


class FolderSet:
    """Files to be put into a folder together.

    Attributes:
        folder: Where they go.
        names: Those added, in order, each relative to the folder, with the SHA-256 of its content.
    """

    def __init__(self, folder: Path, made_in: Path) -> None:
        self.folder = folder
        self.names: dict[str, str] = {}
        self._made_in = made_in

    def add(self, name: str, content: bytes) -> None:
        """Write one file.

        Args:
            name: Relative to the folder, parted by `/`, not added before.
            content: The whole file.

        Raises:
            InputValueError: A folder has that name, or a file has the name of a folder on the way to it.
            OSError: The disk refuses; the error names the file as it would stand in the folder.
        """
        _check_place(self.folder, name)
        file = self._made_in / name
        try:
            file.parent.mkdir(parents=True, exist_ok=True)
            with file.open("xb") as opened:
                opened.write(content)
                opened.flush()
                os.fsync(opened.fileno())
        except OSError as error:
            raise OSError(error.errno, error.strerror, str(self.folder / name)) from None
        self.names[name] = hashlib.sha256(content).hexdigest()


@contextmanager
def folder_set(folder: Path, *, record: bool) -> Iterator[FolderSet]:
    """Gather files and put them into a folder together when the block ends without an error.

    Args:
        folder: Made where it is not there.
        record: Whether these files are all we keep there: those that we wrote there before, that nobody changed
            since and that are not added again are taken away. Otherwise all that stands there stays.

    Raises:
        InputValueError: A name that we need is taken by a file or a folder.
        OSError: The disk refuses.
    """
    folder = folder.resolve()
    _check_place(folder, RECORD)
    clear_leftovers(folder)
    beside = _may_swap(folder)
    stood = next(place for place in (folder, *folder.parents) if place.exists())
    made_in = (folder.parent if beside else folder) / f".{folder.name}.made-{secrets.token_hex(4)}"
    made_in.mkdir(parents=True)
    held = _hold(made_in)
    try:
        (made_in / MARKER).touch()
        files = FolderSet(folder, made_in)
        yield files
        stale: frozenset[str] = frozenset()
        ours = [*files.names]
        if record:
            stale = _stale(folder, files.names)
            text = json.dumps({"files": files.names}, indent=1, ensure_ascii=False) + "\n"
            (made_in / RECORD).write_text(text, encoding="utf-8")
            ours.append(RECORD)
        with _no_interrupts():
            if not (beside and _swap(folder, made_in, ours, stale)):
                _move_in(folder, made_in, ours, stale)
    finally:
        _release(held)
        if (made_in / MARKER).exists():
            shutil.rmtree(made_in, ignore_errors=True)
            with suppress(OSError):
                _remove_empty(stood, made_in.parent)


def _check_place(folder: Path, name: str) -> None:
    target = folder / name
    if target.is_dir():
        raise InputValueError(f"{target} is a folder, and a file of that name is to be written; move it away")
    for parent in PurePosixPath(name).parents:
        place = folder / parent
        if place.is_symlink() and place != folder:
            raise InputValueError(f"{place} is a link; files are to be written there, so move it away")
        if place.exists() and not place.is_dir():
            raise InputValueError(f"{place} is a file; name a folder to write into, or move that file away")


def _may_swap(folder: Path) -> bool:
    parent = next(place for place in folder.parents if place.exists())
    if folder.parent == folder or not os.access(parent, os.W_OK | os.X_OK):
        return False
    with suppress(OSError):
        return not (Path.cwd().is_relative_to(folder) or os.path.ismount(folder))
    return False


def _swap(folder: Path, made_in: Path, ours: Sequence[str], stale: frozenset[str]) -> bool:
    """Give the new folder the old one's name in one step; says no, with nothing touched, where that cannot be."""
    if folder.exists():
        if not _link_others(folder, made_in, {name.casefold() for name in (*ours, *stale)}):
            return False
        shutil.copymode(folder, made_in)
    (made_in / MARKER).unlink()
    try:
        if not folder.exists():
            made_in.rename(folder)
            return True
        if _exchange(folder, made_in):
            _remove_ours(made_in, folder)
            return True
    except OSError:
        (made_in / MARKER).touch()
        raise
    (made_in / MARKER).touch()
    return False


def _link_others(folder: Path, made_in: Path, ours: set[str]) -> bool:
    """Give each file of others a second name in the new folder; says no where one cannot have it."""
    count = 0
    for place, folders, files in os.walk(folder):
        here = Path(place)
        links = [name for name in folders if (here / name).is_symlink()]
        for entry in (*files, *links):
            name = (here / entry).relative_to(folder).as_posix()
            if name.casefold() in ours and entry not in links:
                continue
            count += 1
            mode = (here / entry).lstat().st_mode
            if count > MOST_FILES_OF_OTHERS or not (stat.S_ISREG(mode) or stat.S_ISLNK(mode)):
                return False
            target = made_in / name
            target.parent.mkdir(parents=True, exist_ok=True)
            try:
                os.link(here / entry, target, follow_symlinks=False)
            except OSError:
                return False
        for entry in folders:
            if entry not in links and not any((here / entry).iterdir()):
                (made_in / (here / entry).relative_to(folder)).mkdir(parents=True, exist_ok=True)
    return True


def _exchange(one: Path, other: Path) -> bool:
    """Exchange the names of two folders in one step; says no where the system cannot."""
    if not sys.platform.startswith("linux"):
        return False
    try:
        exchange = ctypes.CDLL(None, use_errno=True).renameat2
    except (OSError, AttributeError):
        return False
    done: int = exchange(
        _AT_WORKING_FOLDER, os.fsencode(one), _AT_WORKING_FOLDER, os.fsencode(other), ctypes.c_uint(_EXCHANGE)
    )
    if done == 0:
        return True
    number = ctypes.get_errno()
    if number in (
        errno.ENOSYS,
        errno.EINVAL,
        errno.EOPNOTSUPP,
        errno.EPERM,
        errno.EACCES,
        errno.EBUSY,
        errno.EXDEV,
    ):
        return False
    raise OSError(number, os.strerror(number), str(one))


def _move_in(folder: Path, made_in: Path, ours: Sequence[str], stale: frozenset[str]) -> None:
    for name in ours:
        target = folder / name
        target.parent.mkdir(parents=True, exist_ok=True)
        os.replace(made_in / name, target)
    for name in stale:
        (folder / name).unlink(missing_ok=True)
        _remove_empty(folder, (folder / name).parent)


def _recorded(folder: Path) -> dict[str, str]:
    """Names and digests of what we wrote before; nothing where the record is missing or spoiled."""
    record = folder / RECORD
    try:
        if record.is_symlink():
            return {}
        files = json.loads(record.read_text(encoding="utf-8"))["files"]
        return {name: str(digest) for name, digest in files.items() if _is_inside(name)}
    except (OSError, ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return {}


def _is_inside(name: str) -> bool:
    # Read the way that knows both kinds of slash and drive letters, so that it holds on every system.
    path = PureWindowsPath(name)
    return not path.anchor and ".." not in path.parts


def _vouched(folder: Path, name: str, digest: str) -> bool:
    """Whether a file is what the record says we wrote: a file itself, reached through no link, unchanged."""
    file = folder / name
    on_the_way = [file, *(folder / parent for parent in PurePosixPath(name).parents)]
    try:
        if any(place.is_symlink() for place in on_the_way if place != folder) or not file.is_file():
            return False
        return hashlib.sha256(file.read_bytes()).hexdigest() == digest
    except (OSError, ValueError):
        return False


def _stale(folder: Path, after: Mapping[str, str]) -> frozenset[str]:
    # Where a disk takes `Hall` and `hall` for one name, the old one is the new one.
    written = {name.casefold() for name in after}
    return frozenset(
        name
        for name, digest in _recorded(folder).items()
        if name.casefold() not in written and _vouched(folder, name, digest)
    )


def _remove_empty(folder: Path, place: Path) -> None:
    while place != folder and not any(place.iterdir()):
        place.rmdir()
        place = place.parent


def clear_leftovers(folder: Path) -> None:
    """Take away what killed runs left beside the folder or in it, unless a run that lives still works on it.

    Args:
        folder: That they were to write into.
    """
    folder = folder.resolve()
    for parent in (folder.parent, folder):
        with suppress(OSError):
            for left in sorted(parent.glob(f".{_escaped(folder.name)}.made-{'[0-9a-f]' * 8}")):
                if left.is_symlink() or not left.is_dir():
                    continue
                held = _hold(left)
                try:
                    if held is None:
                        continue
                    if (left / MARKER).is_file() and not (left / MARKER).stat().st_size:
                        shutil.rmtree(left, ignore_errors=True)
                    else:
                        _remove_ours(left, folder)
                finally:
                    _release(held)


def _escaped(name: str) -> str:
    return "".join(f"[{sign}]" if sign in "*?[" else sign for sign in name)


def _remove_ours(old: Path, folder: Path) -> None:
    """Take away a folder that has traded names, file by file: ours by its record, others' if safe in the folder.

    What came into it meanwhile is carried over where its name is free, and stays otherwise.
    """
    recorded = _recorded(old)
    for place, folders, files in os.walk(old, topdown=False):
        here = Path(place)
        for entry in (*files, *(name for name in folders if (here / name).is_symlink())):
            file = here / entry
            name = file.relative_to(old).as_posix()
            new = folder / name
            with suppress(OSError):
                safe = os.path.lexists(new) and os.path.samestat(file.lstat(), new.lstat())
                replaced = os.path.lexists(new) and name in _recorded(folder)
                if safe or replaced or name == RECORD or _vouched(old, name, recorded.get(name, "")):
                    file.unlink()
                elif not os.path.lexists(new):
                    new.parent.mkdir(parents=True, exist_ok=True)
                    file.rename(new)
        with suppress(OSError):
            here.rmdir()


def _hold(folder: Path) -> int | None:
    """Lock a folder for as long as this run lives; nothing where another run holds it."""
    try:
        import fcntl
    except ImportError:  # no such locks here: a folder in the making is then known by its name alone
        return -1
    opened = os.open(folder, os.O_RDONLY)
    try:
        fcntl.flock(opened, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        os.close(opened)
        return None
    return opened


def _release(held: int | None) -> None:
    if held is not None and held >= 0:
        os.close(held)


@contextmanager
def _no_interrupts() -> Iterator[None]:
    """Let an interrupt wait until the files stand, so that what is said of them is true."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT, signal.SIGTERM})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)

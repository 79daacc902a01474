"""Run a command in a process of its own that can be ended at once, whatever compiled code it is in.

Searches, page making and linear algebra run for seconds in compiled code that hears no interrupt. So the work is
done by a copy of this process; this one waits for it, and on Ctrl-C ends it and takes away what it had begun to
write.
"""

import os
import signal
import sys
from collections.abc import Callable, Sequence
from contextlib import suppress
from pathlib import Path

_WATCHED = frozenset({"plan", "demo", "judge", "explain"})
_STOPS = {signal.SIGINT, signal.SIGTERM, *({signal.SIGHUP} if hasattr(signal, "SIGHUP") else ())}
_DEMO_FOLDER = "out/demo"


def watched(work: Callable[[Sequence[str]], int], arguments: Sequence[str]) -> int:
    """Do a command's work in a process of its own where it may take long, else here.

    Args:
        work: Takes the words after the program's name and gives the exit code.
        arguments: These words.

    Returns:
        The exit code.
    """
    if not arguments or arguments[0] not in _WATCHED or not hasattr(os, "fork"):
        return work(arguments)
    folder = _out_folder(arguments)
    before = _stamp(folder)
    # None may be lost between the start of the work and the moment this process listens.
    mask = signal.pthread_sigmask(signal.SIG_BLOCK, _STOPS)
    parent = os.getpid()
    child = os.fork()
    if not child:
        # The terminal sends an interrupt to both; this one is ended by the other, and not while files are swapped.
        signal.pthread_sigmask(signal.SIG_SETMASK, {*mask, signal.SIGINT})
        from firstcourse.app import end_with

        end_with(parent)
        os._exit(_worked(work, arguments))
    stopped: list[int] = []

    def stop(number: int, _frame: object) -> None:
        stopped.append(number)
        with suppress(ProcessLookupError):
            os.kill(child, signal.SIGTERM)

    handlers = [(number, signal.signal(number, stop)) for number in _STOPS]
    signal.pthread_sigmask(signal.SIG_SETMASK, mask)
    # Loaded while the other works, so that nothing is left to load when it is to be stopped.
    from firstcourse.app import clear_leftovers

    try:
        _, status = os.waitpid(child, 0)
    finally:
        for number, handler in handlers:
            signal.signal(number, handler)
    if os.WIFEXITED(status):
        return os.WEXITSTATUS(status)
    if folder is not None:
        clear_leftovers(folder)
    written = "everything was written before" if _stamp(folder) != before else "nothing was written"
    if stopped:
        return _say(f"stopped; {written}", 2)
    number = os.WTERMSIG(status)
    return _say(f"Firstcourse was ended from outside (signal {number}), perhaps for want of memory; {written}", 3)


def _worked(work: Callable[[Sequence[str]], int], arguments: Sequence[str]) -> int:
    code = 3
    try:
        code = work(arguments)
    finally:
        for stream in (sys.stdout, sys.stderr):
            with suppress(OSError, ValueError, AttributeError):
                stream.flush()
    return code


def _out_folder(arguments: Sequence[str]) -> Path | None:
    """The folder that a command writes into, as far as its words say."""
    for number, word in enumerate(arguments):
        if word == "--out" and number + 1 < len(arguments):
            return Path(arguments[number + 1])
        if word.startswith("--out="):
            return Path(word.removeprefix("--out="))
    if arguments[0] == "demo":
        return Path(next((word for word in arguments[1:] if not word.startswith("-")), _DEMO_FOLDER))
    return None


def _stamp(folder: Path | None) -> tuple[int, int] | None:
    """What changes when files are put into a folder."""
    with suppress(OSError, ValueError):
        if folder is not None:
            status = folder.stat()
            return status.st_ino, status.st_mtime_ns
    return None


def _say(text: str, code: int) -> int:
    with suppress(OSError):
        print(text, file=sys.stderr)
    return code

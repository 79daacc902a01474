"""Independent tasks shared out to processes; what comes of them does not depend on how many there are."""

import os
import signal
import sys
import threading
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from types import FrameType
from typing import Any

_given: tuple[Any, ...] = ()
"""In a process of its own: what all tasks share."""


ROOMS_TO_SHARE, ROOMS_TO_SHARE_LOADING = 3, 16
"""Fewer rooms take one process less time than it takes to start several: at once, or each loading all anew."""


@dataclass(frozen=True, slots=True)
class Processes:
    """Shares tasks out to processes where there are enough of them; a way to `Share` the rooms of a plan.

    Attributes:
        workers: Processes at most; as many as there are processors where not given.
        least: Tasks that are worth starting processes for.
    """

    workers: int | None = None
    least: int = ROOMS_TO_SHARE if sys.platform == "linux" else ROOMS_TO_SHARE_LOADING

    def __call__[Task, Found](
        self,
        function: Callable[..., Found],
        tasks: Sequence[Task],
        *given: object,
        ready: Callable[[], object] | None = None,
    ) -> list[Found]:
        """What `function(task, *given)` returns for each task, in their order; see `shared_out`."""
        workers = (self.workers or cores()) if len(tasks) >= self.least else 1
        if ready is not None and min(workers, len(tasks)) > 1:
            ready()
        return shared_out(function, tasks, *given, workers=workers)


def shared_out[Task, Found](
    function: Callable[..., Found], tasks: Sequence[Task], *given: object, workers: int
) -> list[Found]:
    """What `function(task, *given)` returns for each task, in their order.

    Where a process cannot be started, is ended from outside or meets an error, the tasks are done one after the
    other instead, so that an error is the same as without processes. An interrupt ends them at once.

    Args:
        function: Of a module, so that another process finds it; given the same it must return the same.
        tasks: Small, as each is sent to a process.
        given: What all tasks share; sent once to each process.
        workers: Processes at most; with 1 there is none but this.

    Raises:
        Exception: Whatever the first task that fails raises.
    """
    if min(workers, len(tasks)) > 1:
        try:
            return _in_processes(function, tasks, given, min(workers, len(tasks)))
        except Exception:  # whatever it was, it is met again below or gone
            pass
    return [function(task, *given) for task in tasks]


def cores() -> int:
    """Processors that this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def end_with(parent: int) -> None:
    """Let the system end this process when the one that started it ends, where the system can (Linux).

    Args:
        parent: Id of the process that started this one.
    """
    if not sys.platform.startswith("linux"):
        return
    import ctypes

    ask_signal = 1  # PR_SET_PDEATHSIG
    with suppress(OSError, AttributeError):
        ctypes.CDLL(None).prctl(ask_signal, int(signal.SIGTERM))
    if os.getppid() != parent:
        os._exit(1)


def starts_at_once() -> bool:
    """Whether a process begins as a copy of this one, with all that is loaded; elsewhere it loads for seconds."""
    return sys.platform == "linux"


def _in_processes[Task, Found](
    function: Callable[..., Found], tasks: Sequence[Task], given: tuple[object, ...], workers: int
) -> list[Found]:
    # What is needed for this alone is loaded here: most plans have one room.
    import multiprocessing
    from concurrent.futures import ProcessPoolExecutor

    context = multiprocessing.get_context("fork" if starts_at_once() else None)
    before = set(multiprocessing.active_children())
    with _noticed_interrupts() as interrupts:
        pool = ProcessPoolExecutor(workers, context, _begin, given)
        try:
            found = list(pool.map(_Task(function), tasks))
        except BaseException as error:
            pool.shutdown(wait=False, cancel_futures=True)
            for process in set(multiprocessing.active_children()) - before:
                process.terminate()
            if interrupts:
                raise KeyboardInterrupt from error
            raise
        pool.shutdown()
        if interrupts:
            raise KeyboardInterrupt
    return found


@contextmanager
def _noticed_interrupts() -> Iterator[list[int]]:
    """Every interrupt raised meanwhile: while a process begins, Python passes over it and the work would go on."""
    noticed: list[int] = []
    before = signal.getsignal(signal.SIGINT)
    if not callable(before) or threading.current_thread() is not threading.main_thread():
        yield noticed
        return

    def notice(number: int, frame: FrameType | None) -> None:
        try:
            before(number, frame)
        except KeyboardInterrupt:
            noticed.append(number)
            raise

    signal.signal(signal.SIGINT, notice)
    try:
        yield noticed
    finally:
        signal.signal(signal.SIGINT, before)


class _Task[Found]:
    """A function that takes what all tasks share from the process it is called in."""

    def __init__(self, function: Callable[..., Found]) -> None:
        self.function = function

    def __call__(self, task: object) -> Found:
        return self.function(task, *_given)


def _begin(*given: object) -> None:
    global _given
    _given = given
    # Only the process that shares out says that it was stopped; and none outlives it.
    if signal.getsignal(signal.SIGINT) is not signal.SIG_IGN:
        signal.signal(signal.SIGINT, lambda *_: os._exit(1))
    end_with(os.getppid())
    threading.Thread(target=_end_with_parent, daemon=True).start()


def _end_with_parent() -> None:
    from multiprocessing import parent_process

    parent = parent_process()
    assert parent is not None
    parent.join()
    os._exit(1)

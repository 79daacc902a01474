"""Plans one surface at a time lightly, in a process that stays warm; of a job only the newest request counts."""

import multiprocessing
import os
import signal
import threading
from collections import OrderedDict
from contextlib import suppress
from dataclasses import dataclass
from multiprocessing.connection import Connection
from typing import TYPE_CHECKING, Any

from firstcourse.app.one_surface import LightTask, OneSurface, planned_lightly
from firstcourse.app.store import Memory

if TYPE_CHECKING:
    from multiprocessing.context import SpawnProcess

_LONGEST_S = 60.0
"""A surface that takes longer is no light work; its process is ended."""
_MOST_JOBS = 16
"""Jobs whose steps stay in memory."""
_KEPT_A_JOB = 400


@dataclass(frozen=True, slots=True, kw_only=True)
class Lightly:
    """What came of a request.

    Attributes:
        made: The surface; None where the job boards no such surface, or something went wrong.
        fault: What is wrong with the document, in words.
        passed: A newer request for the same job came before this one was begun.
    """

    made: OneSurface | None = None
    fault: str = ""
    passed: bool = False


class LightDesk:
    """One process that is started with the first request."""

    def __init__(self) -> None:
        """Open the desk."""
        self._lock = threading.Lock()
        self._newest: dict[str, object] = {}
        self._process: SpawnProcess | None = None
        self._pipe: Connection[Any, Any] | None = None

    def ask(self, job: str, task: LightTask) -> Lightly:
        """Plan a surface; waits until it is planned."""
        own = self._newest[job] = object()
        with self._lock:
            if self._newest.get(job) is not own:
                return Lightly(passed=True)
            try:
                pipe = self._begin()
                pipe.send((job, task))
                if not pipe.poll(_LONGEST_S):
                    self._end()
                    return Lightly()
                answer: Lightly = pipe.recv()
                return answer
            except (EOFError, OSError):
                # Ended from outside, perhaps for want of memory: the next request starts another.
                self._end()
                return Lightly()
            finally:
                if self._newest.get(job) is own:
                    del self._newest[job]

    def soon(self, job: str, task: LightTask, *, wait_s: float) -> Lightly:
        """Plan a surface, and wait no longer than a page may: the process may still have to be started.

        Args:
            job: The job.
            task: The surface.
            wait_s: How long at most [s]; what is planned after that makes the next plan quick.
        """
        if job in self._newest:
            return Lightly(passed=True)
        came: list[Lightly] = []
        thread = threading.Thread(target=lambda: came.append(self.ask(job, task)), daemon=True)
        thread.start()
        thread.join(wait_s)
        return came[0] if came else Lightly()

    def close(self) -> None:
        """End the process."""
        with self._lock:
            self._end()

    def _begin(self) -> "Connection[Any, Any]":
        if self._process is not None and self._pipe is not None and self._process.is_alive():
            return self._pipe
        self._end()
        context = multiprocessing.get_context("spawn")
        self._pipe, theirs = context.Pipe()
        self._process = context.Process(target=work_lightly, args=(theirs,), daemon=True)
        self._process.start()
        theirs.close()
        return self._pipe

    def _end(self) -> None:
        if self._process is not None:
            self._process.kill()
            self._process.join()
            self._process.close()
        if self._pipe is not None:
            with suppress(OSError):
                self._pipe.close()
        self._process = self._pipe = None


def work_lightly(pipe: "Connection[Any, Any]") -> None:
    """Do one task after the other until nobody sends any more; steps are kept job by job."""
    from multiprocessing import parent_process

    from firstcourse.app.processes import end_with
    from firstcourse.errors import FirstcourseError

    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    parent = parent_process()
    if parent is not None and parent.pid is not None:
        end_with(parent.pid)
    memories: OrderedDict[str, Memory] = OrderedDict()
    while True:
        try:
            job, task = pipe.recv()
        except EOFError:
            return
        memory = memories.setdefault(job, Memory(_KEPT_A_JOB))
        memories.move_to_end(job)
        while len(memories) > _MOST_JOBS:
            memories.popitem(last=False)
        try:
            answer = Lightly(made=planned_lightly(task, memory))
        except FirstcourseError as error:
            answer = Lightly(fault=str(error))
        except Exception:  # what goes wrong in light planning is told by the plan that follows
            answer = Lightly()
        pipe.send(answer)

"""The planning desk: plans jobs in processes of their own, so that whoever asks is answered meanwhile.

Of one job only the newest request is planned; one that is being planned for it is stopped.
"""

import multiprocessing
import threading
from collections import OrderedDict
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field, replace
from enum import StrEnum
from multiprocessing.connection import Connection
from time import monotonic
from typing import TYPE_CHECKING, Any

from firstcourse.app.desk_worker import Failed, Made, Paper, Step, Task, work

if TYPE_CHECKING:
    from multiprocessing.context import SpawnProcess

_LOOK_EVERY_S = 0.1
"""How often a worker's thread looks whether its work is to be stopped."""
_MOST_REMEMBERED = 500


class State(StrEnum):
    """How far a request is."""

    WAITING = "waiting"
    PLANNING = "planning"
    PAPERS = "papers"
    DONE = "done"
    FAILED = "failed"
    STOPPED = "stopped"

    @property
    def over(self) -> bool:
        """Nothing more comes of it."""
        return self in (State.DONE, State.FAILED, State.STOPPED)


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """How a job's newest request stands.

    Attributes:
        revision: The revision that is planned.
        steps: Those begun, in order, by name.
        fault: What went wrong, in words; empty while nothing has.
        ours: That the fault is ours, not the document's.
        began: When it was asked for, in seconds of a clock that only runs forward.
    """

    job: str
    revision: int
    state: State
    steps: tuple[str, ...] = ()
    fault: str = ""
    ours: bool = False
    began: float = field(default_factory=monotonic)


class Shelf:
    """Where a desk puts what it made; each method is called in a thread of the desk."""

    def planned(self, job: str, revision: int, made: Made) -> None:
        """A plan is made and verified."""
        raise NotImplementedError

    def printed(self, job: str, revision: int, paper: Paper) -> None:
        """One of its papers is made."""
        raise NotImplementedError


class Desk:
    """Plans what is asked for, a few jobs at a time."""

    def __init__(self, shelf: Shelf, *, workers: int = 1) -> None:
        """Open the desk; its processes start with the first request.

        Args:
            shelf: Where plans and papers go.
            workers: Processes that plan.
        """
        self._shelf = shelf
        self._changed = threading.Condition()
        self._waiting: OrderedDict[str, tuple[int, Task]] = OrderedDict()
        self._standings: OrderedDict[str, Standing] = OrderedDict()
        self._stops: dict[str, threading.Event] = {}
        self._closed = False
        self._threads = [threading.Thread(target=self._serve, daemon=True) for _ in range(workers)]
        self._started = False

    def ask(self, job: str, revision: int, task: Task) -> None:
        """Ask for a plan of a revision; an earlier request for the same job is dropped or stopped."""
        with self._changed:
            if not self._started:
                self._started = True
                for thread in self._threads:
                    thread.start()
            if job in self._stops:
                self._stops[job].set()
            self._waiting[job] = (revision, task)
            self._note(Standing(job=job, revision=revision, state=State.WAITING))
            self._changed.notify_all()

    def stop(self, job: str) -> None:
        """Stop what is planned for a job, and drop what waits."""
        with self._changed:
            if self._waiting.pop(job, None) is not None:
                self._note(replace(self._standings[job], state=State.STOPPED))
            if job in self._stops:
                self._stops[job].set()

    def standing(self, job: str) -> Standing | None:
        """How the newest request for a job stands; None where there was none since the desk was opened."""
        with self._changed:
            return self._standings.get(job)

    def close(self) -> None:
        """Stop everything."""
        with self._changed:
            self._closed = True
            self._waiting.clear()
            for stop in self._stops.values():
                stop.set()
            self._changed.notify_all()
        for thread in self._threads:
            if thread.is_alive():
                thread.join()

    def _note(self, standing: Standing) -> None:
        self._standings[standing.job] = standing
        self._standings.move_to_end(standing.job)
        while len(self._standings) > _MOST_REMEMBERED:
            self._standings.popitem(last=False)

    def _serve(self) -> None:
        worker = _Worker()
        while True:
            with self._changed:
                # What is still being stopped for a job is waited for: two of one job never run at a time.
                while not self._closed and not (free := [job for job in self._waiting if job not in self._stops]):
                    self._changed.wait()
                if self._closed:
                    break
                revision, task = self._waiting.pop(free[0])
                stop = self._stops[free[0]] = threading.Event()
            self._plan(worker, free[0], revision, task, stop)
        worker.end()

    def _plan(self, worker: "_Worker", job: str, revision: int, task: Task, stop: threading.Event) -> None:
        standing = Standing(job=job, revision=revision, state=State.PLANNING)

        def told(message: object) -> None:
            nonlocal standing
            if isinstance(message, Step):
                standing = replace(standing, steps=(*standing.steps, message.name))
            elif isinstance(message, Made):
                self._shelf.planned(job, revision, message)
                standing = replace(standing, state=State.PAPERS)
            elif isinstance(message, Paper):
                self._shelf.printed(job, revision, message)
            elif isinstance(message, Failed):
                standing = replace(standing, state=State.FAILED, fault=message.fault, ours=message.ours)
            with self._changed:
                if job not in self._waiting:
                    self._note(standing)

        try:
            told(standing)
            ended = worker.do(task, told, stop)
            if standing.state is not State.FAILED:
                standing = replace(standing, state=State.DONE if ended else State.STOPPED)
        except Exception as error:  # whoever waits must hear of it, whatever it is
            worker.end()
            standing = replace(standing, state=State.FAILED, fault=f"{type(error).__name__}: {error}", ours=True)
        with self._changed:
            del self._stops[job]
            if job not in self._waiting:
                self._note(standing)
            self._changed.notify_all()


class _Worker:
    """A process that plans; it is started when it is needed and ended when its work is to stop."""

    def __init__(self) -> None:
        self._process: SpawnProcess | None = None
        self._pipe: Connection[Any, Any] | None = None

    def do(self, task: Task, told: Callable[[object], None], stop: threading.Event) -> bool:
        """Do a task, telling each message that comes; whether it came to its end."""
        pipe = self._begin()
        pipe.send(task)
        while True:
            if stop.is_set():
                self.end()
                return False
            if not pipe.poll(_LOOK_EVERY_S):
                continue
            try:
                message = pipe.recv()
            except EOFError:
                self.end()
                raise RuntimeError(
                    "the planning process was ended from outside, perhaps for want of memory"
                ) from None
            if message is None:
                return True
            told(message)

    def end(self) -> None:
        """End the process, whatever compiled code it is in."""
        if self._process is not None:
            self._process.kill()
            self._process.join()
            self._process.close()
        if self._pipe is not None:
            with suppress(OSError):
                self._pipe.close()
        self._process = self._pipe = None

    def _begin(self) -> "Connection[Any, Any]":
        if self._process is not None and self._pipe is not None and self._process.is_alive():
            return self._pipe
        self.end()
        # Not a copy of this process: others of its threads may hold locks at this moment.
        context = multiprocessing.get_context("spawn")
        self._pipe, theirs = context.Pipe()
        self._process = context.Process(target=work, args=(theirs,))
        self._process.start()
        theirs.close()
        return self._pipe

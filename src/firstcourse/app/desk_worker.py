"""What a process of the planning desk does: plan a document, then make its papers, and tell of each."""

import json
import os
import signal
import threading
from dataclasses import dataclass
from multiprocessing.connection import Connection
from typing import Any


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """A document to plan.

    Attributes:
        text: YAML or JSON.
        name: What it is called in messages.
        effort: How long to look for fewer sheets, 0 to 3.
    """

    text: str
    name: str
    effort: int = 1


@dataclass(frozen=True, slots=True)
class Step:
    """A step has begun: `survey`, `judgement`, `boards`, `fasteners`, `proof` or `papers`."""

    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Made:
    """A verified plan.

    Attributes:
        document: plan.json.
        beside: What is told beside it, as JSON; `app.kept.kept_plan` reads it.
    """

    effort: int
    document: str
    beside: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """One of the plan's papers."""

    name: str
    content: bytes


@dataclass(frozen=True, slots=True, kw_only=True)
class Failed:
    """No plan can be made.

    Attributes:
        ours: That the fault is ours, not the document's.
    """

    fault: str
    ours: bool


_STEPS = {
    "survey": "survey",
    "judgement": "judgement",
    "boards and cutting": "boards",
    "fasteners and quantities": "fasteners",
    "verification": "proof",
}
"""What a session calls its steps, and how they are told."""


def work(pipe: "Connection[Any, Any]") -> None:
    """Do one task after the other until nobody sends any more."""
    from multiprocessing import parent_process

    from firstcourse.app.processes import end_with

    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # whoever started us ends us
    parent = parent_process()
    if parent is not None and parent.pid is not None:
        end_with(parent.pid)
        threading.Thread(target=_end_with, args=(parent,), daemon=True).start()
    from firstcourse.app.store import Memory

    memory = Memory()
    while True:
        try:
            task = pipe.recv()
        except EOFError:
            return
        _do(task, pipe, memory)
        pipe.send(None)


def _do(task: Task, pipe: "Connection[Any, Any]", memory: Any) -> None:
    from firstcourse.app.papers import plan_papers
    from firstcourse.app.session import Session
    from firstcourse.errors import FirstcourseError, PlanRefusedError

    try:
        session = Session(task.text, name=task.name, store=memory)
        made = session.plan(effort=task.effort, on_step=lambda step: pipe.send(Step(_STEPS[step])))
        beside = json.dumps({"practice": made.practice, "changes": made.changes})
        pipe.send(Made(effort=task.effort, document=made.document, beside=beside))
        pipe.send(Step("papers"))
        for paper in plan_papers(made):
            pipe.send(Paper(name=paper.name, content=paper.content))
    except PlanRefusedError as error:
        pipe.send(Failed(fault=str(error), ours=True))
    except FirstcourseError as error:
        pipe.send(Failed(fault=str(error), ours=False))
    except Exception as error:  # a process that ends tells nobody why
        pipe.send(Failed(fault=f"{type(error).__name__}: {error}", ours=True))


def _end_with(parent: Any) -> None:
    parent.join()
    os._exit(1)

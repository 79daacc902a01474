"""Firstcourse: from a tape measure to a wet-room plan that can be built and checked.

The way in from Python: `firstcourse.open(path)` gives a `Session`, which surveys, judges, plans, explains and
writes papers; `firstcourse.prove(path)` proves a plan again from its plan.json alone. Each error raised on purpose
is a `FirstcourseError`. Lengths are whole ticks of 1/640 mm unless a name says otherwise.
"""

from typing import TYPE_CHECKING, Any

from firstcourse.version import __version__

if TYPE_CHECKING:
    from firstcourse.app.as_json import json_value as json_value
    from firstcourse.app.difference import difference as difference
    from firstcourse.app.examples import example_job as example_job
    from firstcourse.app.papers import drawing as drawing
    from firstcourse.app.proof import Proof as Proof
    from firstcourse.app.proof import prove as prove
    from firstcourse.app.session import Session as Session
    from firstcourse.app.session import open_job as open
    from firstcourse.app.summaries import summarize as summarize
    from firstcourse.errors import FirstcourseError as FirstcourseError
    from firstcourse.errors import InputValueError as InputValueError
    from firstcourse.errors import JobError as JobError
    from firstcourse.errors import PlanRefusedError as PlanRefusedError

_FROM = {
    "FirstcourseError": ("errors", "FirstcourseError"),
    "InputValueError": ("errors", "InputValueError"),
    "JobError": ("errors", "JobError"),
    "PlanRefusedError": ("errors", "PlanRefusedError"),
    "Proof": ("app.proof", "Proof"),
    "Session": ("app.session", "Session"),
    "difference": ("app.difference", "difference"),
    "drawing": ("app.papers", "drawing"),
    "example_job": ("app.examples", "example_job"),
    "json_value": ("app.as_json", "json_value"),
    "open": ("app.session", "open_job"),
    "prove": ("app.proof", "prove"),
    "summarize": ("app.summaries", "summarize"),
}
__all__ = [
    "FirstcourseError",
    "InputValueError",
    "JobError",
    "PlanRefusedError",
    "Proof",
    "Session",
    "__version__",
    "difference",
    "drawing",
    "example_job",
    "json_value",
    "open",
    "prove",
    "summarize",
]


def __getattr__(name: str) -> Any:
    # Loaded when asked for: a command that prints its help should not wait for solvers.
    if name not in _FROM:
        raise AttributeError(f"module 'firstcourse' has no attribute '{name}'")
    from importlib import import_module

    module, found = _FROM[name]
    return getattr(import_module(f"firstcourse.{module}"), found)

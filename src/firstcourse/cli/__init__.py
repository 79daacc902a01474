"""The command line: translate words into one use case, show what it gives, end with a code.

Exit codes: 0 done; 1 done, but a finding stops the work; 2 wrong input, nothing written; 3 our fault.
"""

import os
import signal
import sys
import threading
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from types import FrameType

from cyclopts import App, CycloptsError

from firstcourse import __version__
from firstcourse.cli.streams import AnswerLostError, leave_stdout, plain_streams
from firstcourse.cli.watched import watched
from firstcourse.errors import FirstcourseError, PlanRefusedError
from firstcourse.units import printable

TRY_AGAIN_S = 0.05
"""An interrupt that comes while a module loads is tried again after so many seconds."""

app = App(
    name="firstcourse",
    version=__version__,
    version_flags=["--version"],
    help_format="plaintext",
    suppress_keyboard_interrupt=False,
    help="From a tape measure to a wet-room plan that a tile setter can build and anyone can check.",
    help_epilogue=(
        "A job goes new, survey, judge, plan; `firstcourse COMMAND --help` explains each. Start with "
        "`firstcourse demo`. It ends with 0 when done, 1 when a finding stops the work, 2 when the input is wrong "
        "(nothing is written), 3 when the fault is ours."
    ),
)
_COMMANDS = {
    "demo": "Plan the first example and say where to look.",
    "new": "Write a commented job document to start from.",
    "survey": "Adjust the taped readings and say what they prove.",
    "judge": "Judge whether frame, panels and surfaces will carry tile.",
    "plan": "Plan boards, cuts and fasteners; verify; write the plan.",
    "schedule": "Say on which days a plan is built, and what moves the end.",
    "order": "Order what a plan needs in whole packs, without prices.",
    "price": "Order and price a plan by a price book; every line proved again.",
    "compare": "Plan alternatives of a job, and put them side by side.",
    "proposal": "Make a proposal to a client: scope, price, payments, drawings to approve.",
    "building": "Plan a building of many rooms phase by phase, and say what the phases cost.",
    "done": "Write into the job which boards are up, so that the next plan keeps them.",
    "handover": "Make the file that is handed over: what was proved, what has no record.",
    "explain": "Say why the plan takes so many sheets, and what other sheets or framing would bring.",
    "verify": "Prove a plan again from plan.json alone.",
    "rules": "List the rule book, or show one rule with its source.",
    "serve": "Answer a browser: jobs, plans and papers as pages.",
    "schema": "Print the JSON Schema of the job document or of the plan.",
}
for _place, (_name, _help) in enumerate(_COMMANDS.items()):
    # In the order of work, not of the alphabet.
    app.command(f"firstcourse.cli.{_name}:{_name}", name=_name, help=_help, sort_key=_place)


def main(arguments: Sequence[str] | None = None) -> None:
    """Run one command and leave with its exit code."""
    sys.exit(watched(run, sys.argv[1:] if arguments is None else arguments))


def run(arguments: Sequence[str]) -> int:
    """Run one command.

    Args:
        arguments: The words after the program's name.

    Returns:
        The exit code, see the module's docstring.
    """
    stopped: list[int] = []
    # Several threads on matrices this small take more time than one, and add up in an order of their own.
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    try:
        with _noting_interrupts(stopped), plain_streams():
            result = app(list(arguments), exit_on_error=False, print_error=False, result_action="return_value")
            return result if isinstance(result, int) else 0
    except CycloptsError as error:
        command = " ".join(("firstcourse", *(error.command_chain or ())))
        return _say(f"{error}\nSee `{command} --help`.", 2)
    except PlanRefusedError as error:
        return _say(f"Firstcourse made a plan that does not verify, so nothing was written. {error}", 3)
    except FirstcourseError as error:
        return _say(str(error), 2)
    except BrokenPipeError:
        # The reader (a pager, `head`) has left; there is nobody to tell, nor a pipe to flush into.
        leave_stdout()
        return 0
    except AnswerLostError as error:
        leave_stdout()
        return _say(f"standard output: {error.strerror}; the work is done, but its answer could not be printed", 2)
    except OSError as error:
        return _say(f"{error.filename or 'standard output'}: {error.strerror or error}", 2)
    except (KeyboardInterrupt, Exception) as error:
        # A library that is being loaded may turn the interrupt into an error of its own.
        if stopped or isinstance(error, KeyboardInterrupt):
            return _say("stopped; nothing was written", 2)
        return _say(
            f"Firstcourse failed: {type(error).__name__}: {error}. Nothing was written. "
            "This is our fault; please keep the job document, it shows how to fix it.",
            3,
        )


@contextmanager
def _noting_interrupts(stopped: list[int]) -> Iterator[None]:
    """Interrupt as usual within, but never while a module loads, and note the signal.

    Compiled modules answer an interrupt of their loading with a traceback and an error of their own.
    """

    def note(number: int, frame: FrameType | None) -> None:
        stopped.append(number)
        if hasattr(signal, "setitimer") and _is_loading(frame):
            signal.setitimer(signal.ITIMER_REAL, TRY_AGAIN_S)
        else:
            raise KeyboardInterrupt

    numbers = [signal.SIGINT, *([signal.SIGALRM] if hasattr(signal, "setitimer") else [])]
    if threading.current_thread() is not threading.main_thread():  # it alone receives signals
        numbers = []
    before = [(number, signal.signal(number, note)) for number in numbers]
    try:
        yield
    finally:
        for number, handler in before:
            signal.signal(number, handler)


def _is_loading(frame: FrameType | None) -> bool:
    while frame is not None:
        if frame.f_code.co_filename.startswith("<frozen importlib"):
            return True
        frame = frame.f_back
    return False


def _say(text: str, code: int) -> int:
    with suppress(OSError):
        print(printable(text), file=sys.stderr)
    return code

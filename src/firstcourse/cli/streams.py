"""Standard output and error as the commands use them: no control characters, no lost answer without a word."""

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, redirect_stderr, redirect_stdout, suppress
from io import TextIOWrapper
from typing import Any, TextIO, cast

from firstcourse.units import printable


class AnswerLostError(OSError):
    """The command is done, but its answer could not be printed."""


class _Plain:
    """A stream that shows control characters as their codes."""

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream

    def write(self, text: str) -> int:
        return self._stream.write(printable(text))

    def __getattr__(self, name: str) -> Any:
        return getattr(self._stream, name)


@contextmanager
def plain_streams() -> Iterator[None]:
    """Print without control characters within, and what an encoding lacks as its code.

    Raises:
        AnswerLostError: Standard output is closed or full, which shows only at the end.
    """
    closed = sys.stdout is None
    for number in range(3):
        # Else the next file that is opened takes the number, and what a library prints goes into that file.
        with suppress(OSError):
            if _is_closed(number):
                os.dup2(os.open(os.devnull, os.O_RDWR), number)
    out = sys.stdout or open(os.devnull, "w", encoding="utf-8")  # noqa: SIM115
    err = sys.stderr or open(os.devnull, "w", encoding="utf-8")  # noqa: SIM115
    for stream in (out, err):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")
    with redirect_stdout(cast(TextIO, _Plain(out))), redirect_stderr(cast(TextIO, _Plain(err))):
        yield
    try:
        out.flush()
    except BrokenPipeError:
        raise
    except OSError as error:
        raise AnswerLostError(error.errno, error.strerror) from None
    if closed:
        raise AnswerLostError(0, "is closed")


def leave_stdout() -> None:
    """Send what is still to be printed nowhere, so that nothing complains of it when the program ends."""
    with suppress(OSError, ValueError, AttributeError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _is_closed(number: int) -> bool:
    try:
        os.fstat(number)
    except OSError:
        return True
    return False

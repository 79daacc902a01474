"""Pages made in a process of its own that can be ended, and with it all that the page maker keeps.

The page maker keeps what it made for later pages like it, 300 MB for a tiled bathroom, and cannot be told to let
it go.
"""

import json
import os
import subprocess
import sys
from collections.abc import Sequence
from contextlib import suppress
from queue import SimpleQueue
from threading import Thread
from types import TracebackType
from typing import Any, Self

from firstcourse.papers.pages import PageMaker, marks, pdf

MOST_ASKED = 1_500_000
"""Letters a process has been asked to lay out, at which it is ended: it takes some 200 MB then."""


class PageProcess(PageMaker):
    """Makes pages in a process of its own, started when it is needed and ended when it is to forget or has much.

    Where no process can be started, where it is ended from outside or meets an error, the pages are made here, so
    that they and every error are the same. To be used by one thread at a time, and as a context.
    """

    def __init__(self) -> None:
        self._process: subprocess.Popen[bytes] | None = None
        self._length = 0

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.forget()

    def forget(self) -> None:
        """End the process."""
        process, self._process, self._length = self._process, None, 0
        if process is None:
            return
        process.kill()
        for pipe in (process.stdin, process.stdout):
            if pipe is not None:
                with suppress(OSError):
                    pipe.close()
        process.wait()

    def _pdf(self, sources: Sequence[str], text: str) -> bytes:
        made = self._asked(sources, text, None)
        return super()._pdf(sources, text) if made is None else made

    def _marks(self, sources: Sequence[str], text: str, label: str) -> bytes:
        made = self._asked(sources, text, label)
        return super()._marks(sources, text, label) if made is None else made

    def _asked(self, sources: Sequence[str], text: str, label: str | None) -> bytes | None:
        """What the process answers; None where it gives no answer."""
        try:
            if self._process is None:
                self._process = _started()
            asked, answers = self._process.stdin, self._process.stdout
            assert asked is not None and answers is not None
            asked.write(json.dumps([sources, text, label]).encode() + b"\n")
            asked.flush()
            long = int(answers.readline())
            answer = answers.read(long)
            if len(answer) < long:
                raise EOFError
        except (OSError, EOFError, ValueError):
            self.forget()
            return None
        self._length += len(text)
        if self._length >= MOST_ASKED:
            self.forget()
        return answer


def answer_pages() -> None:
    """Make the pages that are asked for on standard input, one request a line, until it ends.

    A request is JSON: sources, what they print, and a mark's name or null for a PDF. The answer is its length in
    bytes on a line of its own, then the bytes; after an error none comes and the process ends.
    """
    requests: SimpleQueue[bytes] = SimpleQueue()
    Thread(target=_read, args=(requests,), daemon=True).start()
    while True:
        sources, text, label = json.loads(requests.get())
        made = pdf(sources, text) if label is None else marks(sources, text, label)
        sys.stdout.buffer.write(b"%d\n" % len(made))
        sys.stdout.buffer.write(made)
        sys.stdout.buffer.flush()


def _read(requests: "SimpleQueue[bytes]") -> None:
    """Hand on what is asked; where nobody is left to ask, end at once, whatever page is being made."""
    for line in sys.stdin.buffer:
        requests.put(line)
    os._exit(0)


def _started() -> subprocess.Popen[bytes]:
    if not sys.executable:
        raise OSError("this program is not run by an interpreter that could be started again")
    call = f"from {__name__} import answer_pages; answer_pages()"
    options: dict[str, Any] = {"start_new_session": True} if os.name == "posix" else {}
    return subprocess.Popen(
        [sys.executable, "-P", "-c", call],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        env={**os.environ, "PYTHONPATH": os.pathsep.join(path for path in sys.path if path)},
        **options,
    )

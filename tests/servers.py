"""The program as it answers browsers, in a thread of the tests."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from queue import Queue
from typing import Any

from firstcourse.store.database import sqlite_url
from firstcourse.web import serving


@contextmanager
def served(folder: Path, **how: Any) -> Iterator[str]:
    """The program while the block runs, with the demo job in it; gives the link that it printed."""
    told: Queue[str] = Queue()
    start = serving.Start(port=0, database=sqlite_url(folder / "jobs.sqlite"), demo=True, **how)
    servers: list[serving.Stoppable] = []
    thread = threading.Thread(target=serving.serve, args=(start, told.put, servers.append))
    thread.start()
    try:
        link = ""
        while "/enter#" not in link:
            link = told.get(timeout=60)
        yield link
    finally:
        for server in servers:
            server.should_exit = True
        thread.join(timeout=30)
    assert not thread.is_alive()

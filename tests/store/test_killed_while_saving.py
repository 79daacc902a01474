"""What was told as saved is there though the program is killed in the middle of the next save."""

import os
import signal
import subprocess
import sys
from pathlib import Path

from firstcourse.store.database import open_database, sqlite_url
from firstcourse.store.jobs import Jobs

SAVING = """
import sys
from firstcourse.store.accounts import Accounts
from firstcourse.store.database import open_database
from firstcourse.store.jobs import Jobs, Kind
database = open_database(sys.argv[1])
jobs, by = Jobs(database), Accounts(database).only_owner("owner").id
job = jobs.create("Bath", "text 1", by=by)
print(job, flush=True)
for number in range(1, 100_000):
    text = f"text {number + 1} " + "x" * 20_000
    print(jobs.save(job, "Bath", text, base=number, by=by, kind=Kind.EDIT), flush=True)
"""


def test_nothing_that_was_told_as_saved_is_lost(tmp_path: Path) -> None:
    url = sqlite_url(tmp_path / "jobs.sqlite")
    process = subprocess.Popen([sys.executable, "-c", SAVING, url], stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    with process.stdout as told:
        job = told.readline().strip()
        for _ in range(20):
            last = told.readline()
        os.kill(process.pid, signal.SIGKILL)
        rest = told.read().splitlines()
    process.wait()
    saved = int((rest or [last])[-1])
    database = open_database(url)
    newest = Jobs(database).revision(job)
    assert newest is not None and newest.number in (saved, saved + 1)
    assert newest.text.startswith(f"text {newest.number} ")
    database.close()

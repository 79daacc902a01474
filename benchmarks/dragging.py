"""How long one redraw takes while the niche of the example bathroom is dragged, in processor time.

    .venv/bin/python benchmarks/dragging.py [--moves N] [--profile]

The whole way of one move: the request, the document with the niche where it is now, its wall planned lightly, the
answer. What the page's process and the light desk's do is done in this process, so that its processor time is all
of it. Every move is to a place where the niche has not been.
"""

import argparse
import cProfile
import pstats
import random
import re
import statistics
import sys
import tempfile
import time
from pathlib import Path

from starlette.testclient import TestClient

from firstcourse.app import Session, demo_text
from firstcourse.app.light_desk import LightDesk, Lightly, LightTask
from firstcourse.app.one_surface import planned_lightly
from firstcourse.app.store import Memory
from firstcourse.errors import FirstcourseError
from firstcourse.store.database import open_database, sqlite_url
from firstcourse.store.jobs import KeptPlan
from firstcourse.web.app import application
from firstcourse.web.house import House, Settings

ADDRESS = "http://127.0.0.1:8123"
WALL = "hall bath/wall/A-B"


class _Here(LightDesk):
    """The light desk's work in this process."""

    def __init__(self) -> None:
        super().__init__()
        self._memory = Memory(400)

    def ask(self, job: str, task: LightTask) -> Lightly:
        try:
            return Lightly(made=planned_lightly(task, self._memory))
        except FirstcourseError as error:
            return Lightly(fault=str(error))


def main() -> int:
    """Drag, and print what a move takes."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--moves", type=int, default=40)
    parser.add_argument("--profile", action="store_true")
    given = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        database = open_database(sqlite_url(Path(folder) / "jobs.sqlite"))
        house = House(database, Settings(address=ADDRESS, hosts=("127.0.0.1",)))
        house.light = _Here()
        owner = house.accounts.only_owner("owner")
        job = house.jobs.create("Tub bathroom", demo_text(), by=owner.id)
        plan = Session(demo_text(), name="Tub bathroom").plan(effort=0)
        house.jobs.keep_plan(
            job, 1, KeptPlan(effort=0, document=plan.document, beside='{"practice": "us", "changes": []}')
        )
        client = TestClient(application(house), base_url=ADDRESS)
        client.cookies.set("firstcourse", house.accounts.begin_session(owner.id))
        page = client.get(f"/jobs/{job}/surface/{WALL}").text
        token = re.search(r'data-token="([^"]+)"', page)
        assert token is not None
        rng, used, profile = random.Random(1), [], cProfile.Profile()
        for number in range(given.moves + 5):
            form = {"surface": WALL, "base": "1", "view": "framing boards tile pole", "number": "1"}
            form |= {"du": f"{rng.uniform(-200, 200):.4f}", "dv": f"{rng.uniform(-80, 80):.4f}"}
            if given.profile and number == 5:
                profile.enable()
            began = time.process_time()
            answer = client.post(f"/jobs/{job}/light", data=form, headers={"x-token": token[1], "origin": ADDRESS})
            used.append(time.process_time() - began)
            assert answer.status_code == 200 and answer.json()["layers"], answer.text
        profile.disable()
        house.close()
    warm = sorted(used[5:])
    print(f"{len(warm)} moves: {statistics.median(warm) * 1000:.0f} ms in the middle, ", end="")
    print(f"{warm[int(len(warm) * 0.95)] * 1000:.0f} ms for 19 of 20, {warm[-1] * 1000:.0f} ms at most")
    if given.profile:
        pstats.Stats(profile).sort_stats("cumulative").print_stats(70)
        pstats.Stats(profile).sort_stats("tottime").print_stats(45)
    return 0


if __name__ == "__main__":
    sys.exit(main())

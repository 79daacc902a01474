"""In a real browser: a job taken along is ticked without a network, and all is kept once there is one again."""

import json
import re
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from queue import Queue

from playwright.sync_api import sync_playwright
from test_in_a_browser import CHROMIUM, FLAGS, PHONE
from test_onsite import WALL, parts_with, planned

from databases import missing
from firstcourse.store.accounts import Accounts
from firstcourse.store.database import open_database, sqlite_url
from firstcourse.store.jobs import Jobs, KeptPlan
from firstcourse.store.site import SiteEvents
from firstcourse.web import serving


@contextmanager
def served(url: str) -> Iterator[str]:
    told: Queue[str] = Queue()
    servers: list[serving.Stoppable] = []
    start = serving.Start(port=0, database=url, demo=False)
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


def test_ticks_without_a_network_are_kept(tmp_path: Path) -> None:
    if not CHROMIUM.exists():
        missing("Chromium")
    url = sqlite_url(tmp_path / "jobs.sqlite")
    database = open_database(url)
    jobs = Jobs(database)
    job = jobs.create("one wall", WALL, by=Accounts(database).only_owner("owner").id)
    beside = json.dumps({"practice": planned().practice, "changes": []})
    jobs.keep_plan(job, 1, KeptPlan(effort=0, document=planned().document, beside=beside))
    (part,) = parts_with("board/")
    with served(url) as link, sync_playwright() as playwright:
        context = playwright.chromium.launch(executable_path=CHROMIUM, args=list(FLAGS)).new_context(
            viewport=PHONE
        )
        page = context.new_page()
        page.goto(link)
        page.wait_for_url("**/jobs")
        home = link.partition("/enter")[0]
        page.goto(f"{home}/jobs/{job}/site")
        page.get_by_role("button", name="Take it along").click()
        page.wait_for_selector("body[data-along=yes]", timeout=60_000)
        context.set_offline(True)
        page.goto(f"{home}/jobs/{job}/site?part={part}")
        drawn = page.locator("a.drawing img")
        assert drawn.evaluate("one => one.decode().then(() => one.naturalWidth)") > 50
        page.locator("button.tick").nth(0).click()
        page.wait_for_selector("#phone[data-waiting='1']")
        page.locator("form.blanks input[data-thing]").fill("third stud at 41 in")
        page.locator("form.blanks button").click()
        page.wait_for_selector("#phone[data-waiting='2']")
        page.reload()
        page.wait_for_selector("#phone[data-waiting='2']")  # what waits is shown first
        assert page.locator("button.tick[aria-pressed=true]").count() == 1
        assert SiteEvents(database).of(job) == ()
        context.set_offline(False)
        page.reload()
        page.wait_for_selector("#phone[data-waiting='0']")
        kept = {re.sub(r"/.*", "", event.thing): event.value for event in SiteEvents(database).of(job)}
        assert kept == {"board": "yes", "stud": "third stud at 41 in"}
        context.set_offline(True)
        page.reload()  # the page that is kept shows what was sent
        assert page.locator("button.tick[aria-pressed=true]").count() == 1
        context.browser.close()  # type: ignore[union-attr]
    database.close()

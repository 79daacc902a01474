"""A newcomer with a phone enters a bathroom like the demo's, from nothing to a verified plan.

Every tap and every field that is filled is counted; each screen is kept as a picture. The readings are entered
with the page's own keys, one tap a key.

    python benchmarks/newcomer.py FOLDER
"""

import argparse
import re
import sys
import tempfile
import threading
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from queue import Queue

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Locator, Page, sync_playwright

from firstcourse.store.database import sqlite_url
from firstcourse.web import serving

CHROMIUM = "/usr/bin/chromium"
PHONE = {"width": 390, "height": 844}
MOST = 120
"""Taps and filled fields that a newcomer may need."""
LEAST_PX = 44
READ = {
    "A-B": ("5", "0", "3/8"),
    "B-C": ("8", "0", "1/2"),
    "C-D": ("4", "11", "5/8"),
    "D-A": ("8", "0", "0"),
    "A-C": ("9", "5", "5/8"),
    "B-D": ("9", "5", "3/16"),
}
"""Feet, inches and the fraction of an inch between two corners, as in the demo."""
_SMALL = f"""all => all.filter(one => one.checkVisibility() && one.getBoundingClientRect().height < {LEAST_PX})
  .map(one => one.outerHTML.slice(0, 90))"""
_TARGETS = (
    "button, select, summary, nav a, .button, .actions a, .cards a, .pick, .sixteenths label, "
    "input:not([type=hidden], [type=radio], [type=checkbox])"
)
_SERIOUS = ("serious", "critical")
_CUT = """all => all.filter(one => one.checkVisibility() && one.scrollWidth > one.clientWidth + 1 &&
  getComputedStyle(one).overflowX !== 'auto').map(one => one.outerHTML.slice(0, 90))"""


@dataclass(slots=True)
class Hand:
    """One thumb on one page, and what it cost so far.

    Attributes:
        folder: Where pictures go.
        taps, fields: By screen, how many.
        clumsy: What is too small, cut off or wider than the screen, by screen.
    """

    page: Page
    folder: Path
    taps: Counter[str] = field(default_factory=Counter)
    fields: Counter[str] = field(default_factory=Counter)
    clumsy: list[str] = field(default_factory=list)
    screen: str = ""

    def on(self, screen: str) -> None:
        """A new screen: look at it, and keep its picture."""
        self.screen = screen
        self.look(screen)

    def look(self, name: str) -> None:
        """Keep a picture of the whole page, and note what is clumsy on it."""
        self.page.evaluate("document.fonts.ready")
        self.page.screenshot(
            path=self.folder / f"{len(list(self.folder.glob('*.png'))):02d}-{name}.png", full_page=True
        )
        violations = Axe().run(self.page).response["violations"]
        wide = self.page.evaluate("document.documentElement.scrollWidth")
        found = [f"small: {one}" for one in self.page.eval_on_selector_all(_TARGETS, _SMALL)]
        found += [
            f"cut off: {one}"
            for one in self.page.eval_on_selector_all("button, a, label, h1, h2, legend, p", _CUT)
        ]
        found += [
            f"axe: {one['id']}: {one['nodes'][0]['html'][:90]}" for one in violations if one["impact"] in _SERIOUS
        ]
        found += [f"{wide} px wide"] if wide > PHONE["width"] else []
        self.clumsy += [f"{name}: {one}" for one in found]

    def tap(self, what: Locator, *, goes: bool = False) -> None:
        """Tap something; wait for the next page where it leads to one."""
        self.taps[self.screen] += 1
        if goes:
            with self.page.expect_navigation():
                what.tap()
        else:
            what.tap()

    def fill(self, name: str, text: str) -> None:
        """Fill one field."""
        self.fields[self.screen] += 1
        self.page.fill(f"[name='{name}']:visible", text)

    def choose(self, name: str, value: str) -> None:
        """Choose from a list: a tap that opens it and one on the choice; nothing where it stands there already."""
        chosen = self.page.locator(f"select[name='{name}']")
        if chosen.input_value() != value:
            self.taps[self.screen] += 2
            chosen.select_option(value)

    def reading(self, feet: str, inches: str, fraction: str, *, within: str) -> None:
        """A reading with the page's own keys."""
        tape = self.page.locator(within)
        for key in feet:
            self.tap(tape.locator(f"[data-key='{key}']"))
        if inches != "0":
            self.tap(tape.locator("[data-key=next]"))
            for key in inches:
                self.tap(tape.locator(f"[data-key='{key}']"))
        if fraction != "0":
            self.tap(tape.locator(".sixteenths label", has_text=re.compile(f"^{fraction}$")))


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """The program over an empty database while the block runs; gives the link that it printed."""
    told: Queue[str] = Queue()
    servers: list[serving.Stoppable] = []
    start = serving.Start(port=0, database=sqlite_url(folder / "jobs.sqlite"), demo=False)
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


def enter(hand: Hand, link: str) -> None:
    """From the printed link to a verified plan."""
    page = hand.page
    page.goto(link)
    page.wait_for_url("**/jobs")
    hand.on("jobs")
    hand.tap(page.get_by_role("link", name="New job"), goes=True)
    hand.on("new-job")
    hand.fill("name", "Hall bath")
    hand.tap(page.get_by_role("button", name="Make the job"), goes=True)
    hand.on("job")
    hand.tap(page.get_by_role("link", name="Tape your room"), goes=True)
    hand.on("walk")
    hand.fill("long", "5")
    hand.fill("wide", "8")
    hand.tap(page.get_by_role("button", name="Start taping"), goes=True)
    hand.on("taping")
    while page.locator("form.reading").count():
        pair = page.locator("form.reading input[name=pair]").input_value()
        hand.reading(*READ[pair], within="form.reading")
        if not page.locator(".answer").count():
            hand.look("taping-filled")
        hand.tap(page.locator("form.reading button[value=read]"), goes=True)
    hand.on("taped")
    hand.tap(page.get_by_role("link", name="Put it into the job"), goes=True)
    hand.on("what-stands")
    hand.reading("8", "0", "1/8", within="form .tape")
    hand.tap(page.locator("label:has(> [name=tub])"))
    hand.tap(page.locator("label:has(> [name=niche])"))
    hand.tap(page.locator("label:has(> [name=closet])"))
    hand.choose("closet side", "D-A")
    hand.fill("closet left", "48")
    hand.fill("closet out", "12 1/2")
    hand.look("what-stands-filled")
    hand.tap(page.locator("main button.go"), goes=True)
    hand.on("choices")
    for number, sizes in ((1, ("11 13/16", "11 13/16", "3/8")), (2, ("11 7/8", "3 7/8", "5/16"))):
        for name, size in zip(("width", "height", "thickness"), sizes, strict=True):
            hand.fill(f"tile {number} {name}", size)
    surface = "framing of bath/floor"
    hand.choose(f"{surface} parallel_to", "A-B")
    hand.fill(f"{surface} spacing", "16")
    hand.fill(f"{surface} first", "15 1/4")
    hand.look("choices-filled")
    hand.tap(page.locator("main button.go"), goes=True)
    hand.on("room")
    hand.tap(page.get_by_role("button", name="Plan it"), goes=True)
    hand.on("planning")
    page.wait_for_selector(".proof", timeout=240_000)
    hand.on("planned")


def main() -> int:
    """Enter the bathroom; 1 where it takes too much or something is clumsy."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("folder", type=Path, help="where the pictures go")
    folder: Path = parser.parse_args().folder
    folder.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory() as own, served(Path(own)) as link, sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu"])
        page = chromium.new_context(viewport=PHONE, has_touch=True, is_mobile=True, locale="en-US").new_page()
        hand = Hand(page, folder)
        try:
            enter(hand, link)
        except Exception:
            page.screenshot(path=folder / "lost.png", full_page=True)
            raise
        finally:
            chromium.close()
    for screen in hand.taps | hand.fields:
        print(f"{screen:>16}: {hand.taps[screen]:3} taps, {hand.fields[screen]:3} fields")
    count = hand.taps.total() + hand.fields.total()
    print(f"{count} taps and fields, {MOST} at most", *hand.clumsy, sep="\n")
    return int(count > MOST or bool(hand.clumsy))


if __name__ == "__main__":
    sys.exit(main())

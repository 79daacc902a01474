"""In a real browser: the way from the printed link to a verified plan, on a phone and without scripts."""

import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser as Chromium
from playwright.sync_api import BrowserContext, Page, Route, expect, sync_playwright

from databases import missing
from servers import served

CHROMIUM = Path("/usr/bin/chromium")
FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
)
PHONE, DESK = {"width": 390, "height": 844}, {"width": 1280, "height": 900}
SERIOUS = ("serious", "critical")


@pytest.fixture(scope="module")
def chromium() -> Iterator[Chromium]:
    if not CHROMIUM.exists():
        missing("Chromium")
    with sync_playwright() as playwright:
        yield playwright.chromium.launch(executable_path=CHROMIUM, args=list(FLAGS))


@pytest.fixture(scope="module")
def link(tmp_path_factory: pytest.TempPathFactory, chromium: Chromium) -> Iterator[str]:
    with served(tmp_path_factory.mktemp("served")) as printed:
        yield printed


@pytest.fixture(scope="module")
def signed_in(chromium: Chromium, link: str) -> BrowserContext:
    """A phone that came in by the printed link; whatever it asks for elsewhere, or that fails, is noted."""
    context = chromium.new_context(viewport=PHONE, has_touch=True, locale="en-US")
    context.wrong = []  # type: ignore[attr-defined]
    origin = link.partition("/enter")[0]
    context.on("request", lambda asked: asked.url.startswith(origin) or context.wrong.append(asked.url))  # type: ignore[attr-defined]
    context.on("console", lambda said: said.type == "error" and context.wrong.append(said.text))  # type: ignore[attr-defined]
    context.on("weberror", lambda error: context.wrong.append(str(error.error)))  # type: ignore[attr-defined]
    page = context.new_page()
    page.goto(link)
    page.wait_for_url("**/jobs")
    assert "#" not in page.url
    page.close()
    return context


def open_demo(page: Page, home: str) -> str:
    """Go to the demo job; gives its address."""
    page.goto(home)
    page.locator(".cards a", has_text=re.compile("^Tub bathroom$")).click()
    page.wait_for_url(re.compile(r"/jobs/[0-9a-z]{20}$"))
    return page.url


def faults(page: Page) -> list[str]:
    """What axe holds against a page."""
    found = Axe().run(page).response["violations"]
    return [f"{one['id']}: {one['nodes'][0]['html']}" for one in found if one["impact"] in SERIOUS]


def small_targets(page: Page) -> list[str]:
    """What is touched and is less than 48 pixels high, links within text apart."""
    return page.eval_on_selector_all(
        "button, select, nav a, .actions a, .pick, input:not([type=hidden], [type=radio], [type=checkbox])",
        "all => all.filter(one => one.getBoundingClientRect().height < 48 && one.checkVisibility())"
        ".map(one => one.outerHTML.slice(0, 80))",
    )


def test_the_demo_is_planned_on_a_phone_and_every_page_is_sound(signed_in: BrowserContext, link: str) -> None:
    page = signed_in.new_page()
    job = open_demo(page, link.partition("/enter")[0])
    with page.expect_navigation():
        page.get_by_role("button", name="Plan it").click()
    page.evaluate("window.loaded = 'once'")
    assert page.locator("#newer").is_hidden()
    page.wait_for_selector(".figures", timeout=120_000)
    assert page.locator(".figures dd").first.inner_text().isdigit()
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    page.wait_for_selector("#standing", state="detached", timeout=120_000)
    assert page.get_by_role("link", name="pieces-and-cuts.xlsx").is_visible()
    assert page.evaluate("window.loaded") == "once"
    paths = ("", "/document", "/revisions", "/links", "/client", "/choices", "/rack")
    for path in (
        *(job + path for path in paths),
        f"{job}/../../jobs",
        f"{job}/../../jobs/new",
        f"{job}/../../account",
        f"{job}/../../rack",
    ):
        page.goto(path)
        assert faults(page) == [] and small_targets(page) == [], path
        assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"], path
    page.goto(job)
    with page.expect_download() as fetched:
        page.get_by_role("link", name="pieces-and-cuts.xlsx").click()
    assert fetched.value.path().read_bytes()[:2] == b"PK"
    sent = page.request.get(f"{job}/papers/site-pack-a4.pdf")
    assert sent.headers["content-type"] == "application/pdf" and sent.body()[:5] == b"%PDF-"
    page.locator(".drawings a").first.click()
    drawn = page.locator(".drawing img")
    drawn.wait_for()
    assert drawn.evaluate("one => one.decode().then(() => one.naturalWidth)") > 50
    assert signed_in.wrong == []  # type: ignore[attr-defined]


def test_pages_keep_their_contrast_in_the_dark(chromium: Chromium, signed_in: BrowserContext, link: str) -> None:
    dark = chromium.new_context(viewport=DESK, color_scheme="dark", storage_state=signed_in.storage_state())
    page = dark.new_page()
    page.goto(f"{link.partition('/enter')[0]}/jobs")
    page.locator(".cards a").first.click()
    found = Axe().run(page, options={"rules": {"color-contrast-enhanced": {"enabled": True}}}).response
    assert [one["id"] for one in found["violations"]] == []
    dark.close()


def test_a_job_is_made_and_changed_without_scripts(
    chromium: Chromium, signed_in: BrowserContext, link: str
) -> None:
    state = signed_in.storage_state()
    bare = chromium.new_context(viewport=PHONE, java_script_enabled=False, storage_state=state)
    page = bare.new_page()
    page.goto(f"{link.partition('/enter')[0]}/jobs/new")
    page.fill("#name", "Bath without scripts")
    page.get_by_role("button", name="Make the job").click()
    page.get_by_role("link", name="Document", exact=True).click()
    page.fill("#field", "rooms[1].height")
    page.fill("#value", "7' 9\"")
    page.get_by_role("button", name="Save this field").click()
    assert "height: 7' 9\"" in page.locator("#text").input_value()
    page.get_by_role("link", name="Saved before").click()
    assert page.locator(".revisions li").count() == 2
    bare.close()


def test_a_niche_is_moved_by_hand_and_by_keys_and_saved_when_let_go(signed_in: BrowserContext, link: str) -> None:
    page = signed_in.new_page()
    job = open_demo(page, link.partition("/enter")[0])
    page.goto(f"{job}/surface/hall%20bath/wall/A-B")
    niche = page.locator("#things [data-number]").first
    left = page.locator("#entry-1 input[name=left]")
    assert left.input_value() == "16 3/4 in"
    niche.focus()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Shift+ArrowRight")
    expect(left).to_have_value("17 13/16 in", timeout=90_000)
    page.keyboard.press("Escape")
    assert left.input_value() == "16 3/4 in" and page.locator(".moving").count() == 0
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Shift+ArrowRight")
    expect(left).to_have_value("17 13/16 in", timeout=90_000)
    page.keyboard.press("Enter")
    page.wait_for_url("**/surface/**set=1**")
    assert left.input_value() == "17 13/16 in"
    shape = niche.locator("polygon").bounding_box()
    assert shape is not None
    at = shape["x"] + shape["width"] / 2, shape["y"] + shape["height"] / 2
    page.mouse.move(*at)
    page.mouse.down()
    page.mouse.move(at[0] + 30, at[1] + 20, steps=4)
    expect(left).not_to_have_value("17 13/16 in", timeout=90_000)
    assert "On:" in page.locator("#told").inner_text()
    with page.expect_navigation():
        page.mouse.up()
    there = left.input_value()
    assert there != "17 13/16 in"
    page.goto(f"{job}/document")
    assert f"id: niche, kind: niche, left: {there}" in page.locator("#text").input_value()


def test_a_page_that_somebody_types_in_is_never_loaded_again_by_itself(
    signed_in: BrowserContext, link: str
) -> None:
    page, other = signed_in.new_page(), signed_in.new_page()
    job = open_demo(page, link.partition("/enter")[0])
    asked: list[Route] = []

    def tell(revision: int, *, over: bool) -> None:
        """Let the page hear of a plan, and wait until it has asked for what is new."""
        while not asked:
            page.wait_for_timeout(20)
        told = {"state": "done" if over else "papers", "revision": revision, "over": over, "steps": []}
        with page.expect_response(lambda one: one.url == page.url):
            asked.pop().fulfill(content_type="text/event-stream", body=f"retry: 50\ndata: {json.dumps(told)}\n\n")

    def send(what: str) -> None:
        form = {"token": page.locator("input[name=token]").first.input_value()}
        assert page.request.post(f"{job}/{what}", form=form, max_redirects=0).status == 303

    def set_height(height: str) -> None:
        other.goto(f"{job}/document")
        other.fill("#field", "rooms[1].height")
        other.fill("#value", height)
        with other.expect_navigation():
            other.get_by_role("button", name="Save this field").click()

    # A room that no other test plans: nothing kept from them may end the plan before the page is there.
    set_height("8' 3/4\"")
    page.reload()
    send("plan")
    page.route("**/progress", lambda one: asked.append(one))
    page.goto(f"{job}/surface/hall%20bath/wall/A-B")
    page.wait_for_selector("#standing")
    send("stop")
    page.locator("#entry-new summary").click()
    page.fill("#new-id", "soap")
    base = int(page.get_attribute("#drawing", "data-base") or 0)
    tell(base, over=False)
    assert page.input_value("#new-id") == "soap" and page.locator("#newer").is_hidden()
    set_height("8' 1\"")
    tell(base + 1, over=True)
    page.wait_for_selector("#newer", state="visible")
    assert page.input_value("#new-id") == "soap" and page.get_attribute("#drawing", "data-base") == str(base)
    assert faults(page) == [] and small_targets(page) == []
    page.locator("#newer a").click()
    page.wait_for_selector(f"#drawing[data-base='{base + 1}']")
    assert page.input_value("#new-id") == ""

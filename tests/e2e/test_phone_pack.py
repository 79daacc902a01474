"""The pack on a phone, by touch in a real browser without a network: ticked, kept, saved, and read back."""

import hashlib
import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import firstcourse
from firstcourse.app.ticked import read_ticked
from firstcourse.papers.papers import SITE_PACK_PHONE, all_papers
from firstcourse.plan import Plan
from firstcourse.units import inches

playwright = pytest.importorskip("playwright.sync_api", reason="playwright is not installed")

CHROMIUM = next(
    (path for path in map(Path, ("/usr/bin/chromium", "/usr/bin/chromium-browser")) if path.exists()), None
)
EXAMPLE = Path(__file__).parents[2] / "examples" / "tub-bathroom" / "job.yaml"
LEAST_TOUCH, MOST_BYTES = 48, 3_000_000
QUIET = ("--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update")

pytestmark = pytest.mark.skipif(CHROMIUM is None, reason="no Chromium at /usr/bin/chromium: nothing to tap with")


@pytest.fixture(scope="module")
def pack(tmp_path_factory: pytest.TempPathFactory) -> tuple[Plan, Path]:
    plan = firstcourse.open(EXAMPLE).plan(effort=0).plan
    file = tmp_path_factory.mktemp("phone") / SITE_PACK_PHONE
    file.write_bytes(next(paper.content for paper in all_papers(plan) if paper.name == SITE_PACK_PHONE))
    return plan, file


@pytest.fixture(scope="module")
def phone(pack: tuple[Plan, Path], tmp_path_factory: pytest.TempPathFactory) -> Iterator[object]:
    with playwright.sync_playwright() as player:
        context = player.chromium.launch_persistent_context(
            str(tmp_path_factory.mktemp("profile")),
            executable_path=str(CHROMIUM),
            args=list(QUIET),
            viewport={"width": 390, "height": 844},
            has_touch=True,
            is_mobile=True,
            offline=True,
            accept_downloads=True,
        )
        yield context
        context.close()


@pytest.fixture
def page(phone, pack: tuple[Plan, Path]) -> Iterator[object]:
    page = phone.new_page()
    complaints: list[str] = []
    asked: list[str] = []
    page.on("console", lambda message: complaints.append(message.text))
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.on("request", lambda request: asked.append(request.url))
    page.goto(pack[1].as_uri())
    yield page
    page.close()
    assert complaints == []
    assert [url for url in asked if not url.startswith(("file:", "data:", "blob:"))] == []


def saved(page, folder: Path) -> bytes:
    with page.expect_download() as download:
        page.locator("#save").tap()
    file = folder / download.value.suggested_filename
    download.value.save_as(file)
    return file.read_bytes()


def test_what_is_ticked_is_kept_saved_and_read_back(page, pack: tuple[Plan, Path], tmp_path: Path) -> None:
    plan, _ = pack
    page.locator('nav a[href="#boards"]').tap()
    board = plan.surfaces[0].boards[0]
    page.locator(f'input[data-tick="board/{board.id}"]').tap()
    assert page.locator(f'#boards svg polygon.set[data-name="{board.mark}"]').count() >= 1
    assert page.locator("#boards summary output").first.inner_text() == f"1/{len(plan.surfaces[0].boards)}"

    page.locator('nav a[href="#tile"]').tap()
    page.locator("#tile button.zoom").first.tap()
    tiled = next(surface for surface in plan.surfaces if surface.tiled)
    tile = tiled.tiles[0]
    page.locator(f'dialog polygon[data-name="{tile.id}"]').first.tap()
    page.locator("#larger").tap()
    page.locator("#close").tap()
    assert page.locator("[data-tiles] output").first.inner_text() == f"1/{len(tiled.tiles)}"

    page.locator('nav a[href="#found"]').tap()
    width = page.locator('input[data-entry="tile_measured/floor tile/width"]')
    width.fill("eleven")
    width.blur()
    assert width.get_attribute("aria-invalid") == "true"
    width.fill("11 7/8")
    width.blur()
    assert width.get_attribute("aria-invalid") == "false"

    page.reload()
    assert page.locator(f'input[data-tick="board/{board.id}"]').is_checked()
    assert page.locator('input[data-entry="tile_measured/floor tile/width"]').input_value() == '11 7/8"'

    found = read_ticked(saved(page, tmp_path), plan)
    assert set(found.ticks) == {f"board/{board.id}", f"tile/{tile.id}"}
    assert found.measured["tile_measured/floor tile/width"].ticks == inches(11.875)


def test_everything_to_touch_is_large_enough_for_a_thumb(page) -> None:
    page.evaluate("document.querySelectorAll('details').forEach(part => { part.open = true; })")
    small = page.evaluate(
        """least => [...document.querySelectorAll('main button, nav a, summary, label.tick, .entry input')]
        .map(each => [each.getBoundingClientRect(), each.outerHTML.slice(0, 80)])
        .filter(([box]) => box.height < least || box.width < least).map(([, html]) => html)""",
        LEAST_TOUCH,
    )
    assert small == []
    assert page.evaluate("document.documentElement.scrollWidth") <= 390


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_nothing_serious_stands_in_the_way_of_a_screen_reader(page, scheme: str) -> None:
    axe = pytest.importorskip("axe_playwright_python.sync_playwright", reason="axe is not installed")
    page.emulate_media(color_scheme=scheme)
    page.evaluate("document.querySelectorAll('details').forEach(part => { part.open = true; })")
    found = axe.Axe().run(page).response
    assert len(found["passes"]) > 10
    assert [one["id"] for one in found["violations"] if one["impact"] in ("serious", "critical")] == []


def test_the_file_asks_for_nothing_and_is_small(pack: tuple[Plan, Path]) -> None:
    data = pack[1].read_bytes()
    text = data.decode()
    assert len(data) < MOST_BYTES
    assert "default-src 'none'" in text and "connect-src" not in text
    assert re.findall(r"""(?:src|href|action)=["'](?!#)""", text) == []
    assert set(re.findall(r"https?://[^\s\"'<>]+", text)) <= {"http://www.w3.org/2000/svg"}


def test_the_same_plan_gives_the_same_bytes_and_the_digest_of_its_file(pack: tuple[Plan, Path]) -> None:
    plan, file = pack
    again = next(paper.content for paper in all_papers(plan) if paper.name == SITE_PACK_PHONE)
    assert again == file.read_bytes()
    result = firstcourse.open(EXAMPLE).plan(effort=0)
    digest = hashlib.sha256(result.document.encode()).hexdigest()
    assert f'data-plan="{digest}"' in file.read_text(encoding="utf-8")
    assert json.loads(result.document)["job"]["name"] in file.read_text(encoding="utf-8")

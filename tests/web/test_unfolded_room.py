"""The unfolded room and its surfaces, as a browser without scripts works on them."""

import re
from html import unescape
from urllib.parse import quote

import pytest
from httpx2 import Response

from browsers import Browser
from firstcourse.app import Desk, PlanResult, Session, demo_text
from firstcourse.store.accounts import Role
from firstcourse.store.jobs import KeptPlan
from firstcourse.web.house import House
from firstcourse.web.pages import shown_surface

WALL, FLOOR = "hall bath/wall/A-B", "hall bath/floor"


@pytest.fixture(autouse=True)
def _no_planning(monkeypatch: pytest.MonkeyPatch) -> None:
    """What is saved is planned at the desk; here it is not waited for."""
    monkeypatch.setattr(Desk, "ask", lambda *_given: None)


@pytest.fixture
def job(house: House, owner: Browser) -> str:
    """The demo job's address."""
    by = next(one for one in house.accounts.all() if one.role is Role.OWNER)
    return f"/jobs/{house.jobs.create('Tub bathroom', demo_text(), by=by.id)}"


@pytest.fixture(scope="module")
def plan() -> PlanResult:
    return Session(demo_text()).plan(effort=0)


@pytest.fixture
def planned(house: House, job: str, plan: PlanResult) -> str:
    """The same with a plan of its first revision."""
    beside = '{"practice": {}, "changes": []}'
    kept = KeptPlan(effort=0, document=plan.document, beside=beside)
    house.jobs.keep_plan(job.rpartition("/")[2], 1, kept)
    return job


def send(browser: Browser, path: str, **fields: str) -> Response:
    return browser.post_form(path, follow_redirects=False, **fields)


def text_of(owner: Browser, job: str) -> str:
    return owner.get(f"{job}/job.yaml").text


def niche(text: str) -> str:
    found = re.search(r"\{id: niche.*\}", text)
    assert found is not None
    return found[0]


def test_a_room_shows_all_its_surfaces_and_each_leads_to_its_own_page(owner: Browser, job: str) -> None:
    page = owner.get(f"{job}/room/1").text
    led = re.findall(rf'<a href="({job}/surface/[^"]+)"', page)
    assert len(led) == 4
    for address in led:
        answer = owner.get(address)
        assert answer.status_code == 200 and 'class="surface"' in answer.text
    for nothing in ("room/2", "room/0", "room/x", "surface/hall%20bath/wall/C-D", "surface/nothing"):
        assert owner.get(f"{job}/{nothing}").status_code == 404


def test_an_unplanned_surface_is_planned_lightly_and_says_so(
    owner: Browser, job: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(shown_surface, "PAGE_WAITS_S", 60.0)
    page = owner.get(f"{job}/surface/{quote(WALL)}").text
    assert "not proved yet" in page and page.count('class="board"') >= 4 and 'class="tile' in page


def test_only_what_is_asked_for_is_shown(owner: Browser, planned: str) -> None:
    address = f"{planned}/surface/{quote(WALL)}?set=1"
    form = 'class="layers"'
    assert 'class="layer' not in owner.get(address).text.replace(form, "")
    page = owner.get(f"{address}&show=soft&show=water").text.replace(form, "")
    assert page.count('class="layer') == 2 and 'class="soft"' in page and "hatch-water" in page
    assert ">verified<" in page


def test_a_niche_is_put_elsewhere_by_its_fields_and_the_rest_stays(owner: Browser, job: str) -> None:
    before = text_of(owner, job)
    answer = send(owner, f"{job}/opening", surface=WALL, base="1", number="1", left="18 1/2", bottom="48 in")
    assert answer.status_code == 303 and answer.headers["location"].startswith(
        f"{job}/surface/hall%20bath/wall/A-B"
    )
    after = text_of(owner, job)
    assert niche(after) == niche(before).replace("16 3/4 in", "18 1/2 in")
    assert after.replace(niche(after), "") == before.replace(niche(before), "")


def test_a_wrong_value_is_told_as_in_the_file_and_nothing_is_lost(owner: Browser, job: str) -> None:
    before = text_of(owner, job)
    for fields in ({"left": "eighteen"}, {"left": "400 in"}, {"bottom": "-3 in"}):
        answer = send(owner, f"{job}/opening", surface=WALL, base="1", number="1", **fields)
        assert answer.status_code == 422 and 'role="alert"' in answer.text
        assert next(iter(fields.values())) in unescape(answer.text)
    assert text_of(owner, job) == before
    assert send(owner, f"{job}/opening", surface=WALL, base="1", number="7", left="1").status_code == 400
    assert send(owner, f"{job}/opening", surface=WALL, base="1", number="1", du="1e9").status_code == 400


def test_what_is_dropped_on_the_drawing_lands_on_the_tape(owner: Browser, job: str) -> None:
    answer = send(owner, f"{job}/opening", surface=WALL, base="1", number="1", du="25.9", dv="-12.4")
    assert answer.status_code == 303
    assert "left: 17 3/4 in, bottom: 47 1/2 in" in niche(text_of(owner, job))


def test_a_flange_is_dragged_along_and_away_from_its_own_side(owner: Browser, job: str) -> None:
    # D-A is the wall at the left of the drawing: its left end is D, at the door, so up the drawing is away from D.
    answer = send(owner, f"{job}/opening", surface=FLOOR, base="1", number="2", du="25.4", dv="50.8")
    assert answer.status_code == 303
    flange = re.search(r"\{id: closet flange.*\}", text_of(owner, job))
    assert flange is not None and "left: 50 in, out: 13 1/2 in" in flange[0]


def test_one_is_added_and_taken_out(owner: Browser, job: str) -> None:
    given = {"number": "2", "kind": "pipe", "id": "rough in", "left": "8", "bottom": "30", "diameter": "1"}
    assert send(owner, f"{job}/opening", surface=WALL, base="1", **given).status_code == 303
    assert "rough in" in text_of(owner, job)
    first = send(owner, f"{job}/opening", surface="hall bath/wall/B-C", base="2", **{**given, "number": "1"})
    assert first.status_code == 303 and text_of(owner, job).count("rough in") == 2
    assert send(owner, f"{job}/opening/remove", surface=WALL, base="3", number="2").status_code == 303
    assert text_of(owner, job).count("rough in") == 1
    assert send(owner, f"{job}/opening/remove", surface=WALL, base="4", number="9").status_code == 400
    nameless = send(owner, f"{job}/opening", surface=WALL, base="4", **{**given, "id": ""})
    assert nameless.status_code == 422 and 'role="alert"' in nameless.text


def test_two_who_move_different_things_both_keep_theirs(owner: Browser, job: str) -> None:
    assert send(owner, f"{job}/opening", surface=WALL, base="1", number="1", left="20").status_code == 303
    other = "hall bath/wall/D-A"
    assert send(owner, f"{job}/opening", surface=other, base="1", number="1", bottom="21").status_code == 303
    text = text_of(owner, job)
    assert "left: 20 in" in niche(text) and "bottom: 21 in" in text
    clash = send(owner, f"{job}/opening", surface=WALL, base="1", number="1", left="22")
    assert clash.status_code == 409 and "left: 20 in" in niche(text_of(owner, job))


def test_while_it_moves_its_surface_is_planned_lightly_and_nothing_is_saved(owner: Browser, planned: str) -> None:
    before = text_of(owner, planned)
    answer = send(
        owner, f"{planned}/light", surface=WALL, base="1", number="1", du="25.4", dv="0", view="tile boards"
    )
    told = answer.json()
    assert told["fields"]["left"] == "17 3/4 in" and told["fault"] == ""
    assert told["layers"].count('class="board"') >= 4 and "hatch-wood" not in told["layers"]
    assert ["sheets", "sheets, whole job", "6"] in told["foot"]
    assert any(figure == "not proved yet" for _, _, figure in told["foot"])
    outside = send(owner, f"{planned}/light", surface=WALL, base="1", number="1", du="4000", dv="0").json()
    assert outside["fault"] and text_of(owner, planned) == before


def test_a_start_is_locked_and_found_anew(owner: Browser, planned: str, plan: PlanResult) -> None:
    page = owner.get(f"{planned}/surface/{quote(WALL)}").text
    ranked = next(one for one in plan.plan.surfaces if one.id == WALL).tiled[0].starts
    assert page.count('name="rank"') == len(ranked)
    assert send(owner, f"{planned}/start", surface=WALL, base="1", rank="2").status_code == 303
    tiling = Session(text_of(owner, planned)).job.rooms[0].walls[0].tiling
    assert tiling is not None and tiling.start is not None
    assert (tiling.start.left, tiling.start.up) == ranked[1].origin
    assert send(owner, f"{planned}/start", surface=WALL, base="2", rank="0").status_code == 303
    tiling = Session(text_of(owner, planned)).job.rooms[0].walls[0].tiling
    assert tiling is not None and tiling.start is None
    assert send(owner, f"{planned}/start", surface=WALL, base="1", rank="9").status_code == 400


def test_a_remedy_that_is_a_change_of_the_document_is_one_button(owner: Browser, planned: str) -> None:
    page = owner.get(f"{planned}/surface/{quote(WALL)}").text
    button = re.search(r'name="flag" value="(\d+)"><button>Put it onto the courses', page)
    assert button is not None and "No entry on this page does that" in page
    assert send(owner, f"{planned}/remedy", surface=WALL, base="1", flag=button[1]).status_code == 303
    moved = Session(text_of(owner, planned)).job.rooms[0].walls[0].openings[0]
    assert moved.bottom == round(1268.4125 * 640) and moved.height == round(511.175 * 640)
    assert send(owner, f"{planned}/remedy", surface=WALL, base="1", flag="99").status_code == 400


def test_the_story_pole_stands_beside_its_wall(owner: Browser, planned: str) -> None:
    page = owner.get(f"{planned}/surface/{quote(WALL)}").text
    assert 'class="batten"' in page and page.count('class="mark"') > 15 and "niche, lower edge" in page
    assert 'class="batten"' not in owner.get(f"{planned}/surface/{quote(FLOOR)}").text


def test_what_is_chosen_is_written_where_it_belongs_and_the_rest_stays(owner: Browser, job: str) -> None:
    page = owner.get(f"{job}/choices").text
    shown = dict(re.findall(r'name="([^"]+)" value="([^"]*)"', unescape(page)))
    before = text_of(owner, job)
    fields = {name: value for name, value in shown.items() if name.startswith(("sheet", "tile ", "framing"))}
    given = {
        **{
            name: value for name, value in fields.items() if " for " not in name and not name.startswith("tile of")
        },
        "tile of hall bath/wall/A-B": "floor tile",
        "pattern of hall bath/floor": "running",
        "tile 3 id": "trim tile",
        "tile 3 width": "6",
        "tile 3 height": "3",
        "tile 3 thickness": "1/4",
    }
    assert send(owner, f"{job}/choices", base="1", **given).status_code == 303
    after = Session(text_of(owner, job)).job
    walls, floor = after.rooms[0].walls, after.rooms[0].floor
    assert walls[0].tiling is not None and walls[0].tiling.tile == "floor tile"
    assert floor is not None and floor.tiling is not None and floor.tiling.pattern == "running"
    assert [tile.id for tile in after.tiles] == ["wall tile", "floor tile", "trim tile"]
    was = Session(before).job
    assert (after.stock, after.tiles[:2], walls[1:]) == (was.stock, was.tiles, was.rooms[0].walls[1:])
    assert "# prices are invented" in text_of(owner, job)
    wrong = send(owner, f"{job}/choices", base="2", **{"sheet 1 width": "wide"})
    assert wrong.status_code == 422 and "'wide in'" in unescape(wrong.text) and 'value="wide"' in wrong.text

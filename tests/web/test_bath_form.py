"""One form for a tub with its pipes and niche and for a closet flange, then one for tile."""

import re
from html import unescape

import pytest
from httpx2 import Response

from browsers import Browser
from firstcourse.app import Session
from firstcourse.app.bath import TYPED, USUAL
from firstcourse.units import Tape, parse_length

READ = {"A-B": "5' 0-3/8\"", "B-C": "8' 0-1/2\"", "C-D": "4' 11-5/8\"", "D-A": "8'", "A-C": "9' 5-5/8\""}


def send(browser: Browser, path: str, **fields: str) -> Response:
    return browser.post_form(path, follow_redirects=False, **fields)


@pytest.fixture
def job(owner: Browser) -> str:
    """A new job's address."""
    return send(owner, "/jobs/new", name="Hall", practice="us", tape="inch", job_tongue="en").headers["location"]


@pytest.fixture
def walk(owner: Browser, job: str) -> str:
    """A room as wide as a tub is long, taped."""
    begun = send(owner, f"{job}/walk", room="bath", do="plain", long="5", wide="8").headers["location"]
    for pair, length in READ.items():
        assert send(owner, begun, pair=pair, do="read", length=length).status_code == 303
    return begun


def offered(page: str) -> dict[str, str]:
    """What the fields of a form hold."""
    fields = re.findall(r'<input (?:id="[^"]*" )?name="([^"]+)"[^>]*value="([^"]*)"', unescape(page))
    return {name: value for name, value in fields if name in TYPED or name.startswith(("first", "spacing"))}


def finished(owner: Browser, walk: str, **fields: str) -> Response:
    form = owner.get(f"{walk}/done").text
    base = re.search(r'name="base" value="(\d+)"', form)
    assert base is not None
    given = {"base": base[1], "where": "place 1", "floor": "yes", "height feet": "8", **offered(form)}
    return send(owner, f"{walk}/done", **{**given, **fields})


TUB = {"tub": "yes", "tub side": "A-B", "membrane": "yes", "niche": "yes", "pipes": "left"}


def test_a_tub_its_pipes_and_a_niche_stand_where_the_room_has_them(owner: Browser, job: str, walk: str) -> None:
    closet = {"closet": "yes", "closet side": "D-A", "closet left": "48", "closet out": "12 1/2"}
    done = finished(owner, walk, **TUB, **closet)
    assert done.status_code == 303 and done.headers["location"] == f"{job}/choices", done.text
    room = Session(owner.get(f"{job}/job.yaml").text).job.rooms[0]
    assert room.floor is not None
    tub, flange = room.floor.openings
    assert (tub.kind.value, tub.side, tub.width, tub.depth) == (
        *("tub", "A-B"),
        *(parse_length("5' 0-3/8\""), parse_length("30 in")),
    )
    assert (flange.left, flange.out) == (parse_length("48 in"), parse_length("12 1/2 in"))
    walls = {wall.wall: wall for wall in room.walls}
    assert list(walls) == ["A-B", "B-C", "D-A"] and {wall.foot for wall in room.walls} == {"tub"}
    left, right = walls["D-A"].boards, walls["B-C"].boards
    assert left is not None and right is not None
    # The left wall ends at the tub: its boards begin as far from its right end as the right wall's reach.
    assert (left.left, right.right) == (parse_length("64 3/4 in"), parse_length("31 1/4 in"))
    assert [(one.id, one.left) for one in walls["D-A"].openings] == [
        (name, parse_length("81 in")) for name in ("spout", "valve", "shower head")
    ]
    assert [one.id for one in walls["A-B"].openings] == ["niche"] and not walls["B-C"].openings
    sized = {f"tile {n} {name}": "6" for n in (1, 2) for name in ("width", "height")}
    page = owner.get(f"{job}/choices").text
    chosen = dict(re.findall(r'<select name="(tile of [^"]+)">.*?<option selected>([^<]+)', page, re.DOTALL))
    assert chosen == {
        "tile of bath/floor": "floor tile",
        **{f"tile of bath/wall/{side}": "wall tile" for side in walls},
    }
    named = {
        "tile 1 id": "floor tile",
        "tile 2 id": "hexes",
        "tile 1 thickness": "3/8",
        "tile 2 thickness": "5/16",
    }
    saved = send(owner, f"{job}/choices", base="2", **sized, **named, **chosen)
    assert saved.status_code == 303, saved.text
    tiled = Session(owner.get(f"{job}/job.yaml").text).job
    assert [one.id for one in tiled.tiles] == ["floor tile", "hexes"]
    assert {wall.tiling.tile for wall in tiled.rooms[0].walls if wall.tiling} == {"hexes"}


def test_tile_that_is_not_measured_yet_is_left_out(owner: Browser, job: str, walk: str) -> None:
    assert finished(owner, walk, **TUB).status_code == 303
    given = {"tile 2 id": "wall tile", "tile 2 width": "6", "tile 2 height": "3", "tile 2 thickness": "1/4"}
    surfaces = {"tile of bath/floor": "floor tile", "tile of bath/wall/A-B": "wall tile"}
    assert (
        send(owner, f"{job}/choices", base="2", **given, **surfaces, **{"tile 1 id": "floor tile"}).status_code
        == 303
    )
    job_now = Session(owner.get(f"{job}/job.yaml").text).job
    assert [one.id for one in job_now.tiles] == ["wall tile"]
    room = job_now.rooms[0]
    assert room.floor is not None and room.floor.tiling is None
    assert [wall.tiling is not None for wall in room.walls] == [True, False, False]


@pytest.mark.parametrize(
    ("field", "value", "told"),
    [
        ("tub side", "A-C", "'A-C' is no side of this room; choose one of A-B, B-C, C-D, D-A"),
        ("tub out", "wide", "'wide in'"),
        ("tub reach", "200", "200 in is more than D-A is long"),
        ("niche left", "", "niche left"),
    ],
)
def test_what_is_wrong_is_told_and_what_was_typed_stays(
    owner: Browser, job: str, walk: str, field: str, value: str, told: str
) -> None:
    before = owner.get(f"{job}/job.yaml").text
    answer = finished(owner, walk, **{**TUB, field: value})
    assert answer.status_code == 422 and told in unescape(answer.text)
    assert offered(answer.text).get(field, value) == value and 'name="niche" value="yes" checked' in answer.text
    assert owner.get(f"{job}/job.yaml").text == before and owner.get(walk).status_code == 200


def test_every_usual_value_is_a_length_on_its_tape() -> None:
    for tape, usual in USUAL.items():
        unit = "in" if tape is Tape.INCH else "mm"
        assert {*usual} == {*TYPED} - {"closet left"}
        assert all(parse_length(f"{value} {unit}") for value in usual.values())

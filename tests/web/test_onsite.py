"""The work on site: what is ticked and measured is kept once, merged from several phones, and planned on."""

import html
import json
import re
from collections.abc import Callable
from functools import cache

import pytest
from httpx2 import Response

from browsers import TOKEN, Browser
from firstcourse.app import PlanResult, Session, Task
from firstcourse.app.site import site_work
from firstcourse.store.accounts import Account, Role
from firstcourse.store.jobs import KeptPlan, Kind
from firstcourse.web.house import House

WALL = """
name: one wall
date: 2026-11-25
tape: inch
tiles: [{id: white, size: [6 in, 12 in], thickness: 5/16 in, kind: ceramic}]
stock: [{id: board, size: [36 in, 60 in], thickness: 1/2 in}]
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {A-B: 70 in, B-C: 60 in, C-D: 70 in, D-A: 60 in}
    diagonals: {A-C: 92.20 in, B-D: 92.20 in}
    height: 80 in
    walls:
      - wall: A-B
        framing: {spacing: 16 in, first: 8 in}
        tiling: {tile: white}
"""


@cache
def planned() -> PlanResult:
    return Session(WALL).plan(effort=0)


def keep(house: House, job: str, revision: int, plan: PlanResult) -> None:
    beside = json.dumps({"practice": plan.practice, "changes": list(plan.changes)})
    house.jobs.keep_plan(job, revision, KeptPlan(effort=0, document=plan.document, beside=beside))


@pytest.fixture
def with_accounts() -> bool:
    return True


@pytest.fixture
def people(house: House) -> dict[str, Account]:
    return {name: house.accounts.create(name, Role.SETTER) for name in ("Ben", "Cleo")}


@pytest.fixture
def job(house: House, people: dict[str, Account]) -> str:
    """A planned job of both."""
    made = house.jobs.create("one wall", WALL, by=people["Ben"].id)
    house.jobs.share(made, [one.id for one in people.values()])
    keep(house, made, 1, planned())
    return made


@pytest.fixture
def ben(signed_in: Callable[[Account], Browser], people: dict[str, Account]) -> Browser:
    return signed_in(people["Ben"])


@pytest.fixture
def cleo(signed_in: Callable[[Account], Browser], people: dict[str, Account]) -> Browser:
    return signed_in(people["Cleo"])


def parts_with(kind: str) -> list[int]:
    """Numbers of the parts with a thing of a kind."""
    return [
        number
        for number, part in enumerate(site_work(planned()).parts)
        for ids in [[one.id for one in (*part.section.items, *part.section.entries)]]
        if any(name.startswith(kind) for name in ids)
    ]


def press(browser: Browser, job: str, part: int, thing: str) -> Response:
    """Press the button of a thing on its page, as a browser without scripts does."""
    page = browser.get(f"/jobs/{job}/site?part={part}").text
    (value,) = [
        one for one in map(html.unescape, re.findall(r'name="tick" value="([^"]*)"', page)) if f"|{thing}|" in one
    ]
    hidden = dict(re.findall(r'type="hidden" name="(nonce|plan)" value="([^"]*)"', page))
    path = f"/jobs/{job}/site"
    return browser.post_form(path, path, follow_redirects=False, tick=value, part=str(part), **hidden)


def told(thing: str, value: str, *, id: str, after: tuple[str, ...] = (), **other: object) -> dict[str, object]:
    plan = site_work(planned()).digest
    made = {"id": id, "thing": thing, "value": value, "after": after, "revision": 1, "plan": plan}
    return made | {"at": "2026-11-25T08:00:00Z"} | other


def sent(browser: Browser, job: str, *events: dict[str, object]) -> Response:
    token = TOKEN.search(browser.get(f"/jobs/{job}/site").text)
    assert token is not None
    return browser.post(
        f"/jobs/{job}/site/events", data={"events": json.dumps(events)}, headers={"x-token": token[1]}
    )


BOARD = "board/bath/wall/A-B#1"


def test_a_board_is_ticked_and_taken_back_without_scripts(ben: Browser, job: str, house: House) -> None:
    (part,) = parts_with("board/")
    assert press(ben, job, part, BOARD).status_code == 303
    page = ben.get(f"/jobs/{job}/site?part={part}").text
    assert page.count('aria-pressed="true"') == 1 and "Ben, " in page
    assert press(ben, job, part, BOARD).status_code == 303
    assert 'aria-pressed="true"' not in ben.get(f"/jobs/{job}/site?part={part}").text
    first, second = house.site.of(job)
    assert (first.value, second.value, second.after) == ("yes", "", (first.id,))
    assert (first.thing, first.by, first.revision, first.plan) == (BOARD, "Ben", 1, site_work(planned()).digest)


def test_a_form_or_an_event_sent_twice_is_kept_once(ben: Browser, job: str, house: House) -> None:
    page = ben.get(f"/jobs/{job}/site?part={parts_with('board/')[0]}").text
    fields = dict(re.findall(r'type="hidden" name="(nonce|plan)" value="([^"]*)"', page))
    for _ in range(2):
        ben.post_form(f"/jobs/{job}/site", f"/jobs/{job}/site", tick=f"|{BOARD}|yes", **fields)
    assert len(house.site.of(job)) == 1
    for _ in range(2):
        answer = sent(ben, job, told("cut/S1/1", "yes", id="phone-0001"))
        assert answer.json() == {"kept": ["phone-0001"], "refused": []}
    assert len(house.site.of(job)) == 2


def test_two_phones_are_merged_and_only_the_same_thing_is_asked_about(
    ben: Browser, cleo: Browser, job: str, house: House
) -> None:
    stud = "stud/bath/wall/A-B"
    sent(ben, job, told(BOARD, "yes", id="ben-00001"), told(stud, "third at 41", id="ben-00002"))
    sent(cleo, job, told(BOARD, "yes", id="cleo-0001"), told(stud, "third at 42", id="cleo-0002"))
    page = ben.get(f"/jobs/{job}/site").text
    assert "third at 41" in page and "third at 42" in page and "Ben, " in page and "Cleo, " in page
    assert page.count("say different things") == 1
    buttons = map(html.unescape, re.findall(r'name="tick" value="([^"]*)"', page))
    (chosen,) = [one for one in buttons if one.endswith("|third at 42")]
    hidden = dict(re.findall(r'type="hidden" name="(nonce|plan)" value="([^"]*)"', page))
    ben.post_form(f"/jobs/{job}/site", f"/jobs/{job}/site", tick=chosen, **hidden)
    assert "say different things" not in ben.get(f"/jobs/{job}/site").text
    assert house.site.of(job)[-1].after == ("ben-00002", "cleo-0002")


def test_lengths_are_read_and_what_is_none_is_told(ben: Browser, job: str, house: House) -> None:
    (part,) = parts_with("course/")
    page = ben.get(f"/jobs/{job}/site?part={part}").text
    hidden = dict(re.findall(r'type="hidden" name="(nonce|plan|part)" value="([^"]*)"', page))
    course = {"was course/bath/wall/A-B": "|"}
    wrong = ben.post_form(f"/jobs/{job}/site", **hidden, **course, **{"blank course/bath/wall/A-B": "about 3"})
    assert wrong.status_code == 422 and 'role="alert"' in wrong.text and 'value="about 3"' in wrong.text
    assert house.site.of(job) == ()
    ben.post_form(f"/jobs/{job}/site", **hidden, **course, **{"blank course/bath/wall/A-B": '3 1/4"'})
    (event,) = house.site.of(job)
    assert (event.thing, event.value) == ("course/bath/wall/A-B", '3 1/4"')
    answer = sent(ben, job, told("course/bath/wall/A-B", "low", id="phone-0001"))
    assert answer.json()["kept"] == [] and answer.json()["refused"][0]["id"] == "phone-0001"


@pytest.mark.parametrize(
    "wrong",
    [
        {"thing": "board/bath/wall/A-B#99"},
        {"thing": "moon/1"},
        {"value": "maybe"},
        {"id": "x"},
        {"plan": "no digest"},
        {"at": "yesterday"},
        {"value": "y" * 2000},
        {"more": 1},
    ],
)
def test_an_event_that_is_wrong_is_refused_alone(
    ben: Browser, job: str, house: House, wrong: dict[str, object]
) -> None:
    answer = sent(ben, job, told(BOARD, "yes", id="phone-0001") | wrong, told("cut/S1/1", "yes", id="phone-0002"))
    assert answer.json()["kept"] == ["phone-0002"] and len(answer.json()["refused"]) == 1
    assert [event.id for event in house.site.of(job)] == ["phone-0002"]


def test_events_are_limited_and_nothing_else_is_read(ben: Browser, job: str) -> None:
    many = [told("cut/S1/1", "yes", id=f"phone-{n:05}") for n in range(501)]
    assert sent(ben, job, *many).status_code == 400
    token = TOKEN.search(ben.get(f"/jobs/{job}/site").text)
    assert token is not None
    for text in ("{", "7", "[" * 100_000):
        data, headers = {"events": text}, {"x-token": token[1]}
        assert ben.post(f"/jobs/{job}/site/events", data=data, headers=headers).status_code == 400


def test_events_of_another_job_stay_there(
    ben: Browser, job: str, people: dict[str, Account], house: House
) -> None:
    other = house.jobs.create("other", WALL, by=people["Ben"].id)
    sent(ben, job, told(BOARD, "yes", id="phone-0001"))
    assert house.site.of(other) == ()
    theirs = house.jobs.create("theirs", WALL, by=people["Cleo"].id)
    for path in ("site", "site/left?before=1&after=1", "site/drawing?picture=sheet/S1"):
        assert ben.get(f"/jobs/{theirs}/{path}").status_code == 404
    assert ben.post_form(f"/jobs/{theirs}/site/events", events="[]").status_code == 404


def test_drawings_of_each_part_are_there(ben: Browser, job: str) -> None:
    work = site_work(planned())
    drawn = 0
    for number, part in enumerate(work.parts):
        page = ben.get(f"/jobs/{job}/site?part={number}")
        assert page.status_code == 200
        for path in map(html.unescape, re.findall(r'<img [^>]*src="([^"]*)"', page.text)):
            assert ben.get(path).text.startswith("<svg")
        drawn += page.text.count("<img")
        assert html.escape(part.section.title, quote=False) in html.unescape(page.text)
    sheets = len(planned().plan.sheets)
    assert drawn == sheets + 2  # its boards and its tile; every cut of a tile here is straight
    assert ben.get(f"/jobs/{job}/site/drawing?picture=sheet/S99").status_code == 404


def test_boards_that_are_set_are_fixed_and_the_rest_is_planned_on(
    ben: Browser, job: str, house: House, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[tuple[str, int, Task]] = []
    monkeypatch.setattr(house.desk, "ask", lambda *one: asked.append(one))
    sent(ben, job, told(BOARD, "yes", id="phone-0001"), told("course/bath/wall/A-B", '4"', id="phone-0002"))
    answer = ben.post_form(f"/jobs/{job}/site/fix", f"/jobs/{job}/site", follow_redirects=False)
    assert answer.headers["location"] == f"/jobs/{job}/site/left?before=1&after=2"
    ((where, number, task),) = asked
    assert (where, number) == (job, 2)
    done = Session(task.text).job.done
    assert done is not None and [board.board for board in done.surfaces[0].boards if board.up] == [1]
    assert "start" in task.text
    assert "not there" in ben.get(answer.headers["location"]).text
    keep(house, job, 2, Session(task.text).plan(effort=0))
    page = ben.get(answer.headers["location"]).text
    assert "Up, and stay" in page and "Cuts" in page
    # It is up in the new plan; another board that is ticked on the old plan afterwards still counts.
    late = told("board/bath/wall/A-B#2", "yes", id="phone-0003")
    assert sent(ben, job, late).json()["kept"] == ["phone-0003"]
    assert re.search(r"2/\d", ben.get(f"/jobs/{job}/site").text)
    # And taken out again it is up no more.
    site = ben.get(f"/jobs/{job}/site?part={parts_with('board/')[0]}").text
    assert "up in the plan" in site
    press(ben, job, parts_with("board/")[0], BOARD)
    ben.post_form(f"/jobs/{job}/site/fix", f"/jobs/{job}/site", follow_redirects=False)
    done = Session(asked[-1][2].text).job.done
    assert done is not None and [board.board for board in done.surfaces[0].boards if board.up] == [2]


def test_what_was_set_by_an_earlier_plan_is_never_lost(ben: Browser, job: str, house: House) -> None:
    moved = WALL.replace("first: 8 in", "first: 3 in").replace("36 in, 60 in", "32 in, 48 in")
    house.jobs.save(job, "one wall", moved, base=1, by=house.accounts.all()[0].id, kind=Kind.EDIT)
    keep(house, job, 2, Session(moved).plan(effort=0))
    sent(ben, job, told(BOARD, "yes", id="phone-0001"))
    page = ben.get(f"/jobs/{job}/site").text
    assert "Set by an earlier plan" in page and "bath/wall/A-B#1" in page


def test_a_job_that_is_not_planned_says_so(ben: Browser, people: dict[str, Account], house: House) -> None:
    bare = house.jobs.create("bare", WALL, by=people["Ben"].id)
    assert "no plan yet" in ben.get(f"/jobs/{bare}/site").text
    assert ben.post_form(f"/jobs/{bare}/site/fix", f"/jobs/{bare}/site").status_code == 400


def saved_file(**other: object) -> bytes:
    """What the pack on a phone saves."""
    plan, at = site_work(planned()).digest, "2026-11-25T08:00:00Z"
    measured = {"stud/bath/wall/A-B": {"value": "third at 41", "at": at}}
    made = {"format": "firstcourse-ticked", "version": 1, "plan": plan, "job": "one wall", "saved": at}
    return json.dumps(made | {"ticks": {BOARD: at, "cut/S1/1": at}, "measured": measured} | other).encode()


def send_file(browser: Browser, job: str, data: bytes) -> Response:
    files = {"file": ("ticked.json", data, "application/json")}
    path = f"/jobs/{job}/site"
    return browser.post_form(f"{path}/file", path, files=files, follow_redirects=False)


def test_a_file_of_ticks_is_taken_in_once(ben: Browser, cleo: Browser, job: str, house: House) -> None:
    sent(cleo, job, told("stud/bath/wall/A-B", "third at 42", id="cleo-0001"))
    for _ in range(2):
        assert send_file(ben, job, saved_file()).status_code == 303
    assert {event.thing: event.by for event in house.site.of(job)[1:]} == {
        BOARD: "Ben",
        "cut/S1/1": "Ben",
        "stud/bath/wall/A-B": "Ben",
    }
    assert len(house.site.of(job)) == 4
    page = ben.get(f"/jobs/{job}/site").text
    assert page.count("say different things") == 1 and "third at 41" in page and "third at 42" in page


@pytest.mark.parametrize(
    "wrong", [b"", b"{", b"[]", b"7", {"plan": "0" * 64}, {"ticks": {"moon/1": "2026-11-25T08:00:00Z"}}], ids=repr
)
def test_a_wrong_file_is_told_and_nothing_of_it_kept(
    ben: Browser, job: str, house: House, wrong: bytes | dict[str, object]
) -> None:
    answer = send_file(ben, job, wrong if isinstance(wrong, bytes) else saved_file(**wrong))
    assert answer.status_code == 422 and 'role="alert"' in answer.text
    assert house.site.of(job) == ()

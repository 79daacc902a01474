"""Round the room with the tape, page by page, as a browser without scripts does it."""

import re

import pytest
from httpx2 import Response

from browsers import Browser
from firstcourse.web.house import House

READ = {
    "A-B": ("8", "0", "4"),
    "B-C": ("5", "0", "0"),
    "C-D": ("8", "0", "2"),
    "D-A": ("5", "0", "2"),
    "A-C": ("9", "5", "5"),
    "B-D": ("9", "5", "4"),
}


def send(browser: Browser, path: str, **fields: str) -> Response:
    return browser.post_form(path, follow_redirects=False, **fields)


@pytest.fixture
def job(owner: Browser) -> str:
    """A new job's address."""
    answer = send(owner, "/jobs/new", name="Loft", practice="us", tape="inch", job_tongue="en")
    return answer.headers["location"]


def asked(page: str) -> str:
    found = re.search(r'name="pair" value="([A-Z]-[A-Z])">\s*<h2>', page)
    return found[1] if found else ""


def test_a_room_is_walked_taped_and_put_into_the_job(owner: Browser, job: str, house: House) -> None:
    answer = send(owner, f"{job}/walk", room="loft bath", do="plain", long="8", wide="5")
    walk = answer.headers["location"]
    page = owner.get(walk).text
    taps = 0
    while pair := asked(page):
        feet, inches, parts = READ[pair]
        assert (
            send(owner, walk, pair=pair, do="read", feet=feet, inches=inches, sixteenths=parts).status_code == 303
        )
        page = owner.get(walk).text
        taps += 1
    assert taps == 6
    assert "enough to plan" in page
    form = owner.get(f"{walk}/done").text
    base = re.search(r'name="base" value="(\d+)"', form)
    assert base is not None
    done = send(
        owner,
        f"{walk}/done",
        base=base[1],
        where="place 1",
        floor="yes",
        **{"height feet": "8", "wall A-B": "yes", "first A-B": "15 1/4", "spacing": "16"},
    )
    assert done.status_code == 303, done.text
    text = owner.get(f"{job}/job.yaml").text
    assert "loft bath" in text and "A-C: 9' 5-5/16\"" in text and "wall: A-B" in text
    assert owner.get(walk).status_code == 404


def test_a_walk_is_laid_out_wall_by_wall(owner: Browser, job: str) -> None:
    legs = ""
    for about, turn in (("10", "90"), ("8", "90"), ("4", "90"), ("3", "-90"), ("6", "90")):
        page = send(owner, f"{job}/walk", room="den", legs=legs, about=about, do=turn).text
        legs = re.search(r'name="legs" value="([^"]*)"', page)[1].replace("&#39;", "'")  # type: ignore[index]
        assert 'value="begin"' not in page
    page = send(owner, f"{job}/walk", room="den", legs=legs, about="5", do="90").text
    assert 'value="begin"' in page
    legs += ";90 5 ft"
    begun = send(owner, f"{job}/walk", room="den", legs=legs, do="begin")
    assert begun.status_code == 303
    assert asked(owner.get(begun.headers["location"]).text) == "A-B"


def test_a_slip_is_answered_at_once(owner: Browser, job: str) -> None:
    walk = send(owner, f"{job}/walk", room="bath", do="plain", long="8", wide="5").headers["location"]
    for pair, (feet, inches, parts) in READ.items():
        wrong = "7" if pair == "B-D" else inches
        send(owner, walk, pair=pair, do="read", feet=feet, inches=wrong, sixteenths=parts)
    page = owner.get(walk).text
    assert "is wrong" in page or "looks" in page
    assert "enough to plan" not in page


def test_what_is_no_reading_is_told_and_nothing_is_lost(owner: Browser, job: str) -> None:
    walk = send(owner, f"{job}/walk", room="bath", do="plain", long="8", wide="5").headers["location"]
    send(owner, walk, pair="A-B", do="read", feet="8")
    for wrong in ({"feet": "x"}, {}, {"length": "8"}, {"inches": "1e9"}):
        answer = send(owner, walk, pair="B-C", do="read", **wrong)
        assert answer.status_code == 422 and 'role="alert"' in answer.text
    assert send(owner, walk, pair="A-Z", do="read", feet="8").status_code == 422
    assert send(owner, walk, pair="A-B", do="burn").status_code == 400
    assert asked(owner.get(walk).text) == "B-C"


def test_two_phones_tape_one_room(house: House, owner: Browser, job: str) -> None:
    walk = send(owner, f"{job}/walk", room="bath", do="plain", long="8", wide="5").headers["location"]
    send(owner, walk, pair="A-B", do="read", feet="8")
    send(owner, walk, pair="C-D", do="read", feet="8")
    kept = house.walks.get(job.rsplit("/", 1)[1], walk.rsplit("/", 1)[1])
    assert kept is not None and kept.document.count('"pair"') == 2


def test_a_walk_of_another_job_is_not_there(owner: Browser, job: str) -> None:
    walk = send(owner, f"{job}/walk", room="bath", do="plain", long="8", wide="5").headers["location"]
    other = send(owner, "/jobs/new", name="Other", practice="us", tape="mm", job_tongue="en").headers["location"]
    assert owner.get(f"{other}/walk/{walk.rsplit('/', 1)[1]}").status_code == 404


def test_a_walk_that_goes_nowhere_is_told(owner: Browser, job: str) -> None:
    for fields in (
        {"do": "plain", "long": "", "wide": "5"},
        {"do": "90", "about": "-4"},
        {"do": "begin", "legs": "90 8 ft;90 5 ft"},
        {"do": "plain", "long": "8", "wide": "5", "room": ""},
    ):
        answer = send(owner, f"{job}/walk", **({"room": "bath"} | fields))
        assert answer.status_code == 422 and 'role="alert"' in answer.text

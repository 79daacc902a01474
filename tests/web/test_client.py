"""The client's page: what is shown of a plan, and answers that are bound to that plan."""

import html
import re
from collections.abc import Callable

import pytest
from httpx2 import Response
from test_onsite import WALL, keep, planned

from browsers import TOKEN, Browser
from firstcourse.app import Session
from firstcourse.store.accounts import Account, Role
from firstcourse.web.house import House

DRAWN = "M10 20 L30 40 L600 200 M1 1 L2 2"


@pytest.fixture
def with_accounts() -> bool:
    return True


@pytest.fixture
def setter(house: House) -> Account:
    return house.accounts.create("Ben", Role.SETTER)


@pytest.fixture
def job(house: House, setter: Account) -> str:
    made = house.jobs.create("one wall", WALL, by=setter.id)
    keep(house, made, 1, planned())
    return made


@pytest.fixture
def client(house: House, browser: Callable[[], Browser], setter: Account, job: str) -> Browser:
    """The browser of the job's client."""
    cookie = house.accounts.enter(house.accounts.new_link(job, "client", by=setter.id))
    assert cookie is not None
    came = browser()
    came.cookies.set("firstcourse", cookie)
    return came


def send(client: Browser, job: str, **fields: str) -> Response:
    page = client.get(f"/jobs/{job}/client").text
    token = TOKEN.search(page)
    assert token is not None
    hidden = dict(re.findall(r'type="hidden" name="(nonce|plan)" value="([^"]*)"', page))
    data = {"token": token[1], "name": "Dora", "do": "approve"} | hidden | fields
    return client.post(f"/jobs/{job}/client/answer", data=data, follow_redirects=False)


def test_the_client_sees_tile_joints_and_rooms(client: Browser, job: str) -> None:
    page = client.get(f"/jobs/{job}/client").text
    assert "white" in page and "Grout joint" in page and "Soft joints" in page
    drawings = [html.unescape(one) for one in re.findall(r'<img [^>]*src="([^"]*)"', page)]
    assert any("/client/drawing?room=bath" in one for one in drawings)
    assert all(client.get(one).text.startswith("<svg") for one in drawings) and len(drawings) == 2
    assert client.get(f"/jobs/{job}/client/drawing?room=moon").status_code == 404


def test_an_approval_is_kept_once_with_its_plan_and_seen_by_the_setter(
    client: Browser, job: str, house: House, setter: Account, signed_in: Callable[[Account], Browser]
) -> None:
    for _ in range(2):
        assert send(client, job, signature=DRAWN, nonce="same").status_code == 303
    (kept,) = house.answers.of(job)
    assert (kept.approves, kept.name, kept.signature, kept.revision) == (True, "Dora", DRAWN, 1)
    page = signed_in(setter).get(f"/jobs/{job}").text
    assert "Dora approves" in page and DRAWN in page and "earlier plan" not in page
    other = WALL.replace("80 in", "81 in")
    keep(house, job, 1, Session(other).plan(effort=0))
    assert "earlier plan" in signed_in(setter).get(f"/jobs/{job}").text


def test_what_is_wrong_is_kept_in_the_clients_words(client: Browser, job: str, house: House) -> None:
    assert send(client, job, do="wrong", words="<b>The niche</b>\r\nis too low").status_code == 303
    (kept,) = house.answers.of(job)
    assert (kept.approves, kept.words) == (False, "<b>The niche</b>\nis too low")
    assert "&lt;b&gt;The niche" in client.get(f"/jobs/{job}/client").text


@pytest.mark.parametrize(
    "wrong",
    [
        {"name": "  "},
        {"name": "n" * 81},
        {"do": "wrong", "words": " "},
        {"words": "w" * 2001},
        {"signature": 'M1 1"/><script>'},
        {"signature": "M1 1 " * 5000},
        {"plan": "0" * 64},
    ],
)
def test_a_wrong_answer_is_told_and_not_kept(
    client: Browser, job: str, house: House, wrong: dict[str, str]
) -> None:
    answer = send(client, job, **wrong)
    assert answer.status_code == 422 and 'role="alert"' in answer.text
    assert house.answers.of(job) == ()


def test_an_answer_goes_to_the_own_job_alone(client: Browser, job: str, house: House, setter: Account) -> None:
    other = house.jobs.create("other", WALL, by=setter.id)
    keep(house, other, 1, planned())
    page = client.get(f"/jobs/{job}/client").text
    data = dict(re.findall(r'type="hidden" name="(\w+)" value="([^"]*)"', page))
    sent = client.post(f"/jobs/{other}/client/answer", data={**data, "name": "Dora", "do": "approve"})
    assert sent.status_code == 404 and house.answers.of(other) == ()
    assert send(client, job, do="burn").status_code == 400

"""Every route for every role: who may not ask is not answered, and another's job is as if it were not there."""

from collections.abc import Callable

import pytest

from browsers import TOKEN, Browser
from firstcourse.app.new_jobs import new_job_text
from firstcourse.store.accounts import Account, Role
from firstcourse.web.asking import Needs
from firstcourse.web.house import House
from firstcourse.web.routes import PAGES, Page

OPEN = {
    ("GET", "/static/{name:path}"),
    ("GET", "/worker.js"),
    ("GET", "/enter"),
    ("POST", "/enter"),
    ("POST", "/enter/new-code"),
    ("GET", "/sign-in"),
    ("POST", "/sign-in"),
}
"""What anybody is answered; a route is added here by hand, so that none is open by chance."""
CLIENTS = {
    ("GET", "/"),
    ("POST", "/leave"),
    ("GET", "/jobs/{job}/client"),
    ("POST", "/jobs/{job}/client/answer"),
    ("GET", "/jobs/{job}/client/drawing"),
    ("GET", "/jobs/{job}/drawing"),
}
OWNERS = {
    ("GET", "/people"),
    ("POST", "/people"),
    ("POST", "/people/{account}/code"),
    ("POST", "/people/{account}/close"),
    ("GET", "/jobs/{job}/people"),
    ("POST", "/jobs/{job}/people"),
}


@pytest.fixture
def with_accounts() -> bool:
    return True


@pytest.fixture
def people(house: House) -> dict[str, Account]:
    accounts = house.accounts
    return {
        "owner": accounts.create("Ada", Role.OWNER),
        "setter": accounts.create("Ben", Role.SETTER),
        "other": accounts.create("Cleo", Role.SETTER),
    }


@pytest.fixture
def job(house: House, people: dict[str, Account]) -> str:
    """A job of the setter's."""
    text = new_job_text(name="Bath", practice="us", tape="inch", tongue="en")
    return house.jobs.create("Bath", text, by=people["setter"].id)


@pytest.fixture
def client(house: House, browser: Callable[[], Browser], people: dict[str, Account]) -> Callable[[str], Browser]:
    """The browser of a client of a job."""

    def come(of: str) -> Browser:
        cookie = house.accounts.enter(house.accounts.new_link(of, "client", by=people["owner"].id))
        assert cookie is not None
        came = browser()
        came.cookies.set("firstcourse", cookie)
        return came

    return come


def asked(came: Browser, page: Page, job: str, account: str = "0" * 20) -> int:
    """The code of the answer to a request with a right token."""
    path = page.path.replace("{job}", job).replace("{account}", account).replace("{name:path}", "face.css")
    if page.method == "GET":
        return came.get(path, follow_redirects=False).status_code
    token = TOKEN.search(came.get("/enter").text)
    assert token is not None
    return came.post(path, data={"token": token[1]}, follow_redirects=False).status_code


def refused(came: Browser, page: Page, job: str, account: str = "0" * 20) -> bool:
    """Whether a request is answered as if there were nothing, or sent to sign in."""
    code = asked(came, page, job, account)
    assert code != 500
    return code == 404


def test_each_route_says_what_it_needs_as_listed_here() -> None:
    by_need = {need: {(page.method, page.path) for page in PAGES if page.needs is need} for need in Needs}
    assert by_need[Needs.NOTHING] == OPEN
    assert by_need[Needs.READ_JOB] | by_need[Needs.SIGNED_IN] == CLIENTS
    assert by_need[Needs.OWNER] == OWNERS
    for page in PAGES:
        assert ("{job}" in page.path) <= (page.needs in (Needs.JOB, Needs.READ_JOB, Needs.OWNER)), page.path


def test_nobody_is_sent_to_sign_in(browser: Callable[[], Browser], job: str) -> None:
    nobody = browser()
    for page in PAGES:
        if (page.method, page.path) not in OPEN:
            path = (
                page.path.replace("{job}", job).replace("{account}", "0" * 20).replace("{name:path}", "plan.json")
            )
            answer = nobody.request(page.method, path, follow_redirects=False)
            assert (answer.status_code, answer.headers.get("location")) == (303, "/sign-in"), page


def test_a_client_sees_the_own_job_alone(
    client: Callable[[str], Browser], house: House, people: dict[str, Account], job: str
) -> None:
    other = house.jobs.create("Other", "name: Other", by=people["setter"].id)
    came = client(job)
    for page in PAGES:
        key = (page.method, page.path)
        if key in CLIENTS:
            assert "{job}" not in page.path or refused(came, page, other), page
        elif key not in OPEN:
            assert refused(came, page, job), page


def test_a_setter_works_on_the_own_jobs_alone(
    signed_in: Callable[[Account], Browser], people: dict[str, Account], job: str
) -> None:
    other, setter, owner = (signed_in(people[who]) for who in ("other", "setter", "owner"))
    for page in PAGES:
        if "{job}" in page.path:
            assert refused(other, page, job), page
            assert refused(owner, page, "0" * 20), page
    # Whoever may ask is told what is wrong with it at most; these have nothing to show without a plan or a walk.
    shown = [
        page
        for page in PAGES
        if "{job}" in page.path
        and "{walk}" not in page.path
        and "{photo}" not in page.path
        and not page.path.endswith(("/surface", "/drawing", "{name:path}", "{number}", "{surface:path}"))
    ]
    for page in shown:
        assert refused(setter, page, job) == (page.needs is Needs.OWNER), page
    for page in shown:
        assert not refused(owner, page, job), page


def test_people_are_the_owners_alone(
    signed_in: Callable[[Account], Browser], people: dict[str, Account], job: str
) -> None:
    setter, owner = signed_in(people["setter"]), signed_in(people["owner"])
    for page in PAGES:
        if (page.method, page.path) in OWNERS:
            assert refused(setter, page, job, people["other"].id), page
            assert not refused(owner, page, job, people["other"].id), page


def test_a_client_link_that_is_ended_lets_nobody_in(
    client: Callable[[str], Browser], house: House, job: str
) -> None:
    came = client(job)
    assert came.get(f"/jobs/{job}/client").status_code == 200
    (link,) = house.accounts.links(job)
    house.accounts.end_link(job, link.id)
    assert came.get(f"/jobs/{job}/client", follow_redirects=False).headers["location"] == "/sign-in"

"""What pages refuse: other sites, forms without their token, too much, too many tries; what every answer says."""

import logging
import re
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from starlette.responses import Response

from browsers import TOKEN, Browser
from firstcourse.store import accounts as store_accounts
from firstcourse.store.accounts import Account, Role
from firstcourse.store.passwords import is_password, password_hash
from firstcourse.web.app import application
from firstcourse.web.house import House, Settings
from firstcourse.web.limits import MOST_TRIES

GOOD = "seven wet trowels by a kerb"


@pytest.fixture
def with_accounts() -> bool:
    return True


def test_a_host_that_is_not_ours_is_refused(browser: Callable[[], Browser]) -> None:
    assert browser().get("/enter", headers={"host": "evil.example"}).status_code == 400


@pytest.mark.parametrize(
    "headers",
    [
        {"origin": "https://evil.example"},
        {"origin": "null"},
        {"origin": "http://127.0.0.1:9"},
        {"sec-fetch-site": "cross-site"},
        {"sec-fetch-site": "same-site"},
    ],
)
def test_a_form_from_another_site_is_refused(owner: Browser, headers: dict[str, str]) -> None:
    token = TOKEN.search(owner.get("/jobs").text)
    assert token is not None
    sent = {"token": token[1], "name": "x", "practice": "us", "tape": "inch", "job_tongue": "en"}
    assert owner.post("/jobs/new", data=sent, headers=headers).status_code == 403
    assert owner.post("/jobs/new", data=sent, headers={"origin": "http://127.0.0.1:8123"}).status_code == 200


def test_a_form_without_its_own_token_is_refused(owner: Browser, browser: Callable[[], Browser]) -> None:
    theirs = TOKEN.search(browser().get("/enter").text)
    assert theirs is not None
    for token in ("", "0" * 64, theirs[1]):
        assert owner.post("/jobs/new", data={"token": token, "name": "x"}).status_code == 403


def test_a_form_that_is_too_large_is_refused(owner: Browser) -> None:
    assert owner.post_form("/jobs/new", name="x" * 2_100_000).status_code == 413
    big = {"file": ("job.yaml", b"#" * 4_100_000)}
    assert owner.post_form("/jobs/upload", files=big).status_code == 413


def test_every_answer_carries_the_headers(owner: Browser, house: House) -> None:
    for path in ("/jobs", "/static/face.css", "/nothing", "/enter"):
        headers = owner.get(path).headers
        policy = headers["content-security-policy"]
        assert "unsafe" not in policy
        for one in ("default-src", "object-src", "base-uri", "frame-ancestors"):
            assert f"{one} 'none'" in policy
        assert headers["x-content-type-options"] == "nosniff"
    assert owner.get("/jobs").headers["cache-control"] == "no-store"


def test_over_tls_the_cookie_is_for_this_host_alone(house: House) -> None:
    secure = House(house.database, Settings(address="https://a.example", hosts=("a.example",)))
    came = Browser(application(secure), base_url="https://a.example")
    code = house.accounts.new_code(house.accounts.only_owner("owner").id)
    came.post_form("/enter", "/enter", code=code)
    (cookie,) = [one for one in came.cookies.jar if one.name == "__Host-firstcourse"]
    assert cookie.secure and cookie.path == "/" and not cookie.domain_specified
    assert cookie.has_nonstandard_attr("HttpOnly")
    assert "max-age=" in came.get("/jobs").headers["strict-transport-security"]


def test_a_code_signs_in_once_and_for_ten_minutes(
    house: House, browser: Callable[[], Browser], monkeypatch: pytest.MonkeyPatch
) -> None:
    owner = house.accounts.only_owner("owner")
    code = house.accounts.new_code(owner.id)
    assert browser().post_form("/enter", "/enter", code=code.upper().replace("-", " ")).status_code == 200
    assert browser().post_form("/enter", "/enter", code=code).status_code == 403
    late = house.accounts.new_code(owner.id)
    monkeypatch.setattr(store_accounts, "datetime", _Later)
    assert browser().post_form("/enter", "/enter", code=late).status_code == 403


class _Later(datetime):
    @classmethod
    def now(cls, tz: object = None) -> datetime:  # type: ignore[override]
        return datetime.now(UTC) + timedelta(minutes=11)


def test_who_tries_too_often_must_wait_even_with_the_right_password(
    house: House, browser: Callable[[], Browser]
) -> None:
    house.accounts.create("Ada", Role.OWNER, password=password_hash(GOOD, name="Ada"))
    came = browser()
    assert came.post_form("/sign-in", "/sign-in", name="ada", password=GOOD).status_code == 200
    for _ in range(MOST_TRIES):
        house.limiter.failed("name ada")
    assert browser().post_form("/sign-in", "/sign-in", name="Ada ", password=GOOD).status_code == 429


def test_passwords_are_kept_as_argon2id(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.undo()
    kept = password_hash(GOOD, name="Ada")
    assert kept.startswith("$argon2id$v=19$m=65536,t=3,p=4$")
    assert is_password(kept, GOOD) and not is_password(kept, GOOD + " ")


def test_a_wrong_password_says_no_more_than_a_wrong_name(house: House, browser: Callable[[], Browser]) -> None:
    house.accounts.create("Ada", Role.OWNER, password=password_hash(GOOD, name="Ada"))
    house.accounts.create("Ben", Role.SETTER)
    told = set()
    for name in ("Ada", "Nobody", "Ben"):
        answer = browser().post_form("/sign-in", "/sign-in", name=name, password="wrong")
        told.add((answer.status_code, TOKEN.sub("", answer.text).replace(f'value="{name}"', "")))
    assert len(told) == 1


@pytest.mark.parametrize("password", ["short", "passwordpassword", "ada ada ada 1", "111111111111", "x" * 129])
def test_weak_passwords_are_refused(owner: Browser, house: House, password: str) -> None:
    assert owner.post_form("/account/password", "/account", new=password).status_code == 422
    account = house.accounts.by_name("Ada")
    assert account is not None and not account.password


def test_a_new_password_asks_for_the_old_one_and_signs_others_out(
    house: House, owner: Browser, browser: Callable[[], Browser]
) -> None:
    assert owner.post_form("/account/password", "/account", new=GOOD).status_code == 200
    other = browser()
    other.post_form("/sign-in", "/sign-in", name="Ada", password=GOOD)
    assert other.get("/account").status_code == 200
    assert owner.post_form("/account/password", "/account", old="wrong", new=GOOD + "s").status_code == 403
    assert owner.post_form("/account/password", "/account", old=GOOD, new=GOOD + "s").status_code == 200
    assert owner.get("/account", follow_redirects=False).status_code == 200
    assert other.get("/account", follow_redirects=False).status_code == 303


def test_leaving_ends_the_session_not_the_cookie_alone(owner: Browser) -> None:
    cookie = owner.cookies["firstcourse"]
    owner.post_form("/leave")
    owner.cookies.set("firstcourse", cookie)
    assert owner.get("/jobs", follow_redirects=False).status_code == 303


def test_an_account_that_is_closed_is_out_at_once(house: House, owner: Browser) -> None:
    account = house.accounts.by_name("Ada")
    assert account is not None
    house.accounts.close(account.id, closed=True)
    assert owner.get("/jobs", follow_redirects=False).status_code == 303


def test_a_fault_of_ours_tells_nothing_and_logs_nothing_that_was_typed(
    owner: Browser, house: House, monkeypatch: pytest.MonkeyPatch, caplog: pytest.LogCaptureFixture
) -> None:
    def broken(*_: object, **__: object) -> Response:
        raise RuntimeError("broken on purpose")

    monkeypatch.setattr(house.jobs, "cards", broken)
    with caplog.at_level(logging.DEBUG):
        answer = owner.get("/jobs?archived=secret-word")
    assert answer.status_code == 500 and "broken on purpose" not in answer.text
    assert "default-src 'none'" in answer.headers["content-security-policy"]
    (told,) = [logging.Formatter().format(one) for one in caplog.records if one.name.startswith("firstcourse")]
    assert "GET /jobs failed" in told and "broken on purpose" in told
    assert "secret-word" not in told and owner.cookies["firstcourse"] not in told


def test_the_database_keeps_no_secret_as_it_is(house: House, owner: Browser) -> None:
    code = house.accounts.new_code(house.accounts.only_owner("owner").id)
    raw = house.database.engine.raw_connection()
    try:
        held = "\n".join(raw.driver_connection.iterdump())  # type: ignore[union-attr]
    finally:
        raw.close()
    assert code not in held and code.replace("-", "") not in held and owner.cookies["firstcourse"] not in held


def test_what_is_written_of_safety_names_tests_that_there_are() -> None:
    root = Path(__file__).parents[2]
    page = (root / "docs" / "security.md").read_text(encoding="utf-8")
    tests = "".join(file.read_text(encoding="utf-8") for file in (root / "tests").rglob("test_*.py"))
    named = re.findall(r"`(?:tests/[\w/]+\.py::)?(test_\w+)`", page)
    assert len(named) > 15
    assert [one for one in named if f"def {one}(" not in tests] == []
    files = re.findall(r"`(tests/[\w/]+\.py)", page)
    assert files and [one for one in files if not (root / one).is_file()] == []


def test_what_a_script_sends_that_is_no_form_needs_the_token_as_a_header(owner: Browser) -> None:
    token = TOKEN.search(owner.get("/jobs").text)
    assert token is not None
    assert owner.post("/jobs/new", json={"name": "x"}).status_code == 403
    assert owner.post("/jobs/new", json={"name": "x"}, headers={"x-token": token[1]}).status_code == 422


def test_a_database_that_is_away_is_our_fault_and_says_nothing_else(
    owner: Browser, house: House, monkeypatch: pytest.MonkeyPatch
) -> None:
    def away(_cookie: str) -> None:
        raise OSError("secret-host is away")

    monkeypatch.setattr(house.accounts, "signed_in", away)
    answer = owner.get("/jobs")
    assert answer.status_code == 500 and "secret-host" not in answer.text
    assert "content-security-policy" in answer.headers


def test_one_sees_the_own_browsers_and_signs_one_out(
    house: House, signed_in: Callable[[Account], Browser], owner: Browser
) -> None:
    ben = house.accounts.create("Ben", Role.SETTER)
    desk, phone = signed_in(ben), signed_in(ben)
    page = desk.get("/account").text
    handles = re.findall(r'name="session" value="([0-9a-f]{64})"', page)
    assert page.count("This browser") == 1 and len(handles) == 1
    # Another's browser is none of one's own, and no handle signs in.
    assert owner.post_form("/account/leave-one", session=handles[0], follow_redirects=False).status_code == 400
    stranger = Browser(application(house), base_url="http://127.0.0.1:8123")
    stranger.cookies.set("firstcourse", handles[0])
    assert stranger.get("/account", follow_redirects=False).status_code == 303
    assert phone.get("/account", follow_redirects=False).status_code == 200
    assert desk.post_form("/account/leave-one", session=handles[0], follow_redirects=False).status_code == 303
    assert phone.get("/account", follow_redirects=False).status_code == 303
    assert 'name="session"' not in desk.get("/account").text

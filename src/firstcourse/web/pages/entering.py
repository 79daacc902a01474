"""Coming in by a code or with a password, and leaving."""

from starlette.exceptions import HTTPException
from starlette.responses import Response

from firstcourse.store.passwords import is_password
from firstcourse.web.asking import Ask
from firstcourse.web.cookies import read_cookie, sign_in, sign_out
from firstcourse.web.noted import note


def form(ask: Ask) -> Response:
    """Where a code is typed; a script takes it from the address where it stands behind the #."""
    return ask.page("enter.html", fault="", sent=False)


def enter(ask: Ask) -> Response:
    """Sign a browser in by its code."""
    who = f"code {came_from(ask)}"
    _refuse_too_many(ask, who)
    cookie = ask.house.accounts.enter(ask.form.get("code", ""))
    if cookie is None:
        ask.house.limiter.failed(who)
        note(ask.request, "wrong code", refused=True)
        return ask.page("enter.html", status=403, fault="code", sent=False)
    ask.house.limiter.forget(who)
    came = ask.house.accounts.signed_in(cookie)
    note(ask.request, "signed in by a code", account=came.account.id if came and came.account else "")
    return _come_in(ask, cookie)


def new_code(ask: Ask) -> Response:
    """Print a new code on the terminal, for who sits there; only where one owner is all there is."""
    if ask.house.settings.accounts:
        raise HTTPException(404)
    who = f"new code {came_from(ask)}"
    _refuse_too_many(ask, who)
    ask.house.limiter.failed(who)
    ask.house.print_code()
    return ask.page("enter.html", fault="", sent=True)


def sign_in_form(ask: Ask) -> Response:
    """Where a name and a password are typed."""
    _need_accounts(ask)
    return ask.page("sign_in.html", fault=False, name="")


def sign_in_by_name(ask: Ask) -> Response:
    """Sign a browser in by name and password; what was wrong of the two is not said."""
    _need_accounts(ask)
    name, typed = ask.form.get("name", ""), ask.form.get("password", "")
    tries = (f"name {name.strip().lower()[:100]}", f"address {came_from(ask)}")
    _refuse_too_many(ask, *tries)
    account = ask.house.accounts.by_name(name)
    if not is_password(account.password if account else "", typed) or account is None or account.closed:
        ask.house.limiter.failed(*tries)
        note(ask.request, "wrong name or password", account=account.id if account else "", refused=True)
        return ask.page("sign_in.html", status=403, fault=True, name=name)
    ask.house.limiter.forget(tries[0])
    note(ask.request, "signed in", account=account.id)
    return _come_in(ask, ask.house.accounts.begin_session(account.id))


def leave(ask: Ask) -> Response:
    """Sign a browser out."""
    settings = ask.house.settings
    ask.house.accounts.end_session(read_cookie(ask.request, settings))
    note(ask.request, "signed out", account=ask.account.id if ask.account else "")
    response = ask.go("/sign-in" if settings.accounts else "/enter")
    sign_out(response, settings)
    response.headers["clear-site-data"] = '"cache"'  # and not what was taken down on site and is not sent yet
    return response


def came_from(ask: Ask) -> str:
    """The address that a request came from."""
    return ask.request.client.host if ask.request.client else ""


def _come_in(ask: Ask, cookie: str) -> Response:
    # A browser that somebody else was signed in to is theirs no more.
    before = read_cookie(ask.request, ask.house.settings)
    if before:
        ask.house.accounts.end_session(before)
    response = ask.go("/")
    sign_in(response, cookie, ask.house.settings)
    return response


def _need_accounts(ask: Ask) -> None:
    if not ask.house.settings.accounts:
        raise HTTPException(404)


def _refuse_too_many(ask: Ask, *tries: str) -> None:
    if ask.house.limiter.wait_s(*tries):
        note(ask.request, "too many tries", refused=True)
        raise HTTPException(429)

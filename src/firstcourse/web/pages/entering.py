"""Coming in by a code, and leaving."""

from starlette.exceptions import HTTPException
from starlette.responses import Response

from firstcourse.web.asking import Ask
from firstcourse.web.cookies import read_cookie, sign_in, sign_out


def form(ask: Ask) -> Response:
    """Where a code is typed; a script takes it from the address where it stands behind the #."""
    return ask.page("enter.html", fault="", sent=False)


def enter(ask: Ask) -> Response:
    """Sign a browser in by its code."""
    limiter, who = ask.house.limiter, f"code {_from(ask)}"
    if limiter.wait_s(who):
        raise HTTPException(429)
    cookie = ask.house.accounts.enter(ask.form.get("code", ""))
    if cookie is None:
        limiter.failed(who)
        return ask.page("enter.html", status=403, fault="code", sent=False)
    limiter.forget(who)
    response = ask.go("/")
    sign_in(response, cookie, ask.house.settings)
    return response


def new_code(ask: Ask) -> Response:
    """Print a new code on the terminal, for who sits there; only where one owner is all there is."""
    if ask.house.settings.accounts:
        raise HTTPException(404)
    limiter, who = ask.house.limiter, f"new code {_from(ask)}"
    if limiter.wait_s(who):
        raise HTTPException(429)
    limiter.failed(who)
    ask.house.print_code()
    return ask.page("enter.html", fault="", sent=True)


def leave(ask: Ask) -> Response:
    """Sign a browser out."""
    settings = ask.house.settings
    ask.house.accounts.end_session(read_cookie(ask.request, settings))
    response = ask.go("/enter")
    sign_out(response, settings)
    return response


def _from(ask: Ask) -> str:
    return ask.request.client.host if ask.request.client else ""

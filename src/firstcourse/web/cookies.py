"""The cookie that a browser is known by, and the token that proves that a form is ours.

The token is a digest of the cookie, which no other site and no script can read.
"""

import hashlib
import hmac
from secrets import token_urlsafe

from starlette.requests import Request
from starlette.responses import Response

from firstcourse.web.house import Settings

_SIGNED_IN, _FORM = "firstcourse", "firstcourse-form"


def _name(name: str, *, secure: bool) -> str:
    # Browsers take a cookie of this name only over TLS and for this host alone.
    return f"__Host-{name}" if secure else name


def read_cookie(request: Request, settings: Settings) -> str:
    """What the cookie of a browser that is signed in holds; empty where there is none."""
    return request.cookies.get(_name(_SIGNED_IN, secure=settings.secure), "")


def sign_in(response: Response, cookie: str, settings: Settings) -> None:
    """Give a browser its cookie; it lasts as long as the store says, so here no time is set but a long one."""
    _set(response, _SIGNED_IN, cookie, settings, 30 * 24 * 3600)


def sign_out(response: Response, settings: Settings) -> None:
    """Take a browser's cookie away."""
    _set(response, _SIGNED_IN, "", settings, 0)


def form_token(request: Request, cookie: str) -> str:
    """The token of the forms of a browser; one that is not signed in is given a cookie for it."""
    secure = request.app.state.house.settings.secure
    own = cookie or request.cookies.get(_name(_FORM, secure=secure), "")
    if not own:
        own = request.state.new_form_cookie = token_urlsafe(32)
    return hashlib.sha256(f"form {own}".encode()).hexdigest()


def keep_form_cookie(request: Request, response: Response, settings: Settings) -> None:
    """Send the cookie that `form_token` has made, if it has."""
    made = getattr(request.state, "new_form_cookie", "")
    if made:
        _set(response, _FORM, made, settings, None)


def same_token(sent: str, wanted: str) -> bool:
    """Whether a form sent the token it was given."""
    return hmac.compare_digest(sent.encode(), wanted.encode())


def _set(response: Response, name: str, value: str, settings: Settings, lasts_s: int | None) -> None:
    response.set_cookie(
        _name(name, secure=settings.secure),
        value,
        max_age=lasts_s,
        path="/",
        secure=settings.secure,
        httponly=True,
        samesite="lax",
    )

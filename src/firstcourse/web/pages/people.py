"""One's own account, and those of others."""

from starlette.exceptions import HTTPException
from starlette.responses import Response

from firstcourse.errors import FirstcourseError
from firstcourse.store.accounts import INVITATION_LASTS, Account, Role
from firstcourse.store.passwords import is_password, password_hash
from firstcourse.tongues import TONGUES
from firstcourse.web.asking import Ask
from firstcourse.web.cookies import read_cookie, sign_in
from firstcourse.web.noted import note
from firstcourse.web.qr import qr_svg


def own(ask: Ask) -> Response:
    """One's own account."""
    return _own_page(ask)


def set_password(ask: Ask) -> Response:
    """Set a new password; all browsers but this one are signed out."""
    if not ask.house.settings.accounts:
        raise HTTPException(404)
    who = f"password {ask.who.id}"
    if ask.house.limiter.wait_s(who):
        raise HTTPException(429)
    try:
        if ask.who.password and not is_password(ask.who.password, ask.form.get("old", "")):
            ask.house.limiter.failed(who)
            note(ask.request, "wrong old password", account=ask.who.id, refused=True)
            return _own_page(ask, status=403, fault=ask.text("web-account", "wrong"))
        kept = password_hash(ask.form.get("new", ""), name=ask.who.name)
    except FirstcourseError as error:
        return _own_page(ask, status=422, fault=str(error))
    ask.house.accounts.set_password(ask.who.id, kept)
    note(ask.request, "new password", account=ask.who.id)
    response = ask.go("/account")
    sign_in(response, ask.house.accounts.begin_session(ask.who.id), ask.house.settings)
    return response


def set_tongue(ask: Ask) -> Response:
    """Set what one's pages are written in."""
    tongue = ask.form.get("tongue", "")
    if tongue not in ("", *TONGUES):
        raise HTTPException(400)
    ask.house.accounts.set_tongue(ask.who.id, tongue)
    return ask.go("/account")


def own_code(ask: Ask) -> Response:
    """A code for another browser of one's own, such as the phone's."""
    return show_code(ask, ask.who.name, ask.house.accounts.new_code(ask.who.id), "/account")


def leave_one(ask: Ask) -> Response:
    """Sign one browser of one's own out."""
    if not ask.house.accounts.end_own_session(ask.who.id, ask.form.get("session", "")):
        raise HTTPException(400)
    note(ask.request, "signed another browser out", account=ask.who.id)
    return ask.go("/account")


def leave_all(ask: Ask) -> Response:
    """Sign every browser of one's own out."""
    ask.house.accounts.end_sessions(ask.who.id)
    return ask.go("/")


def listed(ask: Ask) -> Response:
    """Every account."""
    _need_accounts(ask)
    return ask.page("people.html", people=ask.house.accounts.all(), roles=tuple(Role), fault="")


def new(ask: Ask) -> Response:
    """A new account, with a code that lets its person in to set a password."""
    _need_accounts(ask)
    role = ask.form.get("role", "")
    if role not in tuple(Role):
        raise HTTPException(400)
    try:
        account = ask.house.accounts.create(ask.form.get("name", ""), Role(role))
    except FirstcourseError as error:
        values = {"people": ask.house.accounts.all(), "roles": tuple(Role), "fault": str(error)}
        return ask.page("people.html", status=422, **values)
    note(ask.request, f"new {account.role.value}", account=account.id)
    return _invited(ask, account)


def code(ask: Ask) -> Response:
    """A new code for somebody who lost the password."""
    return _invited(ask, _other(ask))


def close(ask: Ask) -> Response:
    """Let somebody sign in no more, or again."""
    account = _other(ask)
    ask.house.accounts.close(account.id, closed=not account.closed)
    note(ask.request, "opened" if account.closed else "closed", account=account.id)
    return ask.go("/people")


def show_code(ask: Ask, name: str, code: str, back: str) -> Response:
    """A code with its picture for a phone, shown this once.

    Args:
        ask: Who asked for it.
        name: Whom it lets in, or what.
        code: The code.
        back: Where to go on.
    """
    link = f"{ask.house.settings.address}/enter#{code}"
    return ask.page(
        "code.html", name=name, code=code, address=ask.house.settings.address, qr=qr_svg(link), back=back
    )


def _own_page(ask: Ask, *, fault: str = "", status: int = 200) -> Response:
    cookie = read_cookie(ask.request, ask.house.settings)
    return ask.page(
        "account.html", status=status, fault=fault, sessions=ask.house.accounts.sessions(ask.who.id, cookie)
    )


def _invited(ask: Ask, account: Account) -> Response:
    made = ask.house.accounts.new_code(account.id, lasts=INVITATION_LASTS)
    return show_code(ask, account.name, made, "/people")


def _other(ask: Ask) -> Account:
    """The account that a path names; never one's own, which nobody can close or be locked out of."""
    _need_accounts(ask)
    account = ask.house.accounts.by_id(ask.request.path_params["account"])
    if account is None or account.id == ask.who.id:
        raise HTTPException(404)
    return account


def _need_accounts(ask: Ask) -> None:
    if not ask.house.settings.accounts:
        raise HTTPException(404)

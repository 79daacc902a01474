"""What a page is given, and who may ask for it.

Each route says what it needs; nothing is answered before that is checked.
"""

import logging
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import dataclass, field
from enum import Enum
from typing import TYPE_CHECKING

from starlette.concurrency import run_in_threadpool
from starlette.datastructures import FormData, UploadFile
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.types import Message, Receive

from firstcourse.errors import FirstcourseError
from firstcourse.store.accounts import Account, ClientLink, Role
from firstcourse.store.jobs import JobCard
from firstcourse.web.cookies import form_token, read_cookie, same_token
from firstcourse.web.house import House
from firstcourse.web.noted import note

if TYPE_CHECKING:
    from firstcourse.web.rendering import Pages

_LOG = logging.getLogger("firstcourse.web")
MOST_BYTES = 2_000_000
"""Of what a form sends, where its route says nothing else."""
_MOST_FIELDS, _MOST_FILES = 500, 20
_SENDING = ("POST", "PUT", "PATCH", "DELETE")


class Needs(Enum):
    """What somebody must be to be answered."""

    NOTHING = "nothing"
    SIGNED_IN = "signed in"
    ACCOUNT = "an account, not a client"
    OWNER = "owner"
    JOB = "may work on the job"
    READ_JOB = "may work on the job, or came by its client link"


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """One request, checked: who asks for what.

    Attributes:
        account: Who is signed in; None for a client or nobody.
        link: The link that a client came by.
        tongue: What is answered in.
        token: What each form must send back.
        form: Fields of a form that was sent.
        files: Files sent with it.
        body: What a script sent that is no form, such as JSON; its token came as the header `x-token`.
    """

    house: House
    pages: "Pages"
    request: Request
    account: Account | None
    link: ClientLink | None
    tongue: str
    token: str
    form: Mapping[str, str]
    files: Mapping[str, tuple[str, bytes]]
    card: JobCard | None
    body: bytes = b""

    @property
    def who(self) -> Account:
        """Who is signed in, where the route needs somebody."""
        assert self.account is not None
        return self.account

    @property
    def job(self) -> JobCard:
        """The job that the route is about."""
        assert self.card is not None
        return self.card

    @property
    def query(self) -> Mapping[str, str]:
        """What stands after the question mark."""
        return self.request.query_params

    def number(self, name: str, *, query: bool = False) -> int:
        """A whole number that a form or an address must give.

        Raises:
            HTTPException: It gives none.
        """
        text = (self.query if query else self.form).get(name, "")
        if not text.isascii() or not text.isdigit() or len(text) > 9:
            raise HTTPException(400)
        return int(text)

    def text(self, message: str, attribute: str = "") -> str:
        """A text in the reader's tongue."""
        return self.pages.text(self.tongue, message, attribute)

    def page(self, template: str, *, status: int = 200, **values: object) -> Response:
        """A page from its template."""
        return self.pages.answer(self, template, status=status, values=values)

    def go(self, path: str) -> Response:
        """Send the browser to a page with a new request."""
        return RedirectResponse(path, status_code=303)


Handler = Callable[[Ask], Response]
Endpoint = Callable[[Request], Awaitable[Response]]


def endpoint(
    path: str, handler: Handler, needs: Needs, most_bytes: int
) -> Callable[[Request], Awaitable[Response]]:
    """What answers a request for a route: checks who asks, reads the form, then calls its handler in a thread."""

    async def checked(request: Request, pages: "Pages") -> Response:
        house: House = request.app.state.house
        cookie = read_cookie(request, house.settings)
        signed_in = await run_in_threadpool(house.accounts.signed_in, cookie) if cookie else None
        account = signed_in.account if signed_in else None
        link = signed_in.link if signed_in else None
        if needs is not Needs.NOTHING and signed_in is None:
            return RedirectResponse("/sign-in" if house.settings.accounts else "/enter", status_code=303)
        try:
            card = await run_in_threadpool(_allowed, house, request, needs, account, link)
        except HTTPException:
            note(request, f"{request.method} {path} refused", account=account.id if account else "", refused=True)
            raise
        token = form_token(request, cookie)
        sent = await _sent(request, token) if request.method in _SENDING else _Sent()
        ask = Ask(
            house=house,
            pages=pages,
            request=request,
            account=account,
            link=link,
            tongue=pages.tongue(request, account),
            token=token,
            form=sent.form,
            files=sent.files,
            card=card,
            body=sent.body,
        )
        return await run_in_threadpool(handler, ask)

    async def answer(request: Request) -> Response:
        pages: Pages = request.app.state.pages
        limited = Request(request.scope, _limited(request.receive, most_bytes), request._send)
        try:
            return await checked(limited, pages)
        except (HTTPException, FirstcourseError):
            raise
        except Exception as error:
            # The route, not the address: nothing that was typed goes into a log.
            _LOG.error("%s %s failed", request.method, path, exc_info=error)
            return pages.fault(request, 500, "ours")

    return answer


def _allowed(
    house: House, request: Request, needs: Needs, account: Account | None, link: ClientLink | None
) -> JobCard | None:
    """The job that is asked for; None where the route is about none.

    Raises:
        HTTPException: It may not be asked for. A job that is not there and one that is another's look the same.
    """
    if needs is Needs.NOTHING or (needs is Needs.SIGNED_IN and account is None):
        return None
    if needs is Needs.READ_JOB and link is not None and link.job == request.path_params["job"]:
        return house.jobs.card(link.job)
    if account is None:
        raise HTTPException(404)
    owner = account.role is Role.OWNER
    if needs is Needs.OWNER and not owner:
        raise HTTPException(404)
    if "job" in request.path_params:
        card = house.jobs.card(request.path_params["job"])
        if card is None or not (owner or house.jobs.may_work_on(card.id, account.id)):
            raise HTTPException(404)
        return card
    return None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Sent:
    """What came with a request."""

    form: Mapping[str, str] = field(default_factory=dict)
    files: Mapping[str, tuple[str, bytes]] = field(default_factory=dict)
    body: bytes = b""


async def _sent(request: Request, token: str) -> _Sent:
    """What was sent, once its token is right.

    Raises:
        HTTPException: It is not, or too much was sent.
    """
    form: FormData
    async with request.form(max_files=_MOST_FILES, max_fields=_MOST_FIELDS, max_part_size=MOST_BYTES) as form:
        fields = {name: value for name, value in form.items() if isinstance(value, str)}
        if not same_token(fields.pop("token", request.headers.get("x-token", "")), token):
            note(request, "form without its token", refused=True)
            raise HTTPException(403, "token")
        files = {name: one for name, one in form.items() if isinstance(one, UploadFile)}
        return _Sent(
            form=fields,
            files={name: (one.filename or "", await one.read()) for name, one in files.items()},
            body=b"" if form else await request.body(),
        )


def _limited(receive: Receive, most_bytes: int) -> Receive:
    """Receives no more than is allowed, whatever the length that was announced."""
    got = 0

    async def limited() -> Message:
        nonlocal got
        message = await receive()
        got += len(message.get("body", b""))
        if got > most_bytes:
            raise HTTPException(413)
        return message

    return limited

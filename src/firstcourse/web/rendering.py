"""Pages from templates, in the reader's tongue; a template holds no words, it asks `t` for them."""

from collections.abc import Mapping
from datetime import datetime
from functools import cache
from typing import TYPE_CHECKING, Any

from babel.dates import format_date, format_time
from jinja2 import Environment, PackageLoader, StrictUndefined, select_autoescape
from starlette.requests import Request
from starlette.responses import HTMLResponse, Response

from firstcourse.store.accounts import Account
from firstcourse.tongues import ENGLISH, TONGUES
from firstcourse.units import Tape
from firstcourse.web.cookies import keep_form_cookie
from firstcourse.web.house import Settings
from firstcourse.words import Speaker

if TYPE_CHECKING:
    from firstcourse.web.asking import Ask


@cache
def speaker(tongue: str) -> Speaker:
    """Says what pages say that is about no plan."""
    return Speaker("us", Tape.INCH, tongue=tongue)


class Pages:
    """Fills templates."""

    def __init__(self, settings: Settings) -> None:
        """Load the templates of this package."""
        self._settings = settings
        self._templates = Environment(
            loader=PackageLoader("firstcourse.web"),
            autoescape=select_autoescape(default=True),
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
        )

    def tongue(self, request: Request, account: Account | None) -> str:
        """What a browser is answered in: what its account says, else what it asks for, else as we were started."""
        if account is not None and account.tongue in TONGUES:
            return account.tongue
        if self._settings.tongue:
            return self._settings.tongue
        for asked in request.headers.get("accept-language", "").split(","):
            base = asked.split(";")[0].split("-")[0].strip().lower()
            if base in TONGUES:
                return base
        return ENGLISH

    def text(self, tongue: str, message: str, attribute: str = "") -> str:
        """A text by its message."""
        return speaker(tongue).text(message, attribute)

    def answer(self, ask: "Ask", template: str, *, status: int, values: Mapping[str, object]) -> Response:
        """A page for one who is known."""
        page = self._filled(
            template,
            ask.tongue,
            {"ask": ask, "token": ask.token, "account": ask.account, "link": ask.link, **values},
        )
        response = HTMLResponse(page, status_code=status)
        keep_form_cookie(ask.request, response, self._settings)
        return response

    def fault(self, request: Request, status: int, message: str, text: str = "") -> Response:
        """A page that says why a request is not answered.

        Args:
            request: Which.
            status: The code of the answer.
            message: An attribute of `web-fault`.
            text: What else is said.
        """
        values = {"account": None, "link": None, "message": message, "text": text, "token": ""}
        page = self._filled("fault.html", self.tongue(request, None), values)
        return HTMLResponse(page, status_code=status)

    def _filled(self, template: str, tongue: str, values: Mapping[str, Any]) -> str:
        said = speaker(tongue)

        def moment(when: datetime) -> str:
            here = when.astimezone()
            return f"{format_date(here, 'medium', locale=tongue)}, {format_time(here, 'short', locale=tongue)}"

        return self._templates.get_template(template).render(
            {
                "t": said.text,
                "tongue": tongue,
                "tongues": TONGUES,
                "moment": moment,
                "with_accounts": self._settings.accounts,
                **values,
            }
        )

"""The application: routes, what wraps them, and what is answered when something goes wrong."""

from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.middleware.trustedhost import TrustedHostMiddleware
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from firstcourse.errors import FirstcourseError
from firstcourse.web.asking import endpoint
from firstcourse.web.headers import Outermost
from firstcourse.web.house import House
from firstcourse.web.rendering import Pages
from firstcourse.web.routes import PAGES

_FAULTS = {400: "wrong", 403: "refused", 404: "missing", 405: "missing", 413: "large", 429: "often"}


def application(house: House, *, at_start: Callable[[], None] = lambda: None) -> Starlette:
    """The pages over a house.

    Args:
        house: Closed when the application ends.
        at_start: Called when it begins to answer.
    """
    pages = Pages(house.settings)

    @asynccontextmanager
    async def lifespan(_app: Starlette) -> AsyncIterator[None]:
        at_start()
        try:
            yield
        finally:
            house.close()

    async def refused(request: Request, error: Exception) -> Response:
        assert isinstance(error, HTTPException)
        return pages.fault(request, error.status_code, _FAULTS.get(error.status_code, "wrong"))

    async def wrong(request: Request, error: Exception) -> Response:
        return pages.fault(request, 422, "wrong", str(error))

    app = Starlette(
        routes=[
            Route(page.path, endpoint(page.path, page.handler, page.needs, page.most_bytes), methods=[page.method])
            for page in PAGES
        ],
        middleware=[
            Middleware(Outermost, settings=house.settings),
            Middleware(TrustedHostMiddleware, allowed_hosts=list(house.settings.hosts), www_redirect=False),
        ],
        exception_handlers={HTTPException: refused, FirstcourseError: wrong},
        lifespan=lifespan,
    )
    app.state.house, app.state.pages = house, pages
    return app

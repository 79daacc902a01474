"""What every answer carries, and what no request may be: the outermost layer."""

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from firstcourse.web.house import Settings

_POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' blob:",
        "font-src 'self'",
        "connect-src 'self'",
        "manifest-src 'self'",
        "worker-src 'self'",
        "object-src 'none'",
        "form-action 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
    )
)
_HEADERS = {
    "content-security-policy": _POLICY,
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cross-origin-resource-policy": "same-origin",
    "permissions-policy": "geolocation=(), microphone=(), usb=(), payment=()",
    "x-frame-options": "DENY",
}
_TWO_YEARS_S = 63_072_000
_SAFE = ("GET", "HEAD", "OPTIONS")


class Outermost:
    """Refuses requests from other sites, and puts the headers on what is answered."""

    def __init__(self, app: ASGIApp, settings: Settings) -> None:
        """Wrap an application."""
        self._app, self._settings = app, settings

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer a request."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return

        async def with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in _HEADERS.items():
                    headers.setdefault(name, value)
                headers.setdefault("cache-control", "no-store")
                if self._settings.secure:
                    headers["strict-transport-security"] = f"max-age={_TWO_YEARS_S}; includeSubDomains"
            await send(message)

        if scope["method"] not in _SAFE and not self._from_here(Headers(scope=scope)):
            await PlainTextResponse("This form came from another site.", 403)(scope, receive, with_headers)
            return
        await self._app(scope, receive, with_headers)

    def _from_here(self, headers: Headers) -> bool:
        """Whether a page of ours sent this; a browser says so by one of two headers."""
        site, origin = headers.get("sec-fetch-site"), headers.get("origin")
        if site is not None and site not in ("same-origin", "none"):
            return False
        scheme = "https" if self._settings.secure else "http"
        return origin is None or origin == f"{scheme}://{headers.get('host', '')}"

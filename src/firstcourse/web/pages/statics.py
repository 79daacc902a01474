"""Style, scripts and letters, from the package alone."""

from functools import cache
from importlib.resources import files

from starlette.exceptions import HTTPException
from starlette.responses import Response

from firstcourse.web.asking import Ask

_KINDS = {
    "css": "text/css; charset=utf-8",
    "js": "text/javascript; charset=utf-8",
    "svg": "image/svg+xml",
    "ttf": "font/ttf",
}
_LETTERS = {"IBMPlexSans_400Regular.ttf", "IBMPlexSans_600SemiBold.ttf"}


def static(ask: Ask) -> Response:
    """One file."""
    name = ask.request.path_params["name"]
    content = _content(name)
    if content is None:
        raise HTTPException(404)
    return Response(content, media_type=_KINDS[name.rpartition(".")[2]], headers={"cache-control": "no-cache"})


def worker(ask: Ask) -> Response:
    """The script that answers where there is no network; it stands at the root, for it answers for pages there."""
    headers = {"cache-control": "no-cache", "service-worker-allowed": "/"}
    return Response(_content("worker.js"), media_type=_KINDS["js"], headers=headers)


@cache
def names() -> frozenset[str]:
    """Every file there is."""
    own = (file.name for file in (files("firstcourse.web") / "static").iterdir())
    return frozenset(name for name in own if name.rpartition(".")[2] in _KINDS) | _LETTERS


@cache
def _content(name: str) -> bytes | None:
    if name not in names():
        return None
    folder = "drawings/fonts" if name in _LETTERS else "web/static"
    return (files("firstcourse") / folder / name).read_bytes()

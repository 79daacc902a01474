"""What goes into the log of safety: who signed in, who could not, what was refused; never what was typed."""

import logging

from starlette.requests import Request

_LOG = logging.getLogger("firstcourse.safety")


def note(request: Request, event: str, *, account: str = "", refused: bool = False) -> None:
    """Note one event.

    Args:
        request: What it came with; its address alone is noted.
        event: What happened, in a word or two of ours.
        account: Id of the account, where it is known.
        refused: That something was not allowed.
    """
    came_from = request.client.host if request.client else "unknown"
    about = f" account {account}" if account else ""
    _LOG.log(logging.WARNING if refused else logging.INFO, "%s%s from %s", event, about, came_from)

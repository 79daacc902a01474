"""Saving a document that somebody else saved meanwhile: what comes of both changes."""

from collections.abc import Mapping
from dataclasses import dataclass

from firstcourse.app.session import Session
from firstcourse.job import WHOLE as WHOLE
from firstcourse.job import Clash as Clash
from firstcourse.job import Side as Side
from firstcourse.job import merged


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """A document to save, or what somebody must decide first.

    Attributes:
        name: What the document calls the job.
        text: The document.
        clashes: Fields that both changed, each otherwise; nothing is to be saved while there are any.
    """

    name: str
    text: str
    clashes: tuple[Clash, ...] = ()


def together(
    mine: str, *, base: str, theirs: str, chosen: Mapping[str, Side] | None = None, name: str = "job.yaml"
) -> Together:
    """Put what I want to save together with what was saved since.

    Args:
        mine: The document as I would save it.
        base: The one that I began with.
        theirs: The newest one.
        chosen: By field, whose value is taken where both changed it.
        name: What to call the document in messages.

    Raises:
        JobError: Mine, or both together, say something that a job cannot say.
    """
    session = Session(mine, name=name)
    if theirs not in (base, mine):
        merge = merged(base, theirs, mine, chosen)
        if merge.clashes:
            return Together(name=session.job.name, text=merge.text, clashes=merge.clashes)
        session = Session(merge.text, name=name)
    return Together(name=session.job.name, text=session.text)

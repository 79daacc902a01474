"""Saving a job's document: checked as the file is, put together with what others saved meanwhile, kept."""

from collections.abc import Mapping
from dataclasses import dataclass

from starlette.exceptions import HTTPException
from starlette.responses import Response

from firstcourse.app import Clash, Side
from firstcourse.app.together import together
from firstcourse.store.jobs import Kind, Revision, SavedMeanwhileError
from firstcourse.web.asking import Ask


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A document to be saved.

    Attributes:
        text: The document.
        base: The revision it was made from.
        about: See `store.jobs.Revision`.
        chosen: By field, whose value is taken where both changed it.
    """

    text: str
    base: int
    kind: Kind
    about: str = ""
    chosen: Mapping[str, Side] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Saved:
    """It is on the disk as the revision of this number."""

    number: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """Nothing is saved: somebody saved the same fields otherwise.

    Attributes:
        by: Who did, last.
        head: The newest revision.
    """

    clashes: tuple[Clash, ...]
    by: str
    head: int


def revision(ask: Ask, number: int | None = None) -> Revision:
    """A revision of the job, the newest where none is named.

    Raises:
        HTTPException: There is none of that number.
    """
    found = ask.house.jobs.revision(ask.job.id, number)
    if found is None:
        raise HTTPException(404)
    return found


def save(ask: Ask, draft: Draft) -> Saved | Asked:
    """Save a document.

    Raises:
        JobError: It says something that a job cannot say.
    """
    base = revision(ask, draft.base)
    while True:
        newest = revision(ask)
        both = together(draft.text, base=base.text, theirs=newest.text, chosen=draft.chosen, name=ask.job.name)
        if both.clashes:
            return Asked(clashes=both.clashes, by=newest.by, head=newest.number)
        try:
            return Saved(
                number=ask.house.jobs.save(
                    ask.job.id,
                    both.name,
                    both.text,
                    base=newest.number,
                    by=ask.who.id,
                    kind=draft.kind,
                    about=draft.about,
                )
            )
        except SavedMeanwhileError:
            continue  # once more with what was saved this very moment


def answer(ask: Ask, draft: Draft, back: str) -> Response:
    """Save, then go on; or ask whose values are to be taken.

    Args:
        ask: Who saves.
        draft: What.
        back: Where to go when it is saved.
    """
    done = save(ask, draft)
    if isinstance(done, Saved):
        return ask.go(back)
    return ask.page("clash.html", status=409, job=ask.job, draft=draft, asked=done, back=back)


def decide(ask: Ask) -> Response:
    """Save what `answer` asked about, with what was chosen."""
    chosen = {name.removeprefix("take "): value for name, value in ask.form.items() if name.startswith("take ")}
    if not set(chosen.values()) <= set(Side) or ask.form.get("kind") not in tuple(Kind):
        raise HTTPException(400)
    draft = Draft(
        text=ask.form.get("text", "").replace("\r\n", "\n"),
        base=ask.number("base"),
        kind=Kind(ask.form["kind"]),
        about=ask.form.get("about", ""),
        chosen={name: Side(value) for name, value in chosen.items()},
    )
    back = ask.form.get("back", "")
    return answer(ask, draft, back if back.startswith(f"/jobs/{ask.job.id}") else f"/jobs/{ask.job.id}")

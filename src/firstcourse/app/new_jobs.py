"""Job documents to start from, as somebody asked for them on a form."""

from firstcourse.app.examples import example_job
from firstcourse.app.session import Session
from firstcourse.files import read_file, utf8_text
from firstcourse.job import starter_text
from firstcourse.units import Tape

_MOST_BYTES = 1_000_000
_DEMO = "tub-bathroom"
_CURRENCIES = {"us": "USD", "uk": "GBP", "au": "AUD"}


def new_job_text(*, name: str, practice: str, tape: str, tongue: str) -> str:
    """A commented document of a small job that plans as it stands.

    Args:
        name: What the job is called.
        practice: Whose rules apply.
        tape: `inch` or `mm`.
        tongue: What papers are written in.

    Raises:
        JobError: One of them is nothing that a job can say.
    """
    session = Session(starter_text(_tape(tape)), name=name)
    for field, value in (
        ("name", name),
        ("practice", practice),
        ("currency", _CURRENCIES.get(practice, "")),
        ("tape", tape),
        ("tongue", tongue),
    ):
        session.edit(field, value)
    return session.text


def _tape(name: str) -> Tape:
    return Tape(name) if name in tuple(Tape) else Tape.INCH


def demo_text() -> str:
    """The document of the demo job."""
    return utf8_text(read_file(example_job(_DEMO), most_bytes=_MOST_BYTES, what="a job document"))

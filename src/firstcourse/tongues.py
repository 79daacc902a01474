"""Tongues that papers can be printed in: those that have a folder of message files."""

from importlib.resources import files
from typing import TYPE_CHECKING, Literal

ENGLISH = "en"
"""The tongue that is written first; every other says the same messages."""


def _written() -> tuple[str, ...]:
    texts = files("firstcourse") / "words" / "texts"
    found = (
        folder.name for folder in texts.iterdir() if folder.is_dir() and not folder.name.startswith((".", "_"))
    )
    return ENGLISH, *sorted(name for name in found if name != ENGLISH)


TONGUES = _written()
"""Each tongue by the name of its folder; English first."""

if TYPE_CHECKING:
    Tongue = str
else:
    Tongue = Literal[TONGUES]
"""One of the tongues there are; a job document or a command that names another is refused."""

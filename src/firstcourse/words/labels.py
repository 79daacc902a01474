"""What the plan calls edges and parts of surfaces, in the reader's tongue.

A plan names them by a few words, some with a name behind or before: `niche back`, `wall A-B`, `window 1 sill`.
What is none of these somebody has named, and it stays.
"""

import re
from collections.abc import Callable

_BEFORE_NAME = ("wall", "corner", "board")
"""Words that stand before a name."""
_AFTER_NAME = ("sill", "head", "side", "back", "board", "top")
"""Words that stand behind a name."""


def said_label(label: str, say: Callable[..., str], has: Callable[[str], bool]) -> str:
    """One edge or part.

    Args:
        label: As the plan has it.
        say: Says a message with its values.
        has: Whether there is a message.

    Example:
        >>> known = {"label-niche_back": "niche back", "label-wall": "wall A-B"}
        >>> said_label("niche back", lambda code, **_: known[code], known.__contains__)
        'niche back'
        >>> said_label("long seat", lambda code, **_: known[code], known.__contains__)
        'long seat'
    """
    code = f"label-{_code(label)}"
    if has(code):
        return say(code)
    first, _, rest = label.partition(" ")
    if rest and first in _BEFORE_NAME:
        return say(f"label-{first}", name=rest)
    name, _, last = label.rpartition(" ")
    if name and last in _AFTER_NAME:
        return say(f"label-of_{last}", name=name)
    if name and last.isdigit() and has(f"label-{name}"):
        return f"{say(f'label-{name}')} {last}"
    return label


def _code(text: str) -> str:
    return re.sub(r"\W+", "_", text)

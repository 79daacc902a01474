"""What parts of surfaces are called in the reader's tongue: `left end`, `sill board`, `kerb 2`."""

from collections.abc import Callable


def said_part(part: str, say: Callable[..., str], has: Callable[[str], bool]) -> str:
    """A part by the last step of its id.

    Args:
        part: The step; one that is no kind of part is a name, and stays.
        say: Says a message with its values.
        has: Whether there is a message.

    Example:
        >>> known = {"label-left_end": "left end", "label-kerb": "kerb"}
        >>> [said_part(one, known.__getitem__, known.__contains__) for one in ("left end", "kerb 2", "seat")]
        ['left end', 'kerb 2', 'seat']
    """
    code = f"label-{part.replace(' ', '_')}"
    if has(code):
        return say(code)
    kind, _, number = part.rpartition(" ")
    if kind and number.isdigit() and has(f"label-{kind}"):
        return f"{say(f'label-{kind}')} {number}"
    return part

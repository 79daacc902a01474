"""References as people call the thing: `bath/floor/opening/flange` is 'bath: floor, flange'."""

from collections.abc import Callable, Sequence
from typing import Protocol


class Labels(Protocol):
    """By reference: what a thing is called, after what it is part of, such as `("bath", "floor", "board F-3")`."""

    def get(self, ref: str, /) -> tuple[str, ...] | None:
        """What a reference is called; None where its ids say all."""


_NAMED = {"opening", "door", "bench", "shelf", "thing", "stock", "layer", "offcut", "check"}
"""Kinds whose things are called by their names alone."""
_NUMBERED = {"wall", "corner", "fill", "tile", "tile_stock", "sheet", "rule", "joist", "stud", "kerb"}
"""Kinds that are said before the name."""
_IN_NO_ROOM = {"stock", "tile_stock", "sheet", "rule", "offcut", "job", "rules"}


def place(ref: str, labels: Labels, word: Callable[[str], str]) -> str:
    """A reference with the room it lies in.

    Args:
        ref: Ids joined by `/`: a room, its surface, then kind and name in turn.
        labels: What things are called that have more than their ids.
        word: Says a kind by its code.

    Example:
        >>> place("bath/wall/A-B/opening/valve", {}, str)
        'bath: wall A-B, valve'
        >>> place("bath/floor/board/3", {"bath/floor/board/3": ("bath", "floor", "board F-3")}, str)
        'bath: floor, board F-3'
        >>> place("bath/floor/shower/opening/drain", {}, {"shower_floor": "shower floor"}.get)
        'bath: shower floor, drain'
        >>> place("stock/board 3x5", {}, str)
        'board 3x5'
    """
    return shown(parts(ref, labels, word))


def shown(named: Sequence[str]) -> str:
    """A room and what lies in it, as `parts` names them."""
    room, *rest = named
    return f"{room}: {', '.join(rest)}" if rest else room


def places(said: Sequence[str], joined: Callable[[Sequence[str]], str]) -> str:
    """Several places in words; a room that all of them lie in stands before them once.

    Args:
        said: Each as `place` says it.
        joined: Joins them.

    Example:
        >>> places(["bath: wall A-B", "bath: floor"], " and ".join)
        'bath: wall A-B and floor'
        >>> places(["bath: floor", "wc: floor"], " and ".join)
        'bath: floor and wc: floor'
    """
    rooms = {room if colon else "" for room, colon, _ in (one.partition(": ") for one in said)}
    if len(said) < 2 or len(rooms) > 1 or "" in rooms:
        return joined(said)
    room = rooms.pop()
    return f"{room}: {joined([one.removeprefix(f'{room}: ') for one in said])}"


def thing(ref: str, labels: Labels, word: Callable[[str], str]) -> str:
    """What a reference names, without where it is.

    Example:
        >>> thing("bath/wall/A-B/opening/valve", {}, str), thing("bath/wall/A-B", {}, str)
        ('valve', 'wall A-B')
    """
    return parts(ref, labels, word)[-1]


def parts(ref: str, labels: Labels, word: Callable[[str], str]) -> list[str]:
    """What a reference names, step by step: its room, then what lies in what.

    Example:
        >>> parts("bath/wall/A-B/drain/sill", {}, {"wall": "wall", "sill": "sill", "drain": "floor drain"}.get)
        ['bath', 'wall A-B', 'drain', 'sill']
    """
    steps = ref.split("/")
    for known in range(len(steps), 0, -1):
        head = labels.get("/".join(steps[:known]))
        if head is not None:
            return [*head, *_said(steps[known:], word)]
    if steps[0] in _IN_NO_ROOM:
        return list(_said(steps, word))
    return [steps[0], *_said(steps[1:], word)]


def _said(steps: list[str], word: Callable[[str], str]) -> list[str]:
    said, left = [], list(steps)
    while left:
        kind = left.pop(0)
        if kind == "floor" and left[:1] == ["shower"]:
            left.pop(0)
            said.append(word("shower_floor"))
        elif left and kind in _NAMED:
            said.append(left.pop(0))
        elif left and kind in _NUMBERED:
            said.append(f"{word(kind)} {left.pop(0)}")
            if kind == "wall" and len(left) > 1 and left[0] not in (*_NAMED, *_NUMBERED):
                # What lines an opening of a wall: the opening's own name, whatever it is.
                said.append(left.pop(0))
        else:
            said.append(word(kind))
    return said

"""What edges of surfaces are called in the reader's tongue, by what each meets."""

import re
from collections.abc import Callable

from firstcourse.plan import Side, SideKind

_NAME, _OPENING, _BENCH = r"(?P<name>[^/]+)", r"wall/[^/]+/opening/[^/]+", r"bench/[^/]+"
_KERB = r"floor/shower/kerb( \d+)?"
_MET = (
    ("stops_here", "stops_here"),
    ("own_height", "own_height"),
    (f"corner/{_NAME}", "corner"),
    ("ceiling", "ceiling"),
    ("floor/shower", "shower_floor"),
    ("fixture/tub", "tub_rim"),
    ("fixture/tray", "tray_flange"),
    ("fixture/kerb", "kerb"),
    (f"wall/[^/]+/opening/{_NAME}", "of_front"),
    (f"{_OPENING}/frame", "window_frame"),
    (f"{_OPENING}/framing", "framing_of_the_opening"),
    (r"wall/[^/]+/[^/]+/left board", "left_board"),
    (r"wall/[^/]+/[^/]+/right board", "right_board"),
    (f"wall/[^/]+/{_NAME}/sill", "of_sill"),
    (f"wall/[^/]+/{_NAME}/head", "of_head"),
    (f"wall/[^/]+/{_NAME}/back", "of_back"),
    (f"wall/[^/]+/{_NAME}/(left|right)", "of_side"),
)
"""What a side meets in its room or for itself, and how that is called."""
_CLOSED = ((f"wall/{_NAME}", "wall"), ("floor", "floor"), (_KERB, "kerb"))
"""The same where something stands there."""
_FREE = (
    (r"wall/[^/]+", "face_of_the_wall_s_boards"),
    ("floor", "room_floor"),
    (_KERB, "corner_of_the_kerb"),
    (f"({_BENCH}|{_KERB})/top", "under_its_top"),
    (f"{_BENCH}/(left|right) end", "end_edge"),
    (f"{_KERB}/outer", "outer_edge"),
    (f"{_KERB}/inner", "inner_edge"),
)
"""The same of an edge that is free."""


def said_edge(side: Side, say: Callable[..., str]) -> str:
    """One edge.

    Args:
        side: The side of a surface.
        say: Says a message with its values.

    Raises:
        ValueError: It meets something that no edge of a plan does.

    Example:
        >>> def say(message, **names): return " ".join((message, *names.values()))
        >>> said_edge(Side(kind="perimeter", meets="bath/corner/B"), say)
        'label-corner B'
        >>> said_edge(Side(kind="free", meets="stops_here"), say)
        'label-stops_here'
        >>> said_edge(Side(kind="free", meets="bath/bench/seat/top", shown=False), say)
        'label-under_its_top'
        >>> said_edge(Side(kind="perimeter", meets="bath/wall/A-B/soap/sill"), say)
        'label-of_sill soap'
    """
    free = side.kind is SideKind.FREE
    if not side.meets:
        return say("label-floor" if side.kind is SideKind.FOOT else "label-edge")
    front = (f"{_BENCH}/front", "front_edge" if side.shown else "corner_with_the_front")
    met = side.meets.partition("/")[2] or side.meets
    for pattern, message in (*_MET, *((*_FREE, front) if free else _CLOSED)):
        found = re.fullmatch(pattern, met)
        if found:
            return say(f"label-{message}", **found.groupdict())
    raise ValueError(f"no edge meets '{side.meets}'")

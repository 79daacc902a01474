"""Where a pattern starts and what that brings, as the verifier reads it from raw JSON."""

from dataclasses import dataclass

from firstcourse.geometry import Point
from firstcourse.verify.fields import FieldError, Node, ticks

FOUND = ("best", "given", "round_corners", "host_joints", "no_sliver")
"""How the start of a surface's own pattern comes about; others beside it are `other`."""
CONTINUED = ("courses_below", "field_joints", "both_corners")
"""How a pattern starts that keeps the lines of another."""


@dataclass(frozen=True, slots=True)
class EdgeCut:
    """The narrowest cut along a side: width, None where none is cut [ticks], share, and the side's weight."""

    at: str
    width: int | None
    share: float
    weight: float


@dataclass(frozen=True, slots=True)
class Start:
    """A start and what is told of it; widths in ticks."""

    origin: Point
    smallest_cut: int
    cut_tiles: int
    slack: int
    why: str
    sliver: bool
    under_half: bool
    narrowest_at: str
    edges: tuple[EdgeCut, ...]
    uneven: float | None
    wanted: int
    on_joints: int
    unsure: bool
    may_sliver: bool
    sure_cut: int


def read_start(node: Node) -> Start:
    """Read one start.

    Raises:
        FieldError: A field is missing or is not what the format asks.
    """
    why = node.text("why", "best")
    if why not in (*FOUND, *CONTINUED, "other"):
        raise FieldError(f"{node.where}.why", f"'{why}' is no way in which a start comes about")
    return Start(
        origin=node.point("origin"),
        smallest_cut=_length(node, "smallest_cut"),
        cut_tiles=node.count("cut_tiles"),
        slack=_length(node, "slack"),
        why=why,
        sliver=node.flag("sliver", False),
        under_half=node.flag("under_half", False),
        narrowest_at=node.text("narrowest_at", ""),
        edges=tuple(
            EdgeCut(
                edge.text("at"),
                None if edge.raw("width", None) is None else _length(edge, "width"),
                edge.number("share"),
                edge.number("weight"),
            )
            for edge in node.nodes("edges", ())
        ),
        uneven=None if node.raw("uneven", None) is None else node.number("uneven"),
        wanted=node.count("wanted") if "wanted" in node.value else 0,
        on_joints=node.count("on_joints") if "on_joints" in node.value else 0,
        unsure=node.flag("unsure", False),
        may_sliver=node.flag("may_sliver", False),
        sure_cut=_length(node, "sure_cut"),
    )


def _length(node: Node, key: str) -> int:
    found = ticks(node.raw(key, 0), f"{node.where}.{key}")
    if found < 0:
        raise FieldError(f"{node.where}.{key}", "is less than nothing")
    return found

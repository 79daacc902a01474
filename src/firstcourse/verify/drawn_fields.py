"""Readings for flatness and lines to snap, as the verifier reads them from raw JSON."""

from dataclasses import dataclass

from firstcourse.geometry.polygon import Point
from firstcourse.verify.fields import FieldError, Node, segment, ticks

_DO = ("", "leave", "fill", "grind", "shim", "plane off")
SnapLine = tuple[tuple[Point, Point], str]
"""A line to snap, and how to find it in words."""


@dataclass(frozen=True, slots=True)
class Reading:
    """One reading: where, how far over the best plane, what is done there and by how much [ticks]."""

    at: Point
    off: int
    do: str
    by: int


def read_reading(node: Node) -> Reading:
    """Read one reading.

    Raises:
        FieldError: A field is missing or is not what the format asks.
    """
    do = node.text("do", "")
    if do not in _DO:
        raise FieldError(f"{node.where}.do", f"'{do}' is nothing that is done to a surface")
    return Reading(
        at=node.point("at"),
        off=ticks(node.raw("off"), f"{node.where}.off"),
        do=do,
        by=ticks(node.raw("by", 0), f"{node.where}.by"),
    )


def read_line(node: Node) -> SnapLine:
    """Read one line to snap.

    Raises:
        FieldError: A field is missing or is not what the format asks.
    """
    return segment(node.raw("line"), f"{node.where}.line"), node.text("words")

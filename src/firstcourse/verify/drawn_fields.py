"""Readings for flatness and steps of patterns, as the verifier reads them from raw JSON."""

from dataclasses import dataclass

from firstcourse.geometry import Point
from firstcourse.verify.fields import FieldError, Node, number, ticks

_LONGEST_STEP_MM = 1_000_000
_DO = ("", "leave", "fill", "grind", "shim", "plane_off")


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


def read_step(node: Node, key: str) -> tuple[float, float]:
    """Read one step of a pattern's repeat [mm].

    Raises:
        FieldError: It is missing or no pair of numbers.
    """
    pair = [number(*row) for row in node.rows(key)]
    if len(pair) != 2 or max(map(abs, pair)) > _LONGEST_STEP_MM:
        raise FieldError(f"{node.where}.{key}", "is not a pair of lengths")
    return pair[0], pair[1]

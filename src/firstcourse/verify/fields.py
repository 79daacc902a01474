"""Reading JSON values that nobody has checked: each reader returns a good value or raises `FieldError`."""

import math
from typing import Any

from firstcourse.geometry import Point, Ring, area2, is_simple
from firstcourse.units import TICKS_PER_MM, to_mm

_MISSING = object()
_LONGEST_MM = 1_000_000
_MOST = 1_000_000_000


class FieldError(Exception):
    """A field is missing or is not what the plan's format asks; `where` is its path."""

    def __init__(self, where: str, message: str) -> None:
        self.where, self.message = where, message
        super().__init__(f"{where}: {message}")


class Node:
    """One JSON object with its path, read field by field."""

    def __init__(self, value: Any, where: str) -> None:
        if not isinstance(value, dict):
            raise FieldError(where, "is not an object")
        self.value, self.where = value, where

    def raw(self, key: str, default: Any = _MISSING) -> Any:
        """The value as it stands; an error where it is missing and has no default."""
        found = self.value.get(key, default)
        if found is _MISSING:
            raise FieldError(f"{self.where}.{key}", "is missing")
        return found

    def text(self, key: str, default: Any = _MISSING) -> str:
        """A text."""
        found = self.raw(key, default)
        if not isinstance(found, str):
            raise FieldError(f"{self.where}.{key}", "is not a text")
        return found

    def flag(self, key: str, default: Any = _MISSING) -> bool:
        """A yes or no."""
        found = self.raw(key, default)
        if not isinstance(found, bool):
            raise FieldError(f"{self.where}.{key}", "is not true or false")
        return found

    def count(self, key: str) -> int:
        """A whole number that is not negative and no larger than anything that is counted."""
        found = self.raw(key)
        if isinstance(found, bool) or not isinstance(found, int) or not 0 <= found <= _MOST:
            raise FieldError(f"{self.where}.{key}", "is not a whole number that can be counted")
        return found

    def number(self, key: str) -> float:
        """A finite number."""
        return number(self.raw(key), f"{self.where}.{key}")

    def length(self, key: str) -> int:
        """A length above zero [ticks]."""
        found = ticks(self.raw(key), f"{self.where}.{key}")
        if found <= 0:
            raise FieldError(f"{self.where}.{key}", "is not above zero")
        return found

    def distance(self, key: str) -> int:
        """A length that may be nothing, or less [ticks]."""
        return ticks(self.raw(key), f"{self.where}.{key}")

    def point(self, key: str) -> Point:
        """Two lengths [ticks]."""
        return point(self.raw(key), f"{self.where}.{key}")

    def size(self, key: str) -> tuple[int, int]:
        """Two lengths above zero [ticks]."""
        found = self.point(key)
        if min(found) <= 0:
            raise FieldError(f"{self.where}.{key}", "is not above zero")
        return found

    def ring(self, key: str) -> Ring:
        """A counter-clockwise ring [ticks]."""
        return ring(self.raw(key), f"{self.where}.{key}")

    def rows(self, key: str, default: Any = _MISSING) -> list[tuple[Any, str]]:
        """A list's values, each with its path."""
        found = self.raw(key, default)
        if not isinstance(found, list | tuple):
            raise FieldError(f"{self.where}.{key}", "is not a list")
        return [(value, f"{self.where}.{key}[{index}]") for index, value in enumerate(found)]

    def nodes(self, key: str, default: Any = _MISSING) -> list["Node"]:
        """A list of objects."""
        return [Node(value, where) for value, where in self.rows(key, default)]

    def part(self, key: str) -> "Node":
        """An object that may be missing: then one without fields."""
        return Node(self.raw(key, {}), f"{self.where}.{key}")

    def named(self, key: str) -> list[tuple[str, "Node"]]:
        """An object whose values are objects, in order of their names."""
        table = Node(self.raw(key), f"{self.where}.{key}")
        return [(name, Node(table.value[name], f"{table.where}.{name}")) for name in sorted(table.value)]

    def holes(self, key: str = "holes") -> tuple[Ring, ...]:
        """A list of clockwise rings [ticks]."""
        return tuple(ring(value, where, hole=True) for value, where in self.rows(key, ()))


def number(value: Any, where: str) -> float:
    """A finite number within what a float holds."""
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise FieldError(where, "is not a number")
    try:
        found = float(value)
    except OverflowError:
        raise FieldError(where, "is too large") from None
    if not math.isfinite(found):
        raise FieldError(where, "is not a finite number")
    return found


def ticks(value: Any, where: str) -> int:
    """A length in millimetres that is a whole number of ticks."""
    found = number(value, where)
    if abs(found) > _LONGEST_MM:
        raise FieldError(where, "is longer than any room")
    whole = round(found * TICKS_PER_MM)
    if to_mm(whole) != found:
        raise FieldError(where, f"{found} mm is not a multiple of 1/640 mm")
    return whole


def point(value: Any, where: str) -> Point:
    """A pair of lengths [ticks]."""
    if not isinstance(value, list | tuple) or len(value) != 2:
        raise FieldError(where, "is not a pair of numbers")
    return ticks(value[0], where), ticks(value[1], where)


def ring(value: Any, where: str, *, hole: bool = False) -> Ring:
    """A ring that bounds one area; counter-clockwise, or clockwise for a hole [ticks]."""
    if not isinstance(value, list | tuple) or len(value) < 3:
        raise FieldError(where, "is not a list of three or more points")
    found = tuple(point(item, f"{where}[{index}]") for index, item in enumerate(value))
    if any(a == b for a, b in zip(found, found[1:] + found[:1], strict=True)):
        raise FieldError(where, "gives a point twice in a row")
    if not (_is_convex(found) or is_simple(found)):
        raise FieldError(where, "crosses itself or bounds no area")
    if (area2(found) > 0) == hole:
        raise FieldError(where, "runs the wrong way round")
    return found


def _is_convex(ring: Ring) -> bool:
    """Whether four points or three turn to one side at each: cheaper to see than that a ring is simple."""
    if len(ring) > 4:
        return False
    turns = [
        (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0])
        for a, b, c in zip(ring, ring[1:] + ring[:1], ring[2:] + ring[:2], strict=True)
    ]
    return all(turn > 0 for turn in turns) or all(turn < 0 for turn in turns)


def segment(value: Any, where: str) -> tuple[Point, Point]:
    """A line between two different points [ticks]."""
    if not isinstance(value, list | tuple) or len(value) != 2:
        raise FieldError(where, "is not a pair of points")
    a, b = point(value[0], where), point(value[1], where)
    if a == b:
        raise FieldError(where, "has no length")
    return a, b

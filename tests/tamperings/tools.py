"""What every way of spoiling a plan is made with: how it is registered, and how places in a plan are found.

A change works on the plan as a dict, in place; it raises `NothingToSpoil` where the plan lacks what it needs.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

Plan = dict[str, Any]


INCH = 25.4


class NothingToSpoil(Exception):
    """The plan holds nothing of the kind that a change spoils."""


@dataclass(frozen=True)
class Tampering:
    """A change, and the codes of which at least one must be raised.

    Attributes:
        everywhere: Whether it is tried on every example, or on the first that has what it spoils.
    """

    name: str
    change: Callable[[Plan], None]
    codes: frozenset[str]
    everywhere: bool


TAMPERINGS: list[Tampering] = []


def answered_by(
    *codes: str, everywhere: bool = True
) -> Callable[[Callable[[Plan], None]], Callable[[Plan], None]]:
    def register(change: Callable[[Plan], None]) -> Callable[[Plan], None]:
        TAMPERINGS.append(Tampering(change.__name__, change, frozenset(codes), everywhere))
        return change

    return register


def first(found: Iterator[Any]) -> Any:
    for item in found:
        return item
    raise NothingToSpoil


def boards(plan: Plan) -> Iterator[tuple[Any, Any]]:
    return ((surface, board) for surface in plan["surfaces"] for board in surface["boards"])


def box(outline: list[list[float]]) -> tuple[float, float, float, float]:
    us, vs = [p[0] for p in outline], [p[1] for p in outline]
    return min(us), min(vs), max(us), max(vs)


def shift(points: list[list[float]], u: float, v: float) -> None:
    for point in points:
        point[0], point[1] = tick(point[0] + u), tick(point[1] + v)


def framed(plan: Plan) -> Any:
    return first(s for s in plan["surfaces"] if s.get("framing_axis") and s["seams"] and s["boards"])


def working(plan: Plan, start: str) -> Any:
    return first(plan["workings"][name] for name in sorted(plan["workings"]) if name.startswith(start))


def more(text: str, share: float = 0.07) -> str:
    """A text with its first number made larger, as many places shown."""
    found = re.search(r"\d+(?:\.\d+)?", text)
    if found is None:
        raise NothingToSpoil
    places = len(found[0].partition(".")[2])
    if places and float(found[0]) == 0:
        raise NothingToSpoil
    changed = float(found[0]) * (1 + share) + (0 if places else 1)
    return f"{text[: found.start()]}{changed:.{places}f}{text[found.end() :]}"


def square(u: float, v: float, half: float) -> list[list[float]]:
    corners = ((u - half, v - half), (u + half, v - half), (u + half, v + half), (u - half, v + half))
    return [[tick(a), tick(b)] for a, b in corners]


def tick(value: float) -> float:
    return round(value * 640) / 640

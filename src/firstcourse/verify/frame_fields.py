"""Sheets of judged frames, as the verifier reads them from raw JSON: printed values with their numbers."""

import re
from dataclasses import dataclass
from typing import Any

from firstcourse.verify.fields import FieldError, Node
from firstcourse.verify.load_fields import FloorLoads, read_loads
from firstcourse.verify.printed import first_number

_NUMBER = re.compile(r"-?\d[\d,]*(?:\.\d+)?(?:e[-+]\d+)?")
_AT_LEAST, _AT_MOST = "at least ", "at most "
_KINDS = ("floor", "wall", "ceiling")


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a calculation sheet.

    Attributes:
        text, limit_text: The value and its limit as printed.
        found, limit: Numbers as printed; None for a line without a limit.
        at_least: Whether the value must reach the limit.
        advised: The limit is advice beside a published rating.
    """

    name: str
    working: str
    text: str
    limit_text: str
    found: float | None
    limit: float | None
    at_least: bool
    holds: bool
    advised: bool = False

    @property
    def stands(self) -> bool:
        """Whether it holds, or its limit is advice."""
        return self.holds or self.advised


@dataclass(frozen=True, slots=True)
class Layer:
    """One layer: thickness [in], density [kg/m³], mass [kg/m²], and the same [psf]."""

    name: str
    thickness: float
    density: float
    mass: float
    psf: float


@dataclass(frozen=True, slots=True)
class Frame:
    """One judged floor, wall or ceiling."""

    surface: str
    where: str
    kind: str
    facts: tuple[tuple[str, str], ...]
    remedies: str
    lines: tuple[Line, ...]
    layers: tuple[Layer, ...]
    mass: float | None
    loads: FloorLoads


def read_frame(node: Node) -> Frame:
    """Read one sheet.

    Raises:
        FieldError: A field is missing or is not what the format asks.
    """
    if node.text("kind") not in _KINDS:
        raise FieldError(f"{node.where}.kind", "is no floor, wall or ceiling")
    node.text("question")
    mass = node.text("mass", "")
    return Frame(
        surface=node.text("surface"),
        where=node.text("where"),
        kind=node.text("kind"),
        facts=tuple(_fact(*row) for row in node.rows("facts", ())),
        remedies=node.text("remedies", ""),
        lines=tuple(_line(line) for line in node.nodes("lines")),
        layers=tuple(_layer(layer) for layer in node.nodes("layers", ())),
        mass=_first(mass, f"{node.where}.mass") if mass else None,
        loads=read_loads(node),
    )


def _line(node: Node) -> Line:
    limit, found = node.text("limit", ""), node.text("found")
    if limit and not limit.startswith((_AT_LEAST, _AT_MOST)):
        raise FieldError(f"{node.where}.limit", "says neither at least nor at most")
    # What does not bend at all has no ratio that could be printed.
    value = float("inf") if found == "no deflection" else None
    return Line(
        name=node.text("name"),
        working=node.text("working"),
        text=found,
        limit_text=limit,
        found=(value or _first(found, f"{node.where}.found")) if limit else None,
        limit=_first(limit, f"{node.where}.limit") if limit else None,
        at_least=limit.startswith(_AT_LEAST),
        holds=node.flag("holds"),
        advised=node.flag("advised", False),
    )


def _fact(value: Any, where: str) -> tuple[str, str]:
    if not isinstance(value, list | tuple) or len(value) != 2 or not all(isinstance(item, str) for item in value):
        raise FieldError(where, "is not a name and a value")
    return value[0], value[1]


def _layer(node: Node) -> Layer:
    mass = node.text("mass")
    return Layer(
        name=node.text("name"),
        thickness=_first(node.text("thickness"), f"{node.where}.thickness"),
        density=_first(node.text("density"), f"{node.where}.density"),
        mass=_first(mass, f"{node.where}.mass"),
        psf=_first(mass.partition("(")[2], f"{node.where}.mass"),
    )


def _first(text: str, where: str) -> float:
    found = _NUMBER.search(text)
    if found is None:
        raise FieldError(where, f"'{text}' holds no number")
    fraction = first_number(text) if text[found.end() : found.end() + 1] in ("-", "/") else None
    return float(found[0].replace(",", "")) if fraction is None else fraction

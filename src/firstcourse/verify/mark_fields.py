"""What is marked on a surface, as the verifier reads it from raw JSON."""

from dataclasses import dataclass

from firstcourse.geometry import Point
from firstcourse.verify.fields import FieldError, Node, segment, ticks

_KINDS = ("first_course", "plumb", "snap", "start", "square", "pole")
type Line = tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class Mark:
    """A line or place with one length that finds it [ticks]; `measure` is where the tape lies."""

    kind: str
    line: Line
    start: str
    distance: int
    to: str
    at: str
    measure: Line | None
    cut: bool
    stock: str
    every: int = 1


def read_mark(node: Node) -> Mark:
    """Read one mark.

    Raises:
        FieldError: A field is missing or is not what the format asks.
    """
    kind = node.text("kind")
    if kind not in _KINDS:
        raise FieldError(f"{node.where}.kind", f"'{kind}' is not one of {', '.join(_KINDS)}")
    measure = node.raw("measure", None)
    if (measure is None) != (kind == "pole"):
        raise FieldError(f"{node.where}.measure", "belongs to every mark but those of poles")
    return Mark(
        kind=kind,
        line=segment(node.raw("line"), f"{node.where}.line"),
        start=node.text("from"),
        distance=ticks(node.raw("distance"), f"{node.where}.distance"),
        to=node.text("to"),
        at=node.text("at", ""),
        measure=None if measure is None else segment(measure, f"{node.where}.measure"),
        cut=node.flag("cut", False),
        stock=node.text("stock", ""),
        every=node.count("every") if "every" in node.value else 1,
    )

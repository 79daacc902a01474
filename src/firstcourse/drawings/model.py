"""Primitives of a drawing in millimetres on paper, y up, on named layers.

A drawing knows its scale: a length on paper times `scale` is the length on site. Text has a size on paper.
"""

from dataclasses import dataclass, field
from typing import Literal

import shapely
from shapely import LineString, Polygon

from firstcourse.drawings.face import ASCENT, DESCENT, text_width

XY = tuple[float, float]
Box = tuple[float, float, float, float]
"""Left, lower, right, upper [mm on paper]."""
BASELINE = 0.35
"""The line of writing lies so far under the middle of a text's height, in type sizes."""
LEAST_TEXT_MM = 7 * 25.4 / 72
"""No text on a drawing is set smaller: 7 points [mm]."""

PENS_MM = {
    "outline": 0.5,
    "extent": 0.18,
    "board": 0.6,
    "cut": 0.35,
    "framing": 0.18,
    "added": 0.7,
    "opening": 0.35,
    "hatch": 0.13,
    "fastener": 0.2,
    "panel": 0.25,
    "keepout": 0.6,
    "tile": 0.18,
    "sheet": 0.35,
    "chip": 0.09,
    "soft": 0.8,
    "snap": 0.6,
    "dimension": 0.18,
    "leader": 0.18,
    "text": 0.0,
}
"""Line width of each layer [mm]."""
GREYS = {"chip": 0.55, "hatch": 0.45}
"""Lightness of the layers that are not black, from 0 to 1: what fills an area must not drown what bounds it."""
DASHES_MM = {
    "framing": (2.0, 1.2),
    "extent": (0.6, 0.9),
    "panel": (5.0, 1.0, 0.8, 1.0),
    "added": (3.0, 1.2),
    "soft": (1.2, 0.8),
    "keepout": (2.4, 0.6),
    "snap": (8.0, 1.2, 1.2, 1.2),
}
"""Dash pattern of the layers that are not drawn through [mm]."""


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line."""

    layer: str
    a: XY
    b: XY


@dataclass(frozen=True, slots=True)
class Poly:
    """A closed outline; `name` ties it to the board or piece it is."""

    layer: str
    points: tuple[XY, ...]
    name: str = ""


@dataclass(frozen=True, slots=True)
class Circle:
    """A circle."""

    layer: str
    centre: XY
    radius: float


@dataclass(frozen=True, slots=True)
class Text:
    """A run of text; `at` is the middle of its height, at its left end, middle or right end.

    Attributes:
        size: Height of the type [mm].
        upright: Turned by a quarter to the left.
    """

    at: XY
    text: str
    size: float
    anchor: Literal["start", "middle", "end"] = "middle"
    bold: bool = False
    upright: bool = False

    @property
    def box(self) -> Box:
        """Left, lower, right, upper of the room it takes [mm], from the advances of its letters."""
        length = text_width(self.text, self.size, bold=self.bold)
        start = {"start": 0.0, "middle": -length / 2, "end": -length}[self.anchor]
        under, over = (BASELINE + DESCENT) * self.size, (ASCENT - BASELINE) * self.size
        if self.upright:
            return self.at[0] - over, self.at[1] + start, self.at[0] + under, self.at[1] + start + length
        return self.at[0] + start, self.at[1] - under, self.at[0] + start + length, self.at[1] + over


@dataclass(slots=True)
class Drawing:
    """What is drawn, in drawing order, with the scale it is drawn at.

    Attributes:
        title: What it is called.
        caption: Its title with its scale, for who cannot see it.
    """

    title: str
    scale: int
    caption: str = ""
    lines: list[Line] = field(default_factory=list)
    polys: list[Poly] = field(default_factory=list)
    circles: list[Circle] = field(default_factory=list)
    texts: list[Text] = field(default_factory=list)

    @property
    def box(self) -> Box:
        """Left, lower, right, upper of all that is drawn [mm on paper]."""
        points = [p for line in self.lines for p in (line.a, line.b)]
        points += [p for poly in self.polys for p in poly.points]
        for circle in self.circles:
            points += [
                (circle.centre[0] - circle.radius, circle.centre[1] - circle.radius),
                (circle.centre[0] + circle.radius, circle.centre[1] + circle.radius),
            ]
        for text in self.texts:
            left, lower, right, upper = text.box
            points += [(left, lower), (right, upper)]
        xs, ys = [p[0] for p in points], [p[1] for p in points]
        return min(xs), min(ys), max(xs), max(ys)


def hatch(shape: Polygon, step: float, *, falling: bool = False) -> list[Line]:
    """Lines at 45 degrees across a shape, `step` apart along the horizontal [mm].

    Args:
        shape: What is hatched.
        step: Distance of two lines.
        falling: They fall to the right; else they rise.
    """
    x0, y0, x1, y1 = shape.bounds
    low, high = (y1, y0) if falling else (y0, y1)
    lines = []
    offset = x0 - (y1 - y0) + step / 2
    while offset < x1:
        across = shape.intersection(LineString([(offset, low), (offset + y1 - y0, high)]))
        for part in shapely.get_parts(across):
            if isinstance(part, LineString) and not part.is_empty:
                (ax, ay), (bx, by) = part.coords[0], part.coords[-1]
                lines.append(Line("hatch", (ax, ay), (bx, by)))
        offset += step
    return lines

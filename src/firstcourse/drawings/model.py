"""Primitives of a drawing in millimetres on paper, y up, on named layers.

A drawing knows its scale: a length on paper times `scale` is the length on site. Text has a size on paper.
"""

import math
from dataclasses import dataclass, field
from typing import Literal

import shapely
from shapely import LineString, Polygon

XY = tuple[float, float]
Box = tuple[float, float, float, float]
"""Left, lower, right, upper [mm on paper]."""
_SQUARE_MM = 10.0
"""Texts are looked for by squares of paper of this size [mm]."""
_GLYPH_WIDTH = 0.56
"""Mean advance of a glyph of the papers' face, in text sizes; figures and capitals included."""

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
    "tile": 0.18,
    "sheet": 0.35,
    "chip": 0.09,
    "soft": 0.8,
    "snap": 0.6,
    "dimension": 0.18,
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
    def box(self) -> tuple[float, float, float, float]:
        """Left, lower, right, upper of the room it takes [mm], from mean glyph widths."""
        length = len(self.text) * self.size * _GLYPH_WIDTH
        start = {"start": 0.0, "middle": -length / 2, "end": -length}[self.anchor]
        half = self.size * 0.6
        if self.upright:
            return self.at[0] - half, self.at[1] + start, self.at[0] + half, self.at[1] + start + length
        return self.at[0] + start, self.at[1] - half, self.at[0] + start + length, self.at[1] + half


@dataclass(slots=True)
class Drawing:
    """What is drawn, in drawing order, with the scale it is drawn at."""

    title: str
    scale: int
    lines: list[Line] = field(default_factory=list)
    polys: list[Poly] = field(default_factory=list)
    circles: list[Circle] = field(default_factory=list)
    texts: list[Text] = field(default_factory=list)
    _boxes: dict[tuple[int, int], list[Box]] = field(default_factory=dict, repr=False, compare=False)
    _filed: int = field(default=0, repr=False, compare=False)

    @property
    def box(self) -> tuple[float, float, float, float]:
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

    def place(self, text: Text, *, try_also: tuple[XY, ...] = ()) -> bool:
        """Add a text where no other text stands; at the first free of the places given, else not at all."""
        for at in (text.at, *try_also):
            moved = Text(at, text.text, text.size, text.anchor, text.bold, text.upright)
            box = moved.box
            if not any(_overlap(box, other) for other in self._near(box)):
                self.texts.append(moved)
                return True
        return False

    def place_within(self, shape: Polygon, text: Text, *, try_also: tuple[XY, ...] = ()) -> XY:
        """Add a text where no other stands, if possible wholly within a shape, and say where it stands.

        Args:
            shape: What the text belongs to, its holes left out.
            text: At the place it would best stand.
            try_also: Other places, the best first.
        """
        spots = (text.at, *try_also)
        within = [
            at
            for at in spots
            if shape.contains(
                shapely.box(*Text(at, text.text, text.size, text.anchor, text.bold, text.upright).box)
            )
        ]
        before = len(self.texts)
        first, *others = (*within, *(at for at in spots if at not in within))
        moved = Text(first, text.text, text.size, text.anchor, text.bold, text.upright)
        self.place(moved, try_also=tuple(others))
        return self.texts[-1].at if len(self.texts) > before else text.at

    def _near(self, box: Box) -> list[Box]:
        """Boxes of the texts that stand in the squares of paper that a box reaches into, repeats included."""
        for text in self.texts[self._filed :]:
            for square in _squares(text.box):
                self._boxes.setdefault(square, []).append(text.box)
        self._filed = len(self.texts)
        return [other for square in _squares(box) for other in self._boxes.get(square, ())]


def hatch(shape: Polygon, step: float) -> list[Line]:
    """Lines at 45 degrees across a shape, `step` apart along the horizontal [mm]."""
    x0, y0, x1, y1 = shape.bounds
    lines = []
    offset = x0 - (y1 - y0) + step / 2
    while offset < x1:
        across = shape.intersection(LineString([(offset, y0), (offset + y1 - y0, y1)]))
        for part in shapely.get_parts(across):
            if isinstance(part, LineString) and not part.is_empty:
                (ax, ay), (bx, by) = part.coords[0], part.coords[-1]
                lines.append(Line("hatch", (ax, ay), (bx, by)))
        offset += step
    return lines


def _squares(box: Box) -> list[tuple[int, int]]:
    left, lower, right, upper = (math.floor(side / _SQUARE_MM) for side in box)
    return [(across, up) for across in range(left, right + 1) for up in range(lower, upper + 1)]


def _overlap(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]

"""Outlines of random rooms, as rooms are found on site, and lengths as a tape shows them."""

import math
import random
from fractions import Fraction

Corners = list[tuple[float, float]]
"""Corners clockwise seen from above, v up [mm]."""
_INCH = 25.4


class Taper:
    """Writes lengths as the tape of one job shows them."""

    def __init__(self, tape: str) -> None:
        self.tape = tape
        self.step_mm = _INCH / 16 if tape == "inch" else 1.0

    def text(self, length_mm: float) -> str:
        """The nearest graduation, at least zero, with its unit."""
        marks = max(0, round(length_mm / self.step_mm))
        if self.tape == "mm":
            return f"{marks} mm"
        whole, part = divmod(Fraction(marks, 16), 1)
        return f"{whole} {part} in" if whole and part else f"{part or whole} in"


def rectangle(rng: random.Random) -> Corners:
    """A plain room of 1 to 12 m², seldom larger."""
    area = min(20.0, math.exp(rng.gauss(1.5, 0.55))) * 1e6
    ratio = rng.uniform(1.0, 2.2)
    w, h = math.sqrt(area * ratio), math.sqrt(area / ratio)
    if rng.random() < 0.5:
        w, h = h, w
    return [(0, h), (w, h), (w, 0), (0, 0)]


def size(corners: Corners) -> tuple[float, float]:
    """How far a room with its lower left at the origin reaches each way [mm]."""
    return max(u for u, _ in corners), max(v for _, v in corners)


def l_shape(rng: random.Random) -> Corners:
    """A room with one corner taken out, by a pipe box of 50 to 150 mm or by another room."""
    w, h = size(rectangle(rng))
    if rng.random() < 0.4:
        a, b = w - rng.uniform(50, 400), h - rng.uniform(50, 150)
    else:
        a, b = w * rng.uniform(0.35, 0.7), h * rng.uniform(0.35, 0.7)
    return [(0, h), (a, h), (a, b), (w, b), (w, 0), (0, 0)]


def u_shape(rng: random.Random) -> Corners:
    """A room with a stub wall or a duct in the middle of one side."""
    w, h = size(rectangle(rng))
    w = max(w, 1500)
    left = w * rng.uniform(0.25, 0.5)
    right = min(w * 0.8, left + rng.choice([rng.uniform(90, 160), rng.uniform(250, 700)]))
    low = h * rng.uniform(0.4, 0.9)
    return [(0, h), (left, h), (left, low), (right, low), (right, h), (w, h), (w, 0), (0, 0)]


def tapered(rng: random.Random) -> Corners:
    """A room whose far wall is plainly shorter."""
    w, h = size(rectangle(rng))
    by, off = rng.uniform(20, 0.2 * w), rng.uniform(0, 60)
    return [(0, h), (w, h - off), (w - by, 0), (0, 0)]


def cut_corner(rng: random.Random) -> Corners:
    """A room with one corner cut off at an odd angle."""
    w, h = size(rectangle(rng))
    a, b = rng.uniform(0.15, 0.45) * w, rng.uniform(0.15, 0.45) * h
    return [(0, h), (w - a, h), (w, h - b), (w, 0), (0, 0)]


def two_jogs(rng: random.Random) -> Corners:
    """A room with two opposite corners boxed in."""
    w, h = size(rectangle(rng))
    a, b = rng.uniform(50, 150), rng.uniform(50, 150)
    c, d = rng.uniform(50, 0.35 * w), rng.uniform(50, 0.35 * h)
    return [(0, h), (w - a, h), (w - a, h - b), (w, h - b), (w, 0), (c, 0), (c, d), (0, d)]


_SHAPES = ((rectangle, 34), (l_shape, 28), (u_shape, 12), (tapered, 10), (cut_corner, 6), (two_jogs, 10))


def outline(rng: random.Random) -> Corners:
    """A room's corners: any shape, turned, mirrored, and out of square as rooms are."""
    make = rng.choices([shape for shape, _ in _SHAPES], [weight for _, weight in _SHAPES])[0]
    corners = make(rng)
    if rng.random() < 0.5:
        corners = [(-u, v) for u, v in reversed(corners)]
    for _ in range(rng.randrange(4)):
        corners = [(v, -u) for u, v in corners]
    start = rng.randrange(len(corners))
    corners = corners[start:] + corners[:start]
    if rng.random() < 0.15:
        return corners
    degrees = rng.uniform(0.3, 1.5)
    return [
        (u + _off(rng, corners, index, degrees), v + _off(rng, corners, index, degrees))
        for index, (u, v) in enumerate(corners)
    ]


def _off(rng: random.Random, corners: Corners, index: int, degrees: float) -> float:
    """A shift of one corner that turns its shorter side by no more than so many degrees, at most 20 mm."""
    at = corners[index]
    short = min(math.dist(at, corners[index - 1]), math.dist(at, corners[(index + 1) % len(corners)]))
    most = min(20.0, math.tan(math.radians(degrees)) * short)
    return rng.uniform(-most, most)

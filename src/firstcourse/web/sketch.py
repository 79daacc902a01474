"""The sketch of a room that is being taped: its distances, what to tape next, how sure each corner is."""

import math
from collections.abc import Collection, Mapping, Sequence
from xml.etree.ElementTree import Element, SubElement, tostring

from firstcourse.app.walk import Walk

_SVG = "http://www.w3.org/2000/svg"
_WIDE, _MARGIN = 320.0, 34.0
"""Of the sketch, in its own units; it is shown as wide as the page."""
_LETTER_OFF = 17.0
_SURE_SCALE = 4.0
"""How many times larger than the room's scale a corner's doubt is drawn: at scale nobody could see it."""
_MOST_DOUBT = 22.0


def sketch(
    walk: Walk, corners_mm: Mapping[str, tuple[float, float]], doubt_mm: Mapping[str, float], asked: str
) -> str:
    """An SVG of the room, without any words: letters of the corners alone.

    Args:
        walk: What is taped; taped distances are drawn whole, sides that are not dashed.
        corners_mm: Where the corners are [mm].
        doubt_mm: Corner to how far off it may be [mm]; drawn as a ring, larger than to scale.
        asked: The distance to tape next, drawn heavy; empty for none.
    """
    left, low = (min(at[axis] for at in corners_mm.values()) for axis in (0, 1))
    wide, high = (max(at[axis] for at in corners_mm.values()) - least for axis, least in ((0, left), (1, low)))
    scale = (_WIDE - 2 * _MARGIN) / max(wide, high, 1.0)
    at = {
        name: (_MARGIN + (u - left) * scale, _MARGIN + (high - (v - low)) * scale)
        for name, (u, v) in corners_mm.items()
    }
    size = f"0 0 {wide * scale + 2 * _MARGIN:.1f} {high * scale + 2 * _MARGIN:.1f}"
    svg = Element("svg", {"xmlns": _SVG, "viewBox": size, "class": "sketch", "aria-hidden": "true"})
    taped = {frozenset(one.pair.split("-")) for one in walk.readings}
    sides = [frozenset(pair) for pair in zip(walk.corners, [*walk.corners[1:], walk.corners[0]], strict=True)]
    SubElement(svg, "polygon", {"points": " ".join(f"{x:.1f},{y:.1f}" for x, y in at.values()), "class": "ground"})
    for pair in [*sides, *(pair for pair in sorted(taped, key=sorted) if pair not in sides)]:
        _line(svg, at, pair, _kind(pair, taped, sides))
    if asked:
        _line(svg, at, frozenset(asked.split("-")), "asked")
    for name, (x, y) in at.items():
        if name in doubt_mm:
            ring = min(doubt_mm[name] * scale * _SURE_SCALE, _MOST_DOUBT)
            SubElement(svg, "circle", {"cx": f"{x:.1f}", "cy": f"{y:.1f}", "r": f"{ring:.1f}", "class": "doubt"})
        SubElement(svg, "circle", {"cx": f"{x:.1f}", "cy": f"{y:.1f}", "r": "3.5", "class": "corner"})
        lx, ly = _beside(at, [*walk.corners], name)
        letter = SubElement(svg, "text", {"x": f"{lx:.1f}", "y": f"{ly + 6:.1f}", "class": "letter"})
        if name in asked.split("-"):
            letter.set("class", "letter asked")
        letter.text = name
    return tostring(svg, encoding="unicode")


def path_sketch(path_mm: Sequence[tuple[float, float]]) -> str:
    """An SVG of a walk that does not close yet; where one stands is a ring.

    Args:
        path_mm: Its corners, the last where one stands [mm].
    """
    left, low = (min(at[axis] for at in path_mm) for axis in (0, 1))
    wide, high = (max(at[axis] for at in path_mm) - least for axis, least in ((0, left), (1, low)))
    scale = (_WIDE - 2 * _MARGIN) / max(wide, high, 1.0)
    at = [(_MARGIN + (u - left) * scale, _MARGIN + (high - (v - low)) * scale) for u, v in path_mm]
    size = f"0 0 {_WIDE:.1f} {high * scale + 2 * _MARGIN:.1f}"
    svg = Element("svg", {"xmlns": _SVG, "viewBox": size, "class": "sketch", "aria-hidden": "true"})
    SubElement(svg, "polyline", {"points": " ".join(f"{x:.1f},{y:.1f}" for x, y in at), "class": "side"})
    SubElement(svg, "circle", {"cx": f"{at[0][0]:.1f}", "cy": f"{at[0][1]:.1f}", "r": "5", "class": "corner"})
    SubElement(svg, "circle", {"cx": f"{at[-1][0]:.1f}", "cy": f"{at[-1][1]:.1f}", "r": "9", "class": "doubt"})
    return tostring(svg, encoding="unicode")


def _kind(pair: frozenset[str], taped: Collection[frozenset[str]], sides: Collection[frozenset[str]]) -> str:
    if pair not in sides:
        return "diagonal"
    return "side taped" if pair in taped else "side"


def _line(svg: Element, at: Mapping[str, tuple[float, float]], pair: frozenset[str], kind: str) -> None:
    (x1, y1), (x2, y2) = (at[name] for name in sorted(pair))
    ends = {"x1": f"{x1:.1f}", "y1": f"{y1:.1f}", "x2": f"{x2:.1f}", "y2": f"{y2:.1f}"}
    SubElement(svg, "line", {**ends, "class": kind})


def _beside(at: Mapping[str, tuple[float, float]], corners: list[str], name: str) -> tuple[float, float]:
    """Where a corner's letter stands: outside, on the line that halves its angle."""
    i = corners.index(name)
    here, before, after = at[name], at[corners[i - 1]], at[corners[(i + 1) % len(corners)]]

    def towards(other: tuple[float, float]) -> tuple[float, float]:
        length = math.dist(here, other) or 1.0
        return (other[0] - here[0]) / length, (other[1] - here[1]) / length

    one, other = towards(before), towards(after)
    inward = (one[0] + other[0], one[1] + other[1])
    length = math.hypot(*inward)
    if length < 1e-6:
        inward, length = (-one[1], one[0]), 1.0
    # On the page a room is walked to the right; where it turns left, the line that halves the angle points out.
    turn = one[0] * other[1] - one[1] * other[0]
    sign = -1.0 if turn <= 0 else 1.0
    return here[0] + sign * inward[0] / length * _LETTER_OFF, here[1] + sign * inward[1] / length * _LETTER_OFF

"""Flanges, drains, valves and niches that stand on a joist or stud: how far to move them."""

from collections.abc import Iterator, Sequence

import shapely

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import bounds
from firstcourse.plan import Opening, OpeningKind, SupportKind, Surface, SurfaceKind
from firstcourse.units import Tape, format_length

_HELD = {
    OpeningKind.FLANGE: "closet flange",
    OpeningKind.DRAIN: "drain",
    OpeningKind.VALVE: "valve",
    OpeningKind.NICHE: "niche",
}
_MEMBERS = (SupportKind.JOIST, SupportKind.STUD)
Span = tuple[int, int]
Box = tuple[int, int, int, int]


def on_framing(surfaces: Sequence[Surface], tape: Tape) -> Iterator[Finding]:
    """Tell of every flange, drain, valve or niche that a joist or stud runs behind, and of the way off it.

    Args:
        surfaces: With their framing; members far askew to the axes are left out.
        tape: Tape that distances are told by.
    """
    for surface in surfaces:
        if not surface.framing_axis:
            continue
        along_v = surface.framing_axis == "v"
        for opening in surface.openings:
            if opening.kind in _HELD:
                low, high = _across(_box(opening), along_v)
                spans = _beside(surface, _box(opening), along_v)
                if any(a < high and b > low for a, b in spans):
                    yield _finding(surface, opening, _ways_off(low, high, spans), along_v, tape)


def _beside(surface: Surface, box: Box, along_v: bool) -> list[Span]:
    """What the members take up across the framing beside a thing: one askew lies elsewhere farther along."""
    left, lower, right, upper = bounds(surface.extent or surface.outline)
    strip = shapely.box(left, box[1], right, box[3]) if along_v else shapely.box(box[0], lower, box[2], upper)
    parts = (
        shapely.Polygon(support.outline).intersection(strip)
        for support in surface.supports
        if support.kind in _MEMBERS
    )
    found = []
    for part in parts:
        if not part.is_empty:
            near, low, far, high = (round(value) for value in part.bounds)
            found.append(_across((near, low, far, high), along_v))
    return sorted(found)


def _across(box: Box, along_v: bool) -> Span:
    return (box[0], box[2]) if along_v else (box[1], box[3])


def _box(opening: Opening) -> Box:
    if opening.outline is not None:
        return bounds(opening.outline)
    assert opening.centre is not None and opening.diameter is not None
    (u, v), half = opening.centre, -(-opening.diameter // 2)
    return u - half, v - half, u + half, v + half


def _ways_off(low: int, high: int, spans: Sequence[Span]) -> list[int]:
    """The shortest move either way that clears every member, signed [ticks]."""
    edges = [b - low for _, b in spans if b > low] + [a - high for a, _ in spans if a < high]
    free = [move for move in edges if not any(a < high + move and b > low + move for a, b in spans)]
    up, down = [move for move in free if move > 0], [move for move in free if move < 0]
    return [min(up)] * bool(up) + [max(down)] * bool(down)


def _finding(surface: Surface, opening: Opening, ways: Sequence[int], along_v: bool, tape: Tape) -> Finding:
    what, member = _HELD[opening.kind], "stud" if surface.kind is SurfaceKind.WALL else "joist"
    names = ("to the right", "to the left") if along_v else ("up on the drawing", "down on the drawing")
    told = " or ".join(f"{format_length(abs(way), tape)} {names[way < 0]}" for way in ways)
    move = f"Move it {told}, or" if told else "There is no bay it fits into:"
    return Finding(
        code="SUR-108",
        severity=Severity.FIX,
        where=f"{surface.title or surface.id}, {opening.id}",
        message=f"The {what} stands on a {member}.",
        source="common practice",
        remedy=f"{move} head the {member} off. Cutting or heading off a {member} is structure: local code and a "
        "licensed person decide first, and no pipe is moved but by whoever is licensed for it.",
    )

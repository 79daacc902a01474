"""Flanges, drains, valves and niches that stand on a joist or stud: how far to move them."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from shapely import Polygon

from firstcourse.findings import Finding, Severity
from firstcourse.geometry import Point, Ring
from firstcourse.job import FloorFraming, Room
from firstcourse.plan import Opening, OpeningKind, Support, SupportKind, Surface, SurfaceKind
from firstcourse.survey.flats import frames_of
from firstcourse.units import Tape
from firstcourse.values import Word, length

_HELD = (OpeningKind.FLANGE, OpeningKind.DRAIN, OpeningKind.VALVE, OpeningKind.NICHE)
_MEMBERS = (SupportKind.JOIST, SupportKind.STUD)
_TOUCH = 4
"""Members askew to the axes have corners on whole ticks: what overlaps by no more only touches [ticks]."""
Span = tuple[int, int]


@dataclass(frozen=True, slots=True)
class _Across:
    """The direction across the members.

    Attributes:
        toward: Unit vector on the surface.
        wall: Reference to the wall that it leads away from; empty on a wall, where it leads to the right.
    """

    toward: tuple[float, float]
    wall: str = ""

    def span(self, points: Ring, spare: int = 0) -> Span:
        """From where to where points reach across the members, `spare` farther both ways [ticks]."""
        places = [u * self.toward[0] + v * self.toward[1] for u, v in points]
        return round(min(places)) - spare, round(max(places)) + spare


def on_framing(
    surfaces: Sequence[Surface], joists: Sequence[Support], room: Room, plan: Mapping[str, Point], tape: Tape
) -> Iterator[Finding]:
    """Tell of every flange, drain, valve or niche that a joist or stud runs behind, and of the way off it.

    Args:
        surfaces: Those of one room, its shower floor with them.
        joists: Of the room's floor, which carry its shower floor too.
        room: What the job says, for the side its joists run along.
        plan: The room's adjusted corners.
        tape: What stands off a member by less than half its mark stands off.
    """
    for surface in surfaces:
        across = _across(surface, room, plan)
        if across is None:
            continue
        members = joists if surface.kind is SurfaceKind.FLOOR else surface.supports
        spans = sorted(across.span(member.outline) for member in members if member.kind in _MEMBERS)
        for opening in surface.openings:
            if opening.kind not in _HELD:
                continue
            low, high = _reach(opening, across)
            # Off by less than half a mark of the tape it is off as near as anyone can build it.
            least = max(_TOUCH, tape.graduation // 2)
            stands = any(a < high - least and b > low + least for a, b in spans)
            if stands and not _finds_a_bay(opening, low, high, spans):
                ways = _ways_off(low, high, spans, within=across.span(surface.outline))
                yield _finding(surface, opening, ways, across)


def _across(surface: Surface, room: Room, plan: Mapping[str, Point]) -> _Across | None:
    if surface.kind is SurfaceKind.WALL:
        return _Across((1.0, 0.0))
    part = room.floor if surface.kind is SurfaceKind.FLOOR else room.ceiling
    framing: FloorFraming | None = None if part is None else part.framing
    if framing is None:
        return None
    frame = frames_of(room, plan)[framing.parallel_to]
    du, dv = frame.end[0] - frame.start[0], frame.end[1] - frame.start[1]
    # A ceiling is seen from below: the floor plan's mirror image.
    side = -1 if surface.kind is SurfaceKind.CEILING else 1
    toward = side * dv / frame.length, -du / frame.length
    return _Across(toward, f"{room.name}/wall/{framing.parallel_to}")


def _reach(opening: Opening, across: _Across) -> Span:
    if opening.outline is not None:
        return across.span(opening.outline)
    assert opening.centre is not None and opening.diameter is not None
    return across.span((opening.centre,), -(-opening.diameter // 2))


def _finds_a_bay(opening: Opening, low: int, high: int, spans: Sequence[Span]) -> bool:
    """Whether a linear drain that runs over members has its own width free between them, for its outlet."""
    if opening.kind is not OpeningKind.DRAIN or opening.outline is None:
        return False
    width = _width(opening.outline)
    at = low
    for a, b in [*spans, (high, high)]:
        if min(a, high) - at >= width - _TOUCH:
            return True
        at = max(at, b)
    return False


def _width(ring: Ring) -> float:
    """The lesser side of the least rectangle round a ring [ticks]."""
    corners = list(Polygon(ring).minimum_rotated_rectangle.exterior.coords)
    return min(math.dist(corners[0], corners[1]), math.dist(corners[1], corners[2]))


def _ways_off(low: int, high: int, spans: Sequence[Span], *, within: Span) -> list[int]:
    """The shortest move either way that clears every member and stays on the surface, signed [ticks]."""
    edges = [b - low for _, b in spans if b > low] + [a - high for a, _ in spans if a < high]
    moves = [move for move in edges if within[0] <= low + move and high + move <= within[1]]
    free = sorted(
        move for move in moves if not any(a < high + move - _TOUCH and b > low + move + _TOUCH for a, b in spans)
    )
    up, down = [move for move in free if move > 0], [move for move in free if move < 0]
    return [*up[:1], *down[-1:]]


def _finding(surface: Surface, opening: Opening, ways: Sequence[int], across: _Across) -> Finding:
    forth, back = next((way for way in ways if way > 0), 0), -next((way for way in ways if way < 0), 0)
    return Finding(
        code="SUR-108",
        severity=Severity.FIX,
        at=(f"{surface.id}/opening/{opening.id}", *([across.wall] if across.wall else [])),
        remedies=("move" if ways else "no_bay", "licensed"),
        values={
            "thing": Word(word=opening.kind.value),
            "member": Word(word="stud" if surface.kind is SurfaceKind.WALL else "joist"),
            "ways": Word(word="both" if forth and back else "forth" if forth else "back"),
            "over": Word(word="wall" if surface.kind is SurfaceKind.WALL else "floor"),
            "forth": length(forth),
            "back": length(back),
        },
    )

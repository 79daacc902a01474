"""What must be said of flanges, drains, valves and niches that a member runs behind: how far to move them."""

import math
from collections.abc import Iterator, Sequence

from shapely import Polygon

from firstcourse.geometry.polygon import Ring
from firstcourse.verify.fields import Node
from firstcourse.verify.findings.taped import walls_of
from firstcourse.verify.structure import Document, Opening, Said, Surface
from firstcourse.verify.told import mm, said, word

_CODE = "SUR-108"
_HELD = ("flange", "drain", "valve", "niche")
_MEMBERS = ("joist", "stud")
_TOUCH = 4
"""What overlaps by no more only touches: members askew to the axes have corners on whole ticks [ticks]."""
Span = tuple[int, int]
Way = tuple[float, float]


def framing_findings(plan: Document) -> Iterator[Said]:
    """All that must be said of things that stand on members."""
    rooms = {room.text("name"): room for room in plan.job.nodes("rooms", ())}
    by_id = {surface.id: surface for surface in plan.surfaces}
    for surface in plan.surfaces:
        room = rooms.get(surface.room)
        if room is None or surface.part_of or not any(opening.kind in _HELD for opening in surface.openings):
            continue
        found = _across(surface, room, plan)
        under = by_id.get(f"{surface.room}/floor") if surface.kind == "floor" else surface
        if found is None:
            continue
        if under is None:
            # A shower that takes the whole floor: the plan keeps no joists under it, and what is told is believed.
            yield from (one for one in plan.findings if one.code == _CODE and one.place.startswith(surface.id))
            continue
        way, wall = found
        members = [one for one in under.supports if one.kind in _MEMBERS and not one.added]
        spans = sorted(_span(one.outline, way) for one in members)
        for opening in surface.openings:
            if opening.kind in _HELD:
                yield from _on_member(surface, opening, (way, wall), spans, plan)


def _across(surface: Surface, room: Node, plan: Document) -> tuple[Way, str] | None:
    """The way across the members, and the wall that it leads away from."""
    if surface.kind == "wall":
        return (1.0, 0.0), ""
    part = room.part("floor" if surface.kind == "floor" else "ceiling").part("framing")
    side = walls_of(room, plan).get(str(part.raw("parallel_to", "")))
    if side is None:
        return None
    (a, b), (c, d) = side.start, side.end
    long = math.dist(side.start, side.end)
    # A ceiling is seen from below.
    turn = -1 if surface.kind == "ceiling" else 1
    return (turn * (d - b) / long, -(c - a) / long), f"{surface.room}/wall/{side.pair}"


def _span(ring: Ring, way: Way, spare: int = 0) -> Span:
    places = [u * way[0] + v * way[1] for u, v in ring]
    return round(min(places)) - spare, round(max(places)) + spare


def _on_member(
    surface: Surface, opening: Opening, across: tuple[Way, str], spans: Sequence[Span], plan: Document
) -> Iterator[Said]:
    way, wall = across
    if opening.outline is not None:
        low, high = _span(opening.outline, way)
    else:
        low, high = _span((opening.centre,), way, -(-opening.diameter // 2))
    least = max(_TOUCH, plan.tape.graduation // 2)
    if not any(a < high - least and b > low + least for a, b in spans) or _has_a_bay(opening, low, high, spans):
        return
    ways = _ways_off(low, high, spans, _span(surface.outline, way))
    forth = min((move for move in ways if move > 0), default=0)
    back = min((-move for move in ways if move < 0), default=0)
    is_wall = surface.kind == "wall"
    yield said(
        _CODE,
        "fix",
        (f"{surface.id}/opening/{opening.id}", *([wall] if wall else [])),
        "move" if ways else "no_bay",
        "licensed",
        thing=word(opening.kind),
        member=word("stud" if is_wall else "joist"),
        ways=word("both" if forth and back else "forth" if forth else "back"),
        over=word("wall" if is_wall else "floor"),
        forth=mm(forth),
        back=mm(back),
    )


def _has_a_bay(opening: Opening, low: int, high: int, spans: Sequence[Span]) -> bool:
    """Whether a linear drain has its own width free between the members that it runs over."""
    if opening.kind != "drain" or opening.outline is None:
        return False
    box = list(Polygon(opening.outline).minimum_rotated_rectangle.exterior.coords)
    width = min(math.dist(box[0], box[1]), math.dist(box[1], box[2]))
    ends = [low, *(end for _, end in spans)]
    free = [(max(low, end), min([a for a, _ in spans if a >= end] + [high])) for end in ends if end < high]
    covered = [(a, b) for a, b in free if not any(start < b and end > a for start, end in spans)]
    return any(b - a >= width - _TOUCH for a, b in covered)


def _ways_off(low: int, high: int, spans: Sequence[Span], within: Span) -> list[int]:
    """Every move that clears all members and stays on the surface, just off one of them, signed [ticks]."""
    moves = [b - low for _, b in spans if b > low] + [a - high for a, _ in spans if a < high]
    return [
        move
        for move in moves
        if within[0] <= low + move
        and high + move <= within[1]
        and not any(a < high + move - _TOUCH and b > low + move + _TOUCH for a, b in spans)
    ]

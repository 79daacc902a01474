"""What ends near a wall stands at it: how far each was moved there, and gaps that nobody leaves on purpose.

Corners are moved the same way as where the room is drawn; the places they are moved from are derived from what was
taped.
"""

import math
from collections.abc import Iterator, Mapping, Sequence

from shapely import Point as Spot
from shapely import Polygon

from firstcourse.geometry import Point, Ring, as_ring, counter_clockwise, is_simple, rectangle, sides
from firstcourse.verify.fields import Node, point
from firstcourse.verify.findings.taped import AT_WALL, Wall, walls_of
from firstcourse.verify.structure import Document, Said, Surface
from firstcourse.verify.told import at_least, at_most, mm, name, said, word

CODES = frozenset({"SUR-106", "SUR-107"})
_TOUCH, _DOUBT = "shower.touch", "shower.doubt"
_STANDING = ("tub", "tray", "cabinet", "other")


def stood_findings(plan: Document) -> Iterator[Said]:
    """All that must be said of showers, fixtures, benches and niches near walls."""
    by_id = {surface.id: surface for surface in plan.surfaces}
    for room in plan.job.nodes("rooms", ()):
        walls = walls_of(room, plan)
        if not walls:
            continue
        at = room.text("name")
        for what, moved, beside in _things(room, walls, by_id, plan):
            for pair, by in moved.items():
                if by > plan.tape.graduation:
                    yield _moved(what, f"{at}/wall/{pair}", by, plan)
            for pair, gap in beside.items():
                yield _beside(what, f"{at}/wall/{pair}", gap, plan)


_Near = tuple[dict[str, str], Mapping[str, int], Mapping[str, int]]
"""What it is, how far it was moved to each wall, and how wide the gap is beside it [ticks]."""


def _things(room: Node, walls: dict[str, Wall], by_id: Mapping[str, Surface], plan: Document) -> Iterator[_Near]:
    floor, first = room.part("floor"), next(iter(walls))
    ways, touch, doubt = [*walls.values()], plan.rules.ticks(_TOUCH), plan.rules.ticks(_DOUBT)
    if floor.part("shower").value:
        shower = floor.part("shower")
        ring = as_ring(_outline(shower, walls[shower.text("side", "") or first]))
        found, moved = _at_walls(ring, ways, touch)
        # A kerb has no place in a gap, so that such a shower is not planned.
        gaps = {} if shower.part("kerb").value else _gaps(found, ways, doubt)
        yield word("shower_floor"), moved, gaps
    for opening in floor.nodes("openings", ()):
        if opening.text("kind") not in _STANDING or opening.raw("diameter", None) is not None:
            continue
        ring = _outline(opening, walls[opening.text("side", "") or first])
        if is_simple(ring):
            found, moved = _stood(ring, ways, touch)
            yield name(opening.text("id")), moved, _gaps(found, ways, doubt)
    for bench in room.nodes("benches", ()):
        yield name(bench.text("id")), _bench(bench, walls, touch), {}
    for wall in room.nodes("walls", ()):
        surface = by_id.get(f"{room.text('name')}/wall/{wall.text('wall')}")
        for opening in wall.nodes("openings", ()) if surface is not None else ():
            plain = opening.raw("diameter", None) is None and not opening.raw("points", None)
            if surface is not None and opening.text("kind") == "niche" and plain:
                yield name(opening.text("id")), _niche(opening, surface, [*walls], touch), {}


def _outline(thing: Node, side: Wall) -> Ring:
    """The outline of what was taped from a side, where it is not round."""
    if thing.raw("points", None):
        return counter_clockwise(as_ring(side.at(*point(*row)) for row in thing.rows("points")))
    left, out = thing.distance("left"), thing.distance("out")
    return side.box(left, out, left + thing.length("width"), out + thing.length("depth"))


def _stood(ring: Ring, walls: Sequence[Wall], touch: int) -> tuple[Ring, dict[str, int]]:
    """What is thick enough to tell which of its sides stands at a wall, moved there."""
    if Polygon(ring).buffer(-touch).is_empty:
        return ring, {}
    found, moved = _at_walls(ring, walls, touch)
    return (found, moved) if len(found) > 2 and is_simple(found) else (ring, {})


def _at_walls(ring: Ring, walls: Sequence[Wall], touch: int) -> tuple[Ring, dict[str, int]]:
    moved: dict[str, int] = {}
    found: list[Point] = []
    for a, b in sides(ring):
        here, there = (_at_wall(at, walls, touch) for at in (a, b))
        for wall in walls if here != a else ():
            by = round(wall.off(a)) if wall.off(here) <= AT_WALL else 0
            if by:
                moved[wall.pair] = max(by, moved.get(wall.pair, 0))
        found.append(here)
        if here != there:
            side = Wall("", here, there)
            corners = [wall.end for wall in walls if wall.end not in (here, there)]
            passed = [corner for corner in corners if side.off(corner) <= touch]
            found += sorted(passed, key=lambda corner: math.dist(corner, here))
    return counter_clockwise(as_ring(tuple(found))), moved


def _at_wall(at: Point, walls: Sequence[Wall], touch: int) -> Point:
    """A corner in the room's corner or on the wall that it comes near."""
    corner = min((wall.end for wall in walls), key=lambda end: (math.dist(end, at), end))
    if max(abs(corner[0] - at[0]), abs(corner[1] - at[1])) <= touch:
        return corner
    nearest = min(walls, key=lambda wall: wall.off(at))
    if nearest.off(at) > touch:
        return at
    foot = nearest.line.interpolate(nearest.line.project(Spot(at)))
    return round(foot.x), round(foot.y)


def _gaps(ring: Ring, walls: Sequence[Wall], doubt: int) -> dict[str, int]:
    """By wall, the widest gap beside a side that stands at none."""
    found: dict[str, int] = {}
    for a, b in sides(ring):
        if any(max(wall.off(a), wall.off(b)) <= AT_WALL for wall in walls):
            continue
        for wall in walls:
            gap = max(wall.off(a), wall.off(b))
            if AT_WALL < gap < doubt < math.dist(a, b):
                found[wall.pair] = max(round(gap), found.get(wall.pair, 0))
    return found


def _bench(bench: Node, walls: Mapping[str, Wall], touch: int) -> dict[str, int]:
    """How far the ends of a bench were moved to the walls beside its own [ticks]."""
    wall, pairs = walls[bench.text("wall")], [*walls]
    left, width = bench.distance("left"), bench.length("width")
    found, _ = _stood(wall.box(left, 0, left + width, bench.length("depth")), [*walls.values()], touch)
    ends = [round(wall.along(at)) for at in found if wall.off(at) <= AT_WALL]
    here = pairs.index(wall.pair)
    by = {pairs[here - 1]: abs(min(ends) - left), pairs[(here + 1) % len(pairs)]: abs(max(ends) - left - width)}
    return {pair: far for pair, far in by.items() if far}


def _niche(niche: Node, surface: Surface, pairs: list[str], touch: int) -> dict[str, int]:
    """How far a niche was moved to the walls that its own meets [ticks]."""
    here = pairs.index("-".join(surface.corners))
    foot, far_foot, far_top, top = surface.extent[:4]
    ends = (
        Wall(pairs[here - 1], foot, top),
        Wall(pairs[(here + 1) % len(pairs)], far_top, far_foot),
    )
    at, bottom = niche.distance("left"), niche.distance("bottom")
    ring = rectangle(at, bottom, at + niche.length("width"), bottom + niche.length("height"))
    return _stood(ring, ends, touch)[1]


def _moved(what: dict[str, str], wall: str, by: int, plan: Document) -> Said:
    limit = at_most(plan.rules.ticks(_TOUCH))
    return said("SUR-106", "note", wall, "tape_gap", rule=_TOUCH, measured=mm(by), limit=limit, thing=what)


def _beside(what: dict[str, str], wall: str, gap: int, plan: Document) -> Said:
    limit = at_least(plan.rules.ticks(_DOUBT))
    return said("SUR-107", "fix", wall, "tape_again", rule=_DOUBT, measured=mm(gap), limit=limit, thing=what)

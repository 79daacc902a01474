"""What the edges of surfaces meet: walls, corners, fixtures, floors and faces, as rooms are given and built."""

from collections.abc import Iterator, Mapping

from shapely import LineString, Point

from firstcourse.geometry import bounds, sides
from firstcourse.verify.fall_given import shower_of
from firstcourse.verify.fields import Node
from firstcourse.verify.formulas.survey import drawn_corners
from firstcourse.verify.met_faces import Edge, Edges, bench_face, kerb_face, lining, wall_edge
from firstcourse.verify.structure import Document, Surface
from firstcourse.verify.verdict import Objection

_ROUNDED = 4
"""A corner on a wall askew to the axes lies this near to it [ticks]."""
_FEET = {"floor": "floor", "tub": "fixture/tub", "tray": "fixture/tray", "kerb": "fixture/kerb"}
_STOPS: Edge = ("free", "stops_here", True)


def check_met(plan: Document) -> Iterator[Objection]:
    """Object to a side that names something else than lies there, or is bounded otherwise."""
    rooms = {room.text("name"): room for room in plan.job.nodes("rooms", ()) if "corners" in room.value}
    by_id = {surface.id: surface for surface in plan.surfaces}
    for surface in plan.surfaces:
        asked = _asked(surface, rooms.get(surface.room), by_id, plan)
        found = [
            (kind, met, index not in surface.hidden)
            for index, (kind, met) in enumerate(zip(surface.sides, surface.met, strict=True))
        ]
        if asked is None:
            continue
        if len(asked) != len(found):
            yield Objection("VER-114", surface.id, f"has {len(found)} sides, not {len(asked)}")
            continue
        for index, (here, may) in enumerate(zip(found, asked, strict=True)):
            if here not in may:
                wanted = " or ".join(dict.fromkeys(map(_said, may))) or "nothing known"
                yield Objection("VER-114", f"{surface.id}/side/{index}", f"meets {_said(here)}, not {wanted}")


def _said(edge: Edge) -> str:
    kind, met, shown = edge
    return f"{met or 'nothing'} ({kind}{'' if shown else ', covered'})"


def _asked(surface: Surface, room: Node | None, by_id: Mapping[str, Surface], plan: Document) -> Edges | None:
    """What each side may meet; None where the plan was not given the surface's room."""
    whole = by_id.get(surface.part_of)
    if whole is not None:
        return kerb_face(surface, whole, by_id) if whole.kind == "floor" else lining(surface, whole)
    if room is None:
        return None
    if surface.id in (f"{surface.room}/floor", f"{surface.room}/ceiling"):
        return _flat(surface, plan)
    if surface.id == f"{surface.room}/floor/shower":
        return _shower(surface, plan)
    if surface.id.startswith(f"{surface.room}/bench/"):
        return bench_face(surface, room, plan)
    for wall in room.nodes("walls", ()):
        if surface.id == f"{surface.room}/wall/{wall.text('wall')}":
            return _wall(surface, wall)
    return None


def _flat(surface: Surface, plan: Document) -> Edges:
    """Of a floor, whose sides run against the order of the walls; of a ceiling, seen from below, with it."""
    drawn = drawn_corners(plan, surface.room)
    width = max((u for u, _ in drawn.values()), default=0)
    ceiling = surface.kind == "ceiling"
    names = {(width - u, v) if ceiling else (u, v): name for name, (u, v) in drawn.items()}
    found: Edges = []
    for a, b in sides(surface.outline):
        left, right = (a, b) if ceiling else (b, a)
        known = left in names and right in names
        found.append((wall_edge(f"{surface.room}/wall/{names[left]}-{names[right]}"),) if known else ())
    return found


def _wall(surface: Surface, given: Node) -> Edges:
    boards, foot = given.part("boards"), given.text("foot", "floor")
    limits = {name: boards.distance(name) for name in ("left", "right", "bottom", "top") if name in boards.value}
    left, _, right, upper = bounds(surface.extent or surface.outline)
    corners = [f"{surface.room}/corner/{corner}" for corner in given.text("wall").split("-")]
    ends = {
        "left": (0, left, corners[0]),
        "right": (0, right, corners[1]),
        "top": (1, upper, f"{surface.room}/ceiling"),
    }
    found: Edges = []
    for a, b in sides(surface.outline):
        across, up = b[0] - a[0], b[1] - a[1]
        side = ("bottom" if across > 0 else "top") if abs(across) >= abs(up) else "right" if up > 0 else "left"
        if side == "bottom":
            stops: Edge = ("free" if limits.get("bottom") else "perimeter", "stops_here", True)
            found.append((("foot", f"{surface.room}/{_FEET[foot]}", True) if foot in _FEET else stops,))
            continue
        axis, full, met = ends[side]
        cut = limits.get(side, full) != full and a[axis] == b[axis] == limits[side]
        found.append((_STOPS if cut else wall_edge(met),))
    return found


def _shower(surface: Surface, plan: Document) -> Edges:
    """Of a shower floor: along a wall, or at its kerb, or where it runs on into the room."""
    drawn, given = drawn_corners(plan, surface.room), shower_of(surface, plan)
    names = list(drawn)
    walls = {
        f"{surface.room}/wall/{one}-{other}": LineString([drawn[one], drawn[other]])
        for one, other in zip(names, names[1:] + names[:1], strict=True)
    }
    kerb = given is not None and "kerb" in given.value
    open_to: Edge = wall_edge(f"{surface.id}/kerb") if kerb else ("free", f"{surface.room}/floor", True)
    found: Edges = []
    for a, b in sides(surface.outline):
        along = [
            ref for ref, line in walls.items() if max(line.distance(Point(end)) for end in (a, b)) <= _ROUNDED
        ]
        found.append(tuple(map(wall_edge, along)) or (open_to,))
    return found

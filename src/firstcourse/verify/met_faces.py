"""What edges of small faces meet: of niches, windows and the boards on their returns, of benches, of kerbs."""

from collections.abc import Iterator, Mapping

from firstcourse.geometry import sides
from firstcourse.verify.fields import Node
from firstcourse.verify.small_faces import front_of
from firstcourse.verify.structure import Document, Surface

type Edge = tuple[str, str, bool]
"""Kind of a side, what it meets, and whether its edge shows there."""
type Edges = list[tuple[Edge, ...]]
"""By side, each edge that it may be: mostly one."""


def wall_edge(ref: str) -> Edge:
    """An edge at what stands there."""
    return "perimeter", ref, True


def _shown(ref: str) -> Edge:
    return "free", ref, True


def _covered(ref: str) -> Edge:
    """An edge that belongs to the face it turns to."""
    return "free", ref, False


def _one_each(*edges: Edge) -> Edges:
    return [(edge,) for edge in edges]


def lining(surface: Surface, wall: Surface) -> Edges | None:
    """Of a face of a niche or window; None where its wall has no such opening."""
    whole, _, name = surface.id.rpartition("/")
    front = front_of(surface)
    opening = next((one for one in wall.openings if f"{wall.id}/opening/{one.id}" == front), None)
    if opening is None or opening.kind not in ("niche", "window"):
        return None
    if name.endswith(" board"):
        return _return_board(name, whole, front, wall)
    sill, head, left, right = (wall_edge(f"{whole}/{face}") for face in ("sill", "head", "left", "right"))
    back = wall_edge(f"{whole}/back" if opening.kind == "niche" else f"{front}/frame")
    before = _covered(front)
    faces = {
        "back": (sill, right, head, left),
        "sill": (before, right, back, left),
        "head": (back, right, before, left),
        "left": (sill, back, head, before),
        "right": (sill, before, head, back),
    }
    return _one_each(*faces[name]) if name in faces else None


def _return_board(name: str, whole: str, front: str, wall: Surface) -> Edges | None:
    flush, frame, framing = _shown(wall.id), wall_edge(f"{front}/frame"), wall_edge(f"{front}/framing")
    left, right = (wall_edge(f"{whole}/{hand} board") for hand in ("left", "right"))
    strips = {
        "sill board": (flush, right, frame, left),
        "head board": (frame, right, flush, left),
        "left board": (framing, frame, framing, flush),
        "right board": (framing, flush, framing, frame),
    }
    return _one_each(*strips[name]) if name in strips else None


def kerb_face(surface: Surface, floor: Surface, by_id: Mapping[str, Surface]) -> Edges | None:
    """Of a face of a kerb round a shower floor; None where it is none of its runs."""
    run, _, name = surface.id.rpartition("/")
    kerb = f"{floor.id}/kerb"
    places = [index for index, met in enumerate(floor.met) if met == kerb]
    runs = {place: kerb if len(places) == 1 else f"{kerb} {number}" for number, place in enumerate(places, 1)}
    place = next((place for place, one in runs.items() if one == run), None)
    if place is None:
        return None
    ends = []
    for other in ((place - 1) % len(floor.met), (place + 1) % len(floor.met)):
        ends.append(_covered(runs[other]) if other in runs else wall_edge(floor.met[other]))
    room, top = f"{floor.room}/floor", _covered(f"{run}/top")
    if name == "top":
        outer, inner = f"{run}/outer", f"{run}/inner"
        return _one_each(
            _shown(outer if outer in by_id else room),
            ends[1],
            _shown(inner if inner in by_id else floor.id),
            ends[0],
        )
    if name == "inner":
        return _one_each(*[wall_edge(floor.id)] * (len(surface.met) - 3), ends[0], top, ends[1])
    return _one_each(wall_edge(room), ends[1], top, ends[0]) if name == "outer" else None


def bench_face(surface: Surface, room: Node, plan: Document) -> Edges | None:
    """Of a face of a bench as the job gives it; None where it gives none."""
    base, _, name = surface.id.rpartition("/")
    own = base.removeprefix(f"{surface.room}/bench/")
    bench = next((one for one in room.nodes("benches", ()) if one.text("id") == own), None)
    if bench is None:
        return None
    top, front = _covered(f"{base}/top"), _covered(f"{base}/front")
    back = wall_edge(f"{surface.room}/wall/{bench.text('wall')}")
    left, right = _ends(base, bench, room, plan)
    feet = _feet(surface, bench, plan)
    faces: dict[str, Edges] = {
        "top": [(_shown(f"{base}/front"),), right, (back,), left],
        "front": [*feet, right, (top,), left],
        "left end": [*feet, (front,), (top,), (back,)],
        "right end": [*feet, (back,), (top,), (front,)],
    }
    return faces.get(name)


def _ends(base: str, bench: Node, room: Node, plan: Document) -> Iterator[tuple[Edge, ...]]:
    """What a bench has at its left and right end: the wall there, or a face of its own."""
    corners = [str(name) for name, _ in room.rows("corners")]
    pairs = [f"{one}-{other}" for one, other in zip(corners, corners[1:] + corners[:1], strict=True)]
    here, touch = pairs.index(bench.text("wall")), plan.rules.ticks("shower.touch")
    past = room.part("sides").distance(pairs[here]) - bench.distance("left") - bench.length("width")
    walls = (pairs[here - 1], pairs[(here + 1) % len(pairs)])
    for name, wall, off in zip(("left", "right"), walls, (bench.distance("left"), past), strict=True):
        stands, free = wall_edge(f"{room.text('name')}/wall/{wall}"), _shown(f"{base}/{name} end")
        # Walls are adjusted and stand askew: near the least distance that is taken as none it may be either.
        sure = (stands,) if off <= touch / 2 else (free,) if off > 2 * touch else (stands, free)
        built = any(one.id == f"{base}/{name} end" for one in plan.surfaces)
        yield tuple(one for one in sure if (one == free) == built)


def _feet(surface: Surface, bench: Node, plan: Document) -> Edges:
    """What the foot of an upright face may stand on; where each floor lies is proved with its height.

    Floors that the plan has are stood on, unless the job lets tile begin at a height that no floor there reaches.
    """
    room, by_id = surface.room, {one.id: one for one in plan.surfaces}
    shower = by_id.get(f"{room}/floor/shower")
    fall = None if shower is None or shower.fall is None or shower.fall.drain_height is None else shower.fall
    met = [f"{room}/floor"] if fall is not None or f"{room}/floor" in by_id else []
    if fall is not None:
        met += [f"{room}/floor/shower", *([f"{room}/floor/shower/kerb"] if fall.kerb else [])]
    feet = [line for line, kind in zip(sides(surface.outline), surface.sides, strict=True) if kind == "foot"]
    highest = max((v for line in feet for _, v in line), default=0)
    if not met or ("bottom" in bench.value and highest <= bench.distance("bottom")):
        met = ["own_height"]
    return [tuple(("foot", one, True) for one in met)] * (len(surface.met) - 3)

"""Surfaces of their own within and upon others: the inside of a niche or window, a bench, a kerb.

Each is a plane seen from where it is tiled: a side or front as a wall, a sill, top or head with its front edge
below. Those that stand upright keep the heights of their wall, so that courses can run on. Tile is set on the back
of a niche first, then on sill and head, then on the sides between; on a top before the walls above it.
"""

import math
from collections.abc import Sequence

from firstcourse.details.footings import KERB_TOP, ROOM_FLOOR, SHOWER_FLOOR, Foot
from firstcourse.errors import InputValueError
from firstcourse.geometry import Point, Ring, bounds, rectangle, sides
from firstcourse.plan import OWN_HEIGHT, Opening, Side, SideKind, Surface, SurfaceKind
from firstcourse.tiles import Lining, Rim

_ROUNDED = 2
"""Levels and corners that differ by no more than this were rounded apart [ticks]."""


def _edge(meets: str, *, shown: bool = True) -> Rim:
    """An edge of tile; where it does not show it belongs to the face that it meets."""
    return Rim(meets=meets, kind=SideKind.FREE, shown=shown)


def _lining(
    whole: tuple[str, str, str], name: str, kind: SurfaceKind, outline: Ring, rims: Sequence[Rim]
) -> Lining:
    """A lining of a whole that is given by id, room and the surface it is part of."""
    base, room, part_of = whole
    surface = Surface(
        id=f"{base}/{name}",
        room=room,
        kind=kind,
        outline=outline,
        sides=tuple(Side(kind=rim.kind, meets=rim.meets, shown=rim.shown) for rim in rims),
        boarded=False,
        part_of=part_of,
    )
    return Lining(surface=surface, rims=tuple(rims), name=name)


def niche_linings(
    wall: Surface, niche: Opening, *, depth: int, drop: int, on_wall: int, on_back: int, on_returns: int
) -> tuple[Lining, ...]:
    """Back, sill, head and both sides of a niche; its front edges are trimmed with the wall.

    Args:
        wall: The wall.
        niche: The niche, a rectangle.
        depth: From the face of the wall's boards to the face of those at its back [ticks].
        drop: How much lower the sill's front lies than its back [ticks].
        on_wall: Thickness of tile and bed on the wall [ticks].
        on_back: On the back [ticks].
        on_returns: On sill, head and sides [ticks].

    Raises:
        InputValueError: The niche is no upright rectangle, or tile leaves nothing of it.
    """
    assert niche.outline is not None
    left, low, right, top = bounds(niche.outline)
    if set(niche.outline) != {(left, low), (right, low), (right, top), (left, top)}:
        raise InputValueError(f"niche '{niche.id}' is no upright rectangle, so its inside is not planned")
    deep = depth + on_wall - on_back
    if deep <= 0 or top - low <= drop + 2 * on_returns or right - left <= 2 * on_returns:
        raise InputValueError(f"tile leaves nothing open of niche '{niche.id}'; check its size and depth")
    whole = _whole(wall, niche)
    back = Rim(meets=f"{whole[0]}/back", elsewhere=True)
    meets = [Rim(meets=f"{whole[0]}/{name}") for name in ("sill", "right", "head", "left")]
    face = ((left, low + drop), (right, low + drop), (right, top), (left, top))
    return (
        _lining(whole, "back", SurfaceKind.WALL, face, meets),
        *_returns(whole, niche, deep=deep, drop=drop, on_returns=on_returns, back=back),
    )


def window_linings(
    wall: Surface, window: Opening, *, depth: int, drop: int, on_wall: int, on_returns: int
) -> tuple[Lining, ...]:
    """Sill, head and both sides of a window that is set back; its front edges are trimmed with the wall.

    All end at the window's frame with a joint left free to move.

    Args:
        wall: The wall.
        window: The window, a rectangle.
        depth: From the face of the wall's boards to the frame [ticks].
        drop: How much lower the sill's front lies than at the frame [ticks].
        on_wall: Thickness of tile and bed on the wall [ticks].
        on_returns: On sill, head and sides [ticks].

    Raises:
        InputValueError: Tile leaves nothing of the window.
    """
    assert window.outline is not None
    left, low, right, top = bounds(window.outline)
    if top - low <= drop + 2 * on_returns or right - left <= 2 * on_returns:
        raise InputValueError(f"tile leaves nothing open of window '{window.id}'; check its size and depth")
    frame = Rim(meets=f"{wall.id}/opening/{window.id}/frame")
    whole, deep = _whole(wall, window), depth + on_wall
    return _returns(whole, window, deep=deep, drop=drop, on_returns=on_returns, back=frame)


def _whole(wall: Surface, opening: Opening) -> tuple[str, str, str]:
    return f"{wall.id}/{opening.id}", wall.room, wall.id


def _returns(
    whole: tuple[str, str, str],
    opening: Opening,
    *,
    deep: int,
    drop: int,
    on_returns: int,
    back: Rim,
) -> tuple[Lining, ...]:
    """Sill, head, left and right side of what is set back in a wall, from its front to its back."""
    assert opening.outline is not None
    base, _, wall = whole
    left, low, right, top = bounds(opening.outline)
    sloped = round(math.hypot(deep, drop))
    front = _edge(f"{wall}/opening/{opening.id}", shown=False)
    one_side, other_side = (Rim(meets=f"{base}/{name}", elsewhere=True) for name in ("left", "right"))
    sill, head = (Rim(meets=f"{base}/{name}", before=on_returns) for name in ("sill", "head"))
    one = ((0, low), (deep, low + drop), (deep, top), (0, top))
    other = ((0, low + drop), (deep, low), (deep, top), (0, top))
    return (
        _lining(
            whole,
            "sill",
            SurfaceKind.COUNTER,
            rectangle(left, 0, right, sloped),
            (front, other_side, back, one_side),
        ),
        _lining(
            whole,
            "head",
            SurfaceKind.COUNTER,
            rectangle(left, 0, right, deep),
            (back, other_side, front, one_side),
        ),
        _lining(whole, "left", SurfaceKind.WALL, one, (sill, back, head, front)),
        _lining(whole, "right", SurfaceKind.WALL, other, (sill, front, head, back)),
    )


def bench_linings(
    whole: tuple[str, str],
    *,
    width: int,
    depth: int,
    feet: tuple[Foot, Foot, Foot],
    height: int,
    drop: int,
    ends: tuple[Rim | None, Rim | None],
    back: Rim,
    on_front: int,
) -> tuple[Lining, ...]:
    """Top and front of a bench, and its ends where they stand free.

    Args:
        whole: Id and room.
        width: Along its wall [ticks].
        depth: From the wall to its front [ticks].
        feet: Where the tile of its front, left end and right end begins; of ends only where they stand free.
        height: Height of its top at the front, before it is tiled [ticks].
        drop: How much lower its front lies than its back [ticks].
        ends: The walls at its left and right end; None where an end stands free.
        back: The wall behind it.
        on_front: Thickness of tile and bed on its front, which the top's tile covers [ticks].
    """
    named, (base, room) = (*whole, ""), whole
    edge, under = _edge(f"{base}/front"), _edge(f"{base}/top", shown=False)
    turn = _edge(f"{base}/front", shown=False)
    left, right = (
        end or _edge(f"{base}/{name}") for end, name in zip(ends, ("left end", "right end"), strict=True)
    )
    past = sum(0 if end else on_front for end in ends)
    deep = round(math.hypot(depth, drop)) + on_front
    found = [
        _lining(
            named,
            "top",
            SurfaceKind.COUNTER,
            ((0, 0), (width + past, 0), (width + past, deep), (0, deep)),
            (edge, right, back, left),
        ),
        _lining(
            named,
            "front",
            SurfaceKind.WALL,
            (*feet[0].points, (width, height), (0, height)),
            (*_standing(feet[0], room), right, under, left),
        ),
    ]
    for name, end, foot, rims in (
        ("left end", ends[0], feet[1], (turn, under, back)),
        ("right end", ends[1], feet[2], (back, under, turn)),
    ):
        if end is None:
            ring = (*foot.points, (depth, height), (0, height))
            found.append(_lining(named, name, SurfaceKind.WALL, ring, (*_standing(foot, room), *rims)))
    return tuple(found)


def _standing(foot: Foot, room: str) -> tuple[Rim, ...]:
    met = (one if one == OWN_HEIGHT else f"{room}/{one}" for one in foot.on)
    return tuple(Rim(meets=one, kind=SideKind.FOOT) for one in met)


def kerb_linings(
    floor: Surface, *, width: int, drop: int, height: int, outer: int, on_walls: int
) -> tuple[Lining, ...]:
    """Top, inner and outer face of every straight run of a kerb; runs meet on the bisector of their corner.

    The inner face stands on the shower floor, as high as that lies along the run; both end under the top's tile.

    Args:
        floor: The shower floor, whose sides say where it meets its kerb, with its levels where it has falls.
        width: Width of the kerb [ticks].
        drop: How much lower the top's inner edge lies than its outer one [ticks].
        height: Height over the top of the drain at which the inner face ends [ticks].
        outer: Height of the outer face over the room's floor [ticks].
        on_walls: Thickness of the boards at its ends [ticks].
    """
    lines = list(sides(floor.outline))
    found: list[Lining] = []
    runs = [index for index, side in enumerate(floor.sides) if side.is_kerb]
    for number, index in enumerate(runs, start=1):
        a, b = lines[index]
        length = math.dist(a, b)
        starts, ends = (
            _past(lines, floor, index, other, width) for other in (index - 1, (index + 1) % len(lines))
        )
        base = _run(floor, number, len(runs))
        whole = (base, floor.room, floor.id)
        rims = [
            Rim(meets=floor.sides[other].meets, before=on_walls)
            if not floor.sides[other].is_kerb
            else _edge(_run(floor, runs.index(other) + 1, len(runs)), shown=False)
            for other in ((index - 1) % len(lines), (index + 1) % len(lines))
        ]
        run, deep = round(length), round(math.hypot(width, drop))
        under = _edge(f"{base}/top", shown=False)
        feet = _feet(floor, a, b)
        inner = tuple((u, height - low) for u, low in feet)
        stands = min(high for _, high in inner) > 0
        in_shower, in_room = f"{floor.room}/{SHOWER_FLOOR}", f"{floor.room}/{ROOM_FLOOR}"
        # Where the floor reaches up to the tile of the top there is no face between them.
        outer_edge = _edge(f"{base}/outer" if outer > 0 else in_room)
        inner_edge = _edge(f"{base}/inner" if stands else in_shower)
        top = ((0, 0), (round(starts + length + ends), 0), (round(starts) + run, deep), (round(starts), deep))
        found.append(
            _lining(
                whole,
                "top",
                SurfaceKind.COUNTER,
                top,
                (outer_edge, rims[1], inner_edge, rims[0]),
            )
        )
        if stands:
            top_at = max(high for _, high in inner)
            ring = (*((u, top_at - high) for u, high in inner), (run, top_at), (0, top_at))
            meets = (*[Rim(meets=in_shower, elsewhere=True)] * (len(feet) - 1), rims[0], under, rims[1])
            found.append(_lining(whole, "inner", SurfaceKind.WALL, ring, meets))
        if outer > 0:
            ring = rectangle(0, 0, round(starts + length + ends), outer)
            meets = (Rim(meets=in_room, elsewhere=True), rims[1], under, rims[0])
            found.append(_lining(whole, "outer", SurfaceKind.WALL, ring, meets))
    return tuple(found)


def _run(floor: Surface, number: int, of: int) -> str:
    """Id of one straight run of the kerb round a shower floor, counted from 1."""
    return f"{floor.room}/{KERB_TOP}" if of == 1 else f"{floor.room}/{KERB_TOP} {number}"


def _feet(floor: Surface, a: Point, b: Point) -> Ring:
    """How far the shower floor lies over the drain along one side, from its end to its start [ticks]."""
    length = math.dist(a, b)
    along = ((b[0] - a[0]) / length, (b[1] - a[1]) / length)
    found: dict[int, int] = {}
    for level in () if floor.fall is None else floor.fall.levels:
        du, dv = level.at[0] - b[0], level.at[1] - b[1]
        back = round(-(du * along[0] + dv * along[1]))
        if abs(_cross(along, (du, dv))) <= _ROUNDED and -_ROUNDED <= back <= length + _ROUNDED:
            found[min(max(back, 0), round(length))] = level.height
    points = sorted(found.items())
    level_all_along = not points or max(found.values()) - min(found.values()) <= _ROUNDED
    if level_all_along or points[0][0] != 0 or points[-1][0] != round(length):
        low = min(found.values(), default=0)
        return ((0, low), (round(length), low))
    return tuple(points)


def _past(lines: Sequence[tuple[Point, Point]], floor: Surface, index: int, other: int, width: int) -> float:
    """How far the outer edge of a kerb's run reaches past the end of its inner edge [ticks]."""
    (a, b), (c, d) = lines[index], lines[other]
    length, far = math.dist(a, b), math.dist(c, d)
    u = ((b[0] - a[0]) / length, (b[1] - a[1]) / length)
    w = ((d[0] - c[0]) / far, (d[1] - c[1]) / far)
    cross, dot = u[0] * w[1] - u[1] * w[0], u[0] * w[0] + u[1] * w[1]
    turn = abs(math.atan2(cross, dot))
    if abs(cross) < 1e-9:
        return 0.0
    before = (other - index) % len(lines) != 1
    if floor.sides[other].is_kerb:
        return math.copysign(width * math.tan(turn / 2), cross if before is False else _cross(w, u))
    # At a wall the run ends on the wall's own line, which runs on past the corner of the shower floor.
    return -width * dot / cross * (-1 if before else 1)


def _cross(one: tuple[float, float], other: tuple[float, float]) -> float:
    return one[0] * other[1] - one[1] * other[0]

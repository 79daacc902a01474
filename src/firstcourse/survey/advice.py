"""Which distance to tape next: what fixes a room that can still lean, settles between two shapes, or checks it.

Only corners that see each other can be taped between. Before a room is fixed its shape is guessed: sides that turn
by right angles and close, or else a shape that bulges outwards everywhere. All lengths here are millimetres.
"""

import math
from collections.abc import Iterator, Sequence
from itertools import combinations

import numpy as np

from firstcourse.errors import InputValueError
from firstcourse.survey.shapes import Reading
from firstcourse.survey.sight import XY, Floats, in_sight, is_room, sees

_MOST_TURNED = 14
"""Corners up to which every way of turning right and left is tried."""
_CLOSES_SHARE = 0.05
"""A guess that misses its first corner by more than this share of its sides is none."""
_FITS = 30
_WORTH_MM = 20.0
"""Two shapes that differ by less than this in a distance are not told apart by taping it."""


class UnfixedError(InputValueError):
    """The readings do not fix the room; `missing` names distances that would, in the order to tape them."""

    def __init__(self, corner: str, missing: tuple[str, ...], *, leans: bool) -> None:
        self.corner, self.missing = corner, missing
        what = f"the diagonal {missing[0]}" if len(missing) == 1 else f"the diagonals {_and(missing)}"
        why = (
            f"the readings do not fix corner {corner}: sides alone leave a room free to lean"
            if leans
            else f"corner {corner} cannot be worked out from two others, only from all readings together"
        )
        super().__init__(
            f"{why}. Tape {what}"
            "; where something stands between two of these corners, tape between two others instead"
        )


def missing_readings(corners: Sequence[str], readings: Sequence[Reading]) -> tuple[str, ...]:
    """Distances that would fix a room corner by corner, as few as can be, in the order to tape them.

    Args:
        corners: Names, clockwise.
        readings: What is taped, every side among it.
    """
    points = guessed_room(corners, readings)
    taken = {frozenset((reading.one, reading.other)) for reading in readings}
    wanted: list[str] = []
    placed = max((_reach([r.one, r.other], corners, taken) for r in readings), key=len)
    while len(placed) < len(corners):
        pair = max(
            ((a, b) for a in corners if a not in placed for b in placed if frozenset((a, b)) not in taken),
            key=lambda pair: _worth(pair, placed, corners, points, taken),
        )
        wanted.append("-".join(sorted(pair, key=corners.index)))
        taken.add(frozenset(pair))
        placed = _reach(placed, corners, taken)
    return tuple(wanted)


def _reach(placed: Sequence[str], corners: Sequence[str], taken: set[frozenset[str]]) -> list[str]:
    """The corners that triangles reach from those placed."""
    reached = list(placed)
    while True:
        found = next(
            (
                name
                for name in corners
                if name not in reached and sum(frozenset((name, other)) in taken for other in reached) >= 2
            ),
            None,
        )
        if found is None:
            return reached
        reached.append(found)


def _worth(
    pair: tuple[str, str],
    placed: Sequence[str],
    corners: Sequence[str],
    points: Sequence[XY],
    taken: set[frozenset[str]],
) -> tuple[bool, bool, float, int]:
    """How well a distance places a corner: seen, at once, at an open angle, in the order of the corners."""
    new, old = corners.index(pair[0]), corners.index(pair[1])
    ties = [corners.index(other) for other in placed if frozenset((pair[0], other)) in taken]
    angles = [_open_angle(points[new], points[old], points[tie]) for tie in ties]
    return sees(points, new, old), bool(ties), round(max(angles, default=0.0), 2), -new


def _open_angle(at: XY, one: XY, other: XY) -> float:
    """The sine of the angle between two lines from a point."""
    a, b = (one[0] - at[0], one[1] - at[1]), (other[0] - at[0], other[1] - at[1])
    return abs(a[0] * b[1] - a[1] * b[0]) / max(math.hypot(*a) * math.hypot(*b), 1e-9)


def unread_in_sight(corners: Sequence[str], points: Sequence[XY], readings: Sequence[Reading]) -> tuple[str, ...]:
    """Pairs of corners that see each other and between which nothing is taped, in the order of the corners."""
    taken = {frozenset((reading.one, reading.other)) for reading in readings}
    open_ = [
        (i, j) for i, j in combinations(range(len(corners)), 2) if frozenset((corners[i], corners[j])) not in taken
    ]
    seen = in_sight(points, open_)
    return tuple(f"{corners[i]}-{corners[j]}" for (i, j), is_seen in zip(open_, seen, strict=True) if is_seen)


def settling(corners: Sequence[str], one: Sequence[XY], other: Sequence[XY], readings: Sequence[Reading]) -> str:
    """The distance in sight in both shapes that differs most between them; in sight in one where none is in both.

    Args:
        corners: Names, clockwise.
        one: The corners of the first shape.
        other: The corners of the second.
        readings: What is taped.

    Returns:
        The pair, or nothing where no distance tells the two apart.
    """
    index = {name: number for number, name in enumerate(corners)}

    def difference(pair: str) -> float:
        i, j = (index[name] for name in pair.split("-"))
        return round(abs(math.dist(one[i], one[j]) - math.dist(other[i], other[j])), 3)

    seen, also = (unread_in_sight(corners, shape, readings) for shape in (one, other))
    for pairs in ([pair for pair in seen if pair in also], [*seen, *also]):
        best = max(pairs, key=lambda pair: (difference(pair), pair), default="")
        if best and difference(best) > _WORTH_MM:
            return best
    return ""


def mirrored_over(corners: Sequence[str], one: Sequence[XY], other: Sequence[XY]) -> tuple[str, tuple[str, ...]]:
    """The line over which one shape is another's mirror image, and the corners that lie beyond it.

    Returns:
        Two corners such as `A-C`, empty where neither shape is the other folded over; and the corners that differ.
    """
    moved = _aligned(one, other)
    for i, j in combinations(range(len(corners)), 2):
        aligned = _on_line(one, other, i, j)
        differs = [k for k in range(len(corners)) if math.dist(one[k], aligned[k]) > _WORTH_MM]
        if not differs or len(differs) > len(corners) // 2 or {i, j} & {*differs}:
            continue
        if all(math.dist(_mirror(one[k], one[i], one[j]), aligned[k]) < _WORTH_MM for k in differs):
            return f"{corners[i]}-{corners[j]}", tuple(corners[k] for k in differs)
    return "", tuple(corners[k] for k in range(len(corners)) if math.dist(one[k], moved[k]) > _WORTH_MM)


def _on_line(one: Sequence[XY], other: Sequence[XY], i: int, j: int) -> list[XY]:
    """The second shape moved and turned so that two of its corners lie along those of the first."""
    turn = math.atan2(one[j][1] - one[i][1], one[j][0] - one[i][0]) - math.atan2(
        other[j][1] - other[i][1], other[j][0] - other[i][0]
    )
    c, s = math.cos(turn), math.sin(turn)
    return [
        (
            one[i][0] + c * (u - other[i][0]) - s * (v - other[i][1]),
            one[i][1] + s * (u - other[i][0]) + c * (v - other[i][1]),
        )
        for u, v in other
    ]


def _aligned(one: Sequence[XY], other: Sequence[XY]) -> list[XY]:
    """The second shape laid on the first along the side that leaves the fewest corners apart."""
    count = len(one)
    laid = [_on_line(one, other, i, (i + 1) % count) for i in range(count)]
    return min(laid, key=lambda at: sum(math.dist(a, b) > _WORTH_MM for a, b in zip(one, at, strict=True)))


def _mirror(point: XY, a: XY, b: XY) -> XY:
    du, dv = b[0] - a[0], b[1] - a[1]
    square = du * du + dv * dv or 1.0
    t = ((point[0] - a[0]) * du + (point[1] - a[1]) * dv) / square
    return 2 * (a[0] + t * du) - point[0], 2 * (a[1] + t * dv) - point[1]


def guessed_room(corners: Sequence[str], readings: Sequence[Reading]) -> list[XY]:
    """A shape that the readings may mean, for judging which corners may see each other; never for planning."""
    taped = {frozenset((reading.one, reading.other)): reading.length_mm for reading in readings}
    pairs = [(corners[i], corners[(i + 1) % len(corners)]) for i in range(len(corners))]
    sides = [taped[frozenset(pair)] for pair in pairs]
    bulging = _bulging(sides)
    best, best_misfit = bulging, math.inf
    for shape in [*_square_rooms(sides), bulging]:
        at, misfit = fitted(shape, corners, readings)
        if misfit < best_misfit - 1.0 and is_room(at):
            best, best_misfit = at, misfit
    return best


def _square_rooms(sides: Sequence[float]) -> Iterator[list[XY]]:
    """Rooms whose corners turn by right angles, four more to the right than to the left, those that close best."""
    count = len(sides)
    if count % 2 or count > _MOST_TURNED:
        return
    found: list[tuple[float, list[XY]]] = []
    for lefts in combinations(range(count), (count - 4) // 2):
        u = v = 0.0
        heading = 0
        points: list[XY] = []
        for index, side in enumerate(sides):
            points.append((u, v))
            u, v = u + side * (1, 0, -1, 0)[heading], v + side * (0, -1, 0, 1)[heading]
            heading = (heading + (-1 if (index + 1) % count in lefts else 1)) % 4
        if math.hypot(u, v) < _CLOSES_SHARE * sum(sides):
            found.append((math.hypot(u, v), points))
    found.sort(key=lambda guess: guess[0])
    yield from (points for _, points in found[:12] if is_room(points))


def _bulging(sides: Sequence[float]) -> list[XY]:
    """Corners on a circle whose chords are the sides, clockwise; nearly so where one side is too long for that."""
    low, high = max(sides) / 2, 4 * sum(sides)
    for _ in range(60):
        middle = (low + high) / 2
        turned = sum(2 * math.asin(min(1.0, side / (2 * middle))) for side in sides)
        low, high = (middle, high) if turned > 2 * math.pi else (low, middle)
    angle, points = 0.0, []
    for side in sides:
        points.append((high * math.cos(angle), high * math.sin(angle)))
        angle -= 2 * math.asin(min(1.0, side / (2 * high)))
    return points


def fitted(shape: Sequence[XY], corners: Sequence[str], readings: Sequence[Reading]) -> tuple[list[XY], float]:
    """A shape moved as little as the readings ask [mm], and by how much it still misses them in all [mm]."""
    at = np.array(shape, dtype=float)
    index = {name: number for number, name in enumerate(corners)}
    one, other = (
        np.array([index[name] for name in names])
        for names in zip(*((r.one, r.other) for r in readings), strict=True)
    )
    taped = np.array([reading.length_mm for reading in readings])
    rows = np.arange(len(readings))
    misses: Floats = taped
    for _ in range(_FITS):
        delta = at[other] - at[one]
        lengths = np.maximum(np.hypot(*delta.T), 1e-9)
        misses = taped - lengths
        design = np.zeros((len(readings), len(corners), 2))
        design[rows, one] -= delta / lengths[:, None]
        design[rows, other] += delta / lengths[:, None]
        step = np.linalg.lstsq(design.reshape(len(readings), -1), misses, rcond=None)[0]
        at += np.clip(step, -500.0, 500.0).reshape(at.shape)
        if np.max(np.abs(step)) < 0.1:
            break
    return [(float(u), float(v)) for u, v in at], float(np.sum(np.abs(misses)))


def _and(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"

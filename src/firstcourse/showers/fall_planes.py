"""Floors that fall to a drain, as exact flat planes: where they fold, how steep they are, what they hold.

Lengths are millimetres, heights are over the top of the drain, falls are rise over run.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations

import shapely
from shapely import Polygon

from firstcourse.errors import InputValueError
from firstcourse.tiles import XY

_TOUCH = 1e-4
"""Points nearer than this are one point: clipping moves them by far less, and no tape shows it [mm]."""
_LEVEL = 1e-5
"""Slopes, and turns of slope, below this are none: a hundredth of a millimetre in a metre."""
_LEAST_AREA = 1.0
"""Planes smaller than this come from rounding [mm²]."""


_Corners = tuple[tuple[XY, float], ...]


class HiddenFromDrainError(InputValueError):
    """Straight planes to the drain cannot cover the floor: part of it lies round a corner from the drain."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FallingPlane:
    """One flat part of the floor.

    Attributes:
        ring: Its outline, counter-clockwise.
        gradient: Rise along u and v.
        anchor: A point of the plane whose height is `base`.
        base: Height there.
    """

    ring: tuple[XY, ...]
    gradient: XY
    anchor: XY
    base: float

    @property
    def fall(self) -> float:
        """Steepest fall: rise over run, square to the plane's level lines."""
        return math.hypot(*self.gradient)

    def height(self, at: XY) -> float:
        """Height of the plane over a point."""
        return (
            self.base + self.gradient[0] * (at[0] - self.anchor[0]) + self.gradient[1] * (at[1] - self.anchor[1])
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Fold:
    """A line where two planes meet.

    Attributes:
        low: Its lower end.
        high: Its upper end.
        valley: Water gathers in it; else it is a ridge that water leaves.
        fall: Fall along it.
        turn: Change of slope across it.
    """

    low: XY
    high: XY
    valley: bool
    fall: float
    turn: float


@dataclass(frozen=True, kw_only=True)
class FallingFloor:
    """A floor of planes.

    Attributes:
        outline: The floor, counter-clockwise.
        drain: One point, or the two ends of a linear drain.
        planes: They meet without a gap and cover the floor.
    """

    outline: tuple[XY, ...]
    drain: tuple[XY, ...]
    planes: tuple[FallingPlane, ...]

    @cached_property
    def folds(self) -> tuple[Fold, ...]:
        """Every valley and ridge, in the order of the planes; the line of the drain itself is none."""
        return tuple(
            fold for fold in _folds(self.planes) if not (self.on_drain(fold.low) and self.on_drain(fold.high))
        )

    @property
    def valleys(self) -> tuple[Fold, ...]:
        """The folds in which water gathers."""
        return tuple(fold for fold in self.folds if fold.valley)

    @property
    def least_plane(self) -> float:
        """Least fall of any plane, square to its level lines."""
        return min(plane.fall for plane in self.planes)

    @property
    def greatest_plane(self) -> float:
        """Greatest fall anywhere: no line on a plane falls more than the plane."""
        return max(plane.fall for plane in self.planes)

    @property
    def least_flow(self) -> float:
        """Least fall that water meets on its way: down a plane, then along a valley."""
        return min([plane.fall for plane in self.planes] + [fold.fall for fold in self.valleys])

    @cached_property
    def perimeter(self) -> tuple[tuple[XY, float], ...]:
        """Every corner of the outline and every point where a fold meets it, in order, with its height."""
        found: list[tuple[XY, float]] = []
        ends = [end for fold in self.folds for end in (fold.low, fold.high)] + list(self.drain)
        for a, b in _sides(self.outline):
            found.append((a, self.height(a)))
            between = sorted((_along(a, b, end), end) for end in ends if _on(a, b, end))
            for _, end in between:
                if min(math.dist(end, other) for other in (found[-1][0], b)) > _TOUCH:
                    found.append((end, self.height(end)))
        return tuple(found)

    @property
    def rise(self) -> float:
        """Height of the highest point, which lies on the perimeter."""
        return max(height for _, height in self.perimeter)

    def on_drain(self, at: XY) -> bool:
        """Whether a point is the drain, or lies on the line of a linear one."""
        return _on_drain(at, self.drain)

    def height(self, at: XY) -> float:
        """Height of the floor over a point on it."""
        point = shapely.Point(at)
        return min(self.planes, key=lambda plane: Polygon(plane.ring).distance(point)).height(at)

    def volume(self, over: float) -> float:
        """Volume between the floor and a level `over` below the drain's top [mm³]."""
        total = 0.0
        for plane in self.planes:
            shape = Polygon(plane.ring)
            middle = shape.centroid
            total += shape.area * (plane.height((middle.x, middle.y)) + over)
        return total

    def standing(self) -> tuple[XY, ...]:
        """Points beside the drain from which no way leads down: water stands there.

        A floor of planes has its low points at corners of planes; where a plane leads down from such a corner, one
        of its edges does.
        """
        corners: list[XY] = []
        for plane in self.planes:
            corners += [at for at in plane.ring if all(math.dist(at, other) > _TOUCH for other in corners)]
        return tuple(at for at in corners if not self.on_drain(at) and not any(self._ways_down(at)))

    def _ways_down(self, at: XY) -> Iterator[bool]:
        for plane in self.planes:
            for a, b in _sides(plane.ring):
                if math.dist(a, at) <= _TOUCH or math.dist(b, at) <= _TOUCH or _on(a, b, at):
                    here = plane.height(at)
                    yield min(plane.height(a), plane.height(b)) < here - _LEVEL * math.dist(a, b)


def level_floor(outline: Sequence[XY], drain: Sequence[XY], rise: float) -> FallingFloor:
    """A floor with a level perimeter: each side's plane falls to the drain.

    Args:
        outline: Counter-clockwise.
        drain: One point, or the two ends of a linear drain; corners that it touches lie at its height.
        rise: Height of the perimeter.

    Raises:
        HiddenFromDrainError: Part of the floor lies round a corner from the drain.
    """
    drain = tuple(drain)
    ends = [min(drain, key=lambda end: math.dist(corner, end)) for corner in outline]
    heights = [0.0 if _on_drain(corner, drain) else rise for corner in outline]
    count = len(outline)
    planes = []
    for index in range(count):
        after = (index + 1) % count
        a, b = outline[index], outline[after]
        ha, hb = heights[index], heights[after]
        one, other = ends[index], ends[after]
        if one == other:
            parts: list[_Corners] = [((a, ha), (b, hb), (one, 0.0))]
        elif abs(_cross(a, b, one, other)) <= _TOUCH * math.dist(a, b) and ha == hb:
            parts = [((a, ha), (b, hb), (other, 0.0), (one, 0.0))]
        else:
            parts = [((a, ha), (b, hb), (one, 0.0)), ((b, hb), (other, 0.0), (one, 0.0))]
        planes += [plane for part in parts if (plane := _through(part)) is not None]
    if abs(sum(Polygon(plane.ring).area for plane in planes) - Polygon(outline).area) > _LEAST_AREA:
        raise HiddenFromDrainError("part of the floor lies round a corner from the drain")
    return FallingFloor(outline=tuple(outline), drain=drain, planes=tuple(planes))


def square_floor(outline: Sequence[XY], drain: Sequence[XY], fall: float) -> FallingFloor:
    """A floor whose planes all fall alike, square to the walls; the perimeter rises along long walls.

    To a point drain one plane falls from each direction that a wall faces; to a linear drain one from either side
    and one from beyond each end.

    Raises:
        HiddenFromDrainError: Water would stand at a wall.
    """
    drain = tuple(drain)
    if len(drain) == 1:
        falling = [(normal, drain[0]) for normal in _normals(outline)]
    else:
        along = _unit(drain[0], drain[1])
        across = (-along[1], along[0])
        falling = [
            (across, drain[0]),
            ((-across[0], -across[1]), drain[0]),
            (along, drain[1]),
            ((-along[0], -along[1]), drain[0]),
        ]
    floor = FallingFloor(
        outline=tuple(outline), drain=drain, planes=tuple(_highest(Polygon(outline), falling, fall))
    )
    if floor.standing():
        raise HiddenFromDrainError("water would stand at a wall that hides part of the floor from the drain")
    return floor


def single_floor(outline: Sequence[XY], drain: Sequence[XY], fall: float) -> FallingFloor:
    """A floor that falls straight to the line of a linear drain: one plane, or one from either side of it.

    Where the drain is shorter than the floor is wide, water reaches the wall beside it; `standing` tells where.

    Raises:
        InputValueError: The drain is a point.
    """
    drain = tuple(drain)
    if len(drain) != 2:
        raise InputValueError("a single plane falls to a linear drain; give its two ends")
    along = _unit(drain[0], drain[1])
    across = (-along[1], along[0])
    falling = [(across, drain[0]), ((-across[0], -across[1]), drain[0])]
    return FallingFloor(
        outline=tuple(outline), drain=drain, planes=tuple(_highest(Polygon(outline), falling, fall))
    )


def run_for_rise(rise: float, fall: float) -> float:
    """Length of floor that rises so much at a fall, in the unit of the rise.

    Example:
        >>> round(run_for_rise(2.0, 0.25 / 12) / 12, 6)
        8.0
    """
    return rise / fall


def _highest(shape: Polygon, falling: Sequence[tuple[XY, XY]], fall: float) -> Iterator[FallingPlane]:
    """The part of each plane that stands above all others: rises by `fall` along a unit vector from a point."""
    left, lower, right, upper = shape.bounds
    reach = 4 * (right - left + upper - lower)
    for index, (normal, start) in enumerate(falling):
        part: shapely.Geometry = shape
        for number, (other, begin) in enumerate(falling):
            if number == index:
                continue
            tilt = (normal[0] - other[0], normal[1] - other[1])
            offset = normal[0] * start[0] + normal[1] * start[1] - other[0] * begin[0] - other[1] * begin[1]
            part = part.intersection(_beyond(tilt, offset, reach))
        gradient = (fall * normal[0], fall * normal[1])
        for piece in shapely.get_parts(part):
            if isinstance(piece, Polygon) and piece.area > _LEAST_AREA:
                ring = tuple((u, v) for u, v in shapely.get_coordinates(piece.normalize().exterior)[:-1].tolist())
                yield FallingPlane(ring=_turned(ring), gradient=gradient, anchor=start, base=0.0)


def _beyond(tilt: XY, offset: float, reach: float) -> Polygon:
    """The half-plane where `tilt . p >= offset`, as far as the floor goes."""
    size = math.hypot(*tilt)
    n = (tilt[0] / size, tilt[1] / size)
    at = (n[0] * offset / size, n[1] * offset / size)
    side = (-n[1] * 8 * reach, n[0] * 8 * reach)
    far = (n[0] * 8 * reach, n[1] * 8 * reach)
    return Polygon(
        [
            (at[0] + side[0], at[1] + side[1]),
            (at[0] - side[0], at[1] - side[1]),
            (at[0] - side[0] + far[0], at[1] - side[1] + far[1]),
            (at[0] + side[0] + far[0], at[1] + side[1] + far[1]),
        ]
    )


def _turned(ring: tuple[XY, ...]) -> tuple[XY, ...]:
    return ring if shapely.LinearRing(ring).is_ccw else tuple(reversed(ring))


def _normals(outline: Sequence[XY]) -> list[XY]:
    """Directions that the sides face, outwards, each once."""
    found: list[XY] = []
    for a, b in _sides(outline):
        along = _unit(a, b)
        normal = (along[1], -along[0])
        if all(math.dist(normal, other) > 1e-3 for other in found):
            found.append(normal)
    return found


def _through(points: Sequence[tuple[XY, float]]) -> FallingPlane | None:
    """The plane through its corners; None where they bound no area.

    Raises:
        HiddenFromDrainError: They run the wrong way round.
    """
    ring = tuple(at for at, _ in points)
    (a, ha), (b, hb), (c, hc) = points[0], points[1], points[-1]
    twice = _cross(a, b, a, c)
    if abs(twice) <= 2 * _LEAST_AREA:
        # A side along which the drain lies has no plane of its own; of four corners three may still bound one.
        return _through(points[1:]) if len(points) > 3 else None
    if twice < 0:
        raise HiddenFromDrainError("part of the floor lies round a corner from the drain")
    up, on = hb - ha, hc - ha
    gradient = (
        (up * (c[1] - a[1]) - on * (b[1] - a[1])) / twice,
        (on * (b[0] - a[0]) - up * (c[0] - a[0])) / twice,
    )
    return FallingPlane(ring=ring, gradient=gradient, anchor=a, base=ha)


def _folds(planes: Sequence[FallingPlane]) -> Iterator[Fold]:
    for one, other in combinations(planes, 2):
        tilt = (one.gradient[0] - other.gradient[0], one.gradient[1] - other.gradient[1])
        turn = math.hypot(*tilt)
        if turn <= _LEVEL:
            continue
        for a, b in _sides(one.ring):
            for c, d in _sides(other.ring):
                line = _shared(a, b, c, d)
                if line is None:
                    continue
                low, high = sorted(line, key=lambda at: (one.height(at), at))
                middle = Polygon(one.ring).representative_point()
                valley = one.height((middle.x, middle.y)) > other.height((middle.x, middle.y))
                length = math.dist(low, high)
                fall = (one.height(high) - one.height(low)) / length
                yield Fold(low=low, high=high, valley=valley, fall=fall, turn=turn)


def _shared(a: XY, b: XY, c: XY, d: XY) -> tuple[XY, XY] | None:
    """The stretch that two edges share."""
    length = math.dist(a, b)
    if max(abs(_cross(a, b, a, c)), abs(_cross(a, b, a, d))) > _TOUCH * length:
        return None
    start, end = sorted((_along(a, b, c), _along(a, b, d)))
    start, end = max(start, 0.0), min(end, length)
    if end - start <= _TOUCH:
        return None
    u, v = _unit(a, b)
    return (a[0] + u * start, a[1] + v * start), (a[0] + u * end, a[1] + v * end)


def _sides(ring: Sequence[XY]) -> Iterator[tuple[XY, XY]]:
    return zip(ring, (*ring[1:], ring[0]), strict=True)


def _cross(a: XY, b: XY, c: XY, d: XY) -> float:
    return (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0])


def _unit(a: XY, b: XY) -> XY:
    length = math.dist(a, b)
    return (b[0] - a[0]) / length, (b[1] - a[1]) / length


def _along(a: XY, b: XY, at: XY) -> float:
    u, v = _unit(a, b)
    return (at[0] - a[0]) * u + (at[1] - a[1]) * v


def _on(a: XY, b: XY, at: XY) -> bool:
    """Whether a point lies on a line between its ends."""
    length = math.dist(a, b)
    return abs(_cross(a, b, a, at)) <= _TOUCH * length and _TOUCH < _along(a, b, at) < length - _TOUCH


def _on_drain(at: XY, drain: Sequence[XY]) -> bool:
    if min(math.dist(at, end) for end in drain) <= _TOUCH:
        return True
    return len(drain) == 2 and _on(drain[0], drain[1], at)

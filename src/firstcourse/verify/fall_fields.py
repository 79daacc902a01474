"""How a floor falls, as the verifier reads it from raw JSON."""

from dataclasses import dataclass

from firstcourse.geometry import Point, Ring
from firstcourse.verify.fields import FieldError, Node, number, point, segment, ticks

_LAYOUTS = ("level", "square", "single")
_MEMBRANES = ("liner", "sheet", "liquid")
_POINTS = ("corner", "side", "drain", "valley_end", "valley")


@dataclass(frozen=True, slots=True)
class Plane:
    """A flat part of the floor: heights at the points of its ring [ticks], and its slope along u and v."""

    ring: Ring
    heights: tuple[int, ...]
    gradient: tuple[float, float]

    def height(self, at: tuple[float, float]) -> float:
        """Height over a point, by the slope that is said [ticks]."""
        (u, v), (gu, gv) = self.ring[0], self.gradient
        return self.heights[0] + gu * (at[0] - u) + gv * (at[1] - v)


@dataclass(frozen=True, slots=True)
class Level:
    """A point whose height over the drain is set [ticks], and what tells the setter where it is."""

    at: Point
    height: int
    kind: str
    sides: tuple[int, ...]
    between: tuple[int, ...]
    along: int | None


@dataclass(frozen=True, slots=True)
class FloodTest:
    """What the floor is filled to."""

    hours: float
    level: int
    depth: int | None
    litres: float
    kg: float
    dam: bool


@dataclass(frozen=True, slots=True)
class Fall:
    """Planes, folds, levels and bed of a floor that falls to a drain."""

    drain: tuple[Point, ...]
    layout: str
    planes: tuple[Plane, ...]
    valleys: tuple[tuple[Point, Point], ...]
    ridges: tuple[tuple[Point, Point], ...]
    levels: tuple[Level, ...]
    valley_levels: tuple[Level, ...]
    rise: int
    least_fall: float
    least_plane_fall: float
    greatest_fall: float
    bed: int
    bed_litres: float
    pre_slope: int
    pre_slope_litres: float
    kerb: int | None
    kerb_width: int | None
    drain_height: int | None
    room_floor: int | None
    threshold: int | None
    recess: int | None
    largest_tile: int | None
    tile_step: int | None
    membrane: str
    membrane_below: int
    upturn_top: int | None
    test: FloodTest


def read_fall(node: Node) -> Fall:
    """Read how a floor falls.

    Raises:
        FieldError: A field is missing or not what the format asks.
    """
    drain = tuple(point(*row) for row in node.rows("drain"))
    if not 1 <= len(drain) <= 2 or len(set(drain)) != len(drain):
        raise FieldError(f"{node.where}.drain", "is not one point or two different ends")
    test = Node(node.raw("flood_test"), f"{node.where}.flood_test")
    return Fall(
        drain=drain,
        layout=_one_of(node, "layout", _LAYOUTS),
        planes=tuple(_plane(item) for item in node.nodes("planes")),
        valleys=tuple(segment(*row) for row in node.rows("valleys")),
        ridges=tuple(segment(*row) for row in node.rows("ridges")),
        levels=_levels(node, "levels"),
        valley_levels=_levels(node, "valley_levels"),
        rise=node.length("rise"),
        least_fall=node.number("least_fall"),
        least_plane_fall=node.number("least_plane_fall"),
        greatest_fall=node.number("greatest_fall"),
        bed=node.length("bed"),
        bed_litres=node.number("bed_litres"),
        pre_slope=_ticks(node, "pre_slope"),
        pre_slope_litres=node.number("pre_slope_litres"),
        kerb=_maybe(node, "kerb"),
        kerb_width=_maybe(node, "kerb_width"),
        drain_height=_height(node, "drain_height"),
        room_floor=_height(node, "room_floor"),
        threshold=_height(node, "threshold"),
        recess=_maybe(node, "recess"),
        largest_tile=_maybe(node, "largest_tile"),
        tile_step=_maybe(node, "tile_step"),
        membrane=_one_of(node, "membrane", _MEMBRANES),
        membrane_below=ticks(node.raw("membrane_below", 0), f"{node.where}.membrane_below"),
        upturn_top=_height(node, "upturn_top"),
        test=FloodTest(
            test.number("hours"),
            _ticks(test, "level"),
            _maybe(test, "depth"),
            test.number("litres"),
            test.number("kg"),
            test.flag("dam"),
        ),
    )


def _plane(node: Node) -> Plane:
    outline = node.ring("ring")
    heights = tuple(ticks(*row) for row in node.rows("heights"))
    if len(heights) != len(outline):
        raise FieldError(f"{node.where}.heights", "are not one per point of the ring")
    gradient = [number(*row) for row in node.rows("gradient")]
    if len(gradient) != 2:
        raise FieldError(f"{node.where}.gradient", "is not a pair of numbers")
    return Plane(outline, heights, (gradient[0], gradient[1]))


def _levels(node: Node, key: str) -> tuple[Level, ...]:
    return tuple(
        Level(
            at=item.point("at"),
            height=_ticks(item, "height"),
            kind=_one_of(item, "kind", _POINTS),
            sides=_counts(item, "sides"),
            between=_counts(item, "between"),
            along=_maybe(item, "along"),
        )
        for item in node.nodes(key)
    )


def _counts(node: Node, key: str) -> tuple[int, ...]:
    """Whole numbers; none where the field is missing or null."""
    rows = () if node.raw(key, None) is None else node.rows(key)
    for value, where in rows:
        if isinstance(value, bool) or not isinstance(value, int) or value < 0:
            raise FieldError(where, "is not a whole number that can be counted")
    return tuple(value for value, _ in rows)


def _ticks(node: Node, key: str) -> int:
    return ticks(node.raw(key), f"{node.where}.{key}")


def _maybe(node: Node, key: str) -> int | None:
    return None if node.raw(key, None) is None else node.length(key)


def _height(node: Node, key: str) -> int | None:
    """A height that may lie below what it is measured from."""
    return None if node.raw(key, None) is None else _ticks(node, key)


def _one_of(node: Node, key: str, allowed: tuple[str, ...]) -> str:
    found = node.text(key)
    if found not in allowed:
        raise FieldError(f"{node.where}.{key}", f"'{found}' is not one of {', '.join(allowed)}")
    return found

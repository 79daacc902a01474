"""Where the first joint of a face lies, both ways: how far from an edge that can be touched.

Small faces, such as those of niches, benches, kerbs and windows, are begun by these instead of lines near their
middle, and so is ground on which no such lines can be found.
"""

from shapely import LineString

from firstcourse.geometry import bounds, sides
from firstcourse.plan import Mark, Surface, Tile
from firstcourse.tiles.face_edges import at_next_run
from firstcourse.tiles.mark_ground import SAME_MM, MarkGround, Measured
from firstcourse.tiles.mark_site import Site
from firstcourse.tiles.measured_lines import line_marks, near_both_ends
from firstcourse.tiles.model import XY
from firstcourse.units import TICKS_PER_MM

_SAME = SAME_MM * TICKS_PER_MM
_FAR = (("right", "high"), ("left", "low"))
"""Far edges of a tile across and up, measured from the left or lower edge, and from the right or upper one."""
# A line on the edge of the ground itself is drawn this far inside it [mm].
_INSIDE_MM = 0.004


def start_marks(surface: Surface, site: Site) -> tuple[Mark, ...]:
    """The far edge of the first tile each way, as lines from edge to edge of the face.

    Args:
        surface: With its tiles.
        site: What can be measured from.

    Returns:
        Those of an upright line and those of a level one; fewer where no edge that way can be touched.
    """
    ground = MarkGround(surface, site)
    if not ground.parts or ground.shape.is_empty or not surface.tiles:
        return ()
    return tuple(mark for axis in (0, 1) for mark in _first_joint(ground, surface, axis))


def has_both_ways(marks: tuple[Mark, ...]) -> bool:
    """Whether marks give two lines at right angles."""
    lines = {mark.line for mark in marks if mark.kind != "pole"}
    ways = [(b[0] - a[0], b[1] - a[1]) for a, b in lines]
    return any(
        abs(u * x + v * y) <= 1e-3 * (abs(u) + abs(v)) * (abs(x) + abs(y))
        for u, v in ways
        for x, y in ways
    )  # fmt: skip


def _first_joint(ground: MarkGround, surface: Surface, axis: int) -> tuple[Mark, ...]:
    """From the side that finds it best: at both its ends, along the joint, and no corner of a kerb."""
    both = [_from_one_side(ground, surface, axis, back=back) for back in (False, True)]

    def rank(marks: tuple[Mark, ...]) -> tuple[bool, int, bool]:
        lengths = [mark.distance for mark in marks]
        met = [surface.sides[int(mark.from_.rpartition("/")[2])] for mark in marks if "/side/" in mark.from_]
        return (
            any(at_next_run(surface, side) for side in met),
            -len(marks),
            max(lengths) - min(lengths) > TICKS_PER_MM,
        )

    return min((marks for marks in both if marks), key=rank, default=())


def _from_one_side(ground: MarkGround, surface: Surface, axis: int, *, back: bool) -> tuple[Mark, ...]:
    tile = _first_tile(ground, surface, axis, back=back)
    left, lower, right, upper = ground.shape.bounds
    at = bounds(tile.outline)[axis + (0 if back else 2)] / TICKS_PER_MM
    at = min(max(at, (left, lower)[axis] + _INSIDE_MM), (right, upper)[axis] - _INSIDE_MM)
    beside = _edge_middle(tile, axis, back=back)
    if axis == 0:
        line = ground.across(LineString([(at, lower - 1), (at, upper + 1)]), (at, beside))
    else:
        line = ground.across(LineString([(left - 1, at), (right + 1, at)]), (beside, at))
    if line is None:
        return ()

    def measure(spot: XY) -> Measured | None:
        return ground.rise(spot, down=back) if axis else ground.beside(spot, back=back)

    return tuple(
        line_marks("start", line.ticks, near_both_ends(line, (measure,)), f"{tile.id}/{_FAR[back][axis]}")
    )


def _first_tile(ground: MarkGround, surface: Surface, axis: int, *, back: bool) -> Tile:
    """The tile in the corner that is measured from, if it can be one whose far edge is not cut."""
    left, lower, right, upper = (side * TICKS_PER_MM for side in ground.shape.bounds)
    edge = (right, upper) if back else (left, lower)
    far, near = axis + (0 if back else 2), axis + (2 if back else 0)
    across = 1 - axis

    def rank(tile: Tile) -> tuple[bool, float, float, str]:
        box, uncut = bounds(tile.outline), bounds(tile.laid or tile.outline)
        start = (left, lower)[across]
        return abs(box[far] - uncut[far]) > _SAME, abs(box[near] - edge[axis]), abs(box[across] - start), tile.id

    return min(surface.tiles, key=rank)


def _edge_middle(tile: Tile, axis: int, *, back: bool) -> float:
    """Where along its far edge a tile has the middle of the longest stretch of it, or its corner there [mm].

    The middle of the tile may lie beside the ground, where a slanting edge cuts it.
    """
    far, across = bounds(tile.outline)[axis + (0 if back else 2)], 1 - axis
    at_far = [point for point in tile.outline if abs(point[axis] - far) <= _SAME]
    stretches = [
        (a, b) for a, b in sides(tile.outline) if abs(a[axis] - far) <= _SAME and abs(b[axis] - far) <= _SAME
    ]
    a, b = max(stretches, key=lambda ends: abs(ends[1][across] - ends[0][across]), default=(at_far[0], at_far[0]))
    return (a[across] + b[across]) / 2 / TICKS_PER_MM

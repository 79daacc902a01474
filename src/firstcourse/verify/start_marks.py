"""Start marks: the first joint of a face each way, from an edge that stands when the face is tiled."""

from collections.abc import Iterator

from firstcourse.geometry import bounds
from firstcourse.verify.mark_faces import NEAR, Faces
from firstcourse.verify.mark_fields import Line, Mark
from firstcourse.verify.mark_rows import ONE_PENCIL
from firstcourse.verify.structure import Surface, Tile

_FAR = {"right": (0, 2), "left": (0, 0), "high": (1, 3), "low": (1, 1)}
"""Of a tile's edge, which way it is measured to, and which side of its box it is."""


def check_starts(surface: Surface, faces: Faces, lines: dict[Line, list[Mark]]) -> Iterator[str]:
    """Object to start marks that do not lie on the first tile, to two of one way, and to one way alone.

    Where one tile spans a face there is no joint that way, so no line is asked for.

    Args:
        surface: With its tiles.
        faces: What can be touched.
        lines: Its start marks by line.
    """
    tiles = {tile.id: tile for tile in surface.tiles}
    ways = []
    for line, marks in lines.items():
        name, _, part = marks[0].to.rpartition("/")
        tile, found = tiles.get(name), _FAR.get(part)
        if tile is None or found is None or any(mark.to != marks[0].to for mark in marks):
            yield f"has a start mark that stands for nothing: {marks[0].to}"
            continue
        axis, side = found
        ways.append(axis)
        at = bounds(tile.outline)[side]
        if any(abs(end[axis] - at) > NEAR for end in line):
            yield f"has a start mark that does not lie at {marks[0].to}"
        if any(_beyond(mark, axis, side) for mark in marks):
            yield f"has a start mark measured from beyond its tile, to {marks[0].to}"
        if not _is_first(tile, surface, axis, side):
            yield f"has a start mark at a tile that is not the first: {marks[0].to}"
    for axis, way in enumerate(("an upright", "a level")):
        if ways.count(axis) > 1:
            yield f"has {way} start mark too many"
        elif (
            not ways.count(axis)
            and (lines or surface.built_later)
            and can_start(surface, faces, axis)
            and _has_joint(surface, axis)
        ):
            yield f"is tiled, and {way} line for its first joint is left out"


def can_start(surface: Surface, faces: Faces, axis: int) -> bool:
    """Whether an edge can be touched from which the first joint across an axis is measured."""
    if faces.room.is_empty:
        return False
    spot = faces.room.representative_point()
    return faces.reached((spot.x, spot.y), (1.0, 0.0) if axis == 0 else (0.0, 1.0))


def _has_joint(surface: Surface, axis: int) -> bool:
    """Whether one tile lies wholly before another along an axis, so that a joint lies between them."""
    boxes = [bounds(tile.outline) for tile in surface.tiles]
    return max(box[axis] for box in boxes) >= min(box[axis + 2] for box in boxes)


def _beyond(mark: Mark, axis: int, side: int) -> bool:
    """Whether the tape comes from the other side than its tile lies on."""
    assert mark.measure is not None
    start, end = mark.measure
    return (start[axis] > end[axis] + NEAR) if side > 1 else (start[axis] < end[axis] - NEAR)


def _is_first(tile: Tile, surface: Surface, axis: int, side: int) -> bool:
    """Whether no tile of the same row lies nearer to the edge it is measured from."""
    box, across = bounds(tile.outline), 1 - axis
    for other in surface.tiles:
        there = bounds(other.outline)
        beside = min(box[across + 2], there[across + 2]) - max(box[across], there[across]) > ONE_PENCIL
        before = there[axis + 2] <= box[axis] if side > 1 else there[axis] >= box[axis + 2]
        whole = other.laid == () or bounds(other.laid)[side] == there[side]
        if other.id != tile.id and beside and before and whole:
            return False
    return True

"""Areas of rings, made once: the same boards, tiles and planes are looked at by many checks."""

from functools import lru_cache

from shapely import Polygon

from firstcourse.geometry import Ring


@lru_cache(maxsize=4096)
def area_of(outline: Ring, holes: tuple[Ring, ...] = ()) -> Polygon:
    """The area within an outline, without its holes; corners as they are given.

    Raises:
        ValueError: A ring has under three corners.
    """
    return Polygon(outline, holes)

"""The survey of a room with many corners was worked on for tens of seconds, crossing by crossing and pair by pair.

What it asks of walls and lines is asked of all of them at once, and gives what one by one gives.
"""

import random
from itertools import combinations

import numpy as np
import pytest
from shapely import LineString, Polygon

from firstcourse.survey.shapes import _Chain
from firstcourse.survey.sight import in_sight, sees

LONG_M, DEEP_MM, JOGS = 90, 6000, 8


def hall() -> list[tuple[float, float]]:
    """A hall 90 m long with bays along one side, clockwise."""
    step = LONG_M * 1000 / JOGS
    upper = [(step * k + side * step, DEEP_MM + 700 * (k % 2)) for k in range(JOGS) for side in (0, 1)]
    return [(0, 0), *((float(u), float(v)) for u, v in upper), (LONG_M * 1000, 0)]


@pytest.mark.parametrize("seed", range(2))
def test_lines_of_sight_are_those_that_stay_inside(seed: int) -> None:
    rng = random.Random(seed)
    points = [(u + rng.uniform(-90, 90), v + rng.uniform(-90, 90)) for u, v in hall()]
    inside = Polygon(points).buffer(0.5)
    pairs = list(combinations(range(len(points)), 2))
    seen = in_sight(points, pairs)
    assert [sees(points, i, j) for i, j in pairs] == seen.tolist()
    covered = [inside.covers(LineString([points[i], points[j]])) for i, j in pairs]
    assert all(is_seen for is_seen, is_covered in zip(seen, covered, strict=True) if is_covered)
    # Lines that leave the room by a few millimetres may touch: few do.
    assert sum(covered) <= np.count_nonzero(seen) < 1.1 * sum(covered) + 10


def test_walls_crossed_are_counted_together_as_one_by_one() -> None:
    rng = np.random.default_rng(1)
    corners = [f"P{number}" for number in range(12)]
    chain = _Chain(corners, {name: {} for name in corners}, 1.0)
    chain.at = rng.uniform(0, 1000, (5, 12, 2))
    pairs = [((i, j), (k, m)) for i, j, k, m in rng.permuted(np.tile(np.arange(12), (300, 1)), axis=1)[:, :4]]
    for shape, counted in zip(chain.at, chain._num_crossed(pairs, 0.0), strict=True):
        lines = [(LineString(shape[[*line]]), LineString(shape[[*wall]])) for line, wall in pairs]
        assert counted == sum(line.crosses(wall) for line, wall in lines)

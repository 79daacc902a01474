"""Boards between many pairs of places, found at once, are those found one by one."""

import random

import numpy as np
import pytest
import shapely

from firstcourse.boards.strips import Strip
from firstcourse.geometry.polygon import LEAST_AREA2


@pytest.mark.parametrize("seed", range(20))
def test_all_at_once_as_one_by_one(seed: int) -> None:
    rng = random.Random(seed)
    shape = shapely.box(0, 0, 4_000_000, 900_000)
    for _ in range(rng.randint(1, 7)):
        u, v = rng.randrange(0, 4_000_000), rng.choice([-200_000, rng.randrange(0, 800_000)])
        corners = [
            (u, v),
            (u + rng.randrange(1_000, 700_000), v + rng.choice([0, 0, 30_000])),
            (u + rng.randrange(1_000, 700_000), v + rng.randrange(1_000, 900_000)),
            (u, v + rng.randrange(1_000, 900_000)),
        ]
        shape = shape.difference(shapely.Polygon(corners).convex_hull)
    strip = Strip(part for part in shapely.get_parts(shape) if part.geom_type == "Polygon")
    places = sorted({0, 4_000_000, *(rng.randrange(0, 4_000_000) for _ in range(25)), *map(round, strip._places)})
    pairs = [(a, b) for a in places for b in places if a < b]
    starts, ends = np.array(pairs, np.int64).T
    numbers, boxes = strip.many_boxes(starts, ends, LEAST_AREA2)
    for number, (start, end) in enumerate(pairs):
        found = [tuple(box) for box in boxes[numbers == number].tolist()]
        assert found == list(strip.boxes(start, end, LEAST_AREA2))

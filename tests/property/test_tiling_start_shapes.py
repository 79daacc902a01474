"""Starts in rectangles, in rooms like an L and round an opening: none better, and mirrored rooms alike."""

import datetime
import random
from collections import Counter
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, affinity, box

from firstcourse.plan import TileStock
from firstcourse.rules import load_rules
from firstcourse.tiles.edges import start_costs
from firstcourse.tiles.lay import lay
from firstcourse.tiles.model import XY, Edge, RepeatCell, TileArea
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.tiles.start import find_starts
from firstcourse.tiles.start_search import Search
from firstcourse.tiles.start_shifts import SAME_COST
from firstcourse.units import mm

RULES = load_rules(datetime.date(2026, 1, 1))
Corners = list[tuple[int, int]]


def cell(pattern: Any, width: float, height: float, **more: Any) -> RepeatCell:
    shape: Any = "hexagon" if pattern == "hexagon" else "rectangle"
    tile = TileStock(
        id="t", size=(mm(width), mm(height)), thickness=mm(8), kind="ceramic", joint=mm(3), shape=shape
    )
    return repeat_cell(pattern, [tile], 3.0, **more)


PATTERNS = {
    "stacked": lambda: cell("stacked", 130, 90),
    "running": lambda: cell("running", 150, 70),
    "diagonal": lambda: cell("diagonal", 120, 120),
}


def field(corners: Corners, weights: list[float], unsure: float = 0.0, hole: Any = None) -> TileArea:
    ends = zip(corners, [*corners[1:], corners[0]], weights, strict=True)
    edges = tuple(Edge(a=(float(a), float(b)), b=(float(c), float(d)), weight=w) for (a, b), (c, d), w in ends)
    area = Polygon(corners) if hole is None else Polygon(corners).difference(hole)
    return TileArea(area=area, edges=edges, uncertainty=unsure)


def room(rng: random.Random, shape: str) -> tuple[Corners, Any]:
    """Corners of a room, and what is open in it."""
    across, up = rng.randint(500, 900), rng.randint(400, 700)
    corners = [(0, 0), (across, 0), (across, up), (0, up)]
    if shape == "L":
        x, y = rng.randint(200, across - 150), rng.randint(150, up - 120)
        corners = [(0, 0), (across, 0), (across, y), (x, y), (x, up), (0, up)]
    if shape != "opening":
        return corners, None
    left, low = rng.randint(120, across - 300), rng.randint(100, up - 220)
    return corners, box(left, low, left + rng.randint(70, 160), low + rng.randint(60, 110))


@pytest.mark.parametrize("pattern", PATTERNS)
@pytest.mark.parametrize("shape", ["rectangle", "L", "opening"])
@settings(max_examples=3, deadline=None)
@given(seed=st.integers(0, 10**6))
def test_no_shift_of_a_fine_grid_is_better(pattern: str, shape: str, seed: int) -> None:
    rng = random.Random(seed)
    corners, hole = room(rng, shape)
    weights = [rng.choice([1.0, 2.0, 3.0]) for _ in corners]
    area, of = field(corners, weights, rng.choice([0.0, 2.0]), hole), PATTERNS[pattern]()
    found = find_starts(of, area, RULES)
    # The cheapest is the pick but for a sliver.
    pick = min(found, key=lambda start: start.penalty)
    assert pick is found[0] or pick.sliver
    search = Search(cell=of, field=area, costs=start_costs(RULES))
    assert pick.exact and search.steps is not None
    across, up = (np.arange(0.0, step, 1.0) for step in search.steps)
    x, y = np.meshgrid(across, up)
    grid = np.column_stack((x.ravel(), y.ravel()))
    assert pick.penalty <= search.penalties(grid).min() + 3 * SAME_COST


def pieces(of: RepeatCell, area: TileArea, shift: XY, *, mirrored: bool = False) -> Counter[tuple[int, int, int]]:
    """Middles and areas of all pieces of some size, to the millimetre."""
    width = area.area.bounds[2]
    found: Counter[tuple[int, int, int]] = Counter()
    for tile in lay(of, shift, area.area):
        if tile.shape.area >= 50:
            at = tile.shape.centroid
            found[round(width - at.x if mirrored else at.x), round(at.y), round(tile.shape.area, -2)] += 1
    return found


def as_laid(one: Counter[tuple[int, int, int]], other: Counter[tuple[int, int, int]]) -> bool:
    """Whether two sets of pieces are the same but for rounding."""
    rest, more = list((one - other).elements()), list((other - one).elements())
    return len(rest) == len(more) and all(
        any(abs(a[0] - b[0]) <= 1 and abs(a[1] - b[1]) <= 1 and abs(a[2] - b[2]) <= 100 for b in more)
        for a in rest
    )


@pytest.mark.parametrize("pattern", ["stacked", "running", "hexagon"])
@pytest.mark.parametrize("shape", ["rectangle", "L"])
@settings(max_examples=4, deadline=None)
@given(seed=st.integers(0, 10**6))
def test_a_mirrored_room_gives_every_start_mirrored(pattern: str, shape: str, seed: int) -> None:
    rng = random.Random(seed)
    corners, _ = room(rng, shape)
    weights = [rng.choice([1.0, 2.0, 3.0]) for _ in corners]
    # Sides that weigh alike make of a rectangle its own mirror image: either hand will do there.
    weights[1], weights[-1] = rng.choice([(1.0, 2.0), (3.0, 1.0), (2.0, 3.0)])
    across, num = corners[1][0], len(corners)
    back = [(across - x, y) for x, y in reversed(corners)]
    here = field(corners, weights)
    there = field(back, [weights[(num - 2 - index) % num] for index in range(num)])
    assert affinity.scale(here.area, -1, 1, origin=(across / 2, 0)).equals(there.area)
    of = cell("hexagon", 90, 90 * 1.1547) if pattern == "hexagon" else PATTERNS[pattern]()
    ours, theirs = find_starts(of, here, RULES), find_starts(of, there, RULES)
    assert len(ours) == len(theirs)
    for one, other in zip(ours, theirs, strict=True):
        assert other.penalty == pytest.approx(one.penalty, abs=3 * SAME_COST)
        assert as_laid(pieces(of, here, one.shift), pieces(of, there, other.shift, mirrored=True))

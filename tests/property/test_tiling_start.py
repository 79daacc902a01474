"""The start is the best there is beside a fine grid judged anew, and a mirrored room gives a mirrored plan."""

import datetime
import random
from collections import Counter
from fractions import Fraction
from itertools import product
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from shapely import Polygon, box, transform

from firstcourse.job.tile import TileRepeat
from firstcourse.plan import TileStock
from firstcourse.rules import Override, load_rules
from firstcourse.tiles.lay import lay
from firstcourse.tiles.model import XY, Edge, RepeatCell, TileArea
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.tiles.start import find_starts, judge_start
from firstcourse.units import mm, to_mm

# The cost below knows no joint that takes up what is left over: it is set to nothing here.
RULES = load_rules(
    datetime.date(2026, 1, 1),
    "us",
    (Override(rule="tiling.start.joint_takes", value="0 in", reason="costed without it"),),
)
HALF, LEAST_SHARE = RULES.number("tiling.start.half"), RULES.number("tiling.start.least_share")
LEAST = to_mm(RULES.ticks("tiling.start.least_cut"))
SLIVER, SURE, POOREST, POOR, UNEVEN, CUTS, TIGHT = (
    RULES.number(f"tiling.start.cost.{name}")
    for name in ("sliver", "sure", "poorest", "poor", "uneven", "cuts", "tight")
)
SLIGHT = 0.005


def axis_cost(
    room: float,
    tile: float,
    joint: float,
    courses: int,
    unsure: float,
    share: float,
    weights: tuple[float, float],
    small: float,
    at: float,
) -> float:
    """Cost along one axis of a rectangular room, written out anew: two sides, courses shifted by equal parts."""
    module, half = tile + joint, HALF * tile
    least = min(LEAST, LEAST_SHARE * tile)
    total, poors, slacks, kepts = 0.0, [], [], []
    for side, weight in zip((0, 1), weights, strict=True):
        poor, sliver, short, slack, kept, num_cut = 0.0, False, 0.0, tile, 1.0, 0
        for course in range(courses):
            first = at + course * module / courses
            for number in range(-3, int(room / module) + 4):
                left = first + number * module
                inside = left + tile if side == 0 else room - left
                slack = min(slack, inside - least if inside > SLIGHT else -inside)
                if SLIGHT < inside < tile - SLIGHT:
                    num_cut += 1
                    kept = min(kept, inside / tile)
                    short = max(short, 1 - inside / least)
                if inside + unsure > SLIGHT and inside - unsure < tile - SLIGHT:
                    safe = max(inside - unsure, 0.0)
                    poor = max(poor, 1 - safe / half)
                    sliver |= safe < least - SLIGHT
        total += share * weight * (SLIVER * sliver + SURE * short + POOR * poor)
        total += share * CUTS * num_cut * module / courses / tile
        poors.append(weight * poor)
        slacks.append(max(slack, 0.0))
        kepts.append(kept)
    total += POOREST * max(poors) + 2 * share * UNEVEN * abs(kepts[0] - kepts[1])
    return total + TIGHT * (1 - min(min(slacks) / (HALF * small), 1.0))


@settings(max_examples=25, deadline=None)
@given(
    st.integers(600, 1600),
    st.integers(500, 1200),
    st.integers(150, 400),
    st.integers(100, 300),
    st.integers(1, 5),
    st.sampled_from([Fraction(0), Fraction(1, 2), Fraction(1, 3), Fraction(2, 5)]),
    st.sampled_from([0.0, 2.0, 6.0]),
    st.tuples(*[st.sampled_from([1.0, 1.5, 3.0])] * 4),
)
def test_no_shift_of_a_fine_grid_is_better(
    across: int,
    up: int,
    width: int,
    height: int,
    joint: int,
    offset: Fraction,
    unsure: float,
    weights: tuple[float, float, float, float],
) -> None:
    tile = TileStock(id="t", size=(mm(width), mm(height)), thickness=mm(8), kind="ceramic", joint=mm(joint))
    cell = repeat_cell("running" if offset else "stacked", [tile], joint, offset=offset or Fraction(1, 2))
    corners = ((0.0, 0.0), (float(across), 0.0), (float(across), float(up)), (0.0, float(up)))
    edges = tuple(Edge(a=corners[k], b=corners[(k + 1) % 4], weight=weights[k]) for k in range(4))
    found = find_starts(cell, TileArea(area=box(0, 0, across, up), edges=edges, uncertainty=unsure), RULES)
    # The cheapest is the pick but for a sliver.
    pick = min(found, key=lambda start: start.penalty)
    assert pick is found[0] or pick.sliver

    small = min(width, height)
    length = 2 * (across + up)

    def along(at: float) -> float:
        sides = (weights[3], weights[1])
        return axis_cost(across, width, joint, offset.denominator, unsure, up / length, sides, small, at)

    def upward(at: float) -> float:
        sides = (weights[0], weights[2])
        return axis_cost(up, height, joint, 1, unsure, across / length, sides, small, at)

    assert pick.penalty == pytest.approx(along(pick.shift[0]) + upward(pick.shift[1]), abs=1e-6)
    best = min(along(k / 2) for k in range(2 * (width + joint))) + min(
        upward(k / 2) for k in range(2 * (height + joint))
    )
    # A tick is 1/640 mm: the pick lies on one, so that where the cost jumps it may be that much dearer.
    assert pick.penalty <= best + 1e-4


def tile_of(width: float, height: float, *, shape: Any = "rectangle", name: str = "t") -> TileStock:
    return TileStock(
        id=name, size=(mm(width), mm(height)), thickness=mm(8), kind="ceramic", joint=mm(3), shape=shape
    )


OWN = TileRepeat.model_validate(
    {
        "id": "own",
        "across": "306 mm",
        "up": "103 mm",
        "shift": "90 mm",
        "pieces": [{"tile": "t", "at": ["0 mm", "0 mm"]}, {"tile": "n", "at": ["203 mm", "0 mm"]}],
    }
)
OWN_MIRRORED = TileRepeat.model_validate(
    {
        "id": "own",
        "across": "306 mm",
        "up": "103 mm",
        "shift": "216 mm",
        "pieces": [{"tile": "n", "at": ["0 mm", "0 mm"]}, {"tile": "t", "at": ["103 mm", "0 mm"]}],
    }
)
THIRD, TWO_THIRDS = {"offset": Fraction(1, 3)}, {"offset": Fraction(2, 3)}
LONG, TWO = [tile_of(300, 97)], [tile_of(200, 100), tile_of(100, 100, name="n")]
HEXAGONS = [tile_of(150, 150 * 1.1547, shape="hexagon")]
# A pattern, and the same one seen in a mirror, both as a job asks for them.
PATTERNS: tuple[tuple[str, list[TileStock], Any, Any], ...] = (
    ("stacked", [tile_of(300, 200)], {}, {}),
    ("stacked", [tile_of(200, 200)], {"angle": 45}, {"angle": 45}),
    ("running", LONG, {}, {}),
    ("running", LONG, {"angle": 90}, {"angle": 90}),
    ("running", LONG, THIRD, TWO_THIRDS),
    ("running", LONG, {"offset": Fraction(2, 5)}, {"offset": Fraction(3, 5)}),
    ("running", LONG, {"angle": 90, **THIRD}, {"angle": 90, **TWO_THIRDS}),
    ("running", LONG, {"angle": 45, **THIRD}, {"angle": 135, **TWO_THIRDS}),
    ("diagonal", [tile_of(200, 200)], {}, {}),
    ("diagonal", [tile_of(300, 200)], {}, {"angle": 90}),
    ("herringbone", LONG, {}, {"angle": 90}),
    ("herringbone", LONG, {"angle": 45}, {"angle": 45}),
    ("herringbone", [tile_of(310, 75)], {}, {"angle": 90}),
    ("double_herringbone", LONG, {}, {"angle": 90}),
    ("double_herringbone", LONG, {"angle": 45}, {"angle": 45}),
    ("basket_weave", [tile_of(297, 97)], {}, {}),
    ("basket_weave", [tile_of(197, 97)], {"angle": 45}, {"angle": 45}),
    ("hexagon", HEXAGONS, {}, {}),
    ("hexagon", HEXAGONS, {"angle": 90}, {"angle": 90}),
    ("hexagon", HEXAGONS, {"angle": 45}, {"angle": 135}),
    ("repeat", TWO, {"repeat": OWN}, {"repeat": OWN_MIRRORED}),
)


def room(seed: int) -> TileArea:
    """A random room that is not its own mirror image, its corners on whole millimetres."""
    rng = random.Random(seed)
    across, up = rng.randint(900, 1600), rng.randint(800, 1300)
    corners = [(0, rng.randint(0, 9)), (across, 0), (across, rng.randint(400, up - 200))]
    if rng.random() < 0.6:
        corners += [(rng.randint(500, across - 200), corners[2][1])]
    corners += [(corners[-1][0] - (len(corners) == 3) * rng.randint(0, 150), up), (0, up)]
    area = Polygon(corners)
    if rng.random() < 0.5:
        left, low = rng.randint(100, 250), rng.randint(100, 200)
        area = area.difference(box(left, low, left + rng.randint(80, 160), low + rng.randint(80, 150)))
    unsure = rng.choice([0.0, 2.0])
    weights = [rng.choice([1.0, 2.0, 3.0]) for _ in corners]
    edges = tuple(
        Edge(a=(float(a[0]), float(a[1])), b=(float(b[0]), float(b[1])), weight=weight)
        for a, b, weight in zip(corners, [*corners[1:], corners[0]], weights, strict=True)
    )
    return TileArea(area=area, edges=edges, uncertainty=unsure)


def seen(point: XY, field: TileArea, axis: int) -> XY:
    """A point in a mirror in the middle of a room, square to an axis."""
    low, high = field.area.bounds[axis], field.area.bounds[axis + 2]
    return (low + high - point[0], point[1]) if axis == 0 else (point[0], low + high - point[1])


def mirrored(field: TileArea, axis: int) -> TileArea:
    """A room as its mirror shows it."""
    area: Any = transform(field.area, lambda points: [seen((x, y), field, axis) for x, y in points])
    edges = tuple(
        Edge(a=seen(edge.b, field, axis), b=seen(edge.a, field, axis), weight=edge.weight)
        for edge in reversed(field.edges)
    )
    return TileArea(area=area, edges=edges, uncertainty=field.uncertainty)


def laid(cell: RepeatCell, field: TileArea, shift: XY, *, axis: int | None = None) -> Counter[tuple[Any, ...]]:
    """Where every piece lies, seen in a mirror where an axis is given."""
    found: Counter[tuple[Any, ...]] = Counter()
    for tile in lay(cell, shift, field.area):
        if tile.shape.area >= 50:
            point = tile.shape.centroid
            at = (point.x, point.y) if axis is None else seen((point.x, point.y), field, axis)
            found[tile.tile, round(at[0], 1), round(at[1], 1), round(tile.shape.area, -1)] += 1
    return found


def alike(one: Counter[tuple[Any, ...]], other: Counter[tuple[Any, ...]]) -> bool:
    """Whether two sets of pieces are the same but for rounding."""
    rest, more = sorted((one - other).elements()), sorted((other - one).elements())
    return len(rest) == len(more) and all(
        any(
            a[0] == b[0] and abs(a[1] - b[1]) < 0.25 and abs(a[2] - b[2]) < 0.25 and abs(a[3] - b[3]) <= 20
            for b in more
        )
        for a in rest
    )


@pytest.mark.parametrize("number", range(len(PATTERNS)))
@settings(max_examples=2, deadline=None)
@given(st.integers(0, 10**6), st.sampled_from((0, 1)))
@example(12, 0)
@example(15, 0)
def test_a_mirrored_room_gives_every_start_mirrored(number: int, seed: int, axis: int) -> None:
    pattern, tiles, one, other = PATTERNS[number]
    here, there = room(seed), mirrored(room(seed), axis)
    cell, back = (repeat_cell(pattern, tiles, 3.0, **more) for more in (one, other))
    ours, theirs = find_starts(cell, here, RULES), find_starts(back, there, RULES)
    assert len(ours) == len(theirs)
    for start, image in zip(ours, theirs, strict=True):
        assert image.penalty == pytest.approx(start.penalty, abs=1e-3)
        assert alike(laid(cell, here, start.shift), laid(back, there, image.shift, axis=axis))


@pytest.mark.parametrize("unsure", [0.0, 2.0, 5.0])
def test_slack_is_what_the_room_may_differ(unsure: float) -> None:
    tile = TileStock(id="t", size=(mm(300), mm(200)), thickness=mm(8), kind="ceramic", joint=mm(3))
    cell = repeat_cell("stacked", [tile], 3)
    for across, up in product((1000, 1111, 1273), (700, 850)):
        pick = find_starts(cell, TileArea(area=box(0, 0, across, up), uncertainty=unsure), RULES)[0]
        for error in (-pick.slack + 0.01, pick.slack - 0.01):
            room = box(-error, -error, across + error, up + error)
            assert judge_start(cell, TileArea(area=room), pick.shift, RULES).smallest_cut >= LEAST - 0.02

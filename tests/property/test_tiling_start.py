"""The start is the best there is beside a fine grid judged anew, and a mirrored room gives a mirrored plan."""

import datetime
from fractions import Fraction
from itertools import product
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import affinity, box

from firstcourse.plan.model import TileStock
from firstcourse.rules import load_rules
from firstcourse.tiling.model import Edge, Field
from firstcourse.tiling.patterns import repeat_cell
from firstcourse.tiling.start import find_starts, judge_start
from firstcourse.units import mm, to_mm

RULES = load_rules(datetime.date(2026, 1, 1))
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
    pick = find_starts(cell, Field(area=box(0, 0, across, up), edges=edges, uncertainty=unsure), RULES)[0]

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


@settings(max_examples=15, deadline=None)
@given(
    st.integers(600, 1500),
    st.integers(500, 1200),
    st.integers(150, 400),
    st.integers(100, 300),
    st.sampled_from(["stacked", "running", "diagonal"]),
    st.sampled_from([0.0, 3.0]),
)
def test_a_mirrored_room_gives_a_mirrored_plan(
    across: int, up: int, width: int, height: int, pattern: Any, unsure: float
) -> None:
    height = width if pattern == "diagonal" else height
    tile = TileStock(id="t", size=(mm(width), mm(height)), thickness=mm(8), kind="ceramic", joint=mm(3))
    cell = repeat_cell(pattern, [tile], 3)
    area = box(0, 0, across, up).difference(box(across * 0.6, up / 2, across, up))
    edges = (Edge(a=(0.0, float(up)), b=(0.0, 0.0), weight=3),)
    other = (Edge(a=(float(across), 0.0), b=(float(across), float(up)), weight=3),)
    here = Field(area=area, edges=edges, uncertainty=unsure)
    there = Field(area=affinity.scale(area, -1, 1, origin=(across / 2, 0)), edges=other, uncertainty=unsure)
    pick, mirrored = find_starts(cell, here, RULES)[0], find_starts(cell, there, RULES)[0]
    # Where two starts are equally good either may be taken: each is as good in the other's room.
    assert mirrored.penalty == pytest.approx(pick.penalty, abs=1e-3)
    low = min(x for piece in cell.pieces for x, _ in piece.ring)
    high = max(x for piece in cell.pieces for x, _ in piece.ring)
    back = (across - (mirrored.shift[0] + low + high), mirrored.shift[1])
    assert judge_start(cell, here, back, RULES).penalty == pytest.approx(pick.penalty, abs=1e-3)


@pytest.mark.parametrize("unsure", [0.0, 2.0, 5.0])
def test_slack_is_what_the_room_may_differ(unsure: float) -> None:
    tile = TileStock(id="t", size=(mm(300), mm(200)), thickness=mm(8), kind="ceramic", joint=mm(3))
    cell = repeat_cell("stacked", [tile], 3)
    for across, up in product((1000, 1111, 1273), (700, 850)):
        pick = find_starts(cell, Field(area=box(0, 0, across, up), uncertainty=unsure), RULES)[0]
        for error in (-pick.slack + 0.01, pick.slack - 0.01):
            room = box(-error, -error, across + error, up + error)
            assert judge_start(cell, Field(area=room), pick.shift, RULES).smallest_cut >= LEAST - 0.02

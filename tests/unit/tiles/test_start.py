"""Starts in rooms whose best plan is known."""

import datetime
import math
from dataclasses import replace
from typing import Any

import pytest
from shapely import Point, Polygon, affinity, box

from firstcourse.errors import InputValueError
from firstcourse.plan import TileStock
from firstcourse.rules import Override, load_rules
from firstcourse.tiles.model import Edge, RepeatCell, Start, TileArea
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.tiles.start import common_level, find_starts, judge_start
from firstcourse.units import mm

RULES = load_rules(datetime.date(2026, 1, 1))


def cell(
    pattern: Any = "stacked", width: float = 300, height: float = 300, joint: float = 3, **more: Any
) -> RepeatCell:
    tile = TileStock(
        id="t",
        size=(mm(width), mm(height)),
        thickness=mm(8),
        kind="ceramic",
        joint=mm(joint),
        shape="hexagon" if pattern == "hexagon" else "rectangle",
    )
    return repeat_cell(pattern, [tile], joint, **more)


def starts(of: RepeatCell, area: Any, **more: Any) -> tuple[Start, ...]:
    return find_starts(of, TileArea(area=area, **more), RULES)


def test_a_room_of_whole_tiles_is_not_cut() -> None:
    pick = starts(cell(), box(0, 0, 10 * 303 - 3, 5 * 303 - 3))[0]
    assert (pick.shift, pick.cut_tiles, pick.whole_tiles, pick.smallest_cut) == ((0, 0), 0, 50, 0)


def test_of_one_row_too_many_both_sides_take_half() -> None:
    # 4 tiles and 100 mm: three whole ones and two of 200 mm rather than a strip of 97 mm.
    pick = starts(cell(), box(0, 0, 4 * 303 + 97, 5 * 303 - 3))[0]
    assert pick.smallest_cut == pytest.approx((4 * 303 + 97 - 3 * 303 - 3) / 2)
    assert pick.shift[1] == 0
    assert (pick.facts.short, pick.facts.uneven) == (0.0, pytest.approx(0.0, abs=1e-6))


def test_three_really_different_starts_are_ranked() -> None:
    found = starts(cell(), box(0, 0, 2500, 1900))
    assert len(found) == 3
    assert [start.penalty for start in found] == sorted(start.penalty for start in found)
    for first, second in ((0, 1), (0, 2), (1, 2)):
        apart = [abs(a - b) % 303 for a, b in zip(found[first].shift, found[second].shift, strict=True)]
        assert max(min(away, 303 - away) for away in apart) >= 0.25 * 303 - 0.01
    assert [start.why for start in found] == ["best", "other", "other"]
    assert len({start.facts for start in found}) > 1


def test_diagonal_tiles_are_cut_from_corner_to_corner() -> None:
    half = 303 * math.sqrt(2) / 2
    pick = starts(cell("diagonal"), box(0, 0, 6 * half, 4 * half))[0]
    # A tile's corner, half a joint beyond, lies on the wall: cuts are half tiles.
    assert pick.smallest_cut == pytest.approx(150 * math.sqrt(2), abs=3)


def test_the_side_that_is_seen_first_gets_the_better_cut() -> None:
    narrow = 303 * 5 + 140
    area = box(0, 0, narrow, 303 * 3 - 3)
    corners = ((0.0, 0.0), (float(narrow), 0.0), (float(narrow), 906.0), (0.0, 906.0))
    for seen, low_side in ((3, True), (1, False)):
        edges = tuple(
            Edge(a=corners[k], b=corners[(k + 1) % 4], weight=9.0 if k == seen else 1.0) for k in range(4)
        )
        rules = load_rules(
            datetime.date(2026, 1, 1),
            overrides=(
                Override(rule="tiling.start.cost.uneven", value=0, reason="test"),
                Override(rule="tiling.start.half", value=0.9, reason="test"),
            ),
        )
        pick = find_starts(cell(), TileArea(area=area, edges=edges), rules)[0]
        first = pick.shift[0] % 303
        left, right = (first - 3 if first > 3 else 300), (narrow - first) % 303
        assert (min(left, 300) > min(right, 300)) == low_side


def test_joints_run_on_the_edges_of_a_niche() -> None:
    wall = box(0, 0, 2000, 2211).difference(box(800, 1015, 1103, 1318))
    wanted = (("u", 1015.0), ("u", 1318.0))
    with_niche = starts(cell(), wall, wanted=wanted)[0]
    assert (with_niche.facts.on_joints, with_niche.facts.num_wanted) == (2, 2)
    assert 0 <= (with_niche.shift[1] - 1015) % 303 <= 3


def test_a_cut_that_holds_is_preferred_to_a_wider_one_that_may_not() -> None:
    # As surveyed the last tile just fits; where the room is 8 mm longer a strip would be left.
    area = box(0, 0, 3 * 303 - 3, 3 * 303 - 3)
    sure, unsure = starts(cell(), area)[0], starts(cell(), area, uncertainty=8)[0]
    assert sure.cut_tiles == 0 and sure.slack == pytest.approx(3)
    assert unsure.cut_tiles > 0 and unsure.slack >= 8
    assert unsure.facts.unsure and not unsure.facts.may_sliver


def test_what_a_wider_joint_takes_up_costs_no_cut() -> None:
    # Where the room is 5 mm longer, 2 mm more than a joint: no strip is set there, the soft joint is wider.
    area = box(0, 0, 3 * 303 - 3, 3 * 303 - 3)
    pick = starts(cell(), area, uncertainty=5)[0]
    assert pick.cut_tiles == 0 and pick.facts.unsure and not pick.facts.may_sliver


def test_slack_tells_how_far_the_room_may_differ() -> None:
    of, least = cell(), 50.8
    area = box(0, 0, 4 * 303 + 97, 5 * 303 + 200)
    pick = starts(of, area)[0]
    for error, holds in ((pick.slack - 0.1, True), (pick.slack + 0.1, False)):
        rooms = [affinity.scale(area, 1 + s * 2 * error / 1309, 1 + s * 2 * error / 1715) for s in (-1, 1)]
        cuts = [judge_start(of, TileArea(area=room), pick.shift, RULES).smallest_cut for room in rooms]
        assert (min(cuts) >= least - 0.01) == holds


def test_the_narrowest_cut_holds_in_the_worst_room() -> None:
    area = box(0, 0, 4 * 303 + 97, 5 * 303 + 200)
    pick = starts(cell(), area, uncertainty=4)[0]
    bare = judge_start(cell(), TileArea(area=area), pick.shift, RULES)
    assert pick.sure_cut == pytest.approx(bare.sure_cut - 4)
    for error in (-4, 4):
        room = box(-error, -error, 4 * 303 + 97 + error, 5 * 303 + 200 + error)
        assert judge_start(cell(), TileArea(area=room), pick.shift, RULES).smallest_cut >= pick.sure_cut - 0.01


def test_a_start_without_a_sliver_is_the_pick_at_few_more_cuts_and_among_the_others_at_more() -> None:
    # Where nothing counts but cut tiles, a strip of 20 mm at one side is cheaper than a cut at both.
    names = ("sliver", "sure", "poorest", "poor", "uneven", "tight")
    free = tuple(Override(rule=f"tiling.start.cost.{one}", value=0, reason="test") for one in names)
    for more, has_sliver in ((3.0, False), (2.0, True)):
        limit = Override(rule="tiling.start.more_cuts", value=more, reason="test")
        rules = load_rules(datetime.date(2026, 1, 1), overrides=(*free, limit))
        found = find_starts(cell(), TileArea(area=box(0, 0, 4 * 303 + 20, 3 * 303 - 3)), rules)
        assert (found[0].sliver, found[0].cut_tiles) == ((True, 3) if has_sliver else (False, 6))
        without = [start for start in found if not start.sliver]
        assert without and without[0].cut_tiles == 6


def test_a_given_start_is_judged_as_it_is() -> None:
    given = judge_start(cell(), TileArea(area=box(0, 0, 1000, 900)), (20, 0), RULES)
    assert given.shift == (20, 0)
    assert given.smallest_cut == pytest.approx(17)
    assert given.slack == 0
    assert given.why == "given" and given.sliver


@pytest.mark.parametrize(
    ("pattern", "width", "height", "more"),
    [
        ("running", 600, 150, {}),
        ("herringbone", 300, 75, {}),
        ("herringbone", 300, 75, {"angle": 45}),
        ("double_herringbone", 300, 75, {"angle": 90}),
        ("basket_weave", 197, 97, {}),
        ("hexagon", 97, 97 * 2 / math.sqrt(3), {}),
        ("running", 600, 150, {"angle": 45}),
    ],
)
def test_every_pattern_starts_in_any_room(pattern: str, width: float, height: float, more: Any) -> None:
    room = Polygon([(0, 0), (1500, 0), (1500, 600), (1100, 1000), (0, 1003)])
    room = room.difference(Point(500, 400).buffer(60)).difference(box(700, 500, 900, 800))
    found = starts(cell(pattern, width, height, **more), room, uncertainty=2)
    assert 1 <= len(found) <= 3
    assert all(math.isfinite(start.penalty) and start.slack >= 0 for start in found)
    assert found == starts(cell(pattern, width, height, **more), room, uncertainty=2)


def test_no_area_has_no_start() -> None:
    with pytest.raises(InputValueError, match="no area is left for tile"):
        starts(cell(), Polygon())


def test_round_holes_do_not_decide() -> None:
    room = box(0, 0, 2500, 1900)
    plain = starts(cell(), room)[0]
    pierced = starts(cell(), room.difference(Point(1200, 900).buffer(40)))[0]
    assert pierced.shift == plain.shift
    assert replace(pierced, cut_tiles=0, whole_tiles=0, smallest_cut=0) == replace(
        plain, cut_tiles=0, whole_tiles=0, smallest_cut=0
    )


def test_walls_that_share_a_level_are_together_at_their_best() -> None:
    walls = [
        (cell(), TileArea(area=box(0, foot, 1500, top))) for foot, top in ((380, 2130), (100, 2400), (380, 1990))
    ]
    level = common_level(walls, RULES, over=(0.0,) * len(walls))
    assert level is not None

    def together(at: float) -> float:
        return sum(find_starts(one, field, RULES, level=at)[0].penalty for one, field in walls)

    assert together(level) <= min(together(number * 303 / 60) for number in range(60)) + 1e-6
    assert {find_starts(one, field, RULES, level=level)[0].shift[1] for one, field in walls} == {level}


def test_walls_of_unlike_courses_share_no_level() -> None:
    area = TileArea(area=box(0, 0, 1500, 2000))
    assert common_level([(cell(height=100), area), (cell(height=200), area)], RULES, over=(0.0, 0.0)) is None
    assert common_level([(cell("herringbone", 300, 100), area)] * 2, RULES, over=(0.0, 0.0)) is None


def test_tile_ends_whole_where_the_setter_ends_it() -> None:
    """A strip one tile high but for 2 mm, whose survey errs by more than joints take: one course, cut at the foot.

    Against a wall at both edges a whole tile might leave a crack; beside an edge that is free nothing can.
    """
    area = box(0, 0, 4 * 303 - 3, 298)
    top = Edge(a=(4 * 303 - 3, 298), b=(0, 298))
    walled, free = (
        starts(cell(), area, edges=(replace(top, free=is_free),), uncertainty=8.0)[0] for is_free in (False, True)
    )
    assert free.shift[1] % 303 == pytest.approx(301)
    assert walled.shift[1] % 303 != pytest.approx(301)
    assert walled.cut_tiles == 2 * free.cut_tiles

"""Where soft joints lie on a surface, how wide they are and what fills them."""

import datetime
import math
from fractions import Fraction
from typing import Any

import pytest
from shapely import Point, Polygon
from shapely import box as mm_box

from firstcourse.plan import Opening, OpeningKind, Ring, Side, SideKind, Surface, SurfaceKind, TileStock
from firstcourse.rules import load_rules
from firstcourse.tiles.lines import Lines, joint_lines
from firstcourse.tiles.model import LaidTile
from firstcourse.tiles.movement import field_spacing, joint_section, sealant_depth
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.tiles.soft_joints import SoftJoints, soft_joints, with_cuts
from firstcourse.units import TICKS_PER_FOOT, TICKS_PER_MM, Tape, inches, mm
from said import all_said, worked

DAY = datetime.date(2026, 11, 25)
US, UK, AU = (load_rules(DAY, practice) for practice in ("us", "uk", "au"))
EDGE = mm(6)
JOINT = 3.0


def ring(left: float, lower: float, right: float, upper: float) -> Ring:
    return ((mm(left), mm(lower)), (mm(right), mm(lower)), (mm(right), mm(upper)), (mm(left), mm(upper)))


def floor(width: float, depth: float, free: tuple[int, ...] = (), **more: Any) -> Surface:
    return Surface(
        id="bath/floor",
        room="bath",
        kind=SurfaceKind.FLOOR,
        outline=ring(0, 0, width, depth),
        sides=tuple(
            Side(kind=SideKind.FREE if i in free else SideKind.PERIMETER, meets=f"bath/wall/{i}") for i in range(4)
        ),
        **more,
    )


def families(pattern: Any = "stacked", width: float = 300, height: float = 300, **more: Any) -> tuple[Lines, ...]:
    tile = TileStock(id="t", size=(mm(width), mm(height)), thickness=mm(8), kind="ceramic", joint=mm(JOINT))
    return joint_lines(repeat_cell(pattern, [tile], JOINT, **more), (7.5, 7.5))


def placed(surface: Surface, lines: tuple[Lines, ...], area: Any = None, **more: Any) -> SoftJoints:
    width, depth = (value / TICKS_PER_MM for value in surface.outline[2])
    return soft_joints(
        surface,
        mm_box(6, 6, width - 6, depth - 6) if area is None else area,
        lines,
        field_spacing(SurfaceKind.FLOOR, US, exposure="moist"),
        edge=EDGE,
        joint=mm(JOINT),
        **more,
    )


def in_field(done: SoftJoints) -> list[tuple[tuple[float, ...], ...]]:
    return [
        tuple(tuple(c / TICKS_PER_MM for c in point) for point in joint.line)
        for joint in done.joints
        if joint.why == "field"
    ]


def test_a_small_room_has_joints_at_its_edges_only() -> None:
    done = placed(floor(2400, 1800), families())
    assert len(done.joints) == 4
    assert {joint.width for joint in done.joints} == {EDGE}
    assert done.joints[0].line == ((mm(3), mm(3)), (mm(2397), mm(3)))
    assert (done.joints[0].why, done.joints[0].at) == ("plane", "bath/floor/side/0")
    assert all_said(done.findings) == ()
    assert done.working.result == 4


def test_free_sides_and_sides_listed_next_door_have_none() -> None:
    done = placed(floor(2400, 1800, free=(1,)), families(), on_neighbour=frozenset({2}))
    assert [joint.at for joint in done.joints] == ["bath/floor/side/0", "bath/floor/side/3"]


def test_the_edge_joint_stands_off_what_stands_before_the_side() -> None:
    surface = floor(2400, 1800)
    done = placed(surface, families(), area=mm_box(18, 18, 2382, 1782), before=[mm(12)] * 4)
    assert done.joints[1].line == ((mm(2385), mm(15)), (mm(2385), mm(1785)))


def test_no_joint_where_no_tile_comes_near() -> None:
    surface = floor(2400, 1800, openings=(Opening(id="tub", kind=OpeningKind.TUB, outline=ring(0, 0, 800, 1800)),))
    done = placed(surface, families(), area=mm_box(806, 6, 2394, 1794))
    assert [(joint.why, joint.at) for joint in done.joints] == [
        *(("plane", f"bath/floor/side/{k}") for k in (0, 1, 2)),
        ("restrained", "bath/floor/opening/tub"),
    ]
    rim = done.joints[3].line
    assert {point[0] for point in rim} == {mm(803)}
    assert math.dist(*rim) / TICKS_PER_MM == pytest.approx(1800, abs=12)


def test_a_long_floor_is_divided_on_grout_joints() -> None:
    done = placed(floor(6000, 2000), families())
    (line,) = in_field(done)
    # 12 ft are 3657.6 mm: one joint, on the grout joint nearest to the middle.
    assert line[0][0] == line[1][0] == 7.5 - 1.5 + 10 * 303
    assert {line[0][1], line[1][1]} == {6, 1994}
    (joint,) = (joint for joint in done.joints if joint.why == "field")
    assert (joint.width, joint.cut) == (inches(0.25), False)


def test_a_running_bond_is_cut_across_its_courses() -> None:
    done = placed(floor(6000, 6000), families("running", 300, 100, offset=Fraction(1, 2)))
    along = [line for line in in_field(done) if line[0][1] == line[1][1]]
    across = [line for line in in_field(done) if line[0][0] == line[1][0]]
    assert (len(along), len(across)) == (1, 1)
    # Across the courses the joint still falls on the ends of every second course.
    assert (across[0][0][0] - 6) % 151.5 == pytest.approx(0, abs=0.002)
    assert [finding.code for finding in all_said(done.findings)] == ["TIL-110"]


def test_a_pattern_without_straight_joints_is_cut_both_ways() -> None:
    done = placed(floor(6000, 6000), families("herringbone", 200, 97))
    assert len(in_field(done)) == 2
    assert [finding.code for finding in done.findings] == ["TIL-110"]


def test_a_joint_that_tiles_lie_across_is_told_to_cut_them() -> None:
    joints = placed(floor(6000, 2000), families()).joints
    (line,) = in_field(placed(floor(6000, 2000), families()))
    at = line[0][0]

    def cut(left: float, right: float) -> list[bool]:
        shape = mm_box(left, 6, right, 306)
        tile = LaidTile(tile="t", laid=tuple(shape.exterior.coords[:-1]), shape=shape, whole=True)
        return [joint.cut for joint in with_cuts(joints, [tile]) if joint.place == "field"]

    assert cut(at + 1.5, at + 301.5) == [False]
    assert cut(at - 100, at + 200) == [True]


def test_a_field_of_hexagons_is_divided_level_and_upright() -> None:
    tile = TileStock(
        id="t", size=(mm(150), mm(173.2)), thickness=mm(8), kind="ceramic", shape="hexagon", joint=mm(JOINT)
    )
    done = placed(floor(6000, 6000), joint_lines(repeat_cell("hexagon", [tile], JOINT), (7.5, 7.5)))
    assert len(in_field(done)) == 2
    for (u0, v0), (u1, v1) in in_field(done):
        assert min(abs(u1 - u0), abs(v1 - v0)) == pytest.approx(0, abs=0.002)


def test_a_diagonal_field_is_divided_along_its_own_joints() -> None:
    done = placed(floor(4000, 4000), families("diagonal"))
    for line in in_field(done):
        (u0, v0), (u1, v1) = line
        assert abs(u1 - u0) == pytest.approx(abs(v1 - v0), abs=0.01)
    assert len(in_field(done)) == 2


def test_a_doorway_moves_to_the_nearest_grout_joint_and_counts() -> None:
    door = ((mm(2900), mm(0)), (mm(2900), mm(2000)))
    done = placed(floor(6000, 2000), families(), over=((door, "doorway"),))
    assert in_field(done) == []
    (joint,) = (joint for joint in done.joints if joint.why == "doorway")
    assert joint.line[0][0] == mm(6 + 10 * 303)


def test_a_joint_over_another_stays_where_it_is() -> None:
    below = ((mm(2900), mm(0)), (mm(2900), mm(2000)))
    done = placed(floor(6000, 2000), families(), over=((below, "structural_joint"),))
    (joint,) = (joint for joint in done.joints if joint.why == "structural_joint")
    assert {point[0] for point in joint.line} == {mm(2900)}
    assert [finding.code for finding in all_said(done.findings)] == ["TIL-110"]
    on_it = ((mm(6 + 10 * 303), mm(0)), (mm(6 + 10 * 303), mm(2000)))
    assert all_said(placed(floor(6000, 2000), families(), over=((on_it, "structural_joint"),)).findings) == ()


def test_a_skew_outline_has_its_joints_alongside() -> None:
    outline = ((0, 0), (mm(3000), 0), (mm(2000), mm(2000)), (0, mm(2000)))
    surface = floor(1, 1).model_copy(update={"outline": outline})
    area = Polygon([(6, 6), (2990.4, 6), (1996, 1994), (6, 1994)])
    done = placed(surface, families(), area=area)
    (a, b) = done.joints[1].line
    side = Polygon([(p[0] / TICKS_PER_MM, p[1] / TICKS_PER_MM) for p in outline]).exterior
    for point in (a, b):
        assert side.distance(Point(point[0] / TICKS_PER_MM, point[1] / TICKS_PER_MM)) == pytest.approx(3, abs=0.01)


@pytest.mark.parametrize(
    ("kind", "expected"), [(SurfaceKind.FLOOR, inches(0.25)), (SurfaceKind.WALL, inches(0.125))]
)
def test_edges_are_as_wide_as_the_rule_or_the_grout_joint(kind: SurfaceKind, expected: int) -> None:
    assert field_spacing(kind, US).width == expected
    assert field_spacing(kind, US, joint=inches(0.375)).width == inches(0.375)


@pytest.mark.parametrize(
    ("kind", "exposure", "feet"),
    [
        (SurfaceKind.FLOOR, "dry", 25),
        (SurfaceKind.FLOOR, "slab", 12),
        (SurfaceKind.FLOOR, "moist", 12),
        (SurfaceKind.WALL, "moist", 12),
        (SurfaceKind.FLOOR, "exterior", 12),
    ],
)
def test_spacing_by_exposure(kind: SurfaceKind, exposure: Any, feet: float) -> None:
    assert field_spacing(kind, US, exposure=exposure).limit == feet * TICKS_PER_FOOT


def test_a_closer_spacing_outside_allows_a_narrower_joint() -> None:
    near = field_spacing(SurfaceKind.FLOOR, US, exposure="exterior", wanted=8 * TICKS_PER_FOOT)
    far = field_spacing(SurfaceKind.FLOOR, US, exposure="exterior")
    assert (near.limit, near.width, far.width) == (8 * TICKS_PER_FOOT, inches(0.375), inches(0.5))


@pytest.mark.parametrize("rules", [US, UK, AU], ids=["us", "uk", "au"])
@pytest.mark.parametrize("exposure", ["dry", "slab", "moist", "exterior"])
@pytest.mark.parametrize("kind", list(SurfaceKind))
def test_every_practice_answers(rules: Any, exposure: Any, kind: SurfaceKind) -> None:
    spacing = field_spacing(kind, rules, exposure=exposure, yearly_range_f=120)
    assert spacing.limit >= mm(2400)
    assert mm(3) <= spacing.width <= mm(16)
    assert spacing.limit <= field_spacing(kind, rules, exposure="dry").limit


def test_a_field_s_own_expansion_asks_for_width_where_no_table_does() -> None:
    """UK: 5 m over 150 °F, or 83 K, move 2.5 mm at 6e-6 per K; four times that are 10 mm."""
    assert field_spacing(SurfaceKind.FLOOR, UK, exposure="exterior").width == mm(6)
    found = field_spacing(SurfaceKind.FLOOR, UK, exposure="exterior", yearly_range_f=150).width
    assert found / TICKS_PER_MM == pytest.approx(5000 * 6e-6 * 150 * 5 / 9 * 4, abs=0.01)


def test_joints_wider_than_sealant_fills_are_said() -> None:
    surface, spacing = floor(2400, 1800), field_spacing(SurfaceKind.FLOOR, US, joint=inches(1.25))
    done = soft_joints(
        surface, mm_box(6, 6, 2394, 1794), families(), spacing, edge=spacing.width, joint=inches(1.25)
    )
    (finding,) = all_said(done.findings, sources=US.sources())
    assert (finding.code, finding.measured, finding.limit) == ("TIL-111", '1-1/4"', 'at most 1"')
    assert (finding.rule, finding.source) == ("tile.sealant.max_width", US.entry("tile.sealant.max_width").cited)


def test_a_rod_needs_room_behind_the_sealant() -> None:
    shallow, deep = (joint_section(inches(0.25), inches(depth), US) for depth in (0.5, 0.75))
    assert (shallow.depth, shallow.rod) == (inches(0.25), 0)
    assert (deep.depth, deep.rod) == (inches(0.25), inches(0.375))
    assert joint_section(inches(0.25), inches(0.125), US).depth == inches(0.125)


def test_sealant_is_never_deeper_than_half_an_inch() -> None:
    assert sealant_depth(inches(1.5), US) == inches(0.5)


def test_the_working_is_in_the_tape_s_units() -> None:
    said = worked(placed(floor(6000, 2000), families()).working, Tape.MM)
    assert said.values["spacing"] == "3.66 m"
    assert said.values["across the field"] == "none level in 1988 mm, 1 upright in 5988 mm"

"""The unfolded room: every wall stands with its foot on its side of the floor, outside it and true to scale."""

import math
from pathlib import Path

import pytest
from shapely import Polygon

from example_plans import plan_of
from firstcourse.drawings import draw_room, room_names
from firstcourse.drawings.model import Drawing
from firstcourse.geometry.polygon import rectangle
from firstcourse.papers.room_pages import room_pages
from firstcourse.plan import JobStamp, Plan, Side, SideKind, Surface, SurfaceKind
from firstcourse.units import TICKS_PER_MM, mm

EXAMPLES = Path(__file__).parents[3] / "examples"
NAMES = ("tub-bathroom", "tiled-shower", "l-shower-room", "metric-column")


def _outlines(drawing: Drawing) -> dict[str, Polygon]:
    return {poly.name: Polygon(poly.points) for poly in drawing.polys if poly.layer == "outline"}


@pytest.mark.parametrize("name", NAMES)
def test_nothing_lies_over_anything_else_and_all_is_true_to_scale(name: str) -> None:
    plan = plan_of(name)
    for room in room_names(plan):
        drawing = draw_room(plan, room)
        left, lower, right, upper = drawing.box
        assert right - left <= 182 and upper - lower <= 205
        outlines = _outlines(drawing)
        if any(door.room == room for door in plan.doors):
            # A floor with doors is drawn side by side, with gaps; it lies where the drawing begins.
            floor = next(surface for surface in plan.surfaces if surface.id == f"{room}/floor")
            per = TICKS_PER_MM * drawing.scale
            outlines[floor.id] = Polygon([(u / per, v / per) for u, v in floor.outline])
        walls = [name for name in outlines if "/wall/" in name]
        for index, one in enumerate(walls):
            others = [*walls[index + 1 :], f"{room}/floor"]
            for other in others:
                assert outlines[one].intersection(outlines[other]).area < 0.02 * outlines[one].area
        for surface in plan.surfaces:
            if surface.id in outlines:
                area = Polygon(surface.outline).area / (TICKS_PER_MM * drawing.scale) ** 2
                assert outlines[surface.id].area == pytest.approx(area, rel=1e-6)
        texts = {text.text for text in drawing.texts}
        named = {f"wall {'-'.join(s.corners)}" for s in plan.surfaces if s.kind is SurfaceKind.WALL}
        assert named <= texts


def _surface(kind: SurfaceKind, name: str, width: float, height: float, corners: str, *walls: str) -> Surface:
    return Surface(
        id=f"bath/{name}",
        room="bath",
        kind=kind,
        outline=rectangle(0, 0, mm(width), mm(height)),
        sides=tuple(Side(kind=SideKind.PERIMETER, meets=f"bath/wall/{wall}") for wall in walls),
        corners=tuple(corners),
    )


def test_a_wall_folds_out_over_its_own_side_and_is_not_mirrored() -> None:
    floor = _surface(SurfaceKind.FLOOR, "floor", 2000, 3000, "ABCD", "C-D", "B-C", "A-B", "D-A")
    walls = [
        _surface(SurfaceKind.WALL, f"wall/{pair[0]}-{pair[1]}", width, 2400, pair)
        for pair, width in (("AB", 2000), ("BC", 3000), ("CD", 2000), ("DA", 3000))
    ]
    plan = Plan(job=JobStamp(name="n", digest="0" * 64), surfaces=(floor, *walls))
    drawing = draw_room(plan, "bath")
    outlines = {poly.name: poly.points for poly in drawing.polys if poly.layer == "outline"}
    per = drawing.scale
    # Lower left corner of each wall as seen from inside, and its upper right one.
    wanted = {
        "bath/wall/A-B": ((0, 3000), (2000, 5400)),
        "bath/wall/B-C": ((2000, 3000), (4400, 0)),
        "bath/wall/C-D": ((2000, 0), (0, -2400)),
        "bath/wall/D-A": ((0, 0), (-2400, 3000)),
    }
    for name, (first, third) in wanted.items():
        points = outlines[name]
        assert math.dist(points[0], (first[0] / per, first[1] / per)) < 1e-6
        assert math.dist(points[2], (third[0] / per, third[1] / per)) < 1e-6


def test_walls_without_a_floor_stand_in_a_row() -> None:
    walls = [_surface(SurfaceKind.WALL, f"wall/{a}-{b}", 2000, 2400, a + b) for a, b in ("AB", "BC")]
    drawing = draw_room(Plan(job=JobStamp(name="n", digest="0" * 64), surfaces=tuple(walls)), "bath")
    first, second = _outlines(drawing).values()
    assert first.distance(second) > 10 and first.bounds[1] == second.bounds[1]


def test_the_page_states_its_scale() -> None:
    (page,) = room_pages(plan_of("tub-bathroom"))
    assert page["scale"] == "1:48" and page["title"] == "hall bath: unfolded"

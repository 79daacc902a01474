"""The floor along the foot of an upright face: planes of a shower floor, the kerb's top, the room's floor."""

import datetime
from pathlib import Path
from typing import Any

import pytest
import yaml

from firstcourse.details.footings import Floors, Foot
from firstcourse.geometry import bounds, rectangle
from firstcourse.job import read_job_text
from firstcourse.plan import Fall, FallPlane, FloodTest
from firstcourse.rules import load_rules
from firstcourse.showers.shower_floor import plan_fall
from firstcourse.survey import survey_job
from firstcourse.units import inches, mm

EXAMPLE = Path(__file__).parents[3] / "examples" / "tiled-shower" / "job.yaml"
RULES = load_rules(datetime.date(2026, 11, 25))


def fall(*planes: FallPlane, drain_height: int = mm(50)) -> Fall:
    return Fall(
        layout="single",
        drain=((0, 0), (mm(10), 0)),
        planes=planes,
        levels=(),
        rise=mm(20),
        least_fall=0.02,
        least_plane_fall=0.02,
        greatest_fall=0.02,
        bed=mm(30),
        bed_litres=1.0,
        drain_height=drain_height,
        membrane="sheet",
        flood_test=FloodTest(hours=24, level=mm(90), litres=100, kg=100),
    )


def plane(left: int, right: int, gradient: float, at_left: float) -> FallPlane:
    """A plane over 1 m of v that falls along u alone [mm]."""
    ring = rectangle(mm(left), 0, mm(right), mm(1000))
    heights = tuple(mm(at_left + gradient * (u / 640 - left)) for u, _ in ring)
    return FallPlane(ring=ring, heights=heights, gradient=(gradient, 0.0))


def near(points: tuple[tuple[int, int], ...]) -> Any:
    """Corners of planes are rounded to ticks, and so is where a line passes from one to the next."""
    return [pytest.approx(point, abs=2) for point in points]


VALLEY = fall(plane(0, 500, -0.02, 10.0), plane(500, 1000, 0.02, 0.0))
KERBED = Floors(room=mm(22), fall=VALLEY, tray=rectangle(0, 0, mm(1100), mm(1100)), kerb=mm(100))


def test_a_foot_bends_where_the_planes_do():
    foot = KERBED.under((mm(100), mm(400)), (mm(900), mm(400)))
    assert list(foot.points) == near(((0, mm(58)), (mm(400), mm(50)), (mm(800), mm(58))))
    assert foot.on == ("floor/shower", "floor/shower")
    assert (foot.lowest, foot.highest) == (mm(50), mm(58))
    # From the other side the same floor reads from its other end.
    back = KERBED.under((mm(700), mm(400)), (mm(100), mm(400)))
    assert list(back.points) == near(((0, mm(54)), (mm(200), mm(50)), (mm(600), mm(58))))


def test_along_a_level_line_a_foot_is_level_across_planes_that_meet():
    assert KERBED.under((mm(300), mm(100)), (mm(300), mm(900))).points == ((0, mm(54)), (mm(800), mm(54)))


def test_a_foot_that_leaves_the_shower_steps_over_the_kerb_to_the_room():
    foot = KERBED.under((mm(800), mm(400)), (mm(1300), mm(400)))
    kerb, room = mm(50 + 100), mm(22)
    assert list(foot.points) == near((
        (0, mm(56)), (mm(200), mm(60)), (mm(200), kerb), (mm(300), kerb), (mm(300), room), (mm(500), room),
    ))  # fmt: skip
    assert foot.on == ("floor/shower", *["floor/shower/kerb"] * 3, "floor")


def test_without_a_shower_it_is_the_room_s_floor():
    assert Floors(room=mm(22)).under((0, 0), (mm(900), 0)) == Foot(
        points=((0, mm(22)), (mm(900), mm(22))), on=("floor",)
    )


def test_a_line_along_a_wall_is_taken_from_the_floor_beside_it():
    foot = KERBED.under((0, mm(1000) - 1), (0, 0))
    assert foot.points == ((0, mm(60)), (mm(1000) - 1, mm(60)))


@pytest.mark.parametrize("falls", ["level", "square"])
def test_every_place_of_a_foot_lies_on_a_plane_of_the_floor(falls: str):
    asked: dict[str, Any] = yaml.safe_load(EXAMPLE.read_text(encoding="utf-8"))
    asked["rooms"][0]["floor"]["shower"]["falls"] = falls
    job = read_job_text(yaml.safe_dump(asked))
    (surveyed,) = survey_job(job, RULES).showers
    found = plan_fall(surveyed, job.tiles, RULES, job.tape, room_floor=inches(0.8415)).fall
    assert found is not None and found.drain_height is not None
    floors = Floors(room=inches(0.8415), fall=found, tray=surveyed.tray.outline or (), kerb=found.kerb or 0)
    left, low, right, high = bounds(surveyed.surface.outline)
    v = (low + high) // 2
    a, b = (left + inches(3), v), (right - inches(3), v)
    foot = floors.under(a, b)
    assert len(foot.points) > 2 and set(foot.on) == {"floor/shower"}
    for along, height_there in foot.points:
        at = (a[0] + along, v)
        over = [
            one.heights[0]
            + one.gradient[0] * (at[0] - one.ring[0][0])
            + one.gradient[1] * (at[1] - one.ring[0][1])
            for one in found.planes
        ]
        assert min(abs(found.drain_height + height - height_there) for height in over) <= 3

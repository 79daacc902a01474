import datetime

import pytest
from shapely import Polygon

from firstcourse.app import report_lines
from firstcourse.errors import JobError
from firstcourse.findings import Severity
from firstcourse.geometry import area2, bounds, rectangle
from firstcourse.job import Job
from firstcourse.plan import SideKind, SupportKind
from firstcourse.rules import load_rules
from firstcourse.survey import survey_job
from firstcourse.survey.report import report
from firstcourse.units import Tape, inches, mm
from firstcourse.words import Speaker
from said import all_said

RULES = load_rules(datetime.date(2026, 1, 5))
STUDS = {"spacing": "16 in", "first": "16 in"}


def room(**changes):
    fields = {
        "name": "bath",
        "corners": ["A", "B", "C", "D"],
        "sides": {"A-B": "96 in", "B-C": "60 in", "C-D": "96 in", "D-A": "60 in"},
        "diagonals": {"A-C": "113 3/16 in", "B-D": "113 1/4 in"},
        "height": "96 in",
        "walls": [{"wall": "A-B", "framing": STUDS}],
    }
    return {key: value for key, value in (fields | changes).items() if value is not None}


def surveyed(*rooms, tape="inch"):
    job = Job.model_validate({"name": "test", "date": datetime.date(2026, 1, 5), "tape": tape, "rooms": rooms})
    return survey_job(job, RULES)


def wall(framing=STUDS, **changes):
    result = surveyed(room(walls=[{"wall": "A-B", "framing": framing, **changes}]))
    (surface,) = result.surfaces
    return surface


def test_nearly_square_room_is_drawn_square_with_its_first_side_on_top():
    result = surveyed(room(floor={}, walls=[]))
    (floor,) = result.surfaces
    (done,) = result.rooms
    assert len(floor.outline) == 4 and area2(floor.outline) > 0
    assert bounds(floor.outline)[:2] == (0, 0)
    assert done.plan["A"][0] == 0 and done.plan["A"][1] == done.plan["B"][1] == bounds(floor.outline)[3]
    assert [side.wall for side in floor.sides] == ["C-D", "B-C", "A-B", "D-A"]
    assert all(side.kind is SideKind.PERIMETER for side in floor.sides)
    assert floor.supports[0].kind is SupportKind.PANEL


def test_out_of_square_room_keeps_its_slant():
    fields = room(floor={}, walls=[], diagonals={"A-C": "114 1/2 in", "B-D": "111 7/8 in"})
    (floor,) = surveyed(fields).surfaces
    assert any(a[0] != b[0] and a[1] != b[1] for a, b in zip(floor.outline, floor.outline[1:], strict=False))


def test_sides_alone_are_refused_with_the_diagonal_to_take():
    with pytest.raises(JobError, match="Tape the diagonal A-C") as caught:
        surveyed(room(diagonals=None))
    (problem,) = caught.value.problems
    assert "diagonals" in problem.field and "bath" in problem.field


def test_every_bad_room_is_reported_at_once():
    with pytest.raises(JobError) as caught:
        surveyed(room(diagonals=None), room(name="other", diagonals=None))
    assert len(caught.value.problems) == 2


def test_one_diagonal_leaves_corners_that_nothing_checks():
    result = surveyed(room(diagonals={"A-C": "113 3/16 in"}))
    (finding,) = [finding for finding in all_said(result.findings) if finding.code == "SUR-102"]
    assert finding.severity is Severity.FIX  # nothing checks the whole room: it is not done
    assert "B-D" in finding.remedy


def test_a_misread_inch_stops_the_work():
    result = surveyed(room(sides={"A-B": "96 in", "B-C": "60 in", "C-D": "97 in", "D-A": "60 in"}))
    (finding,) = [finding for finding in all_said(result.findings) if finding.code == "SUR-101"]
    assert finding.severity is Severity.STOP
    assert "C-D" in finding.message


def test_leaning_wall_is_reported():
    result = surveyed(room(plumb={"A-B": "1/2 in"}))
    assert [finding.code for finding in all_said(result.findings)] == ["SUR-104"]


def test_wall_stands_on_its_foot_between_its_corners():
    surface = wall()
    assert [side.kind for side in surface.sides] == [
        SideKind.FOOT,
        SideKind.PERIMETER,
        SideKind.PERIMETER,
        SideKind.PERIMETER,
    ]
    assert [side.meets.partition("/")[2] for side in surface.sides] == ["floor", "corner/B", "ceiling", "corner/A"]
    assert surface.corners == ("A", "B")
    assert surface.framing_axis == "v"
    assert bounds(surface.outline)[3] == inches(96)


def test_studs_are_where_the_job_says_with_one_at_each_end():
    studs = [s for s in wall().supports if s.kind is SupportKind.STUD]
    right = bounds(wall().outline)[2]
    assert bounds(studs[0].outline)[0] == 0
    assert bounds(studs[1].outline)[0] == inches(16) - inches(0.75)
    assert bounds(studs[-1].outline)[2] == right
    found = wall({"members": [{"at": "10 in"}, {"at": "30 in", "width": "3 in"}], "plates": False})
    assert [bounds(s.outline)[::2] for s in found.supports] == [
        (inches(9.25), inches(10.75)),
        (inches(28.5), inches(31.5)),
    ]


def test_studs_and_plates_follow_a_sloping_top():
    fields = room(height=None, heights={"A": "96 in", "B": "84 in", "C": "84 in", "D": "96 in"})
    (surface,) = surveyed(fields).surfaces
    extent = Polygon(surface.extent)
    assert len(surface.outline) == 4
    tops = [bounds(s.outline)[3] for s in surface.supports if s.kind is SupportKind.STUD]
    assert tops == sorted(tops, reverse=True) and tops[0] > inches(95) and tops[-1] < inches(84.5)
    for support in surface.supports:
        assert extent.buffer(2).covers(Polygon(support.outline))


def test_floor_out_of_level_lifts_the_wall_s_foot():
    (surface,) = surveyed(room(levels={"B": "1/2 in"})).surfaces
    assert surface.extent[0] == (0, 0)
    assert surface.extent[1][1] == inches(0.5)
    assert surface.extent[2][1] == inches(96.5)


def test_heights_within_a_mark_are_drawn_level_and_never_higher():
    fields = room(height=None, heights={"A": "96 in", "B": "95 31/32 in", "C": "96 in", "D": "96 in"})
    (surface,) = surveyed(fields).surfaces
    assert surface.extent[2][1] == surface.extent[3][1] == inches(95) + inches(31 / 32)


def test_tub_surround_stops_where_asked():
    surface = wall(boards={"bottom": "15 in", "top": "75 in", "right": "32 in"}, foot="tub")
    assert surface.outline == rectangle(0, inches(15), inches(32), inches(75))
    assert [side.kind for side in surface.sides] == [
        SideKind.FOOT,
        SideKind.FREE,
        SideKind.FREE,
        SideKind.PERIMETER,
    ]
    assert bounds(surface.extent)[3] == inches(96)


def test_no_fastener_just_above_a_tray():
    surface = wall(foot="tray", boards={"bottom": "4 in"})
    (zone,) = surface.no_fastener_zones
    assert bounds(zone.outline)[1::2] == (inches(4), inches(4) + RULES.ticks("fastening.no_fastener_above_tray"))


def test_openings_off_the_boarded_part_are_left_out():
    window = {"id": "w", "kind": "window", "left": "30 in", "bottom": "75 in", "width": "20 in", "height": "15 in"}
    valve = {"id": "v", "kind": "valve", "left": "30 in", "bottom": "40 in", "diameter": "3 in"}
    surface = wall(boards={"top": "75 in"}, openings=[window, valve])
    assert [opening.id for opening in surface.openings] == ["v"]
    assert surface.openings[0].centre == (inches(30), inches(40))


@pytest.mark.parametrize(
    ("opening", "message"),
    [
        ({"left": "90 in", "bottom": "10 in", "width": "20 in", "height": "10 in"}, "partly outside"),
        ({"points": [["0 in", "0 in"], ["9 in", "9 in"], ["9 in", "0 in"], ["0 in", "9 in"]]}, "crosses itself"),
    ],
)
def test_openings_that_cannot_be_are_refused(opening, message):
    with pytest.raises(JobError, match=message) as caught:
        wall(openings=[{"id": "x", "kind": "other", **opening}])
    assert caught.value.problems[0].field == "rooms[1].walls[1].openings[1] (bath)"


@pytest.mark.parametrize(
    "framing",
    [
        {"spacing": "1 in", "first": "1 in"},
        {"spacing": "0.02 in", "first": "1 in", "width": "0.01 in"},
        {"members": [{"at": "200 in"}]},
    ],
    ids=["overlap", "past counting", "outside"],
)
def test_studs_that_cannot_be_are_refused(framing):
    with pytest.raises(JobError, match="stud"):
        wall(framing)


def test_a_wall_narrower_than_its_first_stud_still_has_end_studs():
    fields = room(
        sides={"A-B": "12 in", "B-C": "60 in", "C-D": "12 in", "D-A": "60 in"},
        diagonals={"A-C": "61 3/16 in", "B-D": "61 3/16 in"},
    )
    (surface,) = surveyed(fields).surfaces
    assert len([s for s in surface.supports if s.kind is SupportKind.STUD]) == 2


def floor(**changes):
    (surface,) = surveyed(room(floor=changes, walls=[])).surfaces
    return surface


def test_joists_run_along_their_side():
    framing = {"parallel_to": "B-C", "spacing": "16 in", "first": "8 in"}
    surface = floor(framing=framing, panel_screws={"spacing": "12 in", "first": "6 in"})
    joists = [s for s in surface.supports if s.kind is SupportKind.JOIST]
    right, upper = bounds(surface.outline)[2:]
    assert surface.framing_axis == "v"
    assert len(joists) == 6
    assert max(bounds(s.outline)[2] for s in joists) == right - inches(8) + inches(0.75)
    assert len(surface.panel_screws) == 6 * 5
    assert (right - inches(8), upper - inches(6)) in surface.panel_screws


def test_floor_things_are_placed_from_their_side_into_the_room():
    drain = {"id": "d", "kind": "drain", "side": "B-C", "left": "30 in", "out": "20 in", "diameter": "4 in"}
    tub = {"id": "t", "kind": "tub", "left": "0 in", "out": "0 in", "width": "30 in", "depth": "50 in"}
    surface = floor(openings=[drain, tub])
    right, upper = bounds(surface.outline)[2:]
    assert surface.openings[0].centre == (right - inches(20), upper - inches(30))
    assert bounds(surface.openings[1].outline) == (0, upper - inches(50), inches(30), upper)
    assert area2(surface.openings[1].outline) > 0


def test_panel_joints_cross_the_floor_or_a_stretch_of_it():
    whole = {"parallel_to": "A-B", "out": "24 in"}
    part = {"parallel_to": "B-C", "out": "48 in", "left": "0 in", "right": "24 in"}
    surface = floor(panel_joints=[whole, part])
    right, upper = bounds(surface.outline)[2:]
    assert surface.panel_joints == (
        ((0, upper - inches(24)), (right, upper - inches(24))),
        ((right - inches(48), upper - inches(24)), (right - inches(48), upper)),
    )


@pytest.mark.parametrize(
    ("fields", "message"),
    [
        (
            {"openings": [{"id": "d", "kind": "drain", "left": "30 in", "out": "90 in", "diameter": "4 in"}]},
            "outside",
        ),
        ({"panel_joints": [{"parallel_to": "A-B", "out": "90 in"}]}, "outside"),
        ({"framing": {"parallel_to": "A-B", "spacing": "1 in", "first": "1 in"}}, "joists"),
        (
            {
                "framing": {"parallel_to": "A-B", "spacing": "16 in", "first": "8 in"},
                "panel_screws": {"spacing": "0.001 in", "first": "0 in"},
            },
            "past counting",
        ),
        (
            {
                "framing": {"parallel_to": "A-B", "spacing": "3 in", "first": "2 in"},
                "panel_screws": {"spacing": "0.05 in", "first": "0 in"},
            },
            "past counting",
        ),
    ],
)
def test_floor_things_that_cannot_be_are_refused(fields, message):
    with pytest.raises(JobError, match=message) as caught:
        floor(**fields)
    where = ".floor.openings[1]" if "openings" in fields else ""
    assert caught.value.problems[0].field == f"rooms[1]{where} (bath)"


def test_ceiling_is_the_floor_s_mirror_image():
    hole = {"id": "fan", "kind": "other", "left": "20 in", "out": "10 in", "diameter": "8 in"}
    framing = {"parallel_to": "B-C", "spacing": "16 in", "first": "8 in"}
    fields = room(
        floor={"openings": [hole]},
        ceiling={"framing": framing, "openings": [hole]},
        walls=[],
        diagonals={"A-C": "114 1/2 in", "B-D": "111 7/8 in"},
    )
    below, above = surveyed(fields).surfaces
    width = bounds(below.outline)[2]
    assert area2(above.outline) == area2(below.outline)
    assert {(width - u, v) for u, v in above.outline} == set(below.outline)
    assert above.openings[0].centre == (width - below.openings[0].centre[0], below.openings[0].centre[1])
    lengths = {
        side.wall: round(((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2) ** 0.5)
        for side, a, b in zip(above.sides, above.outline, above.outline[1:] + above.outline[:1], strict=True)
    }
    for side, a, b in zip(below.sides, below.outline, below.outline[1:] + below.outline[:1], strict=True):
        assert lengths[side.wall] == round(((b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2) ** 0.5)


def test_joists_reach_the_floor_behind_their_side():
    fields = {
        "name": "ell",
        "corners": list("ABCDEF"),
        "sides": {
            "A-B": "2400 mm",
            "B-C": "1500 mm",
            "C-D": "1200 mm",
            "D-E": "1100 mm",
            "E-F": "1200 mm",
            "F-A": "2600 mm",
        },
        "diagonals": {"A-C": "2830 mm", "A-D": "1921 mm", "D-F": "1628 mm", "B-D": "1921 mm", "A-E": "2864 mm"},
        "floor": {"framing": {"parallel_to": "C-D", "spacing": "400 mm", "first": "200 mm"}},
    }
    result = surveyed(fields, tape="mm")
    (surface,) = result.surfaces
    lower = min(bounds(s.outline)[1] for s in surface.supports if s.kind is SupportKind.JOIST)
    assert lower < mm(400)
    assert len(surface.outline) == 6
    assert not [finding for finding in all_said(result.findings) if finding.severity is Severity.STOP]


def test_the_same_job_gives_the_same_survey():
    assert surveyed(room(floor={})) == surveyed(room(floor={}))


@pytest.mark.parametrize("tape", list(Tape))
def test_report_names_every_corner_and_reading(tape):
    (done,) = surveyed(room()).rooms
    text = "\n".join(report_lines(done, Speaker("us", tape)))
    for name in ("A-B", "B-D", "held"):
        assert name in text
    fields = report(done)
    assert fields.freedom == 1
    assert fields.area_m2 == pytest.approx(96 * 60 * 0.0254**2, rel=2e-3)
    assert [reading.name for reading in fields.readings] == ["A-B", "B-C", "C-D", "D-A", "A-C", "B-D"]

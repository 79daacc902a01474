"""A shower floor from the job to the plan: where it lies, how it falls, and what is said when it cannot."""

import datetime
from typing import Any

import pytest
import yaml

from firstcourse.errors import JobError
from firstcourse.findings import Severity
from firstcourse.job import read_job_text
from firstcourse.layers import combed_mortar
from firstcourse.plan import OpeningKind
from firstcourse.rules import load_rules
from firstcourse.showers.shower_floor import FallResult, plan_fall
from firstcourse.survey import survey_job
from firstcourse.units import Tape, inches, mm
from said import all_said

TILES = [{"id": "mosaic", "size": ["2 in", "2 in"], "thickness": "1/4 in", "joint": "1/8 in"},
         {"id": "big", "size": ["12 in", "12 in"], "thickness": "3/8 in", "joint": "1/8 in"}]  # fmt: skip
KERB = {"height": "4 in", "width": "5 in"}


def job_text(shower: dict[str, Any], practice: str = "us", length: str = "96 in", width: str = "66 in") -> str:
    return yaml.safe_dump(
        {
            "name": "a shower", "practice": practice, "date": "2026-11-25",
            "tape": "inch" if practice == "us" else "mm",
            "stock": [{"id": "b", "size": ["36 in", "60 in"], "thickness": "1/4 in"}],
            "tiles": TILES,
            "rooms": [
                {
                    "name": "bath", "corners": ["A", "B", "C", "D"],
                    "sides": {"A-B": length, "B-C": width, "C-D": length, "D-A": width},
                    "diagonals": {}, "height": "96 in", "floor": {"shower": shower},
                }
            ],
        }
    )  # fmt: skip


def squared(text: str) -> str:
    """The same job with its room fixed by a diagonal."""
    job = yaml.safe_load(text)
    room = job["rooms"][0]
    numbers = [float(room["sides"][pair].split()[0]) for pair in ("A-B", "B-C")]
    unit = room["sides"]["A-B"].split()[1]
    diagonal = (numbers[0] ** 2 + numbers[1] ** 2) ** 0.5
    room["diagonals"] = {"A-C": f"{round(diagonal * 128) / 128 if unit == 'in' else round(diagonal)} {unit}"}
    return yaml.safe_dump(job)


def planned(shower: dict[str, Any], practice: str = "us", **room: str) -> FallResult:
    job = read_job_text(squared(job_text(shower, practice, **room)))
    rules = load_rules(datetime.date(2026, 11, 25), practice)
    (surveyed,) = survey_job(job, rules).showers
    return plan_fall(surveyed, job.tiles, rules, job.tape)


def codes(result: FallResult) -> list[str]:
    return [finding.code for finding in all_said(result.findings)]


def shower(width: str = "48 in", depth: str = "36 in", **more: Any) -> dict[str, Any]:
    return {
        "left": "0 in", "out": "0 in", "width": width, "depth": depth,
        "drain": {"left": "24 in", "out": "18 in"}, "kerb": KERB, **more,
    }  # fmt: skip


def test_the_boards_stop_at_the_kerb_and_the_bed_is_a_surface_of_its_own():
    job = read_job_text(squared(job_text(shower())))
    survey = survey_job(job, load_rules(job.date))
    (found,) = survey.showers
    assert sum(side.is_kerb for side in found.surface.sides) == 2
    assert {side.wall for side in found.surface.sides} == {"", "A-B", "D-A"}
    assert not found.surface.boarded
    (tray,) = [opening for opening in survey.surfaces[0].openings if opening.kind is OpeningKind.TRAY]
    assert tray.outline is not None
    assert max(u for u, _ in tray.outline) - min(u for u, _ in tray.outline) == inches(53)
    assert found.place(found.drain[0]) == pytest.approx((inches(24), inches(18)))


def test_a_usual_shower_has_nothing_to_say_and_rises_to_the_tape():
    result = planned(shower(kerb={**KERB, "entry": "24 in"}, tiling={"tile": "mosaic"}))
    assert all_said(result.findings) == ()
    fall = result.fall
    assert fall is not None
    assert fall.rise % Tape.INCH.graduation == 0
    assert {level.height for level in fall.levels} == {fall.rise}
    assert fall.least_fall >= 0.0208333
    assert fall.greatest_fall <= 0.0416667
    assert len(fall.valleys) == 4
    assert fall.flood_test.depth == inches(2)
    assert fall.flood_test.level == fall.rise - fall.membrane_below + inches(2)
    assert fall.bed_litres == pytest.approx(
        48 * 36 * 25.4**2 * (1.25 * 25.4 + fall.rise / 640 * 2 / 3) / 1e6, rel=1e-4
    )


def test_a_bed_over_a_liner_is_even_and_the_slope_below_falls():
    fall = planned(shower(membrane="liner")).fall
    assert fall is not None
    assert fall.bed_litres == pytest.approx(48 * 36 * 1.5 * 25.4**3 / 1e6, rel=1e-4)
    assert fall.pre_slope_litres == pytest.approx(
        48 * 36 * 25.4**2 * (0.5 * 25.4 + fall.rise / 640 * 2 / 3) / 1e6, rel=1e-4
    )


def test_1800_by_900_in_australia_says_what_would_do():
    area = {"left": "0 mm", "out": "0 mm", "width": "1800 mm", "depth": "900 mm"}
    asked = {**area, "drain": {"left": "900 mm", "out": "450 mm"}, "kerb": {"height": "80 mm", "width": "100 mm"}}
    result = planned(asked, "au", length="2600 mm", width="1800 mm")
    (finding,) = [found for found in all_said(result.findings, Tape.MM) if found.code == "FAL-103"]
    assert finding.severity is Severity.STOP
    assert finding.limit == "at most 1:50"
    assert "the longest plane needs 11 mm" in finding.message
    assert "allows 9 mm" in finding.message
    assert "falls: square" in finding.remedy
    assert "linear drain along the whole of wall" in finding.remedy
    assert result.fall is not None
    assert result.fall.least_plane_fall >= 1 / 80
    assert codes(planned({**asked, "falls": "square"}, "au", length="2600 mm", width="1800 mm")) == []


def test_a_drain_too_far_to_a_side_is_told_where_to_go():
    result = planned(shower(drain={"left": "8 in", "out": "18 in"}))
    (finding,) = [found for found in all_said(result.findings) if found.code == "FAL-103"]
    assert finding.remedy.startswith("Move the drain to 1' 4\" along and 1' 6\" out.")


def test_60_by_32_keeps_the_planes_and_notes_the_valleys():
    result = planned(shower("60 in", "32 in", drain={"left": "30 in", "out": "16 in"}))
    assert codes(result) == ["FAL-104"]
    assert all_said(result.findings)[0].severity is Severity.NOTE


def test_a_drain_round_a_corner_is_refused_with_a_place_that_does():
    points = [["0 in", "0 in"], ["60 in", "0 in"], ["60 in", "36 in"], ["36 in", "36 in"], ["36 in", "60 in"],
              ["0 in", "60 in"]]  # fmt: skip
    asked = {"points": points, "drain": {"left": "50 in", "out": "30 in"}, "kerb": KERB}
    result = planned(asked)
    assert result.fall is None
    assert codes(result) == ["FAL-101"]
    assert "Move the drain to" in all_said(result.findings)[0].remedy


def test_a_short_linear_drain_lets_water_stand():
    asked = shower(drain={"ends": [["4 in", "0 in"], ["44 in", "0 in"]]}, falls="single")
    result = planned(asked)
    assert "FAL-102" in codes(result)
    whole = planned(shower(drain={"along": "A-B"}, falls="single", tiling={"tile": "big"}))
    assert all_said(whole.findings) == ()
    assert whole.fall is not None
    assert whole.fall.largest_tile is None
    assert len(whole.fall.planes) == 1


@pytest.mark.parametrize(
    ("more", "code"),
    [
        ({"kerb": {"height": "1 1/2 in", "width": "5 in"}}, "FAL-201"),
        ({"kerb": {"height": "10 in", "width": "5 in"}}, "FAL-201"),
        ({"kerb": {"height": "1/2 in", "width": "5 in"}}, "FAL-202"),
        ({"kerb": {**KERB, "entry": "20 in"}}, "FAL-213"),
        ({"width": "28 in", "drain": {"left": "14 in", "out": "18 in"}}, "FAL-212"),
        ({"width": "24 in", "drain": {"left": "12 in", "out": "18 in"}}, "FAL-211"),
        ({"shelves": [{"id": "bench", "depth": "12 in", "drop": "1/8 in"}]}, "FAL-221"),
        ({"shelves": [{"id": "bench", "depth": "12 in", "drop": "1 in"}]}, "FAL-221"),
        ({"tiling": {"tile": "big"}}, "FAL-301"),
    ],
)
def test_what_breaks_a_rule_is_said(more, code):
    result = planned(shower(**more))
    (finding,) = [found for found in all_said(result.findings) if found.code == code]
    assert finding.remedy
    assert finding.rule or code == "FAL-202"
    (metric,) = [found for found in all_said(result.findings, Tape.MM) if found.code == code]
    assert '"' not in metric.measured and " in" not in metric.measured


def test_a_recess_holds_rise_bed_and_tile():
    asked = shower(tiling={"tile": "mosaic"})
    del asked["kerb"]
    shallow = planned({**asked, "recess": "1 in"})
    assert codes(shallow) == ["FAL-203"]
    assert "/" not in all_said(shallow.findings)[0].where
    fall = shallow.fall
    assert fall is not None
    assert fall.recess is not None
    least = (
        fall.rise
        + inches(1.25 + 0.25)
        + combed_mortar(inches(2), load_rules(datetime.date(2026, 11, 25))).thickness
    )
    assert least <= fall.recess < least + Tape.INCH.graduation
    assert fall.flood_test.dam
    assert codes(planned({**asked, "recess": "3 in"})) == []


def test_an_open_side_beside_a_linear_drain_is_not_level():
    asked = shower(drain={"along": "A-B"}, falls="single")
    del asked["kerb"]
    assert "FAL-204" in codes(planned({**asked, "recess": "4 in"}))


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"drain": {"left": "60 in", "out": "18 in"}}, "beside the shower floor"),
        ({"drain": {"left": "20 in", "out": "40 in"}}, "before or behind"),
        ({"drain": {"left": "20 in"}}, "left and out go together"),
        ({"drain": {"along": "A-C"}}, "not a side of this room"),
        ({"drain": {"along": "B-C"}}, "no side there"),
        ({"drain": {"left": "20 in", "out": "18 in", "width": "3 in"}}, "belongs to a linear drain"),
        ({"falls": "single"}, "goes to a linear drain"),
        ({"recess": "3 in"}, "give a kerb, or"),
        ({"pre_slope": "1 in"}, "lies under a liner"),
        ({"side": "A-C"}, "not a side of this room"),
        ({"left": "60 in", "drain": {"left": "80 in", "out": "18 in"}}, "reaches out of bath"),
        ({"tiling": {"tile": "none"}}, "not one of the job's tiles"),
        ({"shelves": [{"id": "a", "depth": "2 in", "drop": "2 in"}]}, "as much as it is deep"),
    ],
)
def test_what_cannot_be_is_refused_with_a_word_that_helps(change, message):
    with pytest.raises(JobError, match=message):
        planned(shower(**change))


def test_without_limits_by_code_uk_showers_are_not_measured_for_size():
    asked = shower(
        "600 mm", "600 mm", drain={"left": "300 mm", "out": "300 mm"}, kerb={"height": "40 mm", "width": "100 mm"}
    )
    assert codes(planned(asked, "uk", length="2600 mm", width="1800 mm")) == []
    assert mm(40) == 40 * 640


def test_points_of_a_valley_are_measured_from_the_drain_towards_its_corner():
    fall = planned(shower()).fall
    assert fall is not None
    drain, *middles = fall.valley_levels
    assert drain.kind == "drain"
    assert {(point.kind, point.along) for point in middles} == {("valley", inches(15))}
    assert [point.between for point in middles] == [(5, 2), (5, 1), (5, 3), (5, 4)]
    assert {2 * point.height for point in fall.valley_levels[1:]} == {fall.rise}


def test_a_valley_on_a_drain_in_a_corner_needs_no_second_point_there():
    fall = planned(shower(drain={"left": "0 in", "out": "0 in"}, falls="square")).fall
    assert fall is not None
    assert len({point.at for point in (*fall.levels, *fall.valley_levels)}) == len(fall.levels) + len(
        fall.valley_levels
    )


def test_a_linear_drain_has_a_point_at_each_end_and_on_each_valley():
    fall = planned(shower(drain={"ends": [["12 in", "18 in"], ["36 in", "18 in"]]})).fall
    assert fall is not None
    assert [point.kind for point in fall.valley_levels].count("drain") == 2
    assert all(point.kind == "valley" or point.height == 0 for point in fall.valley_levels)

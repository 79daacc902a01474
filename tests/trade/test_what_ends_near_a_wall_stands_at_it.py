"""A tub, cabinet or bench taped a little short of a wall left a crack of floor or an untiled end beside it.

What ends near a wall stands at it and is told with the distance, as a shower floor does; a wider gap that is too
narrow for a floor is told.
"""

from typing import Any

import pytest
import yaml
from shapely import Polygon

from firstcourse.job import Job, read_job_text
from firstcourse.plan import Plan
from firstcourse.rules import load_rules
from firstcourse.steps import plan_job
from firstcourse.survey import SurveyResult, survey_job
from firstcourse.units import inches
from proving import verify_text
from said import all_said


def job_of(**told: Any) -> Job:
    """A room 60 by 96 in; openings of its floor, benches and openings of wall A-B."""
    framing = {"spacing": "16 in", "first": "16 in"}
    room: dict[str, Any] = {
        "name": "bath",
        "corners": ["A", "B", "C", "D"],
        "sides": {"A-B": "60 in", "B-C": "96 in", "C-D": "60 in", "D-A": "96 in"},
        "diagonals": {"A-C": "113 3/16 in", "B-D": "113 3/16 in"},
        "height": "96 in",
        "floor": {"framing": {"parallel_to": "A-B", **framing}, "openings": told.get("floor", [])},
        "walls": [
            {
                "wall": "A-B",
                "framing": framing,
                "openings": told.get("wall", []),
                "tiling": {"tile": "t"},
                "niches": told.get("niches", []),
            }
        ],
        "benches": told.get("benches", []),
    }
    if not room["walls"][0]["niches"]:
        del room["walls"][0]["niches"]
    return read_job_text(
        yaml.safe_dump(
            {
                "name": "near walls",
                "practice": "us",
                "date": "2026-11-25",
                "tape": "inch",
                "stock": [{"id": "b", "size": ["36 in", "60 in"], "thickness": "1/2 in"}],
                "tiles": [{"id": "t", "size": ["8 in", "4 in"], "thickness": "5/16 in", "joint": "1/8 in"}],
                "rooms": [room],
            }
        )
    )


def surveyed(**told: Any) -> SurveyResult:
    job = job_of(**told)
    return survey_job(job, load_rules(job.date, job.practice, ()))


def planned(**told: Any) -> Plan:
    done = plan_job(job_of(**told), effort=0)
    assert not verify_text(done.document).objections
    return done.plan


def thing(kind: str, left: str, width: str) -> dict[str, Any]:
    return {"id": kind, "kind": kind, "side": "A-B", "left": left, "out": "0 in", "width": width, "depth": "30 in"}


@pytest.mark.parametrize("kind", ["tub", "tray", "cabinet", "other"])
def test_what_stands_near_a_wall_stands_at_it_and_is_told(kind: str) -> None:
    found = surveyed(floor=[thing(kind, "1/2 in", "58 3/4 in")])
    floor = next(surface for surface in found.surfaces if surface.id == "bath/floor")
    assert floor.openings[0].outline is not None
    assert Polygon(floor.openings[0].outline).area == pytest.approx(inches(60) * inches(30), rel=1e-3)
    told = {(f.where, f.measured) for f in all_said(found.findings) if f.code == "SUR-106"}
    assert told == {("bath: wall D-A", '1/2"'), ("bath: wall B-C", '3/4"')}


def test_a_gap_beside_a_tub_is_told_with_its_width() -> None:
    found = surveyed(floor=[thing("tub", "0 in", "57 1/2 in")])
    (gap,) = (f for f in all_said(found.findings) if f.code == "SUR-107")
    assert (gap.where, gap.measured) == ("bath: wall B-C", '2-1/2"') and "tub" in gap.message
    assert not [
        f
        for f in all_said(surveyed(floor=[thing("tub", "0 in", "50 in")]).findings)
        if f.code in ("SUR-106", "SUR-107")
    ]


def test_a_column_and_a_thin_panel_stay_where_they_are() -> None:
    panel = thing("other", "20 in", "10 in") | {"out": "1/2 in", "depth": "3/4 in"}
    column = thing("column", "1/2 in", "10 in") | {"out": "40 in"}
    floor = next(s for s in surveyed(floor=[panel, column]).surfaces if s.id == "bath/floor")
    low = [min(u for u, _ in opening.outline or ()) for opening in floor.openings]
    assert low == [inches(20), inches(0.5)]


def test_a_bench_that_ends_near_a_wall_is_tiled_to_it() -> None:
    bench = {"id": "bench", "wall": "A-B", "left": "1/2 in", "width": "36 in", "depth": "15 in", "height": "18 in",
             "tile": "t"}  # fmt: skip
    plan = planned(benches=[bench])
    top = next(surface for surface in plan.surfaces if surface.id == "bath/bench/bench/top")
    assert max(u for u, _ in top.outline) - min(u for u, _ in top.outline) == pytest.approx(
        inches(36.5), abs=inches(1)
    )
    (finding,) = (f for f in all_said(plan.findings) if f.code == "SUR-106")
    assert (finding.where, finding.measured) == ("bath: wall D-A", '1/2"')
    exact = planned(benches=[bench | {"left": "0 in", "width": "36 1/2 in"}])
    assert [s.outline for s in exact.surfaces] == [s.outline for s in plan.surfaces]


def test_a_niche_that_ends_near_a_wall_ends_at_it() -> None:
    niche = {"id": "shelf", "kind": "niche", "left": "3/4 in", "bottom": "48 in", "width": "14 1/2 in",
             "height": "12 in"}  # fmt: skip
    plan = planned(wall=[niche])
    wall = next(surface for surface in plan.surfaces if surface.id == "bath/wall/A-B")
    assert wall.openings[0].outline is not None
    assert min(u for u, _ in wall.openings[0].outline) == 0
    (finding,) = (f for f in all_said(plan.findings) if f.code == "SUR-106")
    assert (finding.where, finding.measured) == ("bath: wall D-A", '3/4"')

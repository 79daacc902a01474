"""The first plan that anybody sees read "not judged": the demo's job had no joists, studs, panels or readings."""

from pathlib import Path

from example_plans import plan_of
from firstcourse.cli.demo import EXAMPLE, example_job
from firstcourse.findings import Severity
from firstcourse.job import read_job
from said import all_said


def test_everything_that_can_be_judged_is_told_of() -> None:
    (room,) = read_job(example_job(EXAMPLE)).rooms
    floor = room.floor
    assert floor is not None and floor.joists is not None and floor.panels is not None and floor.tile is not None
    assert floor.spots and floor.doorways and floor.exposure is not None
    assert room.walls and all(wall.studs is not None and wall.exposure is not None for wall in room.walls)
    assert {"niche", "valve"} <= {opening.kind for wall in room.walls for opening in wall.openings}


def test_its_first_page_says_neither_stop_nor_not_judged() -> None:
    findings = all_said(plan_of(EXAMPLE).findings)
    assert findings and not [f for f in findings if f.severity is Severity.STOP]
    assert not [f for f in findings if f.code == "SUI-910" or "not judged" in f.message.lower()]
    assert plan_of(EXAMPLE).structures


def test_the_readme_says_whose_job_it_is_before_the_commands() -> None:
    text = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")
    first = text.split("\n\n")[1]
    assert first.startswith("A tile contractor") and "Firstcourse" in first
    assert text.split("\n\n")[2].split("\n")[1:3] == ["./run demo", "./run test"]

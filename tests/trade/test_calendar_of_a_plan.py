"""Nothing said on which days a plan is built, what has to set before the next step, or what must be seen first."""

import copy
import io
import json
from functools import cache

import pypdf
import pytest

import firstcourse
from example_plans import EXAMPLES, plan_of
from firstcourse.app import schedule_lines
from firstcourse.errors import JobError
from firstcourse.papers.calendar_file import calendar_file
from firstcourse.papers.schedule_pack import schedule_pack
from firstcourse.verify.at_once import at_once
from firstcourse.verify.calendar import check_calendar
from firstcourse.verify.fields import FieldError
from firstcourse.verify.reading import read_document
from proving import verify

ASKED = "\nschedule:\n  starts: 2026-03-02\n  holidays: [2026-03-06]\n  hands: 2\n"


def planned(extra: str = "", name: str = "tiled-shower"):
    text = (EXAMPLES / name / "job.yaml").read_text(encoding="utf-8")
    return firstcourse.Session(text + ASKED + extra).plan(effort=0)


@cache
def usual():
    return planned()


def test_a_job_that_asks_for_no_calendar_has_none():
    assert "schedule" not in json.loads(plan_of("tub-bathroom").model_dump_json(by_alias=True))


def test_what_must_be_seen_is_seen_before_it_is_covered():
    calendar = usual().plan.schedule
    at = {task.kind: task for task in calendar.tasks}
    for hold in ("framing_seen", "nail_plates", "drain_test", "flood_test"):
        assert at[hold].hold
        assert at[hold].ends <= at["boards"].starts
    assert at["glass_measure"].hold and at["glass_measure"].starts >= at["grout"].ends
    # The liner sets for a day, stands full for a day, and nobody looks at it on a holiday.
    assert at["fill"].starts >= "2026-03-03" and at["flood_test"].starts >= "2026-03-04"
    assert not [task.id for task in calendar.tasks if task.minutes and task.starts.startswith("2026-03-06")]


def test_the_cold_makes_what_sets_with_cement_slower():
    def wait(plan, rule):
        return next(wait for wait in plan.schedule.waits if wait.rule == rule)

    cold = planned("  temperature: 52 F\n").plan
    assert wait(usual().plan, "schedule.wait.standard").minutes == 48 * 60
    assert wait(cold, "schedule.wait.standard").minutes == 2 * 48 * 60
    assert wait(cold, "schedule.wait.liner").minutes == wait(usual().plan, "schedule.wait.liner").minutes
    assert cold.schedule.ends > usual().plan.schedule.ends
    with pytest.raises(JobError, match=r"schedule\.temperature: 40 F is colder than 50 F"):
        planned("  temperature: 40 F\n")


def test_tile_that_comes_on_its_last_day_moves_nothing_and_a_day_later_does():
    calendar = usual().plan.schedule
    late = {(delay.cause, delay.days): delay for delay in calendar.delays}
    assert planned(f"  tile_arrives: {calendar.tile_by}\n").plan.schedule.ends == calendar.ends
    assert late["tile_late", 10].ends > late["tile_late", 5].ends > calendar.ends
    assert late["tile_late", 5].shift >= 5
    assert any(cause == "test_fails" and delay.ends > calendar.ends for (cause, _), delay in late.items())


def changes(value, path=()):
    """Each number, text or flag of a calendar with its path."""
    if isinstance(value, dict):
        for key, item in value.items():
            yield from changes(item, (*path, key))
    elif isinstance(value, list):
        for place, item in enumerate(value):
            yield from changes(item, (*path, place))
    else:
        yield path, value


def test_no_part_of_a_calendar_can_be_changed_unnoticed():
    document = json.loads(usual().document)
    seen, tried = set(), 0
    for path, value in changes(document["schedule"]):
        # One of each kind of field: of a list of alike rows the first and one more.
        kind = tuple(step for step in path if isinstance(step, str))
        if (kind, value) in seen or sum(kind == known for known, _ in seen) >= 2:
            continue
        seen.add((kind, value))
        forged = copy.copy(document)
        forged["schedule"] = copy.deepcopy(document["schedule"])
        place = forged["schedule"]
        for step in path[:-1]:
            place = place[step]
        if isinstance(value, bool):
            place[path[-1]] = not value
        elif isinstance(value, str):
            place[path[-1]] = {"2": "2027" + value[4:]}.get(value[:1], value + "x")
        else:
            place[path[-1]] = value + 1
        tried += 1
        assert objections(forged), path
    assert tried > 40


def objections(document):
    plan = read_document(document, do=at_once)
    try:
        return [one.code for one in check_calendar(plan)]
    except FieldError as error:
        return [error.where]


@pytest.mark.parametrize("part", ["schedule", "given"])
def test_a_calendar_is_there_just_where_it_is_asked_for(part):
    document = json.loads(usual().document)
    if part == "schedule":
        del document["schedule"]
    else:
        del document["given"]["job"]["schedule"]
    assert "VER-201" in {one.code for one in verify(document).objections}


@pytest.mark.parametrize(
    ("field", "value", "said"),
    [
        ("starts", "soon", "schedule.starts"),
        ("hands", "0", "schedule.hands"),
        ("days", "[mon, mon]", "names a day twice"),
        ("temperature", "20", "is not a temperature with its unit"),
        ("temperature", "300 F", "no temperature of a room"),
        ("tile_arrives", "9999-12-31", "schedule.tile_arrives"),
    ],
)
def test_what_cannot_be_is_refused_in_one_message(field, value, said):
    text = (EXAMPLES / "tub-bathroom" / "job.yaml").read_text(encoding="utf-8")
    starts = "" if field == "starts" else "  starts: 2026-03-02\n"
    with pytest.raises(JobError, match=said):
        firstcourse.Session(f"{text}\nschedule:\n{starts}  {field}: {value}\n")


def test_papers_of_a_calendar_say_all_of_it_in_both_tongues():
    plan = usual().plan
    for tongue, seen in (("en", "Flood test holds"), ("es", "La prueba de agua aguanta")):
        told = plan.model_copy(update={"job": plan.job.model_copy(update={"tongue": tongue})})
        lines = "\n".join(schedule_lines(told, plan.schedule))
        assert seen in lines and plan.schedule.ends.replace("T", " ") in lines
        pages = pypdf.PdfReader(io.BytesIO(schedule_pack(told, plan.schedule, "letter"))).pages
        assert seen in " ".join(page.extract_text() for page in pages).replace("\n", " ")


def test_a_file_for_calendars_is_the_same_each_time_and_keeps_its_ids():
    pytest.importorskip("icalendar")
    plan, moved = usual().plan, planned("  tile_arrives: 2026-04-01\n").plan
    file = calendar_file(plan, plan.schedule)
    assert file == calendar_file(plan, plan.schedule) and file.count(b"\r\n") == file.count(b"\n")
    ids = [line for line in file.splitlines() if line.startswith(b"UID:")]
    later = calendar_file(moved, moved.schedule)
    assert len(set(ids)) == len(ids) == len(plan.schedule.tasks) - 1
    assert ids == [line for line in later.splitlines() if line.startswith(b"UID:")] and later != file


def test_a_job_that_says_no_first_day_is_told_what_to_enter():
    with pytest.raises(JobError, match=r"schedule: is not given; enter it with starts"):
        firstcourse.open(EXAMPLES / "tub-bathroom" / "job.yaml").schedule()

"""The calendar as a file that calendars on phones and desks read (RFC 5545), ids and bytes always the same."""

import datetime
import hashlib

from firstcourse.papers.schedule_pack import task_name
from firstcourse.plan import Plan, Schedule
from firstcourse.words import speaker_for


def calendar_file(plan: Plan, calendar: Schedule) -> bytes:
    """An `.ics` file with one entry for each task and hold point; times are local, without a zone.

    An entry's id depends on the job's name and the task's id alone, so that a later calendar moves the entries of
    an earlier one instead of doubling them. The stamp of all of them is the day for which the rules are read.

    Args:
        plan: A verified plan.
        calendar: Its calendar.
    """
    import icalendar

    speaker = speaker_for(plan)
    stamped = datetime.datetime.combine(datetime.date.fromisoformat(plan.job.date), datetime.time(), datetime.UTC)
    file = icalendar.Calendar()
    file.add("prodid", "-//Firstcourse//calendar//EN")
    file.add("version", "2.0")
    for task in calendar.tasks:
        if task.kind == "tile_here":
            continue
        known = hashlib.sha256(f"{plan.job.name}\n{task.id}".encode()).hexdigest()
        event = icalendar.Event()
        event.add("uid", f"{known[:32]}@firstcourse")
        event.add("dtstamp", stamped)
        event.add("dtstart", datetime.datetime.fromisoformat(task.starts))
        if task.ends > task.starts:
            event.add("dtend", datetime.datetime.fromisoformat(task.ends))
        event.add("summary", f"{plan.job.name}: {task_name(task, speaker)}")
        file.add_component(event)
    return bytes(file.to_ical())

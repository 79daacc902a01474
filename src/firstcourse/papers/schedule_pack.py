"""The calendar on paper: a chart of bars, hold points to tick, visits, what others do first, delays."""

import datetime
from typing import Any

from firstcourse.papers.frame import page_frame
from firstcourse.papers.pages import HERE, PAGE_SIZES, Paper
from firstcourse.plan import Plan, Schedule, Task
from firstcourse.words import Speaker, speaker_for

_DAY = datetime.timedelta(days=1)


def schedule_pack(plan: Plan, calendar: Schedule, paper: Paper) -> bytes:
    """The calendar as a PDF.

    Args:
        plan: A verified plan.
        calendar: Its calendar.
        paper: Page size.

    Raises:
        PaperError: A warning of the page maker.
    """
    speaker = speaker_for(plan)
    words = speaker.labels("schedule-labels", text="", room="")
    labels = {name: said for name, said in words.items() if name not in ("tile_by", "in_use")}
    data = {
        "words": labels,
        "tongue": speaker.tongue,
        "structure": [],
        "frame": page_frame(plan, speaker, labels["name"]),
        "job": plan.job.name,
        **_pages(calendar, speaker),
    }
    return HERE.compiled(("pages.typ", "schedule_pack.typ"), {**speaker.fields(data), "paper": PAGE_SIZES[paper]})


def task_name(task: Task, speaker: Speaker) -> str:
    """What a task is called: what is done and where."""
    what = speaker.text("schedule-kinds", task.kind)
    where = speaker.place(task.id.partition("#")[0]) if "#" in task.id else task.room
    return f"{what}, {where}" if where else what


def schedule_text(calendar: Schedule, speaker: Speaker) -> tuple[str, ...]:
    """A calendar as lines of text: `*` sets the end, `[ ]` is a hold point to tick."""
    pages = _pages(calendar, speaker)
    words = speaker.labels("schedule-labels", text="", room="")
    lines = list(pages["ends"])
    for task in calendar.tasks:
        if task.kind != "tile_here":
            sign = "[ ]" if task.hold else " * " if task.critical else "   "
            named = task_name(task, speaker)
            times = {"from": _said(task.starts), "to": _said(task.ends)}
            lines.append(f"  {sign} {speaker.text('schedule-line', what=named, **times)}")
    for title, rows in (("visits", [[visit] for visit in pages["visits"]]), ("ready", pages["ready"])):
        lines += ["", words[title], *(f"  {', '.join(row)}" for row in rows)]
    if pages["delays"]:
        lines += ["", words["delays"]]
        lines += [f"  {cause}: {words['new_end']} {end}" for cause, end, _ in pages["delays"]]
    return tuple(lines)


def _pages(calendar: Schedule, speaker: Speaker) -> dict[str, Any]:
    tasks = {task.id: task for task in calendar.tasks}
    first = min(_time(task.starts) for task in calendar.tasks).date()
    days = (_time(calendar.ends).date() - first).days + 1

    def along(text: str) -> float:
        return (_time(text) - datetime.datetime.combine(first, datetime.time())) / _DAY / days

    shown = [task for task in calendar.tasks if task.kind != "tile_here"]
    ends = [
        speaker.text("schedule-labels", "in_use", room=room, text=_said(time))
        for room, time in calendar.in_use.items()
    ]
    if calendar.tile_by:
        ends.append(speaker.text("schedule-labels", "tile_by", text=calendar.tile_by))
    return {
        "ends": ends,
        "days": [(first + place * _DAY).isoformat() for place in range(0, days, max(1, -(-days // 8)))],
        "span": days,
        "bars": [
            {
                "name": task_name(task, speaker),
                "from": along(task.starts),
                "to": along(task.ends),
                "hold": task.hold or not task.minutes,
                "critical": task.critical,
            }
            for task in shown
        ],
        "rows": [
            [
                task_name(task, speaker),
                _said(task.starts),
                _said(task.ends),
                f"{task.hours:.1f}",
                f"{task.slack // 60}:{task.slack % 60:02d}",
            ]
            for task in shown
            if task.minutes
        ],
        "holds": [[task_name(task, speaker), _said(task.starts), ""] for task in calendar.tasks if task.hold],
        "visits": [
            speaker.text("schedule-visit", first=visit.first, last=visit.last) for visit in calendar.visits
        ],
        "ready": [
            [
                speaker.text("schedule-who", one.who),
                speaker.text("schedule-ready", one.what),
                one.by,
                task_name(tasks[one.task], speaker),
            ]
            for one in calendar.ready
        ],
        "delays": [
            [speaker.text("schedule-delays", delay.cause, days=delay.days), _said(delay.ends), str(delay.shift)]
            for delay in calendar.delays
        ],
    }


def _time(text: str) -> datetime.datetime:
    return datetime.datetime.fromisoformat(text)


def _said(text: str) -> str:
    return text.replace("T", " ")

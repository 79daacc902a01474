"""What late tile and a failed test do to the end, and what others have to do first: derived again."""

from typing import Any

from firstcourse.verify.calendar.hours import Hours
from firstcourse.verify.calendar.times import Span, Times
from firstcourse.verify.calendar.wanted import Wanted, opened
from firstcourse.verify.structure import Document

_LATE = (1, 5, 10)
"""Working days that tile may come after it is needed."""
_OTHERS = (
    ("plumber", "pipes_tested", {"valve", "pipe", "tub", "tray", "flange"}),
    ("plumber", "drain_set", {"drain"}),
    ("electrician", "boxes_wired", {"box"}),
)


def delays(tasks: list[Wanted], times: Times, spans: dict[str, Span], end: int) -> list[dict[str, Any]]:
    """New ends, each with what brings it about."""
    hours, found = times.hours, []

    def told(cause: str, task: str, days: int, over: int) -> None:
        shift = over // 1440 - end // 1440
        found.append({"cause": cause, "task": task, "days": days, "ends": hours.text(over), "shift": shift})

    laid = [spans[task.id][0] // 1440 for task in tasks if task.kind == "layout"]
    if laid:
        for days in _LATE:
            comes = hours.later(min(laid), days)
            opens = next(start for start, _ in hours.stretches if start // 1440 == comes)
            told("tile_late", "tile_here", days, times.delayed("tile_here", opens))
    kinds = {task.id: task for task in tasks}
    for test in (task for task in tasks if task.kind == "flood_test"):
        stood, begun = test.after[0][0], spans[test.id][0]
        waits = {(task, after): minutes for task, after, minutes in reversed(times.links)}
        time = begun
        for after, _ in kinds[stood].after:
            if kinds[after].kind in ("liner", "membrane", "second_coat"):
                time = hours.after(time, times.minutes[after])[1] + waits[stood, after]
        time = hours.seen(hours.after(time, times.minutes[stood])[1] + waits[test.id, stood])
        days = sum(begun // 1440 < day <= time // 1440 for day in hours.days())
        told("test_fails", test.id, days, times.delayed(test.id, time))
    return found


def ready(plan: Document, tasks: list[Wanted], spans: dict[str, Span], hours: Hours) -> list[dict[str, Any]]:
    """What others have done, each by the last working day before the task that needs it."""
    rows: list[tuple[str, str, str]] = []
    for room in dict.fromkeys(task.room for task in tasks if task.room):
        mine = [task for task in tasks if task.room == room]
        rows.append((f"{room}/strip_check", "client", "room_stripped"))
        covers = [t.id for t in mine if t.kind in ("liner", "boards", "bed", "membrane", "layout")]
        kinds = opened([one for one in plan.source.nodes("surfaces") if one.text("room") == room])
        rows += [(covers[0], who, what) for who, what, needs in _OTHERS if covers and kinds & needs]
    laid = sorted((spans[task.id][0], place, task.id) for place, task in enumerate(tasks) if task.kind == "layout")
    rows += [(laid[0][2], "supplier", "tile_delivered")] if laid else []
    return [
        {"task": task, "who": who, "what": what, "by": hours.on(hours.earlier(spans[task][0] // 1440))}
        for task, who, what in rows
    ]

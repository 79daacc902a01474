"""Every part of a calendar against the plan that it is of: nothing missing, nothing too early, nothing else."""

from collections.abc import Iterator
from itertools import pairwise
from math import ceil, fsum, isclose
from typing import Any

from firstcourse.units import MeasureError, fahrenheit
from firstcourse.verify.calendar.delays import delays, ready
from firstcourse.verify.calendar.hours import Hours, minute
from firstcourse.verify.calendar.times import Times
from firstcourse.verify.calendar.wanted import HOLDS, Wanted, wanted
from firstcourse.verify.fields import FieldError, Node
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_COLD = frozenset(
    f"schedule.wait.{name}"
    for name in ("levelling", "bed", "seams", "standard", "rapid", "slow", "cement", "seal", "cement_use")
)
"""What sets with cement, and takes longer in the cold."""
_OF_TASK = frozenset(
    (
        "id", "kind", "room", "surfaces", "hold", "work", "hours", "minutes", "starts", "ends", "latest", "slack",
        "critical",
    )
)  # fmt: skip
_OF_ALL = frozenset(
    (
        "temperature_f", "tasks", "waits", "order", "critical", "chain_minutes", "visits", "in_use", "ends",
        "tile_by", "delays", "ready",
    )
)  # fmt: skip


def check_calendar(plan: Document) -> Iterator[Objection]:
    """Object to a calendar that nobody asked for or that is missing, and to whatever in it is not as derived."""
    told, asked = plan.source.raw("schedule", None), plan.job.raw("schedule", None)
    if (told is None) != (asked is None):
        yield Objection("VER-201", "schedule", "is missing" if told is None else "is not asked for")
    if told is None or asked is None:
        return
    calendar, asking = Node(told, "plan.schedule"), Node(asked, "plan.given.job.schedule")
    if calendar.value.keys() - _OF_ALL:
        yield Objection("VER-202", "schedule", "holds what no calendar holds")
    tasks = wanted(plan, asking)
    rows = calendar.nodes("tasks")
    if [row.raw("id") for row in rows] != [task.id for task in tasks]:
        yield Objection("VER-202", "schedule.tasks", "are not the tasks and hold points that the plan asks for")
        return
    warmth = _warmth(asking)
    if calendar.raw("temperature_f") != warmth:
        yield Objection("VER-203", "schedule.temperature_f", f"is not {warmth:g}, as the job gives it")
    hands = asking.count("hands") if "hands" in asking.value else 1
    for row, task in zip(rows, tasks, strict=True):
        yield from _amounts(row, task, plan, hands)
    waits = [_wait(task.id, after, rule, warmth, plan) for task in tasks for after, rule in task.after]
    if calendar.raw("waits") != waits:
        yield Objection("VER-204", "schedule.waits", "are not those of the work, or not as long as the rules say")
        return
    yield from _times(calendar, rows, tasks, waits, asking, plan)


def _nine(value: float) -> float:
    """A computed number as plans have it, to nine figures."""
    return float(f"{value:.9g}")


def _warmth(asking: Node) -> float:
    try:
        return fahrenheit(asking.text("temperature", "70 F"))
    except MeasureError as error:
        raise FieldError(f"{asking.where}.temperature", str(error)) from None


def _amounts(row: Node, task: Wanted, plan: Document, hands: int) -> Iterator[Objection]:
    """What a task is about and how much work it is."""
    said = {"kind": task.kind, "room": task.room, "surfaces": list(task.surfaces), "hold": task.kind in HOLDS}
    if row.value.keys() != _OF_TASK or any(row.raw(name) != value for name, value in said.items()):
        yield Objection("VER-202", task.id, "is not the task that the plan asks for")
    works = row.nodes("work")
    named = [(work.raw("of"), work.raw("unit"), work.raw("rule")) for work in works]
    if named != [(of, unit, f"schedule.hours.{rate}") for of, _, unit, rate in task.work]:
        yield Objection("VER-203", task.id, "counts other work than it is")
        return
    for work, (of, amount, unit, _) in zip(works, task.work, strict=True):
        if work.value.keys() != {"of", "amount", "unit", "rule"}:
            yield Objection("VER-203", task.id, "says more of its work than there is to say")
        if not isclose(work.number("amount"), amount, rel_tol=1e-7):
            yield Objection("VER-203", task.id, f"is {work.number('amount'):g} {unit} of {of}, not {amount:g}")
    hours = _nine(fsum(work.number("amount") * plan.rules.number(work.text("rule")) for work in works))
    minutes = ceil(round(hours * 60 / hands, 6))
    if row.number("hours") != hours or row.raw("minutes") != minutes:
        yield Objection("VER-203", task.id, f"takes {hours:g} h, {minutes} min of the crew, and says otherwise")


def _wait(task: str, after: str, rule: str, warmth: float, plan: Document) -> dict[str, Any]:
    slower, minutes = 1.0, 0
    if rule in _COLD:
        degrees = plan.rules.number("schedule.cold.from") - warmth
        slower = _nine(2 ** (max(0.0, degrees) / plan.rules.number("schedule.cold.doubles")))
    if rule:
        minutes = ceil(round(plan.rules.number(rule) * 60 * slower, 6))
    return {"task": task, "after": after, "minutes": minutes, "rule": rule, "slower": slower}


def _times(
    calendar: Node,
    rows: list[Node],
    tasks: list[Wanted],
    waits: list[dict[str, Any]],
    asking: Node,
    plan: Document,
) -> Iterator[Objection]:
    opens = round(plan.rules.number("schedule.day.begins") * 60)
    hours = Hours(asking, opens, 0)
    said = [
        (
            minute(row.raw("starts"), f"{row.where}.starts", hours.first),
            minute(row.raw("ends"), f"{row.where}.ends", hours.first),
        )
        for row in rows
    ]
    hours = Hours(asking, opens, max(end for _, end in said))
    order = list(calendar.raw("order"))
    starts = {task.id: start for task, (start, _) in zip(tasks, said, strict=True)}
    crew = [row.text("id") for row in rows if row.count("minutes")]
    if sorted(order) != sorted(crew) or order != sorted(order, key=lambda name: starts[name]):
        yield Objection("VER-205", "schedule.order", "is not the order in which the crew does what there is to do")
        return
    times = Times.of(rows, waits, order, asking, hours, opens)
    spans = times.earliest()
    for task, told in zip(tasks, said, strict=True):
        if told != spans[task.id]:
            yield Objection(
                "VER-206", task.id, f"is from {hours.text(told[0])}, not from {hours.text(spans[task.id][0])} on"
            )
    end = max(over for _, over in spans.values())
    last = times.latest(end)
    for row in rows:
        name = row.text("id")
        slack = hours.worked(last[name]) - hours.worked(spans[name][0])
        if row.raw("latest") != hours.text(last[name]) or row.raw("slack") != slack:
            yield Objection("VER-207", name, f"may start by {hours.text(last[name])}, {slack} min later")
    yield from _chain(calendar, rows, times, end)
    use = {task.room: hours.text(spans[task.id][0]) for task in tasks if task.kind == "in_use"}
    by = hours.on(last["tile_here"] // 1440) if "tile_here" in last else ""
    for name, value in (
        ("in_use", use), ("ends", hours.text(end)), ("tile_by", by),
        ("visits", _visits(order, spans, hours)),
    ):  # fmt: skip
        if calendar.raw(name) != value:
            yield Objection("VER-209", f"schedule.{name}", f"is not {value}")
    if calendar.raw("delays") != delays(tasks, times, spans, end):
        yield Objection("VER-210", "schedule.delays", "are not what late tile and failed tests do to the end")
    if calendar.raw("ready") != ready(plan, tasks, spans, hours):
        yield Objection("VER-211", "schedule.ready", "is not what others have to do before the work")


def _chain(calendar: Node, rows: list[Node], times: Times, end: int) -> Iterator[Objection]:
    """The chain that sets the end: no time is lost along it, and nothing before it would let it begin sooner."""
    names = list(calendar.raw("critical"))
    flags = {row.text("id"): row.flag("critical") for row in rows}
    if {name for name, on in flags.items() if on} != set(names) or len(set(names)) < len(names) or not names:
        yield Objection("VER-208", "schedule.critical", "is not the tasks that are called critical")
        return
    spans = times.earliest()
    held = all(times.binds(a, b, spans) for a, b in pairwise(names))
    if not held or spans[names[-1]][1] != end or not times.is_free(names[0], spans):
        yield Objection("VER-208", "schedule.critical", "is no chain that sets the end")
    if calendar.raw("chain_minutes") != end - spans[names[0]][0]:
        yield Objection("VER-208", "schedule.chain_minutes", f"is not {end - spans[names[0]][0]}")


def _visits(order: list[str], spans: dict[str, tuple[int, int]], hours: Hours) -> list[dict[str, Any]]:
    """Working days in a row on which something is done."""
    found: list[dict[str, Any]] = []
    reach = None
    for name in order:
        first, last = spans[name][0] // 1440, (spans[name][1] - 1) // 1440
        if reach is None or first > hours.later(reach, 1):
            found.append({"first": hours.on(first), "last": "", "tasks": []})
        found[-1]["tasks"].append(name)
        found[-1]["last"], reach = hours.on(last), last
    return found

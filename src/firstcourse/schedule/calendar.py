"""The calendar of a plan: times, the chain that sets the end, visits, and what a delay does."""

import math
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

from firstcourse.errors import InputProblem, JobError
from firstcourse.job import WorkSchedule
from firstcourse.plan import Delay, Ready, Schedule, Surface, Task, TileStock, Visit, Wait
from firstcourse.rules import RuleSet
from firstcourse.schedule.clock import DAY, WorkClock
from firstcourse.schedule.network import Activity, Link, Span, chain, earliest, latest, with_crew, worked_in_turn
from firstcourse.schedule.tasks import HOLDS, TILE_HERE, Pause, Products, Step, needs, steps_of
from firstcourse.units import fahrenheit
from firstcourse.values import kept

_NO_CEMENT = frozenset(
    f"schedule.wait.{name}"
    for name in ("liner", "sheet", "liquid", "between_coats", "resin", "resin_use", "sealant_use", "sealed_use")
)
"""What sets without cement: its data sheet says how it takes the cold."""
_LATE_DAYS = (1, 5, 10)
_MEMBRANES = ("liner", "membrane", "second_coat")
_COVERS = ("liner", "boards", "bed", "membrane", "layout")


def schedule(
    surfaces: Sequence[Surface],
    stock: Sequence[TileStock],
    workings: Collection[str],
    asked: WorkSchedule,
    rules: RuleSet,
) -> Schedule:
    """The calendar of a plan.

    Args:
        surfaces: All surfaces of the plan.
        stock: Its tiles.
        workings: Keys of its workings.
        asked: When and by whom the work is done.
        rules: For how long things take and set.

    Raises:
        JobError: The rooms are too cold for tile work, or a working day does not end before midnight.
    """
    warmth = fahrenheit(asked.temperature)
    if warmth < (least := rules.number("schedule.cold.least")):
        raise _refused(
            "temperature",
            f"{asked.temperature} is colder than {least:g} F, below which tile is not set with cement: heat the "
            "rooms and give the temperature that is kept",
        )
    begins, length = round(rules.number("schedule.day.begins") * 60), round(asked.hours_a_day * 60)
    if begins < 0 or begins + length >= DAY:
        raise _refused(
            "hours_a_day",
            f"{asked.hours_a_day:g} hours that begin at {begins / 60:g} (rule schedule.day.begins) end at "
            "midnight or after it; begin earlier or work less",
        )
    products = Products(mortar=asked.mortar, grout=asked.grout, seal=asked.seal)
    steps = steps_of(surfaces, stock, workings, products, rules)
    clock = WorkClock(
        first=asked.starts,
        days=frozenset(asked.days),
        holidays=frozenset(asked.holidays),
        begins=begins,
        length=length,
    )
    hours = {step.id: _hours(step, rules) for step in steps.steps}
    arrives = 0 if asked.tile_arrives is None else max(0, clock.opens(clock.day_of(asked.tile_arrives)))
    activities = [
        Activity(
            id=step.id,
            minutes=math.ceil(round(hours[step.id] * 60 / asked.hands, 6)),
            seen=step.kind in HOLDS,
            not_before=arrives if step.id == TILE_HERE else 0,
        )
        for step in steps.steps
    ]
    waits = [_wait(pause, warmth, rules) for pause in steps.pauses]
    links = [Link(task=wait.task, after=wait.after, minutes=wait.minutes) for wait in waits]
    order = worked_in_turn(activities, links, clock)
    crewed = with_crew(links, order)
    spans = earliest(activities, crewed, clock)
    end = max(over for _, over in spans.values())
    last = latest(activities, crewed, clock, end)
    critical = chain(activities, crewed, spans)
    minutes = {one.id: one.minutes for one in activities}
    return Schedule(
        temperature_f=warmth,
        tasks=tuple(
            Task(
                id=step.id,
                kind=step.kind,
                room=step.room,
                surfaces=step.surfaces,
                hold=step.kind in HOLDS,
                work=step.work,
                hours=hours[step.id],
                minutes=minutes[step.id],
                starts=clock.said(spans[step.id][0]),
                ends=clock.said(spans[step.id][1]),
                latest=clock.said(last[step.id]),
                slack=clock.between(spans[step.id][0], last[step.id]),
                critical=step.id in critical,
            )
            for step in steps.steps
        ),
        waits=tuple(waits),
        order=order,
        critical=critical,
        chain_minutes=end - spans[critical[0]][0] if critical else 0,
        visits=_visits(order, spans, clock),
        in_use={step.room: clock.said(spans[step.id][0]) for step in steps.steps if step.kind == "in_use"},
        ends=clock.said(end),
        tile_by=clock.date(last[TILE_HERE] // DAY).isoformat() if TILE_HERE in last else "",
        delays=(
            *_late_tile(steps.steps, activities, crewed, spans, clock, end),
            *_failed_tests(steps.steps, activities, crewed, spans, clock, end),
        ),
        ready=_ready(steps.steps, surfaces, spans, clock),
    )


def _refused(field: str, message: str) -> JobError:
    return JobError((InputProblem(file="job", line=0, column=0, field=f"schedule.{field}", message=message),))


def _hours(step: Step, rules: RuleSet) -> float:
    return kept(math.fsum(work.amount * rules.number(work.rule) for work in step.work))


def _wait(pause: Pause, warmth: float, rules: RuleSet) -> Wait:
    if not pause.rule:
        return Wait(task=pause.task, after=pause.after)
    slower = 1.0
    if pause.rule.startswith("schedule.") and pause.rule not in _NO_CEMENT:
        colder = max(0.0, rules.number("schedule.cold.from") - warmth)
        slower = kept(2 ** (colder / rules.number("schedule.cold.doubles")))
    minutes = math.ceil(round(rules.number(pause.rule) * 60 * slower, 6))
    return Wait(task=pause.task, after=pause.after, minutes=minutes, rule=pause.rule, slower=slower)


def _visits(order: Sequence[str], spans: Mapping[str, Span], clock: WorkClock) -> tuple[Visit, ...]:
    """Working days in a row on which the crew is there."""
    found: list[tuple[int, int, list[str]]] = []
    for name in order:
        start, end = spans[name]
        first, last = start // DAY, (end - 1) // DAY
        if found and first <= clock.after_days(found[-1][1], 1):
            found[-1] = found[-1][0], last, [*found[-1][2], name]
        else:
            found.append((first, last, [name]))
    return tuple(
        Visit(first=clock.date(first).isoformat(), last=clock.date(last).isoformat(), tasks=tuple(names))
        for first, last, names in found
    )


def _moved(
    activities: Sequence[Activity], links: Sequence[Link], clock: WorkClock, task: str, not_before: int
) -> int:
    """The end where one task cannot begin before a time; the crew keeps its order."""
    held = [
        replace(one, not_before=max(one.not_before, not_before)) if one.id == task else one for one in activities
    ]
    return max(end for _, end in earliest(held, links, clock).values())


def _late_tile(
    steps: Sequence[Step],
    activities: Sequence[Activity],
    links: Sequence[Link],
    spans: Mapping[str, Span],
    clock: WorkClock,
    end: int,
) -> list[Delay]:
    needed = min((spans[step.id][0] // DAY for step in steps if step.kind == "layout"), default=None)
    if needed is None:
        return []
    found = []
    for days in _LATE_DAYS:
        comes = clock.opens(clock.after_days(needed, days))
        ends = _moved(activities, links, clock, TILE_HERE, comes)
        found.append(_delay("tile_late", TILE_HERE, days, ends, end, clock))
    return found


def _failed_tests(
    steps: Sequence[Step],
    activities: Sequence[Activity],
    links: Sequence[Link],
    spans: Mapping[str, Span],
    clock: WorkClock,
    end: int,
) -> list[Delay]:
    """A flood test fails: its membrane is made again, sets, is filled and stands again."""
    kinds = {step.id: step.kind for step in steps}
    minutes = {one.id: one.minutes for one in activities}
    found = []
    for test in (step.id for step in steps if step.kind == "flood_test"):
        (stood,) = (link for link in links if link.task == test)
        time = spans[test][0]
        for link in (link for link in links if link.task == stood.after and kinds[link.after] in _MEMBRANES):
            if link.minutes:
                time = clock.done(clock.work_from(time), minutes[link.after]) + link.minutes
        time = clock.done(clock.work_from(time), minutes[stood.after]) + stood.minutes
        held = clock.seen_from(time)
        days = sum(clock.is_worked(day) for day in range(spans[test][0] // DAY + 1, held // DAY + 1))
        found.append(_delay("test_fails", test, days, _moved(activities, links, clock, test, held), end, clock))
    return found


def _delay(cause: str, task: str, days: int, ends: int, end: int, clock: WorkClock) -> Delay:
    shift = ends // DAY - end // DAY
    return Delay.model_validate(
        {"cause": cause, "task": task, "days": days, "ends": clock.said(ends), "shift": shift}
    )


def _ready(
    steps: Sequence[Step], surfaces: Sequence[Surface], spans: Mapping[str, Span], clock: WorkClock
) -> tuple[Ready, ...]:
    """What others have done before a task begins."""
    found: list[tuple[str, str, str]] = []
    for room in dict.fromkeys(step.room for step in steps if step.room):
        mine = [step for step in steps if step.room == room]
        found += [(step.id, "client", "room_stripped") for step in mine if step.kind == "strip_check"]
        cover = next((step.id for step in mine if step.kind in _COVERS), None)
        if cover is not None:
            pipes, drain, boxes = needs(one for one in surfaces if one.room == room)
            found += [(cover, "plumber", "pipes_tested")] if pipes else []
            found += [(cover, "plumber", "drain_set")] if drain else []
            found += [(cover, "electrician", "boxes_wired")] if boxes else []
    laid = [step.id for step in steps if step.kind == "layout"]
    if laid:
        found.append((min(laid, key=lambda name: spans[name][0]), "supplier", "tile_delivered"))
    return tuple(
        Ready.model_validate(
            {"task": task, "who": who, "what": what, "by": clock.last_day_before(spans[task][0]).isoformat()}
        )
        for task, who, what in found
    )

"""What can begin when: activities, the waits between them, and one crew that does one thing at a time."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from firstcourse.schedule.clock import WorkClock


@dataclass(frozen=True, slots=True, kw_only=True)
class Activity:
    """Something to be done or seen.

    Attributes:
        minutes: Working minutes of the crew; 0 where something is only seen, or comes about by itself.
        seen: Of one without work: whether somebody has to be there.
        not_before: It cannot begin earlier [min].
    """

    id: str
    minutes: int = 0
    seen: bool = False
    not_before: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """One begins no earlier than so long after the end of another, on the clock by day and night [min]."""

    task: str
    after: str
    minutes: int = 0


Span = tuple[int, int]


def worked_in_turn(activities: Sequence[Activity], links: Sequence[Link], clock: WorkClock) -> tuple[str, ...]:
    """In which order the crew does what has work: always what can begin first, of several the first listed.

    Args:
        activities: Each listed after all that it waits for.
        links: Between them.
        clock: Which minutes are worked.
    """
    before = _before(activities, links)
    left = list(activities)
    ends: dict[str, int] = {}
    order: list[str] = []
    free = 0
    while left:
        ready = [one for one in left if all(link.after in ends for link in before[one.id])]
        started = [
            (_start(one, _ready(one, before[one.id], ends), clock, free if one.minutes else 0), place, one)
            for place, one in enumerate(ready)
        ]
        idle = [entry for entry in started if not entry[2].minutes]
        start, _, chosen = idle[0] if idle else min(started, key=lambda entry: entry[:2])
        ends[chosen.id] = clock.done(start, chosen.minutes) if chosen.minutes else start
        if chosen.minutes:
            order.append(chosen.id)
            free = ends[chosen.id]
        left.remove(chosen)
    return tuple(order)


def with_crew(links: Sequence[Link], order: Sequence[str]) -> tuple[Link, ...]:
    """The links, with those between what the crew does one after another."""
    return (*links, *(Link(task=b, after=a) for a, b in pairwise(order)))


def earliest(activities: Sequence[Activity], links: Sequence[Link], clock: WorkClock) -> dict[str, Span]:
    """When each begins and ends at the earliest.

    Args:
        activities: In any order; links run in no circle.
        links: Between them, those of the crew with them.
        clock: Which minutes are worked.
    """
    before = _before(activities, links)
    spans: dict[str, Span] = {}
    ends: dict[str, int] = {}
    for one in _sorted(activities, before):
        start = _start(one, _ready(one, before[one.id], ends), clock)
        ends[one.id] = clock.done(start, one.minutes) if one.minutes else start
        spans[one.id] = start, ends[one.id]
    return spans


def latest(activities: Sequence[Activity], links: Sequence[Link], clock: WorkClock, end: int) -> dict[str, int]:
    """When each begins at the latest, so that all is over at a time."""
    before = _before(activities, links)
    after: dict[str, list[Link]] = {one.id: [] for one in activities}
    for link in links:
        after[link.after].append(link)
    starts: dict[str, int] = {}
    for one in reversed(_sorted(activities, before)):
        over = min((starts[link.task] - link.minutes for link in after[one.id]), default=end)
        if one.minutes:
            starts[one.id] = clock.begun(over, one.minutes)
        else:
            starts[one.id] = clock.seen_by(over) if one.seen else over
    return starts


def chain(activities: Sequence[Activity], links: Sequence[Link], spans: Mapping[str, Span]) -> tuple[str, ...]:
    """The chain that sets the end: each began as soon as the one before it let it, first to last."""
    before, known = _before(activities, links), {one.id: one for one in activities}
    here = max(activities, key=lambda one: spans[one.id][1])
    found = [here.id]
    while before[here.id]:
        binding = max(before[here.id], key=lambda link: spans[link.after][1] + link.minutes)
        if spans[binding.after][1] + binding.minutes <= here.not_before:
            break
        here = known[binding.after]
        found.append(here.id)
    return tuple(reversed(found))


def _before(activities: Sequence[Activity], links: Sequence[Link]) -> dict[str, list[Link]]:
    found: dict[str, list[Link]] = {one.id: [] for one in activities}
    for link in links:
        found[link.task].append(link)
    return found


def _ready(one: Activity, before: Sequence[Link], ends: Mapping[str, int]) -> int:
    return max((ends[link.after] + link.minutes for link in before), default=0)


def _start(one: Activity, ready: int, clock: WorkClock, free: int = 0) -> int:
    time = max(ready, one.not_before, free)
    if one.minutes:
        return clock.work_from(time)
    return clock.seen_from(time) if one.seen else time


def _sorted(activities: Sequence[Activity], before: Mapping[str, Sequence[Link]]) -> list[Activity]:
    """Each after all that it waits for."""
    found: list[Activity] = []
    known: set[str] = set()
    left = list(activities)
    while left:
        ready = [one for one in left if all(link.after in known for link in before[one.id])]
        if not ready:
            raise ValueError("links run in a circle")
        found += ready
        known.update(one.id for one in ready)
        left = [one for one in left if one.id not in known]
    return found

"""Times by relaxation: each start is pushed later until every wait is kept; the latest ones back from the end."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any

from firstcourse.verify.calendar.hours import Hours, day
from firstcourse.verify.calendar.wanted import HOLDS
from firstcourse.verify.fields import Node

Span = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Times:
    """What sets the times.

    Attributes:
        minutes: Of work, by task.
        links: Task, what it waits for, and how long.
        seen: Tasks for which somebody has to be there.
        held: Times before which tasks cannot begin.
    """

    minutes: Mapping[str, int]
    links: tuple[tuple[str, str, int], ...]
    seen: frozenset[str]
    held: Mapping[str, int]
    hours: Hours

    @classmethod
    def of(
        cls,
        rows: list[Node],
        waits: list[dict[str, Any]],
        order: list[str],
        asking: Node,
        hours: Hours,
        opens: int,
    ) -> "Times":
        """What sets the times of a calendar's tasks, the crew's order with it."""
        held = {}
        if "tile_arrives" in asking.value:
            comes = day(asking.text("tile_arrives"), f"{asking.where}.tile_arrives")
            held["tile_here"] = max(0, (comes - hours.first).days * 1440 + opens)
        return cls(
            {row.text("id"): row.count("minutes") for row in rows},
            (*((w["task"], w["after"], w["minutes"]) for w in waits), *((b, a, 0) for a, b in pairwise(order))),
            frozenset(row.text("id") for row in rows if row.text("kind") in HOLDS),
            held,
            hours,
        )

    def earliest(self) -> dict[str, Span]:
        """When each begins and ends; a circle of links, which would never come to rest, is an error."""
        ready = {name: self.held.get(name, 0) for name in self.minutes}
        spans = {name: self._from(name, time) for name, time in ready.items()}
        for _ in range(len(spans) + 1):
            moved = False
            for task, after, minutes in self.links:
                if spans[after][1] + minutes > ready[task]:
                    ready[task] = spans[after][1] + minutes
                    spans[task] = self._from(task, ready[task])
                    moved = True
            if not moved:
                return spans
        raise ValueError("tasks wait for each other in a circle")

    def latest(self, end: int) -> dict[str, int]:
        """When each begins at the latest for all to be over at a time."""
        over = dict.fromkeys(self.minutes, end)
        starts = {name: self._by(name, time) for name, time in over.items()}
        for _ in range(len(starts) + 1):
            moved = False
            for task, after, minutes in self.links:
                if starts[task] - minutes < over[after]:
                    over[after] = starts[task] - minutes
                    starts[after] = self._by(after, over[after])
                    moved = True
            if not moved:
                return starts
        raise ValueError("tasks wait for each other in a circle")

    def delayed(self, task: str, time: int) -> int:
        """The end where a task cannot begin before a time."""
        held = {**self.held, task: max(time, self.held.get(task, 0))}
        return max(end for _, end in replace(self, held=held).earliest().values())

    def binds(self, before: str, task: str, spans: Mapping[str, Span]) -> bool:
        """Whether one task began when another let it, and nothing else kept it longer."""
        let = [spans[a][1] + minutes for t, a, minutes in self.links if (t, a) == (task, before)]
        every = [spans[a][1] + minutes for t, a, minutes in self.links if t == task]
        return bool(let) and max(let) == max(every) and self._from(task, max(let)) == spans[task]

    def is_free(self, task: str, spans: Mapping[str, Span]) -> bool:
        """Whether a task waited for no other."""
        ends = [spans[a][1] + minutes for t, a, minutes in self.links if t == task]
        return not ends or max(ends) <= self.held.get(task, 0)

    def _from(self, name: str, time: int) -> Span:
        if self.minutes[name]:
            return self.hours.after(time, self.minutes[name])
        start = self.hours.seen(time) if name in self.seen else time
        return start, start

    def _by(self, name: str, time: int) -> int:
        if self.minutes[name]:
            return self.hours.begun_by(time, self.minutes[name])
        return self.hours.seen_by(time) if name in self.seen else time

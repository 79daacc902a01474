"""The calendar of a plan as values: tasks with their quantities, what waits for what, days, visits and delays.

Times are local, to the minute, ISO 8601 such as `2026-03-02T08:00`; days are ISO 8601 dates.
"""

from typing import Literal

from firstcourse.plan.base import Frozen

TaskKind = Literal[
    "strip_check", "framing", "framing_seen", "nail_plates", "blocking_seen", "drain_test", "levelling", "liner",
    "bed", "boards", "fasteners", "tape", "membrane", "second_coat", "fill", "flood_test", "tile_here", "layout",
    "tile", "grout", "sealant", "seal", "cleaning", "glass_measure", "in_use",
]  # fmt: skip
"""What is done, in the order of work."""
WorkUnit = Literal["m2", "m", "count"]


class Work(Frozen):
    """A quantity of work, and what one of its unit takes.

    Attributes:
        of: What is counted, by its code.
        amount: How much, in `unit`.
        rule: The rule that says how many hours of one pair of hands one of it takes.
    """

    of: Literal[
        "room", "member", "surface", "levelled", "bed", "board", "fastener", "seam", "membrane", "tile",
        "cut_tile", "soft_joint",
    ]  # fmt: skip
    amount: float
    unit: WorkUnit
    rule: str


class Task(Frozen):
    """One thing to be done or seen.

    Attributes:
        id: Room, kind and, where it is of one surface, that: `bath/grout`, `bath/wall/A-B#tile`.
        surfaces: Ids of the surfaces it is about.
        hold: Nothing goes on behind it until somebody has ticked it.
        hours: Of one pair of hands, by its work.
        minutes: That the crew takes together, on the clock of working hours.
        latest: When it may start at the latest without moving the end.
        slack: Working minutes that it may start later without moving the end.
        critical: It lies on the chain that sets the end.
    """

    id: str
    kind: TaskKind
    room: str
    surfaces: tuple[str, ...] = ()
    hold: bool = False
    work: tuple[Work, ...] = ()
    hours: float = 0.0
    minutes: int = 0
    starts: str
    ends: str
    latest: str
    slack: int
    critical: bool = False


class Wait(Frozen):
    """One task waits for another.

    Attributes:
        minutes: On the clock, day and night, from the end of the one to the start of the other.
        rule: The rule that says how long; empty where it need only be done before.
        slower: By how much that is stretched because the rooms are cold; 1 where they are not.
    """

    task: str
    after: str
    minutes: int = 0
    rule: str = ""
    slower: float = 1.0


class Visit(Frozen):
    """Working days in a row on which the crew is there."""

    first: str
    last: str
    tasks: tuple[str, ...]


class Delay(Frozen):
    """What something that goes wrong does to the end.

    Attributes:
        cause: Tile comes so many working days after it is needed, or a test fails and what it tests is done again.
        task: What is late or fails.
        days: Working days late; of a test that fails those until it has held, begun ones whole.
        ends: When all is in use then.
        shift: Calendar days later than planned.
    """

    cause: Literal["tile_late", "test_fails"]
    task: str
    days: int
    ends: str
    shift: int


class Ready(Frozen):
    """What somebody else has done before a task begins.

    Attributes:
        who: The trade, by its code.
        what: What is done, by its code.
        by: The last working day before the task begins.
    """

    task: str
    who: Literal["client", "plumber", "electrician", "supplier"]
    what: Literal["room_stripped", "pipes_tested", "drain_set", "boxes_wired", "tile_delivered"]
    by: str


class Schedule(Frozen):
    """A calendar of the work.

    Attributes:
        order: Tasks of the crew as they follow each other: hands are on one thing at a time.
        critical: The chain that sets the end, first to last.
        chain_minutes: From the first start to the end on the clock.
        tile_by: Last day on which tile may come without moving the end; empty where none is laid.
        in_use: When each room may be used, by its name.
    """

    temperature_f: float
    tasks: tuple[Task, ...]
    waits: tuple[Wait, ...]
    order: tuple[str, ...]
    critical: tuple[str, ...]
    chain_minutes: int
    visits: tuple[Visit, ...]
    in_use: dict[str, str]
    ends: str
    tile_by: str = ""
    delays: tuple[Delay, ...] = ()
    ready: tuple[Ready, ...] = ()

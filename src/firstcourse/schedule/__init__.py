"""From a plan to a calendar: what is done, what waits for what, on which days, and what moves the end."""

from firstcourse.schedule.calendar import schedule
from firstcourse.schedule.clock import WorkClock
from firstcourse.schedule.network import Activity, Link, chain, earliest, latest, worked_in_turn

__all__ = ["Activity", "Link", "WorkClock", "chain", "earliest", "latest", "schedule", "worked_in_turn"]

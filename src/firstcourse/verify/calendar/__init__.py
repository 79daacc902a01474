"""The calendar of a plan, derived again: what must be done and seen, how long it waits, and when all is over."""

from firstcourse.verify.calendar.check import check_calendar

__all__ = ["check_calendar"]

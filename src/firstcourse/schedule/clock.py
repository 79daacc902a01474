"""Which minutes of which days are worked. A time is whole minutes from midnight before the first day."""

import datetime
from dataclasses import dataclass, field

DAY = 24 * 60
_WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkClock:
    """Which minutes are worked.

    Attributes:
        first: The day that times are counted from.
        days: Days of the week that are worked, such as `mon`; at least one.
        holidays: Days that are not worked besides.
        begins: When a working day begins, after midnight [min].
        length: Of a working day [min]; it ends before midnight, or never where nobody has to see anything.
    """

    first: datetime.date
    days: frozenset[str]
    holidays: frozenset[datetime.date] = field(default=frozenset())
    begins: int
    length: int

    def date(self, day: int) -> datetime.date:
        """The date of a day counted from the first, which is 0."""
        return self.first + datetime.timedelta(days=day)

    def day_of(self, date: datetime.date) -> int:
        """The day of a date, counted from the first."""
        return (date - self.first).days

    def is_worked(self, day: int) -> bool:
        """Whether anybody works on a day."""
        date = self.date(day)
        return _WEEK[date.weekday()] in self.days and date not in self.holidays

    def opens(self, day: int) -> int:
        """When a working day begins."""
        return day * DAY + self.begins

    def closes(self, day: int) -> int:
        """When a working day ends."""
        return day * DAY + self.begins + self.length

    def work_from(self, time: int) -> int:
        """The first time, not earlier, at which somebody can begin."""
        day = time // DAY
        while not (self.is_worked(day) and time < self.closes(day)):
            day += 1
        return max(time, self.opens(day))

    def seen_from(self, time: int) -> int:
        """The first time, not earlier, at which somebody is there, the end of a day with it."""
        day = time // DAY
        while not (self.is_worked(day) and time <= self.closes(day)):
            day += 1
        return max(time, self.opens(day))

    def seen_by(self, time: int) -> int:
        """The last time, not later, at which somebody is there."""
        day = time // DAY
        while not (self.is_worked(day) and time >= self.opens(day)):
            day -= 1
        return min(time, self.closes(day))

    def done(self, start: int, minutes: int) -> int:
        """When so many working minutes are over that begin at a time at which somebody can begin."""
        day = start // DAY
        left = minutes - (self.closes(day) - start)
        while left > 0:
            day += 1
            left -= self.length if self.is_worked(day) else 0
        return self.closes(day) + left

    def begun(self, end: int, minutes: int) -> int:
        """When so many working minutes begin at the latest that are to be over at a time."""
        end = self.seen_by(end)
        day = end // DAY
        if end == self.opens(day):
            # Nothing is worked on that day before it.
            end = self.closes(self._before(day))
            day = end // DAY if end % DAY else end // DAY - 1
        left = minutes - (end - self.opens(day))
        while left > 0:
            day = self._before(day)
            left -= self.length
        return self.opens(day) - left

    def between(self, start: int, end: int) -> int:
        """Working minutes from one time to a later one."""
        return sum(
            max(0, min(end, self.closes(day)) - max(start, self.opens(day)))
            for day in range(start // DAY, end // DAY + 1)
            if self.is_worked(day)
        )

    def last_day_before(self, time: int) -> datetime.date:
        """The last working day before the day of a time."""
        return self.date(self._before(time // DAY))

    def after_days(self, day: int, count: int) -> int:
        """The working day that comes so many working days after a day."""
        for _ in range(count):
            day += 1
            while not self.is_worked(day):
                day += 1
        return day

    def said(self, time: int) -> str:
        """A time as ISO 8601, to the minute."""
        day, minute = divmod(time, DAY)
        return f"{self.date(day).isoformat()}T{minute // 60:02d}:{minute % 60:02d}"

    def _before(self, day: int) -> int:
        day -= 1
        while not self.is_worked(day):
            day -= 1
        return day

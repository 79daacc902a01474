"""Working time as a list of stretches from opening to closing [min from midnight before the first day]."""

import datetime
from bisect import bisect_left, bisect_right

from firstcourse.verify.fields import FieldError, Node

_DAY = 1440
_NAMES = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


class Hours:
    """All stretches that are worked over some years round the work."""

    def __init__(self, asked: Node, opens: int, last: int) -> None:
        self.first = day(asked.text("starts"), f"{asked.where}.starts")
        worked = set(asked.raw("days", ["mon", "tue", "wed", "thu", "fri"]))
        off = {day(value, where) for value, where in asked.rows("holidays", ())}
        length = round((asked.number("hours_a_day") if "hours_a_day" in asked.value else 8.0) * 60)
        self.stretches = [
            (number * _DAY + opens, number * _DAY + opens + length)
            for number in range(-800, last // _DAY + 1600)
            for date in (self.first + datetime.timedelta(days=number),)
            if _NAMES[date.weekday()] in worked and date not in off
        ]
        self._opens = [start for start, _ in self.stretches]
        self._closes = [end for _, end in self.stretches]
        self.before = [0]
        for start, end in self.stretches:
            self.before.append(self.before[-1] + end - start)

    def worked(self, time: int) -> int:
        """Minutes worked since long ago until a time."""
        place = bisect_right(self._opens, time) - 1
        return self.before[place] + min(time, self._closes[place]) - self._opens[place]

    def after(self, time: int, minutes: int) -> tuple[int, int]:
        """When work of so many minutes begins and ends, not before a time."""
        place = bisect_right(self._closes, time)
        start = max(time, self._opens[place])
        done = self.worked(start) + minutes
        over = bisect_left(self.before, done) - 1
        return start, self._opens[over] + done - self.before[over]

    def seen(self, time: int) -> int:
        """The first time, not earlier, at which somebody is there."""
        return max(time, self._opens[bisect_left(self._closes, time)])

    def seen_by(self, time: int) -> int:
        """The last time, not later, at which somebody is there."""
        return min(time, self._closes[bisect_right(self._opens, time) - 1])

    def begun_by(self, time: int, minutes: int) -> int:
        """When work of so many minutes begins at the latest that is over by a time."""
        due = self.worked(time) - minutes
        place = bisect_right(self.before, due) - 1
        return self._opens[place] + due - self.before[place]

    def days(self) -> list[int]:
        """The working days, counted from the first day, which is 0."""
        return [start // _DAY for start, _ in self.stretches]

    def later(self, number: int, days: int) -> int:
        """The working day so many working days after a day."""
        worked = self.days()
        return worked[bisect_right(worked, number) + days - 1]

    def earlier(self, number: int) -> int:
        """The last working day before a day."""
        worked = self.days()
        return worked[bisect_left(worked, number) - 1]

    def text(self, time: int) -> str:
        """A time as it stands in a plan."""
        return f"{self.on(time // _DAY)}T{time % _DAY // 60:02d}:{time % 60:02d}"

    def on(self, number: int) -> str:
        """A day as it stands in a plan."""
        return (self.first + datetime.timedelta(days=number)).isoformat()


def day(value: object, where: str) -> datetime.date:
    """A date, or an objection to its form."""
    try:
        return datetime.date.fromisoformat(str(value))
    except ValueError:
        raise FieldError(where, "is not a date like 2026-01-31") from None


def minute(value: object, where: str, first: datetime.date) -> int:
    """A time of a plan as minutes from midnight before its first day."""
    try:
        at = datetime.datetime.strptime(str(value), "%Y-%m-%dT%H:%M")
    except ValueError:
        raise FieldError(where, "is not a time like 2026-01-31T08:00") from None
    since = at - datetime.datetime.combine(first, datetime.time())
    if abs(since.days) > 36_500:
        raise FieldError(where, "lies a hundred years from the first day")
    return since.days * _DAY + since.seconds // 60

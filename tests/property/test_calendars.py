"""Calendars of any tasks: waits are kept, hands do one thing at a time, the chain is no longer than all of it."""

import datetime
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from firstcourse.schedule import Activity, Link, WorkClock, chain, earliest, latest, worked_in_turn
from firstcourse.schedule.network import with_crew
from firstcourse.verify.calendar.hours import Hours
from firstcourse.verify.calendar.times import Times
from firstcourse.verify.fields import Node

FIRST = datetime.date(2026, 3, 2)
WEEK = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")


@st.composite
def networks(draw: st.DrawFn) -> tuple[list[Activity], list[Link], WorkClock]:
    count = draw(st.integers(1, 9))
    acts, links = [], []
    for place in range(count):
        minutes = draw(st.sampled_from((0, 1, 29, 240, 480, 700, 1500)))
        seen = draw(st.booleans()) and not minutes
        held = draw(st.sampled_from((0, 0, 3 * 1440 + 100)))
        acts.append(Activity(id=str(place), minutes=minutes, seen=seen, not_before=held))
        for before in draw(st.sets(st.integers(0, place - 1), max_size=3)) if place else ():
            wait = draw(st.sampled_from((0, 60, 1440, 2880, 4321)))
            links.append(Link(task=str(place), after=str(before), minutes=wait))
    days = draw(st.sets(st.sampled_from(WEEK), min_size=1))
    off = draw(st.sets(st.integers(0, 20), max_size=5))
    length = draw(st.sampled_from((240, 480, 900)))
    holidays = frozenset(FIRST + datetime.timedelta(days=day) for day in off)
    return acts, links, WorkClock(first=FIRST, days=frozenset(days), holidays=holidays, begins=480, length=length)


@settings(max_examples=60, deadline=None)
@given(networks())
def test_calendars(network: tuple[list[Activity], list[Link], WorkClock]) -> None:
    acts, links, clock = network
    order = worked_in_turn(acts, links, clock)
    assert sorted(order) == sorted(one.id for one in acts if one.minutes)
    crewed = with_crew(links, order)
    spans = earliest(acts, crewed, clock)
    assert spans == earliest(list(reversed(acts)), crewed, clock)
    for link in links:
        assert spans[link.task][0] >= spans[link.after][1] + link.minutes
    for one in acts:
        start, end = spans[one.id]
        assert start >= one.not_before and clock.between(start, end) == one.minutes
    busy = sorted(spans[name] for name in order)
    assert all(a[1] <= b[0] for a, b in pairwise(busy))
    end = max(over for _, over in spans.values())
    last = latest(acts, crewed, clock, end)
    assert all(
        last[one.id] >= spans[one.id][0] or not clock.between(last[one.id], spans[one.id][0]) for one in acts
    )
    on = chain(acts, crewed, spans)
    known = {one.id: one for one in acts}
    most = sum(known[name].minutes for name in on) + sum(
        max(link.minutes for link in crewed if (link.task, link.after) == (b, a)) for a, b in pairwise(on)
    )
    assert most <= sum(one.minutes for one in acts) + sum(link.minutes for link in links)
    assert spans[on[-1]][1] == end
    # The verifier comes to the same times on another way.
    off = sorted(date.isoformat() for date in clock.holidays)
    asked = {"starts": FIRST.isoformat(), "days": sorted(clock.days), "holidays": off}
    hours = Hours(Node(asked | {"hours_a_day": clock.length / 60}, "job"), clock.begins, end)
    times = Times(
        {one.id: one.minutes for one in acts},
        tuple((link.task, link.after, link.minutes) for link in crewed),
        frozenset(one.id for one in acts if one.seen),
        {one.id: one.not_before for one in acts},
        hours,
    )
    assert times.earliest() == spans
    assert times.latest(end) == last
    assert all(times.binds(a, b, spans) for a, b in pairwise(on)) and times.is_free(on[0], spans)

"""Calendars worked out by hand: a chain with cure lags on the clock, and a bench that takes two visits.

The first is a finish-start network (longest path) on a clock that never stops. The second is counted on fingers
over a week with a holiday.
"""

import datetime

import pytest

from firstcourse.schedule import Activity, Link, WorkClock, chain, earliest, latest, worked_in_turn

ALL = frozenset(("mon", "tue", "wed", "thu", "fri", "sat", "sun"))
LASTS_H = {
    "demo": 8, "framing_check": 2, "boards": 10, "tape": 2, "membrane": 4, "flood_test": 24, "wall_tile": 14,
    "floor_tile": 6, "grout": 6, "sealant": 2, "in_use": 0,
}  # fmt: skip
LAGS_H = (
    ("demo", "framing_check", 0), ("framing_check", "boards", 0), ("boards", "tape", 0), ("tape", "membrane", 16),
    ("membrane", "flood_test", 24), ("flood_test", "wall_tile", 0), ("wall_tile", "floor_tile", 0),
    ("floor_tile", "grout", 48), ("grout", "sealant", 24), ("grout", "in_use", 72), ("sealant", "in_use", 24),
)  # fmt: skip
STARTS_H = {
    "demo": 0, "framing_check": 8, "boards": 10, "tape": 20, "membrane": 38, "flood_test": 66, "wall_tile": 90,
    "floor_tile": 104, "grout": 158, "sealant": 188, "in_use": 236,
}  # fmt: skip


def test_a_chain_with_cure_lags_on_a_clock_that_never_stops() -> None:
    clock = WorkClock(first=datetime.date(2026, 3, 2), days=ALL, begins=0, length=1440)
    acts = [Activity(id=name, minutes=hours * 60) for name, hours in LASTS_H.items()]
    links = [Link(task=after, after=before, minutes=lag * 60) for before, after, lag in LAGS_H]
    spans = earliest(acts, links, clock)
    assert {name: start / 60 for name, (start, _) in spans.items()} == STARTS_H
    assert max(end for _, end in spans.values()) == 236 * 60
    assert worked_in_turn(acts, links, clock) == tuple(LASTS_H)[:-1]
    assert "sealant" not in chain(acts, links, spans)
    assert latest(acts, links, clock, 236 * 60)["sealant"] == 210 * 60


def test_two_visits_by_hand() -> None:
    """Tile on Thursday and Friday, 48 h of wait over the weekend, Monday off: grout on Tuesday.

    Thursday 2 April 2026, 8 h a day from 8:00. Marking 4 h: Thursday to 12:00. Tile 10 h: Thursday to 16:00,
    Friday to 14:00. Mortar 48 h: Sunday 14:00; Monday is a holiday, so grout begins on Tuesday at 8:00,
    for 2 h. Water after 72 h more: Friday 10:00. Marking may begin at 10:00 for all that: 2 h of Friday afternoon
    are idle.
    """
    clock = WorkClock(
        first=datetime.date(2026, 4, 2),
        days=frozenset(("mon", "tue", "wed", "thu", "fri")),
        holidays=frozenset((datetime.date(2026, 4, 6),)),
        begins=480,
        length=480,
    )
    acts = [
        Activity(id="layout", minutes=240),
        Activity(id="tile", minutes=600),
        Activity(id="grout", minutes=120),
        Activity(id="in_use"),
    ]
    links = [
        Link(task="tile", after="layout"),
        Link(task="grout", after="tile", minutes=48 * 60),
        Link(task="in_use", after="grout", minutes=72 * 60),
    ]
    spans = earliest(acts, links, clock)
    assert {name: tuple(map(clock.said, span)) for name, span in spans.items()} == {
        "layout": ("2026-04-02T08:00", "2026-04-02T12:00"),
        "tile": ("2026-04-02T12:00", "2026-04-03T14:00"),
        "grout": ("2026-04-07T08:00", "2026-04-07T10:00"),
        "in_use": ("2026-04-10T10:00", "2026-04-10T10:00"),
    }
    last = latest(acts, links, clock, spans["in_use"][1])
    assert clock.said(last["layout"]) == "2026-04-02T10:00"
    assert clock.between(spans["layout"][0], last["layout"]) == 120


@pytest.mark.parametrize(("end", "minutes", "begins"), [(480, 0, 480), (960, 480, 480), (1920, 60, 900)])
def test_work_that_is_over_by_a_time(end: int, minutes: int, begins: int) -> None:
    clock = WorkClock(first=datetime.date(2026, 3, 2), days=ALL, begins=480, length=480)
    if minutes:
        assert clock.begun(end, minutes) == begins
    else:
        assert clock.seen_by(end) == begins

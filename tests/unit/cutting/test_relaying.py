from itertools import pairwise

import numpy as np
import pytest

from firstcourse.cutting import StockSize
from firstcourse.cutting.choice import _Search, choose
from firstcourse.cutting.choices import Arrangement, ChoiceField, Course
from firstcourse.cutting.laid import laid
from firstcourse.cutting.relaying import relay

SHEET = StockSize("s", 60, 36, 1)
WEIGHTS = np.array((1_000_000, 10_000, 10_000, 1_000, 300_000), np.int64)


def course(breaks, height):
    intervals = [
        (i, j, ((breaks[j] - breaks[i], height),))
        for i in range(len(breaks))
        for j in range(i + 1, len(breaks))
        if 8 <= breaks[j] - breaks[i] <= 60
    ]
    return Course(tuple(breaks), tuple(intervals))


def wall(name, heights):
    breaks = (0, 16, 32, 48, 64, 80, 96)
    return ChoiceField(
        name, tuple(Arrangement(tuple(course(breaks, h) for h in hs), 16) for hs in heights), "wall"
    )


FIELDS = [wall("a", [(36, 24), (30, 30)]), wall("b", [(36, 24), (30, 30)]), wall("c", [(36,), (18, 18)])]


@pytest.fixture
def search():
    """A search that has packed whole layouts only."""
    found = _Search(FIELDS, [SHEET], [])
    found.run(1, 0, 0)
    return found


def faults(search, state):
    """What is wrong with a state: blanks outside, on each other, twice or nowhere, or of another layout."""
    found = []
    slots = [slot for s, num in enumerate(state.num_member) for slot in state.member[s, :num]]
    if len(slots) != len(set(slots)):
        found.append("a slot is used twice")
    for sheet, room in enumerate(state.room_of):
        boxes = []
        for slot in state.member[sheet, : state.num_member[sheet]]:
            w, h = state.items[slot, :2]
            x, y, turned = state.place[slot, :3]
            w, h = (h, w) if turned else (w, h)
            if x + w > search.table[room, 0] or y + h > search.table[room, 1]:
                found.append("a blank leaves its sheet")
            if any(x < q + ww and q < x + w and y < r + hh and r < y + h for q, r, ww, hh in boxes):
                found.append("blanks overlap")
            boxes.append((x, y, w, h))
    wanted = []
    for f, field in enumerate(FIELDS):
        arrangement = field.arrangements[state.arrangement[f] - search.tables[0][f]]
        for c, made in enumerate(arrangement.courses):
            sizes = {(i, j): size for i, j, (size,) in made.intervals}
            breaks = state.chosen[f, c, : state.num_chosen[f, c]].tolist()
            for i, j in pairwise(breaks):
                w, h = sizes[i, j]
                wanted.append((w // search.unit, h // search.unit, f, c))
    if sorted(wanted) != sorted(tuple(state.items[slot, [0, 1, 3, 4]].tolist()) for slot in slots):
        found.append("the blanks are not those of the layout")
    return found


def test_a_packed_layout_is_taken_over_as_it_is(search):
    assert faults(search, search.best) == []


def test_a_sheet_taken_away_leaves_its_blanks_in_the_heap(search):
    fewer = search.best.without_emptiest(search.table, 0)
    assert faults(search, fewer) == []
    assert len(fewer.room_of) == len(search.best.room_of) - 1
    assert fewer.num_member[-1] > 0
    assert fewer.num_blanks == search.best.num_blanks


def test_a_sheet_that_cannot_be_done_without_is_not_taken_away(search):
    state = search.best
    while (fewer := state.without_emptiest(search.table, 0)) is not None:
        state = fewer
    slots = [slot for s, num in enumerate(state.num_member) for slot in state.member[s, :num]]
    held = sum(w * h for w, h in state.items[slots, :2].tolist()) * search.unit**2
    assert 1.02 * (len(state.room_of) - 1) * 60 * 36 < held <= 1.02 * len(search.best.room_of) * 60 * 36


@pytest.mark.parametrize("steps", [1, 50, 3_000])
def test_every_state_on_the_way_is_a_layout_and_its_cutting(search, steps):
    state = search.best.without_emptiest(search.table, 0)
    relay(
        search.tables,
        search.table,
        search.least,
        *state,
        search.seed,
        steps,
        40_000,
        2_000,
        WEIGHTS,
        search.chance,
    )
    assert faults(search, state) == []


def test_fewer_cuts_are_never_more_and_keep_the_sheets(search):
    before = (search.cost, search.cuts, search.blanks)
    search.trim(5_000, 2)
    assert faults(search, search.best) == []
    assert (search.cost, search.cuts, search.blanks) <= before


def test_the_same_seed_gives_the_same_state():
    states = []
    for _ in range(2):
        search = _Search(FIELDS, [SHEET], [])
        search.run(500, 2_000, 0)
        states.append(search.best)
    assert all(np.array_equal(a, b) for a, b in zip(*states, strict=True))


def test_nothing_laid_has_no_sheet_to_take_away():
    search = _Search(FIELDS, [SHEET], [])
    state = laid(search._empty(), search.tables, search.table, 0, search.least, search.most)
    assert state.num_blanks == 0
    assert state.without_emptiest(search.table, 0) is None


def test_blanks_keep_the_order_of_breaks_in_their_names():
    choice = choose(FIELDS, [SHEET], effort=1)
    names = sorted(part.blank for sheet in choice.sheets for part in sheet.parts if part.blank)
    assert len(names) == len(set(names))
    assert {name.split("#")[0] for name in names} == {"a", "b", "c"}

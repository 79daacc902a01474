from dataclasses import replace
from itertools import pairwise, product

import pytest

from firstcourse.cutting import CannotCutError, KeptSize, StockSize
from firstcourse.cutting import choice as choice_module
from firstcourse.cutting.choice import choose
from firstcourse.cutting.choices import Arrangement, Choice, ChoiceField, Course
from firstcourse.cutting.kernels import NUM_MANNERS
from firstcourse.cutting.model import Blank
from firstcourse.cutting.room_ways import PackingWay, packed, rooms_of
from firstcourse.errors import InputValueError

SHEET = StockSize("s", 60, 36, 1)


def course(breaks, height, longest=60, least=8):
    intervals = [
        (i, j, ((breaks[j] - breaks[i], height),))
        for i in range(len(breaks))
        for j in range(i + 1, len(breaks))
        if least <= breaks[j] - breaks[i] <= longest
    ]
    return Course(tuple(breaks), tuple(intervals))


def wall(name, heights, breaks=(0, 16, 32, 48, 64, 80, 96), stagger=16):
    return ChoiceField(
        name, tuple(Arrangement(tuple(course(breaks, h) for h in hs), stagger) for hs in heights), "wall"
    )


ROOM = [wall("a", [(36, 24), (30, 30)]), wall("b", [(36, 24), (30, 30)]), wall("c", [(36,), (18, 18)])]


def assert_cut_rightly(choice: Choice, fields, sheet=SHEET):
    wanted = {}
    for pick, field in zip(choice.picks, fields, strict=True):
        arrangement = field.arrangements[pick.arrangement]
        for c, (made, breaks) in enumerate(zip(arrangement.courses, pick.breaks, strict=True)):
            assert (breaks[0], breaks[-1]) == (0, len(made.breaks) - 1)
            sizes = {(i, j): blanks for i, j, blanks in made.intervals}
            for number, pair in enumerate(pairwise(breaks)):
                for n, size in enumerate(sizes[pair]):
                    wanted[f"{field.id}#{c}.{number}.{n}"] = size
        inner = [[c.breaks[b] for b in bs[1:-1]] for c, bs in zip(arrangement.courses, pick.breaks, strict=True)]
        for lower, upper in pairwise(inner):
            assert all(abs(a - b) >= arrangement.stagger for a in lower for b in upper)
    got = {}
    for cut_sheet in choice.sheets:
        assert sum(p.size[0] * p.size[1] for p in cut_sheet.parts) == sheet.w * sheet.h
        for part in cut_sheet.parts:
            if part.blank is not None:
                got[part.blank] = part.size[::-1] if part.turned else part.size
    assert got == wanted


@pytest.mark.parametrize("effort", [0, 1])
def test_every_blank_of_the_chosen_breaks_is_cut_once(effort):
    assert_cut_rightly(choose(ROOM, [SHEET], effort=effort), ROOM)


def test_the_same_call_gives_the_same_choice():
    assert choose(ROOM, [SHEET], effort=1) == choose(ROOM, [SHEET], effort=1)


def test_more_effort_is_never_worse():
    low, high = (choose(ROOM, [SHEET], effort=effort) for effort in (0, 1))
    assert (len(high.sheets), high.num_cuts) <= (len(low.sheets), low.num_cuts)


def test_patience_keeps_the_rules_and_must_be_at_least_one():
    usual, longer = choose(ROOM, [SHEET]), choose(ROOM, [SHEET], patience=3)
    assert_cut_rightly(longer, ROOM)
    assert longer.cost <= usual.cost
    with pytest.raises(InputValueError, match="patience"):
        choose(ROOM, [SHEET], patience=0)


def test_breaks_are_chosen_so_that_the_pieces_share_sheets():
    # Seams at 48 give two pieces of 48 that need a sheet each; at 60 and 36 the rest shares one.
    fields = [ChoiceField(n, (Arrangement((course((0, 36, 48, 60, 96), 18),), 16),)) for n in "ab"]
    choice = choose(fields, [SHEET], bound=2)
    assert len(choice.sheets) == 2
    assert choice.proven


def test_a_bound_reached_is_proven_and_one_not_reached_is_not():
    fields = [wall("a", [(36,)])]
    assert choose(fields, [SHEET], bound=2).proven
    assert not choose(fields, [SHEET], bound=1).proven


def test_an_interval_may_have_no_blanks_or_several():
    made = Course((0, 10, 20), ((0, 1, ()), (1, 2, ((5, 5), (6, 6)))))
    choice = choose([ChoiceField("f", (Arrangement((made,), 1),))], [SHEET])
    assert sorted(p.blank for p in choice.sheets[0].parts if p.blank) == ["f#0.1.0", "f#0.1.1"]


def test_tiny_cases_equal_the_best_of_all_breaks():
    fields = [wall("a", [(30, 20)], (0, 24, 40, 64)), wall("b", [(28,), (14, 14)], (0, 20, 44, 64))]
    best = min(_fewest(pattern) for pattern in product(*(_patterns(field) for field in fields)))
    assert len(choose(fields, [SHEET], effort=1).sheets) == best


def _patterns(field):
    """Blanks of every legal choice of breaks of a field."""
    for arrangement in field.arrangements:
        rows = []
        for made in arrangement.courses:
            sizes = {(i, j): blanks for i, j, blanks in made.intervals}
            inner = range(1, len(made.breaks) - 1)
            subsets = [[i for i in inner if mask >> i & 1] for mask in range(0, 2 ** len(made.breaks), 2)]
            subsets = [s for s in subsets if all(p in sizes for p in pairwise([0, *s, len(made.breaks) - 1]))]
            rows.append([(made, s, sizes) for s in subsets])
        for row in product(*rows):
            places = [[made.breaks[i] for i in s] for made, s, _ in row]
            if all(abs(a - b) >= arrangement.stagger for x, y in pairwise(places) for a in x for b in y):
                yield [
                    size
                    for made, s, sizes in row
                    for p in pairwise([0, *s, len(made.breaks) - 1])
                    for size in sizes[p]
                ]


def _fewest(parts):
    blanks = [Blank(str(n), *size, ("s",)) for n, size in enumerate(size for part in parts for size in part)]
    return min(
        len(packed(blanks, rooms_of([SHEET], []), 0, PackingWay(manner, False, (), 1), 1))
        for manner in range(NUM_MANNERS)
    )


def test_blanks_that_fit_no_sheet_are_refused():
    fields = [wall("a", [(36, 24)])]
    with pytest.raises(CannotCutError):
        choose(fields, [replace(SHEET, w=20)])
    with pytest.raises(CannotCutError):
        choose(fields, [StockSize("s", 100, 30, 1, may_turn=False)])
    with pytest.raises(CannotCutError):
        packed([Blank("p", 61, 10, ("s",))], rooms_of([SHEET], []), 0, PackingWay(0, False, (), 1), 1)


def test_courses_without_a_legal_pattern_are_refused():
    with pytest.raises(CannotCutError):
        choose([wall("a", [(30, 30)], (0, 48, 96))], [SHEET])


@pytest.mark.parametrize(
    ("fields", "effort"), [([], 1), (ROOM, 4), ([ROOM[0], ROOM[0]], 1), ([ChoiceField("a", ())], 1)]
)
def test_wrong_calls_are_refused(fields, effort):
    with pytest.raises(InputValueError):
        choose(fields, [SHEET], effort=effort)


def test_the_cheaper_stock_is_bought_and_a_kept_rectangle_used_first():
    fields = [wall("a", [(36,)])]
    dear, cheap = StockSize("dear", 60, 36, 5), StockSize("cheap", 48, 36, 3)
    assert choose(fields, [dear]).cost == 10
    assert choose(fields, [dear, cheap]).cost == 6
    choice = choose(fields, [dear, cheap], [KeptSize("rack", "dear", 50, 40)])
    assert choice.cost == 3
    assert {sheet.kept for sheet in choice.sheets} == {None, "rack"}


def test_blanks_come_from_the_stocks_their_arrangement_names():
    made = course((0, 30), 20)
    fields = [ChoiceField(n, (Arrangement((made,), 16, (stock,)),)) for n, stock in (("a", "s"), ("b", "t"))]
    choice = choose(fields, [SHEET, replace(SHEET, id="t", cost=2)])
    assert {sheet.stock: sheet.parts[0].blank for sheet in choice.sheets} == {"s": "a#0.0.0", "t": "b#0.0.0"}
    assert choice.cost == 3


def test_sides_need_not_share_a_divisor_with_the_sheet():
    fields = [wall("a", [(36,)], tuple(16 * n for n in range(7)))]
    scaled = [ChoiceField("a", (Arrangement((course(tuple(160 * n for n in range(7)), 360, 600, 80),), 160),))]
    choice = choose(scaled, [StockSize("s", 607, 363, 1)])
    assert len(choice.sheets) == len(choose(fields, [SHEET]).sheets)
    assert_cut_rightly(choice, scaled, StockSize("s", 607, 363, 1))


def test_cuts_are_spared_as_long_as_that_pays(monkeypatch):
    """Nine walls of small steps: one round leaves cuts that further rounds take away, at the same cost."""
    fields = [
        wall(
            f"w{k}",
            [(36, 36, 30 - k % 8), (33, 33, 34 - k % 8), (25, 25, 25, 25 - k % 8)],
            breaks=tuple(range(0, 96 + k, 4)),
            stagger=8,
        )
        for k in range(9)
    ]
    several = choose(fields, [SHEET])
    monkeypatch.setattr(choice_module, "MOST_TRIMS", (1, 1, 1, 1))
    once = choose(fields, [SHEET])
    assert several.cost == once.cost
    assert several.num_cuts < once.num_cuts
    assert_cut_rightly(several, fields)

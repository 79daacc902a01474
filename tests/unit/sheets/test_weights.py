"""Each weight of the choice is a rule that a job can set, and setting it changes what is chosen."""

import datetime

import pytest

from firstcourse.boards import SurfaceLayout
from firstcourse.cutting import Blank, CuttingPlan, StockSize, cut
from firstcourse.plan import Piece, Seam, Stock
from firstcourse.rules import Override, RuleSet, load_rules
from firstcourse.sheets.weighing import Value, value_of
from firstcourse.units import inches

ON = datetime.date(2026, 11, 25)
STOCK = Stock(id="board", size=(inches(36), inches(60)), thickness=inches(0.5), kind="fibre_cement", price=15)
Sizes = tuple[tuple[float, float], ...]


def rules_with(rule: str = "", value: float | bool = 0) -> RuleSet:
    changed = (Override(rule=rule, value=value, reason="asked for"),) if rule else ()
    return load_rules(ON, "us", changed)


def laid(sizes: Sizes, seams: float) -> tuple[CuttingPlan, SurfaceLayout]:
    """Pieces of these sizes [in] with so much seam [in], cut from as many sheets as that takes."""
    pieces = tuple(
        Piece(
            id=f"P{n}",
            board=f"w#{n}",
            stock="board",
            blank=(inches(w), inches(h)),
            outline=((0, 0), (inches(w), 0), (inches(w), inches(h)), (0, inches(h))),
        )
        for n, (w, h) in enumerate(sizes)
    )
    seam = Seam(line=((0, 0), (inches(seams), 0)), width=inches(0.125))
    cutting = cut([Blank(p.id, *p.blank, ("board",)) for p in pieces], [StockSize("board", *STOCK.size, 1500)])
    return cutting, SurfaceLayout(surface_id="w", pieces=pieces, seams=(seam,))


def better(one: tuple[Sizes, float], other: tuple[Sizes, float], rules: RuleSet) -> int:
    """Which of two layouts is chosen: 0 or 1."""
    values: list[Value] = []
    for sizes, seams in (one, other):
        cutting, layout = laid(sizes, seams)
        values.append(value_of(cutting, [layout], [STOCK], rules))
    assert values[0] != values[1]
    return int(values[1] < values[0])


FEW_BOARDS: tuple[Sizes, float] = (((36, 30), (36, 30)), 60)
MORE_BOARDS: tuple[Sizes, float] = (((36, 30), (18, 30), (18, 30)), 30)
SLIVER: tuple[Sizes, float] = (((36, 53.9), (36, 6)), 30)
EVEN: tuple[Sizes, float] = (((36, 30), (36, 29.9)), 36)
LIGHT: tuple[Sizes, float] = (((30, 30), (30, 30)), 30)
HEAVY: tuple[Sizes, float] = (((36, 30), (30, 30)), 30)
ONE_OFFCUT: tuple[Sizes, float] = (((36, 48),), 0)


@pytest.mark.parametrize(
    ("one", "other", "rule", "value", "usual", "then"),
    [
        (SLIVER, EVEN, "choice.seam.step", 4, 0, 1),
    ],
)
def test_a_weight_changes_the_choice(
    one: tuple[Sizes, float], other: tuple[Sizes, float], rule: str, value: float, usual: int, then: int
) -> None:
    assert better(one, other, rules_with()) == usual
    assert better(one, other, rules_with(rule, value)) == then


def test_fewer_boards_outweigh_shorter_seams() -> None:
    assert better(FEW_BOARDS, MORE_BOARDS, rules_with()) == 0


def value(case: tuple[Sizes, float], rules: RuleSet) -> Value:
    cutting, layout = laid(*case)
    return value_of(cutting, [layout], [STOCK], rules)


def test_offcuts_are_weighed_by_their_least_side_and_their_share() -> None:
    assert value(ONE_OFFCUT, rules_with()).kept == 0
    assert value(ONE_OFFCUT, rules_with("choice.offcut.step", 0.1)).kept == -2
    narrow = load_rules(
        ON,
        "us",
        (
            Override(rule="choice.offcut.step", value=0.1, reason="asked for"),
            Override(rule="choice.offcut.least_side", value=13, reason="asked for"),
        ),
    )
    assert value(ONE_OFFCUT, narrow).kept == 0


def test_the_narrowest_piece_is_weighed_in_steps() -> None:
    near: tuple[Sizes, float] = (((36, 29), (36, 30)), 36)
    assert value(EVEN, rules_with()).smallest < value(near, rules_with()).smallest
    steps = rules_with("choice.piece.step", 4)
    assert value(EVEN, steps).smallest == value(near, steps).smallest


def test_the_heaviest_piece_counts_where_one_person_works() -> None:
    assert value(LIGHT, rules_with()).heaviest < value(HEAVY, rules_with()).heaviest
    helped = rules_with("choice.piece.lone_worker", False)
    assert value(LIGHT, helped).heaviest == value(HEAVY, helped).heaviest == 0


def test_every_weight_has_a_meaning_and_a_source() -> None:
    entries = list(rules_with().under("choice."))
    assert len(entries) == 5
    assert all(entry.description and entry.basis == "house_assumption" for entry in entries)

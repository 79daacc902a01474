"""Why not fewer sheets: the sentences against plans small enough to check by hand."""

import pytest

from firstcourse.app.summaries import summarize
from firstcourse.plan import Board, Count, JobStamp, Part, Piece, Plan, Sheet, Stock, Surface, SurfaceKind
from firstcourse.steps.plan import PlanResult
from firstcourse.takeoff.sheet_fills import whole_percents
from firstcourse.takeoff.why import StockWhy, beside_practice, why_sheets
from firstcourse.units import Tape, inches, mm
from firstcourse.values import Name, Word, length, money
from firstcourse.words import speaker_for
from firstcourse.workings import Working, by_id

SIZE = (inches(36), inches(60))
Size = tuple[int, int]


def fewest(result: int, proof: str = "area") -> Working:
    return Working(
        formula="bounds-sheets", at=("stock/board",), inputs={"used": 3, "proof": Word(word=proof)}, result=result
    )


def practice(stock: str, result: int, **faults: int) -> Working:
    codes = [(f"BRD-{code[1:]}", number) for code, number in faults.items()]
    return Working(
        formula="boards-practice",
        at=(f"stock/{stock}",),
        inputs={
            "keeps": not codes,
            "faults": tuple(Word(word=code) for code, _ in codes),
            "numbers": tuple(number for _, number in codes),
        },
        result=result,
    )


def plan_of(
    sheets: list[list[tuple[Size, bool]]],
    count: Count,
    *,
    tape: Tape = Tape.INCH,
    first_is_offcut: bool = False,
    workings: tuple[Working, ...] | None = None,
    stocks: tuple[str, ...] = ("board",),
) -> Plan:
    """Sheets of the first stock; each part is (size, whether it is a piece); places do not matter here."""
    boards, pieces, made = [], [], []
    for number, parts in enumerate(sheets, start=1):
        listed = []
        for size, is_piece in parts:
            name = f"S{number}{'abc'[len(listed)]}"
            piece = None
            if is_piece:
                mark = f"W1-{len(boards) + 1}"
                piece = f"P{mark}"
                ring = ((0, 0), (size[0], 0), size, (0, size[1]))
                boards.append(Board(id=f"w#{len(boards)}", piece=piece, outline=ring, mark=mark))
                pieces.append(Piece(id=piece, board=boards[-1].id, stock="board", blank=size, outline=ring))
            listed.append(Part(id=name, at=(0, 0), size=size, piece=piece, keep=not is_piece))
        source = "offcut:rack 1" if first_is_offcut and number == 1 else "new"
        made.append(Sheet(id=f"S{number}", stock="board", size=SIZE, source=source, parts=tuple(listed)))
    wall = Surface(
        id="r/wall/A-B", room="r", kind=SurfaceKind.WALL, outline=((0, 0), (1, 0), (1, 1)), boards=tuple(boards)
    )
    return Plan(
        job=JobStamp(name="test", digest="0", date="2026-01-01", tape=tape),
        surfaces=(wall,),
        pieces=tuple(pieces),
        sheets=tuple(made),
        stock=tuple(Stock(id=s, size=SIZE, thickness=inches(0.5), kind="fibre_cement") for s in stocks),
        counts={"board": count, **{s: Count(used=0, lower_bound=0, proven=True) for s in stocks[1:]}},
        workings=by_id((fewest(count.lower_bound),) if workings is None else workings),
    )


def said(plan: Plan) -> tuple[StockWhy, str]:
    (why,) = why_sheets(plan)
    return why, "\n".join(speaker_for(plan).told(why.reasons))


def answer(plan: Plan) -> str:
    (why,) = why_sheets(plan)
    return " ".join(speaker_for(plan).told(why.answer))


def beside(plan: Plan, name: str) -> str:
    return " ".join(speaker_for(plan).told(beside_practice(plan, name)))


WHOLE, HALF = SIZE, (inches(36), inches(30))


def test_the_area_argument_is_told_with_its_figures() -> None:
    plan = plan_of([[(WHOLE, True)], [(HALF, True), (HALF, False)]], Count(used=2, lower_bound=2, proven=True))
    text = said(plan)[1]
    assert answer(plan) == "2 sheets. Where the seams lie now, fewer cannot give these boards: that is proven."
    assert "This plan has 2 boards of it." in text and "They take 22.50 sq ft of sheet," in text
    assert "One sheet has 15.00 sq ft." in text
    assert "1.50 sheets" in text and "2 sheets at least" in text


def test_every_sheet_shows_its_pieces_and_what_is_kept() -> None:
    plan = plan_of([[(HALF, True), (HALF, False)]], Count(used=1, lower_bound=1, proven=True))
    (sheet,) = said(plan)[0].sheets
    assert [(part.name, part.share, part.kept) for part in sheet.parts] == [
        ("W1-1", 0.5, False),
        ("S1b", 0.5, True),
    ]
    assert (sheet.used, sheet.kept, sheet.waste) == (0.5, 0.5, 0.0)
    assert sheet.parts[1].size == (length(inches(36)), length(inches(30)))
    assert 'To keep: S1b (36" × 30").' in said(plan)[1]


def test_a_kept_offcut_takes_its_share_of_the_need() -> None:
    plan = plan_of(
        [[(HALF, True)], [(WHOLE, True)]], Count(used=1, lower_bound=1, proven=True), first_is_offcut=True
    )
    why, text = said(plan)
    assert "Kept offcuts give 7.50 sq ft of that, and 15.00 sq ft is left." in text
    assert "1.00 sheets" in text and "1 sheet at least" in text
    assert why.sheets[0].source == "rack 1"


def test_nothing_is_bought_where_offcuts_give_all() -> None:
    plan = plan_of([[(HALF, True)]], Count(used=0, lower_bound=0, proven=True), first_is_offcut=True)
    assert answer(plan) == "Kept offcuts give every piece of it: nothing is bought."


def test_a_gap_is_admitted() -> None:
    one_less = plan_of(
        [[(WHOLE, True)], [(HALF, True)], [(HALF, True)]], Count(used=3, lower_bound=2, proven=False)
    )
    assert "Whether 2 can do is not known" in answer(one_less)
    more = plan_of([[(HALF, True)]] * 4, Count(used=4, lower_bound=2, proven=False))
    assert "Whether 2 to 3 can do is not known" in answer(more)


def test_a_bound_above_the_area_says_what_it_counts() -> None:
    large = (inches(31), inches(32))
    plan = plan_of(
        [[(large, True)], [(large, True)], [(large, True)]],
        Count(used=3, lower_bound=3, proven=True),
        workings=(fewest(3, "dual_functions"),),
    )
    text = said(plan)[1]
    assert "No two of W1-1, W1-2 and W1-3 come out of one sheet, whichever way they are turned: 3 sheets" in text
    # Where boards that anyone can hold side by side give the number, nothing harder is told.
    assert "counts as the whole width" not in text
    assert "The bound holds for the pieces of this layout" in text


def test_many_boards_are_not_named_one_by_one() -> None:
    large = (inches(31), inches(32))
    plan = plan_of(
        [[(large, True)]] * 10,
        Count(used=10, lower_bound=10, proven=True),
        workings=(fewest(10, "dual_functions"),),
    )
    assert "W1-7 and 3 others come out of one sheet" in said(plan)[1]


def test_a_bound_that_pairs_do_not_give_is_told_in_its_own_words() -> None:
    plan = plan_of(
        [[(WHOLE, True)], [(WHOLE, True)], [((inches(18), inches(31)), True)] * 2],
        Count(used=3, lower_bound=4, proven=False),
        workings=(fewest(4, "dual_functions"),),
    )
    text = said(plan)[1]
    assert "No two of W1-1, W1-2 and W1-3 come out of one sheet" in text
    assert "so each of these 3 needs its own." in text
    assert "counts as the whole width) asks for 4 sheets." in text


def test_boards_go_together_where_one_cut_parts_them() -> None:
    long, low = (inches(36), inches(40)), (inches(20), inches(36))
    plan = plan_of(
        [[(long, True)], [(low, True)]],
        Count(used=2, lower_bound=3, proven=False),
        workings=(fewest(3),),
    )
    assert "No two of" not in said(plan)[1]


def test_percents_make_a_hundred() -> None:
    assert whole_percents([0.913, 0.083, 0.004]) == (91, 8, 1)
    assert whole_percents([1 / 3] * 3) == (34, 33, 33)
    assert whole_percents([1.0, 0.0]) == (100, 0)


def test_pieces_that_do_fit_in_pairs_are_not_called_too_large() -> None:
    plan = plan_of(
        [[((inches(18), inches(31)), True)]] * 4,
        Count(used=4, lower_bound=4, proven=True),
        workings=(fewest(4, "none"),),
    )
    text = said(plan)[1]
    assert "No two of" not in text
    assert "Area is not all that counts: 4 sheets are needed at least." in text


def test_prices_are_told_in_words() -> None:
    plan = plan_of(
        [[((inches(36), inches(19)), True)]] * 4,
        Count(used=4, lower_bound=4, proven=True),
        workings=(fewest(4, "pattern_prices"),),
    )
    assert "Put a price on every board" in said(plan)[1]
    assert "the boards are then worth 4 sheets at least." in said(plan)[1]


@pytest.mark.parametrize(
    ("least", "told"),
    [
        (15.0, "cost 15.00 USD together, and no cutting of these pieces costs less: this is proven."),
        (14.0, "cost 15.00 USD together; no cutting of these pieces costs less than 14.00."),
    ],
)
def test_no_least_number_of_one_of_two_stocks(least: float, told: str) -> None:
    cost = Working(
        formula="bounds-cost",
        at=("job",),
        inputs={"cost": money(15), "proof": Word(word="area"), "currency": Name(name="USD")},
        result=money(least),
    )
    plan = plan_of(
        [[(WHOLE, True)]],
        Count(used=1, lower_bound=0, proven=False),
        stocks=("board", "other"),
        workings=(practice("board", 3), practice("other", 0), cost),
    )
    text = said(plan)[1]
    assert told in text
    assert "no fewest number of this one alone" in answer(plan)
    assert "buys 3 × board for the same surfaces; this plan buys 1 × board." in text


@pytest.mark.parametrize(("bought", "words"), [(3, "1 more than"), (2, "as many as"), (1, "1 fewer than")])
def test_practice_stands_beside_it(bought: int, words: str) -> None:
    plan = plan_of(
        [[(WHOLE, True)], [(WHOLE, True)]],
        Count(used=2, lower_bound=2, proven=True),
        workings=(practice("board", bought),),
    )
    assert f"buys {bought}: {words} this plan." in said(plan)[1]


def test_stocks_that_stand_in_for_each_other_are_compared_together() -> None:
    fault = (
        "Plain practice does not keep all rules here: 2 boards narrower than the least piece (boards.piece.min)."
    )
    plan = plan_of(
        [[(WHOLE, True)], [(WHOLE, True)]],
        Count(used=2, lower_bound=0, proven=False),
        stocks=("board", "other"),
        workings=(practice("board", 0), practice("other", 1, _204=2)),
    )
    priced = [stock.model_copy(update={"price": price}) for stock, price in zip(plan.stock, (10, 15), strict=True)]
    plan = plan.model_copy(update={"stock": tuple(priced)})
    assert beside(plan, "board") == (
        "Plain practice buys 1 × other for the same surfaces (15.00 money); "
        f"this plan buys 2 × board (20.00 money). {fault}"
    )
    assert beside_practice(plan, "other") == beside_practice(plan, "board")
    done = PlanResult(plan=plan, document="", practice={"board": 0, "other": 1})
    summary = summarize(done)
    assert summary.practice == beside_practice(plan, "board")
    assert [row.practice for row in summary.stock] == [None, None]


def test_practice_alike_for_all_of_them_needs_no_sentence() -> None:
    plan = plan_of(
        [[(WHOLE, True)]],
        Count(used=1, lower_bound=1, proven=True),
        stocks=("board", "other"),
        workings=(practice("board", 1), practice("other", 0)),
    )
    assert beside_practice(plan, "board") == ()


def test_a_millimetre_tape_speaks_metric() -> None:
    plan = plan_of([[((mm(600), mm(1000)), True)]], Count(used=1, lower_bound=1, proven=True), tape=Tape.MM)
    why, text = said(plan)
    assert "This plan has 1 board of it." in text and "They take 0.600 m² of sheet," in text
    assert why.sheets[0].parts[0].size == (length(mm(600)), length(mm(1000)))

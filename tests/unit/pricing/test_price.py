from decimal import Decimal

from firstcourse.plan import Pack, Quantity, Stock, TileStock
from firstcourse.pricing import price
from firstcourse.takeoff import sheets_of, tiles_of
from firstcourse.units import inches

SHEET, BOX = Pack(kind="sheet", size=1, unit="sheet"), Pack(kind="box", size=30, unit="tile")


def stock(name: str, each: float | None) -> Stock:
    return Stock(id=name, size=(inches(36), inches(60)), thickness=inches(0.5), kind="fibre_cement", price=each)


def sheets(name: str, number: int) -> Quantity:
    return Quantity(item=sheets_of(name), exact=number, unit="sheet", buy=number, pack=SHEET)


def test_sheets_cost_what_the_job_says_to_the_cent() -> None:
    done = price((sheets("a", 3), sheets("b", 2)), (stock("a", 17.9), stock("b", 0.1)))
    assert [line.cost for line in done.lines] == [Decimal("53.7"), Decimal("0.2")]
    assert done.total == Decimal("53.9")
    assert done.unpriced == ()


def test_a_missing_price_is_told_and_left_out() -> None:
    done = price((sheets("a", 3), sheets("b", 2)), (stock("a", 10), stock("b", None)))
    assert (done.total, done.unpriced) == (Decimal("30"), ("stock/b",))


def test_nothing_priced_has_no_total() -> None:
    assert price((sheets("a", 3),), (stock("a", None),)).total is None
    assert price((), (stock("a", 10),)).total is None


def test_tiles_cost_by_the_box() -> None:
    size = (inches(12), inches(12))
    white = TileStock(
        id="white", size=size, thickness=inches(0.25), kind="ceramic", joint=inches(0.125), price=48.1
    )
    boxes = Quantity(item=tiles_of("white"), exact=184, unit="tile", buy=7, pack=BOX)
    assert price((boxes,), (), (white,)).total == Decimal("336.7")

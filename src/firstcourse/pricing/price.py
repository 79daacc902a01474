"""What sheets and tiles cost, as far as the job gives their prices."""

from decimal import Decimal

from firstcourse.plan import Frozen, Quantity, Stock, TileStock
from firstcourse.takeoff import sheets_of, tiles_of
from firstcourse.values import Ref, Value, currency_of, money
from firstcourse.workings import Working


class Line(Frozen):
    """One priced line, in the job's currency; `item` refers to the sheet or tile."""

    item: str
    buy: int
    each: Decimal
    cost: Decimal


class Pricing(Frozen):
    """Cost of what is to be bought.

    Attributes:
        total: Sum of the lines; None where nothing to buy has a price.
        unpriced: References to what is to be bought and has no price; the total leaves it out.
    """

    lines: tuple[Line, ...] = ()
    total: Decimal | None = None
    unpriced: tuple[str, ...] = ()


def price(
    quantities: tuple[Quantity, ...], stock: tuple[Stock, ...], tile_stock: tuple[TileStock, ...] = ()
) -> Pricing:
    """Price the sheets and tiles of a shopping list; a missing price is said, never guessed.

    Args:
        quantities: What to buy.
        stock: Sheets with their prices.
        tile_stock: Tiles with the prices of their boxes.
    """
    buys = {quantity.item: quantity.buy for quantity in quantities}
    lines: list[Line] = []
    unpriced: list[str] = []
    named = [(sheets_of(item.id), item.price) for item in stock]
    named += [(tiles_of(item.id), item.price) for item in tile_stock]
    for name, asked in named:
        buy = buys.get(name, 0)
        if not buy:
            continue
        if asked is None:
            unpriced.append(name)
            continue
        # Through text: a price of 17.9 means just that, not its nearest binary fraction.
        each = Decimal(str(asked))
        lines.append(Line(item=name, buy=buy, each=each, cost=each * buy))
    total = sum((line.cost for line in lines), Decimal(0)) if lines else None
    return Pricing(lines=tuple(lines), total=total, unpriced=tuple(unpriced))


def cost_working(what: str, priced: Pricing, currency: str) -> Working | None:
    """What is paid, line by line; None where nothing to buy has a price.

    Args:
        what: `sheets` or `tiles`.
        priced: Their cost.
        currency: As the job names it; empty where it names none.
    """
    if priced.total is None:
        return None
    inputs: dict[str, Value] = {
        "of": tuple(Ref(ref=line.item) for line in priced.lines),
        "packs": tuple(line.buy for line in priced.lines),
        "price": tuple(money(float(line.each)) for line in priced.lines),
        "complete": not priced.unpriced,
        "unpriced": tuple(Ref(ref=name) for name in priced.unpriced),
        "currency": currency_of(currency),
    }
    return Working(formula=f"cost-{what}", at=("job",), inputs=inputs, result=money(float(priced.total)))

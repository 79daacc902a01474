"""What the sheets cost, as far as the job gives their prices."""

from decimal import Decimal

from firstcourse.plan import Quantity, Stock
from firstcourse.plan.model import Frozen
from firstcourse.quantities import sheets_of


class Line(Frozen):
    """One priced line, in the job's currency."""

    item: str
    buy: int
    each: Decimal
    cost: Decimal


class Pricing(Frozen):
    """Cost of the sheets to buy.

    Attributes:
        total: Sum of the lines; None where nothing to buy has a price.
        unpriced: Sheets to buy without a price, which the total leaves out.
    """

    lines: tuple[Line, ...] = ()
    total: Decimal | None = None
    unpriced: tuple[str, ...] = ()


def price(quantities: tuple[Quantity, ...], stock: tuple[Stock, ...]) -> Pricing:
    """Price the sheets of a shopping list; a missing price is said, never guessed.

    Args:
        quantities: What to buy.
        stock: Sheets with their prices.
    """
    buys = {quantity.item: quantity.buy for quantity in quantities}
    lines: list[Line] = []
    unpriced: list[str] = []
    for item in stock:
        name = sheets_of(item.id)
        buy = buys.get(name, 0)
        if not buy:
            continue
        if item.price is None:
            unpriced.append(name)
            continue
        # Through text: a price of 17.9 means just that, not its nearest binary fraction.
        each = Decimal(str(item.price))
        lines.append(Line(item=name, buy=buy, each=each, cost=each * buy))
    total = sum((line.cost for line in lines), Decimal(0)) if lines else None
    return Pricing(lines=tuple(lines), total=total, unpriced=tuple(unpriced))

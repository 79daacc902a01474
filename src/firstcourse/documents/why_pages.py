"""What the site pack prints of the question why so many sheets and not fewer."""

from typing import Any

from firstcourse.plan import Plan
from firstcourse.quantities.why import Share, SheetFill, StockWhy, why_sheets

MOST_BOXES = 40
"""Above this, a row of sheets is told by its number alone."""


def why_page(plan: Plan) -> dict[str, Any]:
    """The page as plain values: a title, and for each stock rows of sheets, the fill of each and the argument."""
    stocks = why_sheets(plan)
    bought = sum(count.used for count in plan.counts.values())
    return {
        "title": f"Why {bought} {'sheet' if bought == 1 else 'sheets'}",
        "stocks": [_stock(stock, plan) for stock in stocks],
    }


def _stock(stock: StockWhy, plan: Plan) -> dict[str, Any]:
    rows: list[tuple[str, int | None]] = [
        ("plain practice buys", stock.practice),
        ("this plan buys", stock.used),
        ("fewest possible", stock.lower_bound if stock.proven or stock.lower_bound else None),
    ]
    area = {sheet.id: sheet.size[0] * sheet.size[1] for sheet in plan.sheets}
    largest = max(area[sheet.id] for sheet in stock.sheets)
    return {
        "name": stock.stock,
        "answer": stock.answer,
        "counts": [
            {"label": label, "number": number, "boxes": number if number <= MOST_BOXES else 0}
            for label, number in rows
            if number is not None
        ],
        "sheets": [_sheet(sheet, area[sheet.id] / largest) for sheet in stock.sheets],
        "reasons": list(stock.reasons),
    }


def _sheet(sheet: SheetFill, width: float) -> dict[str, Any]:
    return {
        "id": sheet.id,
        "width": width,
        "parts": [{"name": part.name, "share": part.share, "kept": part.kept} for part in sheet.parts],
        "waste": sheet.waste,
        "words": "; ".join(
            ([] if sheet.source == "new" else [f"kept offcut {sheet.source}"])
            + [_words(part) for part in sheet.parts]
            + ([f"waste {sheet.waste:.0%}"] if sheet.waste >= 0.005 else [])
        ),
    }


def _words(part: Share) -> str:
    return f"{'keep ' if part.kept else ''}{part.name} {part.share:.0%}"

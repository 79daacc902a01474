"""What the site pack prints of the question why so many sheets and not fewer."""

from typing import Any

from firstcourse.documents.rule_values import shown_value
from firstcourse.plan import Plan
from firstcourse.quantities.why import Share, SheetFill, StockWhy, why_sheets

MOST_BOXES = 40
"""Above this, a row of sheets is told by its number alone."""


def why_page(plan: Plan) -> dict[str, Any]:
    """The page as plain values: each stock with its counts, sheets and argument, and what decides."""
    stocks = why_sheets(plan)
    bought = sum(count.used for count in plan.counts.values())
    return {
        "title": f"Why {bought} {'sheet' if bought == 1 else 'sheets'}",
        "stocks": [_stock(stock, plan) for stock in stocks],
        "weights": _weights(plan),
    }


def _stock(stock: StockWhy, plan: Plan) -> dict[str, Any]:
    rows: list[tuple[str, int | None]] = [
        ("plain practice buys", stock.practice),
        ("this plan buys", stock.used),
        ("fewest for these pieces", stock.lower_bound if stock.proven or stock.lower_bound else None),
        ("fewest for any layout", stock.every_layout),
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


def _weights(plan: Plan) -> list[list[str]]:
    """What decides between plans, the first that differs: in words, what it is weighed by, why a job set that."""
    rules = {rule.id.removeprefix("choice."): rule for rule in plan.rules if rule.id.startswith("choice.")}
    if not rules:
        return []
    reasons = {change.rule.removeprefix("choice."): change.reason for change in plan.job.overrides}

    def value(name: str) -> str:
        return f"{shown_value(rules[name].value, rules[name].unit, plan.job.tape)} (choice.{name})"

    def row(better: str, weighed: str, *names: str) -> list[str]:
        return [better, weighed, "; ".join(reasons[name] for name in names if name in reasons)]

    return [
        row("a lower cost of the sheets bought", ""),
        row(
            "more kept in offcuts",
            f"both sides at least {value('offcut.least_side')}, in steps of {value('offcut.step')}",
            "offcut.least_side",
            "offcut.step",
        ),
        row(
            "less labour",
            f"a cut counts as {value('cut.seam_length')} of seam, in steps of {value('labour.step')}",
            "cut.seam_length",
            "labour.step",
        ),
        row("a wider narrowest piece", f"in steps of {value('piece.step')}", "piece.step"),
        row("a lighter heaviest piece", f"one person works: {value('piece.lone_worker')}", "piece.lone_worker"),
    ]


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

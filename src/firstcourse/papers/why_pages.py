"""What the site pack prints of the question why so many sheets and not fewer."""

from typing import Any

from firstcourse.papers.rule_values import shown_value
from firstcourse.plan import Plan
from firstcourse.takeoff import Share, SheetFill, StockWhy, why_sheets
from firstcourse.words import Speaker, speaker_for

MOST_BOXES = 40
"""Above this, a row of sheets is told by its number alone."""


def why_page(plan: Plan) -> dict[str, Any]:
    """The page as plain values: each stock with its counts, sheets and argument, and what decides."""
    stocks, speaker = why_sheets(plan), speaker_for(plan)
    bought = sum(count.used for count in plan.counts.values())
    reused = sum(sheet.source != "new" for sheet in plan.sheets)
    return {
        "title": speaker.text("why-title", count=bought, reused=reused),
        "stocks": [_stock(stock, plan, speaker) for stock in stocks],
        "weights": _weights(plan, speaker),
    }


def _stock(stock: StockWhy, plan: Plan, speaker: Speaker) -> dict[str, Any]:
    rows: list[tuple[str, int | None]] = [
        ("practice", stock.practice),
        ("used", stock.used),
        ("least", stock.lower_bound if stock.proven or stock.lower_bound else None),
        ("every_layout", stock.every_layout),
    ]
    area = {sheet.id: sheet.size[0] * sheet.size[1] for sheet in plan.sheets}
    largest = max(area[sheet.id] for sheet in stock.sheets)
    return {
        "name": stock.stock,
        "answer": " ".join(speaker.told(stock.answer)),
        "counts": [
            {
                "label": speaker.text("why-count", label),
                "number": number,
                "boxes": number if number <= MOST_BOXES else 0,
            }
            for label, number in rows
            if number is not None
        ],
        "sheets": [_sheet(sheet, area[sheet.id] / largest, speaker) for sheet in stock.sheets],
        "reasons": speaker.told(stock.reasons),
    }


def _weights(plan: Plan, speaker: Speaker) -> list[list[str]]:
    """What decides between plans, the first that differs: how it counts, by which rules, why the job set them."""
    rules = {rule.id.removeprefix("choice."): rule for rule in plan.rules if rule.id.startswith("choice.")}
    if "piece.lone_worker" not in rules:
        return []
    reasons = {change.rule.removeprefix("choice."): change.reason for change in plan.job.overrides}

    def value(name: str) -> str:
        return shown_value(rules[name].value, rules[name].unit, plan.job.tape)

    def step(name: str) -> str:
        if not float(rules[name].value):
            return speaker.text("why-how", "any")
        return speaker.text("why-how", "step", step=value(name))

    def row(better: str, counts: str, *names: str) -> list[str]:
        because = "; ".join(reasons[name] for name in names if name in reasons)
        by = ", ".join(f"choice.{name}" for name in names)
        return [speaker.text("why-better", better), counts, by, because]

    alone = rules["piece.lone_worker"].value == "True"
    kept = {
        "least": value("offcut.least_side"),
        "step": f"{float(rules['offcut.step'].value):.0%}",
    }
    return [
        row("cost", speaker.text("why-how", "cost")),
        row("boards", speaker.text("why-how", "boards")),
        row("seam", step("seam.step"), "seam.step"),
        row("thin", speaker.text("why-how", "thin")),
        row("cuts", speaker.text("why-how", "cuts")),
        row("offcut", speaker.text("why-how", "offcut", **kept), "offcut.least_side", "offcut.step"),
        row("narrow", step("piece.step"), "piece.step"),
        row("heavy", speaker.text("why-how", "alone" if alone else "two"), "piece.lone_worker"),
    ]


def _sheet(sheet: SheetFill, width: float, speaker: Speaker) -> dict[str, Any]:
    return {
        "id": sheet.id,
        "width": width,
        "parts": [{"name": part.name, "share": part.share, "kept": part.kept} for part in sheet.parts],
        "waste": sheet.waste,
        "words": "; ".join(
            ([] if sheet.source == "new" else [speaker.text("why-from_offcut", source=sheet.source)])
            + [_words(part, percent, speaker) for part, percent in zip(sheet.parts, sheet.percents, strict=False)]
            + ([speaker.text("why-wasted", percent=sheet.percents[-1])] if sheet.percents[-1] else [])
        ),
    }


def _words(part: Share, percent: int, speaker: Speaker) -> str:
    return speaker.text("why-share", kept=part.kept, part=part.name, percent=percent)

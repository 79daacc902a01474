"""What the site pack prints of the question why so many sheets and not fewer."""

from typing import Any

from firstcourse.documents.rule_values import shown_value
from firstcourse.plan import Plan
from firstcourse.quantities.sheet_fills import Share, SheetFill
from firstcourse.quantities.why import StockWhy, why_sheets
from firstcourse.words import Speaker, speaker_for

MOST_BOXES = 40
"""Above this, a row of sheets is told by its number alone."""


def why_page(plan: Plan) -> dict[str, Any]:
    """The page as plain values: each stock with its counts, sheets and argument, and what decides."""
    stocks, speaker = why_sheets(plan), speaker_for(plan)
    bought = sum(count.used for count in plan.counts.values())
    reused = sum(sheet.source != "new" for sheet in plan.sheets)
    offcuts = f" and {reused} kept {'offcut' if reused == 1 else 'offcuts'} used up" if reused else ""
    return {
        "title": f"Why {bought} {'sheet' if bought == 1 else 'sheets'}{offcuts}",
        "stocks": [_stock(stock, plan, speaker) for stock in stocks],
        "weights": _weights(plan),
    }


def _stock(stock: StockWhy, plan: Plan, speaker: Speaker) -> dict[str, Any]:
    rows: list[tuple[str, int | None]] = [
        ("plain practice buys", stock.practice),
        ("this plan buys", stock.used),
        ("these boards need at least", stock.lower_bound if stock.proven or stock.lower_bound else None),
        ("any other layout needs at least", stock.every_layout),
    ]
    area = {sheet.id: sheet.size[0] * sheet.size[1] for sheet in plan.sheets}
    largest = max(area[sheet.id] for sheet in stock.sheets)
    return {
        "name": stock.stock,
        "answer": " ".join(speaker.told(stock.answer)),
        "counts": [
            {"label": label, "number": number, "boxes": number if number <= MOST_BOXES else 0}
            for label, number in rows
            if number is not None
        ],
        "sheets": [_sheet(sheet, area[sheet.id] / largest) for sheet in stock.sheets],
        "reasons": speaker.told(stock.reasons),
    }


def _weights(plan: Plan) -> list[list[str]]:
    """What decides between plans, the first that differs: how it counts, by which rules, why the job set them."""
    rules = {rule.id.removeprefix("choice."): rule for rule in plan.rules if rule.id.startswith("choice.")}
    if "piece.lone_worker" not in rules:
        return []
    reasons = {change.rule.removeprefix("choice."): change.reason for change in plan.job.overrides}

    def value(name: str) -> str:
        return shown_value(rules[name].value, rules[name].unit, plan.job.tape)

    def step(name: str) -> str:
        small = float(rules[name].value)
        return f"differences under {value(name)} do not count" if small else "any difference counts"

    def row(better: str, counts: str, *names: str) -> list[str]:
        because = "; ".join(reasons[name] for name in names if name in reasons)
        return [better, counts, ", ".join(f"choice.{name}" for name in names), because]

    alone = rules["piece.lone_worker"].value == "True"
    return [
        row("the sheets to buy cost less", "without prices: they have less area"),
        row("there are fewer boards", "each is cut, carried, set and fastened"),
        row("there is less seam to tape", step("seam.step"), "seam.step"),
        row("fewer cuts take off less than can be snapped", "each takes rasp or saw"),
        row("there are fewer cuts", "edge to edge, over all sheets"),
        row(
            "more is kept for the next job",
            f"only what is {value('offcut.least_side')} or more both ways, counted in steps of "
            f"{float(rules['offcut.step'].value):.0%} of a sheet",
            "offcut.least_side",
            "offcut.step",
        ),
        row("the narrowest board is wider", step("piece.step"), "piece.step"),
        row(
            "the heaviest board is lighter",
            "one person works alone" if alone else "does not count: two people work",
            "piece.lone_worker",
        ),
    ]


def _sheet(sheet: SheetFill, width: float) -> dict[str, Any]:
    return {
        "id": sheet.id,
        "width": width,
        "parts": [{"name": part.name, "share": part.share, "kept": part.kept} for part in sheet.parts],
        "waste": sheet.waste,
        "words": "; ".join(
            ([] if sheet.source == "new" else [f"kept offcut {sheet.source}"])
            + [_words(part, percent) for part, percent in zip(sheet.parts, sheet.percents, strict=False)]
            + ([f"waste {sheet.percents[-1]}%"] if sheet.percents[-1] else [])
        ),
    }


def _words(part: Share, percent: int) -> str:
    return f"{'keep ' if part.kept else ''}{part.name} {percent}%"

"""Alternatives side by side on paper: a table, the best at each, the beaten, and a chart of the trade-off."""

import re
from collections.abc import Iterator
from typing import Any

from firstcourse.alternatives import Comparison, Figures
from firstcourse.papers.pages import HERE, PAGE_SIZES, Paper
from firstcourse.values import length, measure
from firstcourse.words import Speaker

_HAS_NOT = re.compile("[^ -~\u00a0-\u017f\u2010-\u2015\u2018-\u201a\u201c-\u201e\u2026]")


def compare_paper(paper: Paper, made: Comparison, speaker: Speaker) -> bytes:
    """A comparison as a PDF.

    Args:
        paper: Page size.
        made: The comparison.
        speaker: In whose words and units it is printed.
    """
    data = {
        "paper": PAGE_SIZES[paper],
        "tongue": speaker.tongue,
        **compare_page(made, speaker),
        "chart": _chart(made),
    }
    return HERE.compiled(("compare.typ",), data)


def compare_page(made: Comparison, speaker: Speaker) -> dict[str, Any]:
    """What paper and terminal print.

    Args:
        made: The comparison.
        speaker: In whose words and units it is said.
    """
    say = speaker.text
    planned = [(number, row, row.figures) for number, row in enumerate(made.rows) if row.figures is not None]
    names = [_named(made, number, speaker) for number, _, _ in planned]
    by_name = [dict(_said(figures, made.currency, speaker)) for _, _, figures in planned]
    heads = [say("compare-figure"), *names]
    rows = [
        [label, *(found.get(label, "–") for found in by_name)]
        for label in dict.fromkeys(label for found in by_name for label in found)
    ]
    listed = speaker.labels("compare-best")
    quickest = "days" if all(figures.days is not None for _, row, figures in planned if not row.stops) else "hours"
    best = [
        say(
            "compare-is_best",
            what=listed[f"quickest_{quickest}" if name == "quickest" else name],
            who=_list(made, found, speaker),
        )
        for name, found in made.best.items()
        if len(found) < len(planned)
    ]
    return {
        "title": say("compare-title", job=made.job),
        "invented": say("price-invented") if made.invented else "",
        "heads": heads,
        "rows": rows,
        "best": best,
        "notes": list(_notes(made, speaker)),
        "changed": [say("compare-changed"), *_changed(made, speaker)],
        "problems": [
            say("compare-problem", name=_named(made, number, speaker), why=_printed(row.problem))
            for number, row in enumerate(made.rows)
            if row.figures is None
        ],
        "axes": [
            say("compare-cost", currency=made.currency) if _by_cost(made) else say("compare-sheets"),
            say("compare-all_cuts"),
        ],
        "chart_title": say("compare-chart"),
    }


def _named(made: Comparison, number: int, speaker: Speaker) -> str:
    return f"{number}: {_printed(made.rows[number].name) or speaker.text('compare-as_it_is')}"


def _list(made: Comparison, numbers: tuple[int, ...], speaker: Speaker) -> str:
    return ", ".join(_named(made, number, speaker) for number in numbers)


def _said(found: Figures, currency: str, speaker: Speaker) -> Iterator[tuple[str, str]]:
    say = speaker.text
    least = found.smallest_cut
    yield say("compare-sheets"), str(found.sheets)
    yield say("compare-cuts"), str(found.cuts)
    yield say("compare-tile_cuts"), str(found.tile_cuts)
    yield say("compare-smallest_cut"), "–" if least is None else say("compare-length", length=length(least))
    yield say("compare-waste"), say("compare-much", much=measure(found.waste_m2, "m2"))
    yield say("compare-mass"), say("compare-much", much=measure(found.kg, "kg"))
    yield say("compare-height"), say("compare-length", length=length(found.height))
    if found.hours is not None and found.cost is not None:
        open_end = "" if found.complete else " *"
        yield say("compare-hours"), f"{found.hours:.1f}{open_end}"
        yield say("compare-cost", currency=currency), f"{found.cost:,.2f}{open_end}"
    if found.days is not None:
        yield say("compare-days"), str(found.days)


def _notes(made: Comparison, speaker: Speaker) -> Iterator[str]:
    for number, row in enumerate(made.rows):
        name = _named(made, number, speaker)
        if row.beaten_by:
            yield speaker.text("compare-beaten", name=name, by=_list(made, row.beaten_by, speaker))
        if row.stops:
            yield speaker.text("compare-stopped", name=name, codes=", ".join(row.stops))
    if any(row.figures is not None and not row.figures.complete for row in made.rows):
        yield speaker.text("compare-incomplete")


def _changed(made: Comparison, speaker: Speaker) -> Iterator[str]:
    for number, row in enumerate(made.rows):
        if row.changes:
            fields = "; ".join(f"{change.field} = {_typed(change.to)}" for change in row.changes)
            yield f"{_named(made, number, speaker)}: {_printed(fields)}"


def _typed(value: Any) -> str:
    """A value as it would be typed into the job."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, list | tuple):
        return f"[{', '.join(map(_typed, value))}]"
    if isinstance(value, dict):
        return f"{{{', '.join(f'{key}: {_typed(one)}' for key, one in value.items())}}}"
    return str(value)


def _printed(text: str) -> str:
    """What somebody typed, with a question mark for each letter that the face of the papers does not have."""
    return _HAS_NOT.sub("?", text)


def _by_cost(made: Comparison) -> bool:
    found = [row.figures for row in made.rows if row.figures is not None]
    return all(one.complete and one.cost is not None for one in found)


def _chart(made: Comparison) -> list[dict[str, Any]]:
    """Of each planned alternative its number, its cost (or its sheets), its cuts, and whether it is beaten."""
    return [
        {
            "number": number,
            "x": float(row.figures.cost)
            if _by_cost(made) and row.figures.cost is not None
            else row.figures.sheets,
            "y": row.figures.cuts + row.figures.tile_cuts,
            "beaten": bool(row.beaten_by or row.stops),
        }
        for number, row in enumerate(made.rows)
        if row.figures is not None
    ]

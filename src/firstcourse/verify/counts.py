"""Sheets used, and what is said of the least that any plan needs."""

from collections import Counter
from collections.abc import Iterator

from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection


def check_counts(plan: Document) -> Iterator[Objection]:
    """Object to a count that differs from the sheets, and to a bound or proof that cannot be."""
    used = Counter(sheet.stock for sheet in plan.sheets if sheet.source == "new")
    for count in plan.counts:
        if count.stock not in plan.stock:
            yield Objection("VER-601", count.stock, "is counted but is no stock of the plan")
        if count.used != used[count.stock]:
            yield Objection("VER-601", count.stock, f"{count.used} sheets said, {used[count.stock]} cut")
        if count.lower_bound > count.used:
            yield Objection("VER-602", count.stock, "the lower bound lies above the sheets used")
        if count.proven != (count.lower_bound == count.used):
            yield Objection("VER-603", count.stock, "is called proven where the bound is not met, or the reverse")
    for stock in sorted(set(used) - {count.stock for count in plan.counts}):
        yield Objection("VER-601", stock, "is used but not counted")

"""What must be said of sheets that are heavier than one person may lift, or two."""

from collections.abc import Iterator

from firstcourse.verify.formulas.lifting import most_kg
from firstcourse.verify.formulas.masses import carried
from firstcourse.verify.structure import Document, Said
from firstcourse.verify.told import given, mm, said

_MOST = "safety.lift.max"


def sheet_findings(plan: Document) -> Iterator[Said]:
    """All that must be said of heavy sheets."""
    sheets = carried(plan)
    most = most_kg(plan) if sheets else 0.0
    for stock, mass in sheets.items():
        if mass > most:
            two = mass <= 2 * most
            yield said(
                "QTY-101" if two else "QTY-102",
                "note" if two else "fix",
                f"stock/{stock}",
                "two" if two else "cart",
                rule=_MOST,
                measured=given(mass, "kg"),
                limit=given(most if two else 2 * most, "kg", "most"),
                reach=mm(plan.rules.ticks("safety.lift.reach")),
                half=given(mass / 2, "kg"),
            )

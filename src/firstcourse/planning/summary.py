"""A plan's key figures."""

from typing import Any

from firstcourse.planning.steps import PlanResult
from firstcourse.quantities.why import beside_practice


def summarize(result: PlanResult) -> dict[str, Any]:
    """The figures that a setter asks for first, as plain values."""
    plan = result.plan
    together = {name: said for name in plan.counts if (said := beside_practice(plan, name))}
    boards = [board for surface in plan.surfaces for board in surface.boards]
    return {
        "job": plan.job.name,
        "digest": plan.job.digest,
        "changes": list(result.changes),
        "boards": len(boards),
        "sheets": sum(sheet.source == "new" for sheet in plan.sheets),
        "offcuts_used": sum(sheet.source != "new" for sheet in plan.sheets),
        "cuts": sum(len(sheet.cuts) for sheet in plan.sheets),
        "fasteners": sum(len(board.fasteners) for board in boards),
        "whole": sum(tile.whole for surface in plan.surfaces for tile in surface.tiles),
        "cut": sum(not tile.whole for surface in plan.surfaces for tile in surface.tiles),
        "stock": [
            {
                "id": name,
                "used": found.used,
                "lower_bound": found.lower_bound,
                "proven": found.proven,
                "fewest": any(bound.proven and bound.stocks == (name,) for bound in plan.bounds),
                "practice": None if name in together else result.practice.get(name, 0),
            }
            for name, found in plan.counts.items()
        ],
        "practice": list(dict.fromkeys(together.values())),
        "quantities": [
            {"item": q.item, "exact": q.exact, "unit": q.unit, "buy": q.buy, "pack": q.pack}
            for q in plan.quantities
        ],
        "findings": [finding.model_dump(mode="json") for finding in plan.findings],
    }

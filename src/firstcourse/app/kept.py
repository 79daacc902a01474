"""Plans that were kept as documents, read again."""

import json
from functools import lru_cache

from firstcourse.plan import Plan
from firstcourse.steps import PlanResult as PlanResult


@lru_cache(maxsize=8)
def kept_plan(document: str, beside: str) -> PlanResult:
    """A plan that was planned and verified before.

    Args:
        document: Its plan.json.
        beside: What is told beside it, as the planning desk gave it.
    """
    told = json.loads(beside)
    return PlanResult(
        plan=Plan.model_validate_json(document),
        document=document,
        practice=told["practice"],
        changes=tuple(told["changes"]),
    )

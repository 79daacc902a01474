"""Plans that were kept as documents, read again."""

import json
from functools import lru_cache

from pydantic import ValidationError

from firstcourse.plan import Plan
from firstcourse.steps import PlanResult as PlanResult


@lru_cache(maxsize=8)
def kept_plan(document: str, beside: str) -> PlanResult | None:
    """A plan that was planned and verified before; None where an earlier version made it in another form.

    Args:
        document: Its plan.json.
        beside: What is told beside it, as the planning desk gave it.
    """
    told = json.loads(beside)
    try:
        plan = Plan.model_validate_json(document)
    except ValidationError:
        return None
    return PlanResult(
        plan=plan,
        document=document,
        practice=told["practice"],
        changes=tuple(told["changes"]),
    )

"""From a job to a verified plan: every step in the order of the work."""

from firstcourse.steps.judging import JobJudgement, judge_alone
from firstcourse.steps.one_surface import Held, OneSurface, plan_one_surface
from firstcourse.steps.plan import PlanResult, plan_job
from firstcourse.steps.too_many import Ahead
from firstcourse.steps.why import Explanation, Outcome, explain_job

__all__ = [
    "Ahead",
    "Explanation",
    "Held",
    "JobJudgement",
    "OneSurface",
    "Outcome",
    "PlanResult",
    "explain_job",
    "judge_alone",
    "plan_job",
    "plan_one_surface",
]

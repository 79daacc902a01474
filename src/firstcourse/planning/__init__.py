"""From a job to a verified plan: every step in the order of the work."""

from firstcourse.planning.steps import PlanResult, plan_file, plan_job
from firstcourse.planning.summary import summarize

__all__ = ["PlanResult", "plan_file", "plan_job", "summarize"]

"""From a job to a verified plan: every step in the order of the work."""

from firstcourse.steps.plan import PlanResult, plan_job

__all__ = ["PlanResult", "plan_job"]

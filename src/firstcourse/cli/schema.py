"""`firstcourse schema`: the JSON Schema of what we read and write."""

from typing import Literal

from firstcourse.cli.output import print_json


def schema(of: Literal["job", "plan"], /) -> int:
    """Print the JSON Schema of the job document or of the plan.

    Args:
        of: `job` for the document you write, `plan` for plan.json.
    """
    if of == "job":
        from firstcourse.job import job_schema

        print_json(job_schema())
    else:
        from firstcourse.plan import Plan

        print_json(Plan.model_json_schema(mode="serialization", by_alias=True))
    return 0

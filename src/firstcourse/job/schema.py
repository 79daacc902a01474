"""The job document as a JSON Schema."""

from typing import Any

from firstcourse.job.model import Job


def job_schema() -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of the job document; lengths are texts with a unit."""
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **Job.model_json_schema(by_alias=True),
    }

"""What a job document and a plan may hold, and a document to start from."""

from pathlib import Path
from typing import Any, Literal

from firstcourse.app.files import Disk, Files
from firstcourse.job import job_schema, starter_text
from firstcourse.plan import Plan


def schema(of: Literal["job", "plan"]) -> dict[str, Any]:
    """The JSON Schema of the job document or of plan.json.

    Args:
        of: Which of them.
    """
    return job_schema() if of == "job" else Plan.model_json_schema(mode="serialization", by_alias=True)


def write_starter(path: Path | str, *, files: Files | None = None) -> None:
    """Write a commented job document to start from.

    Args:
        path: Where; what stands there is never overwritten.
        files: Where it goes; the disk of this machine where not given.

    Raises:
        InputValueError: Something is there already, or nothing may be written there.
    """
    (Disk() if files is None else files).write_new(Path(path), starter_text())

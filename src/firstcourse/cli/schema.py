"""`firstcourse schema`: the JSON Schema of what we read and write."""

from typing import Literal

from firstcourse.cli.output import print_json


def schema(of: Literal["job", "plan"], /) -> int:
    """Print the JSON Schema of the job document or of the plan.

    Args:
        of: `job` for the document you write, `plan` for plan.json.
    """
    from firstcourse.app import schema as schema_of

    print_json(schema_of(of))
    return 0

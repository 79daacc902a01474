"""`firstcourse demo`: plan the first example and say where to look."""

from pathlib import Path

from firstcourse.app import example_job
from firstcourse.cli.output import OutFolder
from firstcourse.cli.plan import plan

EXAMPLE = "tub-bathroom"


def demo(out: OutFolder = Path("out/demo"), /) -> int:
    """Plan the first example, a bathroom with a tub, and say where to look.

    Args:
        out: Folder to write into.
    """
    job = example_job(EXAMPLE)
    print(f"planning {job}")
    return plan(job, out=out)

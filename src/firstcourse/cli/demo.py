"""`firstcourse demo`: plan the first example and say where to look."""

from pathlib import Path

from firstcourse.cli.output import OutFolder
from firstcourse.cli.plan import plan
from firstcourse.errors import InputValueError

EXAMPLE = "tub-bathroom"


def demo(out: OutFolder = Path("out/demo"), /) -> int:
    """Plan the first example, a bathroom with a tub, and say where to look.

    Args:
        out: Folder to write into.
    """
    job = example_job(EXAMPLE)
    print(f"planning {job}")
    return plan(job, out=out)


def example_job(name: str) -> Path:
    """The job document of one of the examples that come with the program.

    Raises:
        InputValueError: There is no such example in this installation.
    """
    package = Path(__file__).parents[1]
    for folder in (package / "examples", package.parents[1] / "examples"):
        if (job := folder / name / "job.yaml").is_file():
            return job
    raise InputValueError(f"the example '{name}' is not in this installation")

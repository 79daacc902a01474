"""The job documents that come with the program."""

from pathlib import Path

from firstcourse.errors import InputValueError


def example_job(name: str) -> Path:
    """The job document of one of the examples that come with the program.

    Args:
        name: Such as `tub-bathroom`.

    Raises:
        InputValueError: There is no such example in this installation.
    """
    package = Path(__file__).parents[1]
    for folder in (package / "examples", package.parents[1] / "examples"):
        if (job := folder / name / "job.yaml").is_file():
            return job
    raise InputValueError(f"the example '{name}' is not in this installation")

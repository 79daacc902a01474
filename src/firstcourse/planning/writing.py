"""Write a verified plan, whole or not at all."""

import os
import tempfile
from pathlib import Path

from firstcourse.errors import InputValueError
from firstcourse.planning.steps import PlanResult


def write_plan(result: PlanResult, folder: Path) -> tuple[Path, ...]:
    """Write plan.json into a folder; an older one is replaced in one move, so a failure loses nothing.

    Args:
        result: A plan that has been verified.
        folder: Made where it is not there.

    Returns:
        The files written.

    Raises:
        InputValueError: The folder's name is taken by a file.
        OSError: The disk refuses.
    """
    if folder.exists() and not folder.is_dir():
        raise InputValueError(f"{folder} is a file; name a folder to write into")
    folder.mkdir(parents=True, exist_ok=True)
    target = folder / "plan.json"
    handle, name = tempfile.mkstemp(dir=folder, prefix=".plan-")
    try:
        with os.fdopen(handle, "w", encoding="utf-8") as file:
            file.write(result.document)
        os.chmod(name, 0o644)
        os.replace(name, target)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
    return (target,)

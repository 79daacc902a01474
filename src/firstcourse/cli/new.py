"""`firstcourse new`: a commented job document to start from."""

import os
from pathlib import Path

from firstcourse.cli.output import OutFolder, check_folder
from firstcourse.errors import InputValueError
from firstcourse.job import starter_text


def new(path: OutFolder = Path("job.yaml"), /) -> int:
    """Write a commented job document to start from.

    Args:
        path: Where to write it; an existing file is never overwritten.
    """
    if os.path.lexists(path):
        raise InputValueError(f"{path} is there already; name another file, or move that one away")
    check_folder(path.parent)
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("x", encoding="utf-8") as file:  # never over a file that came in the meantime
        file.write(starter_text())
    print(
        f"wrote {path}: fill in what your tape says, then `firstcourse survey {path}` checks the readings "
        f"and `firstcourse plan {path} --out plan` plans it"
    )
    return 0

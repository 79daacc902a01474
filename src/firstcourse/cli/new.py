"""`firstcourse new`: a commented job document to start from."""

from pathlib import Path

from firstcourse.cli.output import check_folder
from firstcourse.errors import InputValueError
from firstcourse.job import starter_text


def new(path: Path = Path("job.yaml"), /) -> int:
    """Write a commented job document to start from.

    Args:
        path: Where to write it; an existing file is never overwritten.
    """
    if path.exists():
        raise InputValueError(f"{path} is there already; name another file, or move that one away")
    check_folder(path.parent)
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(starter_text(), encoding="utf-8")
    print(
        f"wrote {path}: fill in what your tape says, then `firstcourse survey {path}` checks the readings "
        f"and `firstcourse plan {path} --out plan` plans it"
    )
    return 0

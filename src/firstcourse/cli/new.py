"""`firstcourse new`: a commented job document to start from."""

from pathlib import Path

from firstcourse.cli.output import OutFolder


def new(path: OutFolder = Path("job.yaml"), /) -> int:
    """Write a commented job document to start from.

    Args:
        path: Where to write it; an existing file is never overwritten.
    """
    from firstcourse.app import write_starter

    write_starter(path)
    print(
        f"wrote {path}: fill in what your tape says, then `firstcourse survey {path}` checks the readings "
        f"and `firstcourse plan {path} --out plan` plans it"
    )
    return 0

"""`firstcourse verify`: prove a plan again from plan.json alone."""

from pathlib import Path

from firstcourse.cli.output import print_changes, print_json
from firstcourse.errors import InputValueError
from firstcourse.files import read_file, utf8_text

LARGEST_PLAN_BYTES = 300_000_000
"""Some 500 rooms; reading takes several times as much memory."""


def verify(path: Path, /, *, json: bool = False) -> int:
    """Prove a plan again from plan.json alone.

    Ends with 0 when every claim holds, 1 when one does not, and 2 when the file is no plan that can be read.

    Args:
        path: A plan.json, or the folder it lies in.
        json: Print the verdict for another program to read.
    """
    from firstcourse.verify import verify_text

    file = path / "plan.json" if path.is_dir() else path
    try:
        text = utf8_text(read_file(file, most_bytes=LARGEST_PLAN_BYTES, what="a plan"))
    except InputValueError as error:
        raise InputValueError(f"{file}: {error}") from None
    verdict = verify_text(text)
    if not verdict.readable and not json:
        (objection,) = verdict.objections
        raise InputValueError(f"{file}: not a plan.json: {objection.where}: {objection.message}")
    if json:
        print_json(
            {
                "verified": not verdict.objections,
                "objections": [
                    {"code": o.code, "where": o.where, "message": o.message} for o in verdict.objections
                ],
                "changes": list(verdict.changes),
                "stops": list(verdict.stops),
            }
        )
    else:
        for objection in verdict.objections:
            print(f"{objection.code}  {objection.where}: {objection.message}")
        print_changes(verdict.changes)
        count = len(verdict.objections)
        for stop in verdict.stops:
            print(f"the work is stopped: {stop}")
        print(f"{file}: consistent, verified" if not count else f"{file}: {count} objection{'s' * (count > 1)}")
    return int(bool(verdict.objections)) if verdict.readable else 2

"""`firstcourse verify`: prove a plan again from plan.json alone."""

from pathlib import Path

from firstcourse.cli.output import print_json
from firstcourse.errors import InputValueError


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
        text = file.read_text(encoding="utf-8")
    except UnicodeDecodeError as error:
        raise InputValueError(f"{file}: not a text file in UTF-8, so not a plan.json") from error
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
            }
        )
    else:
        for objection in verdict.objections:
            print(f"{objection.code}  {objection.where}: {objection.message}")
        count = len(verdict.objections)
        print(f"{file}: verified" if not count else f"{file}: {count} objection{'s' * (count > 1)}")
    return int(bool(verdict.objections)) if verdict.readable else 2

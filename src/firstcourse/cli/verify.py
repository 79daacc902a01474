"""`firstcourse verify`: prove a plan again from plan.json alone."""

from pathlib import Path

from firstcourse.cli.output import print_changes, print_json
from firstcourse.errors import InputValueError


def verify(path: Path, /, *, json: bool = False) -> int:
    """Prove a plan again from plan.json alone.

    Ends with 0 when every claim holds, 1 when one does not, and 2 when the file is no plan that can be read.

    Args:
        path: A plan.json, or the folder it lies in.
        json: Print the verdict for another program to read.
    """
    from firstcourse.app.proof import proof_summary, prove

    proof = prove(path)
    file, verdict = proof.file, proof.verdict
    if not verdict.readable and not json:
        (objection,) = verdict.objections
        raise InputValueError(f"{file}: not a plan.json: {objection.where}: {objection.message}")
    if json:
        print_json(proof_summary(verdict))
    else:
        for objection in verdict.objections:
            print(f"{objection.code}  {objection.where}: {objection.message}")
        print_changes(verdict.changes)
        count = len(verdict.objections)
        for stop in verdict.stops:
            print(f"the work is stopped: {stop}")
        print(f"{file}: consistent, verified" if not count else f"{file}: {count} objection{'s' * (count > 1)}")
    return int(bool(verdict.objections)) if verdict.readable else 2

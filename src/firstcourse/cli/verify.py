"""`firstcourse verify`: prove a plan again from plan.json alone."""

from pathlib import Path

from firstcourse.cli.output import print_changes, print_json
from firstcourse.errors import InputValueError
from firstcourse.tongues import ENGLISH, TONGUES, Tongue
from firstcourse.units import Tape
from firstcourse.words import Speaker


def verify(path: Path, /, *, tongue: Tongue | None = None, json: bool = False) -> int:
    """Prove a plan again from plan.json alone, and its price where a price.json lies in the folder.

    Ends with 0 when every claim holds, 1 when one does not, and 2 when the file is no plan that can be read.

    Args:
        path: A plan.json, or the folder it lies in.
        tongue: What the verdict is written in, such as en; the one that the plan names where not given. Objections
            are English.
        json: Print the verdict for another program to read.
    """
    from firstcourse.app import proof_summary, prove

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
        own = verdict.tongue if verdict.tongue in TONGUES else ENGLISH
        speaker = Speaker("us", Tape.INCH, tongue=tongue or own)
        print_changes(verdict.changes, speaker)
        for what in verdict.same_way:
            print(f"  {speaker.text('cli-same_way', what=what)}")
        if proof.price is not None:
            print(speaker.text("cli-priced", file=str(proof.price)))
        count = len(verdict.objections)
        for stop in verdict.stops:
            print(speaker.text("cli-stopped", what=stop))
        print(speaker.text("cli-objections" if count else "cli-verified", file=str(file), count=count))
    return int(bool(verdict.objections)) if verdict.readable else 2

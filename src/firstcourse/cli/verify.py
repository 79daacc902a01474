"""`firstcourse verify`: prove a plan again from plan.json alone."""

from pathlib import Path
from typing import TYPE_CHECKING

from firstcourse.cli.output import print_changes, print_json
from firstcourse.errors import InputValueError
from firstcourse.tongues import ENGLISH, TONGUES, Tongue
from firstcourse.units import Tape
from firstcourse.words import Speaker

if TYPE_CHECKING:
    from firstcourse.app import Objection


def verify(path: Path, /, *, tongue: Tongue | None = None, json: bool = False) -> int:
    """Prove a plan again from plan.json alone, and its price where a price.json lies in the folder.

    Ends with 0 when every claim holds, 1 when one does not, and 2 when the file is no plan that can be read.

    In the folder of a building the plan of each phase is proved by itself, then what is carried between them, sums
    and deliveries.

    Args:
        path: A plan.json, or the folder it or a building.json lies in.
        tongue: What the verdict is written in, such as en; the one that the plan names where not given. Objections
            are English.
        json: Print the verdict for another program to read.
    """
    from firstcourse.app import proof_summary, prove, prove_building

    building = prove_building(path)
    if building is not None:
        return _told(path, building, tongue or ENGLISH, json=json)
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


def _told(folder: Path, objections: "tuple[Objection, ...]", tongue: Tongue, *, json: bool) -> int:
    if json:
        print_json({"verified": not objections, "objections": objections})
        return int(bool(objections))
    for one in objections:
        print(f"{one.code}  {one.where}: {one.message}")
    text = "cli-objections" if objections else "cli-verified"
    print(Speaker("us", Tape.INCH, tongue=tongue).text(text, file=str(folder), count=len(objections)))
    return int(bool(objections))

"""`firstcourse judge`: whether frame, panels and surfaces will carry tile."""

from pathlib import Path
from typing import TYPE_CHECKING, Any

from firstcourse.cli.output import OutFolder, check_folder, exit_code, print_changes, print_findings, print_json

if TYPE_CHECKING:
    from firstcourse.suitability import Remedy

_RANKED = "each computed through every check; ranked by height, material, labour"


def judge(job: Path, /, *, out: OutFolder | None = None, json: bool = False) -> int:
    """Judge whether frame, panels and surfaces will carry tile, before anything is bought.

    Ends with 1 when a finding stops the work. What the job does not say is not judged, and a note tells so.

    Args:
        job: The job document (YAML or JSON).
        out: Folder for the calculation sheets and an engineer's data sheets, in Letter and A4; none are written
            otherwise.
        json: Print for another program to read.
    """
    from firstcourse.planning.judging import judge_file, remedy_text
    from firstcourse.planning.writing import write_judgement
    from firstcourse.words import Speaker

    if out is not None:
        check_folder(out)
    done = judge_file(job)
    files = () if out is None else write_judgement(done, out)
    if json:
        print_json(
            {
                "job": done.job,
                "judged": list(done.judged),
                "findings": [finding.model_dump(mode="json") for finding in done.findings],
                "remedies": [
                    {"where": where, "options": [_fields(option) for option in options]}
                    for where, options in done.remedies
                ],
                "workings": {name: working.model_dump(mode="json") for name, working in done.workings.items()},
                "structures": [sheet.model_dump(mode="json") for sheet in done.structures],
                "cautions": list(done.cautions),
                "changes": list(done.changes),
                "files": [str(file) for file in files],
            }
        )
        return exit_code(done.findings)
    print(f"{done.job}: judged {'; '.join(done.judged) if done.judged else 'nothing'}")
    print_changes(done.changes)
    speaker = Speaker(done.practice, done.tape)
    for sheet in done.structures:
        for name, value in sheet.facts:
            if sheet.areas and name.startswith("dead load"):
                print(speaker.say(f"  {sheet.where}: {name} {value}"))
    # What stands among the cautions is not told twice.
    print_findings((finding for finding in done.findings if finding.message not in done.cautions), speaker)
    for where, options in done.remedies:
        first = "; an engineer first" if where in {sheet.where for sheet in done.structures} else ""
        print(f"\nREMEDIES FOR {where}: {_RANKED}{first}")
        for number, option in enumerate(options, start=1):
            print(f"  {number}. {speaker.say(option.what)}\n      {speaker.say(remedy_text(option, done.tape))}")
    print()
    for caution in done.cautions:
        print(f"CAUTION: {caution}")
    for file in files:
        print(f"written: {file}")
    return exit_code(done.findings)


def _fields(option: "Remedy") -> dict[str, Any]:
    return {
        "measures": list(option.names),
        "what": option.what,
        "passes": option.passes,
        "height_in": round(option.height_in, 6),
        "material": option.material,
        "labour_h": option.labour_h,
        "still_failing": list(option.still_failing),
    }

"""`firstcourse handover`: what was recorded of a job, held against what its plan asks for."""

from pathlib import Path

from firstcourse.cli.output import OutFolder, print_json
from firstcourse.tongues import Tongue


def handover(
    folder: Path,
    /,
    *,
    proof: Path,
    out: OutFolder | None = None,
    tongue: Tongue | None = None,
    json: bool = False,
) -> int:
    """Make the file that is handed over: hidden work by place, tests, batches, photos, spares, care.

    What the plan asks to be proved and has no record is listed as missing, never as done.

    Args:
        folder: A plan's folder, or its plan.json.
        proof: What was recorded on site (YAML or JSON); photos lie beside it.
        out: Folder for handover.json, the file for keeping (PDF/A-3 with the plan and photos within) and the
            owner's short one, in Letter and A4; none is written otherwise.
        tongue: What is printed is written in it, such as en; the plan's own where not given.
        json: Print handover.json itself, for another program to read.
    """
    from firstcourse.app import Disk, handover_text, make_handover, write_handover

    files = Disk()
    if out is not None:
        files.check_folder(out)
    made = make_handover(folder, proof, tongue=tongue or "", files=files)
    written = () if out is None else write_handover(made, out, files=files)
    if json:
        print_json(made.handover)
        return 0
    for line in (*handover_text(made), *map(str, written)):
        print(line)
    return 0

"""`firstcourse building`: a building of many rooms planned phase by phase."""

import sys
from pathlib import Path

from firstcourse.cli.output import OutFolder, print_json
from firstcourse.words import Speaker


def building(
    document: Path,
    /,
    *,
    effort: int = 1,
    out: OutFolder | None = None,
    keep: Path | None = None,
    heap: bool = True,
    json: bool = False,
) -> int:
    """Plan a building phase by phase: sheets shared within a phase, kept pieces carried to the next.

    The plan of each phase is proved by itself, then all that is derived from them, before anything is printed.

    Args:
        document: The building document (YAML or JSON), see docs/concepts/building.md.
        effort: How long to look for fewer sheets, 0 to 3.
        out: Folder for building.json, its page in Letter and A4, and the job and plan of each phase; none is
            written otherwise.
        keep: Folder in which the plan of each phase is kept as soon as it is made: a run that is stopped and begun
            again goes on where it was.
        heap: Plan all rooms as one heap too, to tell what the phases cost.
        json: Print building.json itself, for another program to read.
    """
    from firstcourse.app import Disk, building_papers, open_building, planned_building

    if out is not None:
        Disk().check_folder(out)
    if keep is not None:
        Disk().check_folder(keep)
    read = open_building(document)
    telling = Speaker(read.practice, read.tape, tongue=read.tongue)

    def tell(name: str) -> None:
        print(telling.text("building-planning", name=name or "heap"), file=sys.stderr)

    made = planned_building(read, effort=effort, heap=heap, keep=keep, on_phase=tell)
    written = () if out is None else building_papers(made, out)
    if json:
        print_json(made.plan)
        return 0
    speaker = made.speaker
    page = made.page(speaker)
    print(speaker.say(page["title"]))
    for table in page["tables"]:
        print("\n" + speaker.say(table["title"]))
        for row in (table["heads"], *table["rows"]):
            print("  " + speaker.say(" | ".join(row)))
        if table["note"]:
            print("  " + speaker.say(table["note"]))
    for file in written:
        print(speaker.text("cli-written", file=str(file)))
    return 0

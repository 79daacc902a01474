"""`firstcourse plan`: boards, cuts and fasteners, verified."""

from pathlib import Path
from typing import Annotated, Any

from cyclopts import Parameter, validators

from firstcourse.cli.output import (
    OutFolder,
    check_folder,
    exit_code,
    print_changes,
    print_findings,
    print_json,
    progress,
)
from firstcourse.units import as_needed, counted, one_or_more

Effort = Annotated[int, Parameter(validator=validators.Number(gte=0, lte=3))]


def plan(job: Path, /, *, out: OutFolder, effort: Effort = 1, poles: bool = False, json: bool = False) -> int:
    """Plan boards, cuts and fasteners; verify the plan; write it and its papers.

    Ends with 1 when a finding stops the work; everything is written all the same, so that it can be read.

    Args:
        job: The job document (YAML or JSON).
        out: Folder to write into; it is made where it is not there. Papers of an older plan there are replaced or
            removed, all other files stay.
        effort: How long to look for fewer sheets: 0 at once, 1 as usual, 3 longest. Counted in steps, not seconds.
        poles: Print story poles at full size too, to cut out and glue on a batten; their numbers are in the site
            pack in any case.
        json: Print the summary for another program to read.
    """
    from firstcourse.planning import plan_file, summarize
    from firstcourse.planning.processes import cores
    from firstcourse.planning.writing import write_plan

    check_folder(out)
    result = plan_file(job, effort=effort, workers=cores(), on_step=progress)
    files = write_plan(result, out, poles=poles)
    summary = summarize(result)
    if json:
        print_json({**summary, "files": [str(file) for file in files]})
    else:
        print_summary(summary, out)
        print_findings(result.plan.findings)
    return exit_code(result.plan.findings)


def _proof(row: dict[str, Any]) -> str:
    """What is known of a stock's count; where stocks stand in for each other each alone may need none."""
    if row["fewest"]:
        return "no layout takes fewer"
    if row["proven"]:
        return "the fewest for these seams"
    return f"at least {row['lower_bound']}" if row["lower_bound"] else ""


def print_summary(summary: dict[str, Any], out: Path) -> None:
    """Print what the plan buys and where it lies."""
    print(
        f"{summary['job']}: {counted(summary['boards'], 'boards')} from {counted(summary['sheets'], 'sheets')}, "
        f"{counted(summary['cuts'], 'cuts')}, {counted(summary['fasteners'], 'fasteners')}; verified"
    )
    print_changes(summary["changes"])
    for row in summary["stock"]:
        if row["used"] or row["practice"]:
            notes = (_proof(row), "" if row["practice"] is None else f"plain practice {row['practice']}")
            said = "; ".join(note for note in notes if note)
            print(f"  {row['id']}: {counted(row['used'], 'sheets')}{f' ({said})' if said else ''}")
    for told in summary["practice"]:
        print(f"  {told}")
    for row in summary["quantities"]:
        if row["buy"]:
            need = f"{as_needed(row['exact'])} {one_or_more(row['exact'], row['unit'])}"
            print(f"  buy {row['buy']} × {row['item']} ({row['pack']}); need {need}")
    print(
        f"Look at {out / 'site-pack-letter.pdf'} first (or site-pack-a4.pdf); "
        f"`firstcourse verify {out}` proves it again."
    )

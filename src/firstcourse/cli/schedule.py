"""`firstcourse schedule`: on which days a plan is built, and what moves the end."""

from pathlib import Path

from firstcourse.cli.output import OutFolder, exit_code, print_json, progress
from firstcourse.tongues import Tongue


def schedule(
    job: Path,
    /,
    *,
    out: OutFolder | None = None,
    effort: int = 1,
    tongue: Tongue | None = None,
    json: bool = False,
) -> int:
    """Say on which days a plan is built: tasks, hold points, visits, and what moves the end.

    The job says when and by whom under `schedule`. Ends with 1 when a finding of the plan stops the work.

    Args:
        job: The job document (YAML or JSON).
        out: Folder for the calendar in Letter and A4, and as a file for calendars (.ics); none is written
            otherwise.
        effort: How long to look for fewer sheets, 0 to 3.
        tongue: What is printed is written in it, such as en; the one that the job names where not given.
        json: Print for another program to read.
    """
    from firstcourse.app import Disk, open_job, schedule_lines

    files_here = Disk()
    if out is not None:
        files_here.check_folder(out)
    session = open_job(job, files=files_here, tongue=tongue or "")
    calendar, result = session.schedule(effort=effort, on_step=progress)
    files = () if out is None else session.schedule_papers(result, out)
    if json:
        print_json(calendar)
    else:
        for line in (*schedule_lines(result.plan, calendar), *map(str, files)):
            print(line)
    return exit_code(result.plan.findings)

"""`firstcourse compare`: alternatives of a job side by side."""

from pathlib import Path
from typing import Annotated

from cyclopts import Parameter

from firstcourse.cli.output import OutFolder, print_json, progress
from firstcourse.tongues import Tongue


def compare(
    job: Path,
    /,
    *,
    others: Annotated[Path, Parameter(name="--with")],
    prices: Path | None = None,
    effort: int = 1,
    out: OutFolder | None = None,
    tongue: Tongue | None = None,
    json: bool = False,
) -> int:
    """Plan a job and two to six alternatives of it, verify each, and put them side by side.

    What cannot be planned is told with the reason; the others stand. The table is proved again from the plans.

    Args:
        job: The job document (YAML or JSON).
        others: The alternatives: for each a name and the fields of the job that are changed (YAML or JSON).
        prices: A price book; without one hours and cost are left out.
        effort: How long to look for fewer sheets, 0 to 3.
        out: Folder for compare.json, the plans and prices it is of, and the page in Letter and A4; none is written
            otherwise.
        tongue: What is printed is written in it, such as en; the one that the job names where not given.
        json: Print compare.json itself, for another program to read.
    """
    from firstcourse.app import Disk, alternatives, compared_lines, open_job, price_book

    files_here = Disk()
    if out is not None:
        files_here.check_folder(out)
    asked = alternatives(others)
    book = None if prices is None else price_book(prices)
    session = open_job(job, files=files_here, tongue=tongue or "")
    made = session.compare(asked, book=book, effort=effort, on_step=progress)
    files = () if out is None else session.comparison_papers(made, out)
    if json:
        print_json(made.comparison)
        return 0
    for line in (*compared_lines(made), *map(str, files)):
        print(line)
    return 0

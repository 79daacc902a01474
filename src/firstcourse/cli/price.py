"""`firstcourse price`: an order and a price for a job by a price book."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from firstcourse.cli.output import OutFolder, print_findings, print_json, progress
from firstcourse.tongues import Tongue


def price(
    job: Path,
    /,
    *,
    prices: Path,
    effort: int = 1,
    out: OutFolder | None = None,
    tongue: Tongue | None = None,
    json: bool = False,
) -> int:
    """Plan a job, order what it needs in whole packs, and price it.

    Every line is proved again from plan.json and price.json before anything is printed.

    Args:
        job: The job document (YAML or JSON).
        prices: The price book (YAML, JSON, CSV or XLSX).
        effort: How long to look for fewer sheets, 0 to 3.
        out: Folder for price.json, the plan.json it is for, and the order in Letter and A4; none is written
            otherwise.
        tongue: What is printed is written in it, such as en; the one that the job names where not given.
        json: Print price.json itself, for another program to read.
    """
    from firstcourse.app import Disk, open_job, price_book, price_page
    from firstcourse.words import speaker_for

    files = Disk()
    if out is not None:
        files.check_folder(out)
    book = price_book(prices)
    session = open_job(job, files=files, tongue=tongue or "")
    plan = session.plan(effort=effort, on_step=progress)
    offer = session.price(plan, book)
    written = () if out is None else session.price_papers(plan, offer, out)
    if json:
        print_json(offer)
        return 0
    speaker = speaker_for(plan.plan)
    for line in page_lines(price_page(plan, offer, speaker)):
        print(speaker.say(line))
    print_findings(offer.findings, speaker)
    for file in written:
        print(speaker.text("cli-written", file=str(file)))
    return 0


def page_lines(page: Mapping[str, Any]) -> list[str]:
    """A page of an order as lines for the terminal."""
    listed = [page["title"], *(note for note in (page["invented"], page["incomplete"]) if note)]
    for table in page["tables"]:
        listed += ["", table["title"]]
        rows = ([cell.replace("\n", ", ") for cell in row if cell] for row in (table["heads"], *table["rows"]))
        listed += ["  " + " | ".join(row) for row in rows if row]
        listed += [f"  {table['note']}"] if table["note"] else []
    return listed

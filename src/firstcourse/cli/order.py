"""`firstcourse order`: what a job buys, for its suppliers, without prices."""

from pathlib import Path
from typing import Any

from firstcourse.cli.output import OutFolder, print_findings, print_json, progress
from firstcourse.cli.price import page_lines
from firstcourse.tongues import Tongue

_MONEY: dict[str, Any] = {
    "order": {"__all__": {"cost": True, "bought": {"__all__": {"each", "cost"}}}},
}


def order(
    job: Path,
    /,
    *,
    prices: Path | None = None,
    effort: int = 1,
    out: OutFolder | None = None,
    tongue: Tongue | None = None,
    json: bool = False,
) -> int:
    """Plan a job and order what it needs in whole packs, without prices.

    With a price book it is listed by supplier, in the packs that cost least, with masses, trips and cut lists;
    without one in the packs that the plan counts in.

    Args:
        job: The job document (YAML or JSON).
        prices: A price book, for suppliers and packs; its money is printed nowhere.
        effort: How long to look for fewer sheets, 0 to 3.
        out: Folder for the order in Letter and A4 and the plan.json it is for; none is written otherwise.
        tongue: What is printed is written in it, such as en; the one that the job names where not given.
        json: Print order and load as values, for another program to read.
    """
    from firstcourse.app import Disk, no_book, open_job, price_book, supply_order
    from firstcourse.words import speaker_for

    files = Disk()
    if out is not None:
        files.check_folder(out)
    book = None if prices is None else price_book(prices)
    session = open_job(job, files=files, tongue=tongue or "")
    plan = session.plan(effort=effort, on_step=progress)
    made = session.price(plan, book or no_book(plan.plan.job.currency))
    written = () if out is None else session.supply_papers(plan, made, out)
    if json:
        print_json(made.model_dump(mode="json", include={"plan", "on", "order", "load"}, exclude=_MONEY))
        return 0
    speaker = speaker_for(plan.plan)
    page, findings = supply_order(plan, made, speaker)
    for line in page_lines(page):
        print(speaker.say(line))
    print_findings(findings, speaker)
    for file in written:
        print(speaker.text("cli-written", file=str(file)))
    return 0

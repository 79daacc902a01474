"""`firstcourse proposal`: what is offered to a client, in words that a homeowner reads."""

from pathlib import Path

from firstcourse.cli.output import OutFolder, exit_code, print_json, progress
from firstcourse.tongues import Tongue


def proposal(
    job: Path,
    /,
    *,
    prices: Path,
    words: Path | None = None,
    effort: int = 1,
    out: OutFolder | None = None,
    tongue: Tongue | None = None,
    json: bool = False,
) -> int:
    """Make a proposal to a client: scope, price, payments and drawings to approve.

    Scope and sums are proved again from plan.json and price.json. Ends with 1 when a finding of the plan stops the
    work; the proposal then says what is settled first.

    Args:
        job: The job document (YAML or JSON).
        prices: The price book (YAML, JSON, CSV or XLSX).
        words: The firm's own words (YAML); an invented business where not given, which every page says.
        effort: How long to look for fewer sheets, 0 to 3.
        out: Folder for proposal.json with its plan.json and price.json, and the proposal in Letter and A4; none is
            written otherwise.
        tongue: What is printed is written in it, such as en; the one that the job names where not given.
        json: Print proposal.json itself, for another program to read.
    """
    from firstcourse.app import Disk, open_job, price_book, proposal_text

    files = Disk()
    if out is not None:
        files.check_folder(out)
    book = price_book(prices)
    session = open_job(job, files=files, tongue=tongue or "")
    plan = session.plan(effort=effort, on_step=progress)
    offer = session.price(plan, book)
    made = session.proposal(plan, offer, words)
    written = () if out is None else session.proposal_papers(plan, offer, made, out)
    if json:
        print_json(made)
    else:
        for line in (*proposal_text(plan, made), *map(str, written)):
            print(line)
    return exit_code(plan.plan.findings)

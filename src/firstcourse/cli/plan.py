"""`firstcourse plan`: boards, cuts and fasteners, verified."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

from cyclopts import Parameter, validators

from firstcourse.cli.output import OutFolder, exit_code, print_json, progress_told
from firstcourse.findings import Severity
from firstcourse.tongues import Tongue
from firstcourse.units import printable
from firstcourse.words import SaidFinding, Speaker, alike_together

if TYPE_CHECKING:
    from firstcourse.app import PlanSummary, StockUse

MOST_LINES, MOST_NAMED = 10, 6
"""Lines that the terminal gets of a plan; things to buy that it names."""
ROOMS = "rooms"
"""Folder of the packs of single rooms."""
Effort = Annotated[int, Parameter(validator=validators.Number(gte=0, lte=3))]


def plan(
    job: Path,
    /,
    *,
    out: OutFolder,
    effort: Effort = 1,
    poles: bool = False,
    progress: bool = False,
    tongue: Tongue | None = None,
    json: bool = False,
) -> int:
    """Plan boards, cuts and fasteners; verify the plan; write it and its papers.

    Ends with 1 when a finding stops the work; everything is written all the same, so that it can be read.

    Args:
        job: The job document (YAML or JSON).
        out: Folder to write into; it is made where it is not there. Papers of an older plan there are replaced or
            removed, all other files stay.
        effort: How long to look for fewer sheets: 0 at once, 1 as usual, 3 longest. Counted in steps, not seconds.
        poles: Print story poles at full size too, to cut out and glue on a batten; their numbers are in the site
            pack in any case.
        progress: Say about how much there is to do, what is being done, and since when, though no terminal is
            there to read it.
        tongue: What is printed is written in it, such as en; the one that the job names where not given.
        json: Print the summary for another program to read.
    """
    from firstcourse.app import Disk, ahead_text, open_job, summarize
    from firstcourse.words import speaker_for

    disk = Disk()
    disk.check_folder(out)
    told = progress_told(always=progress)
    session = open_job(job, files=disk, tongue=tongue or "")
    result = session.plan(effort=effort, on_step=told, on_ahead=lambda ahead: told(ahead_text(ahead, session.job)))
    summary = summarize(result, session.papers(result, out, poles=poles, on_step=told))
    if json:
        print_json(summary)
    else:
        print_summary(summary, out, speaker_for(result.plan))
    return exit_code(result.plan.findings)


def _proof(row: "StockUse", speaker: Speaker) -> str:
    """What is known of a stock's count; where stocks stand in for each other each alone may need none."""
    if not (row.fewest or row.proven or row.lower_bound):
        return ""
    known = "fewest" if row.fewest else "proven" if row.proven else "least"
    return speaker.text("cli-proof", known=known, least=row.lower_bound)


def print_summary(summary: "PlanSummary", out: Path, speaker: Speaker) -> None:
    """Print in ten lines what matters: what is bought, what stops the work, and where the rest is."""
    for line in summary_lines(summary, out, speaker):
        print(printable(line))


def summary_lines(summary: "PlanSummary", out: Path, speaker: Speaker) -> list[str]:
    """Ten lines at most.

    Args:
        summary: As `summarize` gives it.
        out: Where the plan was written.
        speaker: In whose words and units.
    """
    listed = alike_together(speaker.findings(summary.findings))
    counts = {name: getattr(summary, name) for name in ("boards", "sheets", "cuts", "fasteners")}
    first = [
        speaker.text("cli-plan", job=summary.job, **counts),
        *_sheets(summary, speaker),
        *_tiles(summary, speaker),
        *(speaker.say(line) for line in _changes(summary.changes, speaker)),
    ]
    last = [
        *_notes(listed, speaker),
        speaker.text(
            "cli-look",
            letter=str(out / "site-pack-letter.pdf"),
            a4="site-pack-a4.pdf",
            rooms=any(Path(file).is_relative_to(out / ROOMS) for file in summary.files),
            folder=str(out / ROOMS),
        ),
        speaker.text(
            "cli-why",
            office=str(out / "office-pack-letter.pdf"),
            lists=str(out / "pieces-and-cuts.xlsx"),
            verify=f"firstcourse verify {out}",
        ),
    ]
    told = [speaker.say(line) for line in _to_do(listed, MOST_LINES - len(first) - len(last), speaker)]
    return [*first, *told, *last]


def _sheets(summary: "PlanSummary", speaker: Speaker) -> list[str]:
    told = []
    for row in summary.stock:
        if row.used or row.practice:
            practice = "" if row.practice is None else speaker.text("cli-practice", count=row.practice)
            said = "; ".join(note for note in (_proof(row, speaker), practice) if note)
            told.append(f"{row.id} {row.used}{f' ({said})' if said else ''}")
    if summary.practice:
        told.append(" ".join(speaker.told(summary.practice)))
    return [speaker.text("cli-sheets", sheets=", ".join(told))] if told else []


def _tiles(summary: "PlanSummary", speaker: Speaker) -> list[str]:
    bought = [row for row in summary.quantities if row.buy and row.unit != "sheet"]
    told = [speaker.text("cli-tile", whole=summary.whole, cut=summary.cut)] if summary.whole + summary.cut else []
    shown = [f"{row.buy} × {speaker.words(speaker.quantity(row).item)}" for row in bought]
    if shown:
        more = max(0, len(shown) - MOST_NAMED)
        told.append(speaker.text("cli-to_buy", things=", ".join(shown[:MOST_NAMED]), more=more))
    return [" ".join(told)] if told else []


def _changes(changes: Sequence[str], speaker: Speaker) -> list[str]:
    return [speaker.text("cli-changes", change=changes[0], others=len(changes) - 1)] if changes else []


def _to_do(listed: Sequence[SaidFinding], room: int, speaker: Speaker) -> list[str]:
    """What stops the work, then what is to fix on the way: as many as there is room for, and how many more."""
    urgent = [one for one in listed if one.severity is not Severity.NOTE]
    if not any(one.severity is Severity.STOP for one in urgent):
        room -= 1
    shown = urgent if len(urgent) <= room else urgent[: room - 1]
    lines = [_urgent(one, speaker) for one in shown]
    if len(shown) < len(urgent):
        stops = sum(one.severity is Severity.STOP for one in urgent[len(shown) :])
        lines.append(speaker.text("cli-more", count=len(urgent) - len(shown), stops=stops))
    if any(one.severity is Severity.STOP for one in urgent):
        return lines
    return [speaker.text("cli-nothing"), *lines]


def _urgent(one: SaidFinding, speaker: Speaker) -> str:
    told = speaker.text(
        "cli-urgent", severity=one.severity.value, code=one.code, where=one.where, message=one.message
    )
    return f"{told} {speaker.text('cli-urgent_do', remedy=one.remedy)}" if one.remedy else told


def _notes(listed: Sequence[SaidFinding], speaker: Speaker) -> list[str]:
    count = sum(one.severity is Severity.NOTE for one in listed)
    return [speaker.text("cli-notes", count=count)] if count else []

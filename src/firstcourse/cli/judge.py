"""`firstcourse judge`: whether frame, panels and surfaces will carry tile."""

from pathlib import Path

from firstcourse.cli.output import OutFolder, exit_code, print_changes, print_findings, print_json
from firstcourse.tongues import Tongue


def judge(job: Path, /, *, out: OutFolder | None = None, tongue: Tongue | None = None, json: bool = False) -> int:
    """Judge whether frame, panels and surfaces will carry tile, before anything is bought.

    Ends with 1 when a finding stops the work. What the job does not say is not judged, and a note tells so.

    Args:
        job: The job document (YAML or JSON).
        out: Folder for the calculation sheets and an engineer's data sheets, in Letter and A4; none are written
            otherwise.
        tongue: What is printed is written in it, such as en; the one that the job names where not given.
        json: Print for another program to read.
    """
    from firstcourse.app import Disk, judgement_summary, open_job, remedy_tables
    from firstcourse.words import Speaker

    files_here = Disk()
    if out is not None:
        files_here.check_folder(out)
    session = open_job(job, files=files_here, tongue=tongue or "")
    done = session.judge()
    files = () if out is None else session.judgement_papers(done, out)
    if json:
        print_json(judgement_summary(done, files))
        return exit_code(done.findings)
    speaker = Speaker(done.practice, done.tape, sources=done.sources, tongue=done.tongue)
    print(speaker.text("cli-judged", job=done.job, what="; ".join(done.judged) or 0))
    print_changes(done.changes, speaker)
    sheets = [speaker.sheet(sheet, done.workings) for sheet in done.structures]
    for sheet, said in zip(done.structures, sheets, strict=True):
        for name, value in said.facts.items():
            if sheet.areas and name.startswith("dead load"):
                print(f"  {said.where}: {name} {value}")
    # What stands among the cautions is not told twice.
    print_findings((finding for finding in done.findings if finding.code != "SUI-900"), speaker)
    for table in remedy_tables(speaker, done.workings.values()):
        print(f"\n{speaker.text('cli-remedies', where=table.where, engineer=table.of_frame)}")
        for number, (what, outcome) in enumerate(table.rows, start=1):
            print(f"  {number}. {what}\n      {outcome}")
    print()
    for caution in done.cautions:
        print(speaker.text("cli-caution", text=speaker.rule_text(caution)))
    for file in files:
        print(speaker.text("cli-written", file=str(file)))
    return exit_code(done.findings)

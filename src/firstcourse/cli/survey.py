"""`firstcourse survey`: what the taped readings prove."""

from pathlib import Path

from firstcourse.cli.output import exit_code, print_findings, print_json
from firstcourse.tongues import Tongue
from firstcourse.units import printable


def survey(job: Path, /, *, tongue: Tongue | None = None, json: bool = False) -> int:
    """Adjust the taped readings: corners, their uncertainty, every reading's residual, what else to measure.

    Args:
        job: The job document (YAML or JSON).
        tongue: What is printed is written in it, such as en; the one that the job names where not given.
        json: Print for another program to read.
    """
    from firstcourse.app import open_job, report_lines, survey_summary
    from firstcourse.words import Speaker

    session = open_job(job, tongue=tongue or "")
    result = session.survey()
    if json:
        print_json(survey_summary(result))
    else:
        done = session.job
        speaker = Speaker(done.practice, done.tape, sources=session.sources, tongue=done.tongue)
        for room in result.rooms:
            for line in report_lines(room, speaker):
                print(printable(line))
        print_findings(result.findings, speaker)
    return exit_code(result.findings)

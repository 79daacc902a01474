"""`firstcourse survey`: what the taped readings prove."""

from pathlib import Path

from firstcourse.cli.output import exit_code, print_findings, print_json


def survey(job: Path, /, *, json: bool = False) -> int:
    """Adjust the taped readings: corners, their uncertainty, every reading's residual, what else to measure.

    Args:
        job: The job document (YAML or JSON).
        json: Print for another program to read.
    """
    from firstcourse.app import open_job, report_lines, survey_summary
    from firstcourse.words import Speaker

    session = open_job(job)
    result = session.survey()
    if json:
        print_json(survey_summary(result))
    else:
        for room in result.rooms:
            print("\n".join(report_lines(room, session.job.tape)))
        job_read = session.job
        speaker = Speaker(job_read.practice, job_read.tape, sources=session.sources, tongue=job_read.tongue)
        print_findings(result.findings, speaker)
    return exit_code(result.findings)

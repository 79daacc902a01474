"""`firstcourse survey`: what the taped readings prove."""

from pathlib import Path

from firstcourse.cli.output import exit_code, print_findings, print_json


def survey(job: Path, /, *, json: bool = False) -> int:
    """Adjust the taped readings: corners, their uncertainty, every reading's residual, what else to measure.

    Args:
        job: The job document (YAML or JSON).
        json: Print for another program to read.
    """
    from firstcourse.job import problems_placed, read_job
    from firstcourse.rules import load_rules
    from firstcourse.survey import survey_job
    from firstcourse.survey.report import report_fields, report_lines
    from firstcourse.words import Speaker

    document = read_job(job)
    rules = load_rules(document.date, document.practice, document.overrides())
    with problems_placed(job):
        result = survey_job(document, rules)
    if json:
        print_json(
            {
                "rooms": [report_fields(room) for room in result.rooms],
                "findings": [finding.model_dump(mode="json") for finding in result.findings],
            }
        )
    else:
        for room in result.rooms:
            print("\n".join(report_lines(room, document.tape)))
        print_findings(result.findings, Speaker(document.practice, document.tape))
    return exit_code(result.findings)

"""The judgement alone, printed before anything is planned or bought."""

from collections.abc import Mapping, Sequence

from firstcourse.findings import Finding
from firstcourse.papers.judgement_pages import judgement_pages, remedy_tables, shown_finding
from firstcourse.papers.pages import HERE, PAGE_SIZES, Paper
from firstcourse.plan import StructureSheet
from firstcourse.words import Speaker
from firstcourse.workings import Working

_OF_RULES = "RUL-"


def judgement_pack(
    paper: Paper,
    *,
    job: str,
    date: str,
    practice: str,
    speaker: Speaker,
    structures: Sequence[StructureSheet],
    findings: Sequence[Finding],
    workings: Mapping[str, Working],
    cautions: Sequence[str],
) -> bytes:
    """Verdicts, calculation sheets and data sheets for an engineer as a PDF.

    Args:
        paper: Page size.
        job: The job's name.
        date: Day for which the rules are read, ISO 8601.
        practice: Whose rules apply.
        speaker: In whose words and units it is printed.
        structures: What was judged of frames.
        findings: Of the judgement.
        workings: By the keys that the sheets name.
        cautions: What stands at the foot of every page.
    """
    said = speaker.findings(findings)
    pages = judgement_pages(
        job=job,
        date=date,
        practice=practice.upper(),
        structures=structures,
        findings=findings,
        said=said,
        sheets=[speaker.sheet(sheet, workings) for sheet in structures],
        remedies=remedy_tables(speaker, workings.values()),
        workings={name: speaker.working(working) for name, working in workings.items()},
        cautions=[speaker.rule_text(caution) for caution in cautions],
        speaker=speaker,
    )
    # With a whole plan it stands on another page.
    borrowed = [shown_finding(finding, speaker) for finding in said if finding.code.startswith(_OF_RULES)]
    pages["findings"] = [*pages["findings"], *borrowed]
    named = {"tongue": speaker.tongue, "name": speaker.text("judged-name")}
    printed = {"paper": PAGE_SIZES[paper], **named, **speaker.fields(pages)}
    return HERE.compiled(("judgement.typ", "judgement_pack.typ"), printed)

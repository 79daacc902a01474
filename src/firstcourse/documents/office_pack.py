"""The printed office pack: judgement, why so many sheets, findings in full, workings, rules and sources."""

from typing import Any

from firstcourse.documents.judgement_pages import (
    JUDGED,
    is_judged,
    judgement_pages,
    printed_workings,
    structure_cautions,
)
from firstcourse.documents.pages import PAGE_SIZES, Paper, compiled
from firstcourse.documents.rule_pages import rule_pages
from firstcourse.documents.tile_pages import other_starts
from firstcourse.documents.why_pages import why_page
from firstcourse.drawings.reader import speaker_for
from firstcourse.findings import alike_together
from firstcourse.plan import Plan
from firstcourse.units import one_or_more
from firstcourse.workings import Working


def office_pack(plan: Plan, paper: Paper) -> bytes:
    """The office pack as a PDF.

    Args:
        plan: A verified plan.
        paper: Page size.

    Raises:
        PaperError: A warning of the page maker, such as a missing letter in the face.
    """
    return print_office_pack(office_data(plan), paper)


def print_office_pack(data: dict[str, Any], paper: Paper) -> bytes:
    """The office pack as a PDF, from what its pages print.

    Args:
        data: As `office_data` gives it.
        paper: Page size.

    Raises:
        PaperError: A warning of the page maker.
    """
    return compiled(("pages.typ", "judgement.typ", "office_pack.typ"), {**data, "paper": PAGE_SIZES[paper]})


def office_data(plan: Plan) -> dict[str, Any]:
    """All that the pack prints, as plain values, in the reader's words and units; the same on every paper."""
    # Rules stand beside what their sources give, so they bring their units with them.
    return speaker_for(plan).fields(_data(plan)) | rule_pages(plan)


def _data(plan: Plan) -> dict[str, Any]:
    judged = is_judged(plan.structures, plan.findings)
    elsewhere = printed_workings(plan.structures, plan.workings) if judged else frozenset()
    return {
        "pack": "office pack",
        "job": plan.job.name,
        "date": plan.job.date,
        "practice": plan.job.practice.upper(),
        "digest": plan.job.digest[:12],
        "structure": structure_cautions(plan),
        "why": why_page(plan),
        "starts": other_starts(plan),
        "judged": _judgement(plan) if judged else None,
        "findings": [
            finding.model_dump(mode="json")
            for finding in alike_together(plan.findings)
            if not (judged and finding.code.startswith(JUDGED))
        ],
        "workings": [
            _working(working, plan)
            for name, working in plan.workings.items()
            if name not in elsewhere and not _told_again(plan, name)
        ],
    }


def _working(working: Working, plan: Plan) -> dict[str, Any]:
    result, unit = speaker_for(plan).result(working.result, working.unit)
    return {
        **working.model_dump(mode="json"),
        "result": result,
        "unit": one_or_more(result, unit),
        "values": [list(pair) for pair in working.values.items()],
    }


def _told_again(plan: Plan, name: str) -> bool:
    """Whether a later working, of what to buy, says all that this one says and more."""
    mine = plan.workings[name]
    return any(
        other != name and more.title == mine.title and mine.values.items() < more.values.items()
        for other, more in plan.workings.items()
    )


def _judgement(plan: Plan) -> dict[str, Any]:
    return judgement_pages(
        job=plan.job.name,
        date=plan.job.date,
        practice=plan.job.practice.upper(),
        structures=plan.structures,
        findings=plan.findings,
        workings=plan.workings,
        cautions=structure_cautions(plan),
    )

"""The printed office pack: judgement, why so many sheets, findings in full, workings, rules and sources."""

from collections.abc import Mapping, Sequence
from dataclasses import asdict
from typing import Any

from firstcourse.papers.frame import PUT_IN, page_frame
from firstcourse.papers.judgement_pages import (
    JUDGED,
    is_judged,
    judgement_pages,
    printed_workings,
    remedy_tables,
    shown_finding,
    structure_cautions,
)
from firstcourse.papers.pages import HERE, PAGE_SIZES, PageMaker, Paper
from firstcourse.papers.rule_pages import NO_RULES, rule_pages
from firstcourse.papers.tile_pages import other_starts
from firstcourse.papers.why_pages import why_page
from firstcourse.plan import Plan
from firstcourse.units import one_or_more
from firstcourse.words import SaidFinding, SaidWorking, Speaker, alike_together, speaker_for


def office_pack(plan: Plan, paper: Paper) -> bytes:
    """The office pack as a PDF.

    Args:
        plan: A verified plan.
        paper: Page size.

    Raises:
        PaperError: A warning of the page maker, such as a missing letter in the face.
    """
    return print_office_pack(office_data(plan), paper)


def print_office_pack(data: dict[str, Any], paper: Paper, maker: PageMaker = HERE) -> bytes:
    """The office pack as a PDF, from what its pages print.

    Args:
        data: As `office_data` gives it.
        paper: Page size.
        maker: Makes the pages.

    Raises:
        PaperError: A warning of the page maker.
    """
    sources = ("pages.typ", "judgement.typ", "office_pack.typ")
    return maker.compiled(sources, {**data, "paper": PAGE_SIZES[paper]})


def office_data(plan: Plan, *, with_rules: bool = True, with_starts: bool = True) -> dict[str, Any]:
    """All that the pack prints, as plain values, in the reader's words and units; the same on every paper.

    Args:
        plan: What the pack is made of.
        with_rules: Whether rules and sources, and why so many sheets, are told here: those of a job of several
            rooms stand in the pack of the whole.
        with_starts: Whether it is told where tile could start otherwise.
    """
    # Rules stand beside what their sources give, so they bring their units with them.
    speaker = speaker_for(plan)
    told = _data(plan, speaker)
    told |= {"why": why_page(plan) if with_rules else {"title": "", "stocks": [], "weights": []}}
    told |= {"starts": other_starts(plan) if with_starts else []}
    practice = plan.job.practice.upper()
    told |= {"words": speaker.labels("office-labels", practice=practice, **PUT_IN)}
    told |= {"tongue": speaker.tongue, "frame": page_frame(plan, speaker, speaker.text("office-name"))}
    return speaker.fields(told) | (rule_pages(plan) if with_rules else NO_RULES)


def _data(plan: Plan, speaker: Speaker) -> dict[str, Any]:
    said = speaker.findings(plan.findings)
    workings = {name: speaker.working(working) for name, working in plan.workings.items()}
    judged = is_judged(plan.structures, plan.findings)
    elsewhere = printed_workings(plan.structures, plan.workings) if judged else frozenset()
    return {
        "job": plan.job.name,
        "structure": structure_cautions(plan, speaker),
        "judged": _judgement(plan, speaker, said, workings) if judged else None,
        "findings": [
            shown_finding(finding, speaker)
            for finding in alike_together(said)
            if not (judged and finding.code.startswith(JUDGED))
        ],
        "workings": [
            _working(working, speaker)
            for name, working in workings.items()
            if name not in elsewhere and not _told_again(workings, name)
        ],
    }


def _working(working: SaidWorking, speaker: Speaker) -> dict[str, Any]:
    result, unit = speaker.result(working.result, working.unit)
    return {
        **asdict(working),
        "result": result,
        "unit": one_or_more(result, unit),
        "values": [list(pair) for pair in working.values.items()],
    }


def _told_again(workings: Mapping[str, SaidWorking], name: str) -> bool:
    """Whether a later working says just this, as of one tile on several walls, or all of it and more."""
    mine, place = workings[name], list(workings).index(name)
    return any(
        (other != name and more.title == mine.title and mine.values.items() < more.values.items())
        or (number > place and more == mine)
        for number, (other, more) in enumerate(workings.items())
    )


def _judgement(
    plan: Plan, speaker: Speaker, said: Sequence[SaidFinding], workings: Mapping[str, SaidWorking]
) -> dict[str, Any]:
    return judgement_pages(
        job=plan.job.name,
        date=plan.job.date,
        practice=plan.job.practice.upper(),
        structures=plan.structures,
        findings=plan.findings,
        said=said,
        sheets=[speaker.sheet(sheet, plan.workings) for sheet in plan.structures],
        remedies=remedy_tables(speaker, plan.workings.values()),
        workings=workings,
        cautions=structure_cautions(plan, speaker),
        speaker=speaker,
    )

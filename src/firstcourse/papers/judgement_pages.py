"""What papers print of the judgement: verdicts with remedies, calculation sheets, data sheets for an engineer."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict
from typing import Any, NamedTuple

from firstcourse.findings import Finding, Severity
from firstcourse.papers.frame import PUT_IN
from firstcourse.plan import Plan, StructureSheet
from firstcourse.words import SaidFinding, SaidLine, SaidSheet, SaidWorking, Speaker, alike_together
from firstcourse.workings import Working

JUDGED = "SUI-"
"""How the codes of the judgement's findings begin."""
NOT_TOLD = "SUI-910"
"""What the job leaves out, of which nothing was judged."""
_FRAME_REMEDY = "frames-remedy"
_RANKED = (_FRAME_REMEDY, "ground-remedy")
"""Formulas of remedies, each working one of them."""
STRUCTURE_CAUTIONS = ("safety.caution.structure", "safety.caution.engineer")
"""Rules whose text stands at the foot of every page that shows a structural result."""


class RemedyTable(NamedTuple):
    """What would make one place pass, the best first.

    Attributes:
        where: The place.
        of_frame: Whether it is a frame that does not hold; else a surface that is not flat.
        rows: What to do, and what it costs and leaves.
    """

    where: str
    of_frame: bool
    rows: list[tuple[str, str]]


def judgement_pages(
    *,
    job: str,
    date: str,
    practice: str,
    structures: Sequence[StructureSheet],
    findings: Sequence[Finding],
    said: Sequence[SaidFinding],
    sheets: Sequence[SaidSheet],
    remedies: Sequence[RemedyTable],
    workings: Mapping[str, SaidWorking],
    cautions: Sequence[str],
    speaker: Speaker,
) -> dict[str, Any]:
    """The judgement's pages as plain values.

    Args:
        job: The job's name.
        date: Day for which the rules are read, ISO 8601.
        practice: Whose rules apply, in capitals.
        structures: What was judged of frames.
        findings: Of the whole job; those of the judgement are taken.
        said: The same in words.
        sheets: `structures` in words.
        remedies: What would make places pass.
        workings: By the keys that the sheets name.
        cautions: What stands at the foot of every page.
        speaker: In whose words.

    Returns:
        Places with their verdict, findings, remedies, calculation sheets and data sheets. An engineer gets a data
        sheet of every floor and ceiling, and of walls that do not hold.
    """
    return {
        "job": job,
        "words": speaker.labels("judged-labels", date=date, practice=practice, **PUT_IN),
        "cautions": list(cautions),
        "places": [
            {"where": said_sheet.where, "verdict": _verdict(sheet, said_sheet, findings, speaker)}
            for sheet, said_sheet in zip(structures, sheets, strict=True)
        ],
        "findings": [
            shown_finding(finding, speaker) for finding in alike_together(said) if finding.code.startswith(JUDGED)
        ],
        "remedies": [{"where": table.where, "rows": table.rows} for table in remedies],
        "sheets": [
            [_sheet(sheet, said_sheet, workings) for sheet, said_sheet in together]
            for together in _pages(structures, sheets)
        ],
        "engineer": [
            _engineer(sheet, said_sheet)
            for sheet, said_sheet in zip(structures, sheets, strict=True)
            if sheet.kind != "wall" or not sheet.holds
        ],
    }


def is_judged(structures: Sequence[StructureSheet], findings: Sequence[Finding]) -> bool:
    """Whether there is a judgement to print: a frame, or a finding beyond the note of what was not told."""
    return bool(structures) or any(
        finding.code.startswith(JUDGED) and finding.code != NOT_TOLD for finding in findings
    )


def structure_cautions(plan: Plan, speaker: Speaker) -> list[str]:
    """What stands at the foot of every page that shows a structural result."""
    return [speaker.rule_text(rule.value) for rule in plan.rules if rule.id in STRUCTURE_CAUTIONS]


def printed_workings(structures: Sequence[StructureSheet], names: Iterable[str]) -> frozenset[str]:
    """Keys of the workings that the judgement's pages print, so that no other page repeats them."""
    lines = {line.working for sheet in structures for line in sheet.lines}
    return frozenset(lines.union(name for name in names if name.partition("@")[0] in _RANKED))


def remedy_tables(speaker: Speaker, workings: Iterable[Working]) -> list[RemedyTable]:
    """The remedies of every place, in words.

    Args:
        speaker: Says them.
        workings: Of a job or a plan, in order.
    """
    tables: dict[str, RemedyTable] = {}
    for working in workings:
        if working.formula not in _RANKED:
            continue
        of_frame = working.formula == _FRAME_REMEDY
        place = speaker.place(working.at[0] if of_frame else f"{working.at[0]}/flatness")
        said = speaker.working(working)
        table = tables.setdefault(place, RemedyTable(place, of_frame, []))
        table.rows.append((said.title, _outcome(said)))
    return list(tables.values())


def _outcome(working: SaidWorking) -> str:
    """Whether a remedy passes, what it costs in height, material and labour, and what it leaves failing."""
    return "; ".join((working.result, *(f"{name} {value}" for name, value in working.values.items())))


def shown_finding(finding: SaidFinding, speaker: Speaker) -> dict[str, Any]:
    """A finding with all that is known of it, as plain values."""
    return asdict(finding) | {"severity": speaker.text("papers-severity", finding.severity.value)}


def _verdict(sheet: StructureSheet, said: SaidSheet, findings: Sequence[Finding], speaker: Speaker) -> str:
    failing = [shown.check for shown, line in zip(said.lines, sheet.lines, strict=True) if not line.stands]
    if failing:
        return speaker.text("judged-fails", checks=", ".join(failing))
    open_ones = [
        finding.code
        for finding in findings
        if finding.at[0] == sheet.surface
        and finding.severity is not Severity.NOTE
        and finding.code.startswith(JUDGED)
    ]
    checks = sum(line.limit is not None for line in sheet.lines)
    verdict = speaker.text("judged-holds", count=max(1, checks))
    if not open_ones:
        return verdict
    return speaker.text("judged-open", verdict=verdict, codes=", ".join(dict.fromkeys(open_ones)))


type _Both = tuple[StructureSheet, SaidSheet]


def _pages(structures: Sequence[StructureSheet], sheets: Sequence[SaidSheet]) -> list[list[_Both]]:
    """Floors and ceilings on pages of their own; walls that follow each other share theirs."""
    pages: list[list[_Both]] = []
    for sheet, said in zip(structures, sheets, strict=True):
        if sheet.kind == "wall" and pages and pages[-1][-1][0].kind == "wall":
            pages[-1].append((sheet, said))
        else:
            pages.append([(sheet, said)])
    return pages


def _sheet(sheet: StructureSheet, said: SaidSheet, workings: Mapping[str, SaidWorking]) -> dict[str, Any]:
    return {
        "where": said.where,
        "lines": [
            _line(number, shown, workings[line.working]) | {"fails": not line.stands}
            for number, (line, shown) in enumerate(zip(sheet.lines, said.lines, strict=True), start=1)
        ],
    }


def _line(number: int, line: SaidLine, working: SaidWorking) -> dict[str, Any]:
    return {
        "number": number,
        "title": working.title,
        "formula": working.formula,
        "values": [list(pair) for pair in working.values.items() if pair[0] != "limit"],
        "steps": list(working.steps),
        "argument": list(working.argument),
        "source": working.source,
        "found": line.found,
        "limit": line.limit,
        "verdict": line.verdict,
    }


def _engineer(of: StructureSheet, sheet: SaidSheet) -> dict[str, Any]:
    return {
        "where": sheet.where,
        "facts": [list(fact) for fact in sheet.facts.items()],
        "layers": [list(layer) for layer in sheet.layers],
        "mass": sheet.mass,
        "assumed": list(sheet.assumed),
        "unjudged": list(sheet.unjudged),
        "question": sheet.question,
        "checks": [
            [line.check, line.found, line.limit, line.verdict, not judged.stands]
            for line, judged in zip(sheet.lines, of.lines, strict=True)
            if line.limit
        ],
    }

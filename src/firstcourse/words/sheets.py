"""Sheets of judged frames as an engineer or a setter meets them."""

from collections.abc import Mapping
from dataclasses import dataclass

from firstcourse.plan import SheetLine, StructureSheet
from firstcourse.values import Measure
from firstcourse.words.saying import Saying
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidLine:
    """One line of a sheet in words.

    Attributes:
        check: What is checked; empty for a line without a limit.
        found, limit: With their units; the limit is empty where there is none.
        verdict: Whether it holds.
    """

    check: str
    found: str
    limit: str
    verdict: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidSheet:
    """A sheet in words, its attributes as `StructureSheet` names them.

    Attributes:
        where: The place.
        layers: Name, thickness, density and mass of each.
        question: What is asked of an engineer.
    """

    where: str
    facts: dict[str, str]
    layers: tuple[tuple[str, str, str, str], ...]
    mass: str
    assumed: tuple[str, ...]
    unjudged: tuple[str, ...]
    question: str
    lines: tuple[SaidLine, ...]


def said_sheet(saying: Saying, sheet: StructureSheet, workings: Mapping[str, Working]) -> SaidSheet:
    """A sheet in words.

    Args:
        saying: Says it to one reader.
        sheet: As the plan has it.
        workings: By the keys that its lines name.
    """
    lines = tuple(_line(saying, line, workings[line.working]) for line in sheet.lines)
    failing = [said.check for said, line in zip(lines, sheet.lines, strict=True) if not line.stands]
    return SaidSheet(
        where=saying.place(sheet.surface),
        facts=saying.rows("frames-facts", sheet.facts, kind=sheet.kind),
        layers=tuple(
            (
                saying.text("frames-of", "", {"one": layer.of}),
                saying.value(layer.thickness),
                saying.value(layer.density),
                saying.value(layer.mass),
            )
            for layer in sheet.layers
        ),
        mass="" if sheet.mass is None else saying.value(sheet.mass),
        assumed=tuple(map(saying.statement, sheet.assumed)),
        unjudged=tuple(saying.text(f"frames-{code}", "", {}) for code in sheet.unjudged),
        question=saying.text(
            "frames-question",
            "",
            {"kind": sheet.kind, "holds": "no" if failing else "yes", "failing": ", ".join(failing)},
        ),
        lines=lines,
    )


def _line(saying: Saying, line: SheetLine, working: Working) -> SaidLine:
    if line.limit is None:
        return SaidLine(check="", found=_shown(saying, working, line.found), limit="", verdict="")
    return SaidLine(
        check=saying.part(working, "check") or saying.text("frames-check", "", {"one": line.name}),
        found=_shown(saying, working, line.found),
        limit=saying.part(working, "value-limit") or saying.value(line.limit),
        verdict=saying.text(f"frames-{line.verdict}", "", {}),
    )


def _shown(saying: Saying, working: Working, found: Measure) -> str:
    return saying.part(working, "result") or saying.value(found)

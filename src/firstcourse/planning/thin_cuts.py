"""Cuts that take off less than can be scored and snapped: told once for each surface, with what takes them off."""

from collections.abc import Iterator, Sequence

from firstcourse.findings import Finding, Severity
from firstcourse.plan import Part, Sheet, Surface
from firstcourse.rules import RuleSet
from firstcourse.units import Tape, format_length


def thin_cuts(sheets: Sequence[Sheet], surfaces: Sequence[Surface], rules: RuleSet, tape: Tape) -> list[Finding]:
    """One finding for each surface with boards beside strips too narrow to be snapped, each with its sheet.

    Args:
        sheets: Sheets with their cuts in working order.
        surfaces: Those with boards.
        rules: For `boards.cut.least`.
        tape: Tape of the job.
    """
    entry, least = rules.entry("boards.cut.least"), rules.ticks("boards.cut.least")
    strips: dict[str, list[tuple[int, str]]] = {}
    for sheet in sheets:
        for width, pieces in _strips(sheet, least):
            for piece in pieces:
                strips.setdefault(piece, []).append((width, sheet.id))
    found = []
    for surface in surfaces:
        told = [
            f"{format_length(width, tape)} off {board.mark} (sheet {sheet})"
            for board in surface.boards
            for width, sheet in strips.get(board.piece, ())
        ]
        if told:
            found.append(
                Finding(
                    code="BRD-206",
                    severity=Severity.NOTE,
                    where=surface.title or surface.id,
                    message="Cuts here take off less than can be scored and snapped.",
                    measured=", ".join(told),
                    limit=format_length(least, tape),
                    rule=entry.id,
                    source=entry.source,
                    remedy=(
                        "Score along a straightedge several times and break the strip off with pliers, or plane, "
                        "rasp or saw it off. The dust holds silica: outdoors or taken at the blade, a mask on."
                    ),
                )
            )
    return found


def _strips(sheet: Sheet, least: int) -> Iterator[tuple[int, list[str]]]:
    """Widths of the strips narrower than `least` that cuts take off [ticks], with the pieces beyond the cut.

    Where no piece ends at a cut, those of the part that it is taken off are meant; of a piece that is so narrow
    itself, the piece.
    """
    sizes = {sheet.id: sheet.size}
    for cut in sheet.cuts:
        axis = 1 if cut.along == "x" else 0
        whole = sizes.pop(cut.of)
        ends = (cut.at, whole[axis] - cut.at)
        for name, part in zip(cut.gives, ends, strict=True):
            sizes[name] = (whole[0], part) if axis else (part, whole[1])
        for name, other, width in zip(cut.gives, reversed(cut.gives), ends, strict=True):
            if 0 < width < least:
                yield width, _at(sheet.parts, name, other, axis)


def _at(parts: Sequence[Part], strip: str, other: str, axis: int) -> list[str]:
    own = [part.piece for part in parts if part.id.startswith(strip) and part.piece]
    if own:
        return own
    inside = [part for part in parts if part.id.startswith(other)]
    line = max(part.at[axis] + part.size[axis] for part in inside)
    at_line = [p.piece for p in inside if p.piece and p.at[axis] + p.size[axis] == line]
    return at_line or [part.piece for part in inside if part.piece]

"""Cuts that take off less than can be scored and snapped: told once for each surface, with what takes them off."""

from collections.abc import Iterator, Sequence

from firstcourse.findings import Finding, Severity
from firstcourse.plan import Part, Sheet, Surface
from firstcourse.rules import RuleSet
from firstcourse.values import Ref, least, length


def thin_cuts(sheets: Sequence[Sheet], surfaces: Sequence[Surface], rules: RuleSet) -> list[Finding]:
    """One finding for each surface with boards beside strips too narrow to be snapped, each with its sheet.

    Args:
        sheets: Sheets with their cuts in working order.
        surfaces: Those with boards.
        rules: For `boards.cut.least`.
    """
    entry, lowest = rules.entry("boards.cut.least"), rules.ticks("boards.cut.least")
    strips: dict[str, list[tuple[int, str]]] = {}
    for sheet in sheets:
        for width, pieces in _strips(sheet, lowest):
            for piece in pieces:
                strips.setdefault(piece, []).append((width, sheet.id))
    found = []
    for surface in surfaces:
        told = [
            (width, board.id, sheet) for board in surface.boards for width, sheet in strips.get(board.piece, ())
        ]
        if told:
            found.append(
                entry.found(
                    "BRD-206",
                    Severity.NOTE,
                    surface.id,
                    limit=least(length(lowest)),
                    remedies=("break_off", "dust"),
                    widths=tuple(length(width) for width, _, _ in told),
                    boards=tuple(Ref(ref=board) for _, board, _ in told),
                    sheets=tuple(Ref(ref=f"sheet/{sheet}") for _, _, sheet in told),
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

"""Cuts that take off less than can be scored and snapped: each is told, with what to do instead."""

from collections.abc import Sequence

from firstcourse.findings import Finding, Severity
from firstcourse.plan import Sheet
from firstcourse.rules import RuleSet
from firstcourse.units import Tape, format_length


def thin_cuts(sheets: Sequence[Sheet], rules: RuleSet, tape: Tape) -> list[Finding]:
    """One finding for each sheet that a strip too narrow to be snapped is to be taken off.

    Args:
        sheets: Sheets with their cuts in working order.
        rules: For `boards.cut.least`.
        tape: Tape of the job.
    """
    entry, least = rules.entry("boards.cut.least"), rules.ticks("boards.cut.least")
    found = []
    for sheet in sheets:
        thin = _strips(sheet, least)
        if thin:
            found.append(
                Finding(
                    code="BRD-206",
                    severity=Severity.NOTE,
                    where=f"sheet {sheet.id}",
                    message="A cut takes off less than can be scored and snapped.",
                    measured=", ".join(format_length(width, tape) for width in thin),
                    limit=format_length(least, tape),
                    rule=entry.id,
                    source=entry.source,
                    remedy=(
                        "Plane, rasp or saw it off outdoors or with dust taken at the blade, a mask on; or leave "
                        "the factory edge where the gaps beside the board may be so much narrower."
                    ),
                )
            )
    return found


def _strips(sheet: Sheet, least: int) -> list[int]:
    """Widths of the strips narrower than `least` that the cuts of a sheet take off [ticks]."""
    sizes = {sheet.id: sheet.size}
    thin = []
    for cut in sheet.cuts:
        width, height = sizes.pop(cut.of)
        whole = height if cut.along == "x" else width
        thin += [part for part in (cut.at, whole - cut.at) if 0 < part < least]
        for name, part in zip(cut.gives, (cut.at, whole - cut.at), strict=True):
            sizes[name] = (width, part) if cut.along == "x" else (part, height)
    return thin

"""The rules a plan rests on, and a word on those that the book has only of another practice."""

from collections.abc import Sequence

from firstcourse.findings import Finding, Severity
from firstcourse.plan import RuleNote
from firstcourse.rules import RuleSet

_RULES_SHOWN = (
    "bedding.",
    "boards.",
    "choice.",
    "fastening.",
    "framing.",
    "mass.board.",
    "safety.",
    "survey.",
    "tape.",
)

# Design values of lumber are left out: each working names the table it took them from.
_RULES_JUDGED = (
    "ceiling.",
    "door.",
    "drain.",
    "exposure.",
    "flange.",
    "floor.",
    "joist.",
    "mass.",
    "moisture.",
    "panel.",
    "remedy.",
    "surface.",
    "tile.absorption.",
    "tile.slip.",
    "transition.",
    "trim.",
    "wall.",
)
_RULES_TILED = ("tile.", "tiling.")
_RULES_WET = ("fall.", "shower.", "water.")


def rule_notes(rules: RuleSet, *, judged: bool, tiled: bool, wet: bool) -> tuple[RuleNote, ...]:
    """The rules behind a plan, each once.

    Args:
        rules: The rules in force.
        judged: Whether a frame or a ground was judged.
        tiled: Whether tile was laid out.
        wet: Whether a shower floor or a membrane was planned.
    """
    prefixes = (
        *_RULES_SHOWN,
        *(_RULES_JUDGED if judged else ()),
        *(_RULES_TILED if tiled else ()),
        *(_RULES_WET if wet else ()),
    )
    # Two lists may name the same rules, such as a tile's grip; each stands once.
    entries = {entry.id: entry for prefix in prefixes for entry in rules.under(prefix)}
    return tuple(
        RuleNote(
            id=entry.id,
            value=str(entry.value),
            unit=entry.unit,
            basis=entry.basis,
            source=entry.source,
            locator=entry.locator,
            taken_from=entry.taken_from,
        )
        for entry in entries.values()
    )


def borrowed_values(notes: Sequence[RuleNote], practice: str) -> tuple[Finding, ...]:
    """Tell of values that are those of another practice, for want of the job's own; none where all are its own."""
    borrowed = [note for note in notes if note.taken_from]
    if not borrowed:
        return ()
    source, own = borrowed[0].taken_from.upper(), practice.upper()
    are = "is" if len(borrowed) == 1 else "are"
    return (
        Finding(
            code="RUL-101",
            severity=Severity.NOTE,
            where="rule book",
            message=f"{len(borrowed)} of the {len(notes)} values behind this plan {are} of {source} practice: "
            f"the rule book has none of {own} practice for them.",
            measured=f"{len(borrowed)} of {len(notes)}",
            remedy="Check them against the standards and makers' sheets that govern here. `firstcourse rules "
            f"--practice {practice}` marks them, and a plan lists them under Rules and sources; a job sets "
            "its own under `rules`, with its reason.",
        ),
    )

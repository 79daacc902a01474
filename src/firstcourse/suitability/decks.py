"""What lies on the joists, by its kind and thickness: planks, and panels where a practice goes by their kind.

Planks shrink, swell and cup each by itself. Tile and its boards go onto a panel over them, never straight onto
them; the planks then count as mass and as what the panel is screwed to, not as stiffness.
"""

from dataclasses import dataclass
from enum import StrEnum

from firstcourse.errors import InputValueError
from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleEntry, RuleSet
from firstcourse.units import LengthError, Tape, inch_text, parse_length, to_inches, to_mm


class Deck(StrEnum):
    """What the deck is made of, by the rule book's names."""

    PLANKS = "planks"
    PLANKS_DIAGONAL = "planks_diagonal"
    CHIPBOARD = "chipboard"
    PLYWOOD = "plywood"
    STRAND_BOARD = "strand_board"


_WORDS = {
    Deck.PLANKS: "planks square to the joists",
    Deck.PLANKS_DIAGONAL: "planks on the diagonal",
    Deck.CHIPBOARD: "chipboard",
    Deck.PLYWOOD: "plywood",
    Deck.STRAND_BOARD: "strand board",
}
_UNKNOWN_AS = Deck.CHIPBOARD
"""A panel of unknown kind is held against what asks for the thickest."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Planks:
    """A subfloor of planks.

    Attributes:
        kind: How they lie on the joists.
        thickness: How thick they are [ticks].
        width: How wide one is [ticks]; None where not known.
    """

    kind: Deck
    thickness: int
    width: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    spacing: int
    least: int


def judge_planks(
    rules: RuleSet,
    where: str,
    planks: Planks,
    panels: tuple[int, ...],
    spacing: int | None,
    tape: Tape,
) -> tuple[Finding, ...]:
    """Whether planks are thick enough for their joists, and a panel lies over them that may carry tile.

    Args:
        rules: The rule book in force.
        where: The floor in words.
        planks: The planks.
        panels: Thickness of each panel layer over them, from below [ticks].
        spacing: Joists centre to centre [ticks]; None where not known.
        tape: Tape of the job.

    Returns:
        What stops the work, then what is to be known.
    """
    least = rules.entry("deck.planks.panel")
    found = []
    screw = (
        f"Screw every plank down to every joist it crosses, with {_screws(rules, planks, tape)}, and take up what "
        "is cupped, split or rotten."
    )
    if not panels:
        why = rules.entry("deck.planks.why")
        found.append(
            why.finding(
                code="SUI-207",
                severity=Severity.STOP,
                where=where,
                message=f"Nothing is set straight onto planks, neither boards nor tile: {why.value}.",
                measured="no panel over the planks",
                limit=f"a panel of at least {_long(rules.ticks(least.id), tape)} ({least.cited})",
                remedy=f"{screw} Then screw a panel of that thickness or more to them, its long side across them "
                "and its joints off theirs, and enter it (panels); or take the planks up and lay panels on the "
                "joists.",
            )
        )
    elif max(panels) < rules.ticks(least.id):
        found.append(
            least.finding(
                code="SUI-208",
                severity=Severity.STOP,
                where=where,
                message="The panel over the planks is too thin to carry tile.",
                measured=_long(max(panels), tape),
                limit=f"at least {_long(rules.ticks(least.id), tape)}",
                remedy=f"{screw} Then lay a thicker panel, or a second layer as thick as the limit.",
            )
        )
    else:
        found.append(
            Finding(
                code="SUI-211",
                severity=Severity.NOTE,
                where=where,
                message="Planks count as mass, not as stiffness, where the panel over them is judged.",
                source="house assumption",
                remedy=f"{screw} Keep the panel's joints off the planks', and its screws out of the joists.",
            )
        )
    if spacing is not None:
        found += _by_spacing(rules, where, planks.kind, planks.thickness, spacing, tape)
    return tuple(found)


def _screws(rules: RuleSet, planks: Planks, tape: Tape) -> str:
    wide = rules.ticks("deck.planks.wide")
    if planks.width is None:
        return f"two screws, or three where it is wider than {_long(wide, tape)}"
    return "three screws" if planks.width > wide else "two screws"


def judge_deck(
    rules: RuleSet, where: str, kind: Deck | None, panels: tuple[int, ...], spacing: int, tape: Tape
) -> tuple[Finding, ...]:
    """Whether panels on joists are thick enough, in a practice that goes by their kind and the spacing.

    Args:
        rules: The rule book in force.
        where: The floor in words.
        kind: What they are; None where not known.
        panels: Thickness of each layer [ticks].
        spacing: Joists centre to centre [ticks].
        tape: Tape of the job.

    Returns:
        One finding at most; none in a practice that goes by span ratings.
    """
    if not any(rules.has(f"deck.{deck}") for deck in Deck if not deck.startswith(Deck.PLANKS)):
        return ()
    return _by_spacing(rules, where, kind, max(panels), spacing, tape)


def _by_spacing(
    rules: RuleSet, where: str, kind: Deck | None, thickness: int, spacing: int, tape: Tape
) -> tuple[Finding, ...]:
    deck = kind or _UNKNOWN_AS
    table = rules.find(f"deck.{deck}")
    if table is None:
        return (
            Finding(
                code="SUI-212",
                severity=Severity.NOTE,
                where=where,
                message=f"Cannot tell if {_WORDS[deck]} of {_long(thickness, tape)} carry tile on joists "
                f"{_long(spacing, tape)} apart: the rule book has no figure for them in {rules.practice.upper()} "
                "practice.",
                remedy=f"Ask {_asked(rules)}.",
            ),
        )
    rows = _rows(table)
    row = next((row for row in rows if spacing <= row.spacing), None)
    if row is not None and thickness >= row.least:
        return ()
    planks = deck.startswith(Deck.PLANKS)
    what = _WORDS[deck] if kind is not None else "a panel of a kind that is not told"
    limit = (
        f"joists at most {_long(rows[-1].spacing, tape)} apart"
        if row is None
        else f"at least {_long(row.least, tape)} for joists up to {_long(row.spacing, tape)} apart"
    )
    tell = "" if kind is not None else " Say what the panels are (panels, material): plywood may be thinner."
    return (
        table.finding(
            code="SUI-209" if planks else "SUI-210",
            severity=Severity.FIX if kind is None else Severity.STOP,
            where=where,
            message=f"{what[0].upper()}{what[1:]}: too thin for the joists' spacing.",
            measured=f"{_long(thickness, tape)}, joists {_long(spacing, tape)} apart",
            limit=limit,
            remedy="Set joists or blocking between, or take it up and lay what is thick enough."
            f"{tell} Joists are structure: local code and a licensed person decide first.",
        ),
    )


def _asked(rules: RuleSet) -> str:
    asked = rules.find("frame.ask")
    return "a licensed structural engineer" if asked is None else str(asked.value)


def _rows(table: RuleEntry) -> list[_Row]:
    """A table as the rule book writes it, `spacing: least thickness; …`, by spacing."""
    rows = []
    for row in str(table.value).split(";"):
        spacing, _, least = row.partition(":")
        try:
            rows.append(_Row(spacing=parse_length(spacing.strip()), least=parse_length(least.strip())))
        except LengthError as error:
            raise InputValueError(
                f"rule {table.id}: '{row.strip()}' is no row such as 16 in: 5/8 in ({error})"
            ) from None
    return sorted(rows, key=lambda row: row.spacing)


def _long(ticks: int, tape: Tape) -> str:
    """A thickness or spacing as the trade says it: panels have thicknesses between the marks of a tape."""
    return f"{inch_text(to_inches(ticks))} in" if tape is Tape.INCH else f"{to_mm(ticks):.4g} mm"

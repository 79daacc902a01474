"""What lies on the joists, by its kind and thickness: planks, and panels where a practice goes by their kind.

Planks shrink, swell and cup each by itself. Tile and its boards go onto a panel over them, never straight onto
them; the planks then count as mass and as what the panel is screwed to, not as stiffness.
"""

from dataclasses import dataclass
from enum import StrEnum

from firstcourse.errors import InputValueError
from firstcourse.findings import Finding, Severity
from firstcourse.rules import RuleEntry, RuleSet
from firstcourse.units import LengthError, parse_length
from firstcourse.values import Name, Value, Word, least, length, most


class Deck(StrEnum):
    """What the deck is made of, by the rule book's names."""

    PLANKS = "planks"
    PLANKS_DIAGONAL = "planks_diagonal"
    CHIPBOARD = "chipboard"
    PLYWOOD = "plywood"
    STRAND_BOARD = "strand_board"


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
    rules: RuleSet, ref: str, planks: Planks, panels: tuple[int, ...], spacing: int | None
) -> tuple[Finding, ...]:
    """Whether planks are thick enough for their joists, and a panel lies over them that may carry tile.

    Args:
        rules: The rule book in force.
        ref: Reference to the floor.
        planks: The planks.
        panels: Thickness of each panel layer over them, from below [ticks].
        spacing: Joists centre to centre [ticks]; None where not known.

    Returns:
        What stops the work, then what is to be known.
    """
    panel = rules.entry("deck.planks.panel")
    wide = rules.ticks("deck.planks.wide")
    allowed = least(length(rules.ticks(panel.id)))
    screws = "by_width" if planks.width is None else "three" if planks.width > wide else "two"
    screwed: dict[str, Value] = {"screws": Word(word=screws), "wide": length(wide)}
    if not panels:
        why = Name(name=rules.text("deck.planks.why"))
        told = panel.found(
            "SUI-207",
            Severity.STOP,
            ref,
            measured=None,
            limit=allowed,
            remedies=("screw", "panel_over"),
            why=why,
            **screwed,
        )
    elif max(panels) < rules.ticks(panel.id):
        told = panel.found(
            "SUI-208",
            Severity.STOP,
            ref,
            measured=length(max(panels)),
            limit=allowed,
            remedies=("screw", "thicker"),
            **screwed,
        )
    else:
        told = Finding(
            code="SUI-211", severity=Severity.NOTE, at=(ref,), remedies=("screw", "joints"), values=screwed
        )
    if spacing is None:
        return (told,)
    return (told, *_by_spacing(rules, ref, planks.kind, planks.thickness, spacing))


def judge_deck(
    rules: RuleSet, ref: str, kind: Deck | None, panels: tuple[int, ...], spacing: int
) -> tuple[Finding, ...]:
    """Whether panels on joists are thick enough, in a practice that goes by their kind and the spacing.

    Args:
        rules: The rule book in force.
        ref: Reference to the floor.
        kind: What they are; None where not known.
        panels: Thickness of each layer [ticks].
        spacing: Joists centre to centre [ticks].

    Returns:
        One finding at most; none in a practice that goes by span ratings.
    """
    if not any(rules.has(f"deck.{deck}") for deck in Deck if not deck.startswith(Deck.PLANKS)):
        return ()
    return _by_spacing(rules, ref, kind, max(panels), spacing)


def _by_spacing(rules: RuleSet, ref: str, kind: Deck | None, thickness: int, spacing: int) -> tuple[Finding, ...]:
    deck = kind or _UNKNOWN_AS
    table = rules.find(f"deck.{deck}")
    if table is None:
        return (_without_table(rules, ref, deck, thickness, spacing),)
    rows = _rows(table)
    row = next((row for row in rows if spacing <= row.spacing), None)
    if row is not None and thickness >= row.least:
        return ()
    asked: dict[str, Value] = {} if row is None else {"up_to": length(row.spacing)}
    return (
        table.found(
            "SUI-209" if deck.startswith(Deck.PLANKS) else "SUI-210",
            Severity.FIX if kind is None else Severity.STOP,
            ref,
            measured=length(thickness),
            limit=most(length(rows[-1].spacing)) if row is None else least(length(row.least)),
            remedies=("thicker",),
            deck=Word(word=deck.value),
            known=kind is not None,
            spacing=length(spacing),
            too_far=row is None,
            **asked,
        ),
    )


def _without_table(rules: RuleSet, ref: str, deck: Deck, thickness: int, spacing: int) -> Finding:
    asked = rules.find("frame.ask")
    values: dict[str, Value] = {
        "deck": Word(word=deck.value),
        "thickness": length(thickness),
        "spacing": length(spacing),
        "practice": Word(word=rules.practice),
        "named": asked is not None,
    }
    if asked is not None:
        values["who"] = Name(name=str(asked.value))
    return Finding(code="SUI-212", severity=Severity.NOTE, at=(ref,), remedies=("ask",), values=values)


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

"""`firstcourse rules`: what the plan rests on, and where each number comes from."""

import datetime
from typing import TYPE_CHECKING, Literal

from firstcourse.cli.output import print_json

if TYPE_CHECKING:
    from firstcourse.rules import RuleEntry


def rules(
    rule: str = "",
    /,
    *,
    practice: Literal["us", "uk", "au"] = "us",
    on: datetime.date | None = None,
    json: bool = False,
) -> int:
    """List the rule book, or show one rule with its source.

    Lengths of a metric practice stand in millimetres first, beside them as the book has them. A value that the
    book does not have of the practice asked for, and takes from another, is marked: check it first.

    Args:
        rule: A rule's id, or the beginning of one, such as `boards.gap`; without it all are listed.
        practice: Whose practice: us, uk or au.
        on: Date to read the rules for, such as 2026-11-25; today where not given.
        json: Print for another program to read.
    """
    from firstcourse.errors import InputValueError
    from firstcourse.rules import load_rules

    book = load_rules(on or datetime.date.today(), practice)
    chosen = [book.entry(name) for name in book.ids() if name == rule] or [
        book.entry(name) for name in book.ids() if name.startswith(rule)
    ]
    if not chosen:
        raise InputValueError(f"no rule is called '{rule}'; `firstcourse rules` lists them all")
    if json:
        print_json([rule_fields(entry) for entry in chosen])
        return 0
    for entry in chosen:
        if len(chosen) > 1:
            taken = f"  <- {_taken(entry)}" if entry.taken_from else ""
            print(f"{entry.id:<44} {_shown(entry, practice)}  [{entry.basis.replace('_', ' ')}]{taken}")
        else:
            fields = rule_fields(entry) | {"value": _shown(entry, practice), "taken_from": _taken(entry)}
            for label in ("unit", *(() if entry.taken_from else ("taken_from",))):
                del fields[label]
            for label, text in fields.items():
                print(f"{label.replace('_', ' '):<12} {text}")
    taken_over = sum(bool(entry.taken_from) for entry in chosen)
    if len(chosen) > 1 and taken_over:
        own = practice.upper()
        print(f"\n{taken_over} of {len(chosen)} values are not of {own} practice: check those marked so.")
    return 0


def _shown(entry: "RuleEntry", practice: str) -> str:
    from firstcourse.documents.rule_values import shown_value
    from firstcourse.units import Tape

    return shown_value(str(entry.value), entry.unit, Tape.INCH if practice == "us" else Tape.MM)


def _taken(entry: "RuleEntry") -> str:
    return f"{entry.taken_from.upper()} practice: check" if entry.taken_from else ""


def rule_fields(entry: "RuleEntry") -> dict[str, object]:
    """One rule's value and its proof, as printed."""
    return {
        "id": entry.id,
        "description": entry.description,
        "value": entry.value,
        "unit": entry.unit,
        "basis": entry.basis.replace("_", " "),
        "source": entry.source,
        "locator": entry.locator,
        "read": entry.read,
        "quoted_in": entry.quoted_in,
        "converted": entry.converted,
        "since": entry.since.isoformat(),
        "taken_from": entry.taken_from,
    }

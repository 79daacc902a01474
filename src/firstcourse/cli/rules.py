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
        fields = rule_fields(entry)
        if len(chosen) > 1:
            print(f"{fields['id']:<44} {fields['value']} {fields['unit']}  [{fields['basis']}]")
        else:
            for label, text in fields.items():
                print(f"{label:<12} {text}")
    return 0


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
        "known": entry.known,
        "since": entry.since.isoformat(),
    }

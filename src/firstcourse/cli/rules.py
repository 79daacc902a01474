"""`firstcourse rules`: what the plan rests on, and where each number comes from."""

import datetime
from typing import TYPE_CHECKING, Literal

from firstcourse.cli.output import print_json

if TYPE_CHECKING:
    from firstcourse.app import RuleFacts


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
    from firstcourse.app import json_value
    from firstcourse.app.rule_facts import rule_facts
    from firstcourse.errors import InputValueError

    chosen = rule_facts(rule, on=on, practice=practice)
    if not chosen:
        raise InputValueError(f"no rule is called '{rule}'; `firstcourse rules` lists them all")
    if json:
        print_json(chosen)
        return 0
    for entry in chosen:
        if len(chosen) > 1:
            taken = f"  <- {_taken(entry)}" if entry.taken_from else ""
            print(f"{entry.id:<44} {_shown(entry, practice)}  [{entry.basis}]{taken}")
        else:
            fields = json_value(entry) | {"value": _shown(entry, practice), "taken_from": _taken(entry)}
            for label in ("unit", *(() if entry.taken_from else ("taken_from",))):
                del fields[label]
            for label, text in fields.items():
                print(f"{label.replace('_', ' '):<12} {text}")
    taken_over = sum(bool(entry.taken_from) for entry in chosen)
    if len(chosen) > 1 and taken_over:
        own = practice.upper()
        print(f"\n{taken_over} of {len(chosen)} values are not of {own} practice: check those marked so.")
    return 0


def _shown(entry: "RuleFacts", practice: str) -> str:
    from firstcourse.app import shown_value
    from firstcourse.units import Tape

    return shown_value(str(entry.value), entry.unit, Tape.INCH if practice == "us" else Tape.MM)


def _taken(entry: "RuleFacts") -> str:
    return f"{entry.taken_from.upper()} practice: check" if entry.taken_from else ""

"""The rule book as it is shown."""

import datetime
from dataclasses import dataclass

from firstcourse.rules import RuleEntry, load_rules


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleFacts:
    """One rule's value and its proof; fields as in `RuleEntry`, the basis in words."""

    id: str
    description: str
    value: float | str | bool
    unit: str
    basis: str
    source: str
    locator: str
    read: str
    quoted_in: str
    converted: str
    since: datetime.date
    taken_from: str


def rule_facts(
    prefix: str = "", *, on: datetime.date | None = None, practice: str = "us"
) -> tuple[RuleFacts, ...]:
    """The rule of an id, or those whose ids begin so.

    Args:
        prefix: A rule's id or the beginning of one.
        on: Day that the rules are read for; today where not given.
        practice: Whose practice: `us`, `uk` or `au`.

    Raises:
        InputValueError: The practice is not known.
    """
    book = load_rules(on or datetime.date.today(), practice)
    chosen = [prefix] if prefix in book.ids() else list(book.ids(prefix))
    return tuple(_facts(book.entry(name)) for name in chosen)


def _facts(entry: RuleEntry) -> RuleFacts:
    return RuleFacts(
        id=entry.id,
        description=entry.description,
        value=entry.value,
        unit=entry.unit,
        basis=entry.basis.replace("_", " "),
        source=entry.source,
        locator=entry.locator,
        read=entry.read,
        quoted_in=entry.quoted_in,
        converted=entry.converted,
        since=entry.since,
        taken_from=entry.taken_from,
    )

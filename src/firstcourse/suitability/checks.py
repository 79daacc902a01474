"""One check: what was found, what is allowed, and whether it holds."""

from dataclasses import dataclass

from firstcourse.rules import RuleEntry
from firstcourse.workings import Working


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """A value against its limit, with the working that gave it.

    Attributes:
        name: What is checked, in words.
        found: The value found, in `unit`.
        limit: What is allowed, in `unit`.
        at_least: True where the value must reach the limit, False where it must not pass it.
        rule: Id of the rule that sets the limit; empty where design values do.
        source: Where the limit comes from.
    """

    name: str
    found: float
    limit: float
    at_least: bool
    unit: str
    rule: str
    source: str
    working: Working

    @property
    def holds(self) -> bool:
        """Whether the value keeps the limit."""
        return self.found >= self.limit if self.at_least else self.found <= self.limit

    def found_text(self) -> str:
        """The value as printed."""
        return quantity(self.found, self.unit)

    def limit_text(self) -> str:
        """The limit as printed, with its sense."""
        return f"{'at least' if self.at_least else 'at most'} {quantity(self.limit, self.unit)}"


def quantity(value: float, unit: str) -> str:
    """A value as a setter reads it; ratios of deflection as `L/360`, rounded to the unsafe side never."""
    if unit == "L/x":
        return f"L/{int(value)}" if value < 100_000 else "no deflection"
    if unit == "psi":
        return f"{value:,.0f} psi"
    return f"{value:.3g} {unit}".strip()


def sourced(entry: RuleEntry) -> str:
    """A rule's source and place in it, as printed."""
    return f"{entry.source}, {entry.locator}" if entry.locator else entry.source

"""The rule book: dated values with unit, source, section and basis, and the job's overrides."""

from firstcourse.rules.book import RuleEntry, RuleSet, load_rules
from firstcourse.rules.changes import Override

__all__ = ["Override", "RuleEntry", "RuleSet", "load_rules"]

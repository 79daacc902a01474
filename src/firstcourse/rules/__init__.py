"""The rule book: dated values with unit, source, section and basis, and the job's overrides."""

from firstcourse.rules.book import Override, RuleEntry, RuleSet, load_rules

__all__ = ["Override", "RuleEntry", "RuleSet", "load_rules"]

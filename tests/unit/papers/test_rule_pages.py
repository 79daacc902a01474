"""The rules a pack prints: those that its plan rests on, by source."""

from example_plans import plan_of
from firstcourse.papers.rule_pages import rule_pages


def printed(name: str) -> set[str]:
    data = rule_pages(plan_of(name))
    by_source = {value.split()[0] for row in data["rules"] for value in row[1].split("; ")}
    return by_source | {row[0] for row in data["assumptions"]}


def starts(rules: set[str]) -> set[str]:
    return {rule.partition(".")[0] for rule in rules}


def test_rules_of_what_was_not_judged_are_left_out() -> None:
    shown = starts(printed("l-shower-room"))
    assert {"boards", "fastening"} <= shown
    assert not {"remedy", "joist", "panel", "exposure"} & shown


def test_rules_of_what_was_judged_stand_there() -> None:
    shown = printed("limber-floor")
    assert {"remedy", "floor", "lumber", "panel", "exposure"} <= starts(shown)
    assert "wall.deflection.tile" in shown and "ceiling" not in starts(shown)


def test_every_rule_that_a_finding_names_stands_there() -> None:
    for name in ("tub-bathroom", "limber-floor", "l-shower-room"):
        named = {finding.rule for finding in plan_of(name).findings if finding.rule}
        cautions = {rule for rule in named if rule.startswith("safety.caution.")}
        assert named - cautions <= printed(name)


def test_sources_stand_once() -> None:
    sources = [row[0] for row in rule_pages(plan_of("tub-bathroom"))["rules"]]
    assert len(sources) == len(set(sources))

"""A step done once for the same inputs and rules: what its key holds, and what it must not hold."""

import datetime
from dataclasses import dataclass

import pytest
from shapely import box

from firstcourse.app.store import Memory
from firstcourse.reuse import Kept, Steps, digest
from firstcourse.rules import Override, RuleSet, load_rules

DAY = datetime.date(2026, 11, 25)
GAP = "boards.gap.between"
done: list[object] = []


@dataclass(frozen=True)
class Value:
    size: int | float


@dataclass(frozen=True)
class Other:
    size: int | float


def gap_of(value: Value, rules: RuleSet, *, times: int = 1) -> int:
    done.append(value)
    return rules.ticks(GAP) * times if value.size else 0


def has(name: str, rules: RuleSet) -> bool:
    done.append(name)
    return rules.has(name)


@pytest.fixture(autouse=True)
def _nothing_done() -> None:
    done.clear()


def changed(value: str, rule: str = GAP) -> RuleSet:
    return load_rules(DAY, "us", (Override(rule=rule, value=value, reason="as asked"),))


def test_the_same_inputs_and_rules_are_done_once_and_asked_for_again() -> None:
    steps, first, second = Steps(Memory()), load_rules(DAY), load_rules(DAY)
    assert steps.do(gap_of, Value(1), first) == steps.do(gap_of, Value(1), second) == first.ticks(GAP)
    assert done == [Value(1)] and second.asked == {GAP}


def test_other_inputs_or_another_value_of_a_rule_asked_for_are_done() -> None:
    steps, rules = Steps(Memory()), load_rules(DAY)
    usual = steps.do(gap_of, Value(1), rules)
    assert steps.do(gap_of, Value(1), rules, times=2) == 2 * usual
    assert steps.do(gap_of, Value(1), changed("1/2 in")) == 4 * usual
    assert steps.do(gap_of, Value(1), changed("1/4 in")) == 2 * usual
    assert steps.do(gap_of, Value(1), changed("1/2 in")) == 4 * usual
    assert steps.do(gap_of, Value(0), rules) == 0
    assert len(done) == 5


def test_a_rule_that_was_not_asked_for_may_change() -> None:
    steps = Steps(Memory())
    steps.do(gap_of, Value(1), load_rules(DAY))
    steps.do(gap_of, Value(1), changed("1/4 in", rule="boards.gap.perimeter"))
    assert len(done) == 1


def test_rules_that_are_not_there_are_part_of_the_key() -> None:
    steps, us, uk = Steps(Memory()), load_rules(DAY), load_rules(DAY, "uk")
    (only_us,) = sorted(set(us.ids()) - set(uk.ids()))[:1]
    assert steps.do(has, only_us, us) and not steps.do(has, only_us, uk)
    assert us.asked == set()


def test_without_a_store_all_is_done() -> None:
    steps = Steps()
    for _ in range(2):
        steps.do(gap_of, Value(1), load_rules(DAY))
    assert len(done) == 2


def test_a_digest_tells_types_and_order_apart_and_not_who_made_a_value() -> None:
    name = "".join(["a", "b"])
    assert digest((name, name)) == digest(("ab", "".join(("a", "b"))))
    assert digest(box(0, 0, 1, 2)) == digest(box(0, 0, 1, 2)) != digest(box(0, 0, 2, 1))
    values = (Value(1), Other(1), Value(1.0), Value(True), (1,), [1], {"a": 1, "b": 2}, {"b": 2, "a": 1}, "1", 1)
    assert len({digest(value) for value in values}) == len(values)


def test_a_full_store_forgets_what_was_not_used_for_the_longest_time() -> None:
    store = Memory(most=2)
    for key in "abc":
        store.keep(key, Kept(key, ()))
        assert store.find("a") or key == "c"
    assert [bool(store.find(key)) for key in "abc"] == [True, False, True] and len(store) == 2

"""The example plans verify, and no way of spoiling them passes."""

import copy
import json
from collections.abc import Callable
from functools import cache
from typing import Any

import pytest

from example_plans import EXAMPLES, plan_of
from proving import verify_text
from tamperings import TAMPERINGS, NothingToSpoil, Tampering

EVERYWHERE = [tampering for tampering in TAMPERINGS if tampering.everywhere]
ONCE = [tampering for tampering in TAMPERINGS if not tampering.everywhere]
SMALLEST_FIRST = (
    "out-of-true",
    "limber-floor",
    "metric-column",
    "l-shower-room",
    "tiled-shower",
    "tub-bathroom",
)
NAMES = tuple(sorted(path.parent.name for path in EXAMPLES.glob("*/job.yaml")))


@cache
def planned(name: str) -> str:
    return str(plan_of(name).model_dump_json(by_alias=True))


@pytest.fixture
def example_plan() -> Callable[[str], dict[str, Any]]:
    return lambda name: copy.deepcopy(json.loads(planned(name)))


@pytest.mark.parametrize("name", NAMES)
def test_examples_verify(name: str) -> None:
    assert verify_text(planned(name)).objections == ()


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("tampering", EVERYWHERE, ids=lambda tampering: tampering.name)
def test_tampered_examples_are_objected_to(
    name: str, tampering: Tampering, example_plan: Callable[[str], dict[str, Any]]
) -> None:
    plan = example_plan(name)
    try:
        tampering.change(plan)
    except NothingToSpoil:
        pytest.skip("this plan has nothing of that kind")
    assert codes(plan) & tampering.codes


@pytest.mark.parametrize("tampering", ONCE, ids=lambda tampering: tampering.name)
def test_the_first_example_that_can_be_tampered_with_is_objected_to(
    tampering: Tampering, example_plan: Callable[[str], dict[str, Any]]
) -> None:
    for name in SMALLEST_FIRST:
        plan = example_plan(name)
        try:
            tampering.change(plan)
        except NothingToSpoil:
            continue
        assert codes(plan) & tampering.codes
        return
    pytest.skip("no example has anything of that kind")


def codes(plan: dict[str, Any]) -> set[str]:
    return {objection.code for objection in verify_text(json.dumps(plan)).objections}

"""The step at a doorway was printed and not derived again: a plan that told another one was called consistent."""

import json
from typing import Any

from example_plans import plan_of
from proving import verify_text


def test_another_step_is_objected_to() -> None:
    document: dict[str, Any] = json.loads(plan_of("tub-bathroom").model_dump_json(by_alias=True))
    assert not verify_text(json.dumps(document)).objections
    step = next(one for one in document["workings"].values() if one["formula"] == "height-doorway_step")
    step["result"]["value"] += 25.4 / 16
    assert "VER-903" in {objection.code for objection in verify_text(json.dumps(document)).objections}

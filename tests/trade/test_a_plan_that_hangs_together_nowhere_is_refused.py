"""A plan from which a part is gone ends in objections, never in a crash of the verifier.

Before, a surface with tiles and poles whose areas were gone brought `verify` down.
"""

import json

import pytest

from example_plans import plan_of
from firstcourse.verify import verify

TEXT = plan_of("tub-bathroom").model_dump_json(by_alias=True)
LISTS = [name for name, value in json.loads(TEXT)["surfaces"][1].items() if isinstance(value, list) and value]


@pytest.mark.parametrize("part", LISTS)
def test_a_list_of_a_surface_gone_is_objected_to(part: str) -> None:
    plan = json.loads(TEXT)
    plan["surfaces"][1][part] = []
    assert verify(plan).objections

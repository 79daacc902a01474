"""A plan from which a part is gone ends in objections, never in a crash of the verifier.

Before, a surface with tiles and poles whose areas were gone brought `verify` down.
"""

import json

from example_plans import plan_of
from proving import verify


def test_a_list_of_a_surface_gone_is_objected_to() -> None:
    plan = json.loads(plan_of("tub-bathroom").model_dump_json(by_alias=True))
    surface = plan["surfaces"][1]
    lists = {name: value for name, value in surface.items() if isinstance(value, list) and value}
    assert len(lists) > 5
    for name, value in lists.items():
        surface[name] = []
        assert verify(plan).objections, name
        surface[name] = value

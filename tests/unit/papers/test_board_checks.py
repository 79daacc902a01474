"""The card to look at boards by: what belongs to this plan, with its values."""

from example_plans import plan_of
from firstcourse.papers.board_checks import board_checks
from firstcourse.plan import Given, Plan


def said(plan: Plan) -> str:
    return "\n".join(board_checks(plan))


def test_values_are_those_of_the_plan() -> None:
    plan = plan_of("tub-bathroom")
    changed = tuple(
        rule.model_copy(update={"value": "0.375"}) if rule.id == "boards.gap.foot" else rule for rule in plan.rules
    )
    assert "kerb 1/4 in stays open" in said(plan)
    assert "kerb 3/8 in stays open" in said(plan.model_copy(update={"given": Given(rules=changed)}))


def test_only_what_is_there_is_asked_for() -> None:
    tub, shower, floor = (
        said(plan_of("tub-bathroom")),
        said(plan_of("l-shower-room")),
        said(plan_of("metric-column")),
    )
    assert "lie in fresh mortar" in tub and "No fastener is in the zones" not in tub
    assert "No fastener is in the zones" in shower and "heavy broken lines are in" in shower
    assert "on floors apart" in floor and "walls and ceilings" not in floor and "stays open" not in floor


def test_nothing_boarded_asks_for_nothing() -> None:
    plan = plan_of("metric-column")
    bare = tuple(surface.model_copy(update={"boards": ()}) for surface in plan.surfaces)
    assert board_checks(plan.model_copy(update={"surfaces": bare})) == []

"""A document that is no plan."""

import math

from tamperings.tools import Plan, answered_by, boards, first


@answered_by("VER-001")
def put_in_nan(plan: Plan) -> None:
    first(boards(plan))[1]["outline"][0][0] = math.nan


@answered_by("VER-001")
def put_in_a_length_between_ticks(plan: Plan) -> None:
    first(boards(plan))[1]["outline"][0][0] += 0.0001


@answered_by("VER-001")
def leave_out_a_field(plan: Plan) -> None:
    del first(boards(plan))[1]["outline"]


@answered_by("VER-001")
def put_text_for_a_number(plan: Plan) -> None:
    first(iter(plan["sheets"]))["size"] = "large"


@answered_by("VER-001")
def turn_an_outline_round(plan: Plan) -> None:
    first(boards(plan))[1]["outline"].reverse()


@answered_by("VER-001")
def cross_an_outline(plan: Plan) -> None:
    outline = first(b for _, b in boards(plan) if len(b["outline"]) == 4)["outline"]
    outline[1], outline[2] = outline[2], outline[1]


@answered_by("VER-001")
def change_the_format(plan: Plan) -> None:
    plan["format"] = "other"


@answered_by("VER-003")
def name_a_practice_that_is_not_there(plan: Plan) -> None:
    plan["job"]["practice"] = "nowhere"


@answered_by("VER-003")
def override_a_rule_without_a_reason(plan: Plan) -> None:
    plan["job"]["overrides"] = [{"rule": "boards.gap.between", "value": 0, "reason": ""}]

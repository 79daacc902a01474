"""Sheet counts, their lower bounds, and proofs that hold for less than is claimed."""

from tamperings.tools import Plan, answered_by, first, working


@answered_by("VER-601")
def change_a_count(plan: Plan) -> None:
    first(iter(plan["counts"].values()))["used"] += 1


@answered_by("VER-602")
def raise_the_lower_bound(plan: Plan) -> None:
    count = first(iter(plan["counts"].values()))
    count["lower_bound"] = count["used"] + 1


@answered_by("VER-603")
def claim_a_proof(plan: Plan) -> None:
    count = first(c for c in plan["counts"].values() if c["used"] > 0)
    count["lower_bound"], count["proven"] = count["used"] - 1, True


@answered_by("VER-604")
def bound_a_surface_twice(plan: Plan) -> None:
    bound = first(iter(plan.get("bounds", ())))
    bound["surfaces"].append(bound["surfaces"][0])


@answered_by("VER-604")
def bound_a_surface_with_wider_boards(plan: Plan) -> None:
    first(iter(plan.get("bounds", ())))["surfaces"][0]["side"] *= 4


@answered_by("VER-605")
def change_the_sheets_bounded(plan: Plan) -> None:
    first(b for b in plan.get("bounds", ()) if not b["proven"] or b["used"])["used"] += 1


@answered_by("VER-606")
def raise_the_bound_over_layouts(plan: Plan) -> None:
    bound = first(b for b in plan.get("bounds", ()) if not b["proven"])
    bound["lower_bound"], bound["proven"] = bound["used"], True


@answered_by("VER-606")
def find_more_ground_to_cover(plan: Plan) -> None:
    field = first(iter(plan.get("bounds", ())))["surfaces"][0]
    field["covered"], field["least"] = round(field["covered"] * 1.02), round(field["least"] * 1.02)


@answered_by("VER-606")
def leave_out_gaps(plan: Plan) -> None:
    field = first(f for b in plan.get("bounds", ()) for f in b["surfaces"] if 1000 < f["gaps"] < f["covered"])
    field["least"] += field["gaps"] // 2
    field["gaps"] -= field["gaps"] // 2


@answered_by("VER-606")
def raise_the_least_cost(plan: Plan) -> None:
    bound = first(b for b in plan.get("bounds", ()) if b["cost"])
    bound["least_cost"] = bound["cost"] + 1


@answered_by("VER-607")
def claim_that_a_bound_is_met(plan: Plan) -> None:
    bound = first(b for b in plan.get("bounds", ()))
    bound["proven"] = not bound["proven"]


@answered_by("VER-903", everywhere=False)
def say_less_of_what_is_possible(plan: Plan) -> None:
    working(plan, "bounds-sheets")["result"] -= 1


@answered_by("VER-602", everywhere=False)
def call_more_than_is_paid_the_least(plan: Plan) -> None:
    found = working(plan, "bounds-cost")
    found["result"]["value"] = found["inputs"]["cost"]["value"] + 1


@answered_by("VER-903", everywhere=False)
def tell_of_more_ground_than_is_bounded(plan: Plan) -> None:
    working(plan, "bounds-every_layout")["inputs"]["ground"]["value"] *= 1.01


@answered_by("VER-903", everywhere=False)
def call_practice_faultless(plan: Plan) -> None:
    first(w for w in plan["workings"].values() if w["formula"] == "boards-practice" and not w["inputs"]["keeps"])[
        "inputs"
    ]["keeps"] = True


@answered_by("VER-606", everywhere=False)
def give_a_course_more_seams(plan: Plan) -> None:
    field = first(iter(plan.get("bounds", ())))["surfaces"][0]
    field["alone"], field["pair"] = field["alone"] + 3, field["pair"] + 6


@answered_by("VER-605", everywhere=False)
def keep_more_offcuts_than_there_are(plan: Plan) -> None:
    first(iter(plan.get("bounds", ())))["kept"] += 1000

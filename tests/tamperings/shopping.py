"""Quantities, packs and prices other than the plan needs."""

from typing import Any

from tamperings.tools import INCH, Plan, answered_by, first, tick, working


@answered_by("VER-801")
def buy_a_tile_less(plan: Plan) -> None:
    first(q for q in plan["quantities"] if q["item"].startswith("tile_stock/"))["exact"] -= 1


@answered_by("VER-801")
def change_a_quantity(plan: Plan) -> None:
    first(q for q in plan["quantities"] if q["item"].startswith(("stock/", "fasteners")))["exact"] += 3


@answered_by("VER-802")
def buy_nothing(plan: Plan) -> None:
    first(q for q in plan["quantities"] if q["exact"] > 0)["buy"] = 0


def quantity(plan: Plan, start: str) -> Any:
    return first(q for q in plan["quantities"] if q["item"].startswith(start) and q["exact"] > 0)


def _need_more(start: str) -> None:
    """Registers: the exact need of a line is made larger; its packs still hold it."""

    def change(plan: Plan) -> None:
        line = quantity(plan, start)
        line["exact"] = round(line["exact"] * 1.02 + 0.01, 3)

    change.__name__ = f"need_more_{start.strip('/').replace('/', '_')}"
    answered_by("VER-801", everywhere=False)(change)


for _item in (
    "bedding_mortar", "seam_tape", "sealant", "tile_mortar", "large_tile_mortar", "grout", "joint_sealant",
    "bond_breaker", "backer_rod/", "edge_trim", "spacers", "sheet_membrane", "liquid_membrane", "liner",
    "sealing_band", "inside_corners", "outside_corners", "collars/pipe", "collars/valve", "drain_flanges",
    "bed_mortar", "fasteners", "tile_stock/", "stock/",
):  # fmt: skip
    _need_more(_item)


@answered_by("VER-802", everywhere=False)
def buy_a_pack_more(plan: Plan) -> None:
    quantity(plan, "")["buy"] += 1


@answered_by("VER-802", everywhere=False)
def buy_a_bag_less(plan: Plan) -> None:
    first(q for q in plan["quantities"] if q["buy"] > 1)["buy"] -= 1


@answered_by("VER-804", everywhere=False)
def leave_a_line_off_the_list(plan: Plan) -> None:
    plan["quantities"].remove(quantity(plan, "seam_tape"))


@answered_by("VER-804", everywhere=False)
def list_what_nothing_needs(plan: Plan) -> None:
    plan["quantities"].append({**quantity(plan, "seam_tape"), "item": "gold leaf"})


@answered_by("VER-805", everywhere=False)
def sell_it_in_another_unit(plan: Plan) -> None:
    quantity(plan, "bedding_mortar")["unit"] = "stone"


@answered_by("VER-805", everywhere=False)
def sell_it_in_larger_packs(plan: Plan) -> None:
    line = quantity(plan, "fasteners")
    line["pack"]["size"] *= 1.07


@answered_by("VER-805", everywhere=False)
def sell_it_otherwise(plan: Plan) -> None:
    quantity(plan, "fasteners")["pack"]["kind"] = "barrel"


@answered_by("VER-805", everywhere=False)
def cut_it_off_a_wider_roll(plan: Plan) -> None:
    pack = quantity(plan, "liner")["pack"]
    pack["width"] = tick(pack["width"] + INCH)


@answered_by("VER-903", everywhere=False)
def print_another_result_than_is_bought(plan: Plan) -> None:
    plan["workings"][quantity(plan, "seam_tape")["working"]]["result"]["value"] *= 1.07


@answered_by("VER-903", everywhere=False)
def print_another_allowance(plan: Plan) -> None:
    plan["workings"][quantity(plan, "fasteners")["working"]]["inputs"]["spare"]["value"] *= 1.07


@answered_by("VER-903", everywhere=False)
def print_another_area_of_mortar(plan: Plan) -> None:
    plan["workings"][quantity(plan, "bedding_mortar")["working"]]["inputs"]["area"]["value"] += 0.1


@answered_by("VER-903", everywhere=False)
def raise_a_price(plan: Plan) -> None:
    first(s for s in plan["stock"] if s.get("price") and plan["counts"].get(s["id"], {}).get("used"))["price"] += 1


@answered_by("VER-903", everywhere=False)
def add_up_wrong_what_sheets_cost(plan: Plan) -> None:
    working(plan, "cost-sheets")["result"]["value"] += 1


@answered_by("VER-907", everywhere=False)
def leave_a_cost_out(plan: Plan) -> None:
    working(plan, "cost-")
    del plan["workings"][first(name for name in sorted(plan["workings"]) if name.startswith("cost-"))]


@answered_by("VER-802", "VER-805", everywhere=False)
def fill_the_boxes(plan: Plan) -> None:
    first(s for s in plan.get("tile_stock", ()) if s.get("per_box"))["per_box"] += 5


@answered_by("VER-801", "VER-804", everywhere=False)
def take_a_membrane_away(plan: Plan) -> None:
    first(s for s in plan["surfaces"] if s.get("membrane"))["membrane"] = ""


@answered_by("VER-801", "VER-903", everywhere=False)
def widen_the_kerb(plan: Plan) -> None:
    fall = first(s["fall"] for s in plan["surfaces"] if s.get("fall") and s["fall"].get("kerb_width"))
    fall["kerb_width"] = tick(fall["kerb_width"] + INCH)

"""Workings, printed rules and calculation sheets with other figures than theirs."""

import re

from tamperings.tools import Plan, answered_by, first, more, tick, working


@answered_by("VER-902")
def name_a_working_that_is_not_there(plan: Plan) -> None:
    first(iter(plan["quantities"]))["working"] = "nowhere"


@answered_by("VER-903", everywhere=False)
def call_a_sheet_lighter(plan: Plan) -> None:
    working(plan, "quantities-sheet_mass")["result"]["value"] *= 1.07


@answered_by("VER-903", "VER-801", everywhere=False)
def thicken_a_sheet(plan: Plan) -> None:
    working(plan, "quantities-sheet_mass")
    stock = first(s for s in plan["stock"] if plan["counts"].get(s["id"], {}).get("used"))
    stock["thickness"] = tick(stock["thickness"] * 1.1)


@answered_by("VER-903", everywhere=False)
def print_another_area_of_board(plan: Plan) -> None:
    working(plan, "boards-area")["result"]["value"] *= 1.07


@answered_by("VER-903", everywhere=False)
def print_other_fasteners_of_a_board(plan: Plan) -> None:
    working(plan, "boards-fasteners")["inputs"]["each"][0] += 1


@answered_by("VER-903", everywhere=False)
def call_a_room_larger(plan: Plan) -> None:
    working(plan, "survey-area@")["result"]["value"] *= 1.07


@answered_by("VER-903", everywhere=False)
def move_a_corner_of_the_survey(plan: Plan) -> None:
    working(plan, "survey-area@")["inputs"]["u"][1]["value"] += 2


@answered_by("VER-903", everywhere=False)
def claim_more_readings(plan: Plan) -> None:
    working(plan, "survey-checks@")["inputs"]["readings"] += 1


@answered_by("VER-903", everywhere=False)
def widen_a_joint_on_paper(plan: Plan) -> None:
    working(plan, "tiles-joint@")["result"]["value"] *= 1.07


@answered_by("VER-903", "VER-801", everywhere=False)
def thicken_a_tile(plan: Plan) -> None:
    stock = first(s for s in plan.get("tile_stock", ()) if s.get("thickness"))
    stock["thickness"] = tick(stock["thickness"] * 1.2)


@answered_by("VER-903", everywhere=False)
def thin_a_layer_on_paper(plan: Plan) -> None:
    working(plan, "height-build_up@")["inputs"]["thick"][0]["value"] *= 1.07


@answered_by("VER-903", everywhere=False)
def lighten_the_layers(plan: Plan) -> None:
    working(plan, "height-mass@")["result"]["value"] *= 0.93


@answered_by("VER-903", everywhere=False)
def fill_less_than_the_floor_needs(plan: Plan) -> None:
    working(plan, "ground-patch@")["result"]["value"] *= 0.93


@answered_by("VER-903", everywhere=False)
def cover_less_with_membrane(plan: Plan) -> None:
    working(plan, "water-face")["result"]["value"] *= 1.07


@answered_by("VER-903", everywhere=False)
def count_other_corner_pieces(plan: Plan) -> None:
    first(
        w for name, w in sorted(plan["workings"].items()) if name.startswith("water-") and "inside" in w["inputs"]
    )["inputs"]["inside"] += 1


@answered_by("VER-904", everywhere=False)
def print_another_rule(plan: Plan) -> None:
    rule = first(rule for rule in plan["given"]["rules"] if re.fullmatch(r"[\d.]+", rule["value"]))
    rule["value"] = more(rule["value"])


@answered_by("VER-910", everywhere=False)
def shorten_the_edges_that_show(plan: Plan) -> None:
    found = first(f for f in plan["findings"] if f["code"] == "TIL-107")
    found["measured"]["value"] *= 1.07


@answered_by("VER-903", everywhere=False)
def calculate_wrong(plan: Plan) -> None:
    found = first(w for name, w in sorted(plan["workings"].items()) if name.startswith("frames-bending@"))
    found["inputs"]["moment"]["value"] *= 1.07


@answered_by("VER-903", everywhere=False)
def take_stronger_wood(plan: Plan) -> None:
    """A design value with the limit that follows from it, on the sheet and in the finding."""
    key = first(name for name in sorted(plan["workings"]) if name.startswith("frames-bending@"))
    found = plan["workings"][key]
    rows = [r for s in plan["structures"] for r in s["lines"] if r["working"] == key]
    told = [f["limit"] for f in plan["findings"] if f["limit"] == found["limit"]]
    for value in (found["inputs"]["value"], found["limit"], *(r["limit"] for r in rows), *told):
        value["value"] *= 1.5
    for row in rows:
        row["holds"] = row["found"]["value"] <= row["limit"]["value"]


@answered_by("VER-915", everywhere=False)
def give_another_stress_on_the_sheet(plan: Plan) -> None:
    row = first(r for s in plan.get("structures", ()) for r in s["lines"] if not r["limit"])
    row["found"]["value"] *= 1.07


@answered_by("VER-903", everywhere=False)
def find_another_span(plan: Plan) -> None:
    facts = first(s["facts"] for s in plan.get("structures", ()) if s["kind"] == "floor")
    facts["span"]["value"] *= 1.07


@answered_by("VER-917", everywhere=False)
def drop_a_line_of_a_sheet(plan: Plan) -> None:
    del first(s["lines"] for s in plan.get("structures", ()) if s["lines"])[0]


@answered_by("VER-913", everywhere=False)
def tell_of_another_limit(plan: Plan) -> None:
    place = first(s["surface"] for s in plan.get("structures", ()) if not all(r["holds"] for r in s["lines"]))
    for found in plan["findings"]:
        if found["at"][0] == place and found["limit"]:
            found["limit"]["value"] *= 1.07

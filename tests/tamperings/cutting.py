"""Pieces, blanks, cuts and parts that do not give the boards."""

from typing import Any

from tamperings.tools import INCH, NothingToSpoil, Plan, answered_by, boards, first, tick


def cut_sheet(plan: Plan) -> Any:
    return first(s for s in plan["sheets"] if s["cuts"] and any(p["piece"] for p in s["parts"]))


def piece_part(plan: Plan) -> Any:
    return first(p for s in plan["sheets"] for p in s["parts"] if p["piece"])


@answered_by("VER-505")
def grow_a_piece(plan: Plan) -> None:
    piece = first(p for p in plan["pieces"] if len(p["outline"]) >= 4)
    right = max(p[0] for p in piece["outline"])
    for point in piece["outline"]:
        if point[0] == right:
            point[0] = tick(point[0] + INCH)


@answered_by("VER-504", "VER-505")
def grow_a_blank(plan: Plan) -> None:
    blank = first(iter(plan["pieces"]))["blank"]
    blank[0] = tick(blank[0] + INCH)


@answered_by("VER-502", "VER-903")
def keep_what_is_waste_or_waste_what_is_kept(plan: Plan) -> None:
    part = first(p for s in plan["sheets"] for p in s["parts"] if not p["piece"])
    part["keep"] = not part["keep"]


@answered_by("VER-501")
def cut_outside_the_part(plan: Plan) -> None:
    cut_sheet(plan)["cuts"][0]["at"] += 10_000


@answered_by("VER-501", "VER-502")
def swap_two_cuts(plan: Plan) -> None:
    cuts = first(s for s in plan["sheets"] if len(s["cuts"]) > 1)["cuts"]
    cuts[0], cuts[1] = cuts[1], cuts[0]


@answered_by("VER-501", "VER-502")
def turn_a_cut(plan: Plan) -> None:
    cut = cut_sheet(plan)["cuts"][0]
    cut["along"] = "y" if cut["along"] == "x" else "x"


@answered_by("VER-501", "VER-502")
def drop_a_cut(plan: Plan) -> None:
    del cut_sheet(plan)["cuts"][0]


@answered_by("VER-501", "VER-502")
def move_a_cut(plan: Plan) -> None:
    cut = cut_sheet(plan)["cuts"][-1]
    cut["at"] = tick(cut["at"] - 1)


@answered_by("VER-502")
def overlap_two_parts(plan: Plan) -> None:
    parts = first(s for s in plan["sheets"] if len(s["parts"]) > 1)["parts"]
    parts[1]["at"] = list(parts[0]["at"])
    parts[0]["size"], parts[1]["size"] = list(parts[1]["size"]), list(parts[0]["size"])


@answered_by("VER-503")
def cut_a_piece_twice(plan: Plan) -> None:
    parts = [p for s in plan["sheets"] for p in s["parts"] if p["piece"]]
    if len(parts) < 2:
        raise NothingToSpoil
    parts[0]["piece"] = parts[1]["piece"]


@answered_by("VER-503")
def leave_a_piece_uncut(plan: Plan) -> None:
    piece_part(plan)["piece"] = None


@answered_by("VER-504")
def lie_about_a_turn(plan: Plan) -> None:
    part = first(p for s in plan["sheets"] for p in s["parts"] if p["piece"] and p["size"][0] != p["size"][1])
    part["turned"] = not part.get("turned", False)


@answered_by("VER-507")
def lie_about_a_factory_edge(plan: Plan) -> None:
    inner = {
        part["piece"]
        for sheet in plan["sheets"]
        for part in sheet["parts"]
        if part["piece"] and part["size"][0] < sheet["size"][0] and part["size"][1] < sheet["size"][1]
    }
    _, board = first((s, b) for s, b in boards(plan) if b["piece"] in inner)
    board["factory_edges"] = list(range(len(board["outline"])))


@answered_by("VER-506")
def use_a_larger_sheet(plan: Plan) -> None:
    size = first(s for s in plan["sheets"] if s["source"] == "new")["size"]
    size[0] = tick(size[0] + INCH)


@answered_by("VER-506")
def use_a_larger_offcut(plan: Plan) -> None:
    sheet = first(iter(plan["sheets"]))
    sheet["source"] = "offcut:K9"
    sheet["size"] = [side + 1000 for side in sheet["size"]]


@answered_by("VER-508")
def use_an_offcut_twice(plan: Plan) -> None:
    if len(plan["sheets"]) < 2:
        raise NothingToSpoil
    for sheet in plan["sheets"][:2]:
        sheet["source"] = "offcut:K1"


@answered_by("VER-509", everywhere=False)
def list_a_stock_twice(plan: Plan) -> None:
    plan["stock"].append(plan["stock"][0])

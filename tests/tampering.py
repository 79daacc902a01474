"""Ways to spoil a plan.json, each on any plan that has what it spoils, with the objections that must answer.

A change works on the plan as a dict, in place; it raises `NothingToSpoil` where the plan lacks what it needs.
"""

import math
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

Plan = dict[str, Any]
INCH = 25.4


class NothingToSpoil(Exception):
    """The plan holds nothing of the kind that a change spoils."""


@dataclass(frozen=True)
class Tampering:
    """A change, and the codes of which at least one must be raised.

    Attributes:
        everywhere: Whether it is tried on every example, or on the first that has what it spoils.
    """

    name: str
    change: Callable[[Plan], None]
    codes: frozenset[str]
    everywhere: bool


TAMPERINGS: list[Tampering] = []


def answered_by(
    *codes: str, everywhere: bool = True
) -> Callable[[Callable[[Plan], None]], Callable[[Plan], None]]:
    def register(change: Callable[[Plan], None]) -> Callable[[Plan], None]:
        TAMPERINGS.append(Tampering(change.__name__, change, frozenset(codes), everywhere))
        return change

    return register


def first(found: Iterator[Any]) -> Any:
    for item in found:
        return item
    raise NothingToSpoil


def boards(plan: Plan) -> Iterator[tuple[Any, Any]]:
    return ((surface, board) for surface in plan["surfaces"] for board in surface["boards"])


def box(outline: list[list[float]]) -> tuple[float, float, float, float]:
    us, vs = [p[0] for p in outline], [p[1] for p in outline]
    return min(us), min(vs), max(us), max(vs)


def shift(points: list[list[float]], u: float, v: float) -> None:
    for point in points:
        point[0], point[1] = _tick(point[0] + u), _tick(point[1] + v)


def framed(plan: Plan) -> Any:
    return first(s for s in plan["surfaces"] if s.get("framing_axis") and s["seams"] and s["boards"])


def seamed(plan: Plan) -> Any:
    return first(s for s in plan["surfaces"] if s["seams"])


def fastened(plan: Plan) -> tuple[Any, Any]:
    return first((s, b) for s, b in boards(plan) if len(b["fasteners"]) > 3 and len(b["outline"]) == 4)


def cut_sheet(plan: Plan) -> Any:
    return first(s for s in plan["sheets"] if s["cuts"] and any(p["piece"] for p in s["parts"]))


def piece_part(plan: Plan) -> Any:
    return first(p for s in plan["sheets"] for p in s["parts"] if p["piece"])


@answered_by("VER-305")
def move_a_seam(plan: Plan) -> None:
    line = seamed(plan)["seams"][0]["line"]
    along_u = line[0][1] == line[1][1]
    shift(line, 0 if along_u else INCH, INCH if along_u else 0)


@answered_by("VER-106")
def drop_a_seam(plan: Plan) -> None:
    del seamed(plan)["seams"][0]


@answered_by("VER-106")
def shorten_a_seam(plan: Plan) -> None:
    a, b = seamed(plan)["seams"][0]["line"]
    b[:] = [(a[0] + b[0]) / 2 // INCH * INCH, a[1]] if a[1] == b[1] else [a[0], (a[1] + b[1]) / 2 // INCH * INCH]
    b[:] = [round(b[0] * 640) / 640, round(b[1] * 640) / 640]


@answered_by("VER-305")
def list_a_seam_twice(plan: Plan) -> None:
    surface = seamed(plan)
    surface["seams"].append(surface["seams"][0])


@answered_by("VER-107", "VER-305")
def widen_a_seam(plan: Plan) -> None:
    seam = seamed(plan)["seams"][0]
    seam["width"] = _tick(seam["width"] + INCH)


@answered_by("VER-406")
def drop_fasteners_of_a_board(plan: Plan) -> None:
    _, board = fastened(plan)
    board["fasteners"] = []


@answered_by("VER-406")
def drop_a_fastener(plan: Plan) -> None:
    surface, board = first((s, b) for s, b in boards(plan) if len(b["fasteners"]) > 12)
    if surface.get("framing_axis"):
        axis = 1 if surface["framing_axis"] == "v" else 0
        by_member: dict[float, list[list[float]]] = {}
        for place in board["fasteners"]:
            by_member.setdefault(place[1 - axis], []).append(place)
        row = sorted(max(by_member.values(), key=len))
    else:
        middle = [sum(p[axis] for p in board["fasteners"]) / len(board["fasteners"]) for axis in (0, 1)]
        row = sorted(board["fasteners"], key=lambda place: math.dist(place, middle))[:1]
    board["fasteners"].remove(row[len(row) // 2])


@answered_by("VER-407")
def move_a_fastener_off_its_board(plan: Plan) -> None:
    _, board = fastened(plan)
    board["fasteners"][0] = [_tick(box(board["outline"])[2] + 2 * INCH), 0.0]


@answered_by("VER-401", "VER-407")
def move_a_fastener_to_the_edge(plan: Plan) -> None:
    _, board = fastened(plan)
    left, lower, _, upper = box(board["outline"])
    board["fasteners"][0] = [round(left + 0.125 * INCH, 7), _tick((lower + upper) / 2)]


@answered_by("VER-402")
def move_a_fastener_to_the_corner(plan: Plan) -> None:
    _, board = fastened(plan)
    left, lower, _, _ = box(board["outline"])
    board["fasteners"][0] = [round(left + INCH, 7), round(lower + INCH, 7)]


@answered_by("VER-403")
def move_a_fastener_off_its_member(plan: Plan) -> None:
    surface = framed(plan)
    board = first(b for b in surface["boards"] if b["fasteners"])
    left, lower, right, upper = box(board["outline"])
    supports = [box(support["outline"]) for support in surface["supports"]]
    v = _tick((lower + upper) / 2)
    for step in range(200):
        u = _tick(left + (right - left) * step / 200)
        if not any(s[0] - 1 < u < s[2] + 1 and s[1] - 1 < v < s[3] + 1 for s in supports):
            board["fasteners"][0] = [u, v]
            return
    raise NothingToSpoil


@answered_by("VER-404")
def forbid_ground_under_fasteners(plan: Plan) -> None:
    surface, board = fastened(plan)
    u, v = board["fasteners"][0]
    surface.setdefault("no_fastener_zones", []).append({"outline": square(u, v, INCH), "why": "pan"})


@answered_by("VER-405")
def put_a_panel_screw_under_a_fastener(plan: Plan) -> None:
    surface, board = fastened(plan)
    surface["panel_screws"].append(list(board["fasteners"][0]))


@answered_by("VER-408")
def list_a_fastener_twice(plan: Plan) -> None:
    _, board = fastened(plan)
    board["fasteners"].append(list(board["fasteners"][0]))


@answered_by("VER-104")
def overlap_two_boards(plan: Plan) -> None:
    surface = first(s for s in plan["surfaces"] if len(s["boards"]) > 1)
    a, b = surface["boards"][:2]
    a["outline"], a["holes"] = b["outline"], []


@answered_by("VER-106")
def remove_a_board(plan: Plan) -> None:
    surface, board = first(boards(plan))
    surface["boards"].remove(board)


@answered_by("VER-505")
def grow_a_piece(plan: Plan) -> None:
    piece = first(p for p in plan["pieces"] if len(p["outline"]) >= 4)
    right = max(p[0] for p in piece["outline"])
    for point in piece["outline"]:
        if point[0] == right:
            point[0] = _tick(point[0] + INCH)


@answered_by("VER-504", "VER-505")
def grow_a_blank(plan: Plan) -> None:
    blank = first(iter(plan["pieces"]))["blank"]
    blank[0] = _tick(blank[0] + INCH)


@answered_by("VER-102", "VER-101")
def close_the_perimeter_gap(plan: Plan) -> None:
    surface = first(s for s in plan["surfaces"] if s["boards"] and "perimeter" in [x["kind"] for x in s["sides"]])
    for board in surface["boards"]:
        shift(board["outline"], 0.25 * INCH, 0)


@answered_by("VER-101")
def push_a_board_off_its_surface(plan: Plan) -> None:
    surface, board = first(boards(plan))
    right = box(surface["outline"])[2]
    shift(board["outline"], right, 0)


@answered_by("VER-105", "VER-104")
def narrow_the_gap_between_boards(plan: Plan) -> None:
    surface = framed(plan)
    for board in surface["boards"]:
        for other in surface["boards"]:
            gap = other["outline"][0][0] - max(p[0] for p in board["outline"])
            if 0 < gap < INCH and other["outline"][0][1] == board["outline"][0][1]:
                right = max(p[0] for p in board["outline"])
                for point in board["outline"]:
                    if point[0] == right:
                        point[0] = _tick(point[0] + 1)
                return
    raise NothingToSpoil


@answered_by("VER-106")
def shrink_a_board(plan: Plan) -> None:
    _, board = first((s, b) for s, b in boards(plan) if len(b["outline"]) == 4)
    right = max(p[0] for p in board["outline"])
    for point in board["outline"]:
        if point[0] == right:
            point[0] = _tick(point[0] - INCH)


@answered_by("VER-103")
def open_a_covered_place(plan: Plan) -> None:
    surface, board = first((s, b) for s, b in boards(plan) if len(b["outline"]) == 4 and not b["holes"])
    left, lower, right, upper = box(board["outline"])
    outline = square(_tick((left + right) / 2), _tick((lower + upper) / 2), INCH)
    surface["openings"].append({"id": "forgotten", "kind": "box", "outline": outline})


@answered_by("VER-103")
def cover_an_opening(plan: Plan) -> None:
    _, board = first((s, b) for s, b in boards(plan) if b["holes"])
    board["holes"] = []


@answered_by("VER-303", "VER-306", "VER-403")
def take_away_the_members(plan: Plan) -> None:
    surface = first(
        s for s in plan["surfaces"]
        if s["boards"] and s["framing_axis"] and all(one["kind"] != "panel" for one in s["supports"])
    )  # fmt: skip
    surface["supports"] = surface["supports"][:1]


@answered_by("VER-304")
def put_a_panel_joint_under_a_seam(plan: Plan) -> None:
    surface = first(
        s for s in plan["surfaces"] for seam in s["seams"]
        if (seam["line"][0][0] == seam["line"][1][0]) != (seam["line"][0][1] == seam["line"][1][1])
    )  # fmt: skip
    _unsay(plan, "BRD-203")
    surface["panel_joints"].append([list(point) for point in surface["seams"][0]["line"]])


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
    cut["at"] = _tick(cut["at"] - 1)


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
    size[0] = _tick(size[0] + INCH)


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


@answered_by("VER-508")
def name_two_boards_alike(plan: Plan) -> None:
    found = [board for _, board in boards(plan)]
    if len(found) < 2:
        raise NothingToSpoil
    found[0]["id"] = found[1]["id"]


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


@answered_by("VER-702")
def overlap_two_tiles(plan: Plan) -> None:
    tiles = first(s["tiles"] for s in plan["surfaces"] if len(s.get("tiles", ())) > 1)
    tiles[1]["outline"] = tiles[0]["outline"]


@answered_by("VER-701")
def push_a_tile_off_its_surface(plan: Plan) -> None:
    surface = first(s for s in plan["surfaces"] if s.get("tiles"))
    shift(surface["tiles"][0]["outline"], box(surface["outline"])[2], 0)


@answered_by("VER-703")
def cut_too_much_from_a_tile(plan: Plan) -> None:
    surface = first(s for s in plan["surfaces"] if any(not t["whole"] for t in s.get("tiles", ())))
    source = first(t["from"] for t in surface["tiles"] if not t["whole"])
    for tile in surface["tiles"]:
        tile.update({"from": source})
    first(t for t in surface["tiles"] if t["whole"])["whole"] = False


@answered_by("VER-704")
def close_a_tile_joint(plan: Plan) -> None:
    tiles = first(s["tiles"] for s in plan["surfaces"] if len(s.get("tiles", ())) > 1)
    for ring in (tiles[0]["outline"], tiles[0].get("laid", [])):
        shift(ring, 0.5, 0.5)


@answered_by("VER-705")
def leave_a_tile_out(plan: Plan) -> None:
    first(s["tiles"] for s in plan["surfaces"] if s.get("tiles")).pop(0)


@answered_by("VER-705")
def tile_less_of_a_surface(plan: Plan) -> None:
    surface = first(s for s in plan["surfaces"] if s.get("tiled"))
    surface["tiles"], surface["tiled"][0]["area"] = (
        [],
        [{"outline": [[0.0, 0.0], [10.0, 0.0], [10.0, 10.0], [0.0, 10.0]], "holes": []}],
    )


@answered_by("VER-706")
def call_a_cut_tile_whole(plan: Plan) -> None:
    cut = first(t for s in plan["surfaces"] for t in s.get("tiles", ()) if not t["whole"])
    cut.update({"whole": True, "from": ""})


@answered_by("VER-706")
def shrink_the_tile_that_was_bought(plan: Plan) -> None:
    stock = first(iter(plan.get("tile_stock", ())))
    stock["size"] = [_tick(side * 0.9) for side in stock["size"]]


@answered_by("VER-703")
def mirror_a_cut_tile(plan: Plan) -> None:
    """Cut from the back, a tile with no mirror axis does not fit."""
    cut = first(t for s in plan["surfaces"] for t in s.get("tiles", ()) if t.get("cut"))
    left, lower, right, upper = box(cut["cut"])
    cut["cut"] = [[left, lower], [right, lower], [right, _tick(lower + (upper - lower) / 3)], [left, upper]]


@answered_by("VER-703")
def cut_two_pieces_from_one_place(plan: Plan) -> None:
    pairs = [t for s in plan["surfaces"] for t in s.get("tiles", ()) if t.get("cut")]
    one = first(iter(pairs))
    other = first(t for t in pairs[1:] if t["stock"] == one["stock"])
    other["from"] = one["from"]
    by_u, by_v = box(one["cut"])[0] - box(other["cut"])[0], box(one["cut"])[1] - box(other["cut"])[1]
    shift(other["cut"], by_u, by_v)


@answered_by("VER-708")
def grout_the_soft_joints(plan: Plan) -> None:
    tiled = [s for s in plan["surfaces"] if s.get("tiles")]
    footed = [s for s in tiled if any(side["kind"] == "foot" for side in s["sides"])]
    first(iter(footed or tiled))["soft_joints"] = []


@answered_by("VER-801")
def buy_a_tile_less(plan: Plan) -> None:
    first(q for q in plan["quantities"] if q["item"].startswith("tiles "))["exact"] -= 1


@answered_by("VER-801")
def change_a_quantity(plan: Plan) -> None:
    first(q for q in plan["quantities"] if q["item"].startswith(("sheets ", "fasteners")))["exact"] += 3


@answered_by("VER-802")
def buy_nothing(plan: Plan) -> None:
    first(q for q in plan["quantities"] if q["exact"] > 0)["buy"] = 0


@answered_by("VER-902")
def name_a_working_that_is_not_there(plan: Plan) -> None:
    first(iter(plan["quantities"]))["working"] = "nowhere"


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


@answered_by("VER-001")
def name_a_practice_that_is_not_there(plan: Plan) -> None:
    plan["job"]["practice"] = "nowhere"


@answered_by("VER-001")
def override_a_rule_without_a_reason(plan: Plan) -> None:
    plan["job"]["overrides"] = [{"rule": "boards.gap.between", "value": 0, "reason": ""}]


def quantity(plan: Plan, start: str) -> Any:
    return first(q for q in plan["quantities"] if q["item"].startswith(start) and q["exact"] > 0)


def working(plan: Plan, start: str) -> Any:
    return first(plan["workings"][name] for name in sorted(plan["workings"]) if name.startswith(start))


def more(text: str, share: float = 0.07) -> str:
    """A text with its first number made larger, as many places shown."""
    found = re.search(r"\d+(?:\.\d+)?", text)
    if found is None:
        raise NothingToSpoil
    places = len(found[0].partition(".")[2])
    changed = float(found[0]) * (1 + share) + (0 if places else 1)
    return f"{text[: found.start()]}{changed:.{places}f}{text[found.end() :]}"


def _need_more(start: str) -> None:
    """Registers: the exact need of a line is made larger; its packs still hold it."""

    def change(plan: Plan) -> None:
        line = quantity(plan, start)
        line["exact"] = round(line["exact"] * 1.02 + 0.01, 3)

    change.__name__ = f"need_more_{start.strip().replace(' ', '_')}"
    answered_by("VER-801", everywhere=False)(change)


for _item in (
    "bedding mortar", "seam tape", "sealant", "tile mortar", "large-tile mortar", "grout", "joint sealant",
    "bond-breaker tape", "backer rod", "edge trim", "spacers", "sheet membrane", "liquid membrane", "shower liner",
    "sealing band", "inside corners", "outside corners", "pipe collars", "valve collars", "drain flanges",
    "bed mortar", "fasteners", "tiles ", "sheets ",
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
    plan["quantities"].remove(quantity(plan, "seam tape"))


@answered_by("VER-804", everywhere=False)
def list_what_nothing_needs(plan: Plan) -> None:
    plan["quantities"].append({**quantity(plan, "seam tape"), "item": "gold leaf"})


@answered_by("VER-805", everywhere=False)
def sell_it_in_another_unit(plan: Plan) -> None:
    quantity(plan, "bedding mortar")["unit"] = "stone"


@answered_by("VER-805", everywhere=False)
def sell_it_in_larger_packs(plan: Plan) -> None:
    line = quantity(plan, "fasteners")
    line["pack"] = more(line["pack"])


@answered_by("VER-903", everywhere=False)
def print_another_result_than_is_bought(plan: Plan) -> None:
    found = plan["workings"][quantity(plan, "seam tape")["working"]]
    found["result"] = more(found["result"])


@answered_by("VER-903", everywhere=False)
def print_another_allowance(plan: Plan) -> None:
    values = plan["workings"][quantity(plan, "fasteners")["working"]]["values"]
    name = first(name for name in values if " = " in values[name])
    values[name] = more(values[name])


@answered_by("VER-903", everywhere=False)
def print_another_area_of_mortar(plan: Plan) -> None:
    values = plan["workings"][quantity(plan, "bedding mortar")["working"]]["values"]
    values["area"] = more(values["area"])


@answered_by("VER-905", everywhere=False)
def raise_a_price(plan: Plan) -> None:
    first(s for s in plan["stock"] if s.get("price") and plan["counts"].get(s["id"], {}).get("used"))["price"] += 1


@answered_by("VER-905", everywhere=False)
def add_up_wrong_what_sheets_cost(plan: Plan) -> None:
    found = working(plan, "cost sheets")
    found["result"] = more(found["result"])


@answered_by("VER-905", everywhere=False)
def leave_a_cost_out(plan: Plan) -> None:
    working(plan, "cost ")
    del plan["workings"][first(name for name in sorted(plan["workings"]) if name.startswith("cost "))]


@answered_by("VER-903", everywhere=False)
def call_a_sheet_lighter(plan: Plan) -> None:
    found = working(plan, "mass ")
    found["result"] = more(found["result"])


@answered_by("VER-903", "VER-801", everywhere=False)
def thicken_a_sheet(plan: Plan) -> None:
    working(plan, "mass ")
    stock = first(s for s in plan["stock"] if plan["counts"].get(s["id"], {}).get("used"))
    stock["thickness"] = _tick(stock["thickness"] * 1.1)


@answered_by("VER-903", everywhere=False)
def print_another_area_of_board(plan: Plan) -> None:
    found = working(plan, "boards ")
    found["result"] = more(found["result"])


@answered_by("VER-903", everywhere=False)
def print_other_fasteners_of_a_board(plan: Plan) -> None:
    values = working(plan, "fasteners ")["values"]
    mark = first(name for name in values if re.fullmatch(r"[A-Z]\d+-\d+", name))
    values[mark] = more(values[mark])


@answered_by("VER-903", everywhere=False)
def move_a_corner_of_the_survey(plan: Plan) -> None:
    found = first(w for name, w in sorted(plan["workings"].items()) if re.fullmatch(r"survey\..*\.area", name))
    found["result"] = more(found["result"])


@answered_by("VER-903", everywhere=False)
def claim_more_readings(plan: Plan) -> None:
    values = first(w for name, w in sorted(plan["workings"].items()) if name.endswith(".checks"))["values"]
    values["readings"] = str(int(values["readings"]) + 1)


@answered_by("VER-903", everywhere=False)
def widen_a_joint_on_paper(plan: Plan) -> None:
    found = working(plan, "joint ")
    found["result"] = more(found["result"])


@answered_by("VER-903", "VER-801", everywhere=False)
def thicken_a_tile(plan: Plan) -> None:
    stock = first(s for s in plan.get("tile_stock", ()) if s.get("thickness"))
    stock["thickness"] = _tick(stock["thickness"] * 1.2)


@answered_by("VER-802", "VER-805", everywhere=False)
def fill_the_boxes(plan: Plan) -> None:
    first(s for s in plan.get("tile_stock", ()) if s.get("per_box"))["per_box"] += 5


@answered_by("VER-901", "VER-903", everywhere=False)
def thin_a_layer_on_paper(plan: Plan) -> None:
    values = first(w for name, w in sorted(plan["workings"].items()) if name.endswith(".buildup.height"))["values"]
    values["board"] = more(values["board"])


@answered_by("VER-901", everywhere=False)
def lighten_the_layers(plan: Plan) -> None:
    found = first(w for name, w in sorted(plan["workings"].items()) if name.endswith(".buildup.mass"))
    found["result"] = more(found["result"])


@answered_by("VER-903", everywhere=False)
def cover_less_with_membrane(plan: Plan) -> None:
    found = working(plan, "membrane ")
    found["result"] = more(found["result"])


@answered_by("VER-801", "VER-804", everywhere=False)
def take_a_membrane_away(plan: Plan) -> None:
    first(s for s in plan["surfaces"] if s.get("membrane"))["membrane"] = ""


@answered_by("VER-903", everywhere=False)
def count_other_corner_pieces(plan: Plan) -> None:
    values = working(plan, "membrane ")["values"]
    values["inside corners"] = str(int(values["inside corners"]) + 1)


@answered_by("VER-801", "VER-903", everywhere=False)
def widen_the_kerb(plan: Plan) -> None:
    fall = first(s["fall"] for s in plan["surfaces"] if s.get("fall") and s["fall"].get("kerb_width"))
    fall["kerb_width"] = _tick(fall["kerb_width"] + INCH)


@answered_by("VER-762", everywhere=False)
def allow_a_larger_tile(plan: Plan) -> None:
    fall = first(s["fall"] for s in plan["surfaces"] if s.get("fall") and s["fall"].get("largest_tile"))
    fall["largest_tile"] = _tick(fall["largest_tile"] * 1.05)


@answered_by("VER-711", everywhere=False)
def snap_a_line_elsewhere(plan: Plan) -> None:
    area = first(a for s in plan["surfaces"] for a in s.get("tiled", ()) if a.get("lines"))
    shift(area["lines"][0]["line"], 0.31 * INCH, 0.31 * INCH)


@answered_by("VER-771", everywhere=False)
def read_a_height_wrong(plan: Plan) -> None:
    heights = first(s["heights"] for s in plan["surfaces"] if len(s.get("heights", ())) > 2)
    heights[0]["off"] = _tick(heights[0]["off"] + 2)


@answered_by("VER-771", everywhere=False)
def fill_what_is_left(plan: Plan) -> None:
    heights = first(s["heights"] for s in plan["surfaces"] if any(h["do"] == "fill" for h in s.get("heights", ())))
    first(h for h in heights if h["do"] == "fill")["do"] = "leave"


@answered_by("VER-904", everywhere=False)
def print_another_rule(plan: Plan) -> None:
    rule = first(rule for rule in plan.get("rules", ()) if re.fullmatch(r"[\d.]+", rule["value"]))
    rule["value"] = more(rule["value"])


@answered_by("VER-904", everywhere=False)
def shorten_the_edges_that_show(plan: Plan) -> None:
    found = first(f for f in plan["findings"] if f["code"] == "TIL-107")
    found["measured"] = more(found["measured"])


@answered_by("VER-509", everywhere=False)
def mark_two_boards_alike(plan: Plan) -> None:
    found = [board for _, board in boards(plan) if board.get("mark")]
    if len(found) < 2:
        raise NothingToSpoil
    found[0]["mark"] = found[1]["mark"]


@answered_by("VER-509", everywhere=False)
def list_a_stock_twice(plan: Plan) -> None:
    plan["stock"].append(plan["stock"][0])


@answered_by("VER-901", everywhere=False)
def calculate_wrong(plan: Plan) -> None:
    found = first(
        w
        for w in plan["workings"].values()
        if any("f" in s and " / " in s and " = " in s for s in w.get("steps", ()))
    )
    found["steps"] = [more(step, 0.1) if " / " in step else step for step in found["steps"]]
    found["steps"] = [re.sub(r"= ([\d.,]+)( psi| in|$)", r"= 9\1\2", step) for step in found["steps"]]


@answered_by("VER-915", everywhere=False)
def print_another_stress_on_the_sheet(plan: Plan) -> None:
    row = first(r for s in plan.get("structures", ()) for r in s["lines"] if not r["limit"])
    row["found"] = more(row["found"])


@answered_by("VER-916", everywhere=False)
def find_another_span(plan: Plan) -> None:
    facts = first(s["facts"] for s in plan.get("structures", ()) if s["kind"] == "floor")
    row = first(row for row in facts if row[0].startswith("clear span"))
    row[1] = more(row[1])


@answered_by("VER-917", everywhere=False)
def drop_a_line_of_a_sheet(plan: Plan) -> None:
    del first(s["lines"] for s in plan.get("structures", ()) if s["lines"])[0]


@answered_by("VER-913", everywhere=False)
def tell_of_another_limit(plan: Plan) -> None:
    where = first(s["where"] for s in plan.get("structures", ()) if not all(r["holds"] for r in s["lines"]))
    for found in plan["findings"]:
        if found["where"] == where:
            found["limit"] = more(found["limit"])


def square(u: float, v: float, half: float) -> list[list[float]]:
    corners = ((u - half, v - half), (u + half, v - half), (u + half, v + half), (u - half, v + half))
    return [[_tick(a), _tick(b)] for a, b in corners]


def _tick(value: float) -> float:
    return round(value * 640) / 640


def _unsay(plan: Plan, code: str) -> None:
    plan["findings"] = [finding for finding in plan["findings"] if finding["code"] != code]

"""Fasteners left out, or moved to where none may be."""

import math
from typing import Any

from tamperings.tools import INCH, NothingToSpoil, Plan, answered_by, boards, box, first, framed, square, tick


def fastened(plan: Plan) -> tuple[Any, Any]:
    return first((s, b) for s, b in boards(plan) if len(b["fasteners"]) > 3 and len(b["outline"]) == 4)


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
    board["fasteners"][0] = [tick(box(board["outline"])[2] + 2 * INCH), 0.0]


@answered_by("VER-401", "VER-407")
def move_a_fastener_to_the_edge(plan: Plan) -> None:
    _, board = fastened(plan)
    left, lower, _, upper = box(board["outline"])
    board["fasteners"][0] = [round(left + 0.125 * INCH, 7), tick((lower + upper) / 2)]


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
    v = tick((lower + upper) / 2)
    for step in range(200):
        u = tick(left + (right - left) * step / 200)
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


@answered_by("VER-412", everywhere=False)
def bar_fasteners_for_another_reason(plan: Plan) -> None:
    zone = first(zone for s in plan["surfaces"] for zone in s.get("no_fastener_zones", ()))
    zone["why"] = "above_tub"


@answered_by("VER-412", everywhere=False)
def forget_where_nothing_may_be_driven(plan: Plan) -> None:
    first(s for s in plan["surfaces"] if s.get("no_fastener_zones"))["no_fastener_zones"].pop()

"""Boards out of place, too close, missing, or with seams that are not where they are said to be."""

from typing import Any

from tamperings.tools import (
    INCH,
    NothingToSpoil,
    Plan,
    answered_by,
    boards,
    box,
    first,
    framed,
    shift,
    square,
    tick,
)


def seamed(plan: Plan) -> Any:
    return first(s for s in plan["surfaces"] if s["seams"])


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
    seam["width"] = tick(seam["width"] + INCH)


@answered_by("VER-104")
def overlap_two_boards(plan: Plan) -> None:
    surface = first(s for s in plan["surfaces"] if len(s["boards"]) > 1)
    a, b = surface["boards"][:2]
    a["outline"], a["holes"], a["factory_edges"] = b["outline"], [], []


@answered_by("VER-106")
def remove_a_board(plan: Plan) -> None:
    surface, board = first(boards(plan))
    surface["boards"].remove(board)


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
                        point[0] = tick(point[0] + 1)
                return
    raise NothingToSpoil


@answered_by("VER-106")
def shrink_a_board(plan: Plan) -> None:
    _, board = first((s, b) for s, b in boards(plan) if len(b["outline"]) == 4)
    right = max(p[0] for p in board["outline"])
    for point in board["outline"]:
        if point[0] == right:
            point[0] = tick(point[0] - INCH)


@answered_by("VER-505")
def raise_a_board(plan: Plan) -> None:
    _, board = first((s, b) for s, b in boards(plan) if len(b["outline"]) == 4)
    top = max(p[1] for p in board["outline"])
    for point in board["outline"]:
        if point[1] == top:
            point[1] = tick(point[1] + INCH)


@answered_by("VER-103")
def open_a_covered_place(plan: Plan) -> None:
    surface, board = first((s, b) for s, b in boards(plan) if len(b["outline"]) == 4 and not b["holes"])
    left, lower, right, upper = box(board["outline"])
    outline = square(tick((left + right) / 2), tick((lower + upper) / 2), INCH)
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


@answered_by("VER-508")
def name_two_boards_alike(plan: Plan) -> None:
    found = [board for _, board in boards(plan)]
    if len(found) < 2:
        raise NothingToSpoil
    found[0]["id"] = found[1]["id"]


@answered_by("VER-509", everywhere=False)
def mark_two_boards_alike(plan: Plan) -> None:
    found = [board for _, board in boards(plan) if board.get("mark")]
    if len(found) < 2:
        raise NothingToSpoil
    found[0]["mark"] = found[1]["mark"]


def _unsay(plan: Plan, code: str) -> None:
    plan["findings"] = [finding for finding in plan["findings"] if finding["code"] != code]

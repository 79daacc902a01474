"""Rules a written layout and its cutting must keep, re-derived from the files alone; each fault in words."""

from collections import Counter
from itertools import pairwise
from typing import Any


def check_layout(room: dict[str, Any], layout: dict[str, Any]) -> list[str]:
    """Faults of all surfaces of a room."""
    faults = []
    if set(layout["surfaces"]) != {surface["id"] for surface in room["surfaces"]}:
        faults.append("other surfaces than the room has")
    for surface in room["surfaces"]:
        rects = [(r["x"], r["y"], r["w"], r["h"]) for r in layout["surfaces"].get(surface["id"], [])]
        ways = [_check_courses(rects, surface["w"], surface["h"], surface.get("studs"), room)]
        if surface["kind"] == "floor":
            turned = [(y, x, h, w) for x, y, w, h in rects]
            ways.append(_check_courses(turned, surface["h"], surface["w"], None, room))
        if all(ways):
            faults += [f"{surface['id']}: {fault}" for fault in ways[0]]
    return faults


def _check_courses(
    rects: list[tuple[int, int, int, int]], length: int, across: int, studs: list[int] | None, room: dict[str, Any]
) -> list[str]:
    gap, edge = room["gap"], room["edge_gap"]
    long, short = room["sheet"]["w"], room["sheet"]["h"]
    faults = []
    courses: dict[int, list[tuple[int, int, int]]] = {}
    for x, y, w, h in rects:
        courses.setdefault(y, []).append((x, w, h))
        if min(w, h) < room["min_piece"]:
            faults.append("a piece is too small")
        if max(w, h) > long or min(w, h) > short or h > short:
            faults.append("a piece is larger than a sheet or a course higher than one")
    at = edge
    below: list[int] | None = None
    for y in sorted(courses):
        pieces = sorted(courses[y])
        if y != at or len({h for _, _, h in pieces}) != 1:
            faults.append("courses do not follow each other with a gap between")
        at = y + pieces[0][2] + gap
        if pieces[0][0] != edge or pieces[-1][0] + pieces[-1][1] != length - edge:
            faults.append("a course does not reach its ends")
        if any(right[0] - left[0] - left[1] != gap for left, right in pairwise(pieces)):
            faults.append("a gap in a course is wrong")
        # Twice the middle of the gap, to stay in whole numbers.
        seams = [2 * x - gap for x, _, _ in pieces[1:]]
        if studs is not None and any(seam not in {2 * stud for stud in studs} for seam in seams):
            faults.append("a seam is not on the middle of a stud")
        if below is not None and any(abs(a - b) < 2 * room["stagger"] for a in seams for b in below):
            faults.append("seams of neighbouring courses are too close")
        below = seams
    if at - gap != across - edge:
        faults.append("the courses do not reach the upper edge")
    return faults


def check_cutting(cutting: dict[str, Any], sheet: dict[str, int] | None) -> list[str]:
    """Faults of a cutting record: replay every cut on exactly one panel and find every piece as a panel.

    Args:
        cutting: As written.
        sheet: Size of every new sheet; None to trust the record's own.
    """
    faults = []
    panels: dict[str, set[tuple[int, int, int, int]]] = {}
    for line in cutting["sheets"]:
        if sheet is not None and line["source"] == "new" and (line["w"], line["h"]) != (sheet["w"], sheet["h"]):
            faults.append("a sheet of another size")
        panels[line["id"]] = {(0, 0, line["w"], line["h"])}
    for cut in cutting["cuts"]:
        there = panels[cut["sheet"]]
        at, low, high = cut["at"], cut["from"], cut["to"]
        if cut["axis"] == "x":
            hit = [p for p in there if (p[1], p[1] + p[3]) == (low, high) and p[0] < at < p[0] + p[2]]
        else:
            hit = [p for p in there if (p[0], p[0] + p[2]) == (low, high) and p[1] < at < p[1] + p[3]]
        if len(hit) != 1:
            faults.append("a cut does not run from edge to edge of exactly one panel")
            continue
        x, y, w, h = hit[0]
        there.remove(hit[0])
        there |= (
            {(x, y, at - x, h), (at, y, x + w - at, h)}
            if cut["axis"] == "x"
            else {(x, y, w, at - y), (x, at, w, y + h - at)}
        )
    demand: Counter[tuple[int, int]] = Counter()
    for piece in cutting["pieces"]:
        place = (piece["x"], piece["y"], piece["w"], piece["h"])
        if place not in panels[piece["sheet"]]:
            faults.append(f"piece {piece['id']} is not a panel of its own")
        panels[piece["sheet"]].discard(place)
        demand[(piece["h"], piece["w"]) if piece["rotated"] else (piece["w"], piece["h"])] += 1
    wanted: Counter[tuple[int, int]] = Counter()
    for line in cutting["demand"]:
        wanted[(line["w"], line["h"])] += line["qty"]
    if demand != wanted:
        faults.append("pieces and demand differ")
    claims = cutting["claims"]
    new = sum(line["source"] == "new" for line in cutting["sheets"])
    if (claims["sheets"], claims["cuts"]) != (new, len(cutting["cuts"])):
        faults.append("claims differ from what is there")
    return faults

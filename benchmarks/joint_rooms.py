"""Seams and cuts chosen together for every room of a file; writes what an outside judge can check.

    .venv/bin/python benchmarks/joint_rooms.py FILE --out DIR [--effort 0..3]

All lengths are the file's own whole units.
"""

import argparse
import json
import sys
import time
from bisect import bisect_left, bisect_right
from collections import Counter
from dataclasses import dataclass
from itertools import combinations_with_replacement, pairwise
from pathlib import Path
from statistics import median
from typing import Any

from checks import check_cutting, check_layout

from firstcourse.cutting import Blank, CutSheet, StockSize
from firstcourse.cutting.choice import choose
from firstcourse.cutting.choices import Arrangement, ChoiceField, Course, Pick
from firstcourse.cutting.every_layout import Region, least_over_layouts
from firstcourse.cutting.kernels import warm
from firstcourse.cutting.packing import Manner, Room, pack

Way = tuple[bool, tuple[int, ...]]
Rect = tuple[int, int, int, int]
Rect2 = tuple[int, int]

BASES = (576, 480, 384, 320, 288, 240, 192)
GRID = 64
AGAIN_FROM = 2
"""Effort from which a room whose bound is not met is tried again, with heights in even steps."""
PATIENCE = 5
"""How many times longer a sheet is then to be done without."""


@dataclass(frozen=True)
class Candidates:
    """Which layouts are tried.

    Attributes:
        heights: Of courses, to be completed by one more.
        most: Most sets of heights of a wall, and of a floor.
    """

    heights: tuple[int, ...] = BASES
    most: tuple[int, int] = (24, 24)


def even(room: dict[str, Any]) -> Candidates:
    """Heights in even steps, which add up to one another and to a sheet in many ways."""
    steps = range(room["min_piece"], room["sheet"]["h"] + 1, GRID)
    return Candidates(tuple(sorted({*BASES, *steps}, reverse=True)), (5000, 300))


def height_sets(total: int, room: dict[str, Any], bases: tuple[int, ...], most_sets: int) -> list[tuple[int, ...]]:
    """Course heights that fill `total` with gaps between, fewest courses first."""
    gap, least, most = room["gap"], room["min_piece"], room["sheet"]["h"]
    fewest = -(-(total + gap) // (most + gap))
    legal: list[tuple[int, ...]] = []
    for num in range(fewest, fewest + 2):
        net = total - gap * (num - 1)
        even, rest = divmod(net, num)
        found = {tuple([even + 1] * rest + [even] * (num - rest))}
        for full in range(num):
            even, rest = divmod(net - full * most, num - full)
            found.add(tuple([most] * full + [even + 1] * rest + [even] * (num - full - rest)))
        for some in combinations_with_replacement(bases, num - 1):
            last = net - sum(some)
            if least <= last <= most:
                found.add(tuple(sorted((*some, last), reverse=True)))
        legal += [heights for heights in found if all(least <= height <= most for height in heights)]
        if len(legal) >= most_sets:
            break
    legal.sort(key=lambda heights: (len(heights), len(set(heights)), heights))
    return legal[:most_sets]


def course(length: int, height: int, seams: list[int], room: dict[str, Any], lying: bool) -> Course:
    """A course from edge gap to edge gap with its possible seams; blanks as (along w, along h) of the surface."""
    gap, edge, least = room["gap"], room["edge_gap"], room["min_piece"]
    long, short = room["sheet"]["w"], room["sheet"]["h"]
    half = gap // 2
    ends = (edge - half, length - edge + half)
    breaks = (ends[0], *(s for s in seams if ends[0] < s < ends[1]), ends[1])
    longest = long if height <= short else short
    intervals = []
    for i, left in enumerate(breaks if height >= least else ()):
        for j in range(bisect_left(breaks, left + gap + least), bisect_right(breaks, left + gap + longest)):
            size = breaks[j] - left - gap
            intervals.append((i, j, ((size, height) if lying else (height, size),)))
    return Course(breaks, tuple(intervals))


def floor_seams(length: int, room: dict[str, Any]) -> list[int]:
    """Seams on a grid and at whole boards, and complements of whole boards, from either end."""
    edge, gap = room["edge_gap"], room["gap"]
    start, stop = edge - gap // 2, length - edge + gap // 2
    found = set(range(start + GRID, stop, GRID))
    for size in (*BASES, room["sheet"]["w"]):
        found |= {start + size + gap, stop - size - gap}
    least = room["min_piece"] + gap
    return sorted(s for s in found if start + least <= s <= stop - least)


def least_sheets(room: dict[str, Any]) -> int:
    """Fewest sheets over every layout that keeps the rules of the room."""
    edge, gap = room["edge_gap"], room["gap"]

    def region(length: int, across: int, starts: tuple[int, ...] | None) -> Region:
        return Region(
            length - 2 * edge,
            across - 2 * edge,
            gap,
            room["min_piece"],
            room["sheet"]["h"],
            room["stagger"],
            starts,
        )

    fields = []
    for surface in room["surfaces"]:
        w, h = surface["w"], surface["h"]
        if surface["kind"] == "wall":
            fields.append([region(w, h, tuple(stud - gap // 2 - edge for stud in surface["studs"]))])
        else:
            fields.append([region(w, h, None), region(h, w, None)])
    return least_over_layouts(fields, StockSize("sheet", room["sheet"]["w"], room["sheet"]["h"], 1)).value


def field(surface: dict[str, Any], room: dict[str, Any], tried: Candidates) -> tuple[ChoiceField, list[Way]]:
    """All arrangements of courses of one surface, and for each whether courses lie along w, and their heights."""
    edge, wall = room["edge_gap"], surface["kind"] == "wall"
    most = tried.most[0 if wall else 1]
    arrangements, ways = [], []
    for lying in (True,) if wall else (True, False):
        length, across = (surface["w"], surface["h"]) if lying else (surface["h"], surface["w"])
        seams = sorted(surface["studs"]) if wall else floor_seams(length, room)
        made: dict[int, Course] = {}
        for heights in height_sets(across - 2 * edge, room, tried.heights, most):
            for height in heights:
                if height not in made:
                    made[height] = course(length, height, seams, room, lying)
            arrangements.append(Arrangement(tuple(made[height] for height in heights), room["stagger"]))
            ways.append((lying, heights))
    return ChoiceField(surface["id"], tuple(arrangements), f"{surface['kind']} {surface['h']}"), ways


def boards(pick: Pick, chosen: ChoiceField, way: Way, room: dict[str, Any]) -> list[Rect]:
    """The boards of one surface where they lie, course by course."""
    lying, heights = way
    gap, found, at = room["gap"], [], room["edge_gap"]
    for made, height, breaks in zip(
        chosen.arrangements[pick.arrangement].courses, heights, pick.breaks, strict=True
    ):
        for i, j in pairwise(breaks):
            start = made.breaks[i] + gap // 2
            size = made.breaks[j] - gap // 2 - start
            found.append((start, at, size, height) if lying else (at, start, height, size))
        at += height + gap
    return found


def practice(room: dict[str, Any]) -> tuple[int, int]:
    """Sheets and cuts of plain practice: full sheets from the left, the rest from the smallest leftover."""
    sheet = StockSize("sheet", room["sheet"]["w"], room["sheet"]["h"], 1)
    blanks: list[Blank] = []
    for surface in room["surfaces"]:
        edge, gap, least, most = room["edge_gap"], room["gap"], room["min_piece"], room["sheet"]["h"]
        heights, left = [], surface["h"] - 2 * edge
        while left > 0:
            rest = left - gap - most
            height = left if left <= most else most if rest >= least else left - gap - least
            heights.append(height)
            left -= height + gap
        length = surface["w"]
        seams = sorted(surface["studs"]) if surface["kind"] == "wall" else list(range(edge, length - edge))
        for size, height in practice_pieces(length, heights, seams, room):
            blanks.append(Blank(str(len(blanks)), size, height, ("sheet",)))
    stock = Room("sheet", None, sheet.w, sheet.h, 1, True)
    fillings = pack(blanks, [stock], (), Manner("area", "area", "short"))
    return len(fillings), sum(len(filling.cuts) for filling in fillings)


def practice_pieces(length: int, heights: list[int], seams: list[int], room: dict[str, Any]) -> list[Rect2]:
    """Boards of plain practice: each course takes the longest board it may, stepping back where that fails."""
    gap, edge, least, most = room["gap"], room["edge_gap"], room["min_piece"], room["sheet"]["w"]
    half = gap // 2
    start, stop = edge - half, length - edge + half

    def rest(course: int, at: int, above: tuple[int, ...], below: tuple[int, ...]) -> list[tuple[int, ...]] | None:
        if least <= stop - at - gap <= most:
            if course == len(heights) - 1:
                return [above]
            upper = rest(course + 1, start, (), above)
            if upper is not None:
                return [above, *upper]
        for seam in reversed(seams):
            if least <= seam - at - gap <= most and all(abs(seam - s) >= room["stagger"] for s in below):
                found = rest(course, seam, (*above, seam), below)
                if found is not None:
                    return found
        return None

    rows = rest(0, start, (), ())
    if rows is None:
        raise ValueError("practice finds no seams")
    pieces = []
    for height, row in zip(heights, rows, strict=True):
        ends = (start, *row, stop)
        pieces += [(right - left - gap, height) for left, right in pairwise(ends)]
    return pieces


def cutting_record(sheets: tuple[CutSheet, ...], bound: int) -> dict[str, Any]:
    """Sheets, pieces, demand and cuts in working order, in the units of the file."""
    pieces, cuts = [], []
    demand: Counter[Rect2] = Counter()
    for number, sheet in enumerate(sheets, start=1):
        panels = {"": (0, 0, sheet.w, sheet.h)}
        for line in sheet.cuts:
            x, y, w, h = panels.pop(line.of)
            first, second = line.gives
            if line.along == "x":
                cuts.append({"sheet": f"S{number}", "axis": "y", "at": y + line.at, "from": x, "to": x + w})
                panels[first], panels[second] = (x, y, w, line.at), (x, y + line.at, w, h - line.at)
            else:
                cuts.append({"sheet": f"S{number}", "axis": "x", "at": x + line.at, "from": y, "to": y + h})
                panels[first], panels[second] = (x, y, line.at, h), (x + line.at, y, w - line.at, h)
        for part in sheet.parts:
            if part.blank is not None:
                (x, y), (w, h) = part.at, part.size
                demand[(h, w) if part.turned else (w, h)] += 1
                pieces.append({"id": part.blank, "sheet": f"S{number}", "x": x, "y": y, "w": w, "h": h,
                               "rotated": part.turned})  # fmt: skip
    return {
        "sheets": [{"id": f"S{n}", "w": s.w, "h": s.h, "source": "new"} for n, s in enumerate(sheets, start=1)],
        "pieces": pieces,
        "demand": [{"w": w, "h": h, "qty": qty} for (w, h), qty in sorted(demand.items())],
        "cuts": cuts,
        "claims": {
            "sheets": len(sheets), "cuts": len(cuts), "lower_bound": bound, "optimal": len(sheets) == bound,
        },
    }  # fmt: skip


def run(room: dict[str, Any], effort: int, out: Path) -> dict[str, Any]:
    """Choose, check and write one room; returns its line of the summary."""
    began = time.perf_counter()
    bound = least_sheets(room)
    sheet = StockSize("sheet", room["sheet"]["w"], room["sheet"]["h"], 1)
    made = [field(surface, room, Candidates()) for surface in room["surfaces"]]
    choice = choose([f for f, _ in made], [sheet], effort=effort, bound=bound)
    if not choice.proven and effort >= AGAIN_FROM:
        more = [field(surface, room, even(room)) for surface in room["surfaces"]]
        other = choose([f for f, _ in more], [sheet], effort=effort, bound=bound, patience=PATIENCE)
        if (other.cost, other.num_blanks, other.num_cuts) < (choice.cost, choice.num_blanks, choice.num_cuts):
            made, choice = more, other
    seconds = time.perf_counter() - began
    surfaces = {
        pick.field: boards(pick, chosen, ways[pick.arrangement], room)
        for pick, (chosen, ways) in zip(choice.picks, made, strict=True)
    }
    layout = {
        "id": room["id"],
        "surfaces": {s: [dict(zip("xywh", rect, strict=True)) for rect in rects] for s, rects in surfaces.items()},
    }
    cutting = cutting_record(choice.sheets, bound)
    faults = check_layout(room, layout) + check_cutting(cutting, room["sheet"])
    wanted = Counter(tuple(sorted(rect[2:])) for rects in surfaces.values() for rect in rects)
    got: Counter[tuple[int, ...]] = Counter()
    for line in cutting["demand"]:
        got[tuple(sorted((line["w"], line["h"])))] += line["qty"]
    if wanted != got:
        faults.append("the pieces cut are not the boards laid")
    if faults:
        raise SystemExit(f"{room['id']}: " + "; ".join(faults))
    (out / f"{room['id']}.layout.json").write_text(json.dumps(layout))
    (out / f"{room['id']}.cutting.json").write_text(json.dumps(cutting))
    practice_sheets, practice_cuts = practice(room)
    return {
        "id": room["id"], "sheets": len(choice.sheets), "boards": choice.num_blanks, "cuts": choice.num_cuts,
        "lower_bound": bound, "proven": choice.proven, "practice_sheets": practice_sheets,
        "practice_cuts": practice_cuts, "seconds": round(seconds, 4),
    }  # fmt: skip


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("file", type=Path)
    parser.add_argument("--out", type=Path, required=True)
    parser.add_argument("--effort", type=int, default=2, choices=range(4))
    given = parser.parse_args()
    rooms = json.loads(given.file.read_text())["instances"]
    given.out.mkdir(parents=True, exist_ok=True)
    warm()
    instances = [run(room, given.effort, given.out) for room in rooms]
    summed = ("sheets", "boards", "cuts", "lower_bound", "proven", "practice_sheets", "practice_cuts")
    totals = {key: sum(line[key] for line in instances) for key in summed}
    totals |= {
        "rooms": len(instances),
        "median_seconds": median(line["seconds"] for line in instances),
        "most_seconds": max(line["seconds"] for line in instances),
        "best_known": sum(room.get("ref", {}).get("best", 0) for room in rooms),
    }
    (given.out / "summary.json").write_text(json.dumps({"totals": totals, "instances": instances}, indent=1))
    json.dump(totals, sys.stdout, indent=1)
    print()


if __name__ == "__main__":
    main()

"""A small plan made by hand: a wall of two courses with an opening, a floor of two courses, all cut and fastened.

Wall A-B, 81-1/2 x 60 in, studs at 16 in:            Floor, 62 x 50 in, on a panel with one joint at 30 in:

    +-------+-----------+                                +----+----------+
    |   3   |    4  []  |  29-1/2                        | 3  |    4     |  24-5/8
    +-------+---+-------+                                +----+----+-----+
    |     1     |   2   |  30                            |    1    |  2  |  25
    +-----------+-------+                                +---------+-----+
"""

import math
from typing import Any

import pytest

Box = tuple[float, float, float, float]
PANEL_SCREW = (30.0, 12.0)


def mm(inches: float) -> float:
    return round(inches * 16) * 1016 / 640


def ring(left: float, lower: float, right: float, upper: float) -> list[list[float]]:
    return [[mm(u), mm(v)] for u, v in ((left, lower), (right, lower), (right, upper), (left, upper))]


def hole(box: Box) -> list[list[float]]:
    return ring(*box)[::-1]


def even(start: float, end: float, most: float) -> list[float]:
    count = math.ceil((end - start) / most)
    return [start + (end - start) * index / count for index in range(count + 1)]


SLAB = (48, 23.9375)
STUDS = (0.0, 16.0, 32.0, 48.0, 64.0, 80.0)
WALL: tuple[Box, ...] = (
    (0.125, 0.25, 48.6875, 30.25),
    (48.8125, 0.25, 81.375, 30.25),
    (0.125, 30.375, 32.6875, 59.875),
    (32.8125, 30.375, 81.375, 59.875),
)
FLOOR: tuple[Box, ...] = (
    (0.125, 0.125, 40, 25.125),
    (40.125, 0.125, 61.875, 25.125),
    (0.125, 25.25, 20, 49.875),
    (20.125, 25.25, 61.875, 49.875),
)
CUT_ROUND: Box = (58.875, 43.875, 61.125, 46.125)


def wall_fasteners(box: Box) -> list[list[float]]:
    left, lower, right, upper = box
    found = []
    for stud in STUDS:
        start, end = max(stud, left + 0.4375), min(stud + 1.5, right - 0.4375)
        if start <= end:
            u = (start + end) / 2
            found += [[mm(u), mm(v)] for v in even(lower + 2.25, upper - 2.25, 7)]
    return found


def floor_fasteners(box: Box) -> list[list[float]]:
    left, lower, right, upper = box
    us, vs = even(left + 0.5, right - 0.5, 7), even(lower + 0.5, upper - 0.5, 7)
    corners = {(u, v) for u in (us[0], us[-1]) for v in (vs[0], vs[-1])}
    found = [(u, v) for u in us for v in vs if (u, v) not in corners]
    found += [(u, v) for u in (left + 2, right - 2) for v in (vs[0], vs[-1])]
    found += [(u, v) for u in (us[0], us[-1]) for v in (lower + 2, upper - 2)]
    return [[mm(u), mm(v)] for u, v in found]


def seam(a: tuple[float, float], b: tuple[float, float]) -> dict[str, Any]:
    return {"line": [[mm(a[0]), mm(a[1])], [mm(b[0]), mm(b[1])]], "width": mm(0.125), "tape": True}


def boards(surface: str, mark: str, boxes: tuple[Box, ...]) -> list[dict[str, Any]]:
    wall = mark.startswith("W")
    return [
        {
            "id": f"{surface}#{number}",
            "piece": f"P{mark}-{number}",
            "outline": ring(*box),
            "holes": [hole(CUT_ROUND)] if wall and number == 4 else [],
            # Bottom and left come from the sheet's corner; the turned third floor piece has its top there.
            "factory_edges": [2, 3] if not wall and number == 3 else [0, 3],
            "fasteners": wall_fasteners(box) if wall else floor_fasteners(box),
        }
        for number, box in enumerate(boxes, 1)
    ]


def half_seams(vertical: list[tuple[float, float, float]]) -> list[dict[str, Any]]:
    return [seam((at, lower), (at, upper)) for at, lower, upper in vertical]


def piece(board: dict[str, Any]) -> dict[str, Any]:
    left, lower = board["outline"][0]
    right, upper = board["outline"][2]

    def shifted(points: list[list[float]]) -> list[list[float]]:
        return [[round(u - left, 7), round(v - lower, 7)] for u, v in points]

    return {
        "id": board["piece"],
        "board": board["id"],
        "stock": "3x5",
        "blank": [round(right - left, 7), round(upper - lower, 7)],
        "outline": shifted(board["outline"]),
        "holes": [shifted(points) for points in board["holes"]],
        "face_up": True,
    }


def sheet(number: int, cut: dict[str, Any]) -> dict[str, Any]:
    name = f"S{number}"
    turned, spare = cut["id"] == "PF1-3", cut["id"] == "PF1-4"
    size = [mm(45), mm(30)] if spare else [mm(60), mm(36)]
    width, height = cut["blank"][::-1] if turned else cut["blank"]
    rest = [round(size[0] - width, 7), round(size[1] - height, 7)]
    return {
        "id": name,
        "stock": "3x5",
        "size": size,
        "source": "offcut:K1" if spare else "new",
        "cuts": [
            {"of": name, "along": "x", "at": height, "gives": [f"{name}a", f"{name}b"]},
            {"of": f"{name}a", "along": "y", "at": width, "gives": [f"{name}c", f"{name}d"]},
        ],
        "parts": [
            {"id": f"{name}b", "at": [0.0, height], "size": [size[0], rest[1]], "piece": None, "keep": True},
            {"id": f"{name}c", "at": [0.0, 0.0], "size": [width, height], "piece": cut["id"], "turned": turned},
            {"id": f"{name}d", "at": [width, 0.0], "size": [rest[0], height], "piece": None},
        ],
    }


def tile(name: str, box: Box, *, cut_at: float | None = None) -> dict[str, Any]:
    whole = {"id": name, "outline": ring(*box), "holes": [], "whole": cut_at is None, "stock": "slab"}
    if cut_at is None:
        return whole
    left, lower, right, upper = box
    laid, cut = ring(left, lower, left + SLAB[0], upper), ring(cut_at, 0, cut_at + right - left, upper - lower)
    return {**whole, "from": "slab 1", "laid": laid, "cut": cut}


def wall_surface() -> dict[str, Any]:
    return {
        "id": "bath/wall/A-B",
        "room": "bath",
        "kind": "wall",
        "title": "bath, wall A-B",
        "outline": ring(0, 0, 81.5, 60),
        "sides": [{"kind": "foot"}, *({"kind": "perimeter"} for _ in range(3))],
        "openings": [{"id": "valve", "kind": "box", "outline": ring(59, 44, 61, 46)}],
        "supports": [{"id": f"stud {at:g}", "kind": "stud", "outline": ring(at, 0, at + 1.5, 60)} for at in STUDS],
        "framing_axis": "v",
        "no_fastener_zones": [{"outline": ring(0, 0, 81.5, 2), "why": "tray"}],
        "panel_joints": [],
        "panel_screws": [],
        "boards": boards("bath/wall/A-B", "W1", WALL),
        "seams": [
            seam((0.125, 30.3125), (81.375, 30.3125)),
            *half_seams([(48.75, 0.25, 30.25), (32.75, 30.375, 59.875)]),
        ],
    }


def floor_surface() -> dict[str, Any]:
    return {
        "id": "bath/floor",
        "room": "bath",
        "kind": "floor",
        "title": "bath, floor",
        "outline": ring(0, 0, 62, 50),
        "sides": [{"kind": "perimeter"} for _ in range(4)],
        "openings": [],
        "supports": [{"id": "panel", "kind": "panel", "outline": ring(0, 0, 62, 50)}],
        "panel_joints": [[[mm(30), 0.0], [mm(30), mm(50)]]],
        "panel_screws": [[mm(PANEL_SCREW[0]), mm(PANEL_SCREW[1])]],
        "boards": boards("bath/floor", "F1", FLOOR),
        "seams": [
            seam((0.125, 25.1875), (61.875, 25.1875)),
            *half_seams([(40.0625, 0.125, 25.125), (20.0625, 25.25, 49.875)]),
        ],
        "tiles": [
            tile("t1", (1, 1, 49, 24.9375)),
            tile("t2", (49.125, 1, 61, 24.9375), cut_at=0),
            tile("t3", (1, 25.0625, 49, 49)),
            tile("t4", (49.125, 25.0625, 61, 49), cut_at=12),
        ],
        "soft_joints": [
            {"line": [[mm(u) for u in a], [mm(u) for u in b]], "width": mm(0.25), "why": "edge"}
            for a, b in (((1, 1), (61, 1)), ((61, 1), (61, 49)), ((61, 49), (1, 49)), ((1, 49), (1, 1)))
        ],
        "tiled": [{"tiles": ["slab"], "area": [{"outline": ring(1, 1, 61, 49)}], "joint": mm(0.125)}],
    }


@pytest.fixture
def plan() -> dict[str, Any]:
    surfaces = [wall_surface(), floor_surface()]
    pieces = [piece(board) for surface in surfaces for board in surface["boards"]]
    counted = {
        surface["kind"]: float(sum(len(board["fasteners"]) for board in surface["boards"])) for surface in surfaces
    }
    tape_feet = sum(math.dist(*found["line"]) / 304.8 for surface in surfaces for found in surface["seams"])
    return {
        "format": "firstcourse-plan",
        "version": 1,
        "job": {"name": "bath", "digest": "0" * 64, "practice": "us", "date": "2026-01-01", "tape": "inch"},
        "surfaces": surfaces,
        "pieces": pieces,
        "sheets": [sheet(number, cut) for number, cut in enumerate(pieces, 1)],
        "stock": [{"id": "3x5", "size": [mm(60), mm(36)], "thickness": mm(0.5), "kind": "fibre_cement"}],
        "tile_stock": [{"id": "slab", "size": [mm(side) for side in SLAB]}],
        "counts": {"3x5": {"used": 7, "lower_bound": 5, "proven": False}},
        "findings": [],
        "quantities": [
            {"item": "sheets 3x5", "exact": 7.0, "unit": "sheets", "buy": 7, "pack": "sheet", "working": "sheets"},
            {"item": "tiles slab", "exact": 3.0, "unit": "tiles", "buy": 3, "pack": "piece"},
            {"item": "fasteners wall", "exact": counted["wall"], "unit": "screws", "buy": 2, "pack": "box"},
            {"item": "fasteners floor", "exact": counted["floor"], "unit": "screws", "buy": 1, "pack": "box"},
            {"item": "seam tape", "exact": tape_feet, "unit": "ft", "buy": 1, "pack": "roll"},
        ],
        "workings": {"sheets": {"formula": "sheets cut", "values": {}, "result": "7", "unit": "sheets"}},
    }

"""A small plan made by hand: a wall of two courses with an opening, a floor of two courses, all cut and fastened.

Wall A-B, 81-1/2 x 60 in, studs at 16 in:            Floor, 62 x 50 in, on a panel with one joint at 30 in:

    +-------+-----------+                                +----+----------+
    |   3   |    4  []  |  29-1/2                        | 3  |    4     |  24-5/8
    +-------+---+-------+                                +----+----+-----+
    |     1     |   2   |  30                            |    1    |  2  |  25
    +-----------+-------+                                +---------+-----+
"""

import datetime
import math
from itertools import pairwise
from typing import Any

import pytest

from firstcourse.plan import sealed
from firstcourse.rules import load_rules
from firstcourse.steps.rule_notes import rule_notes
from firstcourse.units import TICKS_PER_INCH

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


def worth(width: float, height: float) -> bool:
    return min(width, height) >= mm(12)


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
            {
                "id": f"{name}b",
                "at": [0.0, height],
                "size": [size[0], rest[1]],
                "piece": None,
                "keep": worth(size[0], rest[1]),
            },
            {"id": f"{name}c", "at": [0.0, 0.0], "size": [width, height], "piece": cut["id"], "turned": turned},
            {
                "id": f"{name}d",
                "at": [width, 0.0],
                "size": [rest[0], height],
                "piece": None,
                "keep": worth(rest[0], height),
            },
        ],
    }


def tile(name: str, box: Box, *, cut_at: float | None = None) -> dict[str, Any]:
    whole = {"id": name, "outline": ring(*box), "holes": [], "whole": cut_at is None, "stock": "slab"}
    if cut_at is None:
        return whole
    left, lower, right, upper = box
    laid, cut = ring(left, lower, left + SLAB[0], upper), ring(cut_at, 0, cut_at + right - left, upper - lower)
    return {**whole, "from": "slab 1", "laid": laid, "cut": cut, "fit": True, "mark": "a"}


BOARD_LAYER = {"of": "board", "thickness": mm(0.5), "density_kg_m3": 1300.0}


def wall_surface() -> dict[str, Any]:
    return {
        "id": "bath/wall/A-B",
        "room": "bath",
        "kind": "wall",
        "outline": ring(0, 0, 81.5, 60),
        "sides": [
            {"kind": "foot", "meets": "bath/fixture/tray"},
            *({"kind": "perimeter", "meets": f"bath/{met}"} for met in ("corner/B", "ceiling", "corner/A")),
        ],
        "openings": [{"id": "valve", "kind": "box", "outline": ring(59, 44, 61, 46)}],
        "supports": [{"id": f"stud {at:g}", "kind": "stud", "outline": ring(at, 0, at + 1.5, 60)} for at in STUDS],
        "framing_axis": "v",
        "no_fastener_zones": [{"outline": ring(0, 0, 81.5, 2), "why": "above_tray"}],
        "panel_joints": [],
        "panel_screws": [],
        "boards": boards("bath/wall/A-B", "W1", WALL),
        "layers": [BOARD_LAYER],
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
        "outline": ring(0, 0, 62, 50),
        "sides": [{"kind": "perimeter", "meets": f"bath/wall/{pair}"} for pair in ("D-A", "C-D", "B-C", "A-B")],
        "openings": [],
        "supports": [{"id": "panel", "kind": "panel", "outline": ring(0, 0, 62, 50)}],
        "panel_joints": [[[mm(30), 0.0], [mm(30), mm(50)]]],
        "panel_screws": [[mm(PANEL_SCREW[0]), mm(PANEL_SCREW[1])]],
        "boards": boards("bath/floor", "F1", FLOOR),
        "layers": [{"of": "board_mortar", "thickness": 2.75, "density_kg_m3": 1600.0}, BOARD_LAYER],
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
            {
                "line": [[mm(u) for u in a], [mm(u) for u in b]],
                "width": mm(0.25),
                "why": "plane",
                "at": f"bath/floor/side/{number}",
                "place": "edge",
            }
            for number, (a, b) in enumerate(
                (((1, 1), (61, 1)), ((61, 1), (61, 49)), ((61, 49), (1, 49)), ((1, 49), (1, 1)))
            )
        ],
        "tiled": [
            {
                "tiles": ["slab"],
                "area": [{"outline": ring(1, 1, 61, 49)}],
                "joint": mm(0.125),
                "mortar": MORTAR,
                "trowel": "large",
            }
        ],
    }


MORTAR = round(0.5 * 0.5 * math.sin(math.radians(60)) / 1.0 * 16256 + 16256 / 32) / 640
"""Under slabs: what a square notch of 1/2 x 1/2 in leaves, and 1/32 in on the back [mm]."""


def wide(inches: float) -> dict[str, Any]:
    return {"value": inches * 25.4, "unit": "mm"}


def rules_named(*rules: str) -> list[dict[str, str]]:
    return [{"ref": f"rule/{rule}"} for rule in rules]


def tile_workings() -> list[dict[str, Any]]:
    """Of the slabs: their joint, the step there, their bed, their soft joints, and how many are cut."""
    at, movement = ["bath/floor", "tile_stock/slab"], "tile.movement"
    return [
        {
            "formula": "tiles-joint",
            "at": at,
            "inputs": {
                "on": {"word": "floor"},
                "narrowest": wide(1 / 16),
                "own": wide(1 / 8),
                "least": wide(1 / 16),
                "rules": rules_named("tile.joint.min_floor"),
            },
            "result": wide(1 / 8),
        },
        {
            "formula": "tiles-lippage",
            "at": at,
            "inputs": {
                "joint": wide(1 / 8),
                "by_joint": wide(1 / 32),
                "added": True,
                "rules": rules_named("tile.lippage.narrow", "tile.lippage.adds_warpage"),
            },
            "result": wide(1 / 32),
            "rule": "tile.lippage.narrow",
        },
        {
            "formula": "tiles-mortar",
            "at": at,
            "inputs": {
                "entered": False,
                "width": wide(1 / 2),
                "depth": wide(1 / 2),
                "shape": {"word": "square"},
                "land": wide(1 / 2),
                "angle": {"value": 60.0, "unit": "deg"},
                "combed": {"value": MORTAR - 25.4 / 32, "unit": "mm"},
                "back": wide(1 / 32),
                "contact": {"value": 95.0, "unit": "%"},
                "notch": rules_named("tile.trowel.large.width")[0],
            },
            "result": {"value": MORTAR, "unit": "mm"},
            "rule": "tile.contact.wet",
        },
        {
            "formula": "tiles-soft_joints",
            "at": at[:1],
            "inputs": {
                "spacing": wide(144),
                "edge": wide(1 / 4),
                "width": wide(1 / 4),
                "ways": [{"word": "level"}, {"word": "upright"}],
                "across": [0, 0],
                "extents": [wide(48), wide(60)],
                "rules": rules_named(
                    f"{movement}.change_of_plane",
                    f"{movement}.required",
                    f"{movement}.spacing_moist_floor",
                    f"{movement}.width_floor",
                    f"{movement}.width_perimeter",
                ),
            },
            "result": 4,
            "rule": f"{movement}.spacing_moist_floor",
        },
        {
            "formula": "tiles-cut",
            "at": at[1:],
            "inputs": {"pieces": 2, "kerf": wide(3 / 32), "fewest": 1},
            "result": 1,
            "rule": "tiling.kerf",
        },
    ]


Line = tuple[dict[str, Any], dict[str, Any]]


def number(value: float, unit: str = "") -> dict[str, Any]:
    """A number as plans keep it: to nine figures, in the plan's own units."""
    return {"value": float(f"{value:.9g}"), "unit": unit}


def line(
    item: str,
    exact: dict[str, Any],
    kind: str,
    size: float,
    share: float,
    inputs: dict[str, Any],
    *,
    formula: str,
    rule: str = "",
    buy: int | None = None,
    beyond: dict[str, Any] | None = None,
) -> Line:
    """A line to buy, with the working of its need."""
    packs = math.ceil(exact["value"] * (1 + share) / size) if buy is None else buy
    working = {
        "formula": f"quantities-{formula}",
        "at": [item],
        "inputs": {
            **inputs,
            "exact": exact,
            "share": number(100 * share, "%"),
            "spare": number(exact["value"] * share, exact["unit"]),
            "pack": number(size, exact["unit"]),
            "sold": {"word": kind},
            "packs": packs,
            **(beyond or {}),
        },
        "result": exact,
        "rule": rule,
    }
    quantity = {
        "item": item,
        "exact": exact["value"],
        "unit": exact["unit"],
        "buy": packs,
        "pack": {"kind": kind, **number(size, exact["unit"])},
        "working": f"quantities-{formula}@{item}",
    }
    quantity["pack"]["size"] = quantity["pack"].pop("value")
    return quantity, working


def sheets_line() -> Line:
    """Seven new sheets of 60 x 36 in for the pieces of all boards; the last comes from a kept offcut."""
    sides = [(right - left, upper - lower) for left, lower, right, upper in (*WALL, *FLOOR)]
    filled = sum(width * height for width, height in sides) / (7 * 60 * 36)
    inputs = {"pieces": 8, "offcuts": 1, "fewest": 5, "filled": number(100 * filled, "%")}
    quantity, working = line("stock/3x5", number(7, "sheet"), "sheet", 1, 0.0, inputs, formula="sheets")
    return quantity, {**working, "inputs": inputs}


def tiles_line() -> Line:
    """Two slabs set whole, one cut in two; one more for breakage, and one to keep."""
    faces = 2 * (48 + 11.875) * SLAB[1]
    return line(
        "tile_stock/slab",
        number(3, "tile"),
        "piece",
        1,
        0.03,
        {
            "whole": 2,
            "cut": 2,
            "from_whole": 1,
            "on_sheet": 1,
            "sheets": 0,
            "straight_share": number(10, "%"),
            "by_thumb_straight": math.ceil(faces / (SLAB[0] * SLAB[1]) * 1.1),
            "diagonal_share": number(15, "%"),
            "by_thumb_diagonal": math.ceil(faces / (SLAB[0] * SLAB[1]) * 1.15),
        },
        formula="tiles",
        buy=5,
        beyond={"spares": number(2, "%"), "kept": number(1, "tile"), "left": number(0, "tile")},
    )


def bought(surfaces: list[dict[str, Any]]) -> list[Line]:
    """Fasteners, mortar under floor boards and in seams, tape over seams, sealant at the wall's foot."""
    floors, walls = (
        sum(len(b["fasteners"]) for s in surfaces for b in s["boards"] if (s["kind"] == "floor") == floor)
        for floor in (True, False)
    )
    # Thicknesses are kept to a tick, 1/16256 in.
    mean = round(0.25 * 0.25 * math.sin(math.radians(60)) / 0.5 * 16256) / 16256
    under = sum(area(box) for box in FLOOR)
    seams = sum(math.dist(*found["line"]) for surface in surfaces for found in surface["seams"]) / 25.4
    litres = [volume * 0.0254**3 * 1000 for volume in (under * mean, seams * 0.125 * 0.5)]
    quarter = number(mm(0.25), "mm")
    return [
        line(
            "fasteners",
            number(floors + walls, "fastener"),
            "pack",
            185,
            0.05,
            {
                "fastener": {"name": "1-1/4 in corrosion-resistant backer-board screw"},
                "floors": floors,
                "walls": walls,
            },
            formula="fasteners",
            rule="fastening.type",
        ),
        line(
            "bedding_mortar",
            number(sum(litres) * 1.6 * 0.8, "kg"),
            "bag",
            50 * 0.45359237,
            0.1,
            {
                "area": number(under * 0.0254**2, "m2"),
                **dict.fromkeys(("w", "d", "land"), quarter),
                "angle": number(60, "deg"),
                "mean": number(mean * 25.4, "mm"),
                "under": number(litres[0], "l"),
                "seams": number(litres[1], "l"),
                "strips": number(0, "l"),
                "density": number(1600, "kg/m3"),
                "water": number(0.2),
            },
            formula="bedding_mortar",
            rule="bedding.mortar.density",
        ),
        line(
            "seam_tape",
            number(seams * 25.4, "mm"),
            "roll",
            50 * 304.8,
            0.05,
            {
                "seams": number(seams * 25.4, "mm"),
                "corners": number(0, "mm"),
                "returns": number(0, "mm"),
                "width": number(mm(2), "mm"),
            },
            formula="seam_tape",
            rule="bedding.tape.width",
        ),
        line(
            "sealant",
            number(81.5 * 0.25 * 0.25 * 2.54**3, "ml"),
            "cartridge",
            300,
            0.1,
            {"length": number(81.5 * 25.4, "mm"), "width": quarter, "depth": quarter},
            formula="sealant",
            rule="bedding.sealant.depth",
        ),
    ]


SHEET_KG = 60 * 36 * 0.5 * 0.0254**3 * 1300
RULES = load_rules(datetime.date(2026, 1, 1))
TRAVELLED = RULES.ticks("safety.lift.travel_part") / TICKS_PER_INCH
LIFT = {"HM": 10 / 15, "VM": 1 - 0.0075 * 10, "DM": 0.82 + TRAVELLED / 20, "AM": 1.0, "FM": 1.0, "CM": 0.9}
LIFTED_KG = RULES.kilograms("safety.lift.max") * math.prod(LIFT.values())
NAMED = ("safety.lift.max", "tile.contact.wet", "tile.slip.dcof")
"""Rules that findings name."""


def too_heavy() -> dict[str, Any]:
    """That a sheet is more than one person may lift."""
    return {
        "code": "QTY-101",
        "severity": "note",
        "at": ["stock/3x5"],
        "measured": number(SHEET_KG, "kg"),
        "limit": {**number(LIFTED_KG, "kg"), "sense": "most"},
        "rule": "safety.lift.max",
        "remedies": ["two"],
        "values": {"reach": number(mm(15), "mm"), "half": number(SHEET_KG / 2, "kg")},
    }


def untold(code: str, at: list[str], *wanted: str) -> dict[str, Any]:
    """What the job leaves out of its judgement."""
    values = {"wanted": [{"word": one} for one in wanted]}
    return {"code": code, "severity": "note", "at": at, "remedies": ["enter"], "values": values}


def told() -> list[dict[str, Any]]:
    """All that must be said of the slabs, of the heavy sheet and of corners that nothing checks."""
    return [
        # Slabs of 48 in leave no room for lines to snap between them.
        {"code": "TIL-134", "severity": "note", "at": ["bath/floor"]},
        untold("SUI-910", ["bath", "bath/floor"], "wants_exposure"),
        untold("SUI-910", ["bath", "bath/wall/A-B"], "wants_studs", "wants_exposure"),
        untold("SUI-130", ["bath/floor"], "slab_heights", "slab_moisture"),
        too_heavy(),
        {
            "code": "TIL-106",
            "severity": "note",
            "at": ["bath/floor"],
            "limit": {**number(95.0, "%"), "sense": "least"},
            "rule": "tile.contact.wet",
            "remedies": ["lift"],
            "values": {
                "width": number(mm(0.5), "mm"),
                "depth": number(mm(0.5), "mm"),
                "shape": {"word": "square"},
                "buttered": True,
                "back": number(0.79375, "mm"),
                "sample": 3,
            },
        },
        {
            "code": "TIL-108",
            "severity": "note",
            "at": ["bath/floor"],
            "limit": {**number(0.42), "sense": "least"},
            "rule": "tile.slip.dcof",
            "remedies": ["data_sheet"],
            "values": {"tile": {"name": "slab"}, "scale": {"word": "friction"}},
        },
        {
            "code": "SUR-102",
            "severity": "fix",
            "at": ["bath"],
            "remedies": ["tape"],
            "values": {
                "nothing": True,
                "count": 4,
                "corners": [{"name": corner} for corner in CORNERS],
                "readings": [{"name": "B-D"}],
            },
        },
    ]


def carried() -> dict[str, Any]:
    """What a sheet and all boards weigh, what one person may lift, and what is sawn of the slabs."""
    placed = sum(map(area, (*WALL, *FLOOR))) - area(CUT_ROUND)
    found = (
        {
            "formula": "sheet_mass",
            "at": ["stock/3x5"],
            "inputs": {
                "size": [number(mm(60), "mm"), number(mm(36), "mm")],
                "thickness": number(mm(0.5), "mm"),
                "density": number(1300, "kg/m3"),
                "entered": False,
            },
            "result": number(SHEET_KG, "kg"),
            "rule": "boards.density",
        },
        {"formula": "boards_mass", "at": ["job"], "result": number(placed / (60 * 36) * SHEET_KG, "kg")},
        {
            "formula": "lifting",
            "at": ["job"],
            "inputs": {
                "reach": number(mm(15), "mm"),
                "low": number(mm(20), "mm"),
                "high": number(mm(40), "mm"),
                "turn": number(0, "deg"),
                "rate": number(0.2),
                "grip": {"word": "poor"},
                "LC": number(51 * 0.45359237, "kg"),
                **{name: number(value) for name, value in LIFT.items()},
            },
            "result": number(LIFTED_KG, "kg"),
            "rule": "safety.lift.reach_best",
        },
        {
            "formula": "cuts",
            "at": ["tile_stock/slab"],
            "inputs": {
                "tiles": 2,
                "kinds": [{"word": "straight"}],
                "lengths": [number(2 * mm(SLAB[1]), "mm")],
                "in": [2],
            },
            "result": number(2 * mm(SLAB[1]), "mm"),
        },
    )
    return {
        f"quantities-{one['formula']}@{one['at'][0]}": {**one, "formula": f"quantities-{one['formula']}"}
        for one in found
    }


def area(box: Box) -> float:
    left, lower, right, upper = box
    return (right - left) * (upper - lower)


def length(inches: float, sense: str) -> dict[str, Any]:
    return {"value": mm(inches), "unit": "mm", "sense": sense}


def boarding(surface: dict[str, Any], square_inches: float) -> dict[str, Any]:
    """What a surface's boards cover, and what holds them: nothing sits nearer than this, nor farther apart."""
    kind, each = surface["kind"], [len(board["fasteners"]) for board in surface["boards"]]
    found = (
        {
            "formula": "boards-area",
            "inputs": {"boards": len(each), "sheets": [{"ref": "stock/3x5"}]},
            "result": {"value": float(f"{square_inches * 0.0254**2:.9g}"), "unit": "m2"},
        },
        {
            "formula": "boards-fasteners",
            "inputs": {
                "boards": len(each),
                "spacing": length(8, "most"),
                "edge": length(0.375, "least"),
                "corner": length(2, "least"),
                "of": [{"ref": board["id"]} for board in surface["boards"]],
                "each": each,
            },
            "result": sum(each),
            "rule": f"fastening.spacing.{kind}",
        },
    )
    return {f"{one['formula']}@{surface['id']}": {**one, "at": [surface["id"]]} for one in found}


CORNERS = dict(sorted(zip("ADCB", ring(0, 0, 62, 50), strict=True)))
"""Clockwise from above, as rooms are walked."""
DIAGONAL = math.dist(CORNERS["A"], CORNERS["C"])


def surveyed() -> dict[str, Any]:
    """Five readings fix the four corners of the floor, which are drawn as they lie."""
    places: dict[str, Any] = {
        "corner": [{"ref": f"bath/corner/{name}"} for name in CORNERS],
        "u": [{"value": u, "unit": "mm"} for u, _ in CORNERS.values()],
        "v": [{"value": v, "unit": "mm"} for _, v in CORNERS.values()],
    }
    none = {"value": 0.0, "unit": "mm"}
    found = (
        {"formula": "survey-area", "inputs": places, "result": {"value": 62 * 50 * 0.0254**2, "unit": "m2"}},
        {
            "formula": "survey-checks",
            "inputs": {
                "readings": 5,
                "corners": 4,
                "needed": 5,
                "taped_to": {"word": "untold"},
                "changed": {"name": "A-C"},
                # The nearest tick to the diagonal.
                "by": {"value": abs(round(DIAGONAL * 640) / 640 - DIAGONAL), "unit": "mm"},
            },
            "result": 0,
        },
        {"formula": "survey-square", "inputs": {**places, "moved": [none] * 4}, "result": none},
    )
    return {f"{one['formula']}@bath": {**one, "at": ["bath"]} for one in found}


def given() -> dict[str, Any]:
    """What the job says of it: its name, its tile, and that its floor and wall are there."""
    job = {
        "name": "bath",
        "date": "2026-01-01",
        "tiles": [{"id": "slab", "size": [mm(side) for side in SLAB], "joint": mm(0.125)}],
        "rooms": [
            {
                "name": "bath",
                "corners": list(CORNERS),
                "sides": {
                    f"{a}-{b}": math.dist(CORNERS[a], CORNERS[b]) for a, b in (*pairwise(CORNERS), ("D", "A"))
                },
                "diagonals": {"A-C": round(DIAGONAL * 640) / 640},
                "walls": [{"wall": "A-B", "foot": "tray"}],
                "floor": {},
            }
        ],
    }
    for rule in NAMED:
        RULES.entry(rule)
    return sealed(job, [note for note in rule_notes(RULES) if note.id in NAMED]).model_dump(mode="json")


def sheets_bound() -> dict[str, Any]:
    """What is said of the sheets: seven are cut, five are needed at least, plain practice buys eight."""
    found = (
        {"formula": "bounds-sheets", "inputs": {"used": 7, "proof": {"word": "area"}}, "result": 5},
        {
            "formula": "boards-practice",
            "inputs": {"keeps": False, "faults": [{"word": "BRD-204"}], "numbers": [2]},
            "result": 8,
        },
    )
    return {f"{one['formula']}@stock/3x5": {**one, "at": ["stock/3x5"]} for one in found}


@pytest.fixture
def plan() -> dict[str, Any]:
    surfaces = [wall_surface(), floor_surface()]
    pieces = [piece(board) for surface in surfaces for board in surface["boards"]]
    shopping = [sheets_line(), tiles_line(), *bought(surfaces)]
    return {
        "format": "firstcourse-plan",
        "version": 2,
        "job": {"name": "bath", "digest": "0" * 64, "practice": "us", "date": "2026-01-01", "tape": "inch"},
        "given": given(),
        "surfaces": surfaces,
        "pieces": pieces,
        "sheets": [sheet(number, cut) for number, cut in enumerate(pieces, 1)],
        "stock": [{"id": "3x5", "size": [mm(60), mm(36)], "thickness": mm(0.5), "kind": "fibre_cement"}],
        "tile_stock": [{"id": "slab", "size": [mm(side) for side in SLAB]}],
        "counts": {"3x5": {"used": 7, "lower_bound": 5, "proven": False}},
        "findings": told(),
        "quantities": [quantity for quantity, _ in shopping],
        "workings": {
            **boarding(surfaces[0], sum(map(area, WALL)) - area(CUT_ROUND)),
            **boarding(surfaces[1], sum(map(area, FLOOR))),
            **sheets_bound(),
            **surveyed(),
            **{quantity["working"]: working for quantity, working in shopping},
            **{f"{one['formula']}@{'+'.join(one['at'])}": one for one in tile_workings()},
            **carried(),
        },
    }

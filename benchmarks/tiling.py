"""How fast tile is laid and its start found, beside a plain reference in the same run.

    .venv/bin/python benchmarks/tiling.py [--repeats 5]

The reference lays each tile by one polygon intersection of its own; both must leave the same pieces. Times are the
best processor time of several runs [s].
"""

import argparse
import datetime
import math
import time
from collections.abc import Callable
from fractions import Fraction
from itertools import product
from typing import Any

import shapely
from shapely import Polygon, affinity, box

from firstcourse.plan import TileStock
from firstcourse.rules import load_rules
from firstcourse.tiles.lay import SPECK_MM2, lay
from firstcourse.tiles.model import RepeatCell, TileArea
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.tiles.start import find_starts
from firstcourse.units import mm

JOINT = 3.0


def cell(pattern: Any, width: float, height: float, **more: Any) -> RepeatCell:
    tile = TileStock(
        id="t",
        size=(mm(width), mm(height)),
        thickness=mm(8),
        kind="ceramic",
        joint=mm(JOINT),
        shape="hexagon" if pattern == "hexagon" else "rectangle",
    )
    return repeat_cell(pattern, [tile], JOINT, **more)


PATTERNS: list[tuple[str, RepeatCell]] = [
    ("stacked 97 x 97", cell("stacked", 97, 97)),
    ("running 1/3 197 x 97", cell("running", 197, 97, offset=Fraction(1, 3))),
    ("diagonal 97 x 97", cell("diagonal", 97, 97)),
    ("herringbone 45 197 x 97", cell("herringbone", 197, 97, angle=45)),
    ("double herringbone 197 x 47", cell("double_herringbone", 197, 47)),
    ("basket weave 197 x 97", cell("basket_weave", 197, 97)),
    ("hexagon 97", cell("hexagon", 97, 97 * 2 / math.sqrt(3))),
]


def large_floor(of: RepeatCell) -> Polygon:
    """An L-shaped floor with a column and a drain that takes some 5,000 tiles."""
    cross = abs(of.step_a[0] * of.step_b[1] - of.step_a[1] * of.step_b[0])
    side = math.sqrt(5000 * cross / len(of.pieces) / 0.83)
    outline = Polygon(
        [(0, 0), (side, 0), (side, 0.6 * side), (0.62 * side, 0.61 * side), (0.6 * side, side), (0, side)]
    )
    column = box(0.3 * side, 0.3 * side, 0.3 * side + 400, 0.3 * side + 300)
    return outline.difference(column).difference(shapely.Point(0.7 * side, 0.2 * side).buffer(75))


def plain(of: RepeatCell, shift: tuple[float, float], area: Polygon) -> list[Polygon]:
    """The pieces that stay of every tile of the plane near the area, one intersection at a time."""
    left, lower, right, upper = area.bounds
    reach = math.hypot(right - left, upper - lower) + 1000
    least = abs(of.step_a[0] * of.step_b[1] - of.step_a[1] * of.step_b[0]) / max(
        math.hypot(*of.step_a), math.hypot(*of.step_b)
    )
    number = math.ceil(reach / least)
    pieces = []
    for i, j in product(range(-number, number + 1), repeat=2):
        x = shift[0] + i * of.step_a[0] + j * of.step_b[0]
        y = shift[1] + i * of.step_a[1] + j * of.step_b[1]
        if not (left - 1000 < x < right + 1000 and lower - 1000 < y < upper + 1000):
            continue
        for piece in of.pieces:
            stays = affinity.translate(Polygon(piece.ring), x, y).intersection(area)
            pieces += [
                part for part in shapely.get_parts(stays) if part.geom_type == "Polygon" and part.area >= SPECK_MM2
            ]
    return pieces


def best(repeats: int, run: Callable[[], Any]) -> tuple[float, Any]:
    times, result = [], None
    for _ in range(repeats):
        begin = time.process_time()
        result = run()
        times.append(time.process_time() - begin)
    return min(times), result


def bathroom() -> list[tuple[str, TileArea, RepeatCell]]:
    """A floor and three walls of a tub bathroom, each with what stands in it."""
    floor = Polygon([(0, 0), (2390, 0), (2396, 740), (1500, 742), (1498, 1516), (0, 1512)])
    floor = floor.difference(shapely.Point(400, 300).buffer(55))
    back = box(0, 0, 1516, 1860).difference(box(520, 700, 875, 1055))
    end = box(0, 0, 790, 1860).difference(shapely.Point(400, 500).buffer(60))
    niche = (("u", 700.0), ("u", 1055.0), ("v", 520.0), ("v", 875.0))
    wall = cell("running", 300, 150)
    return [
        ("floor", TileArea(area=floor, uncertainty=3), cell("stacked", 297, 297)),
        ("back wall", TileArea(area=back, wanted=niche, uncertainty=3), wall),
        ("left end wall", TileArea(area=end, uncertainty=3), wall),
        ("right end wall", TileArea(area=box(0, 0, 790, 1860), uncertainty=3), wall),
    ]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--repeats", type=int, default=5)
    repeats = parser.parse_args().repeats
    print(f"{'lay a floor':30}{'tiles':>7}{'cut':>6}{'laid s':>9}{'plain s':>9}{'times':>7}")
    for name, of in PATTERNS:
        area = large_floor(of)
        took, tiles = best(repeats, lambda of=of, area=area: lay(of, (11.0, 23.0), area))
        plainly, pieces = best(1, lambda of=of, area=area: plain(of, (11.0, 23.0), area))
        same = len(pieces) == len(tiles) and math.isclose(
            sum(piece.area for piece in pieces), sum(tile.shape.area for tile in tiles), rel_tol=1e-9
        )
        if not same:
            raise SystemExit(f"{name}: {len(tiles)} pieces laid, {len(pieces)} by the reference")
        num_cut = sum(not tile.whole for tile in tiles)
        print(f"{name:30}{len(tiles):7}{num_cut:6}{took:9.3f}{plainly:9.3f}{plainly / took:7.1f}")
    rules = load_rules(datetime.date(2026, 1, 1))
    print(f"\n{'find a start':30}{'tiles':>7}{'cut':>6}{'found s':>9}")
    whole = 0.0
    for name, field, of in bathroom():
        took, starts = best(repeats, lambda of=of, field=field: find_starts(of, field, rules))
        whole += took
        print(f"{name:30}{starts[0].whole_tiles + starts[0].cut_tiles:7}{starts[0].cut_tiles:6}{took:9.3f}")
    print(f"{'bathroom, all four':43}{whole:9.3f}")
    field = bathroom()[0][1]
    for name, of in PATTERNS:
        took, starts = best(repeats, lambda of=of: find_starts(of, field, rules))
        tiles_in = starts[0].whole_tiles + starts[0].cut_tiles
        print(f"{'floor, ' + name:30}{tiles_in:7}{starts[0].cut_tiles:6}{took:9.3f}")


if __name__ == "__main__":
    main()

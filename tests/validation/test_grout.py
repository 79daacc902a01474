"""Grout by the handbook formula and by exact joint geometry, against worked examples.

Sources: a practitioners' worked post for 300 mm tile (known = read, 0.426 kg/m² printed) and module geometry
computed by hand for 25 mm mosaic: the share of joint in a module of (a + w)(b + w). The density is the post's.
The formula is high by 2 percent for the tile and by 12 percent for the mosaic.
"""

import datetime

import pytest

from firstcourse.plan import (
    Area,
    Ring,
    Side,
    SideKind,
    StartPoint,
    Surface,
    SurfaceKind,
    Tile,
    TiledArea,
    TileStock,
)
from firstcourse.rules import Override, load_rules
from firstcourse.takeoff import GROUT, count_tiles
from firstcourse.takeoff.tiled_parts import handbook_grout
from firstcourse.units import Tape, mm

DAY = datetime.date(2026, 11, 25)
CASES = [(300, 4, 10, 0.4267, 0.4183), (25, 2, 4, 1.024, 0.913)]


def square(left: float, lower: float, side: float) -> Ring:
    a, b, c, d = mm(left), mm(lower), mm(left + side), mm(lower + side)
    return ((a, b), (c, b), (c, d), (a, d))


@pytest.mark.parametrize(("side", "joint", "depth", "formula", "exact"), CASES)
def test_the_formula(side: float, joint: float, depth: float, formula: float, exact: float) -> None:
    """Printed to four decimals, hence abs=0.0005."""
    assert handbook_grout(side, side, joint, depth) * 1.6 == pytest.approx(formula, abs=0.0005)


@pytest.mark.parametrize(("side", "joint", "depth", "formula", "exact"), CASES)
def test_a_field_of_whole_modules(side: float, joint: float, depth: float, formula: float, exact: float) -> None:
    """Twenty by twenty modules as planned and counted, mass per square metre within 0.0005."""
    module = side + joint
    stock = TileStock(id="t", size=(mm(side), mm(side)), thickness=mm(depth), kind="ceramic", joint=mm(joint))
    tiles = tuple(
        Tile(id=f"{i},{k}", outline=square(i * module, k * module, side), whole=True, stock="t")
        for i in range(20)
        for k in range(20)
    )
    area = TiledArea(
        pattern="stacked",
        tiles=("t",),
        area=(Area(outline=square(0, 0, 20 * module)),),
        joint=mm(joint),
        step_a=(module, 0),
        step_b=(0, module),
        starts=(StartPoint(origin=(0, 0), smallest_cut=0, cut_tiles=0),),
    )
    surface = Surface(
        id="f",
        room="r",
        kind=SurfaceKind.FLOOR,
        outline=square(0, 0, 20 * module),
        sides=tuple(Side(kind=SideKind.PERIMETER) for _ in range(4)),
        tiles=tiles,
        tiled=(area,),
    )
    rules = load_rules(
        DAY, overrides=(Override(rule="tile.grout.density", value=1.6, reason="as in the worked example"),)
    )
    line = next(q for q in count_tiles((surface,), (stock,), rules, Tape.MM).quantities if q.item == GROUT)
    square_metres = (20 * module / 1000) ** 2
    assert line.exact / square_metres == pytest.approx(exact, abs=0.0015 / square_metres + 0.0005)


def test_density_and_shares_of_the_trade() -> None:
    """1.4 to 1.6 kg/l; 10 percent for straight and 15 percent for diagonal layouts (common practice)."""
    rules = load_rules(DAY)
    assert 1.4 <= rules.number("tile.grout.density") <= 1.6
    assert rules.number("tile.waste.straight") == 10
    assert rules.number("tile.waste.diagonal") == 15

"""One density for a sheet, whether it is carried or hangs on studs."""

import datetime

import pytest

from firstcourse.layers import LaidTile, board_density, wall_layers
from firstcourse.plan import Count, Sheet, Stock
from firstcourse.rules import load_rules
from firstcourse.takeoff import count
from firstcourse.units import Tape, inches
from firstcourse.values import measure

RULES = load_rules(datetime.date(2026, 11, 25))
TILE = LaidTile(stone=False, thickness=inches(0.3125))


def _stock(kind: str, density: float | None = None) -> Stock:
    return Stock(id="b", size=(inches(36), inches(60)), thickness=inches(0.5), kind=kind, density_kg_m3=density)


@pytest.mark.parametrize(
    ("kind", "density"),
    [("fibre_cement", 1300), ("Cement board", 1040), ("cement-board", 1040), ("coated_gypsum", 1300)],
)
def test_a_sheet_weighs_what_it_is_judged_by(kind: str, density: float) -> None:
    stock = _stock(kind)
    assert board_density(stock, RULES) == density
    assert (
        next(layer for layer in wall_layers(TILE, (stock,), RULES) if layer.name == "board").density_kg_m3
        == density
    )
    sheet = Sheet(id="S1", stock="b", source="new", size=stock.size)
    done = count((), (), (sheet,), (stock,), {"b": Count(used=1, lower_bound=1, proven=True)}, RULES, Tape.INCH)
    assert done.sheet_kg["b"] == pytest.approx(36 * 60 * 0.5 * 0.0254**3 * density)
    assert done.workings["quantities-sheet_mass@stock/b"].inputs["density"] == measure(density, "kg/m3")


def test_the_sheet_as_entered_goes_first() -> None:
    assert board_density(_stock("cement_board", 1100), RULES) == 1100

"""Masses of layers: BS 5385-1 background capacities (known = read) and plain volume × density (computed)."""

import datetime

import pytest

from firstcourse.frames import check_backing_mass
from firstcourse.layers import Layer, total_mass_kg_m2
from firstcourse.rules import load_rules

UK = load_rules(datetime.date(2026, 11, 25), "uk")


def test_uk_wall_of_ten_millimetre_tile():
    """Computed 27.5 kg/m²: plasterboard carries it, skimmed plaster does not."""
    tile = Layer(name="tile", thickness_in=10 / 25.4, density_kg_m3=2300)
    mass = total_mass_kg_m2((tile,)) + 4 + 0.5
    assert mass == pytest.approx(27.5, abs=0.001)
    assert check_backing_mass(UK, "plasterboard", mass).holds
    assert not check_backing_mass(UK, "plaster", mass).holds


def test_one_quarter_inch_board():
    """Computed: 36 x 60 in of 1/4 in board at 1300 kg/m³ is 11.504 kg."""
    board = Layer(name="board", thickness_in=0.25, density_kg_m3=1300)
    area_m2 = 60 * 36 * 0.0254**2
    assert board.mass_kg_m2 * area_m2 == pytest.approx(11.5037, abs=0.001)
    assert board.mass_psf * 15 == pytest.approx(25.3614, abs=0.001)

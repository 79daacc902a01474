"""ASCE/SEI 7, minimum design dead loads, and masses of tile layers.

asce-tile-25mm-mortar is known = read, the others as said. The standard's figures are rounded and stand for any
quarry tile and bed; layers with the rule book's densities come out lighter, by 13 in 100 at most. The check of the
dead load therefore shows each layer, and an entered thickness or density decides.
"""

import datetime

import pytest

from firstcourse.layers import Layer, total_mass_kg_m2
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))
G = 9.80665
PSF_PER_KPA = 1000 / 47.880259


def tile_on_bed(tile_mm, bed_mm):
    return (
        Layer(name="mortar bed", thickness_in=bed_mm / 25.4, density_kg_m3=RULES.number("mass.mortar_bed")),
        Layer(name="tile", thickness_in=tile_mm / 25.4, density_kg_m3=RULES.number("mass.tile")),
    )


@pytest.mark.parametrize(
    ("bed_mm", "kpa"), [(25, 1.1), (13, 0.77)], ids=["asce-tile-25mm-mortar", "asce-tile-13mm-mortar"]
)
def test_quarry_tile_on_a_mortar_bed(bed_mm, kpa):
    """13 mm: known = memory."""
    assert kpa * 0.86 <= total_mass_kg_m2(tile_on_bed(19, bed_mm)) * G / 1000 <= kpa


def test_structural_panel():
    """plywood-weight: 0.4 psf for 1/8 in; strand board has 39.5 lb/ft3 on average, as the panel specification is
    quoted, and a panel of unknown kind counts as the heavier. Tolerance: the rule has one decimal.
    """
    assert RULES.number("mass.panel") == pytest.approx(39.5 / 12, abs=0.051)
    assert RULES.number("mass.panel") >= 0.4 * 8

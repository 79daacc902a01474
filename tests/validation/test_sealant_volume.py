"""Sealant by rectangular section, and mortar to bags, against examples computed by hand."""

import datetime
import math

import pytest

from firstcourse.layers import dry_mass
from firstcourse.rules import load_rules
from firstcourse.tiles.movement import joint_section
from firstcourse.units import TICKS_PER_MM, inches, mm, to_inches

RULES = load_rules(datetime.date(2026, 11, 25))


def test_volume_and_cartridges() -> None:
    """6.4 m of 6 x 6 mm with a tenth lost: 253.44 ml, one cartridge of 300 ml."""
    section = joint_section(mm(6), mm(12), RULES)
    volume_ml = 6400 * section.width * section.depth / TICKS_PER_MM**2 / 1000 * 1.1
    assert volume_ml == pytest.approx(253.44, abs=0.01)
    assert math.ceil(volume_ml / RULES.number("tile.sealant.cartridge")) == 1


def test_feet_from_a_gallon() -> None:
    """231 cubic inches in a gallon: 308 ft of 1/4 x 1/4 in."""
    section = joint_section(inches(0.25), inches(0.5), RULES)
    assert 231 / (to_inches(section.width) * to_inches(section.depth)) / 12 == pytest.approx(308.0, abs=0.01)


def test_thin_set_to_bags() -> None:
    """120 sq ft, 3/16 in combed, 1/32 in back-buttered, 100 lb/cu ft, a fifth water, a tenth lost."""
    mass = dry_mass(120 * (0.1875 + 0.03125) / 12, mixed_density=100, water_share=0.2) * 1.1
    assert mass == pytest.approx(192.5, abs=0.01)
    assert math.ceil(mass / RULES.number("bedding.mortar.bag")) == 4

"""Textbook beam formulas; each case says where its answer comes from.

- "beam-*": textbook formulas, known = memory, answers computed by hand. Tolerances as printed digits allow.
- Gere, Mechanics of Materials, 7th ed., problem 5.6-7: known = read, published answer.
"""

import pytest

from firstcourse.frames import beams
from firstcourse.frames.joists import SIMPLE

STIFFNESS = 1_600_000 * 98.9316


def test_uniform_load():
    """beam-uniform-simple."""
    assert SIMPLE.moment * 5.555556 * 168**2 == pytest.approx(19600.0, abs=0.01)
    assert beams.uniform_deflection(5.555556, 168, STIFFNESS) == pytest.approx(0.36404, abs=5e-5)


def test_point_load_at_midspan():
    """beam-point-midspan."""
    assert beams.point_moment(300, 84, 168) == pytest.approx(12600)
    assert beams.point_deflection(300, 84, 168, STIFFNESS) == pytest.approx(0.18722, abs=5e-5)


def test_point_load_off_centre():
    """beam-point-offcentre."""
    assert beams.point_moment(300, 60, 168) == pytest.approx(11571.429, abs=0.001)


@pytest.mark.parametrize(
    ("depth", "modulus", "inertia"),
    [(5.5, 7.562, 20.8), (7.25, 13.141, 47.63), (9.25, 21.391, 98.93), (11.25, 31.641, 177.98)],
)
def test_section_values(depth, modulus, inertia):
    """beam-section-properties."""
    assert beams.section_modulus(1.5, depth) == pytest.approx(modulus, abs=0.001)
    assert beams.second_moment(1.5, depth) == pytest.approx(inertia, abs=0.01)


def test_metric_joist():
    """beam-metric-joist."""
    load = (1.5 + 0.75) * 400 / 1000
    inertia = beams.second_moment(45, 220)
    deflection = beams.uniform_deflection(load, 4200, 10000 * inertia)
    assert load == pytest.approx(0.9)
    assert inertia == pytest.approx(39_930_000)
    assert deflection == pytest.approx(9.132, abs=0.0005)
    assert 4200 / deflection == pytest.approx(459.907, abs=0.01)


def test_metric_and_inch_agree():
    """1 lb = 4.4482216152605 N and 1 in = 25.4 mm exactly, so only floating point may differ."""
    newton, mm = 4.4482216152605, 25.4
    inch = beams.uniform_deflection(5.0, 150, STIFFNESS)
    metric = beams.uniform_deflection(5.0 * newton / mm, 150 * mm, STIFFNESS * newton * mm**2)
    assert metric == pytest.approx(inch * mm, rel=1e-12)


def test_gere_5_6_7_floor_joist():
    """gere-floor-joist."""
    load = 120 * 16 / 144
    moment = SIMPLE.moment * load * (10.5 * 12) ** 2
    assert load == pytest.approx(13.333, abs=0.001)
    assert moment == pytest.approx(26460, abs=1)
    assert moment / 1350 == pytest.approx(19.6, abs=0.05)
    assert beams.section_modulus(1.5, 9.25) == pytest.approx(21.39, abs=0.01)


def test_stepped_beam_ends_in_the_plain_ones():
    plain = beams.uniform_deflection(5, 150, STIFFNESS)
    assert beams.stepped_uniform_deflection(5, 150, STIFFNESS, STIFFNESS, 0.7) == pytest.approx(plain)
    nearly_whole = beams.stepped_uniform_deflection(5, 150, STIFFNESS, 2 * STIFFNESS, 1 - 1e-9)
    assert nearly_whole == pytest.approx(plain / 2, rel=1e-6)


@pytest.mark.parametrize(("start", "length"), [(0.0, 48.0), (36.0, 48.0), (100.0, 20.0), (0.0, 144.0)])
def test_uniform_load_over_a_part_of_the_span(start, length):
    """Beam diagrams, "uniform load partially distributed": R1 = w b (2 c + b) / 2 l, M = R1 (a + R1 / 2 w).

    Known = memory. Deflection at midspan is held against point loads on a thousand slices, to 1 in 10,000.
    """
    load, span = 2.5, 144.0
    rest = span - start - length
    reaction = load * length * (2 * rest + length) / (2 * span)
    assert beams.part_reaction(load, start, length, span) == pytest.approx(reaction)
    moment = reaction * (start + reaction / (2 * load))
    assert beams.part_moment(load, start, length, span) == pytest.approx(moment)
    slices = [start + length * (number + 0.5) / 1000 for number in range(1000)]
    deflection = sum(beams.point_deflection(load * length / 1000, at, span, STIFFNESS) for at in slices)
    assert beams.part_deflection(load, start, length, span, STIFFNESS) == pytest.approx(deflection, rel=1e-4)

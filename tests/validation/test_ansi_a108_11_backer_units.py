"""Backer units: ANSI A108.11 as summarised by a trade foundation (known = read); values exact, no tolerance.

The setback above a tub is a project specification's (known = read), stud spacing and fibre-cement densities are
from memory (known = memory). Usual masses are ranges from memory, met to the figures they are printed with.
"""

import datetime

import pytest

from firstcourse.layers import Layer
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))


@pytest.mark.parametrize(
    ("rule", "inches"),
    [
        ("panel.layer.min", 19 / 32),
        ("boards.stagger.end_joints", 16),
        ("boards.offset.panel_joints", 8),
        ("fastening.spacing.floor", 8),
        ("bedding.tape.width", 2),
        ("boards.gap.foot", 0.25),
        ("framing.stud_spacing.max", 16),
    ],
)
def test_distances(rule, inches):
    assert RULES.number(rule) == pytest.approx(inches, abs=1e-9)


def test_fasteners():
    """Corrosion-resistant screws of 1-1/4 in or more; edges from 3/8 in."""
    assert RULES.text("fastening.type").startswith("1-1/4 in corrosion-resistant")
    assert 3 / 8 <= RULES.number("fastening.edge.min") <= 5 / 8


@pytest.mark.parametrize(
    ("density_rule", "thickness_in", "least_psf", "most_psf"),
    [("boards.density", 0.25, 1.7, 2.0), ("mass.board.cement_board", 0.5, 2.2, 3.2)],
)
def test_usual_masses(density_rule, thickness_in, least_psf, most_psf):
    """1/4 in fibre cement 1.7 to 2.0 psf, 1/2 in cement board 2.2 to 3.2 psf (known = memory)."""
    board = Layer(name="board", thickness_in=thickness_in, density_kg_m3=RULES.number(density_rule))
    assert least_psf <= round(board.mass_psf, 1) <= most_psf


def test_density_of_fibre_cement():
    """ISO 8336 category C: 1150 to 1450 kg/m³ is usual (known = memory)."""
    assert 1150 <= RULES.number("boards.density") <= 1450

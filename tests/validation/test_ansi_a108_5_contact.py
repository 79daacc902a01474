"""Contact and bed thickness against ANSI A108.5 and the trade's summaries of it (known = read), and notches.

The notch values are computed by hand from ridge geometry, section x sin(angle) / (width + land), to four decimals.
"""

import datetime

import pytest

from firstcourse.layers.combed import notch_mean
from firstcourse.rules import load_rules
from firstcourse.units import inches

RULES = load_rules(datetime.date(2026, 11, 25))


def test_contact() -> None:
    """2.2.3: 80 percent dry inside, 95 percent wet or outside; stone 95 percent; three tiles lifted."""
    assert RULES.number("tile.contact.dry") == 80
    assert RULES.number("tile.contact.wet") == 95
    assert RULES.number("tile.contact.stone") == 95
    assert RULES.number("tile.contact.sample") == 3


def test_thickness_of_the_set_bed() -> None:
    """2.2.2: 3/32 in at least; 1/4 in at most for thin bed, 1/2 in for large and heavy tile mortar."""
    assert RULES.ticks("tile.bed.min") == inches(3 / 32)
    assert RULES.ticks("tile.bed.max_thin") == inches(0.25)
    assert RULES.ticks("tile.bed.max_large") == inches(0.5)


@pytest.mark.parametrize(("angle", "meets"), [(90, True), (60, True), (45, False)])
def test_a_quarter_inch_square_notch_against_the_least_bed(angle: float, meets: bool) -> None:
    """Held at 45 degrees it leaves less than 3/32 in even with full collapse."""
    thickness = notch_mean("square", width=0.25, depth=0.25, land=0.25, angle_deg=angle)
    assert (thickness >= 0.09375) == meets


def test_a_u_notch() -> None:
    """1/2 in U notch, 1/2 in deep and 1/2 in apart at 90 degrees: 0.22317 in."""
    assert notch_mean("U", width=0.5, depth=0.5, land=0.5, angle_deg=90) == pytest.approx(0.22317, abs=1e-4)


def test_wet_friction() -> None:
    """ANSI A137.1-2012, now A326.3: 0.42 for level interior floors walked on wet."""
    assert RULES.number("tile.slip.dcof") == 0.42

"""Ridge geometry of notched trowels and volumes of mortar and sealant, against worked examples computed by hand.

Source of the formulas: ridge geometry, width x depth x sin(angle) / (width + land); volume to bags.
"""

import math

import pytest

from firstcourse.layers import dry_mass
from firstcourse.layers.mortar import mean_thickness


@pytest.mark.parametrize(
    ("width", "depth", "land", "angle", "expected"),
    [
        (0.25, 0.25, 0.25, 90, 0.125),
        (0.25, 0.25, 0.25, 60, 0.10825),
        (0.25, 0.25, 0.25, 45, 0.08839),
        (0.25, 0.375, 0.25, 90, 0.1875),
        (0.25, 0.375, 0.25, 60, 0.16238),
        (0.25, 0.375, 0.25, 45, 0.13258),
        (0.5, 0.5, 0.5, 90, 0.25),
        (0.5, 0.5, 0.5, 45, 0.17678),
    ],
)
def test_square_notches(width: float, depth: float, land: float, angle: float, expected: float) -> None:
    found = mean_thickness(notch_width=width, notch_depth=depth, land=land, angle_deg=angle)
    assert found == pytest.approx(expected, abs=1e-4)


@pytest.mark.parametrize(("angle", "cubic_feet"), [(90, 2.0833), (45, 1.4731)])
def test_volume_over_a_hundred_square_feet(angle: float, cubic_feet: float) -> None:
    thickness = mean_thickness(notch_width=0.5, notch_depth=0.5, land=0.5, angle_deg=angle)
    assert 100 * thickness / 12 == pytest.approx(cubic_feet, abs=1e-4)


def test_volume_to_bags() -> None:
    volume = 120 * (0.1875 + 0.03125) / 12
    assert volume == pytest.approx(2.1875)
    needed = dry_mass(volume, mixed_density=100, water_share=0.2) * 1.1
    assert needed == pytest.approx(192.5)
    assert math.ceil(needed / 50) == 4

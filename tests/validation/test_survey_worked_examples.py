"""Published and hand-computed survey examples; each case names its source.

- "Braced quadrilateral, six distances, five unknowns, equal weights" (computed by hand).
- Norrdine, An algebraic solution to the multilateration problem (2012), points taken in plan.
- Mahun, open surveying course, coordinate areas.
- Bretschneider's formula against coordinates, a leaning room.
"""

import math

import pytest

from firstcourse.geometry import area2
from firstcourse.survey import Reading, adjust


def readings(lengths, sigma=1.0):
    return [
        Reading(one=pair[0], other=pair[1], length_mm=length, sigma_mm=sigma) for pair, length in lengths.items()
    ]


def test_room_of_four_sides_and_two_diagonals():
    """Source: braced quadrilateral, six distances, five unknowns, equal weights; computed."""
    given = {"AB": 2438.0, "BC": 1830.0, "CD": 2433.0, "DA": 1825.0, "AC": 3051.0, "BD": 3046.0}
    done = adjust("ABCD", readings(given), limit=3.29)
    assert done.corners_mm["B"] == pytest.approx((2439.439, 0.0), abs=0.01)
    # The example has its v axis the other way.
    assert done.corners_mm["C"] == pytest.approx((2438.186, -1831.079), abs=0.01)
    assert done.corners_mm["D"] == pytest.approx((3.749, -1826.079), abs=0.01)
    found = [residual.residual_mm for residual in done.residuals]
    assert found == pytest.approx([1.439, 1.08, 1.442, 1.083, -1.803, -1.8], abs=0.01)
    assert sum(value**2 for value in found) == pytest.approx(12.9816, abs=0.01)
    corners = [done.corners_mm[name] for name in "ABCD"]
    doubled = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(corners, corners[1:] + corners[:1], strict=True))
    assert abs(doubled) / 2 == pytest.approx(4456131.0, abs=50)


def test_leaning_room_has_the_area_of_its_coordinates():
    """Source: Bretschneider by angles, by diagonals and by coordinates agree; computed."""
    given = {
        "AB": 3000.0667,
        "BC": 2410.3319,
        "CD": 2975.1513,
        "DA": 2400.0469,
        "AC": 3829.6867,
        "BD": 3841.175,
    }
    done = adjust("ABCD", readings(given), limit=3.29)
    corners = [done.corners_mm[name] for name in "ABCD"]
    doubled = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(corners, corners[1:] + corners[:1], strict=True))
    assert abs(doubled) / 2 == pytest.approx(7185625.0, abs=30)


def test_position_from_exact_distances():
    """Source: Norrdine (2012), true position and reference points, taken in plan; distances computed."""
    points = {"A": (27.297, -4.953), "B": (20.693, -4.849), "C": (22.59, 0.524), "P": (26.759, -1.342)}
    order = "BCPA"  # clockwise seen from above
    pairs = ("BC", "CP", "PA", "AB", "BP", "CA")
    given = {pair: 1000 * math.dist(points[pair[0]], points[pair[1]]) for pair in pairs}
    done = adjust(order, readings(given), limit=3.29)
    for one in order:
        for other in order:
            assert math.dist(done.corners_mm[one], done.corners_mm[other]) == pytest.approx(
                1000 * math.dist(points[one], points[other]), abs=0.01
            )


@pytest.mark.parametrize(
    ("north_east", "published", "within"),
    [
        (
            [(406.31, 1259.97), (235.12, 1489.47), (65.81, 1126.4), (317.89, 942.04), (675.32, 1282.54)],
            140494,
            2,
        ),
        ([(500.0, 2000.0), (323.614, 1561.426), (526.996, 1488.321), (719.336, 1686.956)], 102935.7, 0.5),
        ([(0.0, 0.0), (0.0, 300.0), (200.0, 300.0), (200.0, 0.0)], 60000, 0.001),
    ],
    ids=["Mahun, five corners", "Mahun, traverse example 1", "FE surveying study guide, rectangle"],
)
def test_area_by_coordinates(north_east, published, within):
    """Sources: Mahun, open surveying course; FE surveying study guide. Feet, read to 1/1000 ft."""
    ring = tuple((round(east * 1000), round(north * 1000)) for north, east in north_east)
    assert abs(area2(ring)) / 2 / 1e6 == pytest.approx(published, abs=within)

"""A framing guide's chart of floor joists, No. 2 lumber, drawn from the International Residential Code 2012.

Known = read. Loads are 40 + 10 and 30 + 10 psf, L/360. Only hem-fir and spruce-pine-fir are held against it:
values of southern pine were lowered in 2013, and of Douglas fir-larch the chart follows older ones. Misprint:
hem-fir 2x12 at 19.2 in under 40 psf reads 16-10, longer than spruce-pine-fir's 16-3; the method gives 16-1, so a
nought was added. Tolerance: whole inches, rounded to the nearest, so half an inch is exact.
"""

import pytest
from spans import computed_span_in

SIZES = ("2x8", "2x10", "2x12")
CHART = [
    ("hf", 12, 40, ("13-2", "16-10", "20-4")),
    ("hf", 16, 40, ("12-0", "15-2", "17-7")),
    ("hf", 19.2, 40, ("11-3", "13-10", None)),
    ("hf", 24, 40, ("10-2", "12-5", "14-4")),
    ("spf", 12, 40, ("13-6", "17-3", "20-7")),
    ("spf", 16, 40, ("12-3", "15-5", "17-10")),
    ("spf", 19.2, 40, ("11-6", "14-1", "16-3")),
    ("spf", 24, 40, ("10-3", "12-7", "14-7")),
    ("hf", 12, 30, ("14-6", "18-6", "22-6")),
    ("hf", 16, 30, ("13-2", "16-10", "19-8")),
    ("spf", 12, 30, ("14-11", "19-0", "23-0")),
]
ROWS = [
    (species, size, spacing, live, printed)
    for species, spacing, live, line in CHART
    for size, printed in zip(SIZES, line, strict=True)
    if printed is not None
]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: "-".join(map(str, row)))
def test_span_is_the_printed_inch(row):
    species, size, spacing, live, printed = row
    feet, inches = map(int, printed.split("-"))
    computed = computed_span_in((species, "no2", size, spacing, live, 10, 360, None))
    assert computed == pytest.approx(12 * feet + inches, abs=0.5)

"""IRC Table R502.3.1(2), spruce-pine-fir floor joists, 40 psf live, L/360. Read in a public copy.

Tolerance: the tables print whole inches, rounded to the nearest, so half an inch is exact.
"""

import pytest
from spans import computed_span_in, table

TABLE = table("irc_r502_3_1_2_floor_spf")


def test_how_the_table_is_known_is_stated():
    assert TABLE["known"] == "read"


@pytest.mark.parametrize("row", TABLE["rows"], ids=lambda row: "-".join(map(str, row[:6])))
def test_span_is_the_printed_inch(row):
    assert computed_span_in(row) == pytest.approx(row[-1], abs=0.5)

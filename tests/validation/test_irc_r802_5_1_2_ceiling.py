"""IRC 2018 Table R802.5.1(2), printed page 405: ceiling joists, 20 + 10 psf, L/240. Read.

Tolerance: the tables print whole inches, rounded to the nearest, so half an inch is exact.
"""

import pytest
from spans import computed_span_in, table

TABLE = table("irc_r802_5_1_2_ceiling")


def test_how_the_table_is_known_is_stated():
    assert TABLE["known"] == "read"


@pytest.mark.parametrize("row", TABLE["rows"], ids=lambda row: "-".join(map(str, row[:6])))
def test_span_is_the_printed_inch(row):
    assert computed_span_in(row) == pytest.approx(row[-1], abs=0.5)

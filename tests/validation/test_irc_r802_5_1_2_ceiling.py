"""IRC 2018 Table R802.5.1(2), printed page 405: ceiling joists, 20 + 10 psf, L/240. Read.

Tolerance: the tables print whole inches, rounded to the nearest, so half an inch is exact.
The rows hold irc-ceiling-20-10-* and span-batch-ceiling-20-10-l240.
span-rounding, span-deflection-load and span-clear-definition say how: live load alone in deflection, live and dead
in bending, clear spans from face to face.
"""

import pytest
from spans import computed_span_in, table

TABLE = table("irc_r802_5_1_2_ceiling")


@pytest.mark.parametrize("row", TABLE["rows"], ids=lambda row: "-".join(map(str, row[:6])))
def test_span_is_the_printed_inch(row):
    assert computed_span_in(row) == pytest.approx(row[-1], abs=0.5)

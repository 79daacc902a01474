"""IRC Table R502.3.1(2), spruce-pine-fir floor joists, 40 psf live, L/360. Read in a public copy.

Tolerance: the tables print whole inches, rounded to the nearest, so half an inch is exact.
The rows hold irc-floor-40-{10,20}-spf2-* and span-batch-floor-spf-40-l360.
span-rounding, span-deflection-load and span-clear-definition say how: live load alone in deflection, live and dead
in bending, clear spans from face to face.
"""

import pytest
from spans import computed_span_in, table

TABLE = table("irc_r502_3_1_2_floor_spf")


@pytest.mark.parametrize("row", TABLE["rows"], ids=lambda row: "-".join(map(str, row[:6])))
def test_span_is_the_printed_inch(row):
    assert computed_span_in(row) == pytest.approx(row[-1], abs=0.5)

"""An edge over a joist that slants by a degree was asked half way alone, where the joist bore it; its end hung.

The plan did not verify. Where a member runs otherwise than the edge, the edge is asked all along.
"""

import datetime

from firstcourse.boards.edges import EdgeRules, bare_parts
from firstcourse.geometry import bounds
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))
LIMITS = EdgeRules(
    bearing=RULES.ticks("boards.bearing.min"),
    reach=RULES.ticks("boards.edge.reach"),
    fastener=RULES.ticks("fastening.edge.min"),
    short=RULES.ticks("boards.edge.short"),
    pierced=0,
)
JOIST = ((3616, 290163), (3233, 265782), (1312467, 245212), (1312850, 269593))
EDGE = ((857017, 285498), (32565, 285498))


def test_the_end_that_the_joist_leaves_hangs() -> None:
    (run,) = bare_parts(*EDGE, [JOIST], LIMITS)
    left, _, right, _ = bounds(run)
    assert EDGE[1][0] < left < right == EDGE[0][0]


def test_a_joist_along_the_edge_bears_all_of_it() -> None:
    joist = tuple((u, 285498 - 24000 if v < 268000 else 285498) for u, v in JOIST)
    assert bare_parts(*EDGE, [joist], LIMITS) == []

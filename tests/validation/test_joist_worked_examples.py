"""Single joists worked with the simple-beam method and NDS Supplement 2018 design values.

Deflections and stresses: known = memory, computed; tolerance 0.005 of the printed figure. Spans: the IRC tables'
unrounded spans, known as each row says; tolerance 0.02 in.
"""

import datetime

import pytest

from firstcourse.frames.joist_checks import check_joist
from firstcourse.frames.joists import Joist, allowable_bending_psi, governing, max_spans_in
from firstcourse.frames.lumber import lumber
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))
CODE = ("floor.deflection.live_code",)

SPANS = [
    ("spf", "no2", "2x8", 16, 40, 10, 360, 147.38, "live_deflection", "read"),
    ("spf", "no2", "2x6", 16, 40, 10, 360, 111.8, "live_deflection", "read"),
    ("spf", "no2", "2x10", 24, 40, 20, 360, 137.63, "bending", "read"),
    ("spf", "no2", "2x12", 16, 40, 20, 360, 195.46, "bending", "read"),
    ("spf", "ss", "2x10", 19.2, 40, 20, 360, 181.06, "live_deflection", "read"),
    ("dfl", "no1", "2x6", 19.2, 20, 10, 240, 150.37, "bending", "read"),
    ("sp", "no2", "2x10", 24, 20, 10, 240, 177.45, "bending", "read"),
    ("dfl", "ss", "2x8", 24, 20, 10, 240, 205.58, "live_deflection", "read"),
    ("dfl", "no2", "2x12", 16, 40, 10, 360, 217.16, "bending", "memory"),
    ("sp", "no2", "2x10", 16, 40, 10, 360, 168.34, "bending", "memory"),
    ("hf", "no2", "2x10", 16, 40, 10, 360, 181.99, "bending", "memory"),
    ("dfl", "no2", "2x10", 16, 40, 10, 360, 187.27, "bending", "memory"),
    ("dfl", "no2", "2x10", 16, 40, 10, 480, 178.62, "live_deflection", "memory"),
    ("dfl", "no2", "2x10", 16, 40, 10, 720, 156.04, "live_deflection", "memory"),
]


IDS = [
    "span-spf2-2x8-16-40-10",
    "span-spf2-2x6-16-40-10",
    "span-spf2-2x10-24-40-20",
    "span-spf2-2x12-16-40-20",
    "span-spf-ss-2x10-19p2-40-20",
    "span-dfl1-2x6-19p2-20-10-l240",
    "span-sp2-2x10-24-20-10-l240",
    "span-dfl-ss-2x8-24-20-10-l240",
    "span-dfl2-2x12-16-40-10",
    "span-sp2-2x10-16-40-10",
    "span-hf2-2x10-16-40-10",
    "span-dfl2-2x10-16-stone L/360",
    "span-dfl2-2x10-16-stone L/480",
    "span-dfl2-2x10-16-stone L/720",
]


@pytest.mark.parametrize("row", SPANS, ids=IDS)
def test_span_and_what_governs(row):
    species, grade, size, spacing, live, dead, divisor, span, governs, _known = row
    joist = Joist(
        span_in=100, spacing_in=spacing, live_psf=live, dead_psf=dead, wood=lumber(RULES, size, species, grade)
    )
    spans = max_spans_in(RULES, joist, divisor)
    why = governing(spans)
    found = spans[why]
    assert found == pytest.approx(span, abs=0.02)
    assert why == governs


def test_withdrawn_southern_pine_values_are_not_used():
    """sp-2x10-16-pre2013-trap: a chart with values from before June 2013 prints 16-1; today's span is 14-0."""
    joist = Joist(span_in=100, spacing_in=16, live_psf=40, dead_psf=10, wood=lumber(RULES, "2x10", "sp", "no2"))
    assert min(max_spans_in(RULES, joist, 360).values()) < 193 - 12


@pytest.mark.parametrize(
    ("size", "species", "span", "dead", "live_ratio", "total_ratio", "stress", "allowed"),
    [
        ("2x8", "hf", 144, 20, 358.363, 238.909, 1315.006, 1173.0),
        ("2x10", "sp", 168, 10, 504.753, 403.803, 916.289, 920.0),
    ],
    ids=["joist-2x8-hf2-16-12ft-dead20", "joist-2x10-sp2-16-14ft"],
)
def test_deflection_and_stress(size, species, span, dead, live_ratio, total_ratio, stress, allowed):
    wood = lumber(RULES, size, species, "no2")
    joist = Joist(span_in=span, spacing_in=16, live_psf=40, dead_psf=dead, wood=wood)
    found = {check.name: check.found for check in check_joist(RULES, joist, CODE)}
    assert found["live_deflection_code"] == pytest.approx(live_ratio, abs=0.005)
    assert found["total_deflection"] == pytest.approx(total_ratio, abs=0.005)
    assert found["bending"] == pytest.approx(stress, abs=0.005)
    assert allowable_bending_psi(RULES, wood, 16) == pytest.approx(allowed, abs=0.005)

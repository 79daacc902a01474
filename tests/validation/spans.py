"""Published joist spans read from a data file, and the span this program computes for each row."""

import datetime
import tomllib
from pathlib import Path

from firstcourse.frames.joists import Joist, max_spans_in
from firstcourse.frames.lumber import lumber
from firstcourse.rules import load_rules

RULES = load_rules(datetime.date(2026, 11, 25))
DATA = Path(__file__).parent / "data"


def table(name):
    return tomllib.loads((DATA / f"{name}.toml").read_text(encoding="utf-8"))


def computed_span_in(row):
    species, grade, size, spacing, live, dead, divisor, _span = row
    joist = Joist(
        span_in=120,
        spacing_in=spacing,
        live_psf=live,
        dead_psf=dead,
        wood=lumber(RULES, size, species, grade),
    )
    return min(max_spans_in(RULES, joist, divisor).values())

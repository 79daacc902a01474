"""The finding that says why a sliver stands where one does."""

import datetime
from dataclasses import replace

from firstcourse.plan import TileStock
from firstcourse.rules import load_rules
from firstcourse.tiles.model import Start
from firstcourse.tiles.patterns import repeat_cell
from firstcourse.tiles.slivers import sliver_findings
from firstcourse.units import Tape, mm
from said import all_said

RULES = load_rules(datetime.date(2026, 11, 25))
TILE = TileStock(id="t", size=(mm(300), mm(300)), thickness=mm(9), kind="porcelain", joint=mm(3))
CELL = repeat_cell("stacked", [TILE], 3.0)
SLIVER = Start(
    shift=(0.0, 0.0),
    smallest_cut=20.0,
    slack=0.0,
    cut_tiles=4,
    whole_tiles=9,
    penalty=20.0,
    sliver=True,
    narrowest=20.0,
    poorest="bath/wall/A-B",
    num_laid=7,
)
GOOD = replace(SLIVER, sliver=False, narrowest=0.0, smallest_cut=180.0, cut_tiles=16, poorest="")


def test_a_good_start_has_no_finding() -> None:
    assert not list(all_said(sliver_findings([GOOD, SLIVER], CELL, "bath/floor", False, RULES), Tape.MM))


def test_the_reason_is_said() -> None:
    (one,) = all_said(sliver_findings([SLIVER, SLIVER], CELL, "bath/floor", False, RULES), Tape.MM)
    assert one.code == "TIL-121" and one.severity == "note" and one.rule == "tiling.start.least_cut"
    assert one.measured == "smallest cut 20 mm" and one.limit == "at least 51 mm, of a small tile 33% of it"
    assert "at wall A-B" in one.message and "Of 7 starts tried none is without one" in one.message
    (given,) = all_said(sliver_findings([SLIVER], CELL, "bath/floor", True, RULES), Tape.MM)
    assert "the job gives" in given.message
    (other,) = all_said(sliver_findings([SLIVER, GOOD], CELL, "bath/floor", False, RULES), Tape.MM)
    assert "instead 1, cuts 12 more tiles; up to 10 more are taken" in other.message
    plank = TILE.model_copy(update={"size": (mm(297), mm(77))})
    herringbone = repeat_cell("herringbone", [plank], 3.0)
    (many,) = all_said(sliver_findings([SLIVER], herringbone, "bath/floor", False, RULES), Tape.MM)
    assert "many ways" in many.message


def test_what_is_measured_falls_short_of_the_limit_as_the_tape_reads() -> None:
    poor = replace(SLIVER, smallest_cut=50.79, narrowest=50.79)
    (metric,) = all_said(sliver_findings([poor], CELL, "bath/floor", False, RULES), Tape.MM)
    assert (metric.measured, metric.limit[:14]) == ("smallest cut 50 mm", "at least 51 mm")
    (inch,) = all_said(sliver_findings([poor], CELL, "bath/floor", False, RULES), Tape.INCH)
    assert (inch.measured, inch.limit[:11]) == ('smallest cut 1-15/16"', 'at least 2"')


def test_a_sliver_beside_smaller_tiles_is_told_as_what_it_is() -> None:
    beside = replace(SLIVER, smallest_cut=15.0, narrowest=30.0)
    (one,) = all_said(sliver_findings([beside], CELL, "bath/floor", False, RULES), Tape.MM)
    assert one.measured == "the sliver 30 mm"

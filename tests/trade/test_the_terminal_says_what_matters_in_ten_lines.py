"""`plan` printed fifty lines: the list to buy, every note with its source, and last what stops the work."""

from pathlib import Path

import pytest

from example_plans import result_of
from firstcourse.app.summaries import PlanSummary, StockUse, summarize
from firstcourse.cli.plan import MOST_LINES, summary_lines
from firstcourse.findings import Finding, Severity
from firstcourse.plan import Pack, Quantity
from firstcourse.units import Tape
from firstcourse.values import Name
from firstcourse.words import Speaker, speaker_for

EXAMPLES = Path(__file__).parents[2] / "examples"
SPEAKER = Speaker("us", Tape.INCH)


def finding(number: int, severity: str) -> Finding:
    return Finding(
        code="SUR-106",
        severity=Severity(severity),
        at=(f"bath/wall/{number}",),
        remedies=("tape_gap",),
        values={"thing": Name(name=f"kerb {number}")},
    )


def summary(*findings: Finding, changes: tuple[str, ...] = ()) -> PlanSummary:
    bought = ("tile_mortar", "grout", "sealant", "seam_tape", "joint_sealant", "edge_trim", "spacers", "liner")
    sheets = Quantity(
        item="stock/board", exact=4, unit="sheet", buy=4, pack=Pack(kind="sheet", size=1, unit="sheet")
    )
    return PlanSummary(
        job="bath",
        digest="",
        changes=changes,
        boards=9,
        sheets=4,
        offcuts_used=0,
        cuts=7,
        fasteners=120,
        whole=94,
        cut=12,
        stock=(StockUse(id="board", used=4, lower_bound=4, proven=True, fewest=True, practice=5),),
        practice=(),
        quantities=(
            sheets,
            *(
                Quantity(item=name, exact=1.5, unit="kg", buy=2, pack=Pack(kind="bag", size=1, unit="kg"))
                for name in bought
            ),
        ),
        findings=findings,
    )


def test_what_stops_the_work_comes_first_and_all_the_rest_is_counted() -> None:
    many = [finding(number, "note") for number in range(30)]
    many += [finding(number, "fix") for number in range(30, 50)] + [finding(50, "stop"), finding(51, "stop")]
    lines = summary_lines(summary(*many, changes=("a.rule 3 in: why", "b.rule 4 in: why")), Path("out"), SPEAKER)
    assert len(lines) == MOST_LINES
    stops = [line for line in lines if line.startswith("STOPS THE WORK")]
    assert stops == [
        f"STOPS THE WORK SUR-106  bath: wall {number}: As taped the curb {number} would not end at this wall; "
        "it is taken to stand at it. Do: If it does stand off the wall, tape the gap: what is wider than the "
        "limit is drawn as it is."
        for number in (50, 51)
    ]
    fixes = [line for line in lines if line.startswith("To fix ")]
    assert all(lines.index(stops[1]) < lines.index(line) for line in fixes)
    assert f"{20 - len(fixes)} more to fix" in lines
    assert "To know: 30 notes in the site pack." in lines
    assert "Changed for this job: a.rule 3 in: why; and 1 more rule" in lines


def test_stops_that_have_no_room_are_counted_as_such() -> None:
    lines = summary_lines(summary(*(finding(number, "stop") for number in range(20))), Path("out"), SPEAKER)
    shown = sum(line.startswith("STOPS THE WORK") for line in lines)
    assert shown and f"{20 - shown} more to fix, {20 - shown} of them stop the work" in lines
    assert len(lines) <= MOST_LINES


def test_where_nothing_is_wrong_that_is_said_once() -> None:
    lines = summary_lines(summary(), Path("out"), SPEAKER)
    assert lines.count("Nothing stops the work.") == 1 and len(lines) <= MOST_LINES
    assert any("2 × thinset, 2 × grout" in line and "2 more" in line for line in lines)


@pytest.mark.parametrize("name", ["tub-bathroom", "limber-floor"])
def test_a_real_plan_takes_ten_lines_and_says_where_the_rest_is(name: str) -> None:
    result = result_of(name)
    lines = summary_lines(summarize(result), Path("out"), speaker_for(result.plan))
    assert len(lines) <= MOST_LINES
    assert sum("site-pack-letter.pdf" in line for line in lines) == 1
    assert any("office-pack-letter.pdf" in line and "firstcourse verify out" in line for line in lines)
    stops = sum(found.severity == "stop" for found in result.plan.findings)
    assert any(line.startswith("STOPS THE WORK") for line in lines) == bool(stops)

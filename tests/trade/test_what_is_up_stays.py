"""Who had three boards up and found a stud 2 in off got the wall planned anew, over boards that were up.

The job says now which boards are up. The next plan keeps them to the tick and lays the rest round them; what was
planned stays where it was as far as the framing lets it, with its number; what is up and lost its stud is told.
"""

import copy
import json
import re
from typing import Any

import pytest

import firstcourse
from firstcourse.drawings import draw_surface
from firstcourse.errors import InputValueError, JobError
from firstcourse.findings import Finding
from firstcourse.papers.site_pack import pack_data
from firstcourse.plan import Plan
from firstcourse.steps import PlanResult
from proving import verify
from sealing import reseal

INCH = 16_256
STUDS = [0.75, 16, 32, 48, 64, 80, 96, 112, 121.25]
REST = "bottom: 1 in, width: 36 in, height: 60 in"
LONG, SHORT = "bath/wall/A-B", "bath/wall/B-C"


def job(studs: list[float], more: str = "") -> str:
    members = ", ".join(f"{{at: {at} in}}" for at in studs)
    return f"""# two walls of our own
name: two walls
date: 2026-11-25
tape: inch
stock:
  - {{id: board, size: [36 in, 60 in], thickness: 1/2 in}}   # as at the yard
rooms:
  - name: bath
    corners: [A, B, C, D]
    sides: {{A-B: 122 in, B-C: 60 in, C-D: 122 in, D-A: 60 in}}
    diagonals: {{A-C: 135 15/16 in, B-D: 135 15/16 in}}
    height: 96 in
    walls:
      - {{wall: A-B, foot: floor, framing: {{members: [{members}]}}}}
      - {{wall: B-C, foot: floor, framing: {{spacing: 16 in, first: 16 in}}}}
{more}"""


def session(text: str) -> firstcourse.Session:
    return firstcourse.Session(text)


@pytest.fixture(scope="module")
def first() -> PlanResult:
    return session(job(STUDS)).plan(effort=0)


@pytest.fixture(scope="module")
def three_up(first: PlanResult) -> PlanResult:
    opened = session(job(STUDS))
    opened.mark_done(first.plan, boards=["W1-1", "W1-2", "W1-5"])
    return opened.plan(effort=0)


def replanned(first: PlanResult, up: list[str], studs: list[float], taken_out: tuple[str, ...] = ()) -> PlanResult:
    """The plan after some boards went up and the studs were found elsewhere."""
    opened = session(job(STUDS))
    opened.mark_done(first.plan, boards=up)
    if taken_out:
        opened.mark_done(first.plan, boards=[name for name in up if name not in taken_out])
    found = ", ".join(f"{{at: {at} in}}" for at in studs)
    return session(opened.text.replace(", ".join(f"{{at: {at} in}}" for at in STUDS), found)).plan(effort=0)


def boards(plan: Plan) -> dict[str, Any]:
    return {board.mark: board for surface in plan.surfaces for board in surface.boards}


def box(board: Any) -> tuple[float, ...]:
    across, up = zip(*board.outline, strict=True)
    return tuple(side / INCH for side in (min(across), min(up), max(across), max(up)))


def codes(findings: tuple[Finding, ...]) -> list[str]:
    return [finding.code for finding in findings if finding.code.startswith("BRD-")]


def test_the_rest_moves_to_the_stud_and_nothing_else_moves(first: PlanResult) -> None:
    studs = [98 if at == 96 else at for at in STUDS]
    again = replanned(first, ["W1-1", "W1-2", "W1-5"], studs)
    assert verify(json.loads(again.document)).verified
    was, now = boards(first.plan), boards(again.plan)
    for mark in ("W1-1", "W1-2", "W1-5"):
        assert now[mark].fixed and now[mark].outline == was[mark].outline
    # Two boards met on the stud at 96 in. They meet at 98 in now; all others stay, with their numbers.
    change = firstcourse.difference(first, again).replanned
    assert change.up == tuple(f"{LONG}#{number}" for number in (1, 2, 5))
    assert change.gone == (f"{LONG}#3", f"{LONG}#4")
    assert change.new == (f"{LONG}#8", f"{LONG}#9")
    assert change.moved == ()
    others = [board.id for board in was.values() if board.id not in (*change.up, *change.gone)]
    assert sorted(change.stay) == sorted(others) and f"{LONG}#6" in others
    left = box(was["W1-3"])[0]
    assert box(now["W1-8"]) == pytest.approx((left, 0.25, 98 - 1 / 16, 60.25))
    assert box(now["W1-9"]) == pytest.approx((98 + 1 / 16, 0.25, box(was["W1-4"])[2], 60.25))
    assert codes(again.plan.findings) == codes(first.plan.findings)
    # Each of the three was cut from a sheet of its own: 3 are cut up, and all others are to be bought.
    assert again.plan.given.job["done"]["sheets"] == {"board": 3}
    assert change.sheets.before == change.sheets.after
    assert again.plan.counts["board"].used == first.plan.counts["board"].used - 3
    cut = {part.piece for sheet in again.plan.sheets for part in sheet.parts if part.piece}
    assert cut == {board.piece for board in now.values() if not board.fixed}


def test_a_board_that_is_up_and_lost_its_stud_is_told_and_stays(first: PlanResult) -> None:
    studs = [34 if at == 32 else at for at in STUDS]
    again = replanned(first, ["W1-1", "W1-2", "W1-5"], studs)
    told = {finding.at[0]: finding for finding in again.plan.findings if finding.code == "BRD-103"}
    assert told.keys() == {f"{LONG}#1", f"{LONG}#2"}
    # Their seam stood at 32 in: the first ends 1/16 in before, the other begins as far beyond.
    assert told[f"{LONG}#1"].values["left"].value == pytest.approx((32 - 1 / 16) * 25.4)
    assert told[f"{LONG}#2"].values["right"].value == pytest.approx((32 + 1 / 16) * 25.4)
    assert all(finding.remedies == ("block",) for finding in told.values())
    change = firstcourse.difference(first, again).replanned
    assert (change.gone, change.new, change.moved) == ((), (), ())
    plan = json.loads(again.document)
    plan["findings"] = [finding for finding in plan["findings"] if finding["code"] != "BRD-103"]
    assert "VER-311" in {objection.code for objection in verify(plan).objections}


def test_what_was_taken_out_is_cut_again_in_its_place(first: PlanResult) -> None:
    opened = session(job(STUDS))
    opened.mark_done(first.plan, boards=["W1-1", "W1-2", "W2-1"])
    built = opened.plan(effort=0)
    opened.mark_done(built.plan, boards=[], taken_out=["W2-1"])
    again = opened.plan(effort=0)
    change = firstcourse.difference(built, again).replanned
    assert change.moved == (f"{SHORT}#1",) and not boards(again.plan)["W2-1"].fixed
    assert boards(again.plan)["W2-1"].outline == boards(built.plan)["W2-1"].outline
    assert change.sheets.after["board"] == change.sheets.before["board"] + 1
    # An area says the same: no board is up where the wall was opened.
    area = "taken_out: [{left: 2 in, bottom: 10 in, width: 4 in, height: 4 in, why: rot behind it}]"
    opened.mark_done(built.plan, boards=[])
    text = opened.text.replace(f'surface: "{SHORT}"', f'surface: "{SHORT}"\n      {area}')
    assert not boards(session(text).plan(effort=0).plan)["W2-1"].fixed


def test_what_is_left_of_a_sheet_is_used_first(first: PlanResult) -> None:
    offcuts = "offcuts:\n  - {id: rack 1, stock: board, size: [20 in, 36 in]}   # from the shed\n"
    low = job(STUDS, offcuts).replace("foot: floor,", "foot: floor, boards: {top: 17 in},")
    opened = session(low)
    built = opened.plan(effort=0)
    of_piece = {board.piece: board.mark for board in boards(built.plan).values()}
    sheet = next(
        s for s in built.plan.sheets if s.source == "new" and sum(p.piece is not None for p in s.parts) == 2
    )
    one, other = (of_piece[part.piece] for part in sheet.parts if part.piece)
    opened.mark_done(built.plan, boards=[one])
    # 17 in less the gap came off its 36 in: what was left of the sheet holds the other board.
    assert "# as at the yard" in opened.text and "# two walls of our own" in opened.text
    assert len(opened.job.offcuts) == 2 and opened.job.offcuts[0].id == "rack 1"
    again = opened.plan(effort=0)
    change = firstcourse.difference(built, again).replanned
    assert change.sheets.after == change.sheets.before
    from_offcuts = {
        of_piece[part.piece]
        for sheet in again.plan.sheets
        if sheet.source == f"offcut:{opened.job.offcuts[1].id}"
        for part in sheet.parts
        if part.piece
    }
    assert other in from_offcuts or len(from_offcuts) == 1
    # A kept offcut that was cut up is at hand no more.
    used = next(s for s in built.plan.sheets if s.source == "offcut:rack 1")
    opened.mark_done(built.plan, boards=[one], cut=[of_piece[p.piece] for p in used.parts if p.piece])
    assert "rack 1" not in {offcut.id for offcut in opened.job.offcuts}


def changed(plan: dict[str, Any], what: str) -> dict[str, Any]:
    plan = copy.deepcopy(plan)
    surface = next(surface for surface in plan["surfaces"] if surface["id"] == LONG)
    up = next(board for board in surface["boards"] if board["fixed"])
    given = plan["given"]["job"]["done"]["surfaces"][0]["boards"]
    if what == "moved":
        up["outline"] = [[u + 0.1, v] for u, v in up["outline"]]
    elif what == "not up":
        up["fixed"] = False
    elif what == "given elsewhere":
        given[0]["left"] += 1
        reseal(plan)
    elif what == "not given":
        given[0]["up"] = False
        reseal(plan)
    elif what == "more is up":
        next(board for board in surface["boards"] if not board["fixed"])["fixed"] = True
    else:
        up["fasteners"] = [[100.0, 100.0]]
    return plan


@pytest.mark.parametrize("what", ["moved", "not up", "given elsewhere", "not given", "more is up", "fastened"])
def test_the_verifier_holds_what_is_up_against_what_was_given(three_up: PlanResult, what: str) -> None:
    plan = json.loads(three_up.document)
    assert verify(plan).verified
    assert "VER-011" in {objection.code for objection in verify(changed(plan, what)).objections}


@pytest.mark.parametrize(
    ("boards_up", "message"),
    [
        (
            f"{{board: 1, mark: W1-1, stock: board, left: 100 in, {REST}}}",
            "reaches out",
        ),
        (
            f"{{board: 1, mark: W1-1, stock: slab, left: 1 in, {REST}}}",
            "not one of",
        ),
        (
            f"{{board: 1, mark: W1-1, stock: board, left: 1 in, {REST}}}, "
            f"{{board: 2, mark: W1-2, stock: board, left: 30 in, {REST}}}",
            "over each other",
        ),
    ],
)
def test_a_board_that_cannot_stand_there_is_refused_with_its_line(boards_up: str, message: str) -> None:
    more = f"done: {{surfaces: [{{surface: {LONG}, boards: [{boards_up}]}}]}}\n"
    with pytest.raises(JobError, match=message) as refused:
        session(job(STUDS, more)).plan(effort=0)
    assert all(problem.line == 16 and problem.field.startswith("done.") for problem in refused.value.problems)


def test_papers_draw_what_is_up_as_such_and_cut_nothing_for_it(first: PlanResult, three_up: PlanResult) -> None:
    plan = three_up.plan
    drawn, before = (
        draw_surface(one, next(wall for wall in one.surfaces if wall.id == LONG)) for one in (plan, first.plan)
    )
    assert not [line for line in before.lines if line.layer == "hatch"]
    assert [line for line in drawn.lines if line.layer == "hatch"]
    assert [text.text for text in drawn.texts].count("up") == 3
    pages = pack_data(plan)
    assert ["boards up already, kept as they are", "3"] in pages["figures"] and pages["kept"]
    (kept,) = {block["note"] for row in pages["boards"] for block in row if "W1-5" in block.get("note", "")}
    assert "W1-1, W1-2, W1-5" in kept
    cut = set(re.findall(r"W\d-\d+", json.dumps(pages["tickets"])))
    assert cut == {mark for mark, board in boards(plan).items() if not board.fixed}
    assert not pack_data(first.plan)["kept"]


@pytest.mark.parametrize(
    ("stands", "code", "measured"),
    [
        # 1/8 in apart as planned: moved by 3/16 in they are 5/16 in apart.
        ("left: 32 1/4 in, bottom: 1/4 in, width: 31 11/16 in", "BRD-104", 5 / 16),
        ("left: 32 in, bottom: 1/4 in, width: 31 15/16 in", "BRD-104", 1 / 16),
        # On the floor, over a foot's gap of 1/4 in.
        ("left: 32 1/16 in, bottom: 0 in, width: 31 7/8 in", "BRD-105", 0.0),
    ],
)
def test_a_board_that_hangs_otherwise_than_asked_is_told(
    first: PlanResult, stands: str, code: str, measured: float
) -> None:
    opened = session(job(STUDS))
    opened.mark_done(first.plan, boards=["W1-1", "W1-2"])
    planned = "left: 32 1/16 in, bottom: 1/4 in, width: 31 7/8 in"
    assert planned in opened.text
    again = session(opened.text.replace(planned, stands)).plan(effort=0)
    (told,) = (finding for finding in again.plan.findings if finding.code == code)
    assert told.measured is not None and told.measured.value == pytest.approx(measured * 25.4)
    plan = json.loads(again.document)
    plan["findings"] = [finding for finding in plan["findings"] if finding["code"] != code]
    assert "VER-312" in {objection.code for objection in verify(plan).objections}


def test_names_that_the_plan_does_not_have_are_refused(first: PlanResult) -> None:
    opened = session(job(STUDS))
    before = opened.text
    for boards_up, out, message in (
        (["W9-1"], [], "no board of this plan"),
        (["W1-1"], ["W1-1"], "say one of the two"),
        ([], ["W1-1"], "was not up"),
    ):
        with pytest.raises(InputValueError, match=message):
            opened.mark_done(first.plan, boards=boards_up, taken_out=out)
    assert opened.text == before

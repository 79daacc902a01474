"""What a plan leaves over goes onto the rack, is offered to the next job of the same sheets, and is given once."""

import json
import re
from collections.abc import Callable
from html import unescape

import pytest
from httpx2 import Response
from test_onsite import WALL, planned

from browsers import Browser
from firstcourse.app import Session
from firstcourse.app.rack import left_over, stock_for
from firstcourse.store.accounts import Account, Role
from firstcourse.store.jobs import KeptPlan
from firstcourse.store.rack import NewPiece
from firstcourse.web.house import House


def send(browser: Browser, path: str, **fields: str) -> Response:
    return browser.post_form(path, follow_redirects=False, **fields)


def told(answer: Response) -> str:
    return unescape(answer.text)


@pytest.fixture
def job(house: House, owner: Browser) -> str:
    """Address of a planned job of one wall."""
    made = house.jobs.create("one wall", WALL, by=house.accounts.all()[0].id)
    beside = json.dumps({"practice": planned().practice, "changes": []})
    house.jobs.keep_plan(made, 1, KeptPlan(effort=0, document=planned().document, beside=beside))
    return f"/jobs/{made}"


def next_job(owner: Browser) -> str:
    """Address of a new job with the same sheets."""
    answer = owner.post_form("/jobs/new", follow_redirects=False, **NEW)
    address = answer.headers["location"]
    base = re.search(r'name="base" value="(\d+)"', owner.get(f"{address}/document").text)
    assert base is not None
    assert send(owner, f"{address}/document", base=base[1], text=WALL).status_code == 303
    return address


NEW = {"name": "Next", "practice": "us", "tape": "inch", "job_tongue": "en"}


def test_left_over_pieces_go_onto_the_rack_and_into_the_next_job(owner: Browser, house: House, job: str) -> None:
    left = left_over(planned().plan)
    assert left, "the wall of these tests leaves a piece worth keeping"
    page = told(owner.get(f"{job}/rack"))
    plan = re.search(r'name="plan" value="([0-9a-f]{64})"', page)
    assert plan is not None and all(f'name="piece {one.part}"' in page for one in left)
    put = {f"piece {left[0].part}": "yes", "plan": plan[1]}
    assert send(owner, f"{job}/rack", **put).status_code == 303
    assert send(owner, f"{job}/rack", **put).status_code == 303
    (piece,) = house.rack.pieces()
    assert (piece.label, piece.size, piece.board) == ("R1", left[0].size, left[0].board)
    assert f'name="piece {left[0].part}"' not in told(owner.get(f"{job}/rack"))
    assert "R1" in told(owner.get("/rack")) and "one wall" in told(owner.get("/rack"))
    following = next_job(owner)
    assert f'name="rack {piece.id}"' in owner.get(f"{following}/choices").text
    taken = send(owner, f"{following}/choices", base="2", **{f"rack {piece.id}": "yes"})
    assert taken.status_code == 303, told(taken)
    (offcut,) = Session(owner.get(f"{following}/job.yaml").text).job.offcuts
    assert (offcut.id, offcut.stock, offcut.size) == ("R1", piece.board, piece.size)
    assert house.rack.pieces() == ()
    # Another job is told that it is gone, and keeps what it had.
    other = next_job(owner)
    late = send(owner, f"{other}/choices", base="2", **{f"rack {piece.id}": "yes"})
    assert late.status_code == 422 and "lies on the rack no more" in told(late)
    assert Session(owner.get(f"{other}/job.yaml").text).job.offcuts == ()
    back = send(owner, f"{following}/rack/back", base="3", piece=piece.id)
    assert back.status_code == 303, told(back)
    assert Session(owner.get(f"{following}/job.yaml").text).job.offcuts == ()
    assert [one.id for one in house.rack.pieces()] == [piece.id]
    assert send(owner, "/rack/throw", piece=piece.id).status_code == 303
    assert house.rack.pieces() == () and "Nothing lies here" in told(owner.get("/rack"))


def test_a_plan_made_anew_meanwhile_is_not_mixed_up(owner: Browser, house: House, job: str) -> None:
    part = left_over(planned().plan)[0].part
    answer = send(owner, f"{job}/rack", plan="0" * 64, **{f"piece {part}": "yes"})
    assert answer.status_code == 409 and "planned again meanwhile" in told(answer) and house.rack.pieces() == ()


def test_a_piece_is_entered_by_hand_and_what_is_wrong_is_told(owner: Browser, house: House) -> None:
    given = {"board": "wall board 3x5", "tape": "inch", "width": "20", "length": "3 ft", "thickness": "0.42"}
    wrong = send(owner, "/rack", **{**given, "width": "wide"})
    assert wrong.status_code == 422 and "'wide in'" in told(wrong) and 'value="3 ft"' in told(wrong)
    assert send(owner, "/rack", **{**given, "board": " "}).status_code == 422
    assert send(owner, "/rack", **{**given, "length": "0"}).status_code == 422
    assert house.rack.pieces() == ()
    assert send(owner, "/rack", **given).status_code == 303
    (piece,) = house.rack.pieces()
    assert piece.job is None and '20" × 36"' in told(owner.get("/rack"))


def test_a_piece_fits_sheets_of_its_board_and_thickness_alone() -> None:
    job = Session(WALL).job
    sheet = job.stock[0]
    piece = NewPiece(board="old name", kind=sheet.kind, size=(1000, 1000), thickness=sheet.thickness, tape="inch")

    class Kept(NewPiece):
        label = "R1"

    def fits(**other: object) -> str:
        whole = {name: getattr(piece, name) for name in ("board", "kind", "size", "thickness", "tape")}
        return stock_for(job, Kept(**{**whole, **other}))  # type: ignore[arg-type]

    assert fits() == sheet.id
    assert fits(kind="foam") == fits(thickness=sheet.thickness + 1) == fits(size=(1000, 10**8)) == ""


def test_setters_share_the_rack_and_see_no_job_of_others(
    house: House, owner: Browser, job: str, signed_in: Callable[[Account], Browser]
) -> None:
    part = left_over(planned().plan)[0].part
    page = owner.get(f"{job}/rack").text
    plan = re.search(r'name="plan" value="([0-9a-f]{64})"', page)
    assert plan is not None
    send(owner, f"{job}/rack", plan=plan[1], **{f"piece {part}": "yes"})
    setter = signed_in(house.accounts.create("Ben", Role.SETTER))
    seen = told(setter.get("/rack"))
    assert "R1" in seen and "one wall" not in seen
    (piece,) = house.rack.pieces()
    house.rack.take([piece.id], job.rpartition("/")[2])
    own = send(setter, "/jobs/new", **NEW).headers["location"]
    # What another's job has is not put back from one's own.
    assert send(setter, f"{own}/rack/back", base="1", piece=piece.id).status_code == 400
    assert setter.get(f"{job}/rack").status_code == 404 and house.rack.pieces() == ()

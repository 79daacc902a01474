"""The rack: what lies there, who has it, and that no piece is given twice."""

import threading
from dataclasses import replace

import pytest

from firstcourse.errors import InputValueError
from firstcourse.store import rack as racks
from firstcourse.store.database import Database
from firstcourse.store.jobs import Jobs
from firstcourse.store.rack import NewPiece, Rack

PIECE = NewPiece(board="wall board 3x5", kind="fibre_cement", size=(325_120, 585_216), thickness=6828, tape="inch")


@pytest.fixture
def rack(database: Database) -> Rack:
    return Rack(database)


def test_what_is_put_there_lies_there_until_it_is_used_or_thrown_away(rack: Rack, jobs: Jobs, ada: str) -> None:
    job, other = (jobs.create(name, "name: x", by=ada) for name in ("one", "other"))
    left = [replace(PIECE, job=job, plan="0" * 64, part=f"S1/P{n}") for n in (1, 2)]
    assert rack.put([*left, PIECE], account=ada) == (1, 2, 3)
    assert rack.put(left, account=ada) == ()
    one, two, three = rack.pieces()
    assert [piece.label for piece in (one, two, three)] == ["R1", "R2", "R3"]
    assert (one.size, one.thickness, one.job, three.job) == (PIECE.size, PIECE.thickness, job, None)
    assert rack.parts_put(job, "0" * 64) == {"S1/P1", "S1/P2"} and rack.parts_put(job, "1" * 64) == frozenset()
    rack.take([one.id], other)
    assert [piece.id for piece in rack.used_in(other)] == [one.id] and one.id not in {p.id for p in rack.pieces()}
    assert rack.throw(two.id) and not rack.throw(two.id)
    rack.back([one.id], job)
    assert rack.used_in(other)
    rack.back([one.id, two.id], other)
    assert [piece.label for piece in rack.pieces()] == ["R1", "R3"] and rack.used_in(other) == ()
    # A number is never given again.
    assert rack.throw(three.id) and rack.put([PIECE], account=ada) == (4,)


def test_pieces_are_taken_all_or_none(rack: Rack, jobs: Jobs, ada: str) -> None:
    job, other = (jobs.create(name, "name: x", by=ada) for name in ("one", "other"))
    rack.put([PIECE, PIECE], account=ada)
    one, two = rack.pieces()
    rack.take([one.id], job)
    with pytest.raises(InputValueError, match="on the rack no more"):
        rack.take([one.id, two.id], other)
    assert rack.used_in(other) == () and [piece.id for piece in rack.pieces()] == [two.id]


def test_of_many_who_want_a_piece_one_gets_it(rack: Rack, jobs: Jobs, ada: str) -> None:
    rack.put([PIECE], account=ada)
    (piece,) = rack.pieces()
    wanting = [jobs.create(str(n), "name: x", by=ada) for n in range(4)]
    refused: list[str] = []

    def want(job: str) -> None:
        try:
            rack.take([piece.id], job)
        except InputValueError:
            refused.append(job)

    threads = [threading.Thread(target=want, args=(job,)) for job in wanting]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(refused) == 3 and sum(len(rack.used_in(job)) for job in wanting) == 1


def test_pieces_put_at_a_time_have_numbers_of_their_own(rack: Rack, ada: str) -> None:
    threads = [threading.Thread(target=rack.put, args=([PIECE],), kwargs={"account": ada}) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert [piece.number for piece in rack.pieces()] == [1, 2, 3, 4]


def test_a_full_rack_takes_no_more(rack: Rack, ada: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(racks, "MOST_THERE", 2)
    with pytest.raises(InputValueError, match="no more than 2"):
        rack.put([PIECE] * 3, account=ada)
    assert rack.pieces() == ()

"""What no single field of the boards that are done can tell: surfaces and numbers named twice, unknown stocks."""

from collections.abc import Iterator

from firstcourse.job.done import SurfaceDone
from firstcourse.job.fields import BOOK_STOCK
from firstcourse.job.model import Job

Wrong = tuple[tuple[str | int, ...], str]


def check_done(job: Job) -> Iterator[Wrong]:
    """Everything wrong across fields of `done`, each with the path of the field and what to do."""
    if job.done is None:
        return
    stocks = {stock.id for stock in job.stock} or set(BOOK_STOCK)
    for name in job.done.sheets:
        if name not in stocks:
            yield ("done", "sheets", name), f"'{name}' is not one of the job's stocks"
    rooms = {room.name for room in job.rooms}
    seen: set[str] = set()
    for index, part in enumerate(job.done.surfaces):
        path = ("done", "surfaces", index)
        if part.surface.split("/")[0] not in rooms:
            yield (*path, "surface"), f"'{part.surface}' is in no room of this job; it is written room/wall/A-B"
        if part.surface in seen:
            yield (*path, "surface"), f"'{part.surface}' stands twice; put its boards together"
        seen.add(part.surface)
        for where, message in _boards(part, stocks):
            yield (*path, *where), message


def _boards(part: SurfaceDone, stocks: set[str]) -> Iterator[Wrong]:
    numbers: set[int] = set()
    marks: set[str] = set()
    for index, board in enumerate(part.boards):
        if board.board in numbers:
            yield ("boards", index, "board"), f"board {board.board} stands twice; each has a number of its own"
        if board.mark in marks:
            yield ("boards", index, "mark"), f"mark '{board.mark}' stands twice; each board has its own"
        if board.stock not in stocks:
            yield ("boards", index, "stock"), f"'{board.stock}' is not one of the job's stocks"
        numbers.add(board.board)
        marks.add(board.mark)

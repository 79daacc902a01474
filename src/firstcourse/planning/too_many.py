"""Jobs that would take longer than anyone waits: refused by an estimate, before anything is laid out."""

from collections.abc import Sequence
from math import ceil, prod

from firstcourse.errors import InputProblem, JobError
from firstcourse.geometry.polygon import area2
from firstcourse.job import Job
from firstcourse.job.fields import MOST_BOARDS
from firstcourse.planning.together import Surfaced
from firstcourse.units import format_length


def refuse_too_many_boards(surfaces: Sequence[Surfaced], job: Job) -> None:
    """Refuse surfaces that take more than `MOST_BOARDS` boards, by their area and that of their largest sheet.

    Args:
        surfaces: All surfaces to board, with the sheets each may be boarded with.
        job: For its tape, and for where its sheets stand in the document.

    Raises:
        JobError: One problem for each surface that takes too many.
    """
    places = {item.id: f"stock[{number}].size" for number, item in enumerate(job.stock, start=1)}
    problems = []
    for item in surfaces:
        if not item.stock:
            continue
        sheet = max(item.stock, key=lambda stock: (prod(stock.size), stock.id))
        boards = ceil(abs(area2(item.surface.outline)) / 2 / prod(sheet.size))
        if boards > MOST_BOARDS:
            size = " x ".join(format_length(side, job.tape, feet=False) for side in sheet.size)
            problems.append(
                InputProblem(
                    file="job",
                    line=0,
                    column=0,
                    field=places.get(sheet.id, "rooms"),
                    message=f"sheets of {size} make about {boards:,} boards on {item.surface.id}, more than the "
                    f"{MOST_BOARDS} that are planned on one surface; check the sheet's size and the room's, or "
                    "part the room",
                )
            )
    if problems:
        raise JobError(tuple(problems))

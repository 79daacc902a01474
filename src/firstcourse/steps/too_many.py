"""How much work a job is, by an estimate before anything is laid out; what nobody would wait for is refused."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil, prod

from firstcourse.errors import InputProblem, JobError
from firstcourse.geometry import area2
from firstcourse.job import MOST_BOARDS, Job, Tiling
from firstcourse.plan import Stock
from firstcourse.rules import RuleSet
from firstcourse.sheets import Surfaced
from firstcourse.units import format_length


@dataclass(frozen=True, slots=True)
class Ahead:
    """About how much is to be laid out: surfaces with boards or tile, boards and tiles."""

    surfaces: int
    boards: int
    tiles: int


def work_ahead(surfaces: Sequence[Surfaced], job: Job) -> Ahead:
    """About how much a job is, by the areas of its surfaces and of its largest sheets and its tiles.

    Args:
        surfaces: All surfaces of the job.
        job: For what each is tiled with.
    """
    boards = {item.surface.id: _boards_on(item) for item in surfaces if item.stock}
    tiles = {surface_id: ceil(number) for _, surface_id, number in _tiles_on(surfaces, job)}
    return Ahead(len({*boards, *tiles}), sum(boards.values()), sum(tiles.values()))


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
        sheet, boards = _largest(item), _boards_on(item)
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


def _largest(item: Surfaced) -> Stock:
    return max(item.stock, key=lambda stock: (prod(stock.size), stock.id))


def _boards_on(item: Surfaced) -> int:
    """About how many boards a surface takes: its area in its largest sheets."""
    return ceil(abs(area2(item.surface.outline)) / 2 / prod(_largest(item).size))


_PLAINLY = 1.2
"""So many times as many tiles as are planned leave no doubt, whatever joints, openings and edges take off."""


def refuse_too_many_tiles(surfaces: Sequence[Surfaced], job: Job, rules: RuleSet) -> None:
    """Refuse surfaces that plainly take more tiles than are planned; what is near is counted when it is tiled.

    Args:
        surfaces: All surfaces of the job.
        job: For what each is tiled with.
        rules: Rules in force.

    Raises:
        JobError: One problem for each surface that takes too many.
    """
    problems = []
    most = rules.number("tiling.tiles.most")
    for field, _, number in _tiles_on(surfaces, job):
        if number > _PLAINLY * most:
            message = f"about {number:.0f} tiles on one surface are more than {most:.0f}; check the tile's size"
            problems.append(InputProblem(file="job", line=0, column=0, field=field, message=message))
    if problems:
        raise JobError(tuple(problems))


def _tiles_on(surfaces: Sequence[Surfaced], job: Job) -> Iterator[tuple[str, str, float]]:
    """Fields in the document with surfaces that one tile covers, and about how many that is on each."""
    outlines = {item.surface.id: item.surface for item in surfaces}
    sizes = {tile.id: prod(side + (tile.joint or 0) for side in tile.size) for tile in job.tiles}
    for field, surface_id, tiling in _tilings(job):
        surface = outlines.get(surface_id)
        # Of borders, bands and repeats other tiles take a part that is not known yet.
        plain = tiling.border is None and not tiling.bands and tiling.tile in sizes
        if surface is None or not plain or tiling.tile is None:
            continue
        holes = sum(abs(area2(opening.outline)) / 2 for opening in surface.openings if opening.outline is not None)
        yield field, surface_id, (abs(area2(surface.outline)) / 2 - holes) / sizes[tiling.tile]


def _tilings(job: Job) -> Iterator[tuple[str, str, Tiling]]:
    """Each surface's field in the document, its id, and how it is tiled."""
    for index, room in enumerate(job.rooms, start=1):
        if room.floor is not None and room.floor.tiling is not None:
            yield f"rooms[{index}].floor.tiling", f"{room.name}/floor", room.floor.tiling
        for number, wall in enumerate(room.walls, start=1):
            if wall.tiling is not None:
                yield f"rooms[{index}].walls[{number}].tiling", f"{room.name}/wall/{wall.wall}", wall.tiling

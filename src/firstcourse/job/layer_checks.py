"""What would give one layer two thicknesses: boards of several on one surface, tile entered and chosen."""

from collections.abc import Iterator

from firstcourse.job.model import BoardedCeiling, BoardedFloor, BoardedWall, Job, Room
from firstcourse.plan import SurfaceKind
from firstcourse.units import format_length

Wrong = tuple[tuple[str | int, ...], str]
_Part = BoardedFloor | BoardedWall | BoardedCeiling


def check_layers(job: Job, room: Room) -> Iterator[Wrong]:
    """Layers of a room's surfaces that the job gives two thicknesses, each with its field and what to do."""
    for path, kind, part in _parts(room):
        if isinstance(part, BoardedFloor) and part.is_slab and part.boards_on_slab is None:
            yield from _two_tiles(job, path, part)
            continue
        usable = [
            item
            for item in job.stock
            if (not item.used_for or kind in item.used_for) and (not part.stock or item.id in part.stock)
        ]
        if len({item.thickness for item in usable}) > 1:
            names = " and ".join(f"'{item.id}' ({format_length(item.thickness, job.tape)})" for item in usable)
            yield (
                (*path, "stock"),
                f"{names} may all board it, and all that meets its finished face needs one thickness: name those "
                "of one thickness here, or say under stock what each is for",
            )
        yield from _two_tiles(job, path, part)


def _parts(room: Room) -> Iterator[tuple[tuple[str | int, ...], SurfaceKind, _Part]]:
    if room.floor is not None:
        yield ("floor",), SurfaceKind.FLOOR, room.floor
    for index, wall in enumerate(room.walls):
        yield ("walls", index), SurfaceKind.WALL, wall
    if room.ceiling is not None:
        yield ("ceiling",), SurfaceKind.CEILING, room.ceiling


def _two_tiles(job: Job, path: tuple[str | int, ...], part: _Part) -> Iterator[Wrong]:
    """A tile entered for a surface that is not the one its tiling sets there."""
    if isinstance(part, BoardedCeiling) or part.tile is None or part.tiling is None:
        return
    named = {part.tiling.tile} | {
        piece.tile for repeat in job.repeats if repeat.id == part.tiling.repeat for piece in repeat.pieces
    }
    chosen = [tile.thickness for tile in job.tiles if tile.id in named]
    if chosen and part.tile.thickness != max(chosen):
        yield (
            (*path, "tile", "thickness"),
            f"the tile of its tiling is {format_length(max(chosen), job.tape)} thick: give that one, or leave "
            "`tiling` out",
        )

"""Tile that was entered higher than wide, and is laid in level courses: whether it is to stand is asked once."""

from collections.abc import Iterable, Iterator

from firstcourse.findings import Finding, Severity
from firstcourse.job.tile import ChosenTile, Tiling
from firstcourse.units import Tape, format_length

_COURSED = ("stacked", "running")


def upright_findings(
    tiles: Iterable[ChosenTile], tilings: Iterable[tuple[str, Tiling]], tape: Tape
) -> Iterator[Finding]:
    """One question for every tile that stands upright by the order of its size alone.

    A tile whose `upright` is given, and a tiling that turns its pattern, are not asked about.

    Args:
        tiles: The tiles of the job.
        tilings: How surfaces are tiled, each with the surface's name.
        tape: Tape of the job.
    """
    by_tile: dict[str, list[str]] = {}
    for where, tiling in tilings:
        if tiling.tile is not None and tiling.pattern in _COURSED and tiling.angle == 0:
            by_tile.setdefault(tiling.tile, []).append(where)
    for tile in tiles:
        stands = tile.shape == "rectangle" and tile.size[1] > tile.size[0]
        if stands and tile.upright is None and tile.id in by_tile:
            size = " x ".join(format_length(side, tape, feet=False) for side in tile.size)
            lying = " x ".join(format_length(side, tape, feet=False) for side in reversed(tile.size))
            yield Finding(
                code="TIL-129",
                severity=Severity.NOTE,
                where=f"tile {tile.id}",
                message="The tile is entered higher than wide, so it stands upright on "
                f"{_listed(by_tile[tile.id])}. Is it to stand?",
                measured=f"{size}, width by height",
                source="size as entered",
                remedy=f"If it is to lie, give its size as {lying}; if it is to stand, give it upright: true.",
            )


def _listed(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"

"""Tile that was entered higher than wide, and is laid in level courses: whether it is to stand is asked once."""

from collections.abc import Iterable, Iterator

from firstcourse.findings import Finding, Severity
from firstcourse.job import ChosenTile, Tiling
from firstcourse.tiles.patterns import COURSED
from firstcourse.values import Ref, length


def upright_findings(tiles: Iterable[ChosenTile], tilings: Iterable[tuple[str, Tiling]]) -> Iterator[Finding]:
    """One question for every tile that stands upright by the order of its size alone.

    A tile whose `upright` is given, and a tiling that turns its pattern, are not asked about.

    Args:
        tiles: The tiles of the job.
        tilings: How surfaces are tiled, each with the surface's id.
    """
    by_tile: dict[str, list[str]] = {}
    for surface, tiling in tilings:
        if tiling.tile is not None and tiling.pattern in COURSED and tiling.angle == 0:
            by_tile.setdefault(tiling.tile, []).append(surface)
    for tile in tiles:
        stands = tile.shape == "rectangle" and tile.size[1] > tile.size[0]
        if stands and tile.upright is None and tile.id in by_tile:
            yield Finding(
                code="TIL-129",
                severity=Severity.NOTE,
                at=(f"tile_stock/{tile.id}",),
                remedies=("say",),
                values={
                    "surfaces": tuple(Ref(ref=surface) for surface in by_tile[tile.id]),
                    "width": length(tile.size[0]),
                    "height": length(tile.size[1]),
                },
            )

"""What is marked on each surface before tile is set: lines to snap and the marks of story poles."""

from collections.abc import Sequence

from firstcourse.plan import Piece, Stock, Surface, SurfaceKind
from firstcourse.planning.tiling import TiledJob
from firstcourse.tiling.mark_site import Build, Site
from firstcourse.tiling.snap_lines import snap_lines
from firstcourse.tiling.story_pole import pole_marks
from firstcourse.units import Tape


def marked(tiled: TiledJob, pieces: Sequence[Piece], stock: Sequence[Stock], tape: Tape) -> tuple[Surface, ...]:
    """The surfaces of a tiled job with their marks.

    Args:
        tiled: Surfaces with their boards and tiles, and the patterns that lines are snapped for.
        pieces: What the boards are cut as, for their thickness.
        stock: Sheets of the job.
        tape: Tape of the job.
    """
    thickness = {sheet.id: sheet.thickness for sheet in stock}
    boards = {piece.id: thickness[piece.stock] for piece in pieces}
    site = Site(
        surfaces={surface.id: surface for surface in tiled.surfaces},
        builds={
            surface.id: _build(surface, {boards[board.piece] for board in surface.boards})
            for surface in tiled.surfaces
        },
    )
    lined = [
        surface.model_copy(update={"marks": snap_lines(surface, tiled.snapped[surface.id], site, tape)})
        if surface.id in tiled.snapped
        else surface
        for surface in tiled.surfaces
    ]
    poles = pole_marks(lined, {tile.id: tile for tile in tiled.stock})
    return tuple(
        surface.model_copy(update={"marks": (*surface.marks, *poles.get(surface.id, ()))}) for surface in lined
    )


def _build(surface: Surface, thick: set[int]) -> Build:
    """What lies on a surface; not known where its boards are of two thicknesses, or in a bed or round heating."""
    if surface.kind is SurfaceKind.FLOOR:
        below = sum(layer.thickness for layer in surface.layers if layer.of in ("board_mortar", "board"))
        above = sum(layer.thickness for layer in surface.layers if layer.of in ("mortar", "tile"))
        plain = all(layer.of not in ("heating", "mortar_bed") for layer in surface.layers)
        known = plain and (bool(surface.layers) or not surface.boards)
        return Build(under=below if known else None, over=above if known and surface.layers else None)
    if not surface.boards:
        return Build(under=0, over=None)
    return Build(under=thick.pop() if len(thick) == 1 else None, over=None)

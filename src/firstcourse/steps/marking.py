"""What is marked on each surface before tile is set: lines to snap and the marks of story poles."""

from collections.abc import Sequence
from dataclasses import replace

from firstcourse.findings import Finding, Severity
from firstcourse.plan import Mark, Piece, Stock, Surface, SurfaceKind
from firstcourse.rules import RuleSet
from firstcourse.steps.tile import TiledJob
from firstcourse.tiles import Build, Site, has_both_ways, pole_marks, snap_lines, start_marks
from firstcourse.units import Tape


def marked(
    tiled: TiledJob, pieces: Sequence[Piece], stock: Sequence[Stock], rules: RuleSet, tape: Tape
) -> TiledJob:
    """A tiled job whose surfaces have their marks, and what is said of those that lack some.

    Args:
        tiled: Surfaces with their boards and tiles, and the patterns that lines are snapped for.
        pieces: What the boards are cut as, for their thickness.
        stock: Sheets of the job.
        rules: How near marks of a pole may stand.
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
        surface.model_copy(update={"marks": _lines(surface, tiled, site, tape)}) if surface.tiles else surface
        for surface in tiled.surfaces
    ]
    poles = pole_marks(lined, {tile.id: tile for tile in tiled.stock}, rules)
    surfaces = tuple(
        surface.model_copy(update={"marks": (*surface.marks, *poles.get(surface.id, ()))}) for surface in lined
    )
    unmarked = tuple(
        _without_lines(surface) for surface in lined if surface.tiles and not has_both_ways(surface.marks)
    )
    return replace(tiled, surfaces=surfaces, findings=(*tiled.findings, *unmarked))


def _without_lines(surface: Surface) -> Finding:
    """That no two lines at right angles are printed for a surface, and what to do."""
    return Finding(
        code="TIL-134",
        severity=Severity.NOTE,
        at=(surface.id,),
        measured=None,
        limit=None,
        remedies=("carry",),
    )


def _lines(surface: Surface, tiled: TiledJob, site: Site, tape: Tape) -> tuple[Mark, ...]:
    """Two lines at right angles, else the first joint both ways where it can be found."""
    snapped = tiled.snapped.get(surface.id)
    lines = () if snapped is None else snap_lines(surface, snapped, site, tape)
    if has_both_ways(lines):
        return lines
    starts = start_marks(surface, site)
    return starts if has_both_ways(starts) else lines or starts


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

"""Ground that no board covers: each strip is told, lies where nothing else does, and is filled as it must be."""

from collections.abc import Iterator

import shapely
from shapely import Polygon

from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.coverage import board_hole
from firstcourse.verify.structure import Document, Fill, Surface
from firstcourse.verify.verdict import Objection

_SPECK = 100.0 * TICKS_PER_MM**2
_NOISE = 200.0
_HAIR = 4
_RULES = ("between", "perimeter", "foot", "opening")


def check_fills(plan: Document) -> Iterator[Objection]:
    """Object to bare ground that no strip tells, and to strips that are none."""
    for surface in plan.surfaces:
        if not surface.boards:
            if surface.fills:
                yield Objection("VER-111", surface.id, "tells of strips beside boards, and has no boards")
            continue
        boards = shapely.union_all([board.shape for board in surface.boards])
        ground = Polygon(surface.outline)
        openings = [board_hole(opening) for opening in surface.openings]
        if openings:
            ground = ground.difference(shapely.union_all(openings))
        yield from _untold(surface, ground, boards, plan)
        for fill in surface.fills:
            yield from _filled(surface, fill, ground, boards, plan)
        told = [said for said in plan.findings if said.code == "BRD-303" and _speaks_of(said.where, surface)]
        if len(told) != len(surface.fills):
            yield Objection("VER-111", surface.id, "has not one finding for each strip that is filled")


def _speaks_of(where: str, surface: Surface) -> bool:
    return any(where.startswith(f"{name},") for name in (surface.id, surface.title) if name)


def _reach(plan: Document) -> int:
    """How far from the nearest board ground within a gap may lie."""
    return max(plan.rules.ticks(f"boards.gap.{name}") for name in _RULES) + 2 * plan.tape.graduation


def _untold(
    surface: Surface, ground: shapely.Geometry, boards: shapely.Geometry, plan: Document
) -> Iterator[Objection]:
    near = boards.buffer(_reach(plan) + _HAIR, join_style="mitre")
    strips = [Polygon(fill.outline) for fill in surface.fills]
    told = shapely.union_all([strip.buffer(_HAIR, join_style="mitre") for strip in strips])
    for part in shapely.get_parts(ground.difference(near).difference(told)):
        if part.area > _SPECK:
            at = part.representative_point()
            yield Objection(
                "VER-111",
                surface.id,
                f"ground at {at.x / TICKS_PER_MM:.0f}, {at.y / TICKS_PER_MM:.0f} mm is neither boarded nor filled",
            )


def _filled(
    surface: Surface, fill: Fill, ground: shapely.Geometry, boards: shapely.Geometry, plan: Document
) -> Iterator[Objection]:
    shape = Polygon(fill.outline)
    rules = plan.rules
    if shape.difference(ground.buffer(_HAIR)).area > _NOISE or shape.intersection(boards).area > _NOISE:
        yield Objection("VER-111", fill.id, "is filled where a board or an opening lies, or out of its surface")
    if shape.difference(boards.buffer(_reach(plan) - _HAIR, join_style="mitre")).area <= _NOISE:
        yield Objection("VER-111", fill.id, "is told as filled, and lies within the gap of a board")
    widest = rules.ticks("boards.limb.min") + 2 * _reach(plan)
    if not shape.buffer(-widest / 2 - _HAIR, join_style="mitre").is_empty:
        yield Objection("VER-111", fill.id, "is wide enough for a limb of a board, and is not boarded")
    narrow = shape.buffer(-rules.ticks("boards.fill.width") / 2, join_style="mitre").is_empty
    if fill.filled_with != ("mortar" if narrow else "board"):
        yield Objection("VER-111", fill.id, f"is filled with {fill.filled_with}, which its width does not ask")

"""Ground that no board covers: each strip is told, lies where nothing else does, and is filled as it must be."""

from collections.abc import Iterator, Sequence

import shapely
from shapely import Polygon

from firstcourse.geometry import bounds
from firstcourse.units import TICKS_PER_MM
from firstcourse.verify.coverage import board_box, board_hole
from firstcourse.verify.structure import Document, Fill, Said, Surface
from firstcourse.verify.told import at_least, mm, said, ticks_of, told_of, untrue
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
        told = told_of(surface, "BRD-303", plan.findings)
        wanted = [_told(surface, fill, _measured(fill, told), plan) for fill in surface.fills]
        yield from untrue("VER-111", told, wanted)


def _measured(fill: Fill, told: Sequence[Said]) -> int:
    """How wide a strip is said to be where that is so but for rounding, 0 where it is not [ticks]."""
    shape = Polygon(fill.outline)
    for one in told:
        width = ticks_of(one.measured) or 0
        if one.place == fill.id and not _narrower(shape, width - _HAIR) and _narrower(shape, width + _HAIR):
            return width
    return 0


def _narrower(shape: Polygon, width: float) -> bool:
    return bool(shape.buffer(-width / 2, join_style="mitre").is_empty)


def _told(surface: Surface, fill: Fill, width: int, plan: Document) -> Said:
    """What a strip's finding says: size, place, what it lies at and what fills it."""
    shape = Polygon(fill.outline)
    beside = [opening for opening in surface.openings if board_box(opening).distance(shape) <= _HAIR]
    left, lower, _, _ = bounds(fill.outline)
    return said(
        "BRD-303",
        "note" if fill.filled_with == "mortar" else "fix",
        fill.id,
        fill.filled_with,
        rule="boards.limb.min",
        measured=mm(width),
        limit=at_least(plan.rules.ticks("boards.limb.min")),
        long=mm(round(shape.area / max(1, width))),
        left=mm(left),
        lower=mm(lower),
        beside=[{"ref": f"{surface.id}/opening/{opening.id}"} for opening in beside],
        neighbours=len(beside),
    )


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
    if not _narrower(shape, widest + 2 * _HAIR):
        yield Objection("VER-111", fill.id, "is wide enough for a limb of a board, and is not boarded")
    narrow = _narrower(shape, rules.ticks("boards.fill.width"))
    if fill.filled_with != ("mortar" if narrow else "board"):
        yield Objection("VER-111", fill.id, f"is filled with {fill.filled_with}, which its width does not ask")

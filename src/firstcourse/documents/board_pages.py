"""What the site pack prints of boards: each surface with its list of boards, and its highs and lows."""

from collections.abc import Iterator

from firstcourse.documents.blocks import HALF_MM, HIGH_MM, ROW_MM, TITLE_MM, WIDE_MM, Block, image
from firstcourse.drawings import draw_heights, draw_surface
from firstcourse.drawings.surfaces import drawn_box
from firstcourse.drawings.svg import svg_size
from firstcourse.geometry import bounds
from firstcourse.plan import Plan, Surface, SurfaceKind
from firstcourse.units import TICKS_PER_MM, format_length

NARROW_MM = 1620.0
"""Surfaces no wider than this on site go two to a page [mm]."""
_HALF_HIGH_MM, _LEAST_MM, _HEIGHTS_MM = 165.0, 110.0, 108.0


def board_blocks(plan: Plan) -> list[Block]:
    """Every boarded surface in order, each followed by its highs and lows where it was read for them."""
    return list(_blocks(plan))


def _blocks(plan: Plan) -> Iterator[Block]:
    for surface in plan.surfaces:
        # Of a slab that is tiled as it is there is nothing to show but its tile.
        if surface.boarded and (surface.boards or not surface.tiles):
            yield _boards(plan, surface)
        if surface.heights:
            yield _heights(plan, surface)


def _heights(plan: Plan, surface: Surface) -> Block:
    box = bounds(surface.extent or surface.outline)
    half = box[2] - box[0] <= NARROW_MM * TICKS_PER_MM
    drawing = draw_heights(plan, surface, room=(HALF_MM, _HALF_HIGH_MM) if half else (WIDE_MM, _HEIGHTS_MM))
    data = {"title": f"{surface.title or surface.id}: highs and lows", **image(drawing)}
    return Block(kind="heights", data=data, height=TITLE_MM + svg_size(drawing)[1] + 24.0, half=half)


def _boards(plan: Plan, surface: Surface) -> Block:
    box = drawn_box(surface)
    half = box[2] - box[0] <= NARROW_MM * TICKS_PER_MM
    rows = _rows(plan, surface)
    table = ROW_MM * (len(rows) + 1) + 3.0 if rows else 0.0
    wide = (HALF_MM, _HALF_HIGH_MM) if half else (WIDE_MM, HIGH_MM - TITLE_MM - 7.0)
    # As large as the page allows with the table below it; a long table goes on overleaf.
    drawing = draw_surface(plan, surface, room=(wide[0], max(_LEAST_MM, wide[1] - table)))
    whole = bounds(surface.extent or surface.outline)
    far = [
        f"Corner {name} is off the drawing"
        for name, side in zip(surface.corners, (0, 2), strict=False)
        if surface.kind is SurfaceKind.WALL and box[side] != whole[side]
    ]
    data = {
        "title": f"{surface.title or surface.id}: boards",
        "up": "from the foot" if surface.kind is SurfaceKind.WALL else "from the lower edge",
        "rows": rows,
        "several": len(surface.board_stock) != 1,
        "half": half,
        "note": f"{'; '.join(far)}. Figures run from corner {surface.corners[0]}." if far else "",
        **image(drawing),
    }
    return Block(kind="boards", data=data, height=TITLE_MM + svg_size(drawing)[1] + table + 6.0, half=half)


def _rows(plan: Plan, surface: Surface) -> list[list[str]]:
    """Each board's mark, size, place from the left and the foot, number of fasteners, and kind of sheet."""
    left, lower, _, _ = bounds(surface.extent or surface.outline)
    tape = plan.job.tape
    stocks = {piece.id: piece.stock for piece in plan.pieces}
    rows = []
    for board in surface.boards:
        u0, v0, u1, v1 = bounds(board.outline)
        rows.append(
            [
                board.mark,
                f"{format_length(u1 - u0, tape)} × {format_length(v1 - v0, tape)}",
                format_length(u0 - left, tape),
                format_length(v0 - lower, tape),
                str(len(board.fasteners)),
                stocks[board.piece],
            ]
        )
    return rows

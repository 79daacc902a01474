"""What the site pack prints of boards: each surface with its list of boards, and its highs and lows."""

from firstcourse.drawings import COARSE, Box, draw_heights, draw_surface, drawn_box, svg_size
from firstcourse.geometry import bounds
from firstcourse.papers.blocks import HALF_MM, HIGH_MM, ROW_MM, TITLE_MM, WIDE_MM, Block, image, two_to_a_page
from firstcourse.papers.surface_sizes import SMALL_HIGH_MM, is_small
from firstcourse.plan import Plan, Surface, SurfaceKind
from firstcourse.units import TICKS_PER_MM, format_length
from firstcourse.words import Speaker, speaker_for

_HALF_HIGH_MM, _LEAST_MM, _HEIGHTS_MM = 165.0, 130.0, 108.0


def board_blocks(plan: Plan) -> list[Block]:
    """Every boarded surface in order, each followed by its highs and lows where it was read for them."""
    boarded = [surface for surface in plan.surfaces if surface.boarded and (surface.boards or not surface.tiles)]
    read = [surface for surface in plan.surfaces if surface.heights]
    sizes = {("boards", surface.id): _size(drawn_box(surface)) for surface in boarded}
    sizes |= {("heights", surface.id): _size(bounds(surface.extent or surface.outline)) for surface in read}
    half = two_to_a_page(sizes)
    speaker = speaker_for(plan)
    blocks = []
    for surface in plan.surfaces:
        # Of a slab that is tiled as it is there is nothing to show but its tile.
        if surface in boarded:
            blocks.append(_boards(plan, surface, speaker, half=("boards", surface.id) in half))
        if surface in read:
            blocks.append(_heights(plan, surface, speaker, half=("heights", surface.id) in half))
    return blocks


def _size(box: Box) -> tuple[float, float]:
    return (box[2] - box[0]) / TICKS_PER_MM, (box[3] - box[1]) / TICKS_PER_MM


def _heights(plan: Plan, surface: Surface, speaker: Speaker, *, half: bool) -> Block:
    drawing = draw_heights(plan, surface, room=(HALF_MM, _HALF_HIGH_MM) if half else (WIDE_MM, _HEIGHTS_MM))
    data = {
        "title": speaker.text("papers-title-heights", surface=speaker.title(surface)),
        "half": half,
        **image(drawing),
    }
    return Block(kind="heights", data=data, height=TITLE_MM + svg_size(drawing)[1] + 24.0, half=half)


def _boards(plan: Plan, surface: Surface, speaker: Speaker, *, half: bool) -> Block:
    box = drawn_box(surface)
    rows = board_rows(plan, surface)
    table = ROW_MM * (len(rows) + 1) + 3.0 if rows else 0.0
    wide = (HALF_MM, _HALF_HIGH_MM) if half else (WIDE_MM, HIGH_MM - TITLE_MM - 7.0)
    # As large as the page allows with the table below it; a long table goes on overleaf.
    high = SMALL_HIGH_MM if is_small(surface) else max(_LEAST_MM, wide[1] - table)
    drawing = draw_surface(plan, surface, room=(wide[0], high))
    whole = bounds(surface.extent or surface.outline)
    far = [
        name
        for name, side in zip(surface.corners, (0, 2), strict=False)
        if surface.kind is SurfaceKind.WALL and box[side] != whole[side]
    ]
    notes = []
    if far:
        off = {"one": far[0], "two": far[-1], "first": surface.corners[0]}
        notes.append(speaker.text("boards-off_drawing", count=len(far), **off))
    up = [board.mark for board in surface.boards if board.fixed]
    if up:
        notes.append(speaker.text("boards-kept", count=len(up), marks=", ".join(up)))
    if drawing.scale >= COARSE and surface.boards:
        notes.append(speaker.text("boards-many"))
    data = {
        "title": speaker.text("papers-title-boards", surface=speaker.title(surface)),
        "up": speaker.text("boards-up", wall=surface.kind is SurfaceKind.WALL),
        "rows": rows,
        "several": len(surface.board_stock) != 1,
        "half": half,
        "note": " ".join(notes),
        **image(drawing),
    }
    return Block(kind="boards", data=data, height=TITLE_MM + svg_size(drawing)[1] + table + 6.0, half=half)


def board_rows(plan: Plan, surface: Surface) -> list[list[str]]:
    """Each board's mark, size, place from the left and the foot, number of fasteners, and kind of sheet.

    Of a board that is up already a word stands in place of its fasteners.
    """
    up = speaker_for(plan).text("boards-standing")
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
                up if board.fixed else str(len(board.fasteners)),
                stocks[board.piece],
            ]
        )
    return rows

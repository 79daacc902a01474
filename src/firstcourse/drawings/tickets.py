"""A cut ticket: one sheet with its cuts numbered in order, its pieces marked, its kept offcut hatched."""

from dataclasses import replace

from shapely import Polygon
from shapely import box as shapely_box

from firstcourse.drawings.model import Drawing, Line, Poly, Text, hatch
from firstcourse.geometry.polygon import Ring
from firstcourse.plan import Part, Piece, Plan, Sheet
from firstcourse.units import TICKS_PER_MM, format_length

_MARK_MM, _SIZE_MM = 4.2, 2.6
_TWO_LINES_MM = 13.0
"""A part less high than this has no room for its size below its mark [mm]."""
_SCALES = {"inch": (16, 24, 32, 48), "mm": (20, 25, 50, 100)}


def draw_sheet(plan: Plan, sheet: Sheet, *, room: tuple[float, float] = (84.0, 100.0)) -> Drawing:
    """Draw a sheet with its cuts and parts at the largest usual scale that fits.

    Args:
        plan: For its pieces and tape.
        sheet: What to draw, lying as its cuts are measured: from its left and lower edges.
        room: Width and height on paper [mm].
    """
    wide, high = sheet.size[0] / TICKS_PER_MM, sheet.size[1] / TICKS_PER_MM
    scales = _SCALES[plan.job.tape.value]
    scale = next((one for one in scales if wide / one <= room[0] - 8 and high / one <= room[1] - 8), scales[-1])
    drawing = Drawing(title=f"sheet {sheet.id}", scale=scale)
    per = TICKS_PER_MM * scale
    right, upper = sheet.size[0] / per, sheet.size[1] / per
    drawing.polys.append(Poly("outline", ((0.0, 0.0), (right, 0.0), (right, upper), (0.0, upper))))
    pieces = {piece.id: piece for piece in plan.pieces}
    for part in sheet.parts:
        _draw_part(plan, drawing, part, pieces, per)
    _draw_cuts(drawing, sheet, per)
    return drawing


def _draw_part(plan: Plan, drawing: Drawing, part: Part, pieces: dict[str, Piece], per: float) -> None:
    x0, y0 = part.at[0] / per, part.at[1] / per
    x1, y1 = x0 + part.size[0] / per, y0 + part.size[1] / per
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)
    if part.piece is None:
        drawing.lines += hatch(shapely_box(x0, y0, x1, y1), 2.5 if part.keep else 7.0)
        if part.keep:
            label = Text(middle, f"keep {part.id}", 2.8, bold=True)
            narrow = label.box[2] - label.box[0] > x1 - x0
            drawing.place(Text(middle, label.text, 2.8, bold=True, upright=narrow))
        return
    piece = pieces[part.piece]
    for ring in (piece.outline, *piece.holes):
        drawing.polys.append(Poly("board", _lying(ring, part, per), piece.id))
    holes = [Polygon(_lying(hole, part, per)) for hole in piece.holes]
    tape = plan.job.tape
    size = f"{format_length(part.size[0], tape, feet=False)} × {format_length(part.size[1], tape, feet=False)}"
    for texts in _labels(piece.id.removeprefix("P"), size, x1 - x0, y1 - y0):
        for share in (0.5, 0.25, 0.75, 0.15, 0.85):
            shift = (y1 - y0) * (share - 0.5)
            moved = [replace(text, at=(middle[0] + text.at[0], middle[1] + text.at[1] + shift)) for text in texts]
            boxes = [shapely_box(*text.box) for text in moved]
            inside = all(box.bounds[1] > y0 and box.bounds[3] < y1 for box in boxes)
            if (inside or share == 0.5) and not any(hole.intersects(box) for hole in holes for box in boxes):
                drawing.texts += moved
                return
    drawing.place(Text(middle, piece.id.removeprefix("P"), _MARK_MM, bold=True))


def _labels(mark: str, size: str, width: float, height: float) -> list[list[Text]]:
    """Mark and size about the middle of a part: below each other, side by side, the size upright, or none."""
    bold = Text((0.0, 0.0), mark, _MARK_MM, bold=True)
    plain = Text((0.0, -4.4), size, _SIZE_MM)
    mark_long, size_long = (text.box[2] - text.box[0] for text in (bold, plain))
    found = []
    if height >= _TWO_LINES_MM and size_long <= width:
        found.append([bold, plain])
    if mark_long + size_long + 2.0 <= width:
        left, right = -(size_long + 2.0) / 2, (mark_long + 2.0) / 2
        found.append([replace(bold, at=(left, 0.0)), replace(plain, at=(right, 0.0))])
    if size_long <= height and width >= mark_long + 7.0:
        found.append([bold, replace(plain, at=(mark_long / 2 + 2.0, 0.0), upright=True)])
    if size_long + _MARK_MM + 2.0 <= height:
        found.append([replace(bold, at=(0.0, size_long / 2 + 1.0)), replace(plain, at=(0.0, -2.0), upright=True)])
    return [*found, [bold]]


def _lying(ring: Ring, part: Part, per: float) -> tuple[tuple[float, float], ...]:
    spots = [(part.size[0] - y, x) if part.turned else (x, y) for x, y in ring]
    return tuple(((part.at[0] + x) / per, (part.at[1] + y) / per) for x, y in spots)


def _draw_cuts(drawing: Drawing, sheet: Sheet, per: float) -> None:
    boxes = {sheet.id: (0, 0, *sheet.size)}
    for number, cut in enumerate(sheet.cuts, start=1):
        x, y, width, height = boxes.pop(cut.of)
        if cut.along == "x":
            a, b = (x, y + cut.at), (x + width, y + cut.at)
            boxes[cut.gives[0]] = (x, y, width, cut.at)
            boxes[cut.gives[1]] = (x, y + cut.at, width, height - cut.at)
        else:
            a, b = (x + cut.at, y), (x + cut.at, y + height)
            boxes[cut.gives[0]] = (x, y, cut.at, height)
            boxes[cut.gives[1]] = (x + cut.at, y, width - cut.at, height)
        start, end = (a[0] / per, a[1] / per), (b[0] / per, b[1] / per)
        drawing.lines.append(Line("cut", start, end))
        spots = [
            (start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share)
            for share in (0.12, 0.88, 0.3, 0.7, 0.5)
        ]
        drawing.place(Text(spots[0], f"({number})", 3.0, bold=True), try_also=tuple(spots[1:]))

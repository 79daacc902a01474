"""A cut ticket: one sheet, its cuts numbered in order, its parts numbered as they come off, its waste."""

from shapely import Polygon
from shapely import box as shapely_box

from firstcourse.drawings.model import XY, Drawing, Line, Poly, Text, hatch
from firstcourse.drawings.on_paper import LABEL_MM, fitted, page_round, titled
from firstcourse.drawings.placing import Placer
from firstcourse.geometry import Ring
from firstcourse.plan import Cut, Part, Piece, Plan, Sheet
from firstcourse.units import TICKS_PER_MM, format_length
from firstcourse.words import Speaker, speaker_for

_MARK_MM, _CUT_MM = 4.4, 3.1
_KEPT_HATCH_MM, _WASTE_HATCH_MM = 2.5, 5.0
_SCALES = {"inch": (12, 16, 24, 32, 48, 64), "mm": (10, 20, 25, 50, 100)}


def part_numbers(sheet: Sheet) -> dict[str, int]:
    """The parts that are used or kept, numbered 1, 2, 3 in the order in which the cuts set them free."""
    wanted = {part.id for part in sheet.parts if part.piece is not None or part.keep}
    cut_up = {cut.of for cut in sheet.cuts}
    free = [name for cut in sheet.cuts for name in cut.gives if name not in cut_up] or [sheet.id]
    free += [part.id for part in sheet.parts if part.id not in free]
    return {name: number for number, name in enumerate((name for name in free if name in wanted), start=1)}


def parts_within(sheet: Sheet) -> dict[str, tuple[int, ...]]:
    """By the id of every part there is on the way: the numbers of those that it still holds, ascending."""
    numbers = part_numbers(sheet)
    held: dict[str, tuple[int, ...]] = {name: (number,) for name, number in numbers.items()}
    for cut in reversed(sheet.cuts):
        held[cut.of] = tuple(sorted(number for name in cut.gives for number in held.get(name, ())))
    return held


def draw_sheet(plan: Plan, sheet: Sheet, *, room: XY = (84.0, 100.0)) -> Drawing:
    """Draw a sheet with its cuts and parts at the largest usual scale that fits.

    Args:
        plan: For its pieces and tape.
        sheet: What to draw, lying as its cuts are measured: from its left and lower edges.
        room: Width and height on paper [mm].
    """
    scales = _SCALES[plan.job.tape.value]
    return fitted(scales, (0, 0, *sheet.size), room, lambda scale: _drawn(plan, sheet, scale, room))


def _drawn(plan: Plan, sheet: Sheet, scale: int, room: XY) -> Drawing:
    speaker = speaker_for(plan)
    drawing = titled(speaker, speaker.text("drawings-title", "sheet", name=sheet.id), scale)
    per = TICKS_PER_MM * scale
    right, upper = sheet.size[0] / per, sheet.size[1] / per
    drawing.polys.append(Poly("outline", ((0.0, 0.0), (right, 0.0), (right, upper), (0.0, upper))))
    pieces = {piece.id: piece for piece in plan.pieces}
    for part in sheet.parts:
        if part.piece is not None:
            piece = pieces[part.piece]
            drawing.polys += [
                Poly("board", _lying(ring, part, per), piece.id) for ring in (piece.outline, *piece.holes)
            ]
        else:
            drawing.lines += hatch(_box(part, per), _KEPT_HATCH_MM if part.keep else _WASTE_HATCH_MM)
            if not part.keep:
                # Waste is crossed through.
                drawing.lines += hatch(_box(part, per), _WASTE_HATCH_MM, falling=True)
    ends = _cut_lines(sheet, per)
    drawing.lines += [Line("cut", *line) for line in ends]
    placer = Placer(drawing, page_round(drawing, room))
    for number, (a, b) in enumerate(ends, start=1):
        # Near the end of its line, clear of the parts' own labels.
        spot = (a[0] + (b[0] - a[0]) * 0.1, a[1] + (b[1] - a[1]) * 0.1)
        placer.put(Text(spot, f"({number})", _CUT_MM, bold=True), reach=6.0, aside=True)
    numbers = part_numbers(sheet)
    for part in sheet.parts:
        if part.id in numbers:
            _label(speaker, placer, part, pieces, numbers[part.id], per)
    return drawing


def _label(
    speaker: Speaker, placer: Placer, part: Part, pieces: dict[str, Piece], number: int, per: float
) -> None:
    shape, name = _box(part, per), ""
    if part.piece is not None:
        name = part.piece.removeprefix("P")
        for hole in pieces[part.piece].holes:
            shape = shape.difference(Polygon(_lying(hole, part, per)))
    spot = shape.centroid if shape.contains(shape.centroid) else shape.representative_point()
    told = speaker.text("drawings-part", number=str(number), kept=part.piece is None, board=name)
    label = Text((spot.x, spot.y), told, _MARK_MM, bold=True)
    stands = placer.put_small_too(label, LABEL_MM, within=shape)
    if stands is not None:
        tape = speaker.tape
        size = f"{format_length(part.size[0], tape, feet=False)} × {format_length(part.size[1], tape, feet=False)}"
        below = (stands.at[0], stands.at[1] - stands.size)
        placer.put(Text(below, size, LABEL_MM), within=shape, upright_too=True)


def _box(part: Part, per: float) -> Polygon:
    x, y = part.at[0] / per, part.at[1] / per
    return shapely_box(x, y, x + part.size[0] / per, y + part.size[1] / per)


def _lying(ring: Ring, part: Part, per: float) -> tuple[XY, ...]:
    spots = [(part.size[0] - y, x) if part.turned else (x, y) for x, y in ring]
    return tuple(((part.at[0] + x) / per, (part.at[1] + y) / per) for x, y in spots)


def _cut_lines(sheet: Sheet, per: float) -> list[tuple[XY, XY]]:
    boxes = {sheet.id: (0, 0, *sheet.size)}
    found = []
    for cut in sheet.cuts:
        x, y, width, height = boxes.pop(cut.of)
        boxes |= _halves(cut, (x, y, width, height))
        a, b = (
            ((x, y + cut.at), (x + width, y + cut.at))
            if cut.along == "x"
            else ((x + cut.at, y), (x + cut.at, y + height))
        )
        found.append(((a[0] / per, a[1] / per), (b[0] / per, b[1] / per)))
    return found


def _halves(cut: Cut, whole: tuple[int, int, int, int]) -> dict[str, tuple[int, int, int, int]]:
    """The two parts that a cut gives, each with its left, lower, width and height [ticks]."""
    x, y, width, height = whole
    near, far = cut.gives
    if cut.along == "x":
        return {near: (x, y, width, cut.at), far: (x, y + cut.at, width, height - cut.at)}
    return {near: (x, y, cut.at, height), far: (x + cut.at, y, width - cut.at, height)}

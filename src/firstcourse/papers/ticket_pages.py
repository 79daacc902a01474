"""What the site pack prints for the cutting bench: a ticket a sheet, and the pieces that are cut a second time."""

from typing import Any

from firstcourse.drawings import Drawing, draw_piece, draw_sheet, has_second_cuts, part_numbers, parts_within
from firstcourse.geometry import Point, counter_clockwise
from firstcourse.papers.blocks import beside_each_other, image
from firstcourse.plan import Piece, Plan, Sheet
from firstcourse.units import Tape, format_length
from firstcourse.words import Speaker, speaker_for

TICKET_MM = (43.0, 70.0)
"""Width and height on paper of a sheet's drawing: four stand side by side."""
SLIGHT_GRADUATIONS = 2
"""A taper of no more graduations of the tape over a whole board is listed, not drawn."""
PIECE_MM, WIDE_PIECE_MM, _COARSE, _GAP_MM = (43.0, 44.0), (59.0, 52.0), 64, 4.0
"""Most width and height on paper of a piece's drawing, and of one that would be drawn smaller than one to so many
there; between two of them [mm]."""


def tickets(plan: Plan) -> list[dict[str, Any]]:
    """One entry for each sheet in order, as plain values."""
    speaker = speaker_for(plan)
    return [
        {**ticket_words(plan, sheet, speaker), **image(draw_sheet(plan, sheet, room=TICKET_MM))}
        for sheet in plan.sheets
    ]


def second_cuts(plan: Plan) -> list[list[dict[str, Any]]]:
    """Rows of pieces with a taper, a notch or a hole, as plain values: those cut from the sheets there are.

    Tapers too slight to be drawn are listed, see `slight_tapers`.
    """
    pieces = [{"id": piece.id.removeprefix("P"), **image(_piece(plan, piece))} for piece in cut_again(plan)]
    return beside_each_other(pieces, [max(piece["width_mm"], 24.0) for piece in pieces], _GAP_MM)


def _piece(plan: Plan, piece: Piece) -> Drawing:
    narrow = draw_piece(plan, piece, room=PIECE_MM)
    return narrow if narrow.scale <= _COARSE else draw_piece(plan, piece, room=WIDE_PIECE_MM)


def cut_again(plan: Plan) -> list[Piece]:
    """Pieces from the sheets there are that are drawn for their taper, notch or hole, in order."""
    cut = {part.piece for sheet in plan.sheets for part in sheet.parts}
    return [
        piece
        for piece in plan.pieces
        if piece.id in cut and has_second_cuts(piece) and not is_slight(piece, plan.job.tape)
    ]


def slight_tapers(plan: Plan) -> list[list[str]]:
    """Pieces that only taper, by two graduations or less: mark, lower and upper edge, left and right edge."""
    cut = {part.piece for sheet in plan.sheets for part in sheet.parts}
    tape = plan.job.tape
    found = []
    for piece in plan.pieces:
        if piece.id in cut and is_slight(piece, tape) and has_second_cuts(piece):
            lower_left, lower_right, upper_right, upper_left = _at_corners(piece)
            sides = (
                (lower_right[0] - lower_left[0], upper_right[0] - upper_left[0]),
                (upper_left[1] - lower_left[1], upper_right[1] - lower_right[1]),
            )
            told = [" | ".join(format_length(side, tape, feet=False) for side in pair) for pair in sides]
            # What the tape cannot show is nothing to cut.
            if told != [" | ".join([format_length(side, tape, feet=False)] * 2) for side in piece.blank]:
                found.append([piece.id.removeprefix("P"), *told])
    return found


def is_slight(piece: Piece, tape: Tape) -> bool:
    """Whether a piece is its blank but for corners that lie off by two graduations or less."""
    (width, height), most = piece.blank, SLIGHT_GRADUATIONS * tape.graduation
    if piece.holes or len(piece.outline) != 4:
        return False
    corners = ((0, 0), (width, 0), (width, height), (0, height))
    return all(
        abs(u - at_u) <= most and abs(v - at_v) <= most
        for (u, v), (at_u, at_v) in zip(_at_corners(piece), corners, strict=True)
    )


def _at_corners(piece: Piece) -> tuple[Point, ...]:
    """The outline's points from the lower left corner on, counter-clockwise, where there are four."""
    first = min(range(len(piece.outline)), key=lambda number: sum(piece.outline[number]))
    ring = counter_clockwise(piece.outline[first:] + piece.outline[:first])
    return ring


def ticket_words(plan: Plan, sheet: Sheet, speaker: Speaker) -> dict[str, Any]:
    """What stands with the drawing of a sheet: where it comes from, its cuts in order, what follows them."""
    tape = plan.job.tape
    pieces = {piece.id: piece for piece in plan.pieces}
    numbers = part_numbers(sheet)
    second = [
        speaker.text("tickets-second", part=str(numbers[part.id]), board=part.piece.removeprefix("P"))
        for part in sheet.parts
        if part.piece is not None and has_second_cuts(pieces[part.piece])
    ]
    kept = [
        speaker.text("tickets-keep", part=str(numbers[part.id]), size=_size(part.size, tape))
        for part in sheet.parts
        if part.keep
    ]
    return {
        "id": sheet.id,
        "source": speaker.text(
            "tickets-source",
            source="new" if sheet.source == "new" else "kept",
            offcut=sheet.source.removeprefix("offcut:"),
            stock=sheet.stock,
            size=_size(sheet.size, tape),
        ),
        "cuts": _cuts(sheet, speaker),
        "second": [*second, *kept],
    }


def _cuts(sheet: Sheet, speaker: Speaker) -> list[list[str]]:
    """Each cut's number, what it cuts and where, and what then lies left or below, and right or above."""
    held = parts_within(sheet)
    rows = []
    for number, cut in enumerate(sheet.cuts, start=1):
        what = speaker.text("tickets-sheet") if cut.of == sheet.id else parts_named(held[cut.of], speaker)
        near, far = (parts_named(held.get(name, ()), speaker) for name in cut.gives)
        at = format_length(cut.at, speaker.tape, feet=False)
        told = speaker.text("tickets-cut", line="up" if cut.along == "x" else "left", part=what, at=at)
        rows.append([f"({number})", told, f"{near} | {far}"])
    return rows


def parts_named(numbers: tuple[int, ...], speaker: Speaker) -> str:
    """Parts by their numbers on the ticket, or that there is nothing but waste."""
    return "+".join(map(str, numbers)) or speaker.text("tickets-waste")


def _size(size: tuple[int, int], tape: Tape) -> str:
    return " × ".join(format_length(side, tape, feet=False) for side in size)

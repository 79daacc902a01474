"""Marks stand on what they name, not over its holes or past its edge, where there is room."""

import shapely
from shapely import Polygon

from firstcourse.drawings.model import Drawing, Text
from firstcourse.drawings.pieces import draw_piece
from firstcourse.plan import JobStamp, Piece, Plan
from firstcourse.units import Tape, inches

PLATE = Polygon([(0, 0), (40, 0), (40, 40), (0, 40)], [[(15, 15), (25, 15), (25, 25), (15, 25)]])


def test_a_text_moves_off_a_hole() -> None:
    drawing = Drawing(title="t", scale=1)
    at = drawing.place_within(PLATE, Text((20, 20), "W1", 4.0), try_also=((20, 21), (20, 32)))
    assert at == (20, 32) and drawing.texts[0].at == at


def test_where_nothing_fits_it_still_stands_somewhere() -> None:
    drawing = Drawing(title="t", scale=1)
    assert drawing.place_within(PLATE, Text((20, 20), "a long name of a board", 4.0)) == (20, 20)
    assert len(drawing.texts) == 1


def test_no_room_at_all_leaves_it_out() -> None:
    drawing = Drawing(title="t", scale=1)
    drawing.place(Text((20, 32), "W1", 4.0))
    assert drawing.place_within(PLATE, Text((20, 32), "W2", 4.0)) == (20, 32)
    assert [text.text for text in drawing.texts] == ["W1"]


def test_the_mark_and_the_words_of_a_hole_keep_off_it_and_on_the_piece() -> None:
    side, at, half = inches(32), inches(16), inches(2.5)
    octagon = tuple(
        (at + round(half * x), at + round(half * y))
        for x, y in ((1, 0.4), (0.4, 1), (-0.4, 1), (-1, 0.4), (-1, -0.4), (-0.4, -1), (0.4, -1), (1, -0.4))
    )
    ring = ((0, 0), (side, 0), (side, side), (0, side))
    piece = Piece(id="PW1-1", board="w#1", stock="b", blank=(side, side), outline=ring, holes=(octagon,))
    plan = Plan(job=JobStamp(name="t", digest="0", date="2026-01-01", tape=Tape.INCH))
    drawing = draw_piece(plan, piece)
    hole = next(Polygon(poly.points) for poly in drawing.polys if len(poly.points) == 8)
    board = next(Polygon(poly.points) for poly in drawing.polys if poly.layer == "board")
    for text in drawing.texts:
        if text.text.startswith(("W1-1", "hole")):
            box = shapely.box(*text.box)
            assert board.contains(box) and not hole.intersects(box)

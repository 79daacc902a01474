"""Texts stand on what they name where there is room, never on another text, a fastener or past the page."""

import pytest
import shapely
from shapely import Polygon

from firstcourse.drawings.face import text_width
from firstcourse.drawings.model import Drawing, Line, Poly, Text
from firstcourse.drawings.pieces import draw_piece
from firstcourse.drawings.placing import Placer, placed_apart
from firstcourse.plan import JobStamp, Piece, Plan
from firstcourse.units import Tape, inches

PLATE = Polygon([(0, 0), (40, 0), (40, 40), (0, 40)], [[(15, 15), (25, 15), (25, 25), (15, 25)]])
PAGE = (0.0, 0.0, 60.0, 60.0)


def test_a_text_moves_off_a_hole() -> None:
    drawing = Drawing(title="t", scale=1)
    stands = Placer(drawing, PAGE).put(Text((20, 20), "W1", 4.0), within=PLATE)
    assert stands is not None and PLATE.contains(shapely.box(*stands.box))
    assert drawing.texts == [stands]


def test_a_text_that_fits_nowhere_stands_aside_with_a_line_to_its_place() -> None:
    drawing = Drawing(title="t", scale=1)
    placer = Placer(drawing, PAGE)
    narrow = Polygon([(0, 0), (2, 0), (2, 60), (0, 60)])
    long = Text((1, 30), "a long name", 4.0)
    assert placer.put(long, within=narrow) is None and not drawing.texts
    stands = placer.put(long, within=narrow, aside=True)
    assert stands is not None
    # Turned by a quarter it is higher than the strip is wide, level it is longer.
    box = stands.box
    assert box[0] >= PAGE[0] and box[2] <= PAGE[2]


def test_no_two_texts_meet_however_many_want_one_place() -> None:
    drawing = Drawing(title="t", scale=1)
    drawing.lines.append(Line("fastener", (29, 29), (31, 31)))
    placer = Placer(drawing, PAGE)
    placed = [placer.put(Text((30, 30), f"W{number}", 4.0), aside=True) for number in range(30)]
    boxes = [text.box for text in placed if text is not None]
    assert len(boxes) == 30 and placed_apart(boxes)
    cross = shapely.LineString([(29, 29), (31, 31)])
    assert not any(cross.crosses(shapely.box(*box)) for box in boxes)
    assert all(box[0] >= 0 and box[1] >= 0 and box[2] <= 60 and box[3] <= 60 for box in boxes)
    assert any(line.layer == "leader" for line in drawing.lines)


def test_a_full_page_takes_no_more() -> None:
    drawing = Drawing(title="t", scale=1)
    placer = Placer(drawing, (0.0, 0.0, 12.0, 6.0))
    assert placer.put(Text((6, 3), "W1", 4.0), aside=True) is not None
    assert placer.put(Text((6, 3), "W2", 4.0), aside=True) is None
    assert [text.text for text in drawing.texts] == ["W1"]


def test_boxes_that_meet_are_noticed() -> None:
    assert placed_apart([(0, 0, 1, 1), (1, 0, 2, 1), (0, 1, 1, 2)])
    assert not placed_apart([(0, 0, 1, 1), (0.9, 0.9, 2, 2)])
    assert not placed_apart([(0, 0, 10, 1), (1, 5, 2, 6), (9, 0.5, 12, 2)])


@pytest.mark.parametrize("bold", [False, True])
def test_a_text_is_as_long_as_the_face_makes_it(bold: bool) -> None:
    from importlib import resources

    from fontTools.ttLib import TTFont

    name = "IBMPlexSans_600SemiBold.ttf" if bold else "IBMPlexSans_400Regular.ttf"
    with resources.as_file(resources.files("firstcourse.drawings") / "fonts" / name) as path:
        font = TTFont(path)
    letters, glyphs = font.getBestCmap(), font["hmtx"]
    text = "W1-1 5' 11-15/16\" × ø 1/8 kerb, Öße"
    wanted = sum(glyphs[letters[ord(letter)]][0] for letter in text) / font["head"].unitsPerEm
    assert text_width(text, 3.0, bold=bold) == pytest.approx(3.0 * wanted)


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
    named = [text for text in drawing.texts if text.text.startswith(("W1-1", "hole"))]
    assert len(named) == 2
    for text in named:
        box = shapely.box(*text.box)
        assert board.contains(box) and not hole.intersects(box)


def test_what_is_drawn_is_in_the_way_of_nothing_it_belongs_to() -> None:
    drawing = Drawing(title="t", scale=1, polys=[Poly("board", ((0, 0), (40, 0), (40, 40), (0, 40)))])
    stands = Placer(drawing, PAGE).put(Text((20, 20), "W1", 4.0), within=PLATE.convex_hull)
    assert stands is not None and abs(stands.at[0] - 20) <= 0.5 and abs(stands.at[1] - 20) <= 0.5

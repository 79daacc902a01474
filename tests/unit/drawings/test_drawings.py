"""Drawings of the example plans: nothing overlaps, all is true to scale, the same each time."""

import io
from pathlib import Path
from xml.etree import ElementTree as ET

import ezdxf
import pytest

from example_plans import plan_of
from firstcourse.drawings import (
    Drawing,
    draw_piece,
    draw_room,
    draw_sheet,
    draw_surface,
    draw_tiling,
    has_second_cuts,
    room_names,
    to_dxf,
    to_svg,
)
from firstcourse.drawings.chains import add_chain
from firstcourse.drawings.model import LEAST_TEXT_MM
from firstcourse.drawings.placing import placed_apart
from firstcourse.drawings.surfaces import drawn_box
from firstcourse.drawings.svg import svg_size
from firstcourse.geometry import bounds
from firstcourse.plan import SurfaceKind
from firstcourse.units import TICKS_PER_MM

EXAMPLES = Path(__file__).parents[3] / "examples"
NAMES = ("tub-bathroom", "l-shower-room", "metric-column")
TEXT_WIDTH_MM = 182.0


def drawings(name: str) -> list[Drawing]:
    plan = plan_of(name)
    return [
        *(draw_surface(plan, surface) for surface in plan.surfaces),
        *(draw_tiling(plan, surface) for surface in plan.surfaces if surface.tiled),
        *(draw_room(plan, room) for room in room_names(plan)),
        *(draw_sheet(plan, sheet) for sheet in plan.sheets),
        *(draw_piece(plan, piece) for piece in plan.pieces if has_second_cuts(piece)),
    ]


@pytest.mark.parametrize("name", NAMES)
def test_no_two_texts_meet_and_none_is_too_small_to_read(name: str) -> None:
    for drawing in drawings(name):
        assert placed_apart(text.box for text in drawing.texts), drawing.title
        assert min(text.size for text in drawing.texts) >= LEAST_TEXT_MM


@pytest.mark.parametrize("name", NAMES)
def test_drawings_fit_the_page_so_that_none_is_shrunk(name: str) -> None:
    for drawing in drawings(name):
        assert svg_size(drawing)[0] <= TEXT_WIDTH_MM


@pytest.mark.parametrize("name", NAMES)
def test_boards_are_true_to_the_scale_stated(name: str) -> None:
    plan = plan_of(name)
    for surface in plan.surfaces:
        drawing = draw_surface(plan, surface)
        drawn = {poly.name: poly.points for poly in drawing.polys if poly.layer == "board"}
        for board in surface.boards:
            if board.holes:
                continue
            left, _, right, _ = bounds(board.outline)
            xs = [x for x, _ in drawn[board.mark]]
            assert (max(xs) - min(xs)) * drawing.scale == pytest.approx((right - left) / TICKS_PER_MM, abs=1e-6)


@pytest.mark.parametrize("name", NAMES)
def test_every_mark_and_cut_is_drawn(name: str) -> None:
    plan = plan_of(name)
    for surface in plan.surfaces:
        texts = {text.text for text in draw_surface(plan, surface).texts}
        assert {board.mark for board in surface.boards} <= texts
        # Of a wall with a long bare end, the corner at that end is off the drawing.
        whole, shown = bounds(surface.extent or surface.outline), drawn_box(surface)
        if surface.kind is SurfaceKind.WALL:
            ends = [whole[side] == shown[side] for side in (0, 2)]
            assert {name for name, is_end in zip(surface.corners, ends, strict=True) if is_end} <= texts
        else:
            assert set(surface.corners) <= texts
    for sheet in plan.sheets:
        texts = {text.text for text in draw_sheet(plan, sheet).texts}
        assert {f"({number})" for number in range(1, len(sheet.cuts) + 1)} <= texts


@pytest.mark.parametrize("name", NAMES)
def test_svg_is_well_formed_and_the_same_each_time(name: str) -> None:
    for drawing in drawings(name):
        text = to_svg(drawing)
        assert ET.fromstring(text).attrib["width"].endswith("mm")
        assert to_svg(drawing) == text


def test_dxf_opens_at_true_size_and_is_the_same_each_time() -> None:
    plan = plan_of("tub-bathroom")
    # A wall: the floor's outline is open at its door.
    surface = next(surface for surface in plan.surfaces if surface.kind is SurfaceKind.WALL and surface.boards)
    text = to_dxf(draw_surface(plan, surface))
    assert to_dxf(draw_surface(plan, surface)) == text
    document = ezdxf.read(io.StringIO(text))
    assert not document.audit().errors
    outline = next(e for e in document.modelspace().query("LWPOLYLINE") if e.dxf.layer == "OUTLINE")
    xs = [point[0] for point in outline.get_points()]
    left, _, right, _ = bounds(surface.outline)
    assert max(xs) - min(xs) == pytest.approx((right - left) / TICKS_PER_MM, abs=1e-6)


def test_of_millimetres_the_first_figure_alone_bears_the_unit() -> None:
    drawing = Drawing(title="", scale=20)
    add_chain(drawing, [(0.0, "0 mm"), (20.0, "400 mm"), (40.0, "800 mm")], along=0)
    assert [text.text for text in drawing.texts] == ["0 mm", "400", "800"]
    add_chain(drawing, [(0.0, '0"'), (20.0, '4"')], along=1)
    assert [text.text for text in drawing.texts[3:]] == ['0"', '4"']

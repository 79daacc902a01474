"""Drawings of the example plans: nothing overlaps, all is true to scale, the same each time."""

import io
from functools import cache
from pathlib import Path
from xml.etree import ElementTree as ET

import ezdxf
import pytest

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
from firstcourse.drawings.model import Text
from firstcourse.drawings.svg import svg_size
from firstcourse.geometry import bounds
from firstcourse.plan import Plan
from firstcourse.planning import plan_file
from firstcourse.units import TICKS_PER_MM

EXAMPLES = Path(__file__).parents[3] / "examples"
NAMES = ("tub-bathroom", "l-shower-room", "metric-column")
TEXT_WIDTH_MM = 182.0


@cache
def plan_of(name: str) -> Plan:
    return plan_file(EXAMPLES / name / "job.yaml", effort=0).plan


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
def test_no_two_texts_overlap(name: str) -> None:
    for drawing in drawings(name):
        texts = sorted(drawing.texts, key=lambda text: text.box)
        for index, one in enumerate(texts):
            for other in texts[index + 1 :]:
                assert not _overlap(one, other), f"{drawing.title}: '{one.text}' on '{other.text}'"


def _overlap(one: Text, other: Text) -> bool:
    a, b = one.box, other.box
    slack = 0.6  # the boxes are of mean glyph widths and hold the line's height; letters are smaller
    return min(a[2], b[2]) - max(a[0], b[0]) > slack and min(a[3], b[3]) - max(a[1], b[1]) > slack


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
    surface = plan.surfaces[0]
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

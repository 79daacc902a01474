"""One drawing model for every paper: what is drawn once is written as SVG and DXF alike."""

from firstcourse.drawings.cut_tiles import CutKind, chip_places, cut_kinds, cut_scale, draw_cut
from firstcourse.drawings.cut_words import said_places, size_words
from firstcourse.drawings.dxf import to_dxf
from firstcourse.drawings.face import text_width
from firstcourse.drawings.falls import draw_fall
from firstcourse.drawings.model import Drawing
from firstcourse.drawings.mosaic import mosaics
from firstcourse.drawings.on_paper import COARSE, Box
from firstcourse.drawings.pieces import draw_piece, has_second_cuts
from firstcourse.drawings.surfaces import draw_heights, draw_surface, drawn_box
from firstcourse.drawings.svg import svg_size, to_svg
from firstcourse.drawings.tickets import draw_sheet, part_numbers, parts_within
from firstcourse.drawings.tiles import draw_tiling
from firstcourse.drawings.unfolded import PlacedSurface, draw_room, place_room, room_names

__all__ = [
    "COARSE",
    "Box",
    "CutKind",
    "Drawing",
    "PlacedSurface",
    "chip_places",
    "cut_kinds",
    "cut_scale",
    "draw_cut",
    "draw_fall",
    "draw_heights",
    "draw_piece",
    "draw_room",
    "draw_sheet",
    "draw_surface",
    "draw_tiling",
    "drawn_box",
    "has_second_cuts",
    "mosaics",
    "part_numbers",
    "parts_within",
    "place_room",
    "room_names",
    "said_places",
    "size_words",
    "svg_size",
    "text_width",
    "to_dxf",
    "to_svg",
]

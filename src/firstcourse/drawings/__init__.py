"""One drawing model for every paper: what is drawn once is written as SVG and DXF alike."""

from firstcourse.drawings.dxf import to_dxf
from firstcourse.drawings.falls import draw_fall
from firstcourse.drawings.model import Drawing
from firstcourse.drawings.pieces import draw_piece, has_second_cuts
from firstcourse.drawings.surfaces import draw_heights, draw_surface
from firstcourse.drawings.svg import to_svg
from firstcourse.drawings.tickets import draw_sheet
from firstcourse.drawings.tiles import draw_tiling
from firstcourse.drawings.unfolded import draw_room, room_names

__all__ = [
    "Drawing",
    "draw_fall",
    "draw_heights",
    "draw_piece",
    "draw_room",
    "draw_sheet",
    "draw_surface",
    "draw_tiling",
    "has_second_cuts",
    "room_names",
    "to_dxf",
    "to_svg",
]

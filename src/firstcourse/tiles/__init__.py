"""Tile on each surface: where it starts, its pattern, cuts, joints, soft joints and marks."""

from firstcourse.tiles.cut_marks import with_marks
from firstcourse.tiles.joints import step_allowed
from firstcourse.tiles.lined import Lining, Rim, ToLine
from firstcourse.tiles.lines_over import lines_over
from firstcourse.tiles.mark_site import Build, Site
from firstcourse.tiles.model import XY
from firstcourse.tiles.movement import joint_section
from firstcourse.tiles.patterns import COURSED
from firstcourse.tiles.setting import SettingBed, setting_bed, shown_edges
from firstcourse.tiles.snap_lines import Snapped, snap_lines
from firstcourse.tiles.start import common_level
from firstcourse.tiles.start_marks import has_both_ways, start_marks
from firstcourse.tiles.story_pole import pole_marks
from firstcourse.tiles.tile_cuts import as_laid, cut_from
from firstcourse.tiles.tile_ground import (
    ToTile,
    boards_on,
    depth_before,
    surfaces_to_tile,
    wall_finish,
    walls_beside,
)
from firstcourse.tiles.tile_surface import LaidSurface, SurfaceTiler
from firstcourse.tiles.upright import upright_findings

__all__ = [
    "COURSED",
    "XY",
    "Build",
    "LaidSurface",
    "Lining",
    "Rim",
    "SettingBed",
    "Site",
    "Snapped",
    "SurfaceTiler",
    "ToLine",
    "ToTile",
    "as_laid",
    "boards_on",
    "common_level",
    "cut_from",
    "depth_before",
    "has_both_ways",
    "joint_section",
    "lines_over",
    "pole_marks",
    "setting_bed",
    "shown_edges",
    "snap_lines",
    "start_marks",
    "step_allowed",
    "surfaces_to_tile",
    "upright_findings",
    "wall_finish",
    "walls_beside",
    "with_marks",
]

"""Where boards and their seams go on one surface."""

from firstcourse.boards.as_planned import Planned, least_disturbed
from firstcourse.boards.bedding import Bedding, bed
from firstcourse.boards.fastening import fasten
from firstcourse.boards.field import board_region, limits_of, runs_along
from firstcourse.boards.fills import filled_ground
from firstcourse.boards.layout import Choice, SurfaceLayout, area_working, build_layout, cut_as, no_layout, only_up
from firstcourse.boards.least import least_board_area
from firstcourse.boards.practice import practice_layout
from firstcourse.boards.shifts import shifted
from firstcourse.boards.space import best_choice, layout_alternatives
from firstcourse.boards.stacks import OpenStack, open_stacks
from firstcourse.boards.strips import warm
from firstcourse.boards.wider import end_gaps, nearest_mark, resized

__all__ = [
    "Bedding",
    "Choice",
    "OpenStack",
    "Planned",
    "SurfaceLayout",
    "area_working",
    "bed",
    "best_choice",
    "board_region",
    "build_layout",
    "cut_as",
    "end_gaps",
    "fasten",
    "filled_ground",
    "layout_alternatives",
    "least_board_area",
    "least_disturbed",
    "limits_of",
    "nearest_mark",
    "no_layout",
    "only_up",
    "open_stacks",
    "practice_layout",
    "resized",
    "runs_along",
    "shifted",
    "warm",
]

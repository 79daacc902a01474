"""Where boards and their seams go on one surface."""

from firstcourse.boards.constructive import best_choice, constructive_layout
from firstcourse.boards.layout import Choice, SurfaceLayout, build_layout, no_layout
from firstcourse.boards.least import least_board_area
from firstcourse.boards.practice import practice_layout
from firstcourse.boards.space import layout_alternatives
from firstcourse.boards.stacks import OpenStack, open_stacks

__all__ = [
    "Choice",
    "OpenStack",
    "SurfaceLayout",
    "best_choice",
    "build_layout",
    "constructive_layout",
    "layout_alternatives",
    "least_board_area",
    "no_layout",
    "open_stacks",
    "practice_layout",
]

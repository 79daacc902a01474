"""Where boards and their seams go on one surface."""

from firstcourse.boards.constructive import best_choice, constructive_layout
from firstcourse.boards.layout import Choice, SurfaceLayout, build_layout, no_layout
from firstcourse.boards.practice import practice_layout
from firstcourse.boards.space import layout_alternatives

__all__ = [
    "Choice",
    "SurfaceLayout",
    "best_choice",
    "build_layout",
    "constructive_layout",
    "layout_alternatives",
    "no_layout",
    "practice_layout",
]

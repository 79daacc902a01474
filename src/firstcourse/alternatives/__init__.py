"""Two to six ways to do one job, side by side: what each takes, which is best, which is beaten."""

from firstcourse.alternatives.asked import LARGEST_BYTES, Alternative, Change, read_alternatives
from firstcourse.alternatives.compared import Comparison, Figures, Row, Tried, comparison, figures_of

__all__ = [
    "LARGEST_BYTES",
    "Alternative",
    "Change",
    "Comparison",
    "Figures",
    "Row",
    "Tried",
    "comparison",
    "figures_of",
    "read_alternatives",
]

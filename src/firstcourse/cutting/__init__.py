"""Cutting rectangles from sheets by edge-to-edge cuts. Whole numbers only; knows nothing of what they are for."""

from firstcourse.cutting.choice import choose
from firstcourse.cutting.choices import Arrangement, ChoiceField, Course
from firstcourse.cutting.every_layout import GapGround, Gaps, Span, most_gaps
from firstcourse.cutting.kernels import Ints, compiled, warm
from firstcourse.cutting.model import (
    Blank,
    CannotCutError,
    CutLine,
    CutPart,
    CutSheet,
    CuttingPlan,
    KeptSize,
    StockSize,
)
from firstcourse.cutting.packing import thin_strips
from firstcourse.cutting.quick import quick_cut
from firstcourse.cutting.solve import cut, recut

__all__ = [
    "Arrangement",
    "Blank",
    "CannotCutError",
    "ChoiceField",
    "Course",
    "CutLine",
    "CutPart",
    "CutSheet",
    "CuttingPlan",
    "GapGround",
    "Gaps",
    "Ints",
    "KeptSize",
    "Span",
    "StockSize",
    "choose",
    "compiled",
    "cut",
    "most_gaps",
    "quick_cut",
    "recut",
    "thin_strips",
    "warm",
]

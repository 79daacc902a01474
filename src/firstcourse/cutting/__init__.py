"""Cutting rectangles from sheets by edge-to-edge cuts. Whole numbers only; knows nothing of what they are for."""

from firstcourse.cutting.model import (
    Blank,
    Bound,
    CannotCutError,
    CutLine,
    CutPart,
    CutSheet,
    CuttingPlan,
    KeptSize,
    StockCount,
    StockSize,
)
from firstcourse.cutting.packing import thin_strips
from firstcourse.cutting.quick import quick_cut
from firstcourse.cutting.solve import cut, recut

__all__ = [
    "Blank",
    "Bound",
    "CannotCutError",
    "CutLine",
    "CutPart",
    "CutSheet",
    "CuttingPlan",
    "KeptSize",
    "StockCount",
    "StockSize",
    "cut",
    "quick_cut",
    "recut",
    "thin_strips",
]

"""Seams and cuts chosen together: which layouts of all surfaces take the fewest and cheapest sheets."""

from firstcourse.sheets.bounds import Shared, every_layout, layout_bounds
from firstcourse.sheets.cut import (
    allowed_stock,
    bounded_again,
    cut_pieces,
    job_stock,
    plan_sheets,
    sheet_counts,
    with_factory_edges,
)
from firstcourse.sheets.factory_edges import factory_edges_kept
from firstcourse.sheets.plain_practice import by_plain_practice
from firstcourse.sheets.seam_shifts import seams_shifted
from firstcourse.sheets.seams import board, demand
from firstcourse.sheets.standing import named_as_before, with_done
from firstcourse.sheets.thin_cuts import thin_cuts
from firstcourse.sheets.together import Surfaced

__all__ = [
    "Shared",
    "Surfaced",
    "allowed_stock",
    "board",
    "bounded_again",
    "by_plain_practice",
    "cut_pieces",
    "demand",
    "every_layout",
    "factory_edges_kept",
    "job_stock",
    "layout_bounds",
    "named_as_before",
    "plan_sheets",
    "seams_shifted",
    "sheet_counts",
    "thin_cuts",
    "with_done",
    "with_factory_edges",
]

"""Workings of judged frames: one for each line of their sheets and for each remedy.

What they must say is derived once for a whole frame, with its sheet; see `check_frames`.
"""

from collections.abc import Iterator

from firstcourse.verify.formulas.proving import Prove
from firstcourse.verify.shopping_fields import Working
from firstcourse.verify.structure import Document
from firstcourse.verify.verdict import Objection

_FORMULAS = (
    "dead_load", "area_load", "joist_share", "joist_section", "joist_stiffness", "joist_spacing", "bending",
    "shear", "bearing", "bearing_length", "live_deflection", "total_deflection", "mean_dead_load", "panel_rating",
    "panel_bending", "panel_uniform", "panel_point", "panel_thickest", "cut_share", "cut_as_found", "longest_span",
    "ceiling_dead_load", "ceiling_joist_spacing", "stud_spacing", "stud_stiffness", "steel_thickness", "remedy",
)  # fmt: skip


def _with_its_sheet(_plan: Document, _working: Working) -> Iterator[Objection]:
    """Proved where its frame is: a sheet that names it holds all that it must say."""
    yield from ()


def expected(plan: Document) -> Iterator[str]:
    """Every line of every frame's sheet, and every remedy; which these must be is proved with the sheet."""
    for frame in plan.frames:
        yield from (line.working for line in frame.lines)
        yield from frame.remedies


FORMULAS: dict[str, Prove] = {f"frames-{name}": _with_its_sheet for name in _FORMULAS}
